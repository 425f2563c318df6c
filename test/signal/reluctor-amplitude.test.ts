import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { reluctorAmplitude, type ReluctorAmplitudeInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { expectWithin } from '../support/published.js';

const crank: ReluctorAmplitudeInput = {
  measuredV: 2,
  measuredRpm: 200,
  measuredGapMm: 0.8,
  gapMm: 1,
  teeth: 36,
  wheelDiameterMm: 160,
  lowestRpm: 150,
  highestRpm: 7000,
  coilOhm: 900,
  coilH: 0.4,
  inputOhm: 10000,
  inputLeastV: 0.4,
  inputMostV: 120,
};

describe('independent', () => {
  it('is the product of speed, gap and load, worked by hand', () => {
    const r = reluctorAmplitude(crank);
    const pitch = (Math.PI * 160) / 36;
    const gap = Math.exp((-2 * Math.PI * 0.2) / pitch);
    const open = (rpm: number): number => (2 * rpm * gap) / 200;
    const loaded = (rpm: number): number => {
      const omega = 2 * Math.PI * ((36 * rpm) / 60);
      return (open(rpm) * 10000) / Math.sqrt((10000 + 900) ** 2 + (omega * 0.4) ** 2);
    };
    expectWithin(r.gapFactor, gap, 1e-12);
    expectWithin(r.lowestSpeedV, loaded(150), 1e-12);
    expectWithin(r.highestSpeedV, loaded(7000), 1e-12);
    expectWithin(r.openHighestSpeedV, open(7000), 1e-12);
    expectWithin(loaded(r.readableRpm!), 0.4, 1e-9);
  });
  it('the fall with the gap solves the field of a row of teeth', () => {
    // φ = cos(2πx/τ)·e^(−2πz/τ) has no sources: its second differences cancel.
    const pitch = 14;
    const phi = (x: number, z: number): number =>
      Math.cos((2 * Math.PI * x) / pitch) * Math.exp((-2 * Math.PI * z) / pitch);
    const h = 1e-3;
    const laplace = (phi(3 + h, 1) + phi(3 - h, 1) + phi(3, 1 + h) + phi(3, 1 - h) - 4 * phi(3, 1)) / (h * h);
    expect(Math.abs(laplace)).toBeLessThan(1e-6);
    const r = reluctorAmplitude({
      ...crank,
      teeth: 10,
      wheelDiameterMm: (10 * pitch) / Math.PI,
      measuredGapMm: 1,
      gapMm: 2,
    });
    expectWithin(r.gapFactor, phi(0, 2) / phi(0, 1), 1e-12);
  });
});

describe('laws', () => {
  it('rises with speed and falls with the gap', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        fc.double({ min: 10, max: 5000, noNaN: true }),
        (gapMm, lowestRpm) => {
          const one = reluctorAmplitude({ ...crank, gapMm, lowestRpm });
          expect(reluctorAmplitude({ ...crank, gapMm: gapMm * 1.1, lowestRpm }).lowestSpeedV).toBeLessThan(
            one.lowestSpeedV,
          );
          expect(reluctorAmplitude({ ...crank, gapMm, lowestRpm: lowestRpm * 1.1 }).lowestSpeedV).toBeGreaterThan(
            one.lowestSpeedV,
          );
          expect(one.highestSpeedV).toBeLessThan(one.openHighestSpeedV);
        },
      ),
    );
  });
  it('does not mistake one input for another', () => {
    swapsMatter(reluctorAmplitude, crank);
  });
});

describe('edges', () => {
  it('a coil with too much inductance for its input never reaches the threshold', () => {
    const never = reluctorAmplitude({ ...crank, coilH: 50, inputOhm: 1000, inputLeastV: 5 });
    expect(never.readableRpm).toBeNull();
    expect(never.checks[0]).toMatchObject({ ok: false, sourceStatus: 'common-practice' });
  });
  it('warns of too much at speed', () => {
    expect(reluctorAmplitude({ ...crank, inputMostV: 20 }).decidedBy).toBe('peak at the highest speed');
  });
  it('refuses nonsense', () => {
    refusesNonsense(reluctorAmplitude, crank, {
      required: Object.keys(crank) as (keyof ReluctorAmplitudeInput)[],
    });
    expectInputError(() => reluctorAmplitude({ ...crank, highestRpm: 100 }), 'highestRpm', 'atLeast');
    expectInputError(() => reluctorAmplitude({ ...crank, inputMostV: 0.4 }), 'inputMostV', 'above');
    expectInputError(() => reluctorAmplitude({ ...crank, teeth: 0 }), 'teeth', 'atLeast');
    expectInputError(() => reluctorAmplitude({ ...crank, gapMm: 14 }), 'gapMm', 'atMost');
    expectInputError(() => reluctorAmplitude({ ...crank, measuredGapMm: 14 }), 'measuredGapMm', 'atMost');
  });
});
