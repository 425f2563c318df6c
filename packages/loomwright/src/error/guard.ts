import { InputError } from './input-error.js';

// The guards of the house. Each takes the function's name, the field's name and the value; each throws an
// InputError or returns nothing. The happy path is one or two comparisons, so that a formula stays fast.

/** The one argument must be an object. */
export function needInput(fn: string, input: unknown): void {
  if (typeof input !== 'object' || input === null || Array.isArray(input)) {
    throw new InputError(fn, 'input', 'object', input, 'must be an object with named fields');
  }
}

/** A part of the input, or an entry of a list, must be an object. `must` says which, `hint` how to come by one. */
export function needObject(
  fn: string,
  field: string,
  value: unknown,
  must = 'must be an object with named fields',
  hint?: string,
): void {
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) return;
  throw new InputError(fn, field, value === undefined ? 'missing' : 'object', value, must, hint);
}

/** A rule that is handed in must be a function; `names` are those that fit. */
export function needFunction(fn: string, field: string, value: unknown, names: string): void {
  if (typeof value === 'function') return;
  const rule = value === undefined ? 'missing' : 'object';
  throw new InputError(fn, field, rule, value, 'must be a function', `hand in ${names}`);
}

/** Throws for what is not a finite number: the shared slow path of the guards below. */
function notFinite(fn: string, field: string, value: unknown): void {
  if (value === undefined || value === null) throw new InputError(fn, field, 'missing', value, 'is required');
  if (typeof value !== 'number') {
    throw new InputError(fn, field, 'number', value, 'must be a number, without its unit');
  }
  if (!Number.isFinite(value)) throw new InputError(fn, field, 'finite', value, 'must be a finite number');
}

/** Any finite number. */
export function needFinite(fn: string, field: string, value: number): void {
  if (typeof value !== 'number' || !(value - value === 0)) notFinite(fn, field, value);
}

/** A finite number above a limit (0 unless given). `hint` names the likely slip. */
export function needAbove(fn: string, field: string, value: number, limit = 0, hint?: string): void {
  if (!(value > limit && value < Infinity) || typeof value !== 'number') {
    notFinite(fn, field, value);
    throw new InputError(fn, field, 'above', value, `must be above ${limit}`, hint);
  }
}

/** A finite number at or above a limit (0 unless given). */
export function needAtLeast(fn: string, field: string, value: number, limit = 0, hint?: string): void {
  if (!(value >= limit && value < Infinity) || typeof value !== 'number') {
    notFinite(fn, field, value);
    throw new InputError(fn, field, 'atLeast', value, `must be at least ${limit}`, hint);
  }
}

/** A finite number within a closed range. */
export function needBetween(fn: string, field: string, value: number, low: number, high: number, hint?: string): void {
  if (!(value >= low && value <= high) || typeof value !== 'number') {
    notFinite(fn, field, value);
    needAtLeast(fn, field, value, low, hint);
    throw new InputError(fn, field, 'atMost', value, `must be at most ${high}`, hint);
  }
}

/** A whole number at or above a limit. */
export function needInteger(fn: string, field: string, value: number, limit = 0): void {
  needAtLeast(fn, field, value, limit);
  if (!Number.isSafeInteger(value)) throw new InputError(fn, field, 'integer', value, 'must be a whole number');
}

/** A Celsius temperature above absolute zero and below what any of our materials stands. */
export function needTempC(fn: string, field: string, value: number): void {
  needBetween(fn, field, value, -273.15, 2000, value > 2000 ? 'is this in another unit?' : 'below absolute zero');
}

/** A conductor temperature: −100 to 400 °C, where the resistance of our metals is a straight line. */
export function needConductorTempC(fn: string, field: string, value: number): void {
  needBetween(fn, field, value, -100, 400);
}

/** One of a list of words. */
export function needOneOf(fn: string, field: string, value: string, words: readonly string[]): void {
  if (!words.includes(value)) {
    if (value === undefined || value === null) {
      throw new InputError(fn, field, 'missing', value, `is required: one of ${words.join(', ')}`);
    }
    throw new InputError(fn, field, 'oneOf', value, `must be one of ${words.join(', ')}`);
  }
}

/** A list with at least so many entries, none of them left out: `forEach` would pass over a hole. */
export function needList(fn: string, field: string, value: readonly unknown[], atLeast = 0): void {
  if (!Array.isArray(value)) {
    throw new InputError(fn, field, value === undefined ? 'missing' : 'list', value, 'must be a list');
  }
  if (value.length < atLeast) {
    throw new InputError(
      fn,
      field,
      'list',
      value,
      `must have at least ${atLeast} ${atLeast === 1 ? 'entry' : 'entries'}`,
    );
  }
  if (value.includes(undefined)) notFinite(fn, `${field}[${value.findIndex((each) => each === undefined)}]`, undefined);
}

/** True or false. */
export function needFlag(fn: string, field: string, value: boolean): void {
  if (typeof value === 'boolean') return;
  throw new InputError(fn, field, value === undefined ? 'missing' : 'oneOf', value, 'must be true or false');
}

/** A name that none of those before it has; it is added to them. */
export function needOwnName(fn: string, field: string, name: string, names: Set<string>): void {
  needText(fn, field, name);
  if (names.has(name)) throw new InputError(fn, field, 'order', name, 'must be a name of its own', 'it stands twice');
  names.add(name);
}

/** A non-empty text. */
export function needText(fn: string, field: string, value: string): void {
  if (typeof value !== 'string' || value === '') {
    throw new InputError(fn, field, value === undefined ? 'missing' : 'text', value, 'must be a text');
  }
}
