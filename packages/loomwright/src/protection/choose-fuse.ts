import { type NotPossible, tightestCheck } from '../check/index.js';
import { needInput } from '../error/guard.js';
import { hotResistanceOhm } from './fuse-data.js';
import { carries, type FuseCircuit, type JudgedFuse, judgeFuse, needCircuit } from './fuse-circuit.js';

import { overloadIsMet } from './overload.js';

export type { OverloadRule } from './overload.js';

/** The circuit that a fuse is wanted for. */
export type ChooseFuseInput = FuseCircuit;

/** A fuse that was chosen. */
export interface ChosenFuse extends JudgedFuse {
  readonly possible: true;
  /** Typical resistance hot in Ω, or null where no figure is known. */
  readonly hotOhm: number | null;
  /** The check with the least room. */
  readonly decidedBy: string;
  /** Key of the family. */
  readonly family: string;
}

/** The rating that comes closest where none is possible, with what it fails. */
export type NearestFuse = JudgedFuse;

/**
 * The smallest fuse of a family that carries the load and still protects the wire.
 *
 * Use it to choose; it takes the smallest rating for which every check of `checkFuse` is met. The continuous current,
 * the overload rule and the short at the far end are always judged; pulses, the wire against the longest opening,
 * interrupting rating, voltage and the fuse upstream where they are given. What is not given is listed.
 *
 * $$\frac{I}{I_n\,k_{\mathrm{amb}}} \le f_{\mathrm{cont}}, \qquad I_n \text{ or } I_2 \le c\,I_z, \qquad
 * I_{\mathrm{short}} \ge m(t)\,I_n$$
 *
 * with $I_2$ the current at which the family is sure to open (1.35 $I_n$ for blades). `strict`: $I_2 \le I_z$.
 * `iec-60364-4-43`: $I_n \le I_z$ and $I_2 \le 1.45 I_z$. `rating-at-most-ampacity`: $I_n \le I_z$ alone.
 * `us-33-cfr-183-455`: $I_n \le 1.5 I_z$, a code's bound for boats under 50 V.
 *
 * @param input family, load, wire, rule, short
 * @returns the fuse with its checks, or `possible: false` with code `no-rating-fits` and the nearest rating: the
 * smallest that carries the load
 * @throws InputError when a field is missing or out of range
 * @source fuse-selection-guides (75 % of rating); iso-8820-3 (opening times); iec-60364-4-43 (433.1, from memory);
 * us-33-cfr-183 (183.455 (c)(1))
 * @example chooseFuse({ family: bladeFuse, continuousA: 9, continuousFraction: 0.75, ambientTempC: 20, ampacityA: 25, overloadRule: 'strict', farShortA: 90, clearWithinS: 0.5 }).ratingA //=> 15
 */
export function chooseFuse(input: ChooseFuseInput): ChosenFuse | NotPossible<NearestFuse> {
  const fn = 'chooseFuse';
  needInput(fn, input);
  const share = needCircuit(fn, input);
  const { family } = input;
  let nearest: NearestFuse | null = null;
  for (const ratingA of family.ratingsA) {
    // The cheap verdicts first: most ratings are too small for the load or too large for the wire.
    if (!carries(fn, input, ratingA, share)) continue;
    if (nearest !== null && !overloadIsMet(input.overloadRule, family, ratingA, input.ampacityA)) continue;
    const judged = judgeFuse(fn, input, ratingA, share);
    if (judged.checks.every((check) => check.ok)) {
      const decidedBy = tightestCheck(judged.checks)?.name ?? '';
      return { possible: true, ...judged, hotOhm: hotResistanceOhm(family, ratingA), decidedBy, family: family.key };
    }
    // Larger ratings only help what the load asks: the first that carries it is the nearest.
    nearest ??= judged;
  }
  nearest ??= judgeFuse(fn, input, family.ratingsA.at(-1) as number, share);
  const failed = nearest.checks.filter((check) => !check.ok).map((check) => check.name);
  return {
    possible: false,
    code: 'no-rating-fits',
    because: `no rating of ${family.key} meets every limit; the nearest, ${nearest.ratingA} A, fails: ${failed.join(', ')}`,
    nearest,
  };
}
