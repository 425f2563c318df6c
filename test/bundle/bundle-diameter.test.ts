import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { bundleDiameter, type BundleDiameterInput, type BundleWire } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin, transcribed } from '../support/published.js';

const equal = (count: number, outerDiameterMm = 1): readonly BundleWire[] => [{ outerDiameterMm, count }];
const packing = (wires: readonly BundleWire[]) => bundleDiameter({ wires, rule: 'packing' });
const sheet = (wires: readonly BundleWire[]) => bundleDiameter({ wires, rule: 'multiplication-factor' });
/** Sum of the squares of the diameters, told by the result alone. */
const squares = (wires: readonly BundleWire[]) => {
  const { fillFraction, diameterMm } = sheet(wires);
  return fillFraction * diameterMm ** 2;
};

describe('published', () => {
  const table = { source: 'circle-packing', place: 'table of densities n/R²', status: 'published' } as const;
  for (const [n, print] of [
    [3, '0.6466'],
    [4, '0.6864'],
    [5, '0.6854'],
    [6, '0.6666'],
    [7, '0.7777'],
    [8, '0.7328'],
    [9, '0.6895'],
    [10, '0.6878'],
    [11, '0.7148'],
    [12, '0.7392'],
    [13, '0.7245'],
    [14, '0.7474'],
    [15, '0.7339'],
    [16, '0.7512'],
    [17, '0.7403'],
    [18, '0.7609'],
    [19, '0.8032'],
    [20, '0.7623'],
  ] as const) {
    // The source takes densities from ratios that it cut off after three decimals, and cuts off again after four.
    computed(`density of ${n} equal wires`, table, () => {
      const { fillFraction, diameterMm } = packing(equal(n));
      expectWithin(fillFraction, Number(print), 0.002 / diameterMm + 1e-4);
    });
  }
  const kravitz = { source: 'circle-packing', place: 'Kravitz 1967, 1/R', status: 'published' } as const;
  for (const [n, print] of [
    [12, '0.2482'],
    [15, '0.22117253909'],
    [16, '0.21666'],
    [20, '0.19522'],
  ] as const) {
    computed(`one wire's share of the bundle's diameter, ${n} wires`, kravitz, () => {
      const share = 1 / packing(equal(n)).diameterMm;
      if (n === 15) expectWithin(share, Number(print), 1e-9);
      else expectPrinted(share, print);
    });
  }
  const ratio = { source: 'circle-packing', place: 'table of ratios', status: 'published' } as const;
  for (const [n, print] of [
    [1, '1'],
    [2, '2'],
    [3, '2.155'],
    [4, '2.414'],
    [5, '2.701'],
    [6, '3'],
    [7, '3'],
    [8, '3.304'],
    [9, '3.613'],
    [10, '3.813'],
    [11, '3.923'],
    [12, '4.029'],
    [13, '4.236'],
    [14, '4.328'],
    [15, '4.521'],
    [16, '4.615'],
    [17, '4.792'],
    [18, '4.863'],
    [19, '4.863'],
    [20, '5.122'],
  ] as const) {
    transcribed(`ratio of ${n} equal wires`, ratio, () => expectPrinted(packing(equal(n)).diameterMm, print, 1));
  }

  const factors = { source: 'bundle-factors', place: 'table of factors', status: 'published' } as const;
  for (const [from, to, print] of [
    [1, 1, '1.00'],
    [2, 2, '2.00'],
    [3, 3, '2.16'],
    [4, 4, '2.41'],
    [5, 5, '2.70'],
    [6, 7, '3.00'],
    [8, 8, '3.60'],
    [9, 12, '4.00'],
    [13, 14, '4.41'],
    [15, 16, '4.70'],
    [17, 19, '5.00'],
    [20, 21, '5.31'],
    [22, 24, '5.61'],
    [25, 27, '6.00'],
    [28, 30, '6.41'],
    [31, 33, '6.70'],
    [34, 37, '7.00'],
    [38, 40, '7.31'],
    [41, 44, '7.61'],
    [45, 48, '8.00'],
    [49, 52, '8.41'],
    [53, 56, '8.70'],
    [57, 61, '9.00'],
  ] as const) {
    transcribed(`factor of ${from} to ${to} wires`, factors, () => {
      for (let n = from; n <= to; n++) expectPrinted(sheet(equal(n)).ruleDiameterMm, print, 0);
    });
  }
  // The sheet rounds each square before it adds; without that its example is 4.914, so four units of the last digit.
  const mixed = { source: 'bundle-factors', place: 'example of mixed sizes', status: 'published' } as const;
  const example: readonly BundleWire[] = [
    { outerDiameterMm: 1.19, count: 3 },
    { outerDiameterMm: 1.4, count: 5 },
    { outerDiameterMm: 1.65, count: 1 },
  ];
  computed('3 × 1.19, 5 × 1.40 and 1 × 1.65 mm', mixed, () => {
    expectPrinted(sheet(example).ruleDiameterMm, '4.95', 4);
    expectPrinted(1.2 * Math.sqrt(3 * 1.4 + 5 * 2.0 + 2.8), '4.95');
    expectPrinted(sheet(example).ruleDiameterMm, '4.914260');
  });
  const area = { source: 'bundle-area-pages', place: 'area without voids', status: 'published' } as const;
  computed('10 wires of 0.5 in have the area of 1.58 in', area, () =>
    expectPrinted(Math.sqrt(squares(equal(10, 12.7))) / 25.4, '1.58'),
  );
  computed('20 wires of 0.25 in have the area of 1.12 in', area, () =>
    expectPrinted(Math.sqrt(squares(equal(20, 6.35))) / 25.4, '1.12'),
  );
});

