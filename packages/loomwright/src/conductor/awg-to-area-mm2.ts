import { gaugeAreaMm2, gaugeNumber } from './gauge.js';

/**
 * Area in mm² of a solid round wire of an AWG number. A stranded wire of the same number has about this copper
 * area (AC 43.13-1B has 17 % more at No. 18 and 10 % less at No. 12); an SAE wire of the same number has less.
 *
 * $$A_n = \frac{\pi}{4} d_n^2, \qquad d_n = 0.127\,\mathrm{mm} \cdot 92^{(36-n)/39}$$
 *
 * @param awg '4/0' … '1/0' (also '0000' … '0'), '1' … '40'
 * @returns area in mm², unrounded
 * @throws InputError for any other gauge, and for a number in place of the text
 * @source astm-b258
 * @example awgToAreaMm2('18') //=> 0.823047
 */
export function awgToAreaMm2(awg: string): number {
  return gaugeAreaMm2(gaugeNumber('awgToAreaMm2', 'awg', awg));
}
