import {
  cellText,
  type Finding,
  headText,
  type LoomPlan,
  type Severity,
  sheets,
  standingText,
} from '@loomwright/harness';
import { cautions } from '@loomwright/worked/card';
import { formatQuantity } from '@loomwright/worked/quantity';
import { columns, wrap } from './text.js';

const WIDTH = 100;
const TITLE: Readonly<Record<Severity, string>> = { fail: 'NOT MET', warn: 'To be looked at', note: 'Notes' };

/** A plan as pages of text: how it stands, its findings, its wires, what it does not look at. */
export function planText(plan: LoomPlan): string {
  const lines = [...planHead(plan)];
  for (const severity of ['fail', 'warn', 'note'] as const) {
    const findings = plan.findings.filter((finding) => finding.severity === severity);
    if (findings.length === 0) continue;
    lines.push('', `  ${TITLE[severity]} (${findings.length})`, ...findings.flatMap(findingLines));
  }
  lines.push('', '  Wires', ...wireLines(plan));
  if (plan.notJudged.length > 0) {
    lines.push('', '  What this plan does not look at', ...plan.notJudged.flatMap((line) => wrap(line, WIDTH, '    ')));
  }
  lines.push('');
  for (const key of ['local-code', 'battery', 'fuel', 'restraint'] as const) {
    lines.push(...wrap(`${cautions[key].title}: ${cautions[key].text}`, WIDTH, '  '));
  }
  return `${lines.join('\n')}\n`;
}

/** How a plan stands, in a few lines. */
export function planHead(plan: LoomPlan): string[] {
  const set = sheets(plan);
  const spools = set.cuts.tables.find(({ file }) => file === 'spools');
  const total = Number(spools?.foot[0]?.['totalM'] ?? 0);
  const standing = standingText(set).replace(/: see Findings.*$/, '');
  return [
    plan.vehicle.name,
    ...(plan.vehicle.note === null ? [] : wrap(plan.vehicle.note, WIDTH, '  ')),
    '',
    `  ${plan.circuits.length} circuits, ${plan.wires.length} wires, ${formatQuantity(total, 'm', { decimals: 1, round: 'up' })} of wire in ${spools?.rows.length ?? 0} spools, ${plan.states.length} states`,
    `  ${standing.replace(/^./, (c) => c.toUpperCase())}`,
  ];
}

/** A finding: what it is about, its rule and margin on one line, the sentence and the cure below. */
export function findingLines({ about, rule, marginFraction, message, cure }: Finding): string[] {
  const margin =
    marginFraction === null
      ? ''
      : marginFraction < 0
        ? ` · ${formatQuantity(-marginFraction, 'fraction', { decimals: 0, round: 'up' })} short`
        : ` · ${formatQuantity(marginFraction, 'fraction', { decimals: 0, round: 'down' })} left`;
  return [
    `    ${about.name} · ${rule.replaceAll('-', ' ')}${margin}`,
    ...wrap(message, WIDTH, '      '),
    ...(cure === null ? [] : wrap(`Cure: ${cure}`, WIDTH, '      ')),
  ];
}

/** The wire list of the sheets, without the columns that a terminal has no room for. */
function wireLines(plan: LoomPlan): string[] {
  const [table] = sheets(plan).wires.tables;
  if (table === undefined) return [];
  const shown = ['label', 'size', 'colour', 'cutM', 'currentA', 'protectedBy', 'decidedBy'].flatMap(
    (key) => table.columns.find((column) => column.key === key) ?? [],
  );
  const rows = [
    shown.map(headText),
    ...table.rows.map((row) => shown.map((column) => cellText(column, row[column.key]))),
  ];
  const right = shown.flatMap(({ kind }, i) => (kind === 'number' ? [i + 1] : []));
  return columns(
    rows.map((row) => ['  ', ...row]),
    right,
  );
}
