import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  designDivider,
  type DesignDividerInput,
  type DividerDesign,
  e12,
  e24,
  e6,
  e96,
  loadedDivider,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const signal: DesignDividerInput = {
  lowestInV: 8,
  highestInV: 16,
  surgeV: 30,
  fullScaleV: 5,
  inputOhm: null,
  leastSourceOhm: 1000,
  mostSourceOhm: 10000,
  resistorMostW: 0.125,
  clampV: 5.6,
  clampMostA: 0.002,
  mostUnusedFraction: 0.3,
  series: e24,
  toleranceFraction: 0.01,
};

const designed = (input: DesignDividerInput): DividerDesign => {
  const result = designDivider(input);
  if (!result.possible) throw new Error(result.because);
  return result;
};

describe('published', () => {
  // Three resistors that divide 20 V to 5 V in E6: only decades of the ratio 3 exist, and the window picks one.
  const w7 = { source: 'circuit-theory', place: 'worked case: 12 V signal on a 5 V pin', status: 'derived' } as const;
  const twenty = designed({
    ...signal,
    highestInV: 20,
    toleranceFraction: 0,
    leastSourceOhm: 7400,
    mostSourceOhm: 7600,
  });
  computed('20 V to 5 V: resistance at the pin, kΩ', w7, () => {
    expectPrinted(twenty.sourceOhm / 1000, '7.5');
  });
  computed('20 V to 5 V: upper and lower resistor, kΩ', w7, () => {
    expect([twenty.upperOhm, twenty.lowerOhm]).toEqual([30000, 10000]);
  });
  computed('20 V to 5 V: volts at the pin', w7, () => {
    expectPrinted(twenty.outAtHighestV, '5.00');
  });
  const fourteen = designed({
    ...signal,
    highestInV: 14,
    toleranceFraction: 0,
    leastSourceOhm: 6400,
    mostSourceOhm: 6450,
  });
  computed('14 V to 5 V: 18k and 10k', w7, () => {
    expect([fourteen.upperOhm, fourteen.lowerOhm]).toEqual([18000, 10000]);
  });
  computed('18k/10k: clamp current at 30 V, mA', w7, () => {
    expectPrinted(fourteen.clampA * 1000, '0.796');
  });
  computed('18k/10k: 30 V if nothing clamped', w7, () => {
    expectPrinted(fourteen.surgeOutV, '10.71');
  });
  computed('18k/10k: resistance at the pin, kΩ', w7, () => {
    expectPrinted(fourteen.sourceOhm / 1000, '6.43');
  });
});

/** Every pair of a series over the decades, judged from scratch. */
function exhaustive(input: DesignDividerInput): number | null {
  const { series, toleranceFraction: t, surgeV, clampV, clampMostA, resistorMostW } = input;
  const scale = series.values[0]! === 10 ? 1 : 2;
  const all = [1, 2, 3, 4, 5, 6].flatMap((decade) => series.values.map((v) => Number(`${v}e${decade - scale}`)));
  let best: number | null = null;
  for (const r1 of all) {
    for (const r2 of all) {
      const [a, b] = [r1 * (1 - t), r1 * (1 + t)];
      const [c, d] = [r2 * (1 - t), r2 * (1 + t)];
      if ((d / (a + d)) * input.highestInV > input.fullScaleV) continue;
      const at = (r1 * r2) / (r1 + r2);
      if (at < input.leastSourceOhm || at > input.mostSourceOhm) continue;
      if ((surgeV - clampV) / a > clampMostA) continue;
      const pin = Math.min((surgeV * c) / (b + c), clampV);
      if ((surgeV - pin) ** 2 / a > resistorMostW) continue;
      if (Math.min((surgeV * d) / (a + d), clampV) ** 2 / c > resistorMostW) continue;
      const low = input.inputOhm === null ? c : (c * input.inputOhm) / (c + input.inputOhm);
      const unused = 1 - ((low / (b + low)) * input.highestInV) / input.fullScaleV;
      if (best === null || unused < best) best = unused;
    }
  }
  return best;
}

describe('independent', () => {
  it('is the best pair that an exhaustive search finds', () => {
    for (const series of [e6, e12, e24]) {
      for (const highestInV of [5.5, 12, 14.4, 16, 24, 100]) {
        for (const inputOhm of [null, 200000]) {
          const input = {
            ...signal,
            lowestInV: 0,
            mostUnusedFraction: 0.99,
            series,
            highestInV,
            inputOhm,
            surgeV: Math.max(30, highestInV),
            clampMostA: 0.05,
          };
          const result = designDivider(input);
          const expected = exhaustive(input);
          if (expected === null) expect(result.possible).toBe(false);
          else expectWithin((result as DividerDesign).unusedFraction, expected, 1e-9);
        }
      }
    }
  });
  it('the pin’s volts and the clamp current are those of the loaded divider', () => {
    const { upperOhm, lowerOhm, ...design } = designed({ ...signal, inputOhm: 100000, toleranceFraction: 0 });
    const at = (inV: number) =>
      loadedDivider({ inV, sourceOhm: 0, upperOhm, lowerOhm, inputOhm: 100000, fullScaleV: 5, clampV: 5.6 });
    expectWithin(design.outAtHighestV, at(16).outV, 1e-12);
    expectWithin(design.outAtLowestV, at(8).outV, 1e-12);
    // A load takes a little of the clamp's current; the design leaves it out, on the safe side.
    expect(design.clampA).toBeGreaterThan(at(30).clampA);
    expectWithin(design.clampA, at(30).clampA + 5.6 / 100000, 1e-9);
  });
});

