// Packs every package and installs the tarballs together into an empty folder, as a stranger would.
import { spawnSync, type SpawnSyncReturns } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from '../support/root.js';

export interface Installed {
  /** The stranger's folder, with node_modules. */
  readonly folder: string;
  /** Tarball by package name. */
  readonly tarballs: ReadonlyMap<string, string>;
  readonly remove: () => void;
}

/** Runs a command; a bad ending throws with all that it printed. */
export function must(cwd: string, command: string, ...args: readonly string[]): string {
  const { status, output } = attempt(cwd, command, ...args);
  if (status !== 0) throw new Error(`${command} ${args.join(' ')} ended with ${status}\n${output}`);
  return output;
}

export function attempt(cwd: string, command: string, ...args: readonly string[]): { status: number; output: string } {
  const env: NodeJS.ProcessEnv = { ...process.env, NO_COLOR: '1', NODE_OPTIONS: '' };
  // What npm tells a script about its own package would mislead another npm; settings such as a proxy stay.
  for (const name of Object.keys(env)) {
    if (/^npm_(?:lifecycle|package|command|config_local_prefix)|^INIT_CWD$|^FORCE_COLOR$/i.test(name))
      Reflect.deleteProperty(env, name);
  }
  const result: SpawnSyncReturns<string> = spawnSync(command, args, { cwd, env, encoding: 'utf8', maxBuffer: 1e8 });
  return { status: result.status ?? 1, output: `${result.stdout}${result.stderr}${result.error?.message ?? ''}` };
}

/** A tool of the test workspace: its path, to be run with Node. */
export function toolPath(name: string, bin = name): string {
  const folder = join(root, 'test/node_modules', name);
  const manifest = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    bin: string | Record<string, string>;
  };
  const entry = typeof manifest.bin === 'string' ? manifest.bin : manifest.bin[bin];
  if (entry === undefined) throw new Error(`${name} has no command ${bin}`);
  return join(folder, entry);
}

export function packAndInstall(): Installed {
  const folder = mkdtempSync(join(tmpdir(), 'loomwright-stranger-'));
  const packed = join(folder, 'packed');
  mkdirSync(packed);
  const { packageManager } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { packageManager: string };
  const pnpm = packageManager.split('+')[0] ?? 'pnpm';
  must(root, 'npx', '-y', pnpm, '-r', '--filter=./packages/*', 'pack', '--pack-destination', packed);

  const tarballs = new Map<string, string>();
  for (const name of readdirSync(join(root, 'packages'))) {
    const manifest = join(root, 'packages', name, 'package.json');
    if (!existsSync(manifest)) continue;
    const pkg = JSON.parse(readFileSync(manifest, 'utf8')) as { name: string; version: string };
    const file = join(packed, `${pkg.name.replace('@', '').replace('/', '-')}-${pkg.version}.tgz`);
    if (!existsSync(file)) throw new Error(`${pkg.name} was not packed`);
    tarballs.set(pkg.name, file);
  }
  // Overrides keep a namesake from the registry out, wherever one of ours depends on another.
  const names = [...tarballs.keys()];
  writeFileSync(
    join(folder, 'package.json'),
    JSON.stringify({
      name: 'stranger',
      private: true,
      type: 'module',
      dependencies: Object.fromEntries([...tarballs].map(([name, file]) => [name, `file:${file}`])),
      overrides: Object.fromEntries(names.map((name) => [name, `$${name}`])),
    }),
  );
  must(folder, 'npm', 'install', '--no-audit', '--no-fund', '--loglevel=error');
  return {
    folder,
    tarballs,
    remove: () => {
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
