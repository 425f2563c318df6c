/** The point that all others speak against. */
export interface SuspiciousPoint {
  readonly tempC: number;
  readonly resistanceOhm: number;
  /** The curve of the others at its resistance less its temperature, in K. */
  readonly withoutItK: number;
  /** How many standard deviations of the others that is. */
  readonly sigmas: number;
}

/** Student's t for 99.9 %, two-sided, by degrees of freedom: what chance alone passes once in a thousand. */
const T_999 = [636.6, 31.6, 12.92, 8.61, 6.87, 5.96, 5.41, 5.04, 4.78, 4.59, 4.44, 4.32, 4.22, 4.14, 4.07];

/**
 * The point whose deleted residual stands out by Student's t at 99.9 %, from the leverages of the full fit. The
 * largest residual is not always the bad point: a bad one draws the curve after it.
 */
export function suspiciousPoint(
  points: readonly { readonly tempC: number; readonly resistanceOhm: number }[],
  residualsK: readonly number[],
  leverages: readonly number[],
  weights: readonly number[],
): SuspiciousPoint | null {
  const dof = points.length - 3;
  if (dof < 2) return null;
  const squares = residualsK.map((residualK, i) => (residualK * (weights[i] as number)) ** 2);
  const total = squares.reduce((sum, square) => sum + square, 0);
  let worst: SuspiciousPoint | null = null;
  points.forEach(({ tempC, resistanceOhm }, i) => {
    const room = 1 - (leverages[i] as number);
    if (!(room > 1e-9)) return;
    const others = Math.max(total - (squares[i] as number) / room, 1e-30) / (dof - 1);
    const sigmas = Math.sqrt((squares[i] as number) / (room * others));
    if (worst === null || sigmas > worst.sigmas) {
      worst = { tempC, resistanceOhm, withoutItK: (residualsK[i] as number) / room, sigmas };
    }
  });
  const found = worst as SuspiciousPoint | null;
  const limit = T_999[dof - 2] ?? 4;
  return found !== null && found.sigmas > limit && Math.abs(found.withoutItK) > 0.01 ? found : null;
}
