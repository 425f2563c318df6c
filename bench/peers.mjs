// Programs of their own to measure against, where they are installed: each gives the time of the processor that it took,
// without that of starting.
import { spawn, spawnSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, readFileSync, readSync, rmSync, writeFileSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const SCIPY = `
import sys, time, json
import numpy as np
from scipy.sparse import coo_matrix
from scipy.sparse.linalg import spsolve
folder = sys.argv[1]
systems = {}
def solve(name, order):
    n, i, j, g, b = systems[name]
    start = time.process_time_ns()
    # Each branch four times, as a program would put it: the matrix adds up what falls on one place.
    both = (i >= 0) & (j >= 0)
    rows = np.concatenate([i[i >= 0], j[j >= 0], i[both], j[both]])
    columns = np.concatenate([i[i >= 0], j[j >= 0], j[both], i[both]])
    values = np.concatenate([g[i >= 0], g[j >= 0], -g[both], -g[both]])
    matrix = coo_matrix((values, (rows, columns)), shape=(n, n)).tocsc()
    x = spsolve(matrix, b, permc_spec=order)
    return time.process_time_ns() - start, x
with open(folder + "/ask") as ask, open(folder + "/answer", "w") as answer:
    for line in ask:
        name, order, what = line.split()
        if name not in systems:
            i = np.fromfile(folder + "/" + name + ".i", dtype=np.int32)
            j = np.fromfile(folder + "/" + name + ".j", dtype=np.int32)
            g = np.fromfile(folder + "/" + name + ".g", dtype=np.float64)
            b = np.fromfile(folder + "/" + name + ".b", dtype=np.float64)
            systems[name] = (len(b), i, j, g, b)
        ns, x = solve(name, order)
        if what == "volts": x.tofile(folder + "/" + name + ".x")
        answer.write(str(ns) + "\\n")
        answer.flush()
`;

const cleanEnv = () => {
  // The library behind scipy is to choose its own kernel: settings of a machine for older versions slow it down.
  const env = { ...process.env };
  for (const name of Object.keys(env)) if (name.startsWith('OPENBLAS_')) delete env[name];
  return env;
};

/**
 * scipy's sparse solver in a process that stays: `add` hands a system over, `timedNs` has it assembled and solved from
 * the start, `volts` gives the solution. Null where Python or scipy is missing.
 *
 * The system is that of branches between unknowns i and j (−1: held at 0) with conductances g and right sides b.
 */
export function scipy() {
  const found = spawnSync('python3', ['-c', 'import scipy; print(scipy.__version__)'], { encoding: 'utf8' });
  if (found.status !== 0) return null;
  const folder = mkdtempSync(join(tmpdir(), 'loomwright-bench-'));
  writeFileSync(join(folder, 'solve.py'), SCIPY);
  for (const pipe of ['ask', 'answer']) if (spawnSync('mkfifo', [join(folder, pipe)]).status !== 0) return null;
  const child = spawn('python3', [join(folder, 'solve.py'), folder], { stdio: 'ignore', env: cleanEnv() });
  const ask = openSync(join(folder, 'ask'), 'w');
  const answer = openSync(join(folder, 'answer'), 'r');
  process.on('exit', () => {
    closeSync(ask);
    closeSync(answer);
    child.kill();
    rmSync(folder, { recursive: true, force: true });
  });
  child.unref();
  const buffer = Buffer.alloc(64);
  const asked = (name, order, what) => {
    writeSync(ask, `${name} ${order} ${what}\n`);
    let text = '';
    while (!text.includes('\n')) text += buffer.toString('utf8', 0, readSync(answer, buffer));
    return Number(text);
  };
  return {
    version: found.stdout.trim(),
    add: (name, { i, j, g, b }) => {
      for (const [end, list] of Object.entries({ i, j, g, b })) {
        writeFileSync(join(folder, `${name}.${end}`), new Uint8Array(list.buffer, list.byteOffset, list.byteLength));
      }
    },
    timedNs: (name, order) => asked(name, order, 'time'),
    volts: (name) => {
      asked(name, 'MMD_AT_PLUS_A', 'volts');
      const bytes = readFileSync(join(folder, `${name}.x`));
      return new Float64Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
    },
  };
}

/**
 * The circuit simulator ngspice on a netlist (without title and `.end`): the time of its own analysis, without that of
 * reading the netlist, and the volts of all nodes. Null where it is not installed. It tells whole milliseconds: what takes
 * a few of them is run several times for one figure, their mean.
 */
export function ngspice() {
  const found = spawnSync('ngspice', ['--version'], { encoding: 'utf8' });
  if (found.status !== 0) return null;
  const folder = mkdtempSync(join(tmpdir(), 'loomwright-bench-'));
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  const run = (netlist, write) => {
    const file = join(folder, 'circuit.cir');
    const raw = join(folder, 'circuit.raw');
    const deeds = [
      '.control',
      'op',
      'rusage totaltime',
      'rusage everything',
      ...(write ? [`write ${raw}`] : []),
      'quit',
    ];
    writeFileSync(file, `bench\n${netlist}\n.options gmin=1e-20\n${deeds.join('\n')}\n.endc\n.end\n`);
    const { stdout, stderr } = spawnSync('ngspice', ['-b', file], { encoding: 'utf8', maxBuffer: 1e9 });
    const seconds = /Total analysis time \(seconds\) = (\S+)/.exec(stdout)?.[1];
    if (seconds === undefined) throw new Error(`ngspice: ${stderr.slice(0, 500)}`);
    return { ns: Number(seconds) * 1e9, raw };
  };
  return {
    version: /ngspice-(\d+)/.exec(found.stdout)?.[1] ?? '?',
    timedNs: (netlist, runs = 1) => {
      let ns = 0;
      for (let i = 0; i < runs; i++) ns += run(netlist, false).ns / runs;
      return ns;
    },
    volts: (netlist) => readRaw(readFileSync(run(netlist, true).raw)),
  };
}

/** Volts by node of the simulator's binary file. */
function readRaw(bytes) {
  const mark = bytes.indexOf('Binary:\n');
  const head = bytes.toString('utf8', 0, mark);
  const names = head
    .slice(head.lastIndexOf('Variables:'))
    .split('\n')
    .slice(1)
    .map((line) => line.trim().split(/\s+/)[1]);
  const values = new Map();
  names.forEach((name, k) => {
    if (name?.startsWith('v(')) values.set(name.slice(2, -1), bytes.readDoubleLE(mark + 8 + 8 * k));
    else if (name !== undefined && !name.includes('#')) values.set(name, bytes.readDoubleLE(mark + 8 + 8 * k));
  });
  return values;
}
