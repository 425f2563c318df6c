import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  adaptSender,
  type AdaptSenderDesign,
  type AdaptSenderInput,
  e12,
  e24,
  e3,
  type PreferredSeries,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const american: AdaptSenderInput = {
  senderOhm: [75, 10],
  gaugeOhm: [240, 33],
  series: e24,
  toleranceFraction: 0,
  mostErrorFraction: 0.05,
};
const wide: AdaptSenderInput = { ...american, senderOhm: [0, 280], gaugeOhm: [0, 90] };
const straightOn = { senderSideOhm: 0, acrossOhm: null, gaugeSideOhm: 0 } as const;

/** The design, or the nearest to it. */
function best(input: AdaptSenderInput): AdaptSenderDesign {
  const result = adaptSender(input);
  const design = result.possible ? result : result.nearest;
  if (design === null) throw new Error('none');
  return design;
}
const at = (design: AdaptSenderDesign, level: number): number =>
  design.curve.find((point) => Math.abs(point.levelFraction - level) < 1e-9)!.shownFraction;

describe('published', () => {
  const w3 = {
    source: 'circuit-theory',
    place: 'worked case: sender and gauge that do not match',
    status: 'derived',
  } as const;
  const { plain } = best(american);
  computed('75 to 10 Ω on 240 to 33: shown at empty', w3, () => {
    expectPrinted(plain.emptyShownFraction, '0.797');
  });
  computed('75 to 10 Ω on 240 to 33: leaves full at', w3, () => {
    expectPrinted(plain.leavesFullFraction!, '0.646');
  });
  const thirty = best({ ...american, senderOhm: [110, 3], network: { ...straightOn, gaugeSideOhm: 30 } });
  (['full', 'half', 'empty'] as const).forEach((where, i) => {
    computed(`110 to 3 Ω with 30 Ω in series: ${where}`, w3, () => {
      expectPrinted(thirty[`${where}ShownFraction`], ['1.00', '0.742', '0.483'][i]!);
    });
  });
  computed('not possible, because', w3, () => {
    const result = adaptSender(american);
    expect(result).toMatchObject({ possible: false, code: 'span-too-small' });
    expect(result.possible ? '' : result.because).toContain('resistors never widen a span');
    expect(adaptSender({ ...american, senderOhm: [110, 3] })).toMatchObject({
      possible: false,
      code: 'span-too-small',
    });
  });
  const w4 = {
    source: 'circuit-theory',
    place: 'worked case: parallel resistor, 0 to 280 Ω on 0 to 90 Ω',
    status: 'derived',
  } as const;
  const both = best({ ...wide, network: { ...straightOn, acrossOhm: 132.63 } });
  computed('132.63 Ω makes both ends right', w4, () => {
    expect(both.emptyShownFraction).toBe(0);
    expectPrinted(both.fullShownFraction, '1.0000');
  });
  ['0.509', '0.757', '0.903'].forEach((print, i) => {
    computed(`132.63 Ω at ${25 * (i + 1)} %`, w4, () => {
      // Levels of a quarter lie between the eleven of the curve: read them as the middle of a tank half as high.
      const half = best({ ...wide, senderOhm: [0, 140 * (i + 1)], network: { ...straightOn, acrossOhm: 132.63 } });
      expectPrinted(half.halfShownFraction, print);
    });
  });
  const stock = best({ ...wide, network: { ...straightOn, acrossOhm: 130 } });
  computed('130 Ω: full', w4, () => {
    expectPrinted(stock.fullShownFraction, '0.986');
  });
  computed('130 Ω: half', w4, () => {
    expectPrinted(stock.halfShownFraction, '0.749');
  });
});

