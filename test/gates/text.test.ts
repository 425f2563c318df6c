import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { root } from '../support/root.js';
import { forbiddenIn } from './forbidden-text.js';

/** Every file that git knows or would take; where there is no git, every file that was not made here. */
function list(): string[] {
  const args = ['-c', 'safe.directory=*', 'ls-files', '-z', '--cached', '--others', '--exclude-standard'];
  try {
    return execFileSync('git', args, { cwd: root, encoding: 'utf8', maxBuffer: 1e8, stdio: 'pipe' }).split('\0');
  } catch {
    return readdirSync(root, { recursive: true, withFileTypes: true })
      .map(({ parentPath, name }) => relative(root, join(parentPath, name)))
      .filter((name) => !/(?:^|[\\/])(?:node_modules|dist|\.git|cache|api)[\\/]/.test(name));
  }
}

/** The texts among them. */
function files(): string[] {
  return list()
    .filter((name) => name !== '' && !/\.(?:png|jpe?g|webp|ico|woff2?|pdf|gz|tgz|tsbuildinfo)$/.test(name))
    .filter((name) => statSync(join(root, name), { throwIfNoEntry: false })?.isFile());
}

describe('the search for forbidden text', () => {
  // Built from parts, so that this file does not find itself.
  const slash = '/';
  const back = '\\';
  it.each([
    `run it in ${slash}home/someone/vehicle`,
    `const cwd = '${slash}work/main';`,
    `"${slash}tmp/x.json"`,
    `(${slash}root/.cache)`,
    `C:${back}Users${back}someone`,
    `file:${slash}${slash}${slash}srv`,
    `https:${slash}${slash}registry.example.org/zod`,
    `http:${slash}${slash}registry.local:4873`,
  ])('finds %s', (text) => {
    expect(forbiddenIn(`first line\n${text}`)).toHaveLength(1);
    expect(forbiddenIn(`first line\n${text}`)[0]).toContain(' at 2: ');
  });

  it.each([
    "import { work } from '@loomwright/worked/work';",
    "import { x } from '../work/x.js';",
    '`/quantity` and `/work` are subpaths',
    'the tank/home circuit',
    'https://example.org/home/page',
    '/usr/bin/chromium',
    '${folder}/tmp/x',
  ])('lets %s be', (text) => {
    expect(forbiddenIn(text)).toEqual([]);
  });
});

describe('the repository', () => {
  it('holds no path of a machine and no address of a registry', () => {
    const names = files();
    expect(names.length).toBeGreaterThan(50);
    const found = names.flatMap((name) =>
      forbiddenIn(readFileSync(join(root, name), 'utf8')).map((f) => `${name}: ${f}`),
    );
    expect(found).toEqual([]);
  });
});
