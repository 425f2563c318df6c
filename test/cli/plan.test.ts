// The commands `plan` and `sheets` as a person starts them: the built bundle in a process of its own.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parseLoom, planLoom, sheetFiles, sheetOrder, sheets } from '@loomwright/harness';

const main = fileURLToPath(new URL('../../packages/cli/dist/main.js', import.meta.url));
const start = fileURLToPath(new URL('../../packages/cli/demo/start.mjs', import.meta.url));
const root = fileURLToPath(new URL('../../', import.meta.url));
const vehicle = join(root, 'packages/cli/examples/sandpiper.yaml');
const folder = mkdtempSync(join(tmpdir(), 'plan-'));
const text = readFileSync(vehicle, 'utf8');

function node(script: string, ...args: string[]): { out: string; err: string; status: number | null } {
  const { stdout, stderr, status } = spawnSync(process.execPath, [script, ...args], {
    encoding: 'utf8',
    cwd: root,
    // A plan as data is more than the megabyte that is kept otherwise.
    maxBuffer: 64 * 1024 * 1024,
  });
  return { out: stdout, err: stderr, status };
}
const run = (...args: string[]) => node(main, ...args);
function file(name: string, content: string): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}
function planned(content: string) {
  const parsed = parseLoom(content);
  if (!parsed.ok) throw new Error(parsed.problems.map(({ message }) => message).join('\n'));
  return planLoom(parsed.loom);
}

const plan = planned(text);
const clean = plan.findings.every(({ severity }) => severity !== 'fail');
/** The pump draws ten times as much, through the thinnest wire alone: a limit cannot be met. */
const broken = file('broken.yaml', text.replace(/^ {2}stock: .*$/m, '  stock: [0.5 mm²]'));

describe('loomwright plan', () => {
  it('prints how the vehicle stands, each finding with rule and cure, each wire with what decided it', () => {
    const { out, err, status } = run('plan', vehicle);
    expect(err).toBe('');
    expect(status).toBe(clean ? 0 : 2);
    expect(plan.circuits.length).toBeGreaterThanOrEqual(40);
    expect(out).toContain(`${plan.circuits.length} circuits, ${plan.wires.length} wires`);
    const flat = out.replace(/\s+/g, ' ');
    for (const { about, rule, message, cure } of plan.findings) {
      expect(flat).toContain(`${about.name} · ${rule.replaceAll('-', ' ')}`);
      expect(flat).toContain(message.replace(/\s+/g, ' '));
      if (cure !== null) expect(flat).toContain(`Cure: ${cure}`.replace(/\s+/g, ' '));
    }
    const [wires] = sheets(plan).wires.tables;
    for (const row of wires!.rows) {
      const line = out.split('\n').find((each) => each.includes(`  ${String(row['label'])}  `));
      expect(line).toContain(String(row['size']));
      expect(line).toContain(String(row['decidedBy']));
    }
    expect(out).toContain('Codes and practice');
    for (const line of plan.notJudged) expect(flat).toContain(line.replace(/\s+/g, ' '));
  });
  it('gives as data the same digits as the library does', () => {
    const { out } = run('plan', vehicle, '--json');
    const { loom: _, ...data } = plan;
    expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(data)));
  });
  it('exits with 2 where a limit is not met, and says which first', () => {
    const { out, status } = run('plan', broken);
    expect(status).toBe(2);
    expect(out).toMatch(/NOT MET \(\d+\)/);
    expect(out.indexOf('NOT MET (')).toBeLessThan(out.indexOf('  Wires'));
  });
  it.each([
    ['a missing file', () => join(folder, 'nothing.yaml'), /no such file/],
    ['a folder', () => folder, /\S/],
    [
      'a mistyped place',
      () => file('place.yaml', text.replace('{ x: 3.7 m, y: 0 m,', '{ x: 3.7 V, y: 0 m,')),
      /place\.yaml:\d+:\d+ places\.bumper/,
    ],
    ['a circuit alone', () => join(root, 'packages/cli/examples/lift-pump.yaml'), /\S/],
    ['noise', () => file('noise.yaml', '\u0000\u0001{[}]'.repeat(1000)), /\S/],
  ])('exits with 1 on %s, with an error and no stack', (_, path, wanted) => {
    for (const args of [
      ['plan', path()],
      ['sheets', path(), '--out', join(folder, 'never')],
    ]) {
      const { out, err, status } = run(...args);
      expect(status).toBe(1);
      expect(out).toBe('');
      expect(err).toMatch(wanted);
      expect(err).not.toMatch(/\bat \w+ \(|node:internal/);
    }
    expect(existsSync(join(folder, 'never'))).toBe(false);
  });
});

