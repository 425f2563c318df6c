// What the page shows of a plan, as texts: made in the worker while somebody edits, and once when the site is built. The
// page itself needs nothing of the planner.
import {
  cellText,
  drawGrounds,
  drawLoom,
  headText,
  type LoomPlan,
  type SheetTable,
  sheetOrder,
  sheets,
  standingText,
} from '@loomwright/harness';
import { formatQuantity } from '@loomwright/worked/quantity';

export interface ShownFinding {
  readonly severity: 'fail' | 'warn' | 'note';
  readonly about: string;
  readonly rule: string;
  readonly message: string;
  readonly cure: string | null;
  /** `12 % left`, or '' where there is no number. */
  readonly margin: string;
  /** How much of the limit is used, 0 to 1; null where there is no number. */
  readonly used: number | null;
}

export interface ShownTable {
  readonly title: string;
  readonly note: string | null;
  readonly heads: readonly { readonly text: string; readonly number: boolean }[];
  readonly rows: readonly (readonly ShownCell[])[];
  readonly foot: readonly (readonly ShownCell[])[];
}

export interface ShownCell {
  readonly text: string;
  readonly under: string;
}

export interface ShownSheet {
  readonly key: string;
  readonly title: string;
  readonly lead: string;
  readonly tables: readonly ShownTable[];
}

export interface Shown {
  readonly vehicle: string;
  readonly standing: string;
  readonly fails: number;
  readonly counts: string;
  readonly findings: readonly ShownFinding[];
  readonly volts: string;
  readonly heat: string;
  readonly grounds: string;
  /** Names of the states; the map of the grounds can show any of them. */
  readonly states: readonly string[];
  readonly sheets: readonly ShownSheet[];
  readonly notJudged: readonly string[];
}

/** A problem of a file, with the line that it stands on. */
export interface ShownProblem {
  readonly line: number | null;
  readonly text: string;
}

export function shownOf(plan: LoomPlan, width: number): Shown {
  const set = sheets(plan);
  const total = Number(set.cuts.tables[0]?.foot[0]?.['totalM'] ?? 0);
  return {
    vehicle: plan.vehicle.name,
    standing: standingText(set).replace(/: see Findings.*$/, ''),
    fails: set.standing.failCount,
    counts: `${plan.circuits.length} circuits, ${plan.wires.length} wires, ${formatQuantity(total, 'm', { decimals: 0, round: 'up' })} of wire, ${plan.states.length} states`,
    findings: plan.findings.map(({ severity, about, rule, message, cure, marginFraction }) => ({
      severity,
      about: about.name,
      rule: rule.replaceAll('-', ' '),
      message,
      cure,
      margin: marginText(marginFraction),
      used: marginFraction === null ? null : Math.min(1, Math.max(0, 1 - marginFraction)),
    })),
    volts: drawLoom(plan, { width, colourBy: 'volts' }),
    heat: drawLoom(plan, { width, colourBy: 'heat' }),
    grounds: drawGrounds(plan, { width }),
    states: plan.states.map(({ name }) => name),
    sheets: sheetOrder(set)
      .filter(({ key }) => key !== 'findings')
      .map(({ key, title, lead, tables }) => ({ key, title, lead, tables: tables.map(shownTable) })),
    notJudged: plan.notJudged,
  };
}

function shownTable({ title, note, columns, rows, foot }: SheetTable): ShownTable {
  const shown = columns.filter(({ kind, dataOnly }) => (kind === 'text' || kind === 'number') && dataOnly !== true);
  const cells = (row: SheetTable['rows'][number]): ShownCell[] =>
    shown.map((column) => ({
      text: cellText(column, row[column.key]),
      under: column.under === undefined ? '' : String(row[column.under] ?? ''),
    }));
  return {
    title,
    note,
    heads: shown.map((column) => ({ text: headText(column), number: column.kind === 'number' })),
    rows: rows.map(cells),
    foot: foot.map(cells),
  };
}

function marginText(marginFraction: number | null): string {
  if (marginFraction === null) return '';
  const lacks = marginFraction < 0;
  const share = formatQuantity(Math.abs(marginFraction), 'fraction', { decimals: 0, round: lacks ? 'up' : 'down' });
  return `${share} ${lacks ? 'short' : 'left'}`;
}
