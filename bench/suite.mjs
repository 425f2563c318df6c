import { readdir } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { measure } from './measure.mjs';

export const folder = fileURLToPath(new URL('./', import.meta.url));

/** Names of the benches, all or those asked for. */
export async function benchNames(asked) {
  const all = (await readdir(folder))
    .filter((file) => file.endsWith('.bench.mjs'))
    .map((file) => file.replace('.bench.mjs', ''));
  for (const name of asked) if (!all.includes(name)) throw new Error(`no bench '${name}'; there are ${all.join(', ')}`);
  return asked.length > 0 ? asked : all.sort();
}

/** Runs one bench: proves agreement, measures, works out the ratios. */
export async function runBench(name, quick) {
  const bench = (await import(new URL(`./${name}.bench.mjs`, import.meta.url))).default;
  const { ways, count, note } = await bench.prepare(quick);
  const how = quick ? { rounds: 3, targetMs: 5 } : { rounds: 25, targetMs: 40 };
  const times = measure(ways, count, { ...how, ...(bench.how ?? {}), ...(quick ? { rounds: 3 } : {}) });
  const ratios = bench.ratios
    .filter(({ of, to }) => of in times && to in times)
    .map(({ name: label, of, to, goal, atMost = true }) => {
      const ratio = times[of].medianNs / times[to].medianNs;
      return { name: label, ratio, goal, atMost, met: atMost ? ratio <= goal : ratio >= goal };
    });
  return { name, question: bench.question, count, ...(note === undefined ? {} : { note }), times, ratios };
}

/** A result as lines of text. */
export function report({ name, question, times, ratios, note }) {
  const ns = (value) =>
    value >= 1e6
      ? `${(value / 1e6).toFixed(2)} ms`
      : value >= 1e3
        ? `${(value / 1e3).toFixed(2)} µs`
        : `${value.toFixed(2)} ns`;
  const lines = [`${name}: ${question}`];
  for (const [way, { medianNs, lowNs, highNs }] of Object.entries(times)) {
    lines.push(`  ${way.padEnd(34)} ${ns(medianNs).padStart(10)}   (${ns(lowNs)} to ${ns(highNs)})`);
  }
  for (const { name: label, ratio, goal, atMost, met } of ratios) {
    lines.push(
      `  ${met ? 'met    ' : 'not met'} ${label}: ${ratio.toFixed(2)}, goal ${atMost ? 'at most' : 'at least'} ${goal}`,
    );
  }
  if (note !== undefined) lines.push(`  ${note}`);
  return lines.join('\n');
}
