import { z } from 'zod';
import { knownOf } from '../file/keys.js';
import type { Problem } from '../file/problem.js';
import { dotted, problemsOf } from '../file/problems-of.js';
import { readFile, type ReadFile } from '../file/read.js';
import { brokenReferences } from './references.js';
import { brokenRules } from './broken-rules.js';
import { type Loom, loomSchema } from './schema.js';

/** Most things of one kind that a file may name: a vehicle of several thousand circuits is below. */
export const MOST_NAMES = 10_000;
/** Most problems that are listed one by one. */
export const MOST_PROBLEMS = 200;

/** A loom file, or what is wrong with it. */
export type ParsedLoom =
  { readonly ok: true; readonly loom: Loom } | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Reads a file of a whole vehicle (YAML or JSON).
 *
 * It never throws on bad content. All problems come at once, in the order of the file, each with its line, its field,
 * the rule and, for a mistyped name, the likely one: of syntax alone where the file cannot be read at all. Beyond 200
 * the rest is counted, and no file of more than 10 000 things of one kind is looked into.
 *
 * @param text the file's text
 * @returns the loom with numbers in the core's units, or the problems
 * @throws nothing on any text
 * @example parseLoom('vehicle: {}').ok //=> false
 */
export function parseLoom(text: string): ParsedLoom {
  const { file, problems } = readFile(text);
  if (file === null) return { ok: false, problems };
  const crowded = tooMany(file);
  if (crowded.length > 0) return { ok: false, problems: crowded };
  const result = loomSchema.safeParse(file.data);
  const found = result.success ? [] : problemsOf(result.error, file, knownOf(loomJsonSchema()));
  const broken = brokenReferences(file.data);
  // The rest can be judged only where every name leads somewhere.
  const more = result.success && broken.length === 0 ? brokenRules(result.data) : [];
  for (const { path, rule, message, likely } of [...broken, ...more]) {
    const at = file.place(path);
    found.push({ line: at?.line ?? null, column: at?.column ?? null, field: dotted(path), rule, message, likely });
  }
  if (result.success && found.length === 0) return { ok: true, loom: result.data };
  found.sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
  if (found.length > MOST_PROBLEMS) {
    const left = found.length - MOST_PROBLEMS;
    found.splice(MOST_PROBLEMS, left, {
      line: null,
      column: null,
      field: '',
      rule: 'size',
      message: `and ${left} more problems; mend these first.`,
      likely: null,
    });
  }
  return { ok: false, problems: found };
}

/** The JSON Schema of a loom file, for editors. */
export function loomJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(loomSchema, { io: 'input' });
}

/** Maps with more names than are looked into. */
function tooMany(file: ReadFile): Problem[] {
  return Object.entries(file.data as Record<string, unknown>).flatMap(([key, value]) => {
    if (typeof value !== 'object' || value === null) return [];
    const count = Object.keys(value).length;
    if (count <= MOST_NAMES) return [];
    const at = file.place([key]);
    const message = `has ${count} entries; at most ${MOST_NAMES} are read.`;
    return [{ line: at?.line ?? null, column: at?.column ?? null, field: key, rule: 'size', message, likely: null }];
  });
}
