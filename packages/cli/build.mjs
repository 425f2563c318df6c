// Bundles the command into one file, so that it starts at once, with the licences of what the bundle holds.
import { build } from 'esbuild';
import { writeNotices } from './notices.mjs';

const { metafile } = await build({
  entryPoints: ['src/main.ts'],
  outfile: 'dist/main.js',
  metafile: true,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20.19',
  minify: true,
  legalComments: 'none',
  logLevel: 'warning',
  banner: {
    js: "import { createRequire as __createRequire } from 'node:module'; const require = __createRequire(import.meta.url);",
  },
});
await writeNotices(metafile, 'dist/THIRD-PARTY-NOTICES.txt', [
  'loomwright',
  '@loomwright/worked',
  '@loomwright/harness',
  '@loomwright/cli',
]);
