/** Which kind of mistake a quantity has. */
export type QuantityRule =
  | 'text'
  | 'empty'
  | 'long'
  | 'number'
  | 'comma'
  | 'magnitude'
  | 'unit'
  | 'unknownUnit'
  | 'ambiguous'
  | 'dimension'
  | 'size'
  | 'table'
  | 'twice'
  | 'depth';

/**
 * A quantity that cannot be read. Recognise it by `code === 'LOOMWRIGHT_QUANTITY'`, not by class.
 *
 * `field` is the field at fault (`outParts[2].lengthM`), `rule` the kind of mistake, `given` what was given, `wanted`
 * what the field takes, `hint` how to put it right ('' where nothing can be said).
 */
export class QuantityError extends Error {
  readonly code: 'LOOMWRIGHT_QUANTITY' = 'LOOMWRIGHT_QUANTITY';
  readonly field: string;
  readonly rule: QuantityRule;
  readonly given: unknown;
  readonly wanted: string;
  readonly hint: string;

  constructor(field: string, rule: QuantityRule, given: unknown, wanted: string, hint = '') {
    super(`${field} must be ${wanted}, got ${shown(given)}${hint && `: ${hint}`}`);
    this.name = 'QuantityError';
    this.field = field;
    this.rule = rule;
    this.given = given;
    this.wanted = wanted;
    this.hint = hint;
  }
}

/** A value as an error message shows it: short, on one line, and never throwing. */
function shown(value: unknown): string {
  if (typeof value === 'string') {
    const line = value.slice(0, 60).replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, ' ');
    return line.length > 40 || value.length > 60 ? `'${line.slice(0, 37)}…'` : `'${line}'`;
  }
  if (value === undefined) return 'nothing';
  if (typeof value === 'object' && value !== null) return Array.isArray(value) ? 'a list' : 'an object';
  if (typeof value === 'function') return 'a function';
  return String(value);
}
