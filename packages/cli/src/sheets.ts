import { existsSync, mkdirSync, readdirSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { sheetFiles, type SheetFile } from '@loomwright/harness';
import type { Outcome } from './feed.js';
import { planFile, statusOf } from './plan-read.js';
import { findingLines, planHead } from './plan-text.js';

/** Names that a folder of sheets may hold: all that was ever written into one. */
const OURS =
  /^(?:sheets\.(?:html|md|json)|(?:loom-volts|loom-heat|grounds)\.svg|(?:wire-list|fuse-chart|outputs|without-a-fuse|spools|cut-list|load-list(?:-\d+)*|ground-(?:ways|sensors|losses)|ground-volts(?:-\d+)?|alive(?:-\d+|-faults)?|readings(?:-[a-z]+)+|findings)\.csv)$/;

/** Writes the sheets of a vehicle into a folder: whole, or not at all. */
export function writeSheets(
  file: string,
  options: { readonly out: string; readonly force?: boolean; readonly date?: string },
): Outcome {
  const planned = planFile(file);
  if (!planned.ok) return { out: '', err: planned.err, status: 1 };
  const { plan } = planned;
  const files = sheetFiles(plan, options.date === undefined ? {} : { date: options.date });
  const because = put(options.out, files, options.force === true);
  if (because !== null) return { out: '', err: `${options.out}: ${because}\n`, status: 1 };
  const bad = plan.findings.filter(({ severity }) => severity === 'fail');
  const lines = [
    ...planHead(plan),
    ...(bad.length === 0 ? [] : ['', '  NOT MET', ...bad.flatMap(findingLines)]),
    '',
    `  ${files.length} files in ${options.out}`,
    `    to print: ${join(options.out, 'sheets.html')} (A4 or Letter)`,
    `    to look at: ${join(options.out, 'grounds.svg')}, loom-volts.svg and loom-heat.svg beside it`,
    `    ${files
      .slice(1)
      .map(({ name }) => name)
      .join(', ')}`,
  ];
  return { out: `${lines.join('\n')}\n`, err: '', status: statusOf(plan) };
}

/** Puts files into a folder of their own by renaming a finished one; the reason where it must not or cannot be. */
function put(out: string, files: readonly SheetFile[], force: boolean): string | null {
  let fresh: string | null = null;
  try {
    const folder = existsSync(out) ? realpathSync(out) : resolve(out);
    const old = existsSync(folder);
    if (old) {
      if (!statSync(folder).isDirectory()) return 'this is no folder; nothing is written';
      const held = readdirSync(folder);
      const foreign = held.filter((name) => !OURS.test(name));
      if (foreign.length > 0) {
        return `the folder holds other things (${foreign.slice(0, 3).join(', ')}${foreign.length > 3 ? ' …' : ''}); nothing is written. Give a folder of its own`;
      }
      if (held.length > 0 && !force) return 'there are sheets already; nothing is written. --force replaces them';
    }
    mkdirSync(dirname(folder), { recursive: true });
    const beside = join(dirname(folder), `.${basename(folder)}-${process.pid}`);
    mkdirSync(beside);
    fresh = beside;
    for (const { name, text } of files) writeFileSync(join(fresh, name), text, { flag: 'wx' });
    if (old) {
      const aside = `${fresh}-old`;
      renameSync(folder, aside);
      try {
        renameSync(fresh, folder);
      } catch (error) {
        renameSync(aside, folder);
        throw error;
      }
      rmSync(aside, { recursive: true, force: true });
    } else renameSync(fresh, folder);
    fresh = null;
    return null;
  } catch (error) {
    return `${(error as Error).message}; nothing is written`;
  } finally {
    if (fresh !== null) rmSync(fresh, { recursive: true, force: true });
  }
}
