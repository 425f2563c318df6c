import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  ac4313Switch12V,
  ac4313Switch28V,
  checkRelay,
  type CheckRelayInput,
  milPrf22885Rating,
  milR5757Lamp,
  relayMakerInrush,
  relayMakerRating,
  relayModuleInrush,
  switchMakerRating,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const lamps: CheckRelayInput = {
  load: 'lamp',
  currentA: 5,
  supplyV: 12,
  ratingRule: ac4313Switch12V,
  ratedA: 30,
  ratedV: 14,
  ambientTempC: 40,
  fullToTempC: 85,
  noneAtTempC: 125,
};

describe('published', () => {
  const table = { source: 'ac-43-13-1b', place: 'table 11-4, page 11-17', status: 'published' } as const;
  for (const [rule, load, currentA, needs] of [
    [ac4313Switch12V, 'lamp', 5, '25'],
    [ac4313Switch12V, 'inductive', 3, '6'],
    [ac4313Switch12V, 'resistive', 7, '7'],
    [ac4313Switch12V, 'motor', 9, '18'],
    [ac4313Switch28V, 'lamp', 5, '40'],
    [ac4313Switch28V, 'inductive', 3, '12'],
    [ac4313Switch28V, 'resistive', 7, '14'],
    [ac4313Switch28V, 'motor', 9, '27'],
  ] as const) {
    computed(`${rule.key}: ${load} of ${currentA} A needs a switch of ${needs} A`, table, () =>
      expectPrinted(checkRelay({ ...lamps, load, currentA, ratingRule: rule }).neededRatingA, needs),
    );
  }
  const maker = (source: typeof switchMakerRating.source, place: string) =>
    ({ source, place, status: 'published' }) as const;
  for (const [rule, load, needs] of [
    [switchMakerRating, 'lamp', '50'],
    [switchMakerRating, 'motor', '30'],
    [relayMakerRating, 'lamp', '25'],
  ] as const) {
    computed(`${rule.key}: ${load} of 5 A needs ${needs} A`, maker(rule.source, rule.place), () =>
      expectPrinted(checkRelay({ ...lamps, load, ratingRule: rule }).neededRatingA, needs),
    );
  }
  computed('4 A inductive ask for the 7 A resistive', maker('mil-prf-22885', 'table III'), () =>
    expectPrinted(
      checkRelay({ ...lamps, load: 'inductive', currentA: 4, supplyV: 28, ratingRule: milPrf22885Rating })
        .neededRatingA,
      '7',
    ),
  );
  computed('which is a ratio of .57', maker('mil-prf-22885', 'table III'), () =>
    expectPrinted(1 / checkRelay({ ...lamps, load: 'inductive', ratingRule: milPrf22885Rating }).ratio, '.57'),
  );
  computed('10 A at 28 V d.c. become 3.4 A at 55 V', maker('automotive-relay-notes', 'maker note 101'), () =>
    expectPrinted(
      checkRelay({ ...lamps, load: 'resistive', currentA: 1, supplyV: 55, ratedA: 10, ratedV: 28 }).ratingA,
      '3.4',
    ),
  );
  const rules = {
    ...lamps,
    ratingRule: { ...ac4313Switch12V, rows: relayModuleInrush.rows.map(([kind]) => [kind, 1, 1]) },
  } as CheckRelayInput;
  for (const [load, low, high] of [
    ['resistive', '1', '1'],
    ['solenoid', '10', '20'],
    ['motor', '5', '10'],
    ['lamp', '10', '15'],
    ['mercury-lamp', '3', '3'],
    ['sodium-lamp', '1', '3'],
    ['capacitor', '20', '40'],
    ['transformer', '5', '15'],
  ] as const) {
    computed(
      `${load} of 1 A: first current ${low} to ${high} A`,
      maker('relay-module-manual', 'inrush by load'),
      () => {
        const { inrushLowA, inrushHighA } = checkRelay({ ...rules, load, currentA: 1, inrushRule: relayModuleInrush });
        expectPrinted(inrushLowA!, low);
        expectPrinted(inrushHighA!, high);
      },
    );
  }
  for (const [load, low, high] of [
    ['motor', '6', '6'],
    ['lamp', '10', '15'],
  ] as const) {
    computed(
      `${load} of 1 A: first current ${low} to ${high} A`,
      maker('automotive-relay-notes', 'usual questions'),
      () => {
        const { inrushLowA, inrushHighA } = checkRelay({ ...rules, load, currentA: 1, inrushRule: relayMakerInrush });
        expectPrinted(inrushLowA!, low);
        expectPrinted(inrushHighA!, high);
      },
    );
  }
  computed('lamp load of 2 A makes 24 A', maker('mil-r-5757', 'make 12 times rated'), () =>
    expectPrinted(checkRelay({ ...lamps, currentA: 2, inrushRule: milR5757Lamp }).inrushHighA!, '24'),
  );
});

