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
 * @param {Record<string, (() => number) | { timedNs: () => number }>} ways a program beside us times itself: `timedNs`
 * @param {number | Record<string, number>} count pieces of work in one call, of all ways or of each
 * @param {{ rounds: number, targetMs: number, clock?: 'wall' | 'cpu' }} how rounds, how long one way runs in a round, and by
 * which clock: that of the processor where programs of their own are measured beside, which give theirs
 */
export function measure(ways, count, { rounds, targetMs, clock = 'wall' }) {
  const now = clock === 'cpu' ? () => process.cpuUsage().user / 1000 : () => performance.now();
  const calls = {};
  const pieces = (name) => (typeof count === 'number' ? count : count[name]);
  for (const [name, way] of Object.entries(ways)) {
    if (typeof way !== 'function') continue;
    // Warm up, then find how many calls fill the target.
    const started = now();
    let done = 0;
    do {
      sink += way();
      done++;
    } while (now() - started < targetMs);
    calls[name] = Math.max(1, Math.round((done * targetMs) / (now() - started)));
  }
  const times = Object.fromEntries(Object.keys(ways).map((name) => [name, []]));
  for (let round = 0; round < rounds; round++) {
    for (const [name, way] of Object.entries(ways)) {
      if (typeof way !== 'function') {
        if (times[name].length < (way.mostRounds ?? rounds)) times[name].push(way.timedNs() / pieces(name));
        continue;
      }
      const started = now();
      for (let i = 0; i < calls[name]; i++) sink += way();
      times[name].push(((now() - started) * 1e6) / calls[name] / pieces(name));
    }
  }
  return Object.fromEntries(
    Object.entries(times).map(([name, list]) => {
      const sorted = [...list].sort((a, b) => a - b);
      return [name, { medianNs: median(list), lowNs: sorted[0], highNs: sorted.at(-1) }];
    }),
  );
}
