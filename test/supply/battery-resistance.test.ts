import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  batteryResistance,
  type BatteryResistanceInput,
  crankingBci,
  crankingDin43539,
  crankingEn50342,
  crankingIec60095,
  type CrankingRating,
  crankingSaeJ537,
  type ResistanceFromLoads,
  type ResistanceFromLoadTest,
  type ResistanceFromRating,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const rated = (rule: CrankingRating, ratedA: number, openV = 12.6, cellCount = 6): BatteryResistanceInput => ({
  from: { kind: 'cranking-rating', rule, ratedA, openV, cellCount },
});
const loads: ResistanceFromLoads = {
  kind: 'two-loads',
  lowA: 20,
  lowV: 12.4,
  highA: 200,
  highV: 10.9,
  batteryTempC: 15,
};
const loadTest: ResistanceFromLoadTest = { kind: 'load-test', openV: 12.6, testA: 300, testV: 9.6, batteryTempC: 20 };

describe('published', () => {
  const estimate = { source: 'sae-j537', place: '(12.6 V − 7.2 V) over the rating', status: 'derived' } as const;
  for (const [ratedA, print] of [
    [500, '10.8'],
    [600, '9.0'],
    [800, '6.75'],
  ] as const) {
    computed(`${ratedA} A by SAE J537: ${print} mΩ at −18 °C`, estimate, () => {
      const { resistanceOhm, testTempC, bound } = batteryResistance(rated(crankingSaeJ537, ratedA));
      expectPrinted(resistanceOhm * 1000, print);
      expect(testTempC).toBe(-18);
      expect(bound).toBe('at-most');
    });
  }
  for (const [rule, cell] of [
    [crankingSaeJ537, '1.20'],
    [crankingBci, '1.20'],
    [crankingEn50342, '1.25'],
    [crankingIec60095, '1.40'],
    [crankingDin43539, '1.50'],
  ] as const) {
    // SAE and BCI print volts a cell; of the others a sixth of the printed volts of a 12 V battery.
    const status = cell === '1.20' ? 'published' : 'derived';
    computed(`${rule.title}: ${cell} V a cell`, { source: rule.source, place: 'test point', status }, () =>
      expectPrinted(batteryResistance(rated(rule, 100, 2.1, 1)).testV, cell),
    );
  }
  computed(
    'a battery for 600 A that just passes its load test: 10 mΩ',
    { source: 'battery-load-test', place: '12.6 V at rest, 9.6 V at half of 600 A', status: 'derived' },
    () => expectPrinted(batteryResistance({ from: loadTest }).resistanceOhm * 1000, '10'),
  );
  const lessons = {
    source: 'lessons-electric-circuits',
    place: 'vol. I, batteries: 10 V behind 0.2 Ω, 1 Ω across it',
    status: 'published',
  } as const;
  const cell: ResistanceFromLoads = { ...loads, lowA: 0, lowV: 10, highA: 8.3333333, highV: 8.3333333 };
  computed('0.2 Ω from open and loaded volts', lessons, () =>
    expectPrinted(batteryResistance({ from: cell }).resistanceOhm, '0.2', 0.001),
  );
  computed('50 A into a short', lessons, () => expectPrinted(batteryResistance({ from: cell }).shortA, '50'));
  computed(
    'five equal cells side by side: a fifth',
    { ...lessons, place: 'vol. I, batteries: cells in parallel' },
    () => expectPrinted(batteryResistance({ from: cell, parallelCount: 5 }).resistanceOhm, '0.04', 0.001),
  );
});

