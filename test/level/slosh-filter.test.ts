import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { rcFilter, sloshFilter, type SloshFilterInput, type SloshFilter, type SloshWay } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const base: SloshFilterInput = {
  sloshL: 6,
  shortPeriodS: 1,
  longPeriodS: 2.6,
  sampleS: 0.1,
  mostRippleL: 0.5,
  fuelUseLPerH: 20,
  mostLagL: 0.5,
  refuelL: 20,
  mostSettleS: 60,
  kinds: ['first-order', 'moving-average', 'moving-median'],
};
function made(input: SloshFilterInput): SloshFilter {
  const result = sloshFilter(input);
  if (result.possible) return result;
  if (result.nearest === null) throw new Error(result.because);
  return result.nearest;
}
const way = (input: SloshFilterInput, kind: SloshWay['kind']): SloshWay =>
  made({ ...input, kinds: [kind], mostLagL: 1e6, mostSettleS: 1e6 });

describe('published', () => {
  const hand = (place: string) =>
    ({ source: 'circuit-theory', place: `by hand: ${place}`, status: 'derived' }) as const;
  // Six samples a period: 2 sin 30° is 1. A third of the power left: a + 1/a = 2 + 1/2, so a = 1/2.
  const half: SloshFilterInput = {
    ...base,
    sampleS: 0.5,
    shortPeriodS: 3,
    longPeriodS: 3,
    sloshL: Math.sqrt(3),
    mostRippleL: 1,
    refuelL: 8,
    fuelUseLPerH: 36,
    kinds: ['first-order'],
  };
  const first = hand('six samples a period');
  computed('half of the new reading, 0.7213 s', first, () => {
    expectPrinted(made(half).newFraction!, '0.50000');
    expectPrinted(made(half).timeConstantS!, '0.7213');
    expectPrinted(made(half).rippleL, '1.0000');
  });
  computed('behind by two samples: 1 s, 0.01 L at 36 L/h', first, () => {
    expectPrinted(made(half).lagS, '1.0000');
    expectPrinted(made(half).lagL, '0.010000');
  });
  computed('an eighth is left after three samples: 1.5 s', first, () => expectPrinted(made(half).settleS, '1.500'));
  const average = hand('an average over one period');
  const whole: SloshFilterInput = { ...base, shortPeriodS: 1, longPeriodS: 1, kinds: ['moving-average'] };
  computed('ten samples of a tenth of a period leave nothing', average, () => {
    const { sampleCount, rippleL, lagS } = made({ ...whole, mostRippleL: 0.0001 });
    expect(sampleCount).toBe(10);
    expectPrinted(rippleL, '0.000000000');
    expectPrinted(lagS, '0.5500');
  });
  // |sin 2x / (2 sin x)| = cos x; a quarter period between samples is x = 45°.
  computed('two samples a quarter apart leave 0.7071', average, () => {
    const { sampleCount, rippleL } = made({ ...whole, sampleS: 0.25, sloshL: 1, mostRippleL: 0.71 });
    expect(sampleCount).toBe(2);
    expectPrinted(rippleL, '0.7071');
  });
  computed('of 20 L all but 0.5 in an average of ten: after 9.75, so ten samples', average, () => {
    expectPrinted(made({ ...whole, mostRippleL: 0.5, sloshL: 1e4 }).settleS, '1.0000');
  });
  const lamp = hand('a lamp and a level that sways');
  computed('without use it needs the whole sway, 12 L', lamp, () => {
    expectPrinted(made({ ...base, fuelUseLPerH: 0 }).bareHysteresisL, '12.000');
  });
  // Use at half the steepest fall, 6 · 2π/1 L/s: 2 · 6 (√¾ − ½ · π/3).
  computed('with half the steepest fall 4.1091 L', lamp, () => {
    expectPrinted(made({ ...base, fuelUseLPerH: 6 * Math.PI * 3600, mostLagL: 1e9 }).bareHysteresisL, '4.1091');
  });
  computed('with more than that none', lamp, () => {
    expectPrinted(made({ ...base, fuelUseLPerH: 12.1 * Math.PI * 3600, mostLagL: 1e9 }).bareHysteresisL, '0.000');
  });
});

const { first, average, median, step } = JSON.parse(readFileSync(new URL('slosh.json', import.meta.url), 'utf8')) as {
  first: readonly { old: number; sampleS: number; periodS: number; share: number }[];
  average: readonly { count: number; share: number }[];
  median: readonly { count: number; share: number }[];
  step: readonly { old: number; sampleS: number; rest: number; samples: number; behindS: number }[];
};

