import { tidy } from './number-text.js';
import { QuantityError } from './quantity-error.js';

/** A conductor's size: exactly one of the three. Gauges are no linear units and are never turned into one another. */
export type Size = { readonly awg: string } | { readonly saeGauge: string } | { readonly areaMm2: number };

/** What a size looks like, for errors. */
export const SIZE_WANTED = "a size such as '2.5 mm²', '14 AWG' or 'SAE 14'";

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
    throw new QuantityError(field, 'size', text, SIZE_WANTED, `gauges go from 4/0 to ${sae ? '22' : '40'}`);
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
