import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { root } from '../support/root.js';
import { packageFaults, runtimeDependencies, type Manifest } from './manifest.js';

const read = (path: string): Manifest => JSON.parse(readFileSync(join(root, path, 'package.json'), 'utf8')) as Manifest;

const good: Manifest = {
  name: 'loomwright',
  version: '1.2.3',
  license: 'MIT',
  type: 'module',
  files: ['dist'],
  exports: { '.': { types: './dist/types/index.d.ts', default: './dist/index.js' } },
  devDependencies: { esbuild: '0.28.2' },
};

describe('the check of a package', () => {
  it('passes a good one', () => {
    expect(packageFaults(good, '1.2.3')).toEqual([]);
  });

  it.each<[string, Manifest]>([
    ['the core depends on mathjs', { ...good, dependencies: { mathjs: '15.2.0' } }],
    ['the core depends on mathjs', { ...good, peerDependencies: { mathjs: '15.2.0' } }],
    ['the core depends on mathjs', { ...good, optionalDependencies: { mathjs: '15.2.0' } }],
    ['is private', { ...good, private: true }],
    ['is not under the MIT licence', { ...good, license: 'ISC' }],
    ['is not of type module', { ...good, type: 'commonjs' }],
    ['has version 1.2.4, the others 1.2.3', { ...good, version: '1.2.4' }],
    ['runs a script when installed: postinstall', { ...good, scripts: { postinstall: 'node x.js' } }],
    ['./heat uses the condition import', { ...good, exports: { './heat': { import: './dist/heat.js' } } }],
  ])('finds that it %s', (fault, manifest) => {
    expect(packageFaults(manifest, '1.2.3')).toEqual([fault]);
  });
});

describe('the packages', () => {
  const folders = readdirSync(join(root, 'packages'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => `packages/${name}`);
  const { version } = read('packages/loomwright');

  it.each(folders)('%s is as it must be', (folder) => {
    expect(version).toMatch(/^\d+\.\d+\.\d+$/);
    expect(packageFaults(read(folder), String(version))).toEqual([]);
    expect(readFileSync(join(root, folder, 'LICENSE'), 'utf8')).toBe(readFileSync(join(root, 'LICENSE'), 'utf8'));
  });

  it('leave the root without dependencies, so that npm start installs only what it runs', () => {
    expect(runtimeDependencies(read('.'))).toEqual([]);
    expect(read('.').devDependencies).toBeUndefined();
  });

  it('have a core whose bundle imports nothing', async () => {
    const entry = join(root, 'packages/loomwright/dist/index.js');
    const { metafile } = await build({
      entryPoints: [entry],
      bundle: true,
      write: false,
      metafile: true,
      platform: 'neutral',
    });
    expect(Object.keys(metafile.inputs)).toHaveLength(1);
    expect(Object.values(metafile.outputs).flatMap(({ imports }) => imports)).toEqual([]);
  });
});
