import { needAreaMm2 } from '../conductor/area.js';
import type { NotPossible } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needAbove, needInput, needInteger, needList } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { AreaTable } from '../table/index.js';
import { circularMilsToMm2, mm2ToCircularMils } from '../unit/index.js';

/** Wires of one kind in a splice: a size of the table, an area, or strands that were counted and measured. */
export type SpliceWire =
  | { readonly size: string; readonly count: number }
  | { readonly areaMm2: number; readonly count: number }
  | { readonly strandCount: number; readonly strandDiameterMm: number; readonly count: number };

export interface SpliceAreaInput {
  /** All conductors that go into one barrel. */
  readonly wires: readonly SpliceWire[];
  /** Sizes by which the barrel is bought, with their areas. */
  readonly areaTable: AreaTable;
}

/** A sum of conductors and the size that it counts as. */
export interface SpliceArea {
  readonly possible: true;
  /** Sum of the conductors in mm². */
  readonly areaMm2: number;
  /** The same in circular mils. */
  readonly circularMils: number;
  /** The smallest size of the table that is not below the sum. */
  readonly size: string;
  /** Area of that size in mm². */
  readonly sizeAreaMm2: number;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/** The largest size of the table, where the sum is above it. */
export interface LargestSplice {
  readonly areaMm2: number;
  readonly circularMils: number;
  readonly size: string;
  readonly sizeAreaMm2: number;
}

/**
 * The size that several conductors in one barrel count as: the sum of their areas, then the next larger size.
 *
 * Use it to choose a splice or a lug for more than one wire, then `checkTerminal` with the sum. Take the areas of the
 * wires that you hold: a stranded AWG 16 has 2426 circular mils in one table, a solid one 2583, an SAE 16 at least 2336.
 *
 * $$A = \sum_i n_i A_i$$
 *
 * Tables print whole circular mils, so a sum within half of one above a size is that size.
 *
 * @param input wires and the table of sizes
 * @returns the sum and the next larger size; `possible: false` with code `beyond-table` where none is large enough
 * @throws InputError when a field is missing or out of range, or a size is not in the table
 * @source nasa-std-8739-4, 19.11 (sum of circular mils, next larger equivalent size)
 * @example spliceArea({ wires: [{ size: '18', count: 2 }, { size: '20', count: 1 }], areaTable: awgStrandedAreas }).circularMils //=> 5016
 */
export function spliceArea(input: SpliceAreaInput): SpliceArea | NotPossible<LargestSplice> {
  needInput('spliceArea', input);
  const { wires, areaTable } = input;
  if (typeof areaTable !== 'object' || areaTable === null || areaTable.rows === undefined) {
    const rule = areaTable === undefined || areaTable === null ? 'missing' : 'object';
    throw new InputError(
      'spliceArea',
      'areaTable',
      rule,
      areaTable,
      'must be a table of areas',
      'import one, such as awgStrandedAreas',
    );
  }
  needList('spliceArea', 'wires', wires, 1);
  const sumMm2 = wires.reduce((sum, wire, i) => sum + areaOf(wire, `wires[${i}]`, areaTable), 0);
  const sizes = areaTable.rows
    .map((row) => ({ size: row[0], sizeAreaMm2: toMm2(areaTable, row[1]) }))
    .sort((a, b) => a.sizeAreaMm2 - b.sizeAreaMm2);
  const sum = { areaMm2: sumMm2, circularMils: mm2ToCircularMils(sumMm2) };
  // A sum that equals a size but for rounding, ours or that of its print, counts as that size.
  const printedMm2 = areaTable.prints === 'mm2' ? 0 : circularMilsToMm2(0.5);
  const next = sizes.find(({ sizeAreaMm2 }) => sizeAreaMm2 + printedMm2 >= sumMm2 * (1 - 1e-12));
  if (next === undefined) {
    const largest = sizes.at(-1) as (typeof sizes)[number];
    return {
      possible: false,
      code: 'beyond-table',
      because: `the sum is above ${largest.size}, the largest size of ${areaTable.key}`,
      nearest: { ...sum, ...largest },
    };
  }
  return { possible: true, ...sum, ...next, source: areaTable.source, sourceStatus: areaTable.status };
}

function toMm2(table: AreaTable, printed: number): number {
  return table.prints === 'mm2' ? printed : circularMilsToMm2(printed);
}

function areaOf(wire: SpliceWire, field: string, table: AreaTable): number {
  if (typeof wire !== 'object' || wire === null) {
    throw new InputError('spliceArea', field, 'object', wire, 'must be an object with a size and count');
  }
  needInteger('spliceArea', `${field}.count`, wire.count, 1);
  if ('size' in wire) {
    const row = table.rows.find(([size]) => size === wire.size);
    if (row === undefined) {
      throw new InputError('spliceArea', `${field}.size`, 'inTable', wire.size, `must be a size of ${table.key}`);
    }
    return wire.count * toMm2(table, row[1]);
  }
  if ('areaMm2' in wire) {
    needAreaMm2('spliceArea', wire.areaMm2);
    return wire.count * wire.areaMm2;
  }
  needInteger('spliceArea', `${field}.strandCount`, wire.strandCount, 1);
  needAbove('spliceArea', `${field}.strandDiameterMm`, wire.strandDiameterMm);
  return wire.count * wire.strandCount * (Math.PI / 4) * wire.strandDiameterMm * wire.strandDiameterMm;
}
