import { expect, it } from 'vitest';
import { wireResistance, type ConductorTable } from 'loomwright';
import { conductorTables, sizeIn } from './conductor-tables.js';
import { expectPrinted, transcribed, type Citation } from './published.js';

/** One row a test: the size and what the source prints, typed here and not taken from the table. */
export function conductorRows(
  table: ConductorTable,
  cite: Citation,
  rows: readonly (readonly [size: string, print: string, cite?: Citation])[],
): void {
  for (const [size, print, own = cite] of rows) {
    transcribed(`${table.key} ${size}, ${print} ${table.prints}`, own, () => {
      const row = table.rows.find(([name]) => name === size);
      expect(row, `${size} in ${table.key}`).toBeDefined();
      expectPrinted(row![1], print, 0);
    });
  }
  it(`${table.key} has ${rows.length} rows, each size once, and is among the tables that the library exports`, () => {
    expect(table.rows.map(([size]) => size)).toEqual(rows.map(([size]) => size));
    expect(new Set(table.rows.map(([size]) => size)).size).toBe(rows.length);
    expect(conductorTables).toContain(table);
  });
}

/** The rows run from the thinnest size to the thickest, and resistance only falls. */
export function fallsRowByRow(table: ConductorTable): void {
  it(`${table.key}: resistance falls and area grows, row by row`, () => {
    const solved = table.rows.map(([size]) =>
      wireResistance({ ...sizeIn(table, size), resistanceBasis: table, lengthM: 1, conductorTempC: table.ratedTempC }),
    );
    for (let i = 1; i < solved.length; i++) {
      expect(solved[i]!.resistanceOhm, solved[i]!.size).toBeLessThan(solved[i - 1]!.resistanceOhm);
      expect(solved[i]!.areaMm2, solved[i]!.size).toBeGreaterThan(solved[i - 1]!.areaMm2);
    }
  });
}

/** Resistance at 20 °C times area, over the resistivity of the ideal metal: 1 is solid wire of exactly that area. */
export function overGeometry(table: ConductorTable, size: string, idealOhmMm2PerM = 0.017241): number {
  const { resistanceOhm, areaMm2 } = wireResistance({
    ...sizeIn(table, size),
    resistanceBasis: table,
    lengthM: 1,
    conductorTempC: 20,
  });
  return (resistanceOhm * areaMm2) / idealOhmMm2PerM;
}

/** Every row lies in a stated band above geometric metal; `except` names the rows that do not, each with its reason. */
export function withinBand(
  table: ConductorTable,
  low: number,
  high: number,
  except: readonly string[] = [],
  idealOhmMm2PerM = 0.017241,
): void {
  it(`${table.key}: each row is ${low} to ${high} times ideal metal of its area`, () => {
    for (const [size] of table.rows) {
      const times = overGeometry(table, size, idealOhmMm2PerM);
      const inBand = times >= low && times <= high;
      expect(inBand, `${size} is ${times} times ideal`).toBe(!except.includes(size));
    }
  });
}
