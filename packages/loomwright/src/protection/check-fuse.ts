import { tightestCheck } from '../check/index.js';
import { needInput } from '../error/guard.js';
import { coldResistanceOhm, hotResistanceOhm, needFamily, needRating } from './fuse-data.js';
import { type FuseCircuit, type JudgedFuse, judgeFuse, needCircuit } from './fuse-circuit.js';

export interface CheckFuseInput extends FuseCircuit {
  /** Rating in A of the fuse that is there. */
  readonly ratingA: number;
}

export interface CheckFuseResult extends JudgedFuse {
  /** Whether every limit is met. */
  readonly ok: boolean;
  /** The check with the least room. */
  readonly decidedBy: string;
  /** Typical resistance in Ω hot, at rated current, and cold; null where no figure is known. */
  readonly hotOhm: number | null;
  readonly coldOhm: number | null;
  /** Key of the family. */
  readonly family: string;
}

/**
 * One fuse against its circuit: does it carry the load, and does it protect the wire?
 *
 * Use it for a fuse that is there already, or to see by how much each limit is met; `chooseFuse` takes the smallest
 * rating for which all are. It judges the continuous current, inrush and pulses, overload by a named rule, the
 * temperature that the wire reaches where the fuse may never open, the wire against the longest opening at every
 * current above that, a short at the far end, interrupting rating, rated voltage, and the fuse upstream. What is not
 * given is listed as not judged.
 *
 * $$\frac{I}{I_n k_\mathrm{amb}} \le f,\quad \int i^2 dt \le s(n)\,(I^2t)_\mathrm{melt},\quad
 * I^2 t_\mathrm{longest}(I) \le k^2 S^2,\quad \frac{I_\mathrm{short}}{I_n} \ge m(t)$$
 *
 * $$T = T_a + \frac{g\,(T_0 + T_a)}{1 - g},\qquad
 * g = \frac{T_\mathrm{class} - T_a}{T_0 + T_\mathrm{class}}\left(\frac{I}{I_z}\right)^2$$
 *
 * An overload of more than 5 s warms the copper from its class to what the insulation bears for minutes, the heat given
 * off growing with the rise:
 *
 * $$\dot T = \frac{I^2}{K^2S^2}(T_0 + T) - \frac{I_z^2}{K^2S^2}\,\frac{T_0 + T_\mathrm{class}}{T_\mathrm{class} - T_a}(T - T_a)$$
 *
 * Above the last printed current the let-through is taken not to grow (common practice): no limit is printed there.
 *
 * A fuse upstream stays whole where the bands lie apart, and above its last printed current where the let-through is
 * at most 48 % of its melting I²t, the share for 100 pulses (`selectivity`; two fuses by themselves: `fusesInRow`).
 *
 * @param input circuit and rating
 * @returns every check with its margin, all named rules of overload, let-through by current, ratios, what was not judged
 * @throws InputError when a field is missing or out of range, or the family has no re-rating and none is given
 * @source fuse-selection-guides (75 %, pulses); iso-8820-3 (opening times); iec-60364-4-43 (433.1, from memory);
 * us-33-cfr-183 (183.455 (c)(1)); iec-60949 (short-time heating)
 * @example checkFuse({ family: bladeFuse, ratingA: 30, continuousA: 20, continuousFraction: 0.75, ambientTempC: 20, ampacityA: 45, overloadRule: 'strict', farShortA: 55.5, clearWithinS: 0.5 }).farShortRatio //=> 1.85
 */
export function checkFuse(input: CheckFuseInput): CheckFuseResult {
  const fn = 'checkFuse';
  needInput(fn, input);
  const { family, ratingA } = input;
  needFamily(fn, family);
  needRating(fn, family, ratingA);
  const share = needCircuit(fn, input);
  const judged = judgeFuse(fn, input, ratingA, share);
  return {
    ok: judged.checks.every((check) => check.ok),
    decidedBy: tightestCheck(judged.checks)?.name ?? '',
    hotOhm: hotResistanceOhm(family, ratingA),
    coldOhm: coldResistanceOhm(family, ratingA),
    family: family.key,
    ...judged,
  };
}
