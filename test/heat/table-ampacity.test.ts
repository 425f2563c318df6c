import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  ac4313Ampacity,
  ac4313CircularMils,
  type AmpacityTable,
  awgToAreaMm2,
  circularMilsToMm2,
  tableAmpacity,
  us33Cfr183Ampacity,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted } from '../support/published.js';

const boat = { table: us33Cfr183Ampacity, insulationTempC: 105, ambientTempC: 30 } as const;

describe('published', () => {
  // Engine-space amperes of 105 °C wire as a trade table prints them: outside × 0.85, some rounded (14: 29.75 as 30),
  // some cut (2: 178.5 as 178) to whole amperes. Ours has the unrounded factor 0.8563, 0.74 % more.
  for (const [awg, print] of [
    ['18', 17],
    ['16', 21],
    ['14', 30],
    ['12', 38],
    ['10', 51],
    ['8', 68],
    ['6', 102],
    ['4', 136],
    ['3', 153],
    ['2', 178],
    ['1', 208],
    ['1/0', 242],
    ['2/0', 280],
    ['3/0', 327],
    ['4/0', 378],
  ] as const) {
    computed(
      `engine space, AWG ${awg}, 105 °C`,
      { source: 'us-33-cfr-183', place: '183.425 table 5 and note 1, trade print', status: 'published' },
      () => {
        const { currentA } = tableAmpacity({ ...boat, awg, ambientTempC: 50 });
        expect(currentA).toBeGreaterThanOrEqual(print - 0.5);
        expect(currentA).toBeLessThanOrEqual(print * (0.8563 / 0.85) + 1);
      },
    );
  }
  computed(
    '14 AWG 105 °C at 60 °C ambient from base 30 °C',
    { source: 'us-33-cfr-183', place: '183.425 table 5 with its own base', status: 'derived' },
    () => expectPrinted(tableAmpacity({ ...boat, awg: '14', ambientTempC: 60 }).currentA, '27.11'),
  );
  computed(
    '14 AWG 105 °C at 60 °C ambient from base 70 °C',
    { source: 'ac-43-13-1b', place: 'table 11-9 with its own base', status: 'derived' },
    () => {
      const { currentA, baseTempC } = tableAmpacity({
        table: ac4313Ampacity,
        awg: '14',
        insulationTempC: 105,
        ambientTempC: 60,
      });
      expectPrinted(currentA, '11.34');
      expect(baseTempC).toBe(70);
    },
  );
  computed(
    '10 AWG 105 °C, 60 A as printed at its base',
    { source: 'us-33-cfr-183', place: '183.425 table 5', status: 'published' },
    () => expect(tableAmpacity({ ...boat, awg: '10' }).currentA).toBe(60),
  );
});

describe('laws', () => {
  const tables: readonly AmpacityTable[] = [us33Cfr183Ampacity, ac4313Ampacity];

  it(
    'walks every table: no area and no class ever takes more than the sizes and classes not above it',
    { timeout: 60_000 },
    () => {
      for (const table of tables) {
        const rows = table.rows.map((row) => ({
          row,
          area: Math.max(
            awgToAreaMm2(row[0]),
            circularMilsToMm2(table.circularMils?.find(([size]) => size === row[0])?.[1] ?? 0),
          ),
        }));
        const smallest = Math.min(...rows.map(({ area }) => area));
        for (let areaMm2 = smallest * 1.0001; areaMm2 < 130; areaMm2 *= 1.01) {
          for (let insulationTempC = Math.min(...table.classesC); insulationTempC <= 260; insulationTempC += 5) {
            const taken = tableAmpacity({ table, areaMm2, insulationTempC, ambientTempC: table.baseTempC });
            const allowed = rows
              .filter(({ area }) => area <= areaMm2)
              .flatMap(({ row }) =>
                table.classesC.flatMap((c, i) => (c <= insulationTempC ? [row[i + 1] as number] : [])),
              );
            expect(taken.currentA).toBeLessThanOrEqual(Math.max(...allowed));
            expect(rows.find(({ row }) => row[0] === taken.rowSize)!.area).toBeLessThanOrEqual(areaMm2);
            expect(taken.columnTempC).toBeLessThanOrEqual(insulationTempC);
          }
        }
      }
    },
  );
  it('gives a larger wire never less, and hotter air never more', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...tables),
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 1, max: 1.5, noNaN: true }),
        evenly(-20, 100),
        (table, areaMm2, more, ambientTempC) => {
          const at = (a: number, t: number): number =>
            tableAmpacity({ table, areaMm2: a, insulationTempC: 105, ambientTempC: t }).currentA;
          expect(at(areaMm2 * more, ambientTempC)).toBeGreaterThanOrEqual(at(areaMm2, ambientTempC));
          expect(at(areaMm2, ambientTempC + 5)).toBeLessThanOrEqual(at(areaMm2, ambientTempC));
        },
      ),
    );
  });
});

