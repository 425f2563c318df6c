import type { LoomPlan } from '../loom/plan-type.js';
import { aliveSheet } from './alive-sheet.js';
import { cutList } from './cut-list.js';
import { findingsSheet } from './findings-sheet.js';
import { fuseChart } from './fuse-chart.js';
import { groundsSheet } from './grounds-sheet.js';
import { loadList } from './load-list.js';
import { readingsSheet } from './readings.js';
import type { Sheet, SheetSet } from './type.js';
import { wireList } from './wire-list.js';

/**
 * The sheets of a planned vehicle, as data: findings, wire list, fuse chart, cut list with spool totals, load list by
 * state, grounds, what is alive when, expected readings. All are made from the one plan, so that no two can disagree.
 *
 * Numbers are unrounded, in the unit of their column; only lengths to cut are whole centimetres, rounded up, because
 * the sums of the cut list are of what is cut. `sheetsCsv`, `sheetsMarkdown` and `sheetsHtml` write them.
 *
 * @param plan what `planLoom` answered
 * @returns the sheets, in the order in which they are used
 * @throws nothing
 * @source the plan's own
 */
export function sheets(plan: LoomPlan): SheetSet {
  const count = (severity: 'fail' | 'warn' | 'note'): number =>
    plan.findings.filter((finding) => finding.severity === severity).length;
  return {
    vehicle: plan.vehicle.name,
    note: plan.vehicle.note,
    standing: { failCount: count('fail'), warnCount: count('warn'), noteCount: count('note') },
    findings: findingsSheet(plan),
    wires: wireList(plan),
    fuses: fuseChart(plan),
    cuts: cutList(plan),
    loads: loadList(plan),
    grounds: groundsSheet(plan),
    alive: aliveSheet(plan),
    readings: readingsSheet(plan),
    notJudged: plan.notJudged,
  };
}

/** The sheets in the order in which they are printed. */
export function sheetOrder(set: SheetSet): readonly Sheet[] {
  return [set.findings, set.wires, set.fuses, set.cuts, set.loads, set.grounds, set.alive, set.readings];
}

/** How the plan stands, in words, for the head of every sheet. */
export function standingText({ standing: { failCount, warnCount } }: SheetSet): string {
  const limits = failCount === 1 ? 'limit is' : 'limits are';
  if (failCount > 0) return `${failCount} ${limits} NOT MET: see Findings before you build`;
  if (warnCount > 0) return `nothing to be mended, ${warnCount} to look at: see Findings`;
  return 'every limit met';
}