describe('loomwright sheets', () => {
  const out = join(folder, 'a', 'sheets');
  const names = (): string[] => readdirSync(out).sort();

  it('writes every sheet of the plan, the same text as the library, and nothing beside them', () => {
    const { out: said, err, status } = run('sheets', vehicle, '--out', out, '--date', '2 May');
    expect(err).toBe('');
    expect(status).toBe(clean ? 0 : 2);
    expect(said).toContain(join(out, 'sheets.html'));
    const files = sheetFiles(plan, { date: '2 May' });
    expect(names()).toEqual(files.map(({ name }) => name).sort());
    for (const { name, text: wanted } of files) expect(readFileSync(join(out, name), 'utf8')).toBe(wanted);
    expect(readdirSync(join(folder, 'a'))).toEqual(['sheets']);
    expect(statSync(out).mode & 0o700).toBe(0o700);
  });
  it('overwrites nothing without --force, and says so', () => {
    const before = readFileSync(join(out, 'sheets.html'), 'utf8');
    const { err, status } = run('sheets', vehicle, '--out', out, '--date', '9 June');
    expect(status).toBe(1);
    expect(err).toMatch(/sheets already.*--force/);
    expect(readFileSync(join(out, 'sheets.html'), 'utf8')).toBe(before);
    expect(run('sheets', vehicle, '--out', out, '--date', '9 June', '--force').status).toBe(clean ? 0 : 2);
    expect(readFileSync(join(out, 'sheets.html'), 'utf8')).toContain('9 June');
    expect(readdirSync(join(folder, 'a'))).toEqual(['sheets']);
  });
  it('never touches a folder that holds other things, even with --force', () => {
    const full = join(folder, 'full');
    mkdirSync(full);
    writeFileSync(join(full, 'photo.jpg'), 'x');
    const { err, status } = run('sheets', vehicle, '--out', full, '--force');
    expect(status).toBe(1);
    expect(err).toContain('photo.jpg');
    expect(readdirSync(full)).toEqual(['photo.jpg']);
  });
  it('takes an empty folder, and refuses a file in its place', () => {
    const empty = join(folder, 'empty');
    mkdirSync(empty);
    expect(run('sheets', vehicle, '--out', empty).status).toBe(clean ? 0 : 2);
    expect(existsSync(join(empty, 'sheets.html'))).toBe(true);
    const { err, status } = run('sheets', vehicle, '--out', vehicle);
    expect(status).toBe(1);
    expect(err).toContain('no folder');
    expect(readFileSync(vehicle, 'utf8')).toBe(text);
  });
  it('leaves nothing behind where it cannot write', () => {
    const { err, status } = run('sheets', vehicle, '--out', join(vehicle, 'below', 'a', 'file'));
    expect(status).toBe(1);
    expect(err).toContain('nothing is written');
    expect(readdirSync(join(root, 'packages/cli/examples')).some((name) => name.startsWith('.'))).toBe(false);
  });
  it('writes sheets that say on every page where a limit is not met, and exits with 2', () => {
    const bad = join(folder, 'bad');
    const { out: said, status } = run('sheets', broken, '--out', bad);
    expect(status).toBe(2);
    expect(said).toContain('NOT MET');
    const html = readFileSync(join(bad, 'sheets.html'), 'utf8');
    const pages = sheetOrder(sheets(planned(readFileSync(broken, 'utf8')))).length;
    expect(html.match(/class="standing">[^<]*NOT MET/g)).toHaveLength(pages);
  });
  it('needs a folder', () => {
    expect(run('sheets', vehicle)).toMatchObject({ status: 1, err: expect.stringContaining('--out') as string });
  });
});

describe('npm start', () => {
  it('plans Sandpiper, says where its sheets are, and they are there', () => {
    const { out, status } = node(start);
    expect(status).toBe(clean ? 0 : 2);
    const [, where = ''] = /to print: (\S+)/.exec(out) ?? [];
    expect(readFileSync(join(root, where), 'utf8')).toContain('Sandpiper');
    expect(spawnSync('git', ['check-ignore', '-q', where], { cwd: root }).status).toBe(0);
    expect(out).toContain('Next:');
  });
  it('passes arguments on to the command', () => {
    expect(node(start, 'plan', join(folder, 'nothing.yaml')).status).toBe(1);
    expect(node(start, '--help').out).toContain('sheets');
  });
});
