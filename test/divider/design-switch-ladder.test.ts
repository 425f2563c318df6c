import { describe, expect, it } from 'vitest';
import {
  checkSwitchLadder,
  designSwitchLadder,
  type DesignSwitchLadderInput,
  type DesignSwitchLadderResult,
  e12,
  e24,
  e6,
  type SwitchLadderDesign,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectWithin } from '../support/published.js';

const panel: DesignSwitchLadderInput = {
  supplyV: 5,
  pullOhm: 1000,
  pullTo: 'supply',
  form: 'separate',
  toleranceFraction: 0.05,
  pullToleranceFraction: 0.05,
  wireOhm: 0,
  contactMostOhm: 0,
  leakOhm: null,
  idleOhm: null,
  guardV: 0.1,
  tellShort: true,
  tellOpen: false,
  buttonCount: 5,
  series: e24,
  mostOhm: 100000,
};

const designed = (result: DesignSwitchLadderResult): SwitchLadderDesign => {
  if (!result.possible) throw new Error(result.because);
  return result;
};

/** Everything that must lie apart, smallest room first. */
function roomOf(input: DesignSwitchLadderInput, buttonOhm: readonly number[]): number {
  const { smallestGapV, shortGapV, openGapV } = checkSwitchLadder({ ...input, buttonOhm });
  return Math.min(smallestGapV, input.tellShort ? shortGapV : Infinity, input.tellOpen ? openGapV : Infinity);
}

/** Every rising choice of so many values, judged one by one. */
function exhaustive(input: DesignSwitchLadderInput, values: readonly number[]): number {
  let best = -Infinity;
  const walk = (chosen: readonly number[], from: number): void => {
    if (chosen.length === input.buttonCount) {
      best = Math.max(best, roomOf(input, chosen));
      return;
    }
    for (let k = from; k < values.length; k++) walk([...chosen, values[k]!], input.form === 'separate' ? k + 1 : 1);
  };
  walk([], 0);
  return best;
}

describe('published', () => {
  const w8 = {
    source: 'circuit-theory',
    place: 'worked case: buttons, separate resistors',
    status: 'derived',
  } as const;
  computed('five separate buttons do at least as well as 110/360/750/1300/2700', w8, () => {
    const best = designed(designSwitchLadder(panel));
    expect(Math.min(best.smallestGapV, best.shortGapV)).toBeGreaterThanOrEqual(0.436);
    expect(best.buttonOhm).toHaveLength(5);
  });
});

describe('independent', () => {
  const values = (series: typeof e6, least: number, most: number): number[] =>
    [1, 10, 100, 1000]
      .flatMap((decade) => series.values.map((v) => (v / 10) * decade * 10))
      .filter((v) => v >= least && v <= most);
  it('separate buttons: as good as an exhaustive search', () => {
    for (const buttonCount of [1, 2, 3]) {
      for (const over of [
        {},
        { tellShort: false },
        { wireOhm: 5, contactMostOhm: 30 },
        { idleOhm: 4700, tellOpen: true },
      ]) {
        for (const series of [e6, e12]) {
          const input = { ...panel, ...over, buttonCount, series, mostOhm: 10000, guardV: 0 };
          const best = designed(designSwitchLadder(input));
          expectWithin(roomOf(input, best.buttonOhm), exhaustive(input, [0, ...values(series, 10, 10000)]), 1e-9);
        }
      }
    }
  });
  it('a chain: as good as an exhaustive search', () => {
    for (const buttonCount of [2, 3]) {
      for (const tellShort of [true, false]) {
        const input = {
          ...panel,
          form: 'chain',
          buttonCount,
          series: e6,
          mostOhm: 10000,
          guardV: 0,
          tellShort,
        } as const;
        const best = designed(designSwitchLadder(input));
        expectWithin(roomOf(input, best.buttonOhm), exhaustive(input, [0, ...values(e6, 47, 10000)]), 1e-9);
      }
    }
  });
});

describe('laws', () => {
  it('more buttons, wider parts or a longer wire never leave more room', () => {
    const room = (over: Partial<DesignSwitchLadderInput>): number => {
      const input = { ...panel, guardV: 0, ...over };
      return roomOf(input, designed(designSwitchLadder(input)).buttonOhm);
    };
    const base = room({});
    for (const worse of [{ buttonCount: 6 }, { toleranceFraction: 0.08 }, { wireOhm: 20 }, { contactMostOhm: 50 }]) {
      expect(room(worse)).toBeLessThanOrEqual(base + 1e-12);
    }
    expect(room({ pullTo: 'ground' })).toBeCloseTo(base, 9);
  });
  it('what it gives passes its own check', () => {
    for (const form of ['separate', 'chain'] as const) {
      for (const buttonCount of [1, 3, 5]) {
        const result = designed(designSwitchLadder({ ...panel, form, buttonCount, tellShort: false }));
        expect(result.checks.every((check) => check.ok)).toBe(true);
        expect(result.buttonOhm[0]).toBe(0);
        expect(result.distinctCount).toBe(buttonCount);
      }
    }
  });
  it('does not mistake one input for another', () => {
    swapsMatter(designSwitchLadder, {
      ...panel,
      wireOhm: 3,
      contactMostOhm: 20,
      pullToleranceFraction: 0.01,
      leakOhm: 90000,
      buttonCount: 3,
    });
  });
});

describe('edges', () => {
  it('says how many are possible where so many are not', () => {
    const result = designSwitchLadder({ ...panel, buttonCount: 14, guardV: 0.2 });
    expect(result).toMatchObject({ possible: false, code: 'too-many-buttons', nearest: { possible: true } });
    const nearest = (result as { nearest: SwitchLadderDesign }).nearest;
    expect(nearest.smallestGapV).toBeGreaterThanOrEqual(0.2);
    expect(designSwitchLadder({ ...panel, buttonCount: nearest.buttonOhm.length + 1, guardV: 0.2 }).possible).toBe(
      false,
    );
    expect(designSwitchLadder({ ...panel, guardV: 4.9 })).toMatchObject({ possible: false, nearest: null });
  });
  it('says what a broken wire needs', () => {
    expect(designSwitchLadder({ ...panel, tellOpen: true })).toMatchObject({
      possible: false,
      code: 'open-needs-resistor',
    });
    expect(designSwitchLadder({ ...panel, tellOpen: true, idleOhm: 8200, buttonCount: 3 }).possible).toBe(true);
  });
  it('refuses nonsense', () => {
    refusesNonsense(designSwitchLadder, panel, {
      required: [
        'supplyV',
        'pullOhm',
        'toleranceFraction',
        'pullToleranceFraction',
        'wireOhm',
        'contactMostOhm',
        'guardV',
        'buttonCount',
        'mostOhm',
      ],
      optional: ['leakOhm', 'idleOhm'],
    });
    expectInputError(() => designSwitchLadder({ ...panel, buttonCount: 17 }), 'buttonCount', 'atMost');
    expectInputError(() => designSwitchLadder({ ...panel, buttonCount: 2.5 }), 'buttonCount', 'integer');
    expectInputError(() => designSwitchLadder({ ...panel, series: undefined as never }), 'series', 'missing');
  });
});
