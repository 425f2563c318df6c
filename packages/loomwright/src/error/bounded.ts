import { InputError } from './input-error.js';
import { needAbove, needAtLeast, needFinite } from './guard.js';

// Guards for quantities of any unit that are multiplied, squared and divided: within 24 decades no result of a
// formula runs out of numbers, and nothing on a vehicle lies outside.

const MOST = 1e12;
const LEAST = 1e-12;

/** Throws for what is finite but larger than anything on a vehicle. */
function notHuge(fn: string, field: string, value: number): void {
  if (Math.abs(value) > MOST) throw new InputError(fn, field, 'range', value, 'must be at most 1e12');
}

/** A quantity above a limit (0 unless given), at least 1e−12 and at most 1e12: it may be divided by. */
export function needMoreThan(fn: string, field: string, value: number, limit = 0, hint?: string): void {
  needAbove(fn, field, value, limit, hint);
  notHuge(fn, field, value);
  if (value < LEAST) {
    throw new InputError(fn, field, 'range', value, 'must be at least 1e-12', 'is this in another unit?');
  }
}

/** A quantity at or above a limit (0 unless given) and at most 1e12. */
export function needNoLessThan(fn: string, field: string, value: number, limit = 0, hint?: string): void {
  needAtLeast(fn, field, value, limit, hint);
  notHuge(fn, field, value);
}

/** A quantity of either sign, at most 1e12 in size. */
export function needEarthly(fn: string, field: string, value: number): void {
  needFinite(fn, field, value);
  notHuge(fn, field, value);
}
