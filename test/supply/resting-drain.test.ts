import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  bladeFuse,
  miniFuse,
  type RestDrain,
  restingDrain,
  type RestingDrainInput,
  restVoltsThumb,
  restVoltsTrade,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const drains: readonly RestDrain[] = [
  { name: 'radio', currentA: 0.004, dutyFraction: 1, fuse: 'radio' },
  { name: 'clock', currentA: 0.003, dutyFraction: 1, fuse: 'radio' },
  { name: 'tracker', currentA: 0.12, dutyFraction: 0.05, fuse: 'tracker' },
  { name: 'alternator', currentA: 0.001, dutyFraction: 1, fuse: null },
];
const base: RestingDrainInput = {
  drains,
  fuses: [
    { name: 'radio', family: bladeFuse, ratingA: 10 },
    { name: 'tracker', family: miniFuse, ratingA: 5 },
  ],
  fuseToleranceFraction: 0.15,
  fullChargeAh: 60,
  startChargeFraction: 0.95,
  end: { kind: 'charge', chargeFraction: 0.6 },
  selfDischargeFractionPerDay: 0.003,
  limitA: 0.05,
};

describe('published', () => {
  const cell = {
    source: 'lessons-electric-circuits',
    place: 'volume I, chapter 11, batteries',
    status: 'published',
  } as const;
  const whole: RestingDrainInput = {
    ...base,
    drains: [{ name: 'all', currentA: 3.5, dutyFraction: 1, fuse: null }],
    fullChargeAh: 70,
    startChargeFraction: 1,
    end: { kind: 'charge', chargeFraction: 0 },
    selfDischargeFractionPerDay: 0,
  };
  computed('70 Ah at 3.5 A: 20 h', cell, () => expectPrinted(24 * restingDrain(whole).standingDays!, '20'));
  const chart = { source: 'fuse-drop-charts', place: 'standard blade 10 A, mini 15 A', status: 'published' } as const;
  const over = (fuse: 'blade' | 'mini', amps: number): number => {
    const family = fuse === 'blade' ? bladeFuse : miniFuse;
    const found = restingDrain({
      ...base,
      drains: [{ name: 'it', currentA: amps, dutyFraction: 1, fuse: 'f' }],
      fuses: [{ name: 'f', family, ratingA: fuse === 'blade' ? 10 : 15 }],
    });
    return found.fuses[0]!.steadyMv;
  };
  computed('130 mA through a 10 A blade: 1.0 mV', chart, () => expectPrinted(over('blade', 0.13), '1.0'));
  computed('22 mA through a 15 A mini: 0.1 mV', chart, () => expectPrinted(over('mini', 0.022), '0.1'));
  computed('218 mA through it: 1.0 mV', chart, () => expectPrinted(over('mini', 0.218), '1.0'));
  const thumb = {
    source: 'battery-rest-lists',
    place: '80 mV for each 10 % of a flooded battery',
    status: 'common-practice',
  } as const;
  computed('down by 80 mV from full is a tenth of the charge', thumb, () => {
    const end = { kind: 'volts', openV: 12.6 - 0.08, list: restVoltsThumb } as const;
    expectPrinted(restingDrain({ ...base, startChargeFraction: 1, end }).usableAh / 60, '0.1');
  });
});

describe('independent', () => {
  it('an hour at a time', () => {
    const found = restingDrain(base);
    let charge = 0.95 * 60;
    let hours = 0;
    for (; charge > 0.6 * 60; hours++) {
      for (const { currentA, dutyFraction } of drains) charge -= currentA * dutyFraction;
      charge -= (0.003 * 60) / 24;
    }
    expect(Math.abs(found.standingDays! - hours / 24)).toBeLessThan(1 / 24);
  });
  it('millivolts over the fuses in a circuit simulator', async () => {
    const found = restingDrain(base);
    const v = await simulate(
      ['vb b 0 12.6', 'rf1 b r 7.7m', 'i1 r 0 7m', 'rf2 b t 17.6m', 'i2 t 0 120m', '.op'].join('\n'),
    );
    expectWithin(found.fuses[0]!.steadyMv, 1000 * (12.6 - v['v(r)']![0]!), 1e-6);
    expectWithin(found.fuses[1]!.mostMv, 1000 * (12.6 - v['v(t)']![0]!), 1e-6);
  });
});

