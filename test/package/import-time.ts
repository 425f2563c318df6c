import { attempt } from './install.js';

const MEASURE = `
  const before = process.cpuUsage();
  await import(process.argv[1]);
  const { user, system } = process.cpuUsage(before);
  console.log((user + system) / 1000);
`;

function once(folder: string, specifier: string): number {
  const args = ['--input-type=module', '-e', MEASURE, specifier];
  const { status, output } = attempt(folder, process.execPath, ...args);
  const time = Number(output);
  if (status !== 0 || !Number.isFinite(time)) throw new Error(`import of ${specifier}: ${output}`);
  return time;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? NaN;
}

/** CPU milliseconds that importing costs above an empty module: medians of interleaved runs in fresh processes. */
export function importCpuMs(folder: string, specifier: string, empty: string, runs = 11): number {
  const times: number[] = [];
  const nothing: number[] = [];
  for (let i = 0; i < runs; i++) {
    nothing.push(once(folder, empty));
    times.push(once(folder, specifier));
  }
  return median(times) - median(nothing);
}
