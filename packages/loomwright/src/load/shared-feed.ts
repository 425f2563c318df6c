import { ConvergenceError } from '../error/index.js';

/** Coils that are switched on one after another, evenly, behind one resistance that all share. */
export interface SharedPulses {
  readonly fn: string;
  /** Volts that drive the coils: supply less what the driver loses. */
  readonly driveV: number;
  readonly resistanceOhm: number;
  readonly inductanceH: number;
  readonly feedOhm: number;
  /** How long each is on, and from one switching on to the next, in s. */
  readonly widthS: number;
  readonly spacingS: number;
}

/** Once all has settled: current of one coil as it is switched off, and what the feed carries. */
export interface SharedCurrents {
  readonly eachPeakA: number;
  readonly peakA: number;
  readonly rmsA: number;
  readonly meanA: number;
}

/**
 * The steady pattern of currents, in closed form between switchings. With m coils on, their sum S and each coil's
 * difference from S / m decay by themselves: L dS/dt = m V − (R + m R_feed) S, and L dδ/dt = −R δ.
 */
export function sharedPulses(input: SharedPulses): SharedCurrents {
  const { fn, driveV, resistanceOhm, inductanceH, feedOhm, widthS, spacingS } = input;
  const whole = Math.floor((widthS / spacingS) * (1 + 1e-12));
  const restS = Math.max(0, widthS - whole * spacingS);
  const alone = driveV / resistanceOhm;
  let peakA = 0;
  let charge = 0;
  let squares = 0;

  const run = (currents: readonly number[], durationS: number): number[] => {
    const m = currents.length;
    if (m === 0) return [];
    const ohm = resistanceOhm + m * feedOhm;
    const last = (m * driveV) / ohm;
    const first = currents.reduce((a, b) => a + b, 0);
    const gone = -Math.expm1((-ohm * durationS) / inductanceH);
    const over = first - last;
    const tau = inductanceH / ohm;
    const end = last + over * (1 - gone);
    charge += last * durationS + over * tau * gone;
    squares += last * last * durationS + 2 * last * over * tau * gone + 0.5 * over * over * tau * gone * (2 - gone);
    peakA = Math.max(peakA, first, end);
    const kept = Math.exp((-resistanceOhm * durationS) / inductanceH);
    return currents.map((i) => end / m + (i - first / m) * kept);
  };

  // From one switching on to the next: currents of the coils by age, youngest first.
  let state = new Array<number>(whole + 1).fill(0);
  for (let turn = 0; turn < 2000; turn++) {
    peakA = 0;
    charge = 0;
    squares = 0;
    const atEnd = run(state, restS);
    const eachPeakA = atEnd[whole] as number;
    const next = [0, ...run(atEnd.slice(0, whole), spacingS - restS)];
    const change = Math.max(...next.map((i, k) => Math.abs(i - (state[k] as number))));
    state = next;
    if (change <= 1e-13 * alone) {
      return { eachPeakA, peakA, rmsA: Math.sqrt(squares / spacingS), meanA: charge / spacingS };
    }
  }
  throw new ConvergenceError(fn, 2000, state[whole] as number, NaN);
}
