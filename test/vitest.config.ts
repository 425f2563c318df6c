import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Package names point at their sources, so that a test needs no build. */
const alias = [
  { find: /^loomwright$/, replacement: at('../packages/loomwright/src/index.ts') },
  { find: /^loomwright\/([\w-]+)$/, replacement: at('../packages/loomwright/src/$1/index.ts') },
  { find: /^@loomwright\/(worked|harness)$/, replacement: at('../packages/$1/src/index.ts') },
  { find: /^@loomwright\/(worked|harness)\/([\w-]+)$/, replacement: at('../packages/$1/src/$2/index.ts') },
];

// Three projects: `unit` runs on sources; `built` needs `dist` (the command, tarballs, notebooks, our own gates);
// `browser` needs the built site and Debian's chromium.
const built = [
  'cli/**/*.test.ts',
  'package/**/*.test.ts',
  'notebook/**/*.test.ts',
  'gates/**/*.test.ts',
  'bench/**/*.test.ts',
];
const browser = ['browser/**/*.test.ts'];

export default defineConfig({
  test: {
    projects: [
      {
        resolve: { alias },
        test: {
          name: 'unit',
          include: ['**/*.test.ts'],
          exclude: ['node_modules/**', ...built, ...browser],
          testTimeout: 60_000,
        },
      },
      { test: { name: 'built', include: built, testTimeout: 180_000, hookTimeout: 180_000 } },
      {
        test: {
          name: 'browser',
          include: browser,
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
          maxConcurrency: 2,
        },
      },
    ],
  },
});