describe('independent', () => {
  it.each(first)('a wave through lfilter: $old of the old value, $sampleS of $periodS s', (row) => {
    const { old, sampleS, periodS, share } = row;
    const input = { ...base, sloshL: 1, mostRippleL: share, sampleS, shortPeriodS: periodS, longPeriodS: periodS };
    const found = way(input, 'first-order');
    expectWithin(1 - found.newFraction!, old, 1e-6);
    expectWithin(found.rippleL, share, 1e-6);
  });
  it.each(step)(
    'a step and a ramp through lfilter: $old of the old value',
    ({ old, sampleS, rest, samples, behindS }) => {
      // Any period will do: the ripple is set so that the filter is this one.
      const periodS = 20 * sampleS;
      const half = Math.sin((Math.PI * sampleS) / periodS);
      const share = (1 - old) / Math.sqrt((1 - old) ** 2 + 4 * old * half ** 2);
      const input = { ...base, sloshL: 1, mostRippleL: share, sampleS, shortPeriodS: periodS, longPeriodS: periodS };
      const found = way({ ...input, refuelL: share / rest }, 'first-order');
      expectWithin(found.settleS, samples * sampleS, 1e-9);
      expectWithin(found.lagS - sampleS, behindS, 1e-6);
    },
  );
  it.each(average)('the worst of four hundred waves through an average of $count', ({ count, share }) => {
    const found = way({ ...base, sloshL: 1, mostRippleL: share * (1 + 1e-4) }, 'moving-average');
    // No shorter average holds so much less, so that it is this one that is chosen.
    expect(found.sampleCount).toBeLessThanOrEqual(count);
    expect(found.rippleL).toBeLessThanOrEqual(share * (1 + 1e-4));
    if (found.sampleCount === count) expectWithin(found.rippleL, share, 1e-4);
    if (count <= 21) expect(found.sampleCount).toBe(count);
  });
  it.each([
    [0.6, 1.02],
    [0.6, 1],
    [0.45, 0.99],
    [0.3, 2.6],
  ])(
    'an average leaves no wave of %s to %s s more than it says: samples as turning arrows',
    (shortPeriodS, longPeriodS) => {
      for (const ripple of [0.3, 0.2, 0.1, 0.05]) {
        const input = { ...base, sloshL: 1, shortPeriodS, longPeriodS, mostRippleL: ripple };
        const { sampleCount, rippleL } = way(input, 'moving-average');
        let most = 0;
        for (let k = 0; k <= 2000; k++) {
          const turn = (2 * Math.PI * base.sampleS) / (shortPeriodS + ((longPeriodS - shortPeriodS) * k) / 2000);
          let [x, y] = [0, 0];
          for (let i = 0; i < sampleCount!; i++) [x, y] = [x + Math.cos(turn * i), y + Math.sin(turn * i)];
          most = Math.max(most, Math.hypot(x, y) / sampleCount!);
        }
        expect(most).toBeLessThanOrEqual(rippleL + 1e-9);
        expectWithin(most, rippleL, 1e-3);
        expect(rippleL).toBeLessThanOrEqual(ripple);
      }
    },
  );
  it.each(median.filter(({ count }) => count > 3))(
    'no wave of any phase gets more through a median of $count than it says',
    ({ count, share }) => {
      // The least ripple at which a median of so many samples is taken bounds what it says for it.
      let least = 1;
      for (let r = 1; r > 0.05; r -= 0.004) {
        const result = sloshFilter({
          ...base,
          sloshL: 1,
          mostRippleL: r,
          kinds: ['moving-median'],
          mostLagL: 1e6,
          mostSettleS: 1e6,
        });
        const found = result.possible ? result : result.nearest;
        if (found?.sampleCount === count) least = found.rippleL;
      }
      expect(least).toBeLessThan(1);
      expect(least).toBeGreaterThanOrEqual(share);
      expect(least).toBeLessThan(share + 0.15);
    },
  );
  it('a level that falls and sways: no rise is larger than the hysteresis, and one is as large', () => {
    for (const fuelUseLPerH of [0.5, 300, 4000, 9000]) {
      const { bareHysteresisL } = made({ ...base, sloshL: 1, fuelUseLPerH, mostLagL: 1e6, mostRippleL: 0.1 });
      let [lowest, largest] = [Infinity, 0];
      for (let i = 0; i <= 200_000; i++) {
        const t = (i / 200_000) * 2.2;
        const level = Math.sin((2 * Math.PI * t) / base.shortPeriodS) - (fuelUseLPerH / 3600) * t;
        lowest = Math.min(lowest, level);
        largest = Math.max(largest, level - lowest);
      }
      expectWithin(bareHysteresisL, largest, 1e-6);
    }
  });
  it('where it is read often it is a resistor and a capacitor', () => {
    const found = way({ ...base, sampleS: 0.001 }, 'first-order');
    const rc = rcFilter({
      resistanceOhm: 1e5,
      sourceOhm: 0,
      capacitanceF: found.timeConstantS! / 1e5,
      loadOhm: null,
      frequencyHz: 1 / base.longPeriodS,
    });
    expectWithin(rc.outFraction!, found.rippleL / base.sloshL, 1e-5);
    expectWithin(rc.delayS, found.lagS, 1e-3);
  });
});

