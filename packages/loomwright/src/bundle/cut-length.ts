import { InputError } from '../error/index.js';
import { needAbove, needAtLeast, needBetween, needInput } from '../error/guard.js';

/** Twist of a wire around its neighbours. */
export interface Twist {
  /** Length in mm along the cable in which the wire goes round once, above 0. */
  readonly pitchMm: number;
  /** Diameter in mm of the helix of the wire's middle: of a pair the diameter of one wire. Above 0. */
  readonly helixDiameterMm: number;
}

export interface CutLengthInput {
  /** Way of the wire along the loom in m, from face to face of its two terminals. At least 0. */
  readonly routeLengthM: number;
  /** Slack for bends and dressing, as a share of the route: 0 to 1. */
  readonly slackFraction: number;
  /** Insulation stripped at both ends together, in mm; that copper goes into the terminals. At least 0. */
  readonly stripMm: number;
  /** Repair loops at both ends together, in m. At least 0. */
  readonly repairLoopM: number;
  /** Twist; none unless given. */
  readonly twist?: Twist;
  /** Lengths are cut in whole steps of so many mm, rounded up; not rounded unless given. Above 0. */
  readonly cutStepMm?: number;
}

export interface CutLengthResult {
  /** Length to cut in m. */
  readonly cutLengthM: number;
  /** Length before rounding to the step, in m. */
  readonly exactLengthM: number;
  /** Length of the twisted wire over that of the cable; 1 without twist. */
  readonly twistFactor: number;
  /** What slack adds, in m. */
  readonly slackM: number;
  /** What twist adds, in m. */
  readonly twistM: number;
}

/**
 * Length to cut for one wire of a loom.
 *
 * Use it after the route was measured with a string in the vehicle, terminals in place. A wire that is cut too short
 * cannot be mended, so it rounds up only. A repair loop that lets each end be made anew twice, and a drip loop, is
 * what AC 43.13-1B asks for.
 *
 * $$l = \left[l_\mathrm{route}(1+s) + l_\mathrm{loop}\right]\sqrt{1 + \left(\frac{\pi D}{p}\right)^2} + l_\mathrm{strip}$$
 *
 * with $D$ the diameter of the helix and $p$ its pitch.
 *
 * @param input route, slack, strip, repair loop, twist, step
 * @returns metres to cut, before and after rounding, and what slack and twist add
 * @throws InputError when a field is missing or out of range
 * @source statics (length of a helix); ac-43-13-1b-dressing, 11-118 (two re-terminations an end and a drip loop)
 * @example cutLength({ routeLengthM: 3.2, slackFraction: 0.05, stripMm: 12, repairLoopM: 0.15, cutStepMm: 10 }).cutLengthM //=> 3.53
 */
export function cutLength(input: CutLengthInput): CutLengthResult {
  needInput('cutLength', input);
  const { routeLengthM, slackFraction, stripMm, repairLoopM, twist, cutStepMm } = input;
  needAtLeast('cutLength', 'routeLengthM', routeLengthM);
  needBetween(
    'cutLength',
    'slackFraction',
    slackFraction,
    0,
    1,
    slackFraction > 1 ? 'is this in per cent?' : undefined,
  );
  needAtLeast('cutLength', 'stripMm', stripMm);
  needAtLeast('cutLength', 'repairLoopM', repairLoopM);
  const twistFactor = twist === undefined ? 1 : helixFactor(twist);
  const slackM = routeLengthM * slackFraction;
  const laidM = routeLengthM + slackM + repairLoopM;
  const exactLengthM = laidM * twistFactor + stripMm / 1000;
  let cutLengthM = exactLengthM;
  if (cutStepMm !== undefined) {
    needAbove('cutLength', 'cutStepMm', cutStepMm);
    // A length that is a whole number of steps but for rounding stays at it.
    cutLengthM = (Math.ceil((exactLengthM * 1000) / cutStepMm - 1e-9) * cutStepMm) / 1000;
  }
  return { cutLengthM, exactLengthM, twistFactor, slackM, twistM: laidM * (twistFactor - 1) };
}

function helixFactor(twist: Twist): number {
  if (typeof twist !== 'object' || twist === null) {
    throw new InputError('cutLength', 'twist', 'object', twist, 'must be an object with pitchMm and helixDiameterMm');
  }
  needAbove('cutLength', 'twist.pitchMm', twist.pitchMm);
  needAbove('cutLength', 'twist.helixDiameterMm', twist.helixDiameterMm);
  const turn = (Math.PI * twist.helixDiameterMm) / twist.pitchMm;
  return Math.sqrt(1 + turn * turn);
}
