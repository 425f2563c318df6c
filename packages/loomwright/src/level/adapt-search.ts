import { preferredBetween } from '../table/preferred-value.js';
import type { PreferredSeries } from '../table/index.js';
import { type Dial, dialError, type DialNetwork } from './dial.js';

/** A network and the worst of its errors, tolerance included. */
export interface Found {
  readonly network: DialNetwork;
  readonly worst: number;
}

/** The network with every resistor off by the same share. */
export function scaled({ senderSideOhm, acrossOhm, gaugeSideOhm }: DialNetwork, factor: number): DialNetwork {
  return {
    senderSideOhm: senderSideOhm * factor,
    acrossOhm: acrossOhm === null ? null : acrossOhm * factor,
    gaugeSideOhm: gaugeSideOhm * factor,
  };
}

/** Ranges of places in the lists of values: series with the sender, across, series with the gauge. */
interface Box {
  readonly low: readonly [number, number, number];
  readonly high: readonly [number, number, number];
  readonly bound: number;
}

/**
 * The best networks of a series with no, one, two and three resistors, until one meets the wish; the best of all
 * otherwise. Each resistor moves the pointer one way only, so the most shown too much and too little over a box of
 * values lie at its two ends; boxes that cannot hold a better network are left out. The answer is proven.
 */
export function searchNetwork(dial: Dial, series: PreferredSeries, tolerance: number, wish: number): Found {
  const { gaugeOhm, senderOhm } = dial;
  const span = Math.abs((gaugeOhm[0] as number) - (gaugeOhm.at(-1) as number));
  const values = preferredBetween(series, span / 200, Math.max(...gaugeOhm, ...senderOhm) * 100);
  const m = values.length;
  const at = (place: readonly [number, number, number]): DialNetwork => ({
    senderSideOhm: place[0] === 0 ? 0 : (values[place[0] - 1] as number),
    acrossOhm: place[1] === m ? null : (values[place[1]] as number),
    gaugeSideOhm: place[2] === 0 ? 0 : (values[place[2] - 1] as number),
  });
  const falls = (gaugeOhm[0] as number) > (gaugeOhm.at(-1) as number);
  // With a dial that falls in ohms, more ohms show less.
  const over = (network: DialNetwork): number =>
    dialError(dial, scaled(network, 1 + (falls ? -tolerance : tolerance))).over;
  const under = (network: DialNetwork): number =>
    dialError(dial, scaled(network, 1 + (falls ? tolerance : -tolerance))).under;
  const box = (low: Box['low'], high: Box['high']): Box => ({
    low,
    high,
    bound: Math.max(over(at(falls ? high : low)), under(at(falls ? low : high))),
  });
  let best: Found = { network: at([0, m, 0]), worst: Infinity };
  const explore = (start: Box): void => {
    const stack = [start];
    for (let next = stack.pop(); next !== undefined; next = stack.pop()) {
      if (next.bound >= best.worst - 1e-12) continue;
      const { low, high } = next;
      const sides = low.map((from, i) => (high[i] as number) - from);
      const longest = sides.indexOf(Math.max(...sides));
      const from = low[longest] as number;
      const to = high[longest] as number;
      if (from === to) {
        best = { network: at(low), worst: next.bound };
        continue;
      }
      const middle = (from + to) >> 1;
      const put = (place: Box['low'], value: number): Box['low'] =>
        place.map((x, i) => (i === longest ? value : x)) as unknown as Box['low'];
      const halves = [box(low, put(high, middle)), box(put(low, middle + 1), high)];
      halves.sort((p, q) => q.bound - p.bound);
      stack.push(...halves);
    }
  };
  const NONE = [0, m, 0] as const;
  for (const kinds of [
    [],
    [[0], [1], [2]],
    [
      [0, 1],
      [0, 2],
      [1, 2],
    ],
    [[0, 1, 2]],
  ] as readonly (readonly (readonly number[])[])[]) {
    for (const kind of kinds.length === 0 ? [[] as readonly number[]] : kinds) {
      const low = NONE.map((none, i) => (kind.includes(i) && i === 1 ? 0 : none)) as unknown as Box['low'];
      const high = NONE.map((none, i) => (kind.includes(i) && i !== 1 ? m : none)) as unknown as Box['high'];
      explore(box(low, high));
    }
    if (best.worst <= wish) break;
  }
  return best;
}
