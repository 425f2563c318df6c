// What a name costs the one who imports it: bundled alone with esbuild, minified, gzipped.
import { gzipSync } from 'node:zlib';
import { build, type Plugin } from 'esbuild';

export interface Size {
  readonly bytes: number;
  readonly gzipBytes: number;
}

/** The goal for any single name: a chooser with all that it needs. */
const MOST_GZIP_BYTES = 8000;

/** Names that are the whole of a list, for which the goal is not meant. */
const WHOLE_LISTS = ['sources'];

/** Ceilings in gzipped bytes by name; `*` holds for every name that is not listed. */
export type Ceilings = Readonly<Record<string, number>>;

/** Each name of a package bundled alone, as seen from a folder where the package is installed; '*' is all of it. */
export async function measureSizes(folder: string, pkg: string, names: readonly string[]): Promise<Map<string, Size>> {
  const entries = ['*', ...names];
  const oneName: Plugin = {
    name: 'one-name',
    setup(setup) {
      setup.onResolve({ filter: /^one:/ }, ({ path }) => ({ path: path.slice(4), namespace: 'one' }));
      setup.onLoad({ filter: /.*/, namespace: 'one' }, ({ path }) => {
        const name = entries[Number(path)] ?? '';
        const what = name === '*' ? name : `{ ${name} }`;
        return { contents: `export ${what} from ${JSON.stringify(pkg)};`, resolveDir: folder };
      });
    },
  };
  const { outputFiles } = await build({
    entryPoints: entries.map((_, i) => ({ in: `one:${i}`, out: String(i) })),
    outdir: 'out',
    write: false,
    bundle: true,
    minify: true,
    format: 'esm',
    platform: 'neutral',
    plugins: [oneName],
    logLevel: 'silent',
  });
  const sizes = new Map<string, Size>();
  for (const { path, contents } of outputFiles) {
    const name = entries[Number(/(\d+)\.js$/.exec(path)?.[1])];
    if (name === undefined) throw new Error(`unexpected output ${path}`);
    sizes.set(name, { bytes: contents.length, gzipBytes: gzipSync(contents, { level: 9 }).length });
  }
  return sizes;
}

/** What breaks the ceilings, in words; nothing when all is well. */
export function overCeiling(ceilings: Ceilings, sizes: ReadonlyMap<string, Size>): string[] {
  const faults: string[] = [];
  for (const [name, ceiling] of Object.entries(ceilings)) {
    if (name !== '*' && !sizes.has(name)) faults.push(`${name} has a ceiling but is not exported`);
    const goes = ceiling > 0 && (ceiling <= MOST_GZIP_BYTES || WHOLE_LISTS.includes(name));
    if (!goes) faults.push(`${name}: a ceiling of ${ceiling} is beyond the goal`);
  }
  for (const [name, { gzipBytes }] of sizes) {
    if (name === '*') continue;
    const ceiling = ceilings[name] ?? ceilings['*'] ?? 0;
    if (gzipBytes > ceiling) faults.push(`${name}: ${gzipBytes} bytes gzipped, ceiling ${ceiling}`);
  }
  return faults;
}

/** What stays in a bundle when nothing is imported from a file: it must be empty. */
export async function leftBehind(file: string): Promise<string> {
  const keepFile: Plugin = {
    name: 'keep-file',
    setup(setup) {
      setup.onResolve({ filter: /^lib$/ }, () => ({ path: file, sideEffects: true }));
    },
  };
  const { outputFiles } = await build({
    stdin: { contents: "import 'lib';" },
    write: false,
    bundle: true,
    format: 'esm',
    platform: 'neutral',
    plugins: [keepFile],
    logLevel: 'silent',
  });
  return outputFiles.map(({ text }) => text.replace(/^\/\/.*$/gm, '').trim()).join('');
}
