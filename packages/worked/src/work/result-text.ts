import { fieldUnit, formatQuantity, unitChoices } from '../quantity/index.js';
import type { WorkedResult } from './work.js';

/** A result as it is shown: rounded to the safe side, in the unit that its card asks for. */
export function resultText({ field, value }: WorkedResult): string {
  if (value === null) return '–';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  const core = fieldUnit(field.name) ?? '';
  const options = { digits: field.digits ?? 3, round: field.round, trim: field.trim === true };
  if (field.unit === undefined || field.unit === core) return formatQuantity(value, core, options);
  const choice = unitChoices(core).find(({ unit }) => unit === field.unit);
  if (choice === undefined) throw new Error(`${field.name} cannot be shown in ${field.unit}`);
  return formatQuantity(choice.fromCore(value), field.unit, { ...options, prefix: 'none' });
}
