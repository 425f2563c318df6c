import { isMap, isSeq, LineCounter, parseDocument, type Document, type Node } from 'yaml';
import type { Problem } from './problem.js';

/** Largest file that is read, in characters: a vehicle of several thousand circuits is well below. */
export const LARGEST_FILE = 4_000_000;
/** Most lines that are read. */
export const MOST_LINES = 200_000;
/** Deepest nesting that is read. */
export const DEEPEST_NESTING = 40;

/** A file as data, with a way to find the line of each field. */
export interface ReadFile {
  readonly data: unknown;
  /** Line and column of the field at a path; of the nearest field above it where it is missing. */
  readonly place: (path: readonly PropertyKey[]) => { readonly line: number; readonly column: number } | null;
}

/**
 * Reads YAML or JSON (which is YAML) without ever throwing on its content. Too large, too deep, too many aliases and
 * bad syntax come back as problems with their lines.
 */
export function readFile(text: string): { readonly file: ReadFile | null; readonly problems: readonly Problem[] } {
  const stop = (
    rule: 'syntax' | 'size',
    message: string,
    line: number | null = null,
    column: number | null = null,
  ) => ({
    file: null,
    problems: [{ line, column, field: '', rule, message, likely: null }] as const,
  });
  if (text.length > LARGEST_FILE) {
    return stop('size', `the file has ${text.length} characters; at most ${LARGEST_FILE} are read`);
  }
  const lineCount = text.split('\n').length;
  if (lineCount > MOST_LINES) return stop('size', `the file has ${lineCount} lines; at most ${MOST_LINES} are read`);
  const depth = nesting(text);
  if (depth > DEEPEST_NESTING)
    return stop('size', `the file is nested ${depth} deep; at most ${DEEPEST_NESTING} are read`);
  const lines = new LineCounter();
  let document: Document.Parsed;
  let data: unknown;
  try {
    document = parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: false, merge: false });
    const [error] = document.errors;
    if (error !== undefined) {
      const { line, col } = lines.linePos(error.pos[0]);
      return stop('syntax', `not valid YAML or JSON: ${error.message}`, line, col);
    }
    const twice = doubled(document.contents);
    if (twice !== null) {
      const { line, col } = lines.linePos(twice.range?.[0] ?? 0);
      return stop('syntax', 'not valid YAML or JSON: Map keys must be unique', line, col);
    }
    data = document.toJS({ maxAliasCount: 50 });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    if (/alias/i.test(why))
      return stop('size', 'the file repeats itself by aliases more often than is read (50 copies)');
    return stop('syntax', `not valid YAML or JSON: ${why}`);
  }
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    return stop('syntax', 'the file must hold named fields, such as `circuit: Lift pump`', 1, 1);
  }
  const pairs: Pairs = new WeakMap();
  return { file: { data, place: (path) => place(document, lines, pairs, path) }, problems: [] };
}

/** The second of two like keys of a map, or null. The parser's own search compares every key with every other. */
function doubled(node: Node | null): Node | null {
  if (isMap(node)) {
    const seen = new Set<string>();
    for (const { key, value } of node.items as { key: Node; value: Node | null }[]) {
      const name = String((key as { value?: unknown } | null)?.value ?? key);
      if (seen.has(name)) return key;
      seen.add(name);
      const inner = doubled(value);
      if (inner !== null) return inner;
    }
  } else if (isSeq(node)) {
    for (const item of node.items as Node[]) {
      const inner = doubled(item);
      if (inner !== null) return inner;
    }
  }
  return null;
}

/** Depth of brackets in flow style, and of indentation, without parsing: a bound against hostile nesting. */
function nesting(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === 0x5b || c === 0x7b) deepest = Math.max(deepest, ++depth);
    else if (c === 0x5d || c === 0x7d) depth--;
  }
  for (const [indent] of text.matchAll(/^(?: |- )+/gm)) deepest = Math.max(deepest, indent.length / 2);
  return Math.ceil(deepest);
}

/** The pairs of a map by their keys, found once: a file with many problems asks again and again. */
type Pairs = WeakMap<object, ReadonlyMap<string, { readonly key: Node; readonly value: Node | null }>>;

function place(
  document: Document.Parsed,
  lines: LineCounter,
  pairs: Pairs,
  path: readonly PropertyKey[],
): { line: number; column: number } | null {
  let node: Node | null = document.contents;
  let offset = node?.range?.[0] ?? 0;
  for (const step of path) {
    if (isMap(node)) {
      let keys = pairs.get(node);
      if (keys === undefined) {
        keys = new Map(
          node.items.map((item) => [
            String((item.key as { value?: unknown } | null)?.value ?? item.key),
            item as { key: Node; value: Node | null },
          ]),
        );
        pairs.set(node, keys);
      }
      const pair = keys.get(String(step));
      if (pair === undefined) break;
      offset = pair.key.range?.[0] ?? offset;
      node = pair.value;
    } else if (isSeq(node) && typeof step === 'number') {
      node = (node.items[step] as Node | undefined) ?? null;
      offset = node?.range?.[0] ?? offset;
    } else break;
  }
  const { line, col } = lines.linePos(offset);
  return line === 0 ? null : { line, column: col };
}
