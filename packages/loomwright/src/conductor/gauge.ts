import { InputError } from '../error/index.js';

/** AWG numbers from the largest down, as written: '4/0' … '1/0', '1' … '40'. */
export const AWG_SIZES: readonly string[] = /* @__PURE__ */ (() =>
  Array.from({ length: 44 }, (_, i) => gaugeName(i - 3)))();

/** The number n of the defining formula: −3 for 4/0, 0 for 1/0, 40 for No. 40. */
export function gaugeNumber(fn: string, field: string, gauge: string): number {
  if (typeof gauge !== 'string') {
    const rule = gauge === undefined || gauge === null ? 'missing' : 'text';
    throw new InputError(fn, field, rule, gauge, "must be a text such as '18' or '4/0'");
  }
  const noughts = /^(?:([1-4])\/0|(0{1,4}))$/.exec(gauge);
  if (noughts) return 1 - (noughts[1] ? Number(noughts[1]) : (noughts[2] as string).length);
  const n = /^\d{1,2}$/.test(gauge) ? Number(gauge) : NaN;
  if (!(n >= 1 && n <= 40)) throw new InputError(fn, field, 'inTable', gauge, "must be from '4/0' to '40'");
  return n;
}

/** The gauge as our tables write it: '2/0' also for '00'. */
export function gaugeName(n: number): string {
  return n > 0 ? String(n) : `${1 - n}/0`;
}

/** Diameter in mm of AWG number n, by the ratio 92^(1/39) between neighbours (ASTM B258). */
export function gaugeDiameterMm(n: number): number {
  return 0.127 * 92 ** ((36 - n) / 39);
}

/** Area in mm² of AWG number n. */
export function gaugeAreaMm2(n: number): number {
  return (Math.PI / 4) * gaugeDiameterMm(n) ** 2;
}
