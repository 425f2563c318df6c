// Interval arithmetic for resistances and volts. An expression that names each quantity once gives its exact range;
// one that names a quantity twice gives a range that is too wide, so write it so that each appears once.

/** A closed range of a quantity. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** A value with a relative tolerance on both sides. */
export function spread(value: number, toleranceFraction: number): Interval {
  const a = value * (1 - toleranceFraction);
  const b = value * (1 + toleranceFraction);
  return a <= b ? { low: a, high: b } : { low: b, high: a };
}

/** The product of two ranges. */
export function productOf(p: Interval, q: Interval): Interval {
  const all = [p.low * q.low, p.low * q.high, p.high * q.low, p.high * q.high];
  return { low: Math.min(...all), high: Math.max(...all) };
}

/** Resistances in parallel. Infinity stands for a part that is not there; each range is at or above 0. */
export function parallelOf(...parts: readonly Interval[]): Interval {
  return { low: parallel(...parts.map((p) => p.low)), high: parallel(...parts.map((p) => p.high)) };
}

/** Resistances in parallel; Infinity for none, 0 where one of them is 0. */
export function parallel(...resistances: readonly number[]): number {
  let conductance = 0;
  for (const r of resistances) conductance += 1 / r;
  return 1 / conductance;
}

/**
 * The share lower ÷ (upper + lower) of two resistances, each in its range, neither below 0 and not both 0.
 * Written as 1 ÷ (1 + upper ÷ lower) it names each once, so the range is exact.
 */
export function shareOf(upper: Interval, lower: Interval): Interval {
  return { low: share(upper.high, lower.low), high: share(upper.low, lower.high) };
}

/** lower ÷ (upper + lower), at its limits where one of them is 0 or Infinity. */
export function share(upper: number, lower: number): number {
  if (lower === 0 || upper === Infinity) return 0;
  return upper === 0 || lower === Infinity ? 1 : lower / (upper + lower);
}
