import { InputError } from '../error/index.js';
import { needAreaMm2 } from './area.js';
import { gaugeAreaMm2, gaugeName } from './gauge.js';

/**
 * The thinnest AWG size whose solid wire has at least an area. It rounds to the larger wire, never to the smaller.
 *
 * Odd numbers from 3 to 39 are seldom sold: to choose a wire use `nearestSizes` with the table of what you can buy.
 *
 * $$A_n \ge A, \qquad A_n = \frac{\pi}{4} d_n^2$$
 *
 * @param areaMm2 wanted area in mm², at least 0.001
 * @returns the AWG number as a text; a size whose area equals the wanted one to 1 part in 10⁹ is that size; No. 40
 * for anything thinner
 * @throws InputError for an area below 0.001 mm² (the slip of m²), or above that of 4/0 (107.2 mm²)
 * @source astm-b258
 * @example areaMm2ToAwg(2.5) //=> '13'
 */
export function areaMm2ToAwg(areaMm2: number): string {
  needAreaMm2('areaMm2ToAwg', areaMm2);
  for (let n = 40; n >= -3; n--) {
    if (gaugeAreaMm2(n) >= areaMm2 * (1 - 1e-9)) return gaugeName(n);
  }
  throw new InputError('areaMm2ToAwg', 'areaMm2', 'inTable', areaMm2, 'must be at most that of 4/0, 107.2 mm²');
}
