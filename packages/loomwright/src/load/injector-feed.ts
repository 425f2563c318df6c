import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needInteger, needObject, needOneOf } from '../error/guard.js';
import { sharedPulses } from './shared-feed.js';

/** Current rises to a peak, then is held at less: the driver of low-resistance injectors. */
export interface PeakHold {
  /** Current in A at which the driver turns back, above 0. */
  readonly peakA: number;
  /** Current in A from then on, above 0 and at most `peakA`. */
  readonly holdA: number;
}

export interface InjectorFeedInput {
  /** Volts at the start of the injectors' feed, above 0. */
  readonly supplyV: number;
  /** Volts lost in the driver of an injector, 0 to `supplyV`. */
  readonly driverDropV: number;
  /** Resistance of the feed that all injectors share, in Ω, at least 0. */
  readonly feedResistanceOhm: number;
  /** How many injectors, 1 to 24. */
  readonly injectorCount: number;
  /** Resistance of one injector with its ballast and wires, in Ω, above 0. */
  readonly injectorResistanceOhm: number;
  /** Inductance of one injector in H, above 0. */
  readonly inductanceH: number;
  /** How long an injector is switched on, in s, above 0. */
  readonly onS: number;
  /** Speed of the engine in rpm, above 0. */
  readonly engineRpm: number;
  /** One after another, each once in two turns; or all together, once in two turns or each turn. */
  readonly firing: 'sequential' | 'together-each-second-turn' | 'together-each-turn';
  /** Peak and hold of the driver; left out, current flows until it is switched off. */
  readonly peakHold?: PeakHold;
  /** Current in A at which the needle lifts, above 0: the opening delay is worked out where given. */
  readonly openingA?: number;
}

export interface InjectorFeedResult {
  readonly possible: true;
  /** Share of the time that an injector is on. */
  readonly dutyFraction: number;
  /** How many are on at once, on average. */
  readonly overlapCount: number;
  /** Time constant of the rise in s. */
  readonly timeConstantS: number;
  /** Current of one injector at its highest, in A. */
  readonly injectorA: number;
  /** Time in s until the needle lifts; null where `openingA` is not given or not reached. */
  readonly openingDelayS: number | null;
  /** Time in s until the driver turns back to the hold current; null without one, or where it is not reached. */
  readonly peakTimeS: number | null;
  /** Current in the shared feed: peak for the channel, r.m.s. for wire and fuse, mean for the battery. */
  readonly peakA: number;
  readonly rmsA: number;
  readonly meanA: number;
  /** Least volts at the injectors' side of the feed. */
  readonly leastFeedV: number;
  readonly checks: readonly Check[];
  readonly decidedBy: string | null;
}

/**
 * Injectors on one feed: how they open, and what their wire carries.
 *
 * Use it for the feed, its fuse and its channel, and to see how much later they open at low volts. There is no inrush:
 * current rises from nothing within milliseconds.
 *
 * $$i(t) = \frac{V - V_\mathrm{driver}}{R}\bigl(1 - e^{-t R / L}\bigr) \qquad
 * t_\mathrm{open} = -\frac{L}{R}\ln\Bigl(1 - \frac{I_\mathrm{open} R}{V - V_\mathrm{driver}}\Bigr)$$
 *
 * The fall after switching off, tenths of a millisecond against a clamp of tens of volts, is left out. With a peak and
 * hold driver the feed is taken to carry the hold current, as with a linear driver; a chopping one takes less. The
 * rise is then worked out with the feed's resistance counted once for each injector that rises with it.
 *
 * @param input supply, injectors, time on, speed, how they fire
 * @returns duty, delay, currents, checks; or `possible: false`: `always-open` (the time on fills the whole turn)
 * @throws InputError when a field is missing or out of range
 * @source circuit-theory (closed form of an inductance and a resistance)
 * @example injectorFeed({ supplyV: 14, driverDropV: 0.5, feedResistanceOhm: 0.05, injectorCount: 4, injectorResistanceOhm: 12, inductanceH: 0.012, onS: 0.008, engineRpm: 6000, firing: 'sequential', openingA: 0.6 }).openingDelayS //=> 0.000764
 */
