import * as room from 'loomwright/table';
import type { DropBudget, FuseFamily, PreferredSeries, ResistanceBasis } from 'loomwright/table';

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

/**
 * Fields in which a word names a table, and what they get. Those typed `never` take several kinds of table, one a
 * function: the type fits each of them, and the function refuses the wrong one.
 */
export interface TableFields {
  readonly resistanceBasis: ResistanceBasis;
  readonly budget: DropBudget;
  readonly family: FuseFamily;
  readonly series: PreferredSeries;
  readonly table: never;
  readonly wireTable: never;
  readonly loadingTable: never;
  readonly areaTable: never;
  readonly curve: never;
  readonly thermocouple: never;
  readonly toleranceClass: never;
}

/** What a table must have to stand in a field, where one kind alone may stand there. */
const MARKS: Readonly<Record<keyof TableFields, string | null>> = {
  resistanceBasis: 'kind',
  budget: 'dropV',
  family: 'ratingsA',
  series: 'usualToleranceFraction',
  table: null,
  wireTable: null,
  loadingTable: null,
  areaTable: null,
  curve: null,
  thermocouple: null,
  toleranceClass: null,
};

/** The tables that may stand in a field; null for a field that takes none. */
export function tablesFor(field: string): readonly NamedTable[] | null {
  if (!Object.hasOwn(MARKS, field)) return null;
  const mark = MARKS[field as keyof TableFields];
  const all = Object.values(tables);
  if (mark === null) return all;
  if (mark === 'kind') return all.filter((t) => 'kind' in t && (t.kind === 'table' || t.kind === 'geometric'));
  return all.filter((table) => mark in table);
}
