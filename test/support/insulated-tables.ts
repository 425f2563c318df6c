import * as core from 'loomwright';
import type { InsulatedWireTable } from 'loomwright';

/** Every table of insulated wires that the library exports, found and not listed, so that a new one is tested too. */
export const insulatedTables: readonly InsulatedWireTable[] = Object.values(core as Record<string, unknown>).filter(
  (value): value is InsulatedWireTable =>
    typeof value === 'object' && value !== null && (value as { kind?: unknown }).kind === 'insulated-wire',
);
