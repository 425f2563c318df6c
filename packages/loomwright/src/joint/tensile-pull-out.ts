import { needAreaMm2 } from '../conductor/area.js';
import { needAbove, needBetween, needInput } from '../error/guard.js';

export interface TensilePullOutInput {
  /** Conductor area in mm², at least 0.001. */
  readonly areaMm2: number;
  /** Tensile strength of the conductor in N/mm², above 0: about 230 for annealed copper. */
  readonly tensileNPerMm2: number;
  /** Share of the wire's strength that the crimp must reach, up to 1; 0.6 by NASA-STD-8739.4. */
  readonly shareFraction: number;
}

export interface TensilePullOutResult {
  /** Least force that the crimp must hold, in N. */
  readonly pullOutN: number;
  /** Force at which the wire itself breaks, in N. */
  readonly wireBreaksN: number;
}

/**
 * Force that a crimp must hold, as a share of what the wire bears.
 *
 * Use it for a wire and terminal that no table lists.
 *
 * $$F = s\,\sigma\,A$$
 *
 * @param input area, tensile strength, share
 * @returns newtons for the crimp and for the wire itself
 * @throws InputError when a field is missing or out of range
 * @source nasa-std-8739-4 (60 % for a combination that is not tabulated)
 * @example tensilePullOut({ areaMm2: 0.519, tensileNPerMm2: 230, shareFraction: 0.6 }).pullOutN //=> 71.622
 */
export function tensilePullOut(input: TensilePullOutInput): TensilePullOutResult {
  needInput('tensilePullOut', input);
  const { areaMm2, tensileNPerMm2, shareFraction } = input;
  needAreaMm2('tensilePullOut', areaMm2);
  needAbove('tensilePullOut', 'tensileNPerMm2', tensileNPerMm2);
  needBetween('tensilePullOut', 'shareFraction', shareFraction, 0.01, 1);
  const wireBreaksN = tensileNPerMm2 * areaMm2;
  return { pullOutN: shareFraction * wireBreaksN, wireBreaksN };
}