/** Worst error over a fine grid of levels, by a formula of its own. */
function onGrid(input: AdaptSenderInput, s: number, p: number, g: number, t = 0, steps = 800): number {
  const along = (list: readonly number[], x: number): number => {
    const k = Math.min(list.length - 2, Math.floor(x * (list.length - 1)));
    return list[k]! + (list[k + 1]! - list[k]!) * (x * (list.length - 1) - k);
  };
  const dial = (ohm: number): number => {
    // Bisection on the dial: it needs no formula for the pieces.
    const rises = input.gaugeOhm.at(-1)! > input.gaugeOhm[0]!;
    let [low, high] = [0, 1];
    for (let k = 0; k < 44; k++) {
      const middle = (low + high) / 2;
      if (along(input.gaugeOhm, middle) < ohm === rises) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  let worst = 0;
  for (const f of t === 0 ? [1] : [1 - t, 1 + t]) {
    for (let i = 0; i <= steps; i++) {
      const r = along(input.senderOhm, i / steps) + s * f;
      const seen = g * f + (p === Infinity ? r : r === 0 ? 0 : 1 / (1 / r + 1 / (p * f)));
      worst = Math.max(worst, Math.abs(dial(seen) - i / steps));
    }
  }
  return worst;
}

describe('independent', () => {
  const few: PreferredSeries = { ...e12, key: 'few', values: [10, 33] };
  const cases: readonly (readonly [readonly number[], readonly number[]])[] = [
    [
      [75, 10],
      [240, 33],
    ],
    [
      [0, 280],
      [0, 90],
    ],
    [
      [110, 3],
      [240, 33],
    ],
    [
      [240, 188, 136, 84, 33],
      [180, 90, 10],
    ],
    [
      [10, 60, 180],
      [0, 48, 95, 143, 190],
    ],
  ];
  it.each(cases)('no network of a small series does better: %j on %j', (senderOhm, gaugeOhm) => {
    for (const toleranceFraction of [0, 0.05]) {
      const input = { ...american, senderOhm, gaugeOhm, series: few, toleranceFraction, mostErrorFraction: 0 };
      const design = best(input);
      const span = Math.abs(gaugeOhm[0]! - gaugeOhm.at(-1)!);
      const values = [-3, -2, -1, 0, 1, 2, 3, 4]
        .flatMap((decade) => [Number(`1e${decade}`), Number(`3.3e${decade}`)])
        .filter((ohm) => ohm >= span / 200 && ohm <= 100 * Math.max(...senderOhm, ...gaugeOhm));
      let least = Infinity;
      for (const s of [0, ...values])
        for (const p of [...values, Infinity])
          for (const g of [0, ...values])
            if (onGrid(input, s, p, g, toleranceFraction, 8) < least)
              least = Math.min(least, onGrid(input, s, p, g, toleranceFraction, 200));
      // A grid may miss the very peak, never find one above it.
      expect(design.worstErrorFraction).toBeGreaterThanOrEqual(least - 1e-9);
      expect(design.worstErrorFraction).toBeLessThanOrEqual(least + 0.004);
      const own = onGrid(
        input,
        design.senderSideOhm,
        design.acrossOhm ?? Infinity,
        design.gaugeSideOhm,
        toleranceFraction,
      );
      expect(Math.abs(own - design.worstErrorFraction)).toBeLessThan(0.002);
    }
  });
  it('a circuit simulator sees the same ohms', async () => {
    const network = { senderSideOhm: 22, acrossOhm: 150, gaugeSideOhm: 8.2 };
    const design = best({ ...wide, network });
    const v = await simulate(
      [0, 5, 10]
        .flatMap((k) => [
          `i${k} 0 g${k} 1`,
          `rg${k} g${k} m${k} 8.2`,
          `rp${k} m${k} 0 150`,
          `rs${k} m${k} x${k} 22`,
          k === 0 ? `vx${k} x${k} 0 0` : `rx${k} x${k} 0 ${28 * k}`,
        ])
        .concat('.op')
        .join('\n'),
    );
    for (const k of [0, 5, 10]) expectWithin(design.curve[k]!.seenOhm, v[`v(g${k})`]![0]!, 1e-9);
  });
});

describe('laws', () => {
  const ohm = fc.double({ min: 1, max: 500, noNaN: true });
  const network = fc.record({
    senderSideOhm: evenly(0, 1000),
    acrossOhm: fc.option(fc.double({ min: 1, max: 1e4, noNaN: true })),
    gaugeSideOhm: evenly(0, 1000),
  });
  it('resistors never widen an ohm span nor turn it round', () => {
    fc.assert(
      fc.property(ohm, ohm, network, (a, b, between) => {
        fc.pre(Math.abs(a - b) > 1e-6);
        const { curve } = best({
          ...american,
          senderOhm: [a, b],
          gaugeOhm: a > b ? [240, 33] : [33, 240],
          network: between,
        });
        for (let i = 1; i < curve.length; i++) {
          const step = curve[i]!.seenOhm - curve[i - 1]!.seenOhm;
          expect(step * (b - a)).toBeGreaterThanOrEqual(-1e-9);
          expect(Math.abs(step)).toBeLessThanOrEqual(Math.abs(b - a) / 10 + 1e-9);
          expect(curve[i]!.shownFraction).toBeGreaterThanOrEqual(curve[i - 1]!.shownFraction);
        }
      }),
    );
  });
  it('no network of the series beats the one that was found', () => {
    const sets = [american, wide, { ...american, senderOhm: [110, 60, 3] }];
    for (const set of sets) {
      const found = best({ ...set, mostErrorFraction: 0 }).worstErrorFraction;
      fc.assert(
        fc.property(
          fc.tuple(...[0, 1, 2].map(() => fc.constantFrom(0, ...e24.values, ...e24.values.map((v) => v * 10)))),
          ([s, p, g]) => {
            const other = { senderSideOhm: s!, acrossOhm: p === 0 ? null : p!, gaugeSideOhm: g! };
            expect(best({ ...set, network: other }).worstErrorFraction).toBeGreaterThanOrEqual(found - 1e-12);
          },
        ),
        { numRuns: 60 },
      );
    }
  });
  it('a sender that fits needs nothing, and fewer resistors are taken where they do', () => {
    expect(adaptSender({ ...american, senderOhm: [240, 33] })).toMatchObject({
      possible: true,
      ...straightOn,
      worstErrorFraction: 0,
    });
    const one = best({ ...american, senderOhm: [210, 3] });
    expect(one).toMatchObject({ senderSideOhm: 30, acrossOhm: null, gaugeSideOhm: 0 });
    expectWithin(at(one, 0.3), 0.3, 1e-12);
  });
  it('tolerance only makes it worse, and both bounds are met', () => {
    const loose = best({ ...wide, network: { ...straightOn, acrossOhm: 130 }, toleranceFraction: 0.05 });
    const exact = best({ ...wide, network: { ...straightOn, acrossOhm: 130 } });
    expect(loose.mostOverFraction).toBeGreaterThan(exact.mostOverFraction);
    const high = best({ ...wide, network: { ...straightOn, acrossOhm: 130 * 1.05 } });
    expectWithin(loose.mostOverFraction, high.mostOverFraction, 1e-12);
  });
  it('does not mistake sender for gauge', () => {
    const swapped = adaptSender({ ...wide, senderOhm: wide.gaugeOhm, gaugeOhm: wide.senderOhm });
    expect(swapped).not.toEqual(adaptSender(wide));
    expect(swapped).toMatchObject({ possible: false, code: 'span-too-small' });
  });
});

describe('edges', () => {
  it('says so when the sender runs the other way', () => {
    const result = adaptSender({ ...american, senderOhm: [10, 180] });
    expect(result).toMatchObject({ possible: false, code: 'inverted' });
    const because = result.possible ? '' : result.because;
    expect(because).toContain(
      'the sender rises in ohms from empty to full and the gauge falls: no resistor turns that round; the best is off by',
    );
    expectInputError(() => adaptSender({ ...american, senderOhm: [10, 180], series: undefined as never }), 'series');
  });
  it('names the nearest where the sender runs the other way: of what shows too much and too little, about half a dial', () => {
    const turned = { ...american, senderOhm: [10, 180] };
    const nearest = best(turned);
    // Shown falls as the level rises, so empty shows at least half too much or full at least half too little.
    expect(nearest.worstErrorFraction).toBeGreaterThanOrEqual(0.5);
    expect(nearest.worstErrorFraction).toBeLessThan(0.55);
    expectWithin(
      nearest.worstErrorFraction,
      onGrid(turned, nearest.senderSideOhm, nearest.acrossOhm ?? Infinity, nearest.gaugeSideOhm),
      1e-9,
    );
    for (const gaugeSideOhm of [0, 30, 130]) {
      const given = { ...straightOn, gaugeSideOhm };
      const tried = adaptSender({ ...turned, network: given });
      expect(tried).toMatchObject({ possible: false, code: 'inverted', nearest: given });
      expect(tried.possible ? '' : tried.because).toContain('this network is off by');
      expectWithin(
        best({ ...turned, network: given }).worstErrorFraction,
        onGrid(turned, 0, Infinity, gaugeSideOhm),
        1e-9,
      );
    }
  });
  it('tells a span that is too small from a curve that bends', () => {
    expect(adaptSender({ ...wide, mostErrorFraction: 0.001 })).toMatchObject({ possible: false, code: 'too-bent' });
    expect(adaptSender({ ...wide, mostErrorFraction: 0.001, network: straightOn })).toMatchObject({
      code: 'network-off',
    });
  });
  it('has no level at which the pointer leaves full where it never stands there', () => {
    const { plain } = best({ ...american, senderOhm: [110, 50] });
    expect(plain.leavesFullFraction).toBeNull();
    expect(plain.reachesEmptyFraction).toBeNull();
  });
  it('refuses nonsense', () => {
    refusesNonsense(adaptSender, american, { required: ['toleranceFraction', 'mostErrorFraction'] });
    expectInputError(() => adaptSender({ ...american, senderOhm: [75] }), 'senderOhm', 'list');
    const many = Array.from({ length: 101 }, (_, i) => 300 - i);
    expectInputError(() => adaptSender({ ...american, senderOhm: many }), 'senderOhm.length', 'atMost');
    expectInputError(() => adaptSender({ ...american, gaugeOhm: [240, 33, 33] }), 'gaugeOhm[2]', 'order');
    expectInputError(() => adaptSender({ ...american, gaugeOhm: [240, -1] }), 'gaugeOhm[1]');
    expectInputError(() => adaptSender({ ...american, series: undefined as never }), 'series', 'missing');
    expectInputError(() => adaptSender({ ...american, mostErrorFraction: 1 }), 'mostErrorFraction', 'below');
    const network = (over: object) => () => adaptSender({ ...american, network: { ...straightOn, ...over } });
    expectInputError(() => adaptSender({ ...american, network: null as never }), 'network', 'object');
    expectInputError(network({ senderSideOhm: -1 }), 'network.senderSideOhm');
    expectInputError(network({ acrossOhm: 0 }), 'network.acrossOhm');
    expectInputError(network({ gaugeSideOhm: NaN }), 'network.gaugeSideOhm');
  });
  it('never runs out of numbers', () => {
    neverRunsOut(
      (input: { a: number; b: number; c: number; d: number; toleranceFraction: number }) =>
        adaptSender({
          ...wide,
          series: e3,
          senderOhm: [input.a, input.b],
          gaugeOhm: [input.c, input.d],
          toleranceFraction: input.toleranceFraction,
        }),
      { a: 0, b: 280, c: 0, d: 90, toleranceFraction: 0.05 },
      60,
    );
  });
});
