/** Which kind of rule an input broke. */
export type InputRule =
  | 'object'
  | 'missing'
  | 'number'
  | 'finite'
  | 'above'
  | 'atLeast'
  | 'below'
  | 'atMost'
  | 'integer'
  | 'text'
  | 'list'
  | 'oneOf'
  | 'oneOfFields'
  | 'inTable'
  | 'order'
  | 'range';

/**
 * Bad input. Recognise it by `code === 'LOOMWRIGHT_INPUT'`, not by class: two copies of a library have two classes.
 *
 * `fn` is the function that was called, `field` the field at fault (dotted and bracketed inside lists:
 * `outPath[2].lengthM`), `rule` the kind of rule broken and `value` what was given.
 */
export class InputError extends Error {
  // Declared, and set below: fields of a class cost every bundle their names once more.
  declare readonly code: 'LOOMWRIGHT_INPUT';
  declare readonly fn: string;
  declare readonly field: string;
  declare readonly rule: InputRule;
  declare readonly value: unknown;

  constructor(fn: string, field: string, rule: InputRule, value: unknown, must: string, hint = '') {
    super(`${fn}: ${field} ${must}, got ${shown(value)}${hint && `: ${hint}`}`);
    Object.assign(this, { name: 'InputError', code: 'LOOMWRIGHT_INPUT', fn, field, rule, value });
  }
}

/** A value as an error message shows it: short, and never throwing. */
function shown(value: unknown): string {
  if (typeof value === 'string') return value.length > 40 ? `'${value.slice(0, 37)}…'` : `'${value}'`;
  if (value === undefined) return 'nothing';
  if (typeof value === 'object' && value !== null) return Array.isArray(value) ? 'a list' : 'an object';
  if (typeof value === 'function') return 'a function';
  return String(value);
}
