/** A conductor metal that we know the resistivity of. */
export type Metal = 'copper' | 'tinned-copper' | 'aluminium';

/** The words of `Metal`, for guards. */
export const METALS: readonly Metal[] = ['copper', 'tinned-copper', 'aluminium'];

/** Resistivity of the annealed copper standard at 20 °C in Ω·mm²/m (NBS Handbook 100, 100 % IACS). */
export const COPPER_20 = 0.017241;
/** Resistivity of electrical aluminium at 20 °C in Ω·mm²/m (IEC 60889, 61 % IACS, from memory). */
export const ALUMINIUM_20 = 0.028264;
/** Inferred zero-resistance temperature of annealed copper, in °C below zero. */
export const COPPER_ZERO = 234.5;
/** Inferred zero-resistance temperature of aluminium, in °C below zero (IEC 60287; AC 43.13-1B uses 238.1). */
export const ALUMINIUM_ZERO = 228;

/** Resistance at a temperature over resistance at another, by the inferred-zero form. */
export function resistanceRatio(metal: Metal, fromTempC: number, toTempC: number): number {
  const zero = metal === 'aluminium' ? ALUMINIUM_ZERO : COPPER_ZERO;
  return (zero + toTempC) / (zero + fromTempC);
}
