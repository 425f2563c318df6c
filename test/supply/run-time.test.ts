import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { type RunTime, runTime, type RunTimeInput, peukertExponents } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin, transcribed } from '../support/published.js';

const base: RunTimeInput = {
  form: 'referenced',
  ratedChargeAh: 100,
  ratedTimeH: 20,
  peukertExponent: 1.2,
  startChargeFraction: 1,
  endChargeFraction: 0,
  currentA: 10,
  belowRate: 'peukert',
};
const of = (change: Partial<RunTimeInput>): RunTime => {
  const result = runTime({ ...base, ...change });
  const found = result.possible ? result : result.nearest;
  if (found === null) throw new Error('no run time');
  return found;
};

describe('published', () => {
  const law = { source: 'peukert-law', place: 'worked example, 120 Ah at 20 h, k 1.4', status: 'published' } as const;
  const hours = of({ ratedChargeAh: 120, peukertExponent: 1.4, currentA: 120 });
  computed('120 A last 0.30 h', law, () => expectPrinted(hours.runTimeH!, '0.30'));
  computed('which is about 18 min', law, () => expectPrinted(hours.runTimeH! * 60, '18'));

  const other = { source: 'peukert-unreferenced', place: '250 Ah, 20 A, exponent 1.3', status: 'published' } as const;
  const t20 = of({ form: 'unreferenced', ratedChargeAh: 250, peukertExponent: 1.3, currentA: 20 });
  computed('the form that is refused gives 5.088631644 h', other, () =>
    expectPrinted(t20.unreferencedTimeH!, '5.088631644'),
  );
  computed('and so 101.772632884 Ah', other, () => expectPrinted(t20.unreferencedTimeH! * 20, '101.772632884'));
  const five = { source: 'peukert-unreferenced', place: '100 Ah, 5 A, exponent 1.2', status: 'published' } as const;
  const t5 = of({ currentA: 5 });
  computed('the form that is refused gives 14.5 h', five, () => expectPrinted(t5.unreferencedTimeH!, '14.5'));
  it('where the hour rate gives back the rated 20 h', () => expectPrinted(t5.runTimeH!, '20'));
  computed('and is off by the ratio of the two', five, () => expectPrinted(t5.unreferencedRatio, '0.725'));

  const derived = { source: 'peukert-law', place: '100 Ah at 20 h, 10 A', status: 'derived' } as const;
  computed('k 1.2: 8.7055 h', derived, () => expectPrinted(of({}).runTimeH!, '8.7055'));
  computed('k 1.3: 8.1225 h', derived, () => expectPrinted(of({ peukertExponent: 1.3 }).runTimeH!, '8.1225'));
  const twenty = { source: 'peukert-law', place: '100 Ah at 20 h, k 1.2, 20 A', status: 'derived' } as const;
  computed('3.789 h', twenty, () => expectPrinted(of({ currentA: 20 }).runTimeH!, '3.789'));
  computed('75.8 Ah', twenty, () => expectPrinted(of({ currentA: 20 }).drawnAh!, '75.8'));
  // The exponent was worked out of these hours: it has to give them back.
  const guide = { source: 'battery-guides', place: '10 A about 7.5 h where 5 A is 20 h', status: 'derived' } as const;
  computed('k 1.415 gives 7.5 h', guide, () => expectPrinted(of({ peukertExponent: 1.415 }).runTimeH!, '7.5'));

  const cell = {
    source: 'lessons-electric-circuits',
    place: 'volume I, chapter 11, batteries',
    status: 'published',
  } as const;
  const plain = { peukertExponent: 1, ratedChargeAh: 70, belowRate: 'rated-charge' } as const;
  computed('70 Ah at 3.5 A: 20 h', cell, () => expectPrinted(of({ ...plain, currentA: 3.5 }).runTimeH!, '20'));
  computed('at 70 A: 1 h', cell, () => expectPrinted(of({ ...plain, currentA: 70 }).runTimeH!, '1'));

  const table = { source: 'battery-guides', place: 'typical exponents by kind', status: 'common-practice' } as const;
  const rows = [
    ['flooded', 1.2, 1.6],
    ['AGM', 1.05, 1.15],
    ['gel', 1.1, 1.25],
  ] as const;
  // Reserve capacity: minutes at 25 A. Taken as a rating of its own it gives its ampere-hours, and has to come back.
  const reserve = {
    source: 'battery-maker-list',
    place: 'reserve capacity, minutes at 25 A',
    status: 'derived',
  } as const;
  for (const [minutes, charge] of [
    [115, '47.9'],
    [160, '66.7'],
    [180, '75.0'],
  ] as const) {
    const found = of({ ratedChargeAh: (25 * minutes) / 60, ratedTimeH: minutes / 60, currentA: 25 });
    computed(`${minutes} min at 25 A: ${charge} Ah`, reserve, () => expectPrinted(found.drawnAh!, charge));
    it(`and the ${minutes} min that were put in`, () => expectPrinted(60 * found.runTimeH!, String(minutes)));
  }
  for (const row of rows) transcribed(row[0], table, () => expect(peukertExponents.rows).toContainEqual(row));
  it('has no more rows', () => expect(peukertExponents.rows).toHaveLength(rows.length));
});