describe('laws', () => {
  it('keeps every limit at every corner', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 6, max: 60, noNaN: true }),
        evenlyWithEnds(0, 0.1),
        fc.constantFrom(e12, e24, e96),
        (highestInV, t, series) => {
          const surgeV = highestInV * 1.5;
          const result = designDivider({
            ...signal,
            highestInV,
            lowestInV: 1,
            surgeV,
            series,
            toleranceFraction: t,
            resistorMostW: 1,
          });
          const design = result.possible ? result : result.nearest!;
          for (const a of [1 - t, 1 + t]) {
            for (const b of [1 - t, 1 + t]) {
              const ratio = (design.lowerOhm * b) / (design.lowerOhm * b + design.upperOhm * a);
              expect(ratio * highestInV).toBeLessThanOrEqual(5 * (1 + 1e-12));
              expect(ratio).toBeGreaterThanOrEqual(design.lowOutFraction * (1 - 1e-12));
              expect(ratio).toBeLessThanOrEqual(design.highOutFraction * (1 + 1e-12));
            }
          }
          if (result.possible) expect(result.checks.every((check) => check.ok)).toBe(true);
          else expect(design.checks.some((check) => !check.ok)).toBe(true);
        },
      ),
      { numRuns: 40 },
    );
  });
  it('does not mistake one input for another', () => {
    swapsMatter(designDivider, { ...signal, inputOhm: 91000, surgeV: 29, mostSourceOhm: 9000 });
  });
});

describe('edges', () => {
  it('names the limit that no pair keeps, with the pair that keeps the others', () => {
    // 0.1 mA at 24.4 V wants 244 kΩ above: with 10 kΩ at the pin, nothing safe uses the scale.
    const clamp = designDivider({ ...signal, clampMostA: 1e-4 });
    expect(clamp).toMatchObject({ possible: false, code: 'scale-unused', nearest: { possible: true } });
    expect(clamp.possible ? '' : clamp.because).toMatch(/in the way: the impedance window or the clamp current$/);
    if (!clamp.possible) expect(clamp.nearest!.groundLostClampA).toBeLessThanOrEqual(1e-4);
    const hot = designDivider({ ...signal, mostSourceOhm: 1100, resistorMostW: 0.05, clampMostA: 1 });
    expect(hot).toMatchObject({ possible: false, code: 'scale-unused' });
    expect(hot.possible ? '' : hot.because).toMatch(/in the way: the impedance window or the heat of a resistor$/);
    const narrow = designDivider({ ...signal, series: e6, leastSourceOhm: 5000, mostSourceOhm: 5001 });
    expect(narrow).toMatchObject({ possible: false, code: 'impedance-window' });
    const several = designDivider({
      ...signal,
      series: e6,
      leastSourceOhm: 5000,
      mostSourceOhm: 5001,
      resistorMostW: 1e-6,
    });
    expect(several).toMatchObject({ possible: false, code: 'several-limits' });
  });
  it('says when no divider is needed', () => {
    expect(designDivider({ ...signal, highestInV: 5, lowestInV: 0 })).toMatchObject({
      possible: false,
      code: 'already-in-range',
      nearest: null,
    });
  });
  it('with the ground lost, the clamp takes more than in a surge', () => {
    const design = designed(signal);
    expect(design.groundLostClampA).toBeGreaterThan(design.clampA);
    expectWithin(design.groundLostClampA, 24.4 / (design.upperOhm * 0.99), 1e-12);
  });
  it('refuses nonsense', () => {
    refusesNonsense(designDivider, signal, {
      required: [
        'lowestInV',
        'highestInV',
        'surgeV',
        'fullScaleV',
        'leastSourceOhm',
        'mostSourceOhm',
        'resistorMostW',
        'clampV',
        'clampMostA',
        'mostUnusedFraction',
        'toleranceFraction',
      ],
      optional: ['inputOhm'],
    });
    expectInputError(() => designDivider({ ...signal, surgeV: 10 }), 'surgeV', 'atLeast');
    expectInputError(() => designDivider({ ...signal, highestInV: 8 }), 'highestInV', 'above');
    expectInputError(() => designDivider({ ...signal, mostSourceOhm: 10 }), 'mostSourceOhm', 'atLeast');
    expectInputError(() => designDivider({ ...signal, mostSourceOhm: 1e10 }), 'mostSourceOhm', 'range');
    expectInputError(() => designDivider({ ...signal, toleranceFraction: 1 }), 'toleranceFraction', 'below');
  });
});
