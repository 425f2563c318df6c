import { InputError } from '../error/index.js';
import { needNoLessThan } from '../error/bounded.js';

/** A tolerance as a fraction, 0 to below 1. */
export function needTolerance(fn: string, field: string, value: number): void {
  needNoLessThan(fn, field, value);
  if (value >= 1) throw new InputError(fn, field, 'below', value, 'must be below 1', '5 % is 0.05');
}
