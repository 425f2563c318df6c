// A two-wire line as a chain: points along the trunk, a resistance across the two wires at each, wire in between.

/** One point of the chain. */
export interface LinePoint {
  readonly positionM: number;
  /** Conductance across the two wires, in S. */
  readonly acrossS: number;
  /** Whether the line ends here and begins anew: a plug that carries it through has been pulled. */
  readonly cut: boolean;
}

/** Resistance in Ω of both wires between two points. */
function wireOhm(a: LinePoint, b: LinePoint, resistanceOhmPerM: number): number {
  return 2 * resistanceOhmPerM * Math.abs(b.positionM - a.positionM);
}

/**
 * Conductance seen from each point into the side that lies the given step away; 0 where nothing is there. A plug that
 * has been pulled shows nothing of what lies beyond it.
 */
function sidesS(points: readonly LinePoint[], step: 1 | -1, resistanceOhmPerM: number): readonly number[] {
  const sides = points.map(() => 0);
  for (let i = step === 1 ? points.length - 2 : 1; points[i] !== undefined; i -= step) {
    const next = points[i + step] as LinePoint;
    const sumS = next.acrossS + (next.cut ? 0 : (sides[i + step] as number));
    sides[i] = sumS === 0 ? 0 : 1 / (1 / sumS + wireOhm(points[i] as LinePoint, next, resistanceOhmPerM));
  }
  return sides;
}

/** Ohms across the two wires at a point, or null where the line is open. */
export function readingOhm(points: readonly LinePoint[], at: number, resistanceOhmPerM: number): number | null {
  return readingsOhm(points, resistanceOhmPerM)[at] as number | null;
}

/** The same at every point. */
export function readingsOhm(points: readonly LinePoint[], resistanceOhmPerM: number): readonly (number | null)[] {
  const after = sidesS(points, 1, resistanceOhmPerM);
  const before = sidesS(points, -1, resistanceOhmPerM);
  return points.map(({ acrossS }, i) => {
    const sumS = acrossS + (after[i] as number) + (before[i] as number);
    return sumS === 0 ? null : 1 / sumS;
  });
}

/**
 * Least share of a driver's volts that is left anywhere, wherever on a whole line the driver stands. On the way from
 * it volts only fall, so it is left at an end.
 */
export function leastShare(points: readonly LinePoint[], resistanceOhmPerM: number): number {
  let least = 1;
  for (const step of [1, -1] as const) {
    const sides = sidesS(points, step, resistanceOhmPerM);
    // From each point to the end that lies this way: what is left at the next, times what is left from there on.
    let left = 1;
    for (let i = step === 1 ? points.length - 2 : 1; points[i] !== undefined; i -= step) {
      const next = points[i + step] as LinePoint;
      const beyondS = next.acrossS + (sides[i + step] as number);
      left /= 1 + wireOhm(points[i] as LinePoint, next, resistanceOhmPerM) * beyondS;
      least = Math.min(least, left);
    }
  }
  return least;
}