describe('independent', () => {
  it('stages: a discharge in small steps', () => {
    const stages = [
      { currentA: 40, runTimeH: 0.5 },
      { currentA: 0, runTimeH: 3 },
      { currentA: 8, runTimeH: 1.5 },
    ];
    const found = of({ stages, endChargeFraction: 0.25, currentA: 15 });
    // Charge left counted down minute by minute, the law as a rate of loss: dq/dt = −(I H / C)^k / H.
    const rate = (amps: number): number => ((amps * 20) / 100) ** 1.2 / 20;
    let left = 1;
    for (const { currentA, runTimeH } of stages) {
      const steps = Math.round(runTimeH * 6000);
      for (let i = 0; i < steps; i++) left -= rate(currentA) / 6000;
    }
    expectWithin(found.afterStagesFraction, left, 1e-9);
    let steps = 0;
    for (; left > 0.25; steps++) left -= rate(15) / 6000;
    expect(Math.abs(found.runTimeH! - steps / 6000)).toBeLessThan(1.5 / 6000);
    expectWithin(found.totalTimeH!, 5 + found.runTimeH!, 1e-12);
  });
});

describe('laws', () => {
  const positive = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
  it('the refused form is off by the same at every current', () => {
    fc.assert(
      fc.property(positive(1, 500), positive(1, 2), positive(10, 300), (currentA, peukertExponent, ratedChargeAh) => {
        const found = of({ currentA, peukertExponent, ratedChargeAh });
        expectWithin(found.unreferencedTimeH! / found.fullTimeH!, found.unreferencedRatio, 1e-9);
      }),
    );
  });
  it('twice the current lasts 2^k shorter; at the rated current the rated time; k = 1 is plain ampere-hours', () => {
    fc.assert(
      fc.property(positive(1, 200), positive(1, 2), (currentA, peukertExponent) => {
        const one = of({ currentA, peukertExponent });
        expectWithin(
          one.runTimeH! / of({ currentA: 2 * currentA, peukertExponent }).runTimeH!,
          2 ** peukertExponent,
          1e-9,
        );
        expectWithin(of({ currentA: 5, peukertExponent }).runTimeH!, 20, 1e-12);
        expectWithin(of({ currentA, peukertExponent: 1 }).runTimeH!, one.plainTimeH!, 1e-12);
      }),
    );
  });
  it('below the rated current the charge is the rated one, unless the law is asked to promise more', () => {
    expectWithin(of({ currentA: 1, belowRate: 'rated-charge' }).drawnAh!, 100, 1e-12);
    expect(of({ currentA: 1 }).drawnAh).toBeGreaterThan(100);
    expect(of({ currentA: 10, belowRate: 'rated-charge' })).toEqual(of({ currentA: 10 }));
  });
  it('is in proportion to the part of the charge', () => {
    expectWithin(of({ endChargeFraction: 0.5 }).runTimeH!, of({}).runTimeH! / 2, 1e-12);
  });
  it('swapping two inputs of a kind is seen', () => {
    swapsMatter(runTime, { ...base, startChargeFraction: 0.9, endChargeFraction: 0.2 });
  });
});

describe('edges', () => {
  it('without a current there is no number', () => {
    expect(runTime({ ...base, currentA: 0 })).toMatchObject({
      runTimeH: null,
      runTimeReason: 'no-current',
      totalTimeH: null,
    });
  });
  it('a stage that takes too much is named; exactly all is not too much', () => {
    const stage = { currentA: 5, runTimeH: 10 };
    expect(runTime({ ...base, stages: [stage, stage] })).toMatchObject({ possible: true, runTimeH: 0 });
    const over = runTime({ ...base, stages: [stage, { currentA: 5, runTimeH: 10.1 }] });
    expect(over).toMatchObject({ possible: false, code: 'empty-before' });
    expect(over.possible || over.because).toContain('stage 2 of 2');
  });
  it('the form without the hour rate is refused by name, with the reason and what it is off by', () => {
    const refused = runTime({ ...base, form: 'unreferenced' });
    expect(refused).toMatchObject({ possible: false, code: 'unreferenced-form', nearest: runTime(base) });
    expect(refused.possible || refused.because).toContain('0.725 times');
  });
  it('refuses nonsense', () => {
    refusesNonsense(runTime, base, {
      required: [
        ...(['ratedChargeAh', 'ratedTimeH', 'peukertExponent', 'startChargeFraction'] as const),
        ...(['endChargeFraction', 'currentA'] as const),
      ],
    });
    expectInputError(() => runTime({ ...base, form: 'other' as never }), 'form', 'oneOf');
    expectInputError(() => runTime({ ...base, belowRate: undefined as never }), 'belowRate', 'missing');
    expectInputError(() => runTime({ ...base, peukertExponent: 0.99 }), 'peukertExponent', 'atLeast');
    expectInputError(() => runTime({ ...base, peukertExponent: 2.01 }), 'peukertExponent', 'atMost');
    expectInputError(() => runTime({ ...base, endChargeFraction: 1 }), 'endChargeFraction', 'below');
    expectInputError(() => runTime({ ...base, startChargeFraction: 1.01 }), 'startChargeFraction', 'atMost');
    expectInputError(() => runTime({ ...base, currentA: -1 }), 'currentA', 'atLeast');
    expectInputError(
      () => runTime({ ...base, stages: [{ currentA: 1, runTimeH: -1 }] }),
      'stages[0].runTimeH',
      'atLeast',
    );
    expectInputError(() => runTime({ ...base, stages: [null as never] }), 'stages[0]', 'object');
    expectInputError(() => runTime({ ...base, stages: 3 as never }), 'stages', 'list');
    expect(() => runTime({ ...base, endChargeFraction: 1 })).toThrow(
      'runTime: endChargeFraction must be below startChargeFraction, 1, got 1',
    );
  });
  it('never runs out of numbers', () => neverRunsOut(runTime, base));
});
