import type { LoomPlan } from '../loom/plan-type.js';
import { drawGrounds } from '../drawing/draw-grounds.js';
import { drawLoom } from '../drawing/draw-loom.js';
import { sheetsCsv, type SheetFile } from './csv.js';
import { sheetsHtml } from './html.js';
import { sheetsMarkdown } from './markdown.js';
import { sheets } from './sheets.js';
import type { SheetHeader } from './type.js';

/**
 * Every file of a plan's sheets: HTML to print, Markdown, CSV, the data as JSON, and the drawings of loom and grounds.
 *
 * @param plan what `planLoom` answered
 * @param header the date, as a person writes it
 * @returns the files, the HTML first
 * @throws nothing
 */
export function sheetFiles(plan: LoomPlan, header: SheetHeader = {}): readonly SheetFile[] {
  const set = sheets(plan);
  const volts = drawLoom(plan, { width: 900, colourBy: 'volts' });
  // On paper without the table of states, which the sheet has: so it fits below the head of its page.
  const grounds = drawGrounds(plan, { width: 900, table: false });
  return [
    { name: 'sheets.html', text: sheetsHtml(set, { ...header, drawing: volts, grounds }) },
    { name: 'sheets.md', text: sheetsMarkdown(set, header) },
    ...sheetsCsv(set),
    { name: 'sheets.json', text: `${JSON.stringify(set, null, 2)}\n` },
    { name: 'loom-volts.svg', text: volts },
    { name: 'loom-heat.svg', text: drawLoom(plan, { width: 900, colourBy: 'heat' }) },
    { name: 'grounds.svg', text: drawGrounds(plan, { width: 900 }) },
  ];
}
