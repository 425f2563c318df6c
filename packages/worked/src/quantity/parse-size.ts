import { parseQuantity } from './parse-quantity.js';
import { tidy } from './number-text.js';
import { QuantityError } from './quantity-error.js';

/** A conductor's size: exactly one of the three. Gauges are no linear units and are never turned into one another. */
export type Size = { readonly awg: string } | { readonly saeGauge: string } | { readonly areaMm2: number };

const WANTED = "a size such as '2.5 mm²', '14 AWG' or 'SAE 14'";

/**
 * A conductor size as people write it, as the field that the core takes it in.
 *
 * `14 AWG`, `AWG 14`, `4/0 AWG`, `0000 AWG` are American wire gauge; `SAE 14`, `14 SAE` are the smaller gauges of
 * vehicle cable; `2.5 mm²`, `2.5 mm2`, `250 kcmil` are areas. `14` alone and `14 ga` are refused: AWG 14 and SAE 14
 * differ by 11 %.
 *
 * @param text what was written
 * @param field name of the field, for the error; `size` unless given
 * @returns `{ awg }`, `{ saeGauge }` or `{ areaMm2 }`; 0000 is written '4/0'
 * @throws QuantityError for anything else, and for a gauge outside 4/0 to 40
 * @example parseSize('AWG 4/0') //=> { awg: '4/0' }
 */
export function parseSize(text: string, field = 'size'): Size {
  if (typeof text !== 'string') throw new QuantityError(field, 'text', text, WANTED);
  const gauge = parseGauge(text, field);
  if (gauge !== null) return gauge;
  const tidied = text.length > 100 ? '' : tidy(text);
  if (tidied === '') throw new QuantityError(field, text.length > 100 ? 'long' : 'empty', text, WANTED);
  if (/^#?\d+(?:\/0)?(?: ?(?:ga\.?|gau?ge|swg))?$/i.test(tidied)) {
    throw new QuantityError(field, 'size', text, WANTED, 'say which gauge it is, AWG or SAE, or write mm²');
  }
  try {
    return { areaMm2: parseQuantity(text, 'mm²', field) };
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    throw new QuantityError(field, error.rule, text, WANTED, error.hint);
  }
}

/** A gauge with its name, or null where the text has none. Throws for a gauge that does not exist. */
export function parseGauge(text: string, field: string): Exclude<Size, { readonly areaMm2: number }> | null {
  if (text.length > 100) return null;
  const tidied = tidy(text);
  const found =
    /^(AWG|SAE)[ -]?(?:#|No\.?)? ?(\d+(?: ?\/ ?0)?)$/i.exec(tidied) ??
    /^(?:#|No\.?)? ?(\d+(?: ?\/ ?0)?)[ -]?(AWG|SAE)$/i.exec(tidied);
  if (found === null) return null;
  const [, first = '', second = ''] = found;
  const sae = /sae/i.test(`${first}${second}`);
  const number = plainGauge(/^\D/.test(first) ? second : first);
  if (number === null) {
    throw new QuantityError(field, 'size', text, WANTED, `gauges go from 4/0 to ${sae ? '22' : '40'}`);
  }
  return sae ? { saeGauge: number } : { awg: number };
}

/** A gauge number in its one spelling, '4/0' … '40', or null. */
export function plainGauge(text: string): string | null {
  const digits = text.replace(/ /g, '');
  const noughts = /^0{1,4}$/.test(digits) ? `${digits.length}/0` : digits;
  if (/^[1-4]\/0$/.test(noughts)) return noughts;
  return /^\d{1,2}$/.test(noughts) && Number(noughts) >= 1 && Number(noughts) <= 40 ? String(Number(noughts)) : null;
}
