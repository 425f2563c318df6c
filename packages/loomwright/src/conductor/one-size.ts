import { InputError } from '../error/index.js';

/** Throws unless exactly one of the three ways to name a size is given. */
export function needOneSize(
  fn: string,
  { areaMm2, awg, saeGauge }: { readonly areaMm2?: unknown; readonly awg?: unknown; readonly saeGauge?: unknown },
): void {
  const given = Number(areaMm2 !== undefined) + Number(awg !== undefined) + Number(saeGauge !== undefined);
  if (given === 1) return;
  const must = 'or awg or saeGauge must be given, one only';
  throw new InputError(fn, 'areaMm2', 'oneOfFields', given === 0 ? undefined : given, must);
}
