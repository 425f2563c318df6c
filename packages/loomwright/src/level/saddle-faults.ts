import { lobeOhm, pairOhm } from './saddle-split.js';
import type { SaddleTankInput } from './saddle-tank.js';
import { crossing, mostAlong, type Place } from './saddle-way.js';

/** One thing that breaks, on the way from full to empty. */
export interface SaddleFault {
  readonly kind:
    | 'sender-open'
    | 'sender-shorted'
    | 'wire-open'
    | 'wire-to-ground'
    | 'wire-to-battery'
    | 'between-to-ground'
    | 'between-to-battery';
  /** The side whose sender or wire it is; both for a wire that both share. */
  readonly side: 'left' | 'right' | 'both';
  /** Whether an input leaves the healthy range by the guard: at every level, at some, at none. */
  readonly seen: 'always' | 'sometimes' | 'never';
  /** Where it is not told: most litres shown that are not there, and most that are there and not shown. */
  readonly mostOverL: number;
  readonly mostUnderL: number;
  /** Most heat in the tank in W: of a wire on the battery; null where that is unlimited, 0 for all else. */
  readonly tankW: number | null;
}

interface Tank {
  readonly input: SaddleTankInput;
  readonly way: (u: number) => Place;
  /** Places between which litres are straight along the way. */
  readonly cuts: readonly number[];
  /** Where what is shown bends, by the ohms that one wire has along a way. */
  readonly bends: (ohmAt: (u: number) => number, end: number) => readonly number[];
  readonly litres: (l: number, r: number) => number;
  readonly pinOf: (ohm: number) => number;
  readonly shownL: (ohms: readonly number[]) => number;
  readonly lowestPinV: number;
  readonly highestPinV: number;
}

/** The way from full to empty ends here. */
const END = 3;

/** What each input sees: Ω up to the tank's end of the wire, or volts that no sender gives. */
type Seen = { readonly ohm: number } | { readonly v: number };
type Cause = Pick<SaddleFault, 'kind' | 'side'>;

/** Every single fault of senders and wires. */
export function saddleFaults(tank: Tank): readonly SaddleFault[] {
  const sides = ['left', 'right'] as const;
  const each = (kind: SaddleFault['kind']): readonly Cause[] => sides.map((side) => ({ kind, side }));
  const wires = ['wire-open', 'wire-to-ground', 'wire-to-battery'] as const;
  const causes: readonly Cause[] = [
    ...each('sender-open'),
    ...each('sender-shorted'),
    ...wires.flatMap((kind): readonly Cause[] =>
      tank.input.wiring === 'two-inputs' ? each(kind) : [{ kind, side: 'both' }],
    ),
    ...(tank.input.wiring === 'series'
      ? (['between-to-ground', 'between-to-battery'] as const).map((kind): Cause => ({ kind, side: 'both' }))
      : []),
  ];
  return causes.map((cause) => judge(tank, cause));
}

