// Builds the site: the packages where they are not built yet, the pages of the reference, then all pages.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const at = (path) => fileURLToPath(new URL(path, import.meta.url));

function run(script, args, cwd) {
  const { status } = spawnSync(process.execPath, [script, ...args], { cwd, stdio: 'inherit' });
  if (status !== 0) process.exit(status ?? 1);
}

// Data loaders run in Node and get the built packages. Types are read from the sources and need no build.
for (const name of ['loomwright', 'worked', 'harness']) {
  if (!existsSync(at(`../packages/${name}/dist/index.js`)))
    run(at('../packages/build.mjs'), [], at(`../packages/${name}/`));
}
run(at('./make-api.mjs'), [], at('./'));
run(at('./node_modules/vitepress/bin/vitepress.js'), ['build', '.', ...process.argv.slice(2)], at('./'));
