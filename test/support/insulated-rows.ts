import { expect, it } from 'vitest';
import { insulatedWire, type InsulatedWireTable } from 'loomwright';
import { insulatedTables } from './insulated-tables.js';
import { expectPrinted, transcribed, type Citation } from './published.js';

/** What a source prints of one size; '-' where it prints nothing. */
export type PrintedWire = readonly [size: string, conductor: string, wall: string, outer: string, mass: string];

/** One size a test, typed here and not taken from the table; and the table has these sizes and no others. */
export function insulatedRows(table: InsulatedWireTable, cite: Citation, prints: readonly PrintedWire[]): void {
  for (const [size, ...values] of prints) {
    transcribed(`${table.key} ${size}: ${values.join(', ')}`, cite, () => {
      const row = table.rows.find(([name]) => name === size);
      expect(row, `${size} in ${table.key}`).toBeDefined();
      values.forEach((print, i) => {
        const value = row![i + 1];
        if (print === '-') expect(value).toBeNull();
        else expectPrinted(value as number, print, 0);
      });
    });
  }
  it(`${table.key} has these ${prints.length} sizes and no other, each resolves, and the library exports it`, () => {
    expect(table.rows.map(([size]) => size)).toEqual(prints.map(([size]) => size));
    for (const [size] of prints) expect(insulatedWire({ wireTable: table, size }).outerDiameterMm).toBeGreaterThan(0);
    expect(insulatedTables).toContain(table);
  });
}
