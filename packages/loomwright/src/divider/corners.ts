import type { SpreadResult } from '../number/spread-of.js';

/** The worst that parts within their bounds can do. */
export interface ToleranceCorners {
  /** Least and greatest value; null where a part has no bounds. */
  readonly lowValue: number | null;
  readonly highValue: number | null;
  /**
   * `exact` where the quantity rises or falls steadily with each part; `not-steady` where it turns within the
   * bounds, so that the ends shown are the worst found and not proven; `unbounded-part` where there are none.
   */
  readonly code: 'exact' | 'not-steady' | 'unbounded-part';
}

/**
 * Least and greatest value over all corners of the box of tolerances. Whether the quantity turns inside is looked
 * for along every edge of the box (all of them up to eight parts, else those at the two opposite corners), and in
 * the simulation.
 */
export function cornersOf(
  f: (values: readonly number[]) => number,
  nominal: readonly number[],
  halfWidths: readonly (number | null)[],
  simulated: SpreadResult,
): ToleranceCorners {
  if (halfWidths.includes(null)) return { lowValue: null, highValue: null, code: 'unbounded-part' };
  const n = nominal.length;
  const at = (corner: number, moved = -1, share = 0): readonly number[] =>
    nominal.map((x, i) => x + (halfWidths[i] as number) * (i === moved ? share : (corner >> i) & 1 ? 1 : -1));
  const corners = 2 ** n;
  const values = Array.from({ length: corners }, (_, corner) => f(at(corner)));
  let low = values[0] as number;
  let high = low;
  for (const y of values) {
    if (y < low) low = y;
    if (y > high) high = y;
  }
  const slack = (Math.abs(low) + Math.abs(high)) * 1e-12;
  let steady = simulated.leastValue >= low - slack && simulated.greatestValue <= high + slack;
  let worstLow = Math.min(low, simulated.leastValue);
  let worstHigh = Math.max(high, simulated.greatestValue);
  for (let corner = 0; corner < corners; corner++) {
    if (n > 8 && corner !== 0 && corner !== corners - 1) continue;
    for (let i = 0; i < n; i++) {
      if (halfWidths[i] === 0 || (n <= 8 && (corner >> i) & 1)) continue;
      const ends = [values[corner] as number, values[corner ^ (1 << i)] as number];
      for (const share of [-0.5, 0, 0.5]) {
        const y = f(at(corner, i, share));
        worstLow = Math.min(worstLow, y);
        worstHigh = Math.max(worstHigh, y);
        if (y < Math.min(...ends) - slack || y > Math.max(...ends) + slack) steady = false;
      }
    }
  }
  return steady
    ? { lowValue: low, highValue: high, code: 'exact' }
    : { lowValue: worstLow, highValue: worstHigh, code: 'not-steady' };
}