describe('laws', () => {
  it('days fall with drain and with self-discharge, rise with charge', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 1, noNaN: true }), (currentA) => {
        const more = [...drains, { name: 'more', currentA, dutyFraction: 1, fuse: null }];
        const days = restingDrain(base).standingDays!;
        expect(restingDrain({ ...base, drains: more }).standingDays!).toBeLessThan(days);
        const self = { selfDischargeFractionPerDay: base.selfDischargeFractionPerDay + currentA };
        expect(restingDrain({ ...base, ...self }).standingDays!).toBeLessThan(days);
        expect(restingDrain({ ...base, fullChargeAh: 60 * (1 + currentA) }).standingDays!).toBeGreaterThan(days);
      }),
    );
  });
  it('the sum over fuses and what hangs on none is the mean', () => {
    const { fuses, unfusedA, meanA } = restingDrain(base);
    expectWithin(unfusedA + fuses.reduce((sum, f) => sum + f.meanA, 0), meanA, 1e-12);
  });
  it('what is listed reads as listed on a fuse of any resistance within the tolerance', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.851, max: 1.149, noNaN: true }), (off) => {
        const measuredMv = 7 * 7.7e-3 * off;
        const found = restingDrain({ ...base, fuses: [{ ...base.fuses[0]!, measuredMv }, base.fuses[1]!] });
        expect(found.fuses[0]!.verdict).toBe('as-listed');
      }),
    );
  });
  it('swapping two inputs of a kind is seen', () => swapsMatter(restingDrain, base));
});

describe('edges', () => {
  const measured = (measuredMv: number): RestingDrainInput => ({
    ...base,
    fuses: [{ ...base.fuses[0]!, measuredMv }, base.fuses[1]!],
  });
  it('a reading that the list does not explain', () => {
    expect(restingDrain(measured(1)).fuses[0]!.verdict).toBe('more');
    expect(restingDrain(measured(1)).checks.find(({ ok }) => !ok)?.name).toContain('radio');
    expect(restingDrain(measured(0.02)).fuses[0]!.verdict).toBe('less');
    expect(restingDrain(base).fuses[0]!.verdict).toBeNull();
  });
  it('nothing drains', () => {
    const still = restingDrain({ ...base, drains: [], selfDischargeFractionPerDay: 0 });
    expect(still).toMatchObject({ standingDays: null, standingReason: 'nothing-drains', meanA: 0 });
  });
  it('what never draws does not count at all', () => {
    const off = restingDrain({ ...base, drains: [{ name: 'horn', currentA: 5, dutyFraction: 0, fuse: null }] });
    expect(off.mostA).toBe(0);
  });
  it('exactly the limit is met', () => {
    const at = restingDrain({ ...base, drains: [{ name: 'a', currentA: 0.05, dutyFraction: 1, fuse: null }] });
    expect(at.checks[0]).toMatchObject({ ok: true, marginFraction: 0 });
  });
  it('refuses nonsense', () => {
    refusesNonsense(restingDrain, base, {
      required: [
        ...(['fuseToleranceFraction', 'fullChargeAh', 'startChargeFraction'] as const),
        ...(['selfDischargeFractionPerDay', 'limitA'] as const),
      ],
    });
    const drain = (change: Partial<RestDrain>): (() => unknown) => {
      const [first, ...rest] = drains;
      return () => restingDrain({ ...base, drains: [{ ...first!, ...change }, ...rest] });
    };
    expectInputError(drain({ currentA: -1 }), 'drains[0].currentA', 'atLeast');
    expectInputError(drain({ dutyFraction: 1.1 }), 'drains[0].dutyFraction', 'atMost');
    expectInputError(drain({ fuse: 'none such' }), 'drains[0].fuse', 'oneOf');
    expectInputError(drain({ name: '' }), 'drains[0].name', 'text');
    const [one, two] = base.fuses;
    expectInputError(() => restingDrain({ ...base, fuses: [one!, one!, two!] }), 'fuses[1].name', 'order');
    expectInputError(() => restingDrain({ ...base, fuses: [one!, { ...two!, ratingA: 6 }] }), 'fuses[1].ratingA');
    expectInputError(() => restingDrain(measured(-1)), 'fuses[0].measuredMv', 'atLeast');
    expectInputError(() => restingDrain({ ...base, fuses: [null as never] }), 'fuses[0]', 'object');
    const end =
      (value: RestingDrainInput['end']): (() => unknown) =>
      () =>
        restingDrain({ ...base, end: value });
    expectInputError(end({ kind: 'charge', chargeFraction: 0.95 }), 'end.chargeFraction', 'below');
    expectInputError(end({ kind: 'volts', openV: 11, list: restVoltsTrade }), 'end.openV', 'range');
    expectInputError(end({ kind: 'volts', openV: 12.65, list: restVoltsTrade }), 'end.openV', 'below');
    expectInputError(end({ kind: 'other' } as never), 'end.kind', 'oneOf');
    expectInputError(end(undefined as never), 'end', 'missing');
    expect(drain({ fuse: 'x' })).toThrow(
      "restingDrain: drains[0].fuse must be the name of a fuse in the list, or null, got 'x'",
    );
  });
  it('never runs out of numbers', () => neverRunsOut(restingDrain, base));
});
