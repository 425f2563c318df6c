import { parseGauge, type Size, SIZE_WANTED } from './gauge.js';
import { parseQuantity } from './parse-quantity.js';
import { tidy } from './number-text.js';
import { QuantityError } from './quantity-error.js';

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
  if (typeof text !== 'string') throw new QuantityError(field, 'text', text, SIZE_WANTED);
  const gauge = parseGauge(text, field);
  if (gauge !== null) return gauge;
  const tidied = text.length > 100 ? '' : tidy(text);
  if (tidied === '') throw new QuantityError(field, text.length > 100 ? 'long' : 'empty', text, SIZE_WANTED);
  if (/^#?\d+(?:\/0)?(?: ?(?:ga\.?|gau?ge|swg))?$/i.test(tidied)) {
    throw new QuantityError(field, 'size', text, SIZE_WANTED, 'say which gauge it is, AWG or SAE, or write mm²');
  }
  try {
    return { areaMm2: parseQuantity(text, 'mm²', field) };
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    throw new QuantityError(field, error.rule, text, SIZE_WANTED, error.hint);
  }
}