describe('laws', () => {
  it('goes back to its test point: volts at rest less current times resistance', () => {
    const amps = fc.double({ min: 50, max: 2000, noNaN: true });
    fc.assert(
      fc.property(amps, fc.double({ min: 9.1, max: 14, noNaN: true }), (ratedA, openV) => {
        for (const rule of [crankingSaeJ537, crankingEn50342, crankingIec60095, crankingDin43539, crankingBci]) {
          const { resistanceOhm } = batteryResistance(rated(rule, ratedA, openV));
          expectWithin(openV - ratedA * resistanceOhm, rule.leastV, 1e-12);
        }
      }),
    );
  });
  it('two loads on a straight line give its slope, wherever they lie', () => {
    const amps = evenlyWithEnds(0, 400);
    fc.assert(
      fc.property(amps, amps, fc.double({ min: 0.001, max: 0.02, noNaN: true }), (a, b, ohm) => {
        const [lowA, highA] = [Math.min(a, b), Math.max(a, b)];
        fc.pre(highA - lowA > 1);
        const from = { ...loads, lowA, lowV: 12.7 - lowA * ohm, highA, highV: 12.7 - highA * ohm };
        const found = batteryResistance({ from });
        expectWithin(found.resistanceOhm, ohm, 1e-9);
        expectWithin(found.openV, 12.7, 1e-9);
      }),
    );
  });
  it('a load test is two loads of which one is none', () => {
    const one = batteryResistance({ from: loadTest });
    const two = batteryResistance({
      from: { ...loads, lowA: 0, lowV: 12.6, highA: 300, highV: 9.6, batteryTempC: 20 },
    });
    expect(one).toEqual(two);
  });
  it('the same amperes by five rules are five resistances: a rating is not another', () => {
    const ohms = [crankingSaeJ537, crankingEn50342, crankingIec60095, crankingDin43539].map(
      (rule) => batteryResistance(rated(rule, 600)).resistanceOhm,
    );
    expect(new Set(ohms).size).toBe(4);
    expect([...ohms].sort((a, b) => b - a)).toEqual(ohms);
    // The same volts and seconds at another temperature: the same ohms, said of that temperature.
    const warm = batteryResistance(rated(crankingBci, 600));
    expect(warm.resistanceOhm).toBe(ohms[0]);
    expect(warm.testTempC).toBe(0);
  });
  it('two in parallel halve, twelve cells ask for twice the volts', () => {
    const one = batteryResistance(rated(crankingSaeJ537, 600));
    const two = batteryResistance({ ...rated(crankingSaeJ537, 600), parallelCount: 2 });
    expectWithin(two.resistanceOhm, one.resistanceOhm / 2, 1e-12);
    expectWithin(two.shortA, one.shortA * 2, 1e-12);
    const long = batteryResistance(rated(crankingSaeJ537, 600, 25.2, 12));
    expectWithin(long.resistanceOhm, one.resistanceOhm * 2, 1e-12);
  });
  it('at another temperature only with a factor that is given', () => {
    expect(batteryResistance(rated(crankingSaeJ537, 600)).otherOhm).toBeNull();
    const { otherOhm, resistanceOhm } = batteryResistance({
      ...rated(crankingSaeJ537, 600),
      otherTempC: 25,
      otherFactor: 0.5,
    });
    expectWithin(otherOhm!, resistanceOhm / 2, 1e-12);
  });
  it('swapped inputs do not go unseen, and no number runs out', () => {
    const byLoads = (from: ResistanceFromLoads) => batteryResistance({ from });
    const byTest = (from: ResistanceFromLoadTest) => batteryResistance({ from });
    const byRating = (from: ResistanceFromRating) => batteryResistance({ from });
    swapsMatter(byLoads, loads);
    swapsMatter(byTest, loadTest);
    neverRunsOut(byLoads, loads);
    neverRunsOut(byTest, loadTest);
    neverRunsOut(byRating, rated(crankingSaeJ537, 600).from as ResistanceFromRating);
  });
});

describe('edges', () => {
  const from = (over: object) => () => batteryResistance({ from: { ...loads, ...over } });
  it('refuses nonsense', () => {
    refusesNonsense(batteryResistance, rated(crankingSaeJ537, 600), { optional: ['parallelCount'] });
    expectInputError(() => batteryResistance({} as never), 'from', 'missing');
    expectInputError(() => batteryResistance({ from: 9 as never }), 'from', 'object');
    for (const field of ['lowA', 'lowV', 'highA', 'highV', 'batteryTempC']) {
      for (const value of [NaN, Infinity, 'abc', undefined])
        expectInputError(from({ [field]: value }), `from.${field}`);
    }
    for (const field of ['openV', 'testA', 'testV', 'batteryTempC']) {
      const run = (): unknown => batteryResistance({ from: { ...loadTest, [field]: NaN } });
      expectInputError(run, `from.${field}`, 'finite');
    }
  });
  it('refuses loads that are the same, and volts that do not fall', () => {
    expectInputError(from({ highA: 20 }), 'from.highA', 'above');
    expectInputError(from({ highV: 12.4 }), 'from.lowV', 'above');
    expect(from({ highV: 12.5 })).toThrow(
      'batteryResistance: from.lowV must be above 12.5, got 12.4: volts fall as the load grows',
    );
    expectInputError(() => batteryResistance({ from: { ...loadTest, testV: 12.6 } }), 'from.openV', 'above');
    expectInputError(() => batteryResistance(rated(crankingSaeJ537, 600, 7.2)), 'from.openV', 'above');
    expectInputError(() => batteryResistance(rated(crankingSaeJ537, 0)), 'from.ratedA', 'above');
    expectInputError(() => batteryResistance(rated(crankingSaeJ537, 600, 12.6, 2.5)), 'from.cellCount', 'integer');
    expectInputError(() => batteryResistance(rated(undefined as never, 600)), 'from.rule', 'missing');
    expectInputError(() => batteryResistance(rated('sae' as never, 600)), 'from.rule', 'object');
    for (const field of ['leastV', 'testTempC', 'source'] as const) {
      const own = { ...crankingSaeJ537, [field]: undefined };
      expectInputError(() => batteryResistance(rated(own, 600)), `from.rule.${field}`, 'missing');
    }
    expectInputError(
      () => batteryResistance(rated({ ...crankingSaeJ537, testTempC: 255 }, 600)),
      'from.rule.testTempC',
      'atMost',
    );
    expectInputError(() => batteryResistance({ from: { ...loads, kind: 'guess' as never } }), 'from.kind', 'oneOf');
    expectInputError(() => batteryResistance({ from: loads, parallelCount: 0 }), 'parallelCount', 'atLeast');
  });
  it('wants a factor and its temperature together', () => {
    expectInputError(() => batteryResistance({ from: loads, otherTempC: 25 }), 'otherFactor', 'missing');
    expectInputError(() => batteryResistance({ from: loads, otherFactor: 0.5 }), 'otherTempC', 'missing');
    expectInputError(() => batteryResistance({ from: loads, otherTempC: 81, otherFactor: 1 }), 'otherTempC', 'atMost');
  });
});