describe('edges', () => {
  it('takes the row of a gauge by its name, and the next thinner where the table lacks it', () => {
    expect(tableAmpacity({ ...boat, awg: '3' }).rowSize).toBe('3');
    expect(tableAmpacity({ ...boat, awg: '5' }).rowSize).toBe('6');
    expect(tableAmpacity({ table: ac4313Ampacity, awg: '3', insulationTempC: 150, ambientTempC: 70 }).rowSize).toBe(
      '4',
    );
  });
  it('takes a metric size as the largest listed size that is not above it', () => {
    expect(tableAmpacity({ ...boat, areaMm2: 2.5 }).rowSize).toBe('14');
    expect(tableAmpacity({ ...boat, areaMm2: awgToAreaMm2('12') }).rowSize).toBe('12');
    expect(tableAmpacity({ ...boat, areaMm2: 3.3 }).rowSize).toBe('14');
    // 0.35 mm² is more than the defined area of AWG 22, less than the 755 circular mils that the table's wire has.
    const thin = { table: ac4313Ampacity, areaMm2: 0.35, insulationTempC: 105, ambientTempC: 70 };
    expect(awgToAreaMm2('22')).toBeLessThan(0.35);
    expect(ac4313CircularMils.find(([size]) => size === '22')).toEqual(['22', 755]);
    expect(tableAmpacity(thin).rowSize).toBe('24');
  });
  it('takes a class between two columns as the lower one, with its factor', () => {
    const result = tableAmpacity({ ...boat, awg: '14', insulationTempC: 100, ambientTempC: 60 });
    expect(result.columnTempC).toBe(90);
    expectPrinted(result.currentA, '21.213');
  });
  it('names its source and status', () => {
    expect(tableAmpacity({ ...boat, awg: '14' })).toMatchObject({ source: 'us-33-cfr-183', sourceStatus: 'published' });
  });
  it('gives nothing in air as hot as the class', () => {
    expect(tableAmpacity({ ...boat, awg: '14', ambientTempC: 105 }).currentA).toBe(0);
  });
  it('refuses nonsense', () => {
    refusesNonsense(
      tableAmpacity,
      { ...boat, areaMm2: 4 },
      { required: ['insulationTempC', 'ambientTempC'], optional: ['areaMm2'] },
    );
    for (const value of [undefined, null, 'abc', {}]) {
      expectInputError(() => tableAmpacity({ ...boat, awg: '14', table: value as never }), 'table');
    }
  });
  it('refuses no size, two sizes, and sizes and classes below the table', () => {
    expectInputError(() => tableAmpacity({ ...boat }), 'areaMm2', 'oneOfFields');
    expectInputError(() => tableAmpacity({ ...boat, awg: '14', areaMm2: 2 }), 'areaMm2', 'oneOfFields');
    expectInputError(() => tableAmpacity({ ...boat, areaMm2: 0.5 }), 'areaMm2', 'inTable');
    expectInputError(() => tableAmpacity({ ...boat, awg: '20' }), 'awg', 'inTable');
    expectInputError(() => tableAmpacity({ ...boat, awg: 'x' }), 'awg');
    expectInputError(() => tableAmpacity({ ...boat, areaMm2: 2.5e-6 }), 'areaMm2', 'atLeast');
    expectInputError(() => tableAmpacity({ ...boat, saeGauge: '14' }), 'saeGauge', 'inTable');
    expectInputError(() => tableAmpacity({ ...boat, awg: '14', insulationTempC: 55 }), 'insulationTempC', 'inTable');
  });
});
