import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needInteger, needOneOf } from '../error/guard.js';
import { InputError } from '../error/index.js';
import { findRoot } from '../number/find-root.js';
import { type SharedCurrents, sharedPulses } from './shared-feed.js';

export interface CoilChargeInput {
  /** Volts at the start of the coils' feed, above 0. */
  readonly supplyV: number;
  /** Volts lost in the driver of a coil, 0 to `supplyV`. */
  readonly driverDropV: number;
  /** Resistance of the feed that all coils share, out and back, in Ω, at least 0. */
  readonly feedResistanceOhm: number;
  /** How many coils fire in turn, 1 to 24. */
  readonly coilCount: number;
  /** Resistance of one primary winding with its own wires, as warm as it is, in Ω, above 0. */
  readonly coilResistanceOhm: number;
  /** Inductance of the primary winding in H, above 0. */
  readonly inductanceH: number;
  /** Speed of the engine in rpm, above 0. */
  readonly engineRpm: number;
  /** Each coil once in two turns (four-stroke, a coil a cylinder), or each turn (wasted spark, two-stroke). */
  readonly firing: 'each-second-turn' | 'each-turn';
  /** Current wanted as the spark is let go, in A, above 0: this or `dwellS`. */
  readonly wantedA?: number;
  /** Time that a coil is charged, in s, above 0. */
  readonly dwellS?: number;
  /** Least energy of a spark in J, above 0: judged where given. */
  readonly leastEnergyJ?: number;
  /** Time in s that a spark burns before its coil may be charged again, at least 0: judged where given. */
  readonly burnS?: number;
}

export interface CoilChargeResult {
  readonly possible: true;
  /** Sparks of all coils in a second, and s from one to the next. */
  readonly sparksPerS: number;
  readonly spacingS: number;
  /** Charging time of one coil in s. */
  readonly dwellS: number;
  /** How many coils are being charged at once, on average. */
  readonly overlapCount: number;
  /** Share of the time that one coil is on. */
  readonly dutyFraction: number;
  /** Current of a coil as it is let go, in A, and energy then in it, in J. */
  readonly coilPeakA: number;
  readonly energyJ: number;
  /** Current in the shared feed: peak for the channel, r.m.s. for wire and fuse, mean for the battery. */
  readonly peakA: number;
  readonly rmsA: number;
  readonly meanA: number;
  /** Least volts at the coils' side of the feed. */
  readonly leastFeedV: number;
  readonly checks: readonly Check[];
  readonly decidedBy: string | null;
}

/** What the coils would reach at most. */
export interface CoilChargeLimit {
  readonly currentA: number;
}

/**
 * Ignition coils on one feed: dwell, overlap and the three currents of the wire.
 *
 * Use it to size the feed, its fuse and its channel, and to see what is left of the spark while cranking. The charge
 * of a coil follows its inductance; at speed the coils overlap and the feed carries more than one coil's peak.
 *
 * $$t = -\frac{L}{R} \ln\Bigl(1 - \frac{I R}{V - V_\mathrm{driver}}\Bigr) \qquad E = \tfrac12 L I^2$$
 *
 * With resistance in the shared feed each coil slows the others; the pattern of all is then solved exactly between
 * switchings and repeated until it is steady.
 *
 * @param input supply, coils, speed, and either the current wanted or the dwell
 * @returns dwell, overlap, currents, energy; or `possible: false`: `never-reached` (the volts do not suffice) or
 * `no-time` (the dwell would fill the whole turn)
 * @throws InputError when a field is missing or out of range, or not exactly one of current and dwell is given
 * Saturation of the core is not modelled: a saturated coil draws more than this.
 * @source circuit-theory (closed form of an inductance and a resistance)
 * @example coilCharge({ supplyV: 14, driverDropV: 0.9, feedResistanceOhm: 0, coilCount: 6, coilResistanceOhm: 0.6, inductanceH: 0.003, engineRpm: 8400, firing: 'each-second-turn', wantedA: 7.5 }).meanA //=> 3.546
 */
