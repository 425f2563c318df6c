import { formatQuantity } from '@loomwright/worked/quantity';
import type { SheetCell, SheetColumn } from './type.js';

/** A cell as text: for people, or plain for files. Ticks and blanks are empty. */
export function cellText(column: SheetColumn, cell: SheetCell | undefined, plain = false): string {
  if (cell === null || cell === undefined || column.kind === 'tick' || column.kind === 'blank') return '';
  if (typeof cell === 'string') return cell;
  const { unit = '', decimals, digits, round = 'nearest', trim = false } = column;
  if (digits !== undefined) return formatQuantity(cell, unit, { digits, round, plain, trim, prefix: prefixOf(unit) });
  return formatQuantity(cell, '', { decimals: decimals ?? 0, round, plain });
}

/** Volts keep their unit; what is small by nature gets its prefix. */
function prefixOf(unit: string): 'natural' | 'none' {
  return unit === 'Ω' || unit === 'A' ? 'natural' : 'none';
}

/** Head of a column with its unit, unless each cell has its own. */
export function headText({ head, unit, digits }: SheetColumn): string {
  return unit === undefined || unit === '' || digits !== undefined ? head : `${head}, ${unit}`;
}
