import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput, needOneOf } from '../error/guard.js';
import { type Interval, parallel, parallelOf, share, spread } from '../number/interval.js';
import { needTolerance } from './guard.js';

/** What a ladder of buttons hangs on. */
export interface SwitchLadderBase {
  /** Volts of the reference that the pull resistor or the buttons go to, above 0. */
  readonly supplyV: number;
  /** Pull resistor in Ω, above 0. */
  readonly pullOhm: number;
  /** Where the pull resistor goes: to the supply with buttons to ground, or the other way round. */
  readonly pullTo: 'supply' | 'ground';
  /** `separate`: each button has its own resistor. `chain`: each button taps a chain of resistors from the pin on. */
  readonly form: 'separate' | 'chain';
  /** Tolerance of the ladder's resistors, and of the pull resistor, as fractions, 0 to below 1. */
  readonly toleranceFraction: number;
  readonly pullToleranceFraction: number;
  /** Most resistance of the wire out and back in Ω, at least 0. */
  readonly wireOhm: number;
  /** Most resistance of a closed contact in Ω, at least 0: a worn or dirty one. */
  readonly contactMostOhm: number;
  /** Least resistance across the open ladder in Ω, above 0, where water may get in; null for dry. */
  readonly leakOhm: number | null;
  /** Resistor fitted at the far end in Ω, above 0, so that a broken wire differs from no button; null for none. */
  readonly idleOhm: number | null;
  /** Least volts between the worst cases of neighbours, at least 0: for the converter, noise and ground offset. */
  readonly guardV: number;
  /** Whether a wire shorted to the buttons' side must be told from the first button. */
  readonly tellShort: boolean;
  /** Whether a broken wire must be told from no button; needs `idleOhm`. */
  readonly tellOpen: boolean;
}

/** Guards of the fields that both ladder functions have. */
export function needLadderBase(fn: string, input: SwitchLadderBase): void {
  needInput(fn, input);
  needMoreThan(fn, 'supplyV', input.supplyV);
  needMoreThan(fn, 'pullOhm', input.pullOhm);
  needOneOf(fn, 'pullTo', input.pullTo, ['supply', 'ground']);
  needOneOf(fn, 'form', input.form, ['separate', 'chain']);
  needTolerance(fn, 'toleranceFraction', input.toleranceFraction);
  needTolerance(fn, 'pullToleranceFraction', input.pullToleranceFraction);
  needNoLessThan(fn, 'wireOhm', input.wireOhm);
  needNoLessThan(fn, 'contactMostOhm', input.contactMostOhm);
  if (input.leakOhm !== null) needMoreThan(fn, 'leakOhm', input.leakOhm);
  if (input.idleOhm !== null) needMoreThan(fn, 'idleOhm', input.idleOhm);
  needNoLessThan(fn, 'guardV', input.guardV);
}

const NOTHING: Interval = { low: Infinity, high: Infinity };

/** What always hangs beside the pressed button: the far-end resistor of separate buttons, and damp in the low case. */
function beside(base: SwitchLadderBase, idle: Interval): Interval {
  return parallelOf(idle, { low: base.leakOhm ?? Infinity, high: Infinity });
}

function idleOf(base: SwitchLadderBase): Interval {
  return base.idleOhm === null ? NOTHING : spread(base.idleOhm, base.toleranceFraction);
}

/**
 * Resistance in Ω that the pin sees while a button is pressed, `ohm` being its resistor or the sum of its chain; and
 * with a second one at `secondOhm` too, if given. Low corner: clean contact, short wire, damp; high corner: dirty
 * contact, long wire, dry.
 */
export function pressedOhm(base: SwitchLadderBase, ohm: number, secondOhm?: number): Interval {
  const { contactMostOhm: contact, toleranceFraction } = base;
  const closed = (r: number): Interval => {
    const own = spread(r, toleranceFraction);
    return { low: own.low, high: own.high + contact };
  };
  let seen: Interval;
  if (base.form === 'separate') {
    const buttons = secondOhm === undefined ? [closed(ohm)] : [closed(ohm), closed(secondOhm)];
    seen = parallelOf(...buttons, beside(base, idleOf(base)));
  } else {
    // The nearer button shorts the rest of the chain out; through a dirty contact the further one still helps.
    const own = spread(ohm, toleranceFraction);
    const further = secondOhm === undefined ? Infinity : (secondOhm - ohm) * (1 + toleranceFraction) + contact;
    seen = parallelOf({ low: own.low, high: own.high + parallel(contact, further) }, beside(base, NOTHING));
  }
  return { low: seen.low, high: seen.high + base.wireOhm };
}

/** The same with no button pressed; `chainOhm` is the sum of the whole chain, 0 for separate buttons. */
export function idleOhmSeen(base: SwitchLadderBase, chainOhm: number): Interval {
  const idle = idleOf(base);
  const chain = base.form === 'chain' ? spread(chainOhm, base.toleranceFraction) : { low: 0, high: 0 };
  const seen = beside(base, { low: idle.low + chain.low, high: idle.high + chain.high });
  return { low: seen.low, high: seen.high + base.wireOhm };
}

/**
 * Volts at the pin for a range of resistance on the buttons' side, counted from the buttons' side: with the pull to
 * ground the pin's volts are the supply less these.
 */
export function voltsFromSwitch(base: SwitchLadderBase, seen: Interval): Interval {
  const pull = spread(base.pullOhm, base.pullToleranceFraction);
  return { low: base.supplyV * share(pull.high, seen.low), high: base.supplyV * share(pull.low, seen.high) };
}

/** A shorted wire: nothing but the wire itself. */
export function shortVolts(base: SwitchLadderBase): Interval {
  return voltsFromSwitch(base, { low: 0, high: base.wireOhm });
}
