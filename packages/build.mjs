// Builds the package in the current folder: dist/index.js holds all of its code, and each
// dist/<subpath>.js re-exports from it, so that every class exists once and importing is one file read. With --short the
// code comes without spaces and with short names inside: an engine reads all of it before the first line runs.
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { mkdir, readFile, writeFile } from 'node:fs/promises';

const { context, transform } = createRequire(join(process.cwd(), 'package.json'))('esbuild');
const { exports } = JSON.parse(await readFile('package.json', 'utf8'));
const areas = Object.keys(exports)
  .filter((key) => /^\.\/[\w-]+$/.test(key))
  .map((key) => key.slice(2));
const entries = { index: 'src/index.ts', ...Object.fromEntries(areas.map((a) => [a, `src/${a}/index.ts`])) };

// esbuild leaves marks of what may be dropped out with the spaces: meanwhile a sum with a name of no other use stands for
// them, and that it stands for nothing else is proved.
const MARK = '/* @__PURE__ */ ';
const STAND_IN = '__PURE__+';

async function shortened(text) {
  const marked = text.replaceAll(MARK, STAND_IN);
  const without = async (code, names) =>
    (await transform(code, { minifyWhitespace: true, minifyIdentifiers: names, format: 'esm' })).code;
  const [plain, same, short] = await Promise.all([without(text, false), without(marked, false), without(marked, true)]);
  if (same.replaceAll(STAND_IN, '') !== plain) throw new Error('marks changed the code of the bundle');
  return short.replaceAll(STAND_IN, MARK);
}

const writeOneCopy = {
  name: 'write-one-copy',
  setup(build) {
    build.onEnd(async ({ errors, metafile, outputFiles }) => {
      if (errors.length > 0) return undefined;
      const names = Object.fromEntries(Object.values(metafile.outputs).map((o) => [o.entryPoint, o.exports]));
      const root = new Set(names['src/index.ts']);
      await mkdir('dist', { recursive: true });
      const { text } = outputFiles.find((f) => /[\\/]dist[\\/]index\.js$/.test(f.path));
      await writeFile('dist/index.js', process.argv.includes('--short') ? await shortened(text) : text);
      for (const area of areas) {
        const own = names[entries[area]];
        const missing = own.filter((name) => !root.has(name));
        if (missing.length > 0) return { errors: [{ text: `src/index.ts lacks ${missing.join(', ')} of ${area}` }] };
        await writeFile(`dist/${area}.js`, `export { ${own.join(', ')} } from './index.js';\n`);
      }
      return undefined;
    });
  },
};

const ctx = await context({
  entryPoints: entries,
  outdir: 'dist',
  write: false,
  metafile: true,
  plugins: [writeOneCopy],
  bundle: true,
  format: 'esm',
  platform: 'neutral',
  target: 'es2022',
  packages: 'external',
  logLevel: 'warning',
});
if (process.argv.includes('--watch')) await ctx.watch();
else {
  await ctx.rebuild();
  await ctx.dispose();
}
