import type { Field, NumberField, Values } from '@loomwright/worked/card';
import { fieldUnit, formatNumber, readableUnit, type UnitChoice, unitChoices } from '@loomwright/worked/quantity';

/** What stands in a field and what it means. */
export interface FieldState {
  /** The text in the input, the word chosen, or 'yes' and ''. */
  text: string;
  /** Unit in which the number is shown; '' for a pure number. */
  unit: string;
  /** Value in the core's unit, or null where the text is not one. */
  value: number | string | boolean | null;
  /** What is wrong with it, in words; '' where nothing is. */
  error: string;
}

/** The units that a field offers. */
export function unitsOf(field: NumberField): readonly UnitChoice[] {
  const unit = fieldUnit(field.name);
  return unit === null ? [] : unitChoices(unit);
}

/** A field's choice of unit by its name. */
export function unitOf(field: NumberField, unit: string): UnitChoice | undefined {
  const units = unitsOf(field);
  return units.find((choice) => choice.unit === unit) ?? units[0];
}

/** The unit in which a field's example is easiest to read. */
function readable(field: NumberField): UnitChoice | undefined {
  const unit = fieldUnit(field.name);
  return unit === null || field.example === null ? unitOf(field, '') : readableUnit(unit, field.example);
}

/** A field at its example. */
export function exampleState(field: Field): FieldState {
  if (field.kind === 'choice' || field.kind === 'text') {
    return { text: field.example, unit: '', value: field.example, error: '' };
  }
  if (field.kind === 'flag') return { text: field.example ? 'yes' : '', unit: '', value: field.example, error: '' };
  const unit = (field.unit === undefined ? readable(field) : unitOf(field, field.unit))?.unit ?? '';
  return { text: shown(field, field.example, unit), unit, value: field.example, error: '' };
}

/** A number in a unit as an input shows it. */
export function shown(field: NumberField, value: number | null, unit: string): string {
  if (value === null) return '';
  const choice = unitOf(field, unit);
  return formatNumber(choice === undefined ? value : choice.fromCore(value), { digits: 6, trim: true });
}

const PLAIN = /^[+\-−]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/**
 * Reads what was typed. A plain number is in the unit shown; anything with letters is a quantity with its own unit,
 * for which the reader of quantities is loaded then, and not before.
 */
export async function readNumber(
  field: NumberField,
  text: string,
  unit: string,
): Promise<{ value: number | null; error: string }> {
  const typed = text.trim();
  if (typed === '')
    return field.optional === true ? { value: null, error: '' } : { value: null, error: 'A number is needed here.' };
  let value: number;
  if (PLAIN.test(typed)) {
    const number = Number(typed.replace('−', '-'));
    if (!Number.isFinite(number)) return { value: null, error: 'No computer number is that large.' };
    value = unitOf(field, unit)?.toCore(number) ?? number;
  } else if (!/\d/.test(typed)) return { value: null, error: `“${typed.slice(0, 20)}” is not a number.` };
  else {
    const core = fieldUnit(field.name);
    if (core === null) return { value: null, error: `“${typed.slice(0, 20)}” is not a number.` };
    const { parseQuantity, QuantityError } = await import('./reader');
    try {
      value = parseQuantity(typed, core, field.name);
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      return { value: null, error: sentence(error.hint === '' ? `must be ${error.wanted}` : error.hint) };
    }
  }
  const error = rangeError(field, value, unit);
  return error === '' ? { value, error } : { value: null, error };
}

/** What is wrong with a number by the field's range, said in the unit that is shown. */
export function rangeError(field: NumberField, value: number, unit: string): string {
  const say = (word: string, limit: number): string =>
    `Must be ${word} ${shown(field, limit, unit)}${unit === '' ? '' : ` ${unit}`}.`;
  if (field.above !== undefined && !(value > field.above)) return say('above', field.above);
  if (field.min !== undefined && value < field.min) return say('at least', field.min);
  if (field.max !== undefined && value > field.max) return say('at most', field.max);
  return '';
}

function sentence(text: string): string {
  const end = /[.!?]$/.test(text) ? '' : '.';
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${end}`;
}

/** The values of all fields, or null where one cannot be read. */
export function valuesOf(fields: readonly Field[], states: Readonly<Record<string, FieldState>>): Values | null {
  const values: Record<string, number | string | boolean> = {};
  for (const field of fields) {
    const state = states[field.name];
    if (state === undefined || state.error !== '') return null;
    if (state.value !== null) values[field.name] = state.value;
  }
  return values;
}
