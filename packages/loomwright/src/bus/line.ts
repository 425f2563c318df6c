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

/** Conductance seen into one side of a point, by steps from the far end; 0 where nothing is there. */
function sideS(points: readonly LinePoint[], at: number, step: 1 | -1, resistanceOhmPerM: number): number {
  let end = at;
  while (points[end + step] !== undefined) {
    end += step;
    if ((points[end] as LinePoint).cut) break;
  }
  let seenS = 0;
  for (let i = end; i !== at; i -= step) {
    const here = points[i] as LinePoint;
    const next = points[i - step] as LinePoint;
    const sumS = seenS + here.acrossS;
    seenS = sumS === 0 ? 0 : 1 / (1 / sumS + wireOhm(here, next, resistanceOhmPerM));
  }
  return seenS;
}

/** Ohms across the two wires at a point, or null where the line is open. */
export function readingOhm(points: readonly LinePoint[], at: number, resistanceOhmPerM: number): number | null {
  const sumS =
    (points[at] as LinePoint).acrossS +
    sideS(points, at, 1, resistanceOhmPerM) +
    sideS(points, at, -1, resistanceOhmPerM);
  return sumS === 0 ? null : 1 / sumS;
}

/** Share of a driver's volts that is left at each point; the driver stands at `from`. */
export function sharesFrom(points: readonly LinePoint[], from: number, resistanceOhmPerM: number): readonly number[] {
  const shares = points.map(() => 0);
  shares[from] = 1;
  for (const step of [1, -1] as const) {
    for (let i = from; points[i + step] !== undefined; i += step) {
      const here = points[i + step] as LinePoint;
      const beyondS = here.acrossS + (here.cut ? 0 : sideS(points, i + step, step, resistanceOhmPerM));
      const ohm = wireOhm(points[i] as LinePoint, here, resistanceOhmPerM);
      shares[i + step] = (shares[i] as number) / (1 + ohm * beyondS);
      if (here.cut) break;
    }
  }
  return shares;
}