describe('independent', { timeout: 120_000 }, () => {
  it('the ratios that have a closed form', () => {
    const s = Math.sqrt;
    const forms: Readonly<Record<number, number>> = {
      3: 1 + 2 / s(3),
      4: 1 + s(2),
      5: 1 + s(2 * (1 + 1 / s(5))),
      8: 1 + 1 / Math.sin(Math.PI / 7),
      9: 1 + s(2 * (2 + s(2))),
      11: 1 + 1 / Math.sin(Math.PI / 9),
      13: 2 + s(5),
      15: 1 + s(6 + 2 / s(5) + 4 * s(1 + 2 / s(5))),
      18: 1 + s(2) + s(6),
      19: 1 + s(2) + s(6),
    };
    for (const [n, form] of Object.entries(forms)) expectWithin(packing(equal(Number(n))).diameterMm, form, 2e-10);
  });
  it('the rule of root of squares for 7, 12, 19, 37 and 61 wires of about one size', () => {
    for (const [n, expected] of [
      [7, 3.175],
      [12, 4.157],
      [19, 5.231],
      [37, 7.299],
      [61, 9.372],
    ] as const) {
      const wires = [...equal(n - 1), { outerDiameterMm: 1 + 1e-9, count: 1 }];
      expect(sheet(wires).method).toBe('root-of-squares');
      expectPrinted(sheet(wires).ruleDiameterMm, String(expected));
    }
  });
  it('three wires in touch lie in the circle of Descartes, and the drawn packing finds it', () => {
    for (const [a, b, c] of [
      [3, 2, 1.8],
      [5, 4, 4],
      [2.1, 2, 1.9],
    ] as const) {
      const wires = [a, b, c].map((outerDiameterMm) => ({ outerDiameterMm, count: 1 }));
      // By the triangle of the centres: the outer circle's centre is at R − r of each.
      const around = packing(wires);
      expect(around.boundBy).toBe('three-thickest');
      expectWithin(around.diameterMm, around.lowerBoundMm, 2e-6);
      const R = around.lowerBoundMm / 2;
      const heron = (x: number, y: number, z: number) => {
        const h = (x + y + z) / 2;
        return Math.sqrt(h * (h - x) * (h - y) * (h - z));
      };
      const [p, q, r] = [a / 2, b / 2, c / 2];
      const inner = heron(p + q, q + r, r + p);
      const outer = heron(p + q, R - p, R - q) + heron(q + r, R - q, R - r) + heron(r + p, R - r, R - p);
      expectWithin(outer, inner, 1e-9);
    }
  });
  it('a third wire beside two thick ones adds nothing up to the size of the gap', () => {
    const wires = (c: number) => [...equal(2, 6), { outerDiameterMm: c, count: 1 }];
    expectWithin(packing(wires(3.99)).diameterMm, 12, 1e-6);
    expect(packing(wires(4.2)).lowerBoundMm).toBeGreaterThan(12);
    expect(packing(wires(3.99)).boundBy).toBe('two-thickest');
  });
});

