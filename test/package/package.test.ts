// The packages as people get them: packed, installed together in an empty folder, and used from there.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { codeOf, runCells } from '../notebook/kernel.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { leftBehind, measureSizes, overCeiling, type Ceilings } from '../size/measure.js';
import { root } from '../support/root.js';
import { importCpuMs } from './import-time.js';
import { attempt, must, packAndInstall, toolPath, type Installed } from './install.js';

interface Manifest {
  readonly exports: Readonly<Record<string, unknown>>;
  readonly dependencies?: Readonly<Record<string, string>>;
}

let installed: Installed;

beforeAll(() => {
  installed = packAndInstall();
});

afterAll(() => {
  installed.remove();
});

const LIBRARIES = ['loomwright', '@loomwright/worked', '@loomwright/harness'];
const at = (...path: string[]): string => join(installed.folder, ...path);
const manifest = (name: string): Manifest =>
  JSON.parse(readFileSync(at('node_modules', name, 'package.json'), 'utf8')) as Manifest;

/** Every specifier of a library that can be imported: 'loomwright', 'loomwright/heat' … */
function specifiers(name: string): string[] {
  return Object.keys(manifest(name).exports)
    .filter((key) => key !== './package.json')
    .map((key) => name + key.slice(1));
}

/** Runs a module in the stranger's folder and gives what it printed, as JSON. */
function runModule<T>(name: string, text: string): T {
  writeFileSync(at(name), text);
  return JSON.parse(must(installed.folder, process.execPath, name)) as T;
}

describe('the tarballs', () => {
  it.each([...LIBRARIES, '@loomwright/cli'])('of %s pass publint', (name) => {
    const result = attempt(
      root,
      process.execPath,
      toolPath('publint'),
      '--strict',
      String(installed.tarballs.get(name)),
    );
    expect(result).toMatchObject({ status: 0 });
  });

  it.each(LIBRARIES)('of %s have types that resolve', (name) => {
    const attw = toolPath('@arethetypeswrong/cli', 'attw');
    const result = attempt(root, process.execPath, attw, String(installed.tarballs.get(name)), '--profile', 'esm-only');
    expect(result).toMatchObject({ status: 0 });
  });

  it('hold the licence, what the exports name, and nothing that was left over', () => {
    for (const name of LIBRARIES) {
      const folder = at('node_modules', name);
      const code = readdirSync(join(folder, 'dist')).filter((file) => file.endsWith('.js'));
      const expected = specifiers(name).map((key) => `${key === name ? 'index' : key.slice(name.length + 1)}.js`);
      expect(code.sort(), name).toEqual(expected.sort());
      expect(readdirSync(folder).sort(), name).toEqual(expect.arrayContaining(['LICENSE', 'dist', 'package.json']));
      const all = readdirSync(folder, { recursive: true }).map(String);
      expect(
        all.filter((file) => /tsbuildinfo$|\.map$|(?<!\.d)\.ts$/.test(file)),
        name,
      ).toEqual([]);
    }
    const command = readdirSync(at('node_modules/@loomwright/cli/dist'));
    expect(command.sort()).toEqual(['THIRD-PARTY-NOTICES.txt', 'main.js']);
  });

  it('depend on each other by version, and the core and the command on nothing', () => {
    expect(manifest('loomwright').dependencies).toBeUndefined();
    expect(manifest('@loomwright/cli').dependencies).toBeUndefined();
    for (const name of LIBRARIES) {
      for (const version of Object.values(manifest(name).dependencies ?? {})) expect(version).toMatch(/^[\d.]+$/);
      expect(existsSync(at('node_modules', name, 'node_modules/loomwright')), `a second core in ${name}`).toBe(false);
    }
  });
});

describe('used from JavaScript', () => {
  it.each(LIBRARIES)('every subpath of %s can be imported and gives what the root gives', (name) => {
    const list = specifiers(name);
    const differing = runModule<string[]>(
      'every.mjs',
      `const root = await import('${name}');
       const differing = [];
       for (const name of ${JSON.stringify(list)}) {
         const part = await import(name);
         for (const [key, value] of Object.entries(part)) if (root[key] !== value) differing.push(name + ' ' + key);
       }
       console.log(JSON.stringify(differing));`,
    );
    expect(list.length).toBeGreaterThan(0);
    expect(differing).toEqual([]);
  });

  it('has one class of error, whichever way it is reached', () => {
    const result = runModule<{ same: boolean; caught: boolean[]; code: string }>(
      'error.mjs',
      `import { InputError, wireResistance } from 'loomwright';
       import { InputError as fromError } from 'loomwright/error';
       import { wireResistance as fromConductor } from 'loomwright/conductor';
       const caught = [];
       let code;
       for (const f of [wireResistance, fromConductor]) {
         try { f({}); } catch (e) { caught.push(e instanceof InputError && e instanceof fromError); code = e.code; }
       }
       console.log(JSON.stringify({ same: InputError === fromError, caught, code }));`,
    );
    expect(result).toEqual({ same: true, caught: [true, true], code: 'LOOMWRIGHT_INPUT' });
  });

  it('computes', () => {
    // 2.5 mm² of ideal annealed copper at 20 °C: 0.017241 / 2.5 Ω/m (NBS Handbook 100, section 1.1).
    const result = runModule<{ resistanceOhm: number }>(
      'compute.mjs',
      `import { wireResistance, geometric } from 'loomwright';
       const input = { lengthM: 1, areaMm2: 2.5, conductorTempC: 20, resistanceBasis: geometric };
       console.log(JSON.stringify(wireResistance(input)));`,
    );
    expect(result.resistanceOhm).toBeCloseTo(0.017241 / 2.5, 9);
  });
});

