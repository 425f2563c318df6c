import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  batteryLoadTest,
  type BatteryLoadTestInput,
  loadTest190A,
  loadTestToMinus12,
  loadTestToMinus18,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const input: BatteryLoadTestInput = { rule: loadTestToMinus18, ratedA: 600, batteryTempC: 7 };

describe('published', () => {
  // The maker's list is rounded down to 10 A.
  const cite = {
    source: 'battery-maker-list',
    place: 'rating and load of four batteries',
    status: 'published',
  } as const;
  for (const [ratedA, print] of [
    [600, '300'],
    [770, '380'],
    [750, '370'],
    [625, '310'],
  ] as const) {
    computed(`a battery for ${ratedA} A: ${print} A`, cite, () =>
      expectPrinted(Math.floor(batteryLoadTest({ ...input, ratedA }).testA / 10) * 10, print, 0),
    );
  }
  it('190 A whatever the battery where the table says so', () =>
    expectPrinted(batteryLoadTest({ ...input, rule: loadTest190A }).testA, '190'));
});

describe('laws', () => {
  it('never asks for less than the row below the battery would, nor for more than the warmest', () => {
    const temp = evenly(-18, 80);
    fc.assert(
      fc.property(temp, (batteryTempC) => {
        const { leastV, rowTempC } = batteryLoadTest({ ...input, batteryTempC });
        const colder = loadTestToMinus18.rows.filter(([t]) => t <= batteryTempC).map(([, v]) => v);
        expect(leastV).toBeGreaterThanOrEqual(Math.max(...colder));
        expect(leastV).toBeLessThanOrEqual(9.6);
        if (batteryTempC <= 20) expect(rowTempC).toBeGreaterThanOrEqual(batteryTempC);
      }),
    );
  });
  it('half the rating, for 15 s', () => {
    for (const ratedA of [300, 555, 1000]) expectWithin(batteryLoadTest({ ...input, ratedA }).testA, ratedA / 2, 1e-12);
    expect(batteryLoadTest(input).testS).toBe(15);
  });
});

describe('edges', () => {
  it('judges a reading, on the limit as met', () => {
    expect(batteryLoadTest(input).checks).toEqual([]);
    expect(batteryLoadTest({ ...input, readingV: 9.4 }).checks[0]).toMatchObject({ ok: true, limit: 9.4 });
    const failed = batteryLoadTest({ ...input, readingV: 9.39 });
    expect(failed.checks[0]).toMatchObject({ ok: false, sourceStatus: 'common-practice' });
    expect(failed.decidedBy).toBe('volts at the end of the load test');
  });
  it('the lists disagree in the cold', () => {
    const at = (rule: typeof loadTest190A): number => batteryLoadTest({ rule, ratedA: 600, batteryTempC: -18 }).leastV;
    expect(at(loadTestToMinus18) - at(loadTest190A)).toBeCloseTo(0.5, 12);
  });
  it('refuses nonsense, and what is colder than its list', () => {
    refusesNonsense(batteryLoadTest, input, { required: ['rule', 'ratedA', 'batteryTempC'], optional: ['readingV'] });
    expectInputError(() => batteryLoadTest({ ...input, batteryTempC: -18.1 }), 'batteryTempC', 'atLeast');
    expectInputError(() => batteryLoadTest({ ...input, rule: loadTestToMinus12, batteryTempC: -12.1 }), 'batteryTempC');
    expectInputError(() => batteryLoadTest({ ...input, batteryTempC: 80.1 }), 'batteryTempC', 'atMost');
    expectInputError(() => batteryLoadTest({ ...input, ratedA: 0 }), 'ratedA', 'above');
    expectInputError(() => batteryLoadTest({ ...input, readingV: -1 }), 'readingV', 'atLeast');
  });
  it('190 A need no rating', () => {
    expect(batteryLoadTest({ rule: loadTest190A, batteryTempC: 20 }).testA).toBe(190);
    const none = { rule: loadTestToMinus18, batteryTempC: 20 };
    expectInputError(() => batteryLoadTest(none), 'ratedA', 'missing');
    const rule = { ...loadTestToMinus18, loadFraction: null };
    expectInputError(() => batteryLoadTest({ ...none, ratedA: 600, rule }), 'rule.loadFraction', 'missing');
  });
});
