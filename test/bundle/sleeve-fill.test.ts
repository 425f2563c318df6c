import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { sleeveFill, type BundleWire, type Sleeve, type SleeveFillInput } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const wires: readonly BundleWire[] = [{ outerDiameterMm: 2.4, count: 7 }];
const base = { wires, diameterRule: 'multiplication-factor' } as const;
const tube: Sleeve = { kind: 'tube', boreMm: 13, fillRule: 'nec-chapter-9-table-1' };
const checkOf = (input: SleeveFillInput, name: string) => sleeveFill(input).checks.find((check) => check.name === name);

describe('published', () => {
  const hole = { source: 'ac-43-13-1b-dressing', place: '11-115, 3/8 in of clearance', status: 'published' } as const;
  computed('a bundle of 1/2 in wants a hole of 1 1/4 in, or a grommet', hole, () => {
    const input = (boreMm: number): SleeveFillInput => ({
      wires: [{ outerDiameterMm: 12.7, count: 1 }],
      diameterRule: 'multiplication-factor',
      sleeve: { kind: 'hole', boreMm },
    });
    expectPrinted(sleeveFill(input(31.75)).clearanceMm / 25.4, '0.375');
    expect(sleeveFill(input(31.75)).ok).toBe(true);
    expect(sleeveFill(input(31.7)).ok).toBe(false);
  });
  const nec = { source: 'nec-chapter-9-table-1', place: 'one, two, more conductors', status: 'memory' } as const;
  for (const [count, limit] of [
    [1, 0.53],
    [2, 0.31],
    [3, 0.4],
    [40, 0.4],
  ] as const) {
    computed(`${count} wires may fill ${limit} of a bore`, nec, () => {
      // A bore in which the wires have exactly this share.
      const boreMm = Math.sqrt((count * 9) / limit);
      const at = (factor: number) =>
        checkOf(
          {
            wires: [{ outerDiameterMm: 3, count }],
            diameterRule: 'multiplication-factor',
            sleeve: { kind: 'tube', boreMm: boreMm * factor, fillRule: 'nec-chapter-9-table-1' },
          },
          'fill of the bore',
        );
      expectWithin(at(1)!.value!, limit, 1e-12);
      expect(at(1 + 1e-9)!.ok).toBe(true);
      expect(at(1 - 1e-9)!.ok).toBe(false);
    });
  }
});

describe('independent', () => {
  it('fill is the ratio of the areas of circles', () => {
    const { fillFraction, bundleDiameterMm, clearanceMm } = sleeveFill({ ...base, sleeve: tube });
    expectWithin(fillFraction, (7 * Math.PI * 1.2 ** 2) / (Math.PI * 6.5 ** 2), 1e-12);
    expectWithin(bundleDiameterMm, 7.2, 1e-12);
    expectWithin(clearanceMm, 2.9, 1e-12);
  });
});

describe('laws', () => {
  it('another wire never makes a tube, a hole or a braid pass that failed on room', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.double({ min: 3, max: 40, noNaN: true }), (count, boreMm) => {
        for (const sleeve of [
          { kind: 'tube', boreMm, fillRule: 'given', fillLimitFraction: 0.5 },
          { kind: 'hole', boreMm },
          { kind: 'braid', leastMm: 0, mostMm: boreMm },
        ] as const) {
          const of = (n: number) => sleeveFill({ ...base, wires: [{ outerDiameterMm: 2.4, count: n }], sleeve });
          if (!of(count).ok) expect(of(count + 1).ok).toBe(false);
          expect(of(count + 1).fillFraction).toBeGreaterThan(of(count).fillFraction);
        }
      }),
    );
  });
  it('what must go in is judged by the thicker figure, what must grip by the thinner', () => {
    // Nine wires: 4.00 diameters by the data sheet, at least 3.613.
    const nine: readonly BundleWire[] = [{ outerDiameterMm: 2, count: 9 }];
    const of = (sleeve: Sleeve) => sleeveFill({ ...base, wires: nine, sleeve }).ok;
    expect(of({ kind: 'grommet', leastMm: 7.2, mostMm: 8 })).toBe(true);
    expect(of({ kind: 'grommet', leastMm: 7.2, mostMm: 7.9 })).toBe(false);
    expect(of({ kind: 'grommet', leastMm: 7.3, mostMm: 9 })).toBe(false);
    expect(of({ kind: 'heat-shrink', suppliedMm: 9.5, recoveredMm: 7.3 })).toBe(false);
    expect(of({ kind: 'heat-shrink', suppliedMm: 9.5, recoveredMm: 4.8 })).toBe(true);
  });
});

