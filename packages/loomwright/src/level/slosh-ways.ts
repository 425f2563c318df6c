/** How readings are smoothed. */
export type SloshKind = 'first-order' | 'moving-average' | 'moving-median';

/** One setting of one kind of filter. */
export interface SloshSetting {
  readonly kind: SloshKind;
  /** Time constant of a first-order filter; null for the others. */
  readonly timeConstantS: number | null;
  /** Share of the new reading that a first-order filter takes at each sample; null for the others. */
  readonly newFraction: number | null;
  /** Samples that an average or a median is taken of; null for a first-order filter. */
  readonly sampleCount: number | null;
}

/** Angle of the slosh between two samples, in radians, at a period. */
const angle = (sampleS: number, periodS: number): number => (2 * Math.PI * sampleS) / periodS;

/** What a first-order filter leaves of a wave, exactly, at the samples: `a` is the share of the old value. */
export function firstOrderShare(a: number, sampleS: number, periodS: number): number {
  const half = Math.sin(angle(sampleS, periodS) / 2);
  return (1 - a) / Math.hypot(1 - a, 2 * Math.sqrt(a) * half);
}

/**
 * The share of the old value with which a first-order filter leaves so much of a wave; 0 where that is all of it. Its
 * square is (1 − a)² = h² ((1 − a)² + 4 a s²), so with p = 4 s² h²/(1 − h²) it is a + 1/a = 2 + p.
 */
export function firstOrderFor(share: number, sampleS: number, periodS: number): number {
  if (share >= 1) return 0;
  const half = Math.sin(angle(sampleS, periodS) / 2);
  const p = (4 * half * half * share * share) / ((1 - share) * (1 + share));
  // 1 + p/2 − √(p + p²/4), without its difference.
  return 1 / (1 + p / 2 + Math.sqrt(p + (p * p) / 4));
}

/** The most of a function that has one hump between two places. */
function hump(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 80; i++) {
    const p = low + (high - low) / 3;
    const q = high - (high - low) / 3;
    if (f(p) < f(q)) low = p;
    else high = q;
  }
  return Math.max(f(from), f(to), f((low + high) / 2));
}

/** The most that an average of n samples leaves of a wave of any period in a range. */
export function averageShare(n: number, sampleS: number, shortS: number, longS: number): number {
  const x1 = angle(sampleS, longS) / 2;
  const x2 = angle(sampleS, shortS) / 2;
  const f = (x: number): number => Math.abs(Math.sin(n * x) / (n * Math.sin(x)));
  // Humps grow lower with x, so that the first two that the range touches hold the most.
  const lobe = Math.floor((n * x1) / Math.PI);
  let most = 0;
  for (const k of [lobe, lobe + 1]) {
    const from = Math.max(x1, (k * Math.PI) / n);
    const to = Math.min(x2, ((k + 1) * Math.PI) / n);
    if (from <= to) most = Math.max(most, hump(f, from, to));
  }
  return Math.min(1, most);
}

/**
 * The most that a median over a window of an angle leaves of a wave, as the arc sine of it, in closed form: the window
 * stands so that what it has beyond whole periods lies about a crest. Straight pieces in the angle.
 */
function medianArc(window: number): number {
  const k = Math.floor(window / (2 * Math.PI));
  const rest = window - 2 * Math.PI * k;
  if (k > 0 && rest <= Math.PI / (1 + 1 / (2 * k))) return rest / (4 * k);
  return (2 * Math.PI * (k + 1) - window) / (4 * (k + 1));
}

/**
 * The most that a median of n samples leaves of a wave of any period in a range. An arc holds one sample more than its
 * length at the most, so that samples add half a step to the arc.
 */
export function medianShare(n: number, sampleS: number, shortS: number, longS: number): number {
  if (n === 1) return 1;
  const from = n * angle(sampleS, longS);
  const to = n * angle(sampleS, shortS);
  const whole = 2 * Math.PI;
  const tried = [from, to];
  for (let k = Math.floor(from / whole); k <= to / whole; k++) {
    tried.push(whole * k, whole * k + (k === 0 ? 0 : Math.PI / (1 + 1 / (2 * k))));
  }
  const arcs = tried.filter((w) => w >= from && w <= to).map((w) => medianArc(w) + w / (2 * n));
  return Math.sin(Math.min(Math.PI / 2, Math.max(...arcs)));
}

/**
 * How far a level that sways goes back up while fuel is used: what a lamp needs between on and off, lest it flickers.
 * 0 where the use outruns the sway.
 */
export function swayBack(rippleL: number, periodS: number, useLPerS: number): number {
  const omega = (2 * Math.PI) / periodS;
  const share = useLPerS / (rippleL * omega);
  if (!(share < 1)) return 0;
  return 2 * rippleL * (Math.sqrt((1 - share) * (1 + share)) - share * Math.acos(share));
}
