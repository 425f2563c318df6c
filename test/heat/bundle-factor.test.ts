import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { altitudeFactor, type AmpacityInput, bundleFactor, type BundleRule, feetToM, milW5088Bundle } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, expectWithin, transcribed } from '../support/published.js';

// No. 20 aviation wire of 200 °C in air of 60 °C.
const wire: AmpacityInput = {
  maxConductorTempC: 200,
  resistanceOhmPerM: 0.03241,
  ratedTempC: 20,
  metal: 'tinned-copper',
  conductorDiameterMm: 1,
  outerDiameterMm: 1.47,
  insulationConductivityWPerMK: 0.24,
  ambientTempC: 60,
  altitudeM: 0,
};

const factor = (rule: BundleRule, wireCount: number, loadedFraction = 1): number =>
  bundleFactor({ rule, wireCount, loadedFraction, wire }).factor!;

/** The curves as printed by their reader: wires, then 20, 40, 60, 80, 100 % in use. */
const PRINT = `
1 1 1 1 1 1
2 .9675 .92 .91 .87 .825
3 .935 .855 .815 .77 .725
4 .9075 .805 .75 .705 .66
5 .875 .76 .695 .65 .61
6 .85 .725 .655 .605 .5725
7 .82 .695 .625 .57 .54
8 .795 .6675 .595 .5425 .5125
9 .775 .645 .575 .52 .485
10 .755 .6225 .55 .5 .465
11 .735 .6 .53 .48 .445
12 .715 .585 .515 .465 .43
13 .6975 .5675 .495 .4475 .415
14 .685 .5525 .48 .435 .3975
15 .67 .54 .465 .42 .385
16 .6575 .5275 .455 .41 .37
17 .645 .515 .4425 .3975 .36
18 .635 .505 .4325 .3875 .35
19 .625 .495 .4225 .38 .3425
20 .615 .48`
  .trim()
  .split('\n')
  .map((line) => line.split(' ').map(Number));