function judge(
  { input, way, cuts, bends, litres, pinOf, shownL, lowestPinV, highestPinV }: Tank,
  cause: Cause,
): SaddleFault {
  const { biasV, biasOhm, fixedOhm, guardV } = input;
  const ohmsAt = (u: number): Place => {
    const [l, r] = way(u);
    return [lobeOhm(input.left, l), lobeOhm(input.right, r)];
  };
  const voltsOf = (seen: Seen): number => ('v' in seen ? seen.v : seen.ohm === Infinity ? biasV : pinOf(seen.ohm));
  const seenAt = (u: number): readonly Seen[] => seenBy(input, cause, ...ohmsAt(u));
  // Volts that no sender gives are read as the ohms that would give them.
  const readAt = (u: number): readonly number[] =>
    seenAt(u).map((seen) => {
      if ('ohm' in seen && seen.ohm < Infinity) return seen.ohm;
      const v = voltsOf(seen);
      return v >= biasV ? Number.MAX_VALUE : (v * biasOhm) / (biasV - v) - fixedOhm;
    });
  const overAt = (u: number): number => shownL(readAt(u)) - litres(...way(u));
  /** −1 and 1: told by an input below or above the healthy range; 0: not told. */
  const toldAt = (u: number): number => {
    const sides = seenAt(u)
      .map(voltsOf)
      .map((v) => Number(v > highestPinV + guardV) - Number(v < lowestPinV - guardV));
    return sides.find((side) => side !== 0) ?? 0;
  };
  // What a fault does to an input only rises or only falls along the way, so both ends tell where it is told.
  const [atFull, atEmpty] = [toldAt(0), toldAt(END)];
  const always = atFull !== 0 && atFull === atEmpty;
  const most = (sign: 1 | -1): number => {
    if (always) return 0;
    const from = atFull === 0 ? 0 : crossing(toldAt, atFull / 2, END);
    const to = atEmpty === 0 ? END : crossing(toldAt, atEmpty / 2, END);
    const bent = [...cuts, ...bends((u) => readAt(u)[0] as number, END)].filter((u) => u > from && u < to);
    return Math.max(
      0,
      mostAlong([from, ...bent, to], (u) => sign * overAt(u)),
    );
  };
  const heatAt = (u: number): number | null => heat(input, cause, ...ohmsAt(u));
  return {
    ...cause,
    seen: always ? 'always' : atFull !== 0 || atEmpty !== 0 ? 'sometimes' : 'never',
    mostOverL: most(1),
    mostUnderL: most(-1),
    tankW: cuts.some((u) => heatAt(u) === null) ? null : mostAlong(cuts, heatAt as (u: number) => number),
  };
}

function seenBy(input: SaddleTankInput, { kind, side }: Cause, left: number, right: number): readonly Seen[] {
  const { wiring, biasV, biasOhm, fixedOhm, faultV } = input;
  const own = (which: 'left' | 'right', ohm: number): number =>
    side !== which ? ohm : kind === 'sender-open' ? Infinity : kind === 'sender-shorted' ? 0 : ohm;
  const wire = (healthy: Seen): Seen => {
    if (kind === 'wire-open') return { ohm: Infinity };
    if (kind === 'wire-to-ground') return { v: 0 };
    return kind === 'wire-to-battery' ? { v: faultV } : healthy;
  };
  const l = own('left', left);
  const r = own('right', right);
  if (wiring === 'two-inputs') {
    return (['left', 'right'] as const).map((which) => {
      const healthy = { ohm: which === 'left' ? l : r };
      return side === which ? wire(healthy) : healthy;
    });
  }
  // In series the wire comes to the left sender, which goes on to the right one and to ground.
  if (kind === 'between-to-ground') return [{ ohm: l }];
  if (kind === 'between-to-battery') {
    return [{ v: biasV + ((faultV - biasV) * biasOhm) / (l + fixedOhm + biasOhm) }];
  }
  if (wiring === 'series' || (l < Infinity && r < Infinity && l + r > 0)) return [wire({ ohm: pairOhm(wiring, l, r) })];
  return [wire({ ohm: Math.min(l, r) })];
}

/** Heat in both senders with a lead on the battery; null where nothing but a fuse limits it. */
function heat(
  { wiring, faultV, biasV, biasOhm, fixedOhm }: SaddleTankInput,
  { kind, side }: Cause,
  l: number,
  r: number,
) {
  if (kind === 'wire-to-battery') {
    // The fixed resistor stands at the tank's end, so it takes its share.
    const ohm = wiring === 'two-inputs' ? (side === 'left' ? l : r) : pairOhm(wiring, l, r);
    return ohm + fixedOhm === 0 ? null : (faultV / (ohm + fixedOhm)) ** 2 * ohm;
  }
  if (kind !== 'between-to-battery') return 0;
  return r === 0 ? null : faultV ** 2 / r + ((faultV - biasV) / (l + fixedOhm + biasOhm)) ** 2 * l;
}