describe('used from TypeScript', () => {
  const USE = `
import { InputError, wireResistance, geometric, type WireResistanceInput } from 'loomwright';
import { wireResistance as fromConductor } from 'loomwright/conductor';

const input: WireResistanceInput = { lengthM: 1, areaMm2: 2.5, conductorTempC: 20, resistanceBasis: geometric };
export const ohms: number = wireResistance(input).resistanceOhm + fromConductor(input).resistanceOhm;
export const fault: InputError['code'] = 'LOOMWRIGHT_INPUT';
// @ts-expect-error: a length must be a number
wireResistance({ ...input, lengthM: '1 m' });
// @ts-expect-error: there is no such field
export const none = wireResistance(input).resistanceOhms;
`;

  it.each([
    ['nodenext', { module: 'nodenext', moduleResolution: 'nodenext' }],
    ['bundler', { module: 'esnext', moduleResolution: 'bundler' }],
  ])('with the resolution %s', (name, options) => {
    const folder = at(`typescript-${name}`);
    mkdirSync(folder);
    const all = LIBRARIES.flatMap(specifiers);
    writeFileSync(join(folder, 'use.ts'), USE);
    writeFileSync(
      join(folder, 'every.ts'),
      `${all.map((specifier, i) => `import * as m${i} from '${specifier}';`).join('\n')}
export const every: object[] = [${all.map((_, i) => `m${i}`).join(', ')}];\n`,
    );
    const compilerOptions = { ...options, target: 'es2022', lib: ['es2022'], strict: true, types: [], noEmit: true };
    // The core's own declarations are checked too; those of other people's packages are not ours to check.
    writeFileSync(join(folder, 'core.json'), JSON.stringify({ compilerOptions, files: ['use.ts'] }));
    writeFileSync(
      join(folder, 'all.json'),
      JSON.stringify({ compilerOptions: { ...compilerOptions, skipLibCheck: true }, files: ['use.ts', 'every.ts'] }),
    );
    const tsc = toolPath('typescript', 'tsc');
    expect(attempt(folder, process.execPath, tsc, '-p', 'core.json')).toEqual({ status: 0, output: '' });
    expect(attempt(folder, process.execPath, tsc, '-p', 'all.json')).toEqual({ status: 0, output: '' });
  });
});

describe('the command', () => {
  it('is there for npx, and says what it can do', () => {
    const { status, output } = attempt(installed.folder, 'npx', '--no-install', 'loomwright', '--help');
    expect(output).toMatch(/loomwright/);
    expect(output).toMatch(/feed/);
    expect(status).toBe(0);
  });
});

describe('used in a notebook', () => {
  it('runs the cells of the pump feed outside this repository, to the outputs that it shows', async () => {
    const { devDependencies } = JSON.parse(readFileSync(join(root, 'docs/package.json'), 'utf8')) as {
      devDependencies: Record<string, string>;
    };
    const beside = ['@observablehq/plot', 'linkedom'].map((name) => `${name}@${devDependencies[name] ?? ''}`);
    must(installed.folder, 'npm', 'install', '--no-audit', '--no-fund', '--loglevel=error', ...beside);
    const notebook = JSON.parse(readFileSync(join(root, 'docs/notebooks/pump-feed.ipynb'), 'utf8')) as {
      cells: { cell_type: string; source: string[]; outputs?: object[] }[];
    };
    const results = await runCells(codeOf(notebook), installed.folder);
    const shown = notebook.cells.filter((cell) => cell.cell_type === 'code').map((cell) => cell.outputs);
    expect(results.map(({ error }) => error)).toEqual(shown.map(() => null));
    expect(results.map(({ outputs }) => outputs)).toEqual(shown);
  });
});

describe('the cost of the core', () => {
  it('is nothing when nothing is imported from it', async () => {
    expect(await leftBehind(at('node_modules/loomwright/dist/index.js'))).toBe('');
  });

  it('is below its ceiling for each name alone', async () => {
    const names = runModule<string[]>(
      'names.mjs',
      "import * as all from 'loomwright'; console.log(JSON.stringify(Object.keys(all)));",
    );
    expect(names.length).toBeGreaterThan(50);
    const sizes = await measureSizes(installed.folder, 'loomwright', names);
    expect(sizes.size).toBe(names.length + 1);
    const cache = join(root, 'test/node_modules/.cache');
    mkdirSync(cache, { recursive: true });
    const report = { whole: sizes.get('*'), names: Object.fromEntries(sizes) };
    writeFileSync(join(cache, 'size.json'), JSON.stringify(report, null, 1));
    const ceilings = JSON.parse(readFileSync(join(root, 'test/size/ceilings.json'), 'utf8')) as Record<
      string,
      Ceilings
    >;
    expect(overCeiling(ceilings.loomwright ?? {}, sizes)).toEqual([]);
  });

  it('is at most 15 ms of CPU to import, above an empty module', () => {
    writeFileSync(at('empty.mjs'), 'export {};\n');
    expect(importCpuMs(installed.folder, 'loomwright', at('empty.mjs'))).toBeLessThanOrEqual(15);
  });
});
