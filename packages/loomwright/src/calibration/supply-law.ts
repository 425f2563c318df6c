/** What a device takes at some volts: a line from nought up to a bend, and another one from there on. */
export interface DrawLaw {
  readonly bendV: number;
  /** Current a volt in A, below the bend and above it. */
  readonly lowAPerV: number;
  readonly highAPerV: number;
}

/** How a pin or a regulator guards itself. */
export type SupplyLimiter =
  /** Never gives more, and lets the volts fall. */
  | { readonly kind: 'constant'; readonly mostA: number }
  /** Gives less and less as the volts fall: so much at full volts, so much into a short. */
  | { readonly kind: 'foldback'; readonly kneeA: number; readonly shortA: number }
  /** Switches off and stays off. */
  | { readonly kind: 'off'; readonly tripA: number };

/** A pin with what hangs on it. */
export interface PinNet {
  readonly limiter: SupplyLimiter | null;
  readonly laws: readonly DrawLaw[];
}

/** Current of all laws at some volts. */
export function drawnA(laws: readonly DrawLaw[], voltageV: number): number {
  let sum = 0;
  for (const { bendV, lowAPerV, highAPerV } of laws) {
    sum += lowAPerV * Math.min(voltageV, bendV) + highAPerV * Math.max(voltageV - bendV, 0);
  }
  return sum;
}

/** Most that a limiter lets through while its output stands at some volts. */
function mostA(limiter: Exclude<SupplyLimiter, { kind: 'off' }>, supplyV: number, voltageV: number): number {
  if (limiter.kind === 'constant') return limiter.mostA;
  const { kneeA, shortA } = limiter;
  return shortA + (kneeA - shortA) * Math.min(voltageV / supplyV, 1);
}

/**
 * Where volts come to rest that fall from the top: the first place from above where no more is drawn than is given. The
 * balance is a straight line between two neighbouring bends, and may jump at them. 0 where it never rests before.
 */
export function restV(balanceA: (voltageV: number) => number, topV: number, bendsV: readonly number[]): number {
  if (balanceA(topV) <= 0) return topV;
  const ends = [...new Set([topV, ...bendsV.filter((v) => v > 0 && v < topV), 0])].sort((a, b) => b - a);
  for (let i = 0; i + 1 < ends.length; i++) {
    const high = ends[i] as number;
    const low = ends[i + 1] as number;
    const third = (high - low) / 3;
    const upper = balanceA(high - third);
    const slope = upper - balanceA(low + third);
    if (upper + slope <= 0) return high;
    // The value just above the lower end, from two places inside: at the end itself it may have jumped.
    if (upper - 2 * slope <= 0) return high - third - (third * upper) / slope;
  }
  return 0;
}

/** Bends of laws. */
export function bendsOf(laws: readonly DrawLaw[]): readonly number[] {
  return laws.map(({ bendV }) => bendV);
}

/** Volts of a pin whose rail stands at some volts. */
export function pinVolts({ limiter, laws }: PinNet, supplyV: number, railV: number): number {
  if (limiter === null) return railV;
  if (limiter.kind === 'off') return drawnA(laws, railV) <= limiter.tripA ? railV : 0;
  return restV((v) => drawnA(laws, v) - mostA(limiter, supplyV, v), railV, [...bendsOf(laws), supplyV]);
}

/** Volts at which a pin begins or ends to be limited: there its current bends or jumps. */
function pinBends({ limiter, laws }: PinNet, supplyV: number, topV: number): readonly number[] {
  const bends = bendsOf(laws);
  if (limiter === null) return bends;
  const over = (v: number): number =>
    drawnA(laws, v) - (limiter.kind === 'off' ? limiter.tripA : mostA(limiter, supplyV, v));
  const ends = [...new Set([0, ...bends, supplyV, topV])].filter((v) => v <= topV).sort((a, b) => a - b);
  const crossings = ends.slice(1).flatMap((high, i) => {
    const low = ends[i] as number;
    const [a, b] = [over(low), over(high)];
    return a < 0 === b < 0 ? [] : [low + ((high - low) * a) / (a - b)];
  });
  return [...bends, supplyV, ...crossings];
}

/** What pins and the controller itself take from a rail at some volts. */
export function railA(pins: readonly PinNet[], own: DrawLaw, supplyV: number, railV: number): number {
  return pins.reduce((sum, pin) => sum + drawnA(pin.laws, pinVolts(pin, supplyV, railV)), drawnA([own], railV));
}

/** Volts up to a top at which what the rail gives bends or jumps. */
export function railBends(pins: readonly PinNet[], own: DrawLaw, supplyV: number, topV: number): readonly number[] {
  return [own.bendV, supplyV, ...pins.flatMap((pin) => pinBends(pin, supplyV, topV))];
}

/** Volts of the rail, fed by its regulator. */
export function railVolts(pins: readonly PinNet[], own: DrawLaw, limiter: SupplyLimiter, supplyV: number): number {
  if (limiter.kind === 'off') return railA(pins, own, supplyV, supplyV) <= limiter.tripA ? supplyV : 0;
  const balance = (v: number): number => railA(pins, own, supplyV, v) - mostA(limiter, supplyV, v);
  return restV(balance, supplyV, railBends(pins, own, supplyV, supplyV));
}