describe('independent', () => {
  it('leaves what a straight line of the data sheet leaves', () => {
    for (const [tempC, left] of [
      [-40, 1],
      [85, 1],
      [95, 0.75],
      [105, 0.5],
      [125, 0],
      [150, 0],
    ] as const) {
      expectWithin(checkRelay({ ...lamps, ambientTempC: tempC }).ratingA, 30 * left, 1e-12);
    }
  });
});

describe('laws', () => {
  it('more heat, volts or current never leaves more room, and a better contact never less', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('ambientTempC' as const, 'supplyV' as const, 'currentA' as const, 'ratedA' as const),
        fc.double({ min: 0.01, max: 40, noNaN: true }),
        (key, more) => {
          const room = (input: CheckRelayInput): number => checkRelay(input).checks[0]!.marginFraction!;
          const a = room({ ...lamps, ambientTempC: 84 });
          const b = room({ ...lamps, ambientTempC: 84, [key]: (key === 'ambientTempC' ? 84 : lamps[key]) + more });
          if (key === 'ratedA') expect(b).toBeGreaterThanOrEqual(a);
          else expect(b).toBeLessThanOrEqual(a);
        },
      ),
    );
  });
  it('two swapped inputs of one kind do not go unseen', () => {
    const full = {
      ...lamps,
      ambientTempC: 95,
      supplyV: 24,
      inrushA: 50,
      makeA: 60,
      brokenA: 6,
      breakA: 35,
      leastA: 0.02,
    };
    swapsMatter(checkRelay, full);
  });
});

describe('edges', () => {
  it('judges closing, opening and cleaning where they are given', () => {
    const { checks, decidedBy } = checkRelay({
      ...lamps,
      inrushRule: relayModuleInrush,
      makeA: 70,
      brokenA: 20,
      breakA: 30,
      leastA: 0.02,
    });
    expect(checks.map(({ name, ok, source }) => [name, ok, source])).toEqual([
      ['rating for this kind of load', true, 'ac-43-13-1b'],
      ['current as it closes', false, 'relay-module-manual'],
      ['current as it opens', true, 'given-by-caller'],
      ['current that keeps it clean', true, 'given-by-caller'],
    ]);
    expect(decidedBy).toBe('current as it closes');
    const plain = checkRelay({ ...lamps, makeA: 6, breakA: 4 });
    expect(plain.checks.map(({ value, ok }) => [value, ok])).toEqual([
      [25, true],
      [5, true],
      [5, false],
    ]);
    expect(plain).toMatchObject({ inrushLowA: null, inrushHighA: null });
    expect(checkRelay({ ...lamps, inrushA: 44 })).toMatchObject({ inrushLowA: 44, inrushHighA: 44 });
  });
  it('fails, with a number, where the heat leaves nothing', () => {
    const { checks, ratingA } = checkRelay({ ...lamps, ambientTempC: 130 });
    expect(ratingA).toBe(0);
    expect(checks[0]).toMatchObject({ ok: false, limit: 0 });
    expect(Number.isFinite(checks[0]!.marginFraction)).toBe(true);
  });
  it('refuses a rule that does not speak of this load or of this use', () => {
    expectInputError(() => checkRelay({ ...lamps, load: 'capacitor' }), 'load', 'inTable');
    expectInputError(() => checkRelay({ ...lamps, ratingRule: relayModuleInrush }), 'ratingRule', 'oneOf');
    expectInputError(() => checkRelay({ ...lamps, ratingRule: undefined as never }), 'ratingRule', 'missing');
    expectInputError(() => checkRelay({ ...lamps, inrushRule: ac4313Switch12V }), 'inrushRule', 'oneOf');
    expectInputError(
      () => checkRelay({ ...lamps, inrushRule: relayModuleInrush, inrushA: 5 }),
      'inrushA',
      'oneOfFields',
    );
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(checkRelay, lamps, {
      required: ['currentA', 'supplyV', 'ratedA', 'ratedV', 'ambientTempC', 'fullToTempC', 'noneAtTempC'],
      optional: ['inrushA', 'makeA', 'brokenA', 'breakA', 'leastA'],
    });
    expectInputError(() => checkRelay({ ...lamps, noneAtTempC: 85 }), 'noneAtTempC', 'atLeast');
    expectInputError(() => checkRelay({ ...lamps, currentA: 0 }), 'currentA', 'above');
  });
});