describe('edges', () => {
  it('a heat-shrink sleeve must also slip over the connector', () => {
    const sleeve: Sleeve = { kind: 'heat-shrink', suppliedMm: 12.7, recoveredMm: 4.2, passOverMm: 15 };
    expect(sleeveFill({ ...base, sleeve })).toMatchObject({ ok: false, decidedBy: 'slips over the connector' });
    expect(sleeveFill({ ...base, sleeve: { ...sleeve, passOverMm: 12 } }).ok).toBe(true);
  });
  it('names the check with the least room', () => {
    expect(sleeveFill({ ...base, sleeve: tube }).decidedBy).toBe('fill of the bore');
    expect(sleeveFill({ ...base, sleeve: { kind: 'braid', leastMm: 3, mostMm: 7.3 } }).decidedBy).toBe(
      'bundle goes in',
    );
  });
  it('refuses nonsense with the field that is at fault', () => {
    expectInputError(() => sleeveFill(undefined as never), 'input', 'object');
    expectInputError(() => sleeveFill({ ...base } as never), 'sleeve', 'missing');
    expectInputError(() => sleeveFill({ ...base, sleeve: { kind: 'sock' } as never }), 'sleeve.kind', 'oneOf');
    expectInputError(() => sleeveFill({ ...base, wires: [], sleeve: tube }), 'wires', 'list');
    expectInputError(() => sleeveFill({ wires, diameterRule: 'x' as never, sleeve: tube }), 'diameterRule', 'oneOf');
    for (const boreMm of [0, -1, NaN, Infinity, 'abc', undefined]) {
      expectInputError(() => sleeveFill({ ...base, sleeve: { ...tube, boreMm: boreMm as number } }), 'sleeve.boreMm');
      expectInputError(
        () => sleeveFill({ ...base, sleeve: { kind: 'hole', boreMm: boreMm as number } }),
        'sleeve.boreMm',
      );
    }
    expectInputError(
      () => sleeveFill({ ...base, sleeve: { ...tube, fillLimitFraction: 0.4 } }),
      'sleeve.fillLimitFraction',
      'oneOfFields',
    );
    const given: Sleeve = { kind: 'tube', boreMm: 13, fillRule: 'given' };
    expectInputError(() => sleeveFill({ ...base, sleeve: given }), 'sleeve.fillLimitFraction', 'missing');
    expectInputError(
      () => sleeveFill({ ...base, sleeve: { ...given, fillLimitFraction: 1.1 } }),
      'sleeve.fillLimitFraction',
      'atMost',
    );
    expectInputError(
      () => sleeveFill({ ...base, sleeve: { ...tube, fillRule: 'x' as never } }),
      'sleeve.fillRule',
      'oneOf',
    );
    expectInputError(
      () => sleeveFill({ ...base, sleeve: { kind: 'grommet', leastMm: 8, mostMm: 8 } }),
      'sleeve.mostMm',
      'above',
    );
    expectInputError(
      () => sleeveFill({ ...base, sleeve: { kind: 'grommet', leastMm: -1, mostMm: 8 } }),
      'sleeve.leastMm',
      'atLeast',
    );
    const shrink = { kind: 'heat-shrink', suppliedMm: 4, recoveredMm: 8 } as const;
    expectInputError(() => sleeveFill({ ...base, sleeve: shrink }), 'sleeve.suppliedMm', 'above');
    expectInputError(
      () => sleeveFill({ ...base, sleeve: { ...shrink, suppliedMm: 16, passOverMm: 0 } }),
      'sleeve.passOverMm',
      'above',
    );
    expect(() => sleeveFill({ ...base, sleeve: shrink })).toThrow(
      'sleeveFill: sleeve.suppliedMm must be above 8, got 4: supplied is the wider of the two',
    );
  });
});