describe('published', () => {
  for (const [count, ...factors] of PRINT) {
    transcribed(
      `bundle curve, ${count} wires`,
      { source: 'mil-w-5088', place: 'bundle derating figure, digitised', status: 'published' },
      () => {
        factors.forEach((print, i) => expect(factor('mil-w-5088', count!, (i + 1) / 5)).toBe(print));
        const row = milW5088Bundle.rows.find(([n]) => n === count)!;
        expect(row.slice(1, 1 + factors.length)).toEqual(factors);
      },
    );
  }
  transcribed(
    'bundle curve, 35 wires at 20 %',
    { source: 'ac-43-13-1b', place: 'paragraph 11-69, example A', status: 'memory' },
    () => expect(factor('mil-w-5088', 35, 0.2)).toBe(0.52),
  );

  computed(
    'eight wires at 60 %, example 2',
    { source: 'ac-43-13-1b', place: 'page 11-27, figure 11-6', status: 'published' },
    () => expectPrinted(factor('mil-w-5088', 8, 0.6), '0.6'),
  );
  // 47 A in free air, 0.91 for 20 000 ft; the circular rounds the bundle factor to 0.6.
  const altitude = (feet: number): number => altitudeFactor({ altitudeM: feetToM(feet), rule: 'ac-43-13-1b' }).factor!;
  computed(
    'most current of No. 14 in example 2: 26 A',
    { source: 'ac-43-13-1b', place: 'page 11-27', status: 'published' },
    () => expectPrinted(47 * altitude(20000) * factor('mil-w-5088', 8, 0.6), '26', 0.6),
  );
  // Example A: 10 × No. 20 and 25 × No. 22, 200 °C, 60 °C ambient, 60 000 ft, 7 of 35 loaded.
  const bundled = 0.2;
  for (const [name, free, inBundle, high] of [
    ['No. 20', 21.5, '11.2', '8.8'],
    ['No. 22', 16.2, '8.4', '6.6'],
  ] as const) {
    computed(
      `${name} in the bundle of example A`,
      { source: 'ac-43-13-1b', place: 'paragraph 11-69', status: 'memory' },
      () => expectPrinted(free * factor('mil-w-5088', 35, bundled), inBundle),
    );
    computed(
      `${name} at 60 000 ft in example A`,
      { source: 'ac-43-13-1b', place: 'paragraph 11-69', status: 'memory' },
      () => expectPrinted(free * factor('mil-w-5088', 35, bundled) * altitude(60000), high, 0.6),
    );
  }
  computed('harness of example A: 253 A', { source: 'ac-43-13-1b', place: 'paragraph 11-69', status: 'memory' }, () =>
    expectWithin((10 * 21.5 + 25 * 16.2) * factor('mil-w-5088', 35, bundled) * altitude(60000), 253, 0.008),
  );
  computed('a fifth of it: 50.6 A', { source: 'ac-43-13-1b', place: 'paragraph 11-69', status: 'memory' }, () =>
    expectWithin(0.2 * (10 * 21.5 + 25 * 16.2) * factor('mil-w-5088', 35, bundled) * altitude(60000), 50.6, 0.008),
  );
  // Example B: 12 × No. 12, 200 °C, all loaded.
  computed(
    'twelve wires, all loaded, example B',
    { source: 'ac-43-13-1b', place: 'paragraph 11-69', status: 'memory' },
    () => expectPrinted(factor('mil-w-5088', 12, 1), '0.43'),
  );
  for (const [place, free, feet, inBundle, total] of [
    ['sea level', 68, 0, '29.2', '350.4'],
    ['20 000 ft', 61, 20000, '23.8', '285.6'],
  ] as const) {
    computed(
      `No. 12 at ${place}, example B`,
      { source: 'ac-43-13-1b', place: 'paragraph 11-69', status: 'memory' },
      () => expectPrinted(free * factor('mil-w-5088', 12) * altitude(feet), inBundle, 0.8),
    );
    computed(
      `harness at ${place}, example B`,
      { source: 'ac-43-13-1b', place: 'paragraph 11-69', status: 'memory' },
      () => expectWithin(12 * free * factor('mil-w-5088', 12) * altitude(feet), Number(total), 0.004),
    );
  }

  for (const [count, print] of [
    [2, '0.9643'],
    [3, '0.9286'],
    [4, '0.8929'],
    [5, '0.8571'],
    [8, '0.7500'],
    [10, '0.6786'],
    [12, '0.6071'],
    [15, '0.5000'],
    [16, '0.5'],
    [40, '0.5'],
  ] as const) {
    computed(`space rule, ${count} wires`, { source: 'eee-inst-002', place: 'wire derating', status: 'memory' }, () =>
      expectPrinted(factor('eee-inst-002', count), print),
    );
  }
  computed(
    '12 AWG, 25 A alone and 11.5 A in a bundle: the table is 8 % below the rule',
    { source: 'eee-inst-002', place: 'wire table, 12 AWG', status: 'published' },
    () => expectWithin(25 * factor('eee-inst-002', 20), 11.5, 0.09),
  );
  computed('eight wires of 12 AWG: 18.75 A', { source: 'eee-inst-002', place: '25 A × 21/28', status: 'derived' }, () =>
    expectPrinted(25 * factor('eee-inst-002', 8), '18.75'),
  );

  for (const [count, print] of [
    [2, 1],
    [3, 0.7],
    [4, 0.6],
    [6, 0.6],
    [7, 0.5],
    [24, 0.5],
    [25, 0.4],
    [60, 0.4],
  ] as const) {
    transcribed(
      `boat rule, ${count} conductors`,
      { source: 'us-33-cfr-183', place: '183.425 note 2', status: 'memory' },
      () => expect(factor('us-33-cfr-183', count)).toBe(print),
    );
  }
  for (const [count, print] of [
    [3, 1],
    [4, 0.8],
    [6, 0.8],
    [7, 0.7],
    [9, 0.7],
    [10, 0.5],
    [20, 0.5],
    [21, 0.45],
    [30, 0.45],
    [31, 0.4],
    [40, 0.4],
    [41, 0.35],
  ] as const) {
    transcribed(
      `building rule, ${count} conductors`,
      { source: 'nec-310-15', place: 'table 310.15(B)(3)(a)', status: 'published' },
      () => expect(factor('nec-310-15', count)).toBe(print),
    );
  }
  computed(
    '40 A, four conductors: 32 A',
    { source: 'nec-310-15', place: 'worked example, 10 AWG 90 °C', status: 'published' },
    () => expectPrinted(40 * factor('nec-310-15', 4), '32'),
  );
  computed('30 A, nine conductors: 21 A', { source: 'nec-310-15', place: 'worked example', status: 'published' }, () =>
    expectPrinted(30 * factor('nec-310-15', 9), '21'),
  );

  // Our own balance beside the aviation curves. It takes the share in use as so many wires at full current. From 60 % up
  // the two agree within a tenth. At 20 and 40 % the curves fall below it by up to a fifth: the loaded wires may lie side
  // by side there, which a spread heat does not know.
  for (const [share, most] of [
    [0.2, 0.23],
    [0.4, 0.18],
    [0.6, 0.1],
    [0.8, 0.05],
    [1, 0.07],
  ] as const) {
    for (const count of [2, 3, 4, 5, 6, 7, 8, 10, 12, 15, 19]) {
      computed(
        `our balance beside the curve: ${count} wires, ${share * 100} %`,
        { source: 'mil-w-5088', place: 'bundle derating figure, digitised', status: 'published' },
        () => expectWithin(factor('heat', count, share), factor('mil-w-5088', count, share), most),
      );
    }
  }
});

