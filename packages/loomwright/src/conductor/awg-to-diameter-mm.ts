import { gaugeDiameterMm, gaugeNumber } from './gauge.js';

/**
 * Diameter in mm of a solid round wire of an AWG number. A stranded wire of the same number is thicker: use the
 * bundle and joint functions or the maker's figure for what has to fit through a hole or a seal.
 *
 * $$d_n = 0.127\,\mathrm{mm} \cdot 92^{(36-n)/39}$$
 *
 * with $n$ = 0, −1, −2, −3 for 1/0, 2/0, 3/0, 4/0.
 *
 * @param awg '4/0' … '1/0' (also '0000' … '0'), '1' … '40'
 * @returns diameter in mm, unrounded
 * @throws InputError for any other gauge, and for a number in place of the text
 * @source astm-b258
 * @example awgToDiameterMm('12') //=> 2.05253
 */
export function awgToDiameterMm(awg: string): number {
  return gaugeDiameterMm(gaugeNumber('awgToDiameterMm', 'awg', awg));
}
