import * as core from 'loomwright';
import type { ConductorTable } from 'loomwright';

/** Every conductor table that the library exports, found and not listed, so that a new one is tested too. */
export const conductorTables: readonly ConductorTable[] = Object.values(core as Record<string, unknown>).filter(
  (value): value is ConductorTable =>
    typeof value === 'object' && value !== null && (value as { kind?: unknown }).kind === 'table' && 'prints' in value,
);

/** A size of a table in the field that the table wants it in. */
export function sizeIn(
  table: ConductorTable,
  size: string,
): { areaMm2: number } | { awg: string } | { saeGauge: string } {
  return table.sizes === 'mm2' ? { areaMm2: Number(size) } : table.sizes === 'awg' ? { awg: size } : { saeGauge: size };
}
