import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { statusWords } from '@loomwright/worked/card';
import { type Source, sources } from 'loomwright';
import { defineLoader } from 'vitepress';

export interface ListedSource {
  readonly key: string;
  readonly title: string;
  /** Publisher and edition, '' for what nobody published. */
  readonly publisher: string;
  readonly status: string;
  readonly note: string;
  /** Functions whose doc block names it, each with the area of its page. */
  readonly functions: readonly { readonly name: string; readonly area: string }[];
  /** Tables and other constants that carry its key. */
  readonly tables: readonly string[];
}

declare const data: readonly ListedSource[];
export { data };

const library = fileURLToPath(new URL('../../../../packages/loomwright/src/', import.meta.url));

/** Every source, and what in the library rests on it. */
export default defineLoader({
  watch: ['../../../../packages/loomwright/src/*/*.ts'],
  load(): ListedSource[] {
    const functions = readdirSync(library).flatMap(citations);
    const tables = readdirSync(`${library}table/`).flatMap((file) => tablesOf(`${library}table/${file}`));
    return (Object.entries(sources) as [string, Source][])
      .sort(([, a], [, b]) => a.title.localeCompare(b.title, 'en'))
      .map(([key, { title, publisher, edition = '', status, note = '' }]) => ({
        key,
        title,
        publisher: publisher === 'none' ? '' : capital([publisher, ...(edition === '' ? [] : [edition])].join(', ')),
        status: statusWords[status],
        note,
        functions: functions.filter(({ text }) => names(text, key)).map(({ name, area }) => ({ name, area })),
        tables: tables.filter(({ cites }) => cites.has(key)).map(({ name }) => name),
      }));
  },
});

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Whether a text names a key, and not only a longer one that holds it. */
function names(text: string, key: string): boolean {
  return new RegExp(`(?<![\\w-])${key}(?![\\w-])`).test(text);
}

/** The exported functions of an area with what stands after `@source` in their doc blocks. */
function citations(area: string): { name: string; area: string; text: string }[] {
  const index = `${library}${area}/index.ts`;
  if (!existsSync(index)) return [];
  const exported = new Set(readFileSync(index, 'utf8').match(/\b[a-z]\w*\b/g));
  return readdirSync(`${library}${area}/`).flatMap((file) => {
    const source = readFileSync(`${library}${area}/${file}`, 'utf8');
    return [...source.matchAll(/^export function (\w+)/gm)]
      .filter(([, name = '']) => exported.has(name))
      .map(({ index: at, 1: name = '' }) => {
        const block = source.slice(source.lastIndexOf('/**', at), at);
        const [, text = ''] = /@source([\s\S]*?)(?=@\w|\*\/)/.exec(block) ?? [];
        return { name, area, text };
      });
  });
}

/** The exported constants of a file of tables with the keys that they carry. */
function tablesOf(path: string): { name: string; cites: Set<string> }[] {
  const parts = readFileSync(path, 'utf8').split(/^export const /m);
  return parts.slice(1).map((part) => ({
    name: /^\w+/.exec(part)?.[0] ?? '',
    cites: new Set([...part.matchAll(/\bsource: '([\w-]+)'/g)].map(([, key = '']) => key)),
  }));
}
