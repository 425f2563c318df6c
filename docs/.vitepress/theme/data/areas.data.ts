import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineLoader } from 'vitepress';

/** A function of the library as the reference lists it. */
export interface ListedFunction {
  readonly name: string;
  readonly summary: string;
}

export interface Area {
  readonly name: string;
  readonly functions: readonly ListedFunction[];
}

declare const data: readonly Area[];
export { data };

const library = fileURLToPath(new URL('../../../../packages/loomwright/', import.meta.url));

/** Areas in the order of the package's subpaths, functions as each area exports them, with their first sentence. */
export default defineLoader({
  watch: ['../../../../packages/loomwright/package.json', '../../../../packages/loomwright/src/*/*.ts'],
  load(): Area[] {
    const { exports } = JSON.parse(readFileSync(`${library}package.json`, 'utf8')) as { exports: object };
    return Object.keys(exports)
      .filter((path) => /^\.\/[\w-]+$/.test(path))
      .map((path) => path.slice(2))
      .filter((name) => existsSync(`${library}src/${name}/index.ts`))
      .map((name) => ({ name, functions: functionsOf(name) }));
  },
});

function functionsOf(area: string): ListedFunction[] {
  const index = readFileSync(`${library}src/${area}/index.ts`, 'utf8');
  const lists = [...index.matchAll(/export \{([^}]*)\} from '\.\/([\w-]+)\.js'/g)];
  return lists.flatMap(([, names = '', file = '']) => {
    const source = readFileSync(`${library}src/${area}/${file}.ts`, 'utf8');
    return names
      .split(',')
      .map((name) => name.trim())
      .filter((name) => /^[a-z]\w*$/.test(name))
      .map((name) => ({ name, summary: summaryOf(source, name) }))
      .filter(({ summary }) => summary !== '');
  });
}

/** The first sentence of the doc block of an exported function; empty where the name is not a function. */
function summaryOf(source: string, name: string): string {
  const at = source.search(new RegExp(`^export function ${name}\\b`, 'm'));
  const start = source.lastIndexOf('/**', at);
  if (at < 0 || start < 0) return '';
  const text = source
    .slice(start + 3, at)
    .replace(/^\s*\*\/?/gm, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  return /^.*?[.:](?= |$)/.exec(text)?.[0].replace(/:$/, '.') ?? text;
}