const someWires = fc.array(
  fc.record({
    outerDiameterMm: fc.constantFrom(0.9, 1.2, 1.6, 2.4, 3, 4.3),
    count: fc.integer({ min: 1, max: 6 }),
  }),
  { minLength: 1, maxLength: 3 },
);

describe('laws', { timeout: 120_000 }, () => {
  it('no rule goes below the proved bound', () => {
    fc.assert(
      fc.property(someWires, (wires) => {
        for (const rule of ['packing', 'multiplication-factor'] as const) {
          const { diameterMm, lowerBoundMm, ruleDiameterMm, fillFraction } = bundleDiameter({ wires, rule });
          expect(diameterMm).toBeGreaterThanOrEqual(lowerBoundMm);
          expect(diameterMm).toBeGreaterThanOrEqual(ruleDiameterMm);
          expect(fillFraction).toBeLessThanOrEqual(1 + 1e-12);
        }
      }),
      { numRuns: 15 },
    );
    for (let n = 1; n <= 61; n++) {
      expect(sheet(equal(n)).diameterMm, `${n}`).toBeGreaterThanOrEqual(packing(equal(n)).lowerBoundMm);
    }
  });
  it('the data sheet undershoots for 4, 5 and 12 equal wires and is raised there, nowhere else', () => {
    const raised = Array.from({ length: 61 }, (_, i) => i + 1).filter((n) => sheet(equal(n)).raisedBy !== null);
    expect(raised).toEqual([4, 5, 12]);
    expect(sheet(equal(12)).diameterMm).toBeGreaterThan(4.0296);
  });
  it('adding a wire never shrinks a bundle: by the data sheet, nor the bound', () => {
    fc.assert(
      fc.property(someWires, fc.constantFrom(0.3, 0.9, 1.6, 2.5, 6), (wires, outerDiameterMm) => {
        const more = [...wires, { outerDiameterMm, count: 1 }];
        expect(sheet(more).diameterMm).toBeGreaterThanOrEqual(sheet(wires).diameterMm);
        expect(sheet(more).lowerBoundMm).toBeGreaterThanOrEqual(sheet(wires).lowerBoundMm - 1e-12);
      }),
    );
    for (let n = 1; n < 80; n++) {
      expect(sheet(equal(n + 1)).diameterMm).toBeGreaterThanOrEqual(sheet(equal(n)).diameterMm);
      expect(sheet([...equal(n), ...equal(1, 0.1)]).diameterMm).toBeGreaterThanOrEqual(sheet(equal(n)).diameterMm);
    }
  });
  it('adding an equal wire never shrinks a packing of up to 20, and any wire by at most 2 % of a drawn one', () => {
    for (let n = 1; n < 20; n++) {
      expect(packing(equal(n + 1)).diameterMm).toBeGreaterThanOrEqual(packing(equal(n)).diameterMm);
    }
    fc.assert(
      fc.property(someWires, fc.constantFrom(0.9, 1.6, 2.5), (wires, outerDiameterMm) => {
        const more = [...wires, { outerDiameterMm, count: 1 }];
        expect(packing(more).diameterMm).toBeGreaterThanOrEqual(packing(wires).diameterMm * 0.98);
      }),
      { numRuns: 15 },
    );
  });
  it('grows in step with all diameters, and does not care for the order of the list', () => {
    fc.assert(
      fc.property(someWires, fc.double({ min: 0.01, max: 100, noNaN: true }), (wires, k) => {
        const grown = wires.map((wire) => ({ ...wire, outerDiameterMm: wire.outerDiameterMm * k }));
        for (const of of [sheet, packing]) {
          expectWithin(of(grown).diameterMm, of(wires).diameterMm * k, 1e-6);
          expect(of([...wires].reverse())).toEqual(of(wires));
        }
      }),
      { numRuns: 8 },
    );
  });
  it('counting wires together or one by one is the same', () => {
    const together = sheet(equal(6, 2));
    expect(sheet(Array.from({ length: 6 }, () => ({ outerDiameterMm: 2, count: 1 })))).toEqual(together);
  });
});

