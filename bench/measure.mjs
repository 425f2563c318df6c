// Interleaved rounds: every way takes its turn in each round, so that a slow moment of the machine hits all of them.

/** Median of a list. */
export function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}

/** Keeps results alive: an engine must not find out that nobody reads them. */
export let sink = 0;

/**
 * Times of each way in ns a piece of work.
 *
 * @param {Record<string, () => number>} ways
 * @param {number} count pieces of work in one call
 * @param {{ rounds: number, targetMs: number }} how rounds, and how long one way runs in a round
 */
export function measure(ways, count, { rounds, targetMs }) {
  const calls = {};
  for (const [name, way] of Object.entries(ways)) {
    // Warm up, then find how many calls fill the target.
    const started = performance.now();
    let done = 0;
    do {
      sink += way();
      done++;
    } while (performance.now() - started < targetMs);
    calls[name] = Math.max(1, Math.round((done * targetMs) / (performance.now() - started)));
  }
  const times = Object.fromEntries(Object.keys(ways).map((name) => [name, []]));
  for (let round = 0; round < rounds; round++) {
    for (const [name, way] of Object.entries(ways)) {
      const started = performance.now();
      for (let i = 0; i < calls[name]; i++) sink += way();
      times[name].push(((performance.now() - started) * 1e6) / calls[name] / count);
    }
  }
  return Object.fromEntries(
    Object.entries(times).map(([name, list]) => {
      const sorted = [...list].sort((a, b) => a - b);
      return [name, { medianNs: median(list), lowNs: sorted[0], highNs: sorted.at(-1) }];
    }),
  );
}
