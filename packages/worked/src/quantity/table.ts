import * as room from 'loomwright/table';
import type {
  AmpacityTable,
  ConductorTable,
  DropBudget,
  FuseFamily,
  PreferredSeries,
  ResistanceBasis,
} from 'loomwright/table';

/** A table of the core, by which a word in a file may stand for it. */
export type NamedTable = Readonly<{ key: string }>;

/** Every table of the core by its key: `tables['iso-19642']` is `iso19642`. A table added there is found here. */
export const tables: Readonly<Record<string, NamedTable>> = /* @__PURE__ */ (() =>
  Object.fromEntries(
    (Object.values(room) as readonly unknown[])
      .filter(
        (table): table is NamedTable =>
          typeof table === 'object' && table !== null && typeof (table as NamedTable).key === 'string',
      )
      .map((table) => [table.key, table]),
  ))();

/** Fields in which a word names a table, and what they get. `table` is one of heating or of sizes. */
export interface TableFields {
  readonly resistanceBasis: ResistanceBasis;
  readonly table: AmpacityTable & ConductorTable;
  readonly budget: DropBudget;
  readonly family: FuseFamily;
  readonly series: PreferredSeries;
}

/** Whether a table may stand in a field, by what it holds; null for a field that takes no table. */
export function tablesFor(field: string): readonly NamedTable[] | null {
  const all = Object.values(tables);
  switch (field) {
    case 'resistanceBasis':
      return all.filter((table) => 'kind' in table && (table.kind === 'table' || table.kind === 'geometric'));
    case 'table':
      return all.filter((table) => 'sizes' in table);
    case 'family':
      return all.filter((table) => 'ratingsA' in table);
    case 'budget':
      return all.filter((table) => 'dropV' in table);
    case 'series':
      return all.filter((table) => 'usualToleranceFraction' in table);
    default:
      return null;
  }
}
