import { workedMarkdown } from './render.js';
import type { Worked } from './work.js';

/** What a notebook kernel displays: one or more forms of the same thing, by media type. */
export type Shown = Readonly<Record<string, string>>;

/**
 * A calculation, a drawing or a table as a notebook shows it. A Jupyter kernel takes the object as display data; in
 * the Deno kernel a value with `Symbol.for('Jupyter.display')` is shown by it.
 *
 * @param thing what `work` gave, an SVG text, or rows of a table (the first row is its head)
 * @returns an object that a notebook displays, with its media types under `data`
 */
export function show(thing: Worked | string | readonly (readonly (string | number)[])[]): { readonly data: Shown } {
  const data: Shown =
    typeof thing === 'string'
      ? { 'text/html': thing }
      : isTable(thing)
        ? { 'text/markdown': tableMarkdown(thing) }
        : { 'text/markdown': workedMarkdown(thing) };
  return Object.defineProperty({ data }, Symbol.for('Jupyter.display'), { value: () => data, enumerable: false });
}

function isTable(
  thing: Worked | readonly (readonly (string | number)[])[],
): thing is readonly (readonly (string | number)[])[] {
  return Array.isArray(thing);
}

function tableMarkdown(rows: readonly (readonly (string | number)[])[]): string {
  const [head = [], ...body] = rows;
  const line = (cells: readonly (string | number)[]): string =>
    `| ${cells.map((cell) => String(cell).replace(/\|/g, '\\|')).join(' | ')} |`;
  return [line(head), `|${head.map((_, i) => (i === 0 ? '---' : '--:')).join('|')}|`, ...body.map(line)].join('\n');
}
