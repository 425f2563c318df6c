import type { IsotonicBlock } from '../number/isotonic-fit.js';
import { type CanFit, type CanGroup, weightOf } from './can-fit.js';

/** A stretch over which the reading does not move while litres do. */
export interface DeadZone {
  readonly where: 'bottom' | 'middle' | 'top';
  readonly readingValue: number;
  /** Litres between which it certainly does not move: cans that were read. */
  readonly fromL: number;
  readonly toL: number;
  /** Where the reading leaves it, or comes to it, by the line through the two next cans: litres hidden in all. */
  readonly turnL: number;
  readonly hiddenL: number;
}

/** A point of the curve before it is joined: a reading, turned to rise, and litres. */
export interface CanPoint {
  readonly reading: number;
  readonly volumeL: number;
  /** How many readings stand behind it. */
  readonly weight: number;
}

/** The curve's points, and the zones with readings still turned. */
export interface CanCurve {
  readonly points: readonly CanPoint[];
  readonly zones: readonly DeadZone[];
}

/** The least share of the mean movement with which a stretch counts as moving. */
const MOVES = 0.2;

/**
 * Points of reading and litres, strictly rising in both, with the dead zones found. A stretch is dead where the reading
 * moves by no more than noise, and by less than a fifth of what it moves on average for so many litres. Null where
 * nothing else is left.
 */
export function curveOf(fit: CanFit, coverageFactor: number, deadShows: 'least' | 'most'): CanCurve | null {
  const { groups, blocks, sigma } = fit;
  const last = blocks.length - 1;
  const group = (i: number): CanGroup => groups[i] as CanGroup;
  const block = (i: number): IsotonicBlock => blocks[i] as IsotonicBlock;
  const fromL = (b: number): number => group(block(b).fromIndex).totalL;
  const toL = (b: number): number => group(block(b).toIndex).totalL;
  const span = block(last).value - block(0).value;
  const noiseOf = (a: number, b: number): number =>
    coverageFactor * sigma * Math.sqrt(1 / weightOf(groups, block(a)) + 1 / weightOf(groups, block(b)));
  const flat = (a: number, b: number): boolean => {
    const litres = toL(b) - fromL(a);
    const moved = block(b).value - block(a).value;
    return (
      litres > 0 &&
      moved <= Math.max(noiseOf(a, b), 1e-9 * span) &&
      moved <= (MOVES * span * litres) / (toL(last) - fromL(0))
    );
  };
  let bottom = 0;
  while (bottom < last && flat(0, bottom + 1)) bottom++;
  if (!flat(0, bottom)) bottom = -1;
  let top = last;
  while (top > 0 && flat(top - 1, last)) top--;
  if (!flat(top, last)) top = last + 1;
  const size = Math.max(Math.abs(block(0).value), Math.abs(block(last).value));
  if (span <= Math.max(noiseOf(0, last), 1e-9 * size, 1e-11) || bottom >= top || (bottom === last && top > last))
    return null;

  const pointOf = (a: number, b: number): CanPoint => {
    let [weight, reading, litres] = [0, 0, 0];
    for (let i = block(a).fromIndex; i <= block(b).toIndex; i++) {
      weight += group(i).weight;
      reading += group(i).weight * group(i).mean;
      litres += group(i).weight * group(i).totalL;
    }
    return { reading: reading / weight, volumeL: litres / weight, weight };
  };
  const inner: CanPoint[] = [];
  for (let b = Math.max(0, bottom + 1); b < Math.min(top, last + 1); b++) inner.push(pointOf(b, b));
  const low = bottom < 0 ? null : pointOf(0, bottom);
  const high = top > last ? null : pointOf(top, last);
  const rest = [...inner, ...(high === null ? [] : [{ ...high, volumeL: fromL(top) }])];
  const down = [...(low === null ? [] : [{ ...low, volumeL: toL(bottom) }]), ...inner].reverse();
  const zones: DeadZone[] = [];
  if (low !== null) zones.push(zoneOf('bottom', low.reading, fromL(0), toL(bottom), rest));
  for (let a = bottom + 1; a < top; a++) {
    let b = a;
    if (!flat(a, a) && !(a + 1 < top && flat(a, a + 1))) continue;
    while (b + 1 < top && flat(a, b + 1)) b++;
    zones.push(zoneOf('middle', pointOf(a, b).reading, fromL(a), toL(b), []));
    a = b;
  }
  if (high !== null) zones.push(zoneOf('top', high.reading, fromL(top), toL(last), down));
  const ends = (point: CanPoint | null, zone: DeadZone | undefined): CanPoint[] => {
    if (point === null || zone === undefined) return [];
    const atBottom = zone.where === 'bottom';
    const least = atBottom ? zone.fromL : zone.turnL;
    const most = atBottom ? zone.turnL : zone.toL;
    return [{ ...point, volumeL: deadShows === 'least' ? least : most }];
  };
  return {
    points: [...ends(low, zones[0]), ...inner, ...ends(high, zones.at(-1))],
    zones,
  };
}

/** A zone with the litres at which it ends, by the line through the two next points. */
function zoneOf(
  where: DeadZone['where'],
  readingValue: number,
  fromL: number,
  toL: number,
  next: readonly CanPoint[],
): DeadZone {
  const own = where === 'top' ? fromL : toL;
  const [first, second] = next;
  let turnL = own;
  if (first !== undefined && second !== undefined) {
    const perReading = (second.volumeL - first.volumeL) / (second.reading - first.reading);
    const drawn = first.volumeL + perReading * (readingValue - first.reading);
    // Between the last can of the zone and the first beyond it; never as far as that one, so that the curve rises.
    const far = own + 0.999 * (first.volumeL - own);
    turnL = where === 'top' ? Math.min(own, Math.max(far, drawn)) : Math.max(own, Math.min(far, drawn));
  }
  return { where, readingValue, fromL, toL, turnL, hiddenL: where === 'top' ? toL - turnL : turnL - fromL };
}