export function injectorFeed(input: InjectorFeedInput): InjectorFeedResult | NotPossible<{ readonly onS: number }> {
  const fn = 'injectorFeed';
  needInput(fn, input);
  const { supplyV, driverDropV, feedResistanceOhm, injectorCount, injectorResistanceOhm, inductanceH } = input;
  const { onS, engineRpm, firing, peakHold, openingA } = input;
  needMoreThan(fn, 'supplyV', supplyV);
  needBetween(fn, 'driverDropV', driverDropV, 0, supplyV);
  needNoLessThan(fn, 'feedResistanceOhm', feedResistanceOhm);
  needInteger(fn, 'injectorCount', injectorCount, 1);
  needBetween(fn, 'injectorCount', injectorCount, 1, 24);
  needMoreThan(fn, 'injectorResistanceOhm', injectorResistanceOhm);
  needMoreThan(fn, 'inductanceH', inductanceH);
  needMoreThan(fn, 'onS', onS);
  needMoreThan(fn, 'engineRpm', engineRpm);
  needOneOf(fn, 'firing', firing, ['sequential', 'together-each-second-turn', 'together-each-turn']);
  if (openingA !== undefined) needMoreThan(fn, 'openingA', openingA);
  if (peakHold !== undefined) {
    needObject(fn, 'peakHold', peakHold);
    needMoreThan(fn, 'peakHold.peakA', peakHold.peakA);
    needMoreThan(fn, 'peakHold.holdA', peakHold.holdA);
    needBetween(fn, 'peakHold.holdA', peakHold.holdA, 0, peakHold.peakA);
  }
  const cycleS = (firing === 'together-each-turn' ? 60 : 120) / engineRpm;
  if (onS >= cycleS) {
    const because = `${onS} s on do not fit into the ${cycleS} s between two injections`;
    return { possible: false, code: 'always-open', because, nearest: { onS: cycleS } };
  }
  // All together are alike: one of them behind as many times the feed's resistance, and as many times its current.
  const alike = firing === 'sequential' ? 1 : injectorCount;
  const spacingS = firing === 'sequential' ? cycleS / injectorCount : cycleS;
  const driveV = supplyV - driverDropV;
  const ohm = injectorResistanceOhm + alike * feedResistanceOhm;
  const reach = (wantedA: number): number | null =>
    wantedA * ohm < driveV ? -(inductanceH / ohm) * Math.log1p((-wantedA * ohm) / driveV) : null;
  const riseS = peakHold === undefined ? null : reach(peakHold.peakA);
  const turnsBack = riseS !== null && riseS < onS;
  const one =
    peakHold !== undefined && turnsBack
      ? heldPulses({ driveV, ohm, inductanceH, riseS, peakHold, onS, spacingS })
      : sharedPulses({
          fn,
          driveV,
          resistanceOhm: injectorResistanceOhm + (alike - 1) * feedResistanceOhm,
          inductanceH,
          feedOhm: feedResistanceOhm,
          widthS: onS,
          spacingS,
        });
  const openS = openingA === undefined ? null : reach(openingA);
  const peakA = alike * one.peakA;
  const checks: Check[] = [];
  if (openingA !== undefined) {
    checks.push(
      makeCheck({
        name: 'current that lifts the needle',
        value: one.eachPeakA,
        limit: openingA,
        unit: 'A',
        sense: 'atLeast',
        source: 'given-by-caller',
        sourceStatus: 'derived',
      }),
    );
  }
  return {
    possible: true,
    dutyFraction: onS / cycleS,
    overlapCount: (onS / spacingS) * alike,
    timeConstantS: inductanceH / ohm,
    injectorA: one.eachPeakA,
    openingDelayS: openS !== null && openS <= onS ? openS : null,
    peakTimeS: turnsBack ? riseS : null,
    peakA,
    rmsA: alike * one.rmsA,
    meanA: alike * one.meanA,
    leastFeedV: supplyV - peakA * feedResistanceOhm,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? null,
  };
}

interface HeldPulses {
  readonly driveV: number;
  readonly ohm: number;
  readonly inductanceH: number;
  readonly riseS: number;
  readonly peakHold: PeakHold;
  readonly onS: number;
  readonly spacingS: number;
}

/** Sum of like pulses that rise, turn back and hold, at even spacing: Simpson's rule between all corners. */
function heldPulses({ driveV, ohm, inductanceH, riseS, peakHold, onS, spacingS }: HeldPulses) {
  const deep = Math.floor(onS / spacingS);
  /** `before`: the value on the early side of a corner, or on the late one. */
  const sum = (t: number, before: boolean): number => {
    let all = 0;
    for (let k = 0; k <= deep; k++) {
      const age = t + k * spacingS;
      const slack = 1e-12 * spacingS * (before ? 1 : -1);
      if (age < riseS + slack) all += (driveV / ohm) * -Math.expm1((-age * ohm) / inductanceH);
      else if (age < onS + slack) all += peakHold.holdA;
    }
    return all;
  };
  const corners = [0, riseS % spacingS, onS % spacingS, spacingS].sort((a, b) => a - b);
  let charge = 0;
  let squares = 0;
  let peakA = 0;
  corners.slice(1).forEach((to, i) => {
    const from = corners[i] as number;
    const n = 64;
    const h = (to - from) / n;
    if (!(h > 1e-12 * spacingS)) return;
    for (let k = 0; k <= n; k++) {
      const weight = ((k === 0 || k === n ? 1 : k % 2 === 1 ? 4 : 2) * h) / 3;
      const value = k === 0 ? sum(from, false) : k === n ? sum(to, true) : sum(from + k * h, false);
      charge += weight * value;
      squares += weight * value * value;
      peakA = Math.max(peakA, value);
    }
  });
  return { eachPeakA: peakHold.peakA, peakA, meanA: charge / spacingS, rmsA: Math.sqrt(squares / spacingS) };
}
