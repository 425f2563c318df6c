import { lobeOhm, pairOhm } from './saddle-split.js';
import type { SaddleTankInput } from './saddle-tank.js';
import { mostAlong, type Place, walk } from './saddle-way.js';

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
  readonly litres: (l: number, r: number) => number;
  readonly pinOf: (ohm: number) => number;
  readonly shownL: (ohms: readonly number[]) => number;
  readonly lowestPinV: number;
  readonly highestPinV: number;
}

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

function judge({ input, way, litres, pinOf, shownL, lowestPinV, highestPinV }: Tank, cause: Cause): SaddleFault {
  const { biasV, biasOhm, fixedOhm, guardV } = input;
  const ohmsAt = ([l, r]: Place): Place => [lobeOhm(input.left, l), lobeOhm(input.right, r)];
  /** Litres shown above the true ones; null where the fault is told. */
  const off = (place: Place): number | null => {
    const seen = seenBy(input, cause, ...ohmsAt(place));
    const volts = seen.map((each) => ('v' in each ? each.v : each.ohm === Infinity ? biasV : pinOf(each.ohm)));
    if (volts.some((v) => v < lowestPinV - guardV || v > highestPinV + guardV)) return null;
    // Volts that no sender gives are read as the ohms that would give them.
    const ohms = seen.map((each, i) => {
      if ('ohm' in each && each.ohm < Infinity) return each.ohm;
      const v = volts[i] as number;
      return v >= biasV ? Number.MAX_VALUE : (v * biasOhm) / (biasV - v) - fixedOhm;
    });
    return shownL(ohms) - litres(...place);
  };
  const places = walk(way, 3);
  const told = places.filter((place) => off(place) === null).length;
  const heats = places.map((place) => heat(input, cause, ...ohmsAt(place)));
  const under = (u: number): number | null => {
    const over = off(way(u));
    return over === null ? null : -over;
  };
  return {
    ...cause,
    seen: told === places.length ? 'always' : told > 0 ? 'sometimes' : 'never',
    mostOverL: Math.max(
      0,
      mostAlong(3, (u) => off(way(u))),
    ),
    mostUnderL: Math.max(0, mostAlong(3, under)),
    tankW: heats.includes(null) ? null : mostAlong(3, (u) => heat(input, cause, ...ohmsAt(way(u)))),
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
