import type { NotPossible } from '../check/index.js';
import { needAbove, needFinite, needInput } from '../error/guard.js';
import { InputError } from '../error/index.js';

export interface MassToMoveInput {
  /** Mass of the whole vehicle in kg, above 0. */
  readonly totalMassKg: number;
  /** Wanted move of its centre of gravity in m, to the rear positive. */
  readonly shiftM: number;
  /** Where the moved mass is now, in m to the rear of any point. */
  readonly fromM: number;
  /** Where it goes, in m from the same point. */
  readonly toM: number;
}

/** A mass that makes the wanted shift. */
export interface MassToMove {
  readonly possible: true;
  /** Mass to move, in kg. */
  readonly massKg: number;
}

/**
 * How much mass must move from one place to another to shift the centre of gravity by a wanted amount.
 *
 * $$m = M\,\frac{\Delta x}{x_\mathrm{to} - x_\mathrm{from}}$$
 *
 * @param input whole mass, wanted shift, both places
 * @returns the mass in kg; `possible: false` with code `wrong-way` or `more-than-the-whole`
 * @throws InputError when a field is missing or out of range, or both places are one
 * @source faa-h-8083-25, weight shift
 * @example massToMove({ totalMassKg: 1200, shiftM: 0.02, fromM: -0.4, toM: 2.6 }).massKg //=> 8
 */
export function massToMove(input: MassToMoveInput): MassToMove | NotPossible<MassToMove> {
  needInput('massToMove', input);
  const { totalMassKg, shiftM, fromM, toM } = input;
  needAbove('massToMove', 'totalMassKg', totalMassKg);
  needFinite('massToMove', 'shiftM', shiftM);
  needFinite('massToMove', 'fromM', fromM);
  needFinite('massToMove', 'toM', toM);
  if (toM === fromM) throw new InputError('massToMove', 'toM', 'range', toM, 'must differ from fromM');
  const massKg = (totalMassKg * shiftM) / (toM - fromM);
  if (massKg < 0) {
    return {
      possible: false,
      code: 'wrong-way',
      because: 'the mass moves one way and the centre of gravity is wanted the other way',
      nearest: null,
    };
  }
  if (massKg > totalMassKg) {
    return {
      possible: false,
      code: 'more-than-the-whole',
      because: 'more than the whole vehicle would have to move: the centre cannot shift further than a mass does',
      nearest: { possible: true, massKg: totalMassKg },
    };
  }
  return { possible: true, massKg };
}