describe('edges', () => {
  it('names how the diameter was found', () => {
    expect(packing(equal(1)).method).toBe('one-wire');
    for (let n = 2; n <= 20; n++) {
      const proved = n <= 14 || n === 19;
      expect(packing(equal(n)).method, `${n}`).toBe(proved ? 'proved-packing' : 'best-known-packing');
      expect(packing(equal(n)).sourceStatus).toBe('published');
    }
    expect(packing(equal(21))).toMatchObject({ method: 'drawn-packing', sourceStatus: 'derived' });
    expect(sheet(equal(1)).method).toBe('one-wire');
    expect(sheet(equal(61)).method).toBe('factor');
    expect(sheet(equal(62))).toMatchObject({ method: 'root-of-squares', wireCount: 62 });
  });
  it('two thick wires among thin ones are as wide as both', () => {
    const wires = [...equal(2, 10), ...equal(3, 1)];
    expect(sheet(wires)).toMatchObject({ diameterMm: 20, raisedBy: 'equal-part' });
    expect(
      sheet([
        { outerDiameterMm: 10, count: 1 },
        { outerDiameterMm: 9, count: 1 },
      ]),
    ).toMatchObject({
      diameterMm: 19,
      raisedBy: 'lower-bound',
      boundBy: 'two-thickest',
    });
  });
  it('refuses nonsense with the field that is at fault', () => {
    const good: BundleDiameterInput = { wires: equal(3, 2), rule: 'packing' };
    for (const value of [undefined, null, 3, 'abc', []]) {
      expectInputError(() => bundleDiameter(value as never), 'input', 'object');
    }
    expectInputError(() => bundleDiameter({ ...good, wires: [] }), 'wires', 'list');
    expectInputError(() => bundleDiameter({ rule: 'packing' } as never), 'wires', 'missing');
    expectInputError(() => bundleDiameter({ ...good, wires: [null as never] }), 'wires[0]', 'object');
    for (const value of [NaN, Infinity, 'abc', undefined, 0, -1]) {
      const wires = [{ outerDiameterMm: value as number, count: 1 }];
      expectInputError(() => bundleDiameter({ ...good, wires }), 'wires[0].outerDiameterMm');
      expectInputError(
        () => bundleDiameter({ ...good, wires: [...equal(1), { outerDiameterMm: 1, count: value as number }] }),
        'wires[1].count',
      );
    }
    expectInputError(() => bundleDiameter({ ...good, wires: equal(2.5) }), 'wires[0].count', 'integer');
    expectInputError(() => bundleDiameter({ ...good, rule: 'guess' as never }), 'rule', 'oneOf');
    expectInputError(() => bundleDiameter({ wires: good.wires } as never), 'rule', 'missing');
    expectInputError(() => packing(equal(301)), 'wires', 'atMost');
    expect(() => bundleDiameter({ ...good, wires: equal(0) })).toThrow(
      'bundleDiameter: wires[0].count must be at least 1, got 0',
    );
  });
});
