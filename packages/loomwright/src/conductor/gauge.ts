import { InputError } from '../error/index.js';
import { needAbove } from '../error/guard.js';

/** AWG numbers from the largest down, as written: '4/0' … '1/0', '1' … '40'. */
export const AWG_SIZES: readonly string[] = /* @__PURE__ */ (() => [
  '4/0',
  '3/0',
  '2/0',
  '1/0',
  ...Array.from({ length: 40 }, (_, i) => String(i + 1)),
])();

/** The number n of the defining formula: −3 for 4/0, 0 for 1/0, 40 for No. 40. */
function gaugeNumber(fn: string, awg: string): number {
  if (typeof awg !== 'string') {
    throw new InputError(
      fn,
      'awg',
      awg === undefined ? 'missing' : 'text',
      awg,
      "must be a text such as '18' or '4/0'",
    );
  }
  const noughts = /^(?:([1-4])\/0|(0{1,4}))$/.exec(awg);
  if (noughts) return 1 - (noughts[1] ? Number(noughts[1]) : (noughts[2] as string).length);
  const n = /^\d{1,2}$/.test(awg) ? Number(awg) : NaN;
  if (!(n >= 1 && n <= 40)) throw new InputError(fn, 'awg', 'inTable', awg, "must be from '4/0' to '40'");
  return n;
}

/**
 * Diameter in mm of a solid round wire of an AWG number.
 *
 * $$d_n = 0.127\,\mathrm{mm} \cdot 92^{(36-n)/39}$$
 *
 * @param awg '4/0' … '1/0' (also '0000' … '0'), '1' … '40'
 * @returns diameter in mm, unrounded
 * @throws InputError for any other gauge
 * @source astm-b258
 * @example awgToDiameterMm('12') //=> 2.05253
 */
export function awgToDiameterMm(awg: string): number {
  return 0.127 * 92 ** ((36 - gaugeNumber('awgToDiameterMm', awg)) / 39);
}

/**
 * Area in mm² of a solid round wire of an AWG number. A stranded wire of the same number has about this copper
 * area; an SAE wire of the same number has less.
 *
 * $$A_n = \frac{\pi}{4} d_n^2$$
 *
 * @param awg '4/0' … '1/0' (also '0000' … '0'), '1' … '40'
 * @returns area in mm², unrounded
 * @throws InputError for any other gauge
 * @source astm-b258
 * @example awgToAreaMm2('18') //=> 0.822958
 */
export function awgToAreaMm2(awg: string): number {
  const d = 0.127 * 92 ** ((36 - gaugeNumber('awgToAreaMm2', awg)) / 39);
  return (Math.PI / 4) * d * d;
}

/**
 * The thinnest AWG size with at least an area. It rounds to the larger wire, never to the smaller.
 *
 * @param areaMm2 wanted area in mm², above 0
 * @returns the AWG number as a text; a size whose area equals the wanted one to 1 part in 10⁹ is that size
 * @throws InputError for an area that is not above 0, or above that of 4/0 (107.2 mm²)
 * @source astm-b258
 * @example areaMm2ToAwg(2.5) //=> '12'
 */
export function areaMm2ToAwg(areaMm2: number): string {
  needAbove('areaMm2ToAwg', 'areaMm2', areaMm2);
  for (let i = AWG_SIZES.length - 1; i >= 0; i--) {
    const awg = AWG_SIZES[i] as string;
    if (awgToAreaMm2(awg) >= areaMm2 * (1 - 1e-9)) return awg;
  }
  throw new InputError('areaMm2ToAwg', 'areaMm2', 'inTable', areaMm2, 'must be at most that of 4/0, 107.2 mm²');
}