describe('laws', () => {
  it('more wires and more of them in use never raise a factor, by any rule', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<BundleRule>('mil-w-5088', 'eee-inst-002', 'us-33-cfr-183', 'nec-310-15', 'heat'),
        fc.integer({ min: 1, max: 60 }),
        evenly(0.01, 0.99),
        (rule, count, share) => {
          const here = bundleFactor({ rule, wireCount: count, loadedFraction: share, wire }).factor;
          const more = bundleFactor({ rule, wireCount: count + 1, loadedFraction: share, wire }).factor;
          const used = bundleFactor({ rule, wireCount: count, loadedFraction: share + 0.01, wire }).factor;
          if (here === null) {
            expect(more).toBe(null);
            return;
          }
          expect(here).toBeLessThanOrEqual(1);
          expect(here).toBeGreaterThan(0);
          if (more !== null) expect(more).toBeLessThanOrEqual(here + 1e-9);
          if (used !== null) expect(used).toBeLessThanOrEqual(here + 1e-9);
        },
      ),
      { numRuns: 100 },
    );
  });
  it('between the shares of the curves it never grants more than a straight line', () => {
    for (let count = 2; count <= 19; count++) {
      for (let percent = 20; percent < 100; percent += 2.5) {
        const left = Math.floor(percent / 20) * 20;
        const part = (percent - left) / 20;
        const line =
          factor('mil-w-5088', count, left / 100) * (1 - part) + factor('mil-w-5088', count, left / 100 + 0.2) * part;
        expect(factor('mil-w-5088', count, percent / 100)).toBeLessThanOrEqual(line + 1e-12);
      }
    }
  });
  it('shows all rules side by side with their range', () => {
    const result = bundleFactor({ wireCount: 8, loadedFraction: 0.6, rule: 'mil-w-5088', wire });
    expect(result.rules.map(({ rule }) => rule)).toEqual([
      'mil-w-5088',
      'eee-inst-002',
      'us-33-cfr-183',
      'nec-310-15',
      'heat',
    ]);
    expect(result).toMatchObject({ rule: 'mil-w-5088', factor: 0.595, minFactor: 0.5, maxFactor: 0.75 });
  });
  it('the boat and building rules count what carries current, not what lies there', () => {
    const quiet = bundleFactor({ wireCount: 30, loadedFraction: 0.1, currentCarryingCount: 3, rule: 'nec-310-15' });
    expect(quiet.factor).toBe(1);
    expect(quiet.rules.find(({ rule }) => rule === 'us-33-cfr-183')!.factor).toBe(0.7);
  });
});

describe('edges', () => {
  const input = { wireCount: 8, loadedFraction: 0.6, rule: 'mil-w-5088' } as const;
  it('has no number beyond the curves, and says so', () => {
    expect(bundleFactor({ ...input, wireCount: 36, loadedFraction: 0.2 })).toMatchObject({
      factor: null,
      reason: 'beyond-table',
    });
    expect(bundleFactor({ ...input, wireCount: 21, loadedFraction: 0.3 })).toMatchObject({
      factor: null,
      reason: 'beyond-table',
    });
    expect(bundleFactor({ ...input, wireCount: 20, loadedFraction: 0.5 })).toMatchObject({
      factor: null,
      reason: 'beyond-table',
    });
  });
  it('takes the next larger number of wires where one is not listed, and the 20 % curve below it', () => {
    expect(bundleFactor({ ...input, wireCount: 21, loadedFraction: 0.2 })).toMatchObject({
      factor: 0.52,
      sourceStatus: 'memory',
    });
    expect(bundleFactor({ ...input, loadedFraction: 0.01 }).factor).toBe(0.795);
  });
  it('shows our own balance only with a wire that bears something', () => {
    expect(bundleFactor(input).rules[4]).toMatchObject({ factor: null, reason: 'no-wire-given' });
    const hot = bundleFactor({ ...input, rule: 'heat', wire: { ...wire, ambientTempC: 200 } });
    expect(hot).toMatchObject({ factor: null, reason: 'air-at-limit' });
    expectInputError(() => bundleFactor({ ...input, rule: 'heat' }), 'wire', 'missing');
  });
  it('refuses nonsense', () => {
    refusesNonsense(
      bundleFactor,
      { ...input, currentCarryingCount: 8, bundleDiameterMm: 9, wire },
      { required: ['wireCount', 'loadedFraction'], optional: ['currentCarryingCount', 'bundleDiameterMm'] },
    );
    expectInputError(() => bundleFactor({ ...input, wireCount: 0 }), 'wireCount', 'atLeast');
    expectInputError(() => bundleFactor({ ...input, wireCount: 2.5 }), 'wireCount', 'integer');
    expectInputError(() => bundleFactor({ ...input, wireCount: 1001 }), 'wireCount', 'atMost');
    expectInputError(() => bundleFactor({ ...input, loadedFraction: 0 }), 'loadedFraction', 'above');
    expectInputError(() => bundleFactor({ ...input, currentCarryingCount: 9 }), 'currentCarryingCount', 'atMost');
    expectInputError(() => bundleFactor({ ...input, rule: 'none' as never }), 'rule', 'oneOf');
    expect(() => bundleFactor({ ...input, loadedFraction: 60 })).toThrow(
      'bundleFactor: loadedFraction must be at most 1, got 60: is this in per cent?',
    );
  });
});
