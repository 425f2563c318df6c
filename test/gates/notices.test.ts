import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { root } from '../support/root.js';
import { bundledPackages, noticeFaults } from './notices.js';

const LICENCE = 'Permission is hereby granted, free of charge, to any person';

describe('the check of the notices', () => {
  it('finds a bundled package that is not named, and one without its licence', () => {
    expect(
      noticeFaults(['a@1.0.0', '@b/c@2.0.0'], `a@1.0.0 (MIT)\n\n${LICENCE}\n\n---\n\n@b/c@2.0.0 (ISC)\n\n${LICENCE}\n`),
    ).toEqual([]);
    expect(noticeFaults(['a@1.0.0', '@b/c@2.0.0'], `a@1.0.0 (MIT)\n\n${LICENCE}\n`)).toEqual([
      '@b/c@2.0.0 is not named',
    ]);
    expect(noticeFaults(['a@1.0.0'], `a@1.0.1 (MIT)\n\n${LICENCE}\n`)).toEqual(['a@1.0.0 is not named']);
    expect(noticeFaults(['a@1.0.0'], `a@1.0.0 (MIT)\n\n---\n\nb@2.0.0 (MIT)\n\n${LICENCE}\n`)).toEqual([
      'a@1.0.0 is named without its licence',
    ]);
  });

  it('sees what a bundle holds, and only that', async () => {
    const contents = "import { parse } from 'yaml'; import * as unused from 'mathjs'; console.log(parse);";
    const { metafile } = await build({
      stdin: { contents, resolveDir: join(root, 'test') },
      bundle: true,
      write: false,
      metafile: true,
      minify: true,
      platform: 'node',
      format: 'esm',
      absWorkingDir: root,
    });
    expect(bundledPackages(metafile, root)).toEqual([expect.stringMatching(/^yaml@2/)]);
  });
});

describe('the command', () => {
  it('carries the licence of every package that is bundled into it', async () => {
    const folder = join(root, 'packages/cli');
    const { metafile } = await build({
      entryPoints: [join(folder, 'src/main.ts')],
      bundle: true,
      write: false,
      metafile: true,
      minify: true,
      platform: 'node',
      format: 'esm',
      absWorkingDir: folder,
      logLevel: 'silent',
    });
    const packages = bundledPackages(metafile, folder);
    expect(packages.length).toBeGreaterThan(3);
    expect(noticeFaults(packages, readFileSync(join(folder, 'dist/THIRD-PARTY-NOTICES.txt'), 'utf8'))).toEqual([]);
  });
});