describe('laws', () => {
  it('keeps the ripple asked for, and the chosen one settles soonest of those that keep all', () => {
    const ripple = fc.double({ min: 0.2, max: 4, noNaN: true });
    fc.assert(
      fc.property(ripple, fc.double({ min: 1, max: 200, noNaN: true }), (mostRippleL, mostSettleS) => {
        const result = sloshFilter({ ...base, mostRippleL, mostSettleS });
        const found = result.possible ? result : result.nearest!;
        for (const each of found.ways) {
          expect(each.rippleL).toBeLessThanOrEqual(mostRippleL * (1 + 1e-9));
          if (each.meets) expect(found.settleS).toBeLessThanOrEqual(each.settleS);
        }
        expect(result.possible).toBe(found.ways.some(({ meets }) => meets));
      }),
    );
  });
  it('less ripple is more lag; a longer sway is more lag', () => {
    for (const kind of base.kinds) {
      let before = 0;
      for (const mostRippleL of [5, 4, 3.5, 3, 2.8]) {
        const { lagS } = way({ ...base, mostRippleL }, kind);
        expect(lagS).toBeGreaterThanOrEqual(before);
        before = lagS;
      }
    }
    expect(way({ ...base, longPeriodS: 5 }, 'first-order').lagS).toBeGreaterThan(way(base, 'first-order').lagS);
  });
  it('a sway that is allowed whole needs no filter', () => {
    for (const kind of base.kinds) {
      const found = way({ ...base, mostRippleL: 6 }, kind);
      expect(found.rippleL).toBe(6);
      expectWithin(found.lagS, base.sampleS, 1e-12);
      expect(found.sampleCount ?? 1).toBe(1);
    }
    expect(way({ ...base, mostRippleL: 7 }, 'first-order').timeConstantS).toBe(0);
  });
  it('does not mistake one input for another', () => {
    swapsMatter(sloshFilter, { ...base, mostSettleS: 40 });
  });
});

describe('edges', () => {
  it('says what stands in the way', () => {
    expect(sloshFilter({ ...base, mostLagL: 0.001 })).toMatchObject({ possible: false, code: 'lag' });
    expect(sloshFilter({ ...base, mostSettleS: 2 })).toMatchObject({ possible: false, code: 'settling' });
    const still = { ...base, mostRippleL: 6e-6, kinds: ['moving-median'] } as const;
    expect(sloshFilter(still)).toMatchObject({ possible: false, code: 'ripple', nearest: null });
  });
  it('without a filling nothing has to settle', () => {
    const { settleS, checks } = made({ ...base, refuelL: 0 });
    expect(settleS).toBe(0);
    expect(checks.map(({ name }) => name)).toEqual(['ripple', 'lag while fuel is used']);
  });
  it('refuses nonsense', () => {
    refusesNonsense(sloshFilter, base, {
      required: [
        'sloshL',
        'shortPeriodS',
        'longPeriodS',
        'sampleS',
        'mostRippleL',
        'fuelUseLPerH',
        'mostLagL',
        'refuelL',
        'mostSettleS',
      ],
    });
    const bad = (over: Partial<SloshFilterInput>, field: string) => {
      expectInputError(() => sloshFilter({ ...base, ...over }), field);
    };
    bad({ sloshL: 0 }, 'sloshL');
    bad({ shortPeriodS: 0.2 }, 'shortPeriodS');
    bad({ longPeriodS: 0.9 }, 'longPeriodS');
    bad({ longPeriodS: 1001 }, 'longPeriodS');
    bad({ sampleS: 0 }, 'sampleS');
    bad({ mostRippleL: 0 }, 'mostRippleL');
    bad({ fuelUseLPerH: -1 }, 'fuelUseLPerH');
    bad({ mostLagL: 0 }, 'mostLagL');
    bad({ refuelL: -1 }, 'refuelL');
    bad({ mostSettleS: 0 }, 'mostSettleS');
    bad({ kinds: [] }, 'kinds');
    bad({ kinds: ['wish' as never] }, 'kinds[0]');
    bad({ kinds: ['first-order', 'first-order'] }, 'kinds[1]');
    expect(() => sloshFilter({ ...base, shortPeriodS: 0.15 })).toThrow(
      'sloshFilter: shortPeriodS must be above 0.2, got 0.15: what sways faster than it is read looks like a slow wave',
    );
  });
  it('never runs out of numbers', () => {
    neverRunsOut(sloshFilter, { ...base, kinds: ['first-order', 'moving-average'] }, 80);
  });
});