export function coilCharge(input: CoilChargeInput): CoilChargeResult | NotPossible<CoilChargeLimit> {
  const fn = 'coilCharge';
  needInput(fn, input);
  const { supplyV, driverDropV, feedResistanceOhm, coilCount, coilResistanceOhm, inductanceH, engineRpm } = input;
  needMoreThan(fn, 'supplyV', supplyV);
  needBetween(fn, 'driverDropV', driverDropV, 0, supplyV);
  needNoLessThan(fn, 'feedResistanceOhm', feedResistanceOhm);
  needInteger(fn, 'coilCount', coilCount, 1);
  needBetween(fn, 'coilCount', coilCount, 1, 24);
  needMoreThan(fn, 'coilResistanceOhm', coilResistanceOhm);
  needMoreThan(fn, 'inductanceH', inductanceH);
  needMoreThan(fn, 'engineRpm', engineRpm);
  needOneOf(fn, 'firing', input.firing, ['each-second-turn', 'each-turn']);
  const { wantedA, dwellS: givenS, leastEnergyJ, burnS } = input;
  if ((wantedA === undefined) === (givenS === undefined)) {
    const given = wantedA === undefined ? undefined : 2;
    throw new InputError(fn, 'wantedA', 'oneOfFields', given, 'or dwellS must be given, one only');
  }
  if (wantedA !== undefined) needMoreThan(fn, 'wantedA', wantedA);
  if (givenS !== undefined) needMoreThan(fn, 'dwellS', givenS);
  if (leastEnergyJ !== undefined) needMoreThan(fn, 'leastEnergyJ', leastEnergyJ);
  if (burnS !== undefined) needNoLessThan(fn, 'burnS', burnS);

  const turnS = (60 / engineRpm) * (input.firing === 'each-turn' ? 1 : 2);
  const spacingS = turnS / coilCount;
  const driveV = supplyV - driverDropV;
  const charge = (widthS: number): SharedCurrents =>
    sharedPulses({
      fn,
      driveV,
      resistanceOhm: coilResistanceOhm,
      inductanceH,
      feedOhm: feedResistanceOhm,
      widthS,
      spacingS,
    });
  const most = (): CoilChargeLimit => ({ currentA: charge(turnS * (1 - 1e-9)).eachPeakA });
  let dwellS = givenS ?? 0;
  if (wantedA !== undefined) {
    const endA = driveV / (coilResistanceOhm + feedResistanceOhm);
    if (wantedA >= endA) {
      const because = `${wantedA} A is not below the ${endA} A that volts and resistance allow in the end`;
      return { possible: false, code: 'never-reached', because, nearest: { currentA: endA } };
    }
    const aloneS = -(inductanceH / coilResistanceOhm) * Math.log1p((-wantedA * coilResistanceOhm) / driveV);
    dwellS = aloneS;
    if (feedResistanceOhm > 0 && aloneS < turnS) {
      const lastS = turnS * (1 - 1e-9);
      const short = (widthS: number): number => charge(widthS).eachPeakA - wantedA;
      dwellS =
        short(lastS) < 0 ? turnS : findRoot({ fn, f: short, low: aloneS, high: lastS, tolerance: 1e-12 * turnS });
    }
  }
  if (dwellS >= turnS) {
    const because = `a dwell of ${dwellS} s does not fit into the ${turnS} s between two sparks of a coil`;
    return { possible: false, code: 'no-time', because, nearest: most() };
  }
  const { eachPeakA, peakA, rmsA, meanA } = charge(dwellS);
  const energyJ = 0.5 * inductanceH * eachPeakA * eachPeakA;
  const checks: Check[] = [];
  const given = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
  if (leastEnergyJ !== undefined) {
    checks.push(
      makeCheck({
        ...given,
        name: 'energy of a spark',
        value: energyJ,
        limit: leastEnergyJ,
        unit: 'J',
        sense: 'atLeast',
      }),
    );
  }
  if (burnS !== undefined) {
    checks.push(
      makeCheck({
        ...given,
        name: 'time for the spark to burn',
        value: turnS - dwellS,
        limit: burnS,
        unit: 's',
        sense: 'atLeast',
      }),
    );
  }
  return {
    possible: true,
    sparksPerS: 1 / spacingS,
    spacingS,
    dwellS,
    overlapCount: dwellS / spacingS,
    dutyFraction: dwellS / turnS,
    coilPeakA: eachPeakA,
    energyJ,
    peakA,
    rmsA,
    meanA,
    leastFeedV: supplyV - peakA * feedResistanceOhm,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? null,
  };
}
