import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  awgStranded,
  circularMilsToMm2,
  geometric,
  iec60228Class5,
  iso19642,
  nearestSizes,
  saeJ1128,
  wireResistance,
} from 'loomwright';
import { conductorTables, sizeIn } from '../support/conductor-tables.js';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectWithin, type Citation } from '../support/published.js';

const theory: Citation = { source: 'circuit-theory', place: 'worked case', status: 'derived' };

const labels = (areaMm2: number, table: Parameters<typeof nearestSizes>[0]['table']): (string | null)[] => {
  const { below, atLeast } = nearestSizes({ areaMm2, table });
  return [below?.label ?? null, atLeast?.label ?? null];
};

describe('published', () => {
  // A pump feed of 15 A may lose 0.5 V: 3.36 mm² of geometric copper by the wire alone, 7.50 mm² with fixed parts.
  computed('3.36 mm² wanted: 4 mm²', theory, () => expect(labels(3.36, iso19642)).toEqual(['3 mm²', '4 mm²']));
  computed('7.50 mm² wanted of a stock of standard sizes: 10 mm²', theory, () =>
    expect(labels(7.5, iec60228Class5)).toEqual(['6 mm²', '10 mm²']),
  );
  // 10 A over a 20 ft loop at 0.36 V by the circular-mil method with K = 10.75: SAE 12 has 5833.
  computed('5972 circular mils wanted: SAE 12 is not enough', theory, () =>
    expect(labels(circularMilsToMm2((10.75 * 10 * 20) / 0.36), saeJ1128)).toEqual(['SAE 12', 'SAE 10']),
  );
});

describe('independent', () => {
  it('agrees with sorting the sizes, in every table', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...conductorTables),
        fc.double({ min: 0.001, max: 200, noNaN: true }),
        (table, areaMm2) => {
          const areas = table.rows
            .map(
              ([size]) =>
                wireResistance({ ...sizeIn(table, size), resistanceBasis: table, lengthM: 1, conductorTempC: 20 })
                  .areaMm2,
            )
            .sort((a, b) => a - b);
          const { below, atLeast } = nearestSizes({ areaMm2, table });
          expect(below?.areaMm2 ?? null).toBe(areas.filter((a) => a < areaMm2).at(-1) ?? null);
          expect(atLeast?.areaMm2 ?? null).toBe(areas.find((a) => a >= areaMm2) ?? null);
        },
      ),
    );
  });
});

describe('laws', () => {
  it('knows every table', () => expect(conductorTables.length).toBeGreaterThanOrEqual(10));

  it.each(conductorTables.map((table) => [table.key, table] as const))(
    '%s never rounds to the unsafe side',
    (_, table) => {
      const areas = table.rows.map(
        ([size]) =>
          wireResistance({ ...sizeIn(table, size), resistanceBasis: table, lengthM: 1, conductorTempC: 20 }).areaMm2,
      );
      for (const area of areas) {
        for (const wanted of [area * (1 - 1e-12), area, area * (1 + 1e-12), area * 1.03, area * 0.97]) {
          const { below, atLeast } = nearestSizes({ areaMm2: wanted, table });
          if (atLeast !== null) expect(atLeast.areaMm2).toBeGreaterThanOrEqual(wanted);
          else expect(wanted).toBeGreaterThan(Math.max(...areas));
          if (below !== null) expect(below.areaMm2).toBeLessThan(wanted);
          else expect(wanted).toBeLessThanOrEqual(Math.min(...areas));
        }
        // The size itself is enough for its own area, exactly.
        expect(nearestSizes({ areaMm2: area, table }).atLeast?.areaMm2).toBe(area);
      }
    },
  );

  it('a larger wish never gives a smaller wire', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...conductorTables),
        fc.double({ min: 0.001, max: 200, noNaN: true }),
        fc.double({ min: 1, max: 5, noNaN: true }),
        (table, areaMm2, more) => {
          const one = nearestSizes({ areaMm2, table }).atLeast;
          const two = nearestSizes({ areaMm2: areaMm2 * more, table }).atLeast;
          if (one === null) expect(two).toBeNull();
          else if (two !== null) expect(two.areaMm2).toBeGreaterThanOrEqual(one.areaMm2);
        },
      ),
    );
  });
});

describe('edges', () => {
  it('is null past either end of a table', () => {
    expect(labels(0.1, iso19642)).toEqual([null, '0.13 mm²']);
    expect(labels(0.13, iso19642)).toEqual([null, '0.13 mm²']);
    expect(labels(120, iso19642)).toEqual(['95 mm²', '120 mm²']);
    expect(labels(120.01, iso19642)).toEqual(['120 mm²', null]);
  });
  it('wants a table, not geometry, and says which field', () => {
    expectInputError(() => nearestSizes({ areaMm2: 1, table: geometric as never }), 'table', 'object');
    expectInputError(() => nearestSizes({ areaMm2: 1, table: 'iso19642' as never }), 'table', 'object');
    expectInputError(() => nearestSizes({ areaMm2: 1 } as never), 'table', 'missing');
    expectInputError(() => nearestSizes({ areaMm2: 1, table: null as never }), 'table', 'missing');
  });
  it('refuses an area in m², and nonsense', () => {
    expectInputError(() => nearestSizes({ areaMm2: 2.5e-6, table: iso19642 }), 'areaMm2', 'atLeast');
    expectInputError(() => nearestSizes({ areaMm2: 0, table: iso19642 }), 'areaMm2', 'above');
    refusesNonsense(nearestSizes, { areaMm2: 1, table: iso19642 }, { required: ['areaMm2'] });
  });
});

describe('regression', () => {
  it('does not take stranded No. 16 for 1.28 mm²: AC 43.13-1B gives it 2426 circular mils, 1.229 mm²', () => {
    const { below, atLeast } = nearestSizes({ areaMm2: 1.28, table: awgStranded });
    expect([below?.label, atLeast?.label]).toEqual(['AWG 16', 'AWG 14']);
    expectWithin(below!.areaMm2, 1.2293, 1e-4);
  });
});
