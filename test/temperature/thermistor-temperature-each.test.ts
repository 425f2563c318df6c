import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  ntc103jl1a,
  ntc10k3mcd1,
  ntc10k44031,
  ntc2252,
  ntc3k44005,
  ntcMaterial1,
  ntcMaterial1Inverse,
  thermistorResistance,
  thermistorTemperature,
  thermistorTemperatureEach,
  type ThermistorCurve,
} from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, type Citation } from '../support/published.js';
import { print10k3mcd1 } from './ntc-print.js';

const probe: Citation = { source: 'ntc-10k3mcd1-manual', place: 'appendix C, table C-1', status: 'published' };

describe('published', () => {
  computed('all 42 rows of the probe, as one array', probe, () => {
    const resistanceOhm = Float64Array.from(print10k3mcd1, ([, ohm]) => Number(ohm));
    const { tempC: found } = thermistorTemperatureEach({ curve: ntc10k3mcd1, resistanceOhm });
    print10k3mcd1.forEach(([t], i) => expect(Math.abs(found[i]! - t)).toBeLessThan(0.005));
  });
});

describe('laws', () => {
  const curves: readonly ThermistorCurve[] = [
    ntc10k3mcd1,
    ntc3k44005,
    ntc103jl1a,
    ntcMaterial1,
    ntcMaterial1Inverse,
    ntc2252,
    ntc10k44031,
    { kind: 'beta', refOhm: 10000, refTempC: 25, betaK: 3435 },
  ];
  it('is thermistorTemperature for each, for every kind of curve', () => {
    fc.assert(
      fc.property(fc.constantFrom(...curves), fc.array(evenly(-25, 120), { maxLength: 9 }), (curve, temps) => {
        const ohms = temps.map((tempC) => thermistorResistance({ curve, tempC }).resistanceOhm);
        const { tempC: found } = thermistorTemperatureEach({ curve, resistanceOhm: Float64Array.from(ohms) });
        expect(found).toHaveLength(ohms.length);
        ohms.forEach((resistanceOhm, i) => {
          expect(Math.abs(found[i]! - thermistorTemperature({ curve, resistanceOhm }).tempC)).toBeLessThan(1e-10);
        });
      }),
    );
  });
});

describe('edges', () => {
  const curve = ntc2252;
  it('names the reading that is off', () => {
    for (const [bad, rule] of [
      [0, 'range'],
      [-1, 'range'],
      [6.39, 'range'],
      [2e6, 'range'],
      [NaN, 'finite'],
      [Infinity, 'range'],
    ] as const) {
      const resistanceOhm = new Float64Array([1000, 2000, bad, 3000]);
      expectInputError(() => thermistorTemperatureEach({ curve, resistanceOhm }), 'resistanceOhm[2]', rule);
    }
    const beyond = new Float64Array([1000, 1e-9]);
    expectInputError(() => thermistorTemperatureEach({ curve: ntc10k3mcd1, resistanceOhm: beyond }), 'resistanceOhm');
    expectInputError(() => thermistorTemperatureEach({ curve: ntcMaterial1, resistanceOhm: beyond, extrapolate: true }), 'resistanceOhm'); // prettier-ignore
  });
  it('goes on beyond the range when told to', () => {
    const resistanceOhm = new Float64Array([5]);
    expect(thermistorTemperatureEach({ curve, resistanceOhm, extrapolate: true }).tempC[0]).toBeGreaterThan(250);
  });
  it('fills the array that it is given', () => {
    const into = new Float64Array(1);
    expect(thermistorTemperatureEach({ curve, resistanceOhm: new Float64Array([2252]), into }).tempC).toBe(into);
    expect(into[0]).toBeCloseTo(25, 10);
  });
  it('refuses what is no array', () => {
    const wrong =
      (change: object): (() => unknown) =>
      () =>
        thermistorTemperatureEach({ curve, resistanceOhm: new Float64Array([1000]), ...change });
    expectInputError(wrong({ resistanceOhm: undefined }), 'resistanceOhm', 'missing');
    expectInputError(wrong({ resistanceOhm: [1000] }), 'resistanceOhm', 'list');
    expectInputError(wrong({ resistanceOhm: new Float32Array(1) }), 'resistanceOhm', 'list');
    expectInputError(wrong({ into: new Float64Array(2) }), 'into', 'list');
    expectInputError(wrong({ into: [0] }), 'into', 'list');
    expectInputError(wrong({ curve: undefined }), 'curve', 'missing');
    expectInputError(() => thermistorTemperatureEach(undefined as never), 'input', 'object');
  });
});
