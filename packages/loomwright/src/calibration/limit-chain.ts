// The table that keeps the most room between two curves: straight lines between given places, held outside them.

/** What the line must keep between at a place. */
export interface Strait {
  readonly x: number;
  readonly low: number;
  readonly high: number;
}

/** A corner: the values at two neighbouring places. */
type Corner = readonly [a: number, b: number];

/** Values at the places, and the room that they keep to both sides: below 0 where no line fits between. */
export interface Chain {
  readonly values: readonly number[];
  readonly room: number;
}

/**
 * The values at given places with the most room to both sides, everywhere. For a room asked for, the pairs of values
 * that two neighbouring places may have are a polygon; cut by every strait between them and by what the place before
 * allows, it leaves what the next may have. The room is bisected; it ends 1e−12 of the span below the most.
 *
 * @param places rising
 * @param straits rising, one at each place among them
 */
export function roomiestChain(places: readonly number[], straits: readonly Strait[]): Chain {
  const span = Math.max(...straits.map((s) => Math.max(s.low, s.high))) - Math.min(...straits.map((s) => Math.min(s.low, s.high))); // prettier-ignore
  let low = -span - 1e-12;
  let high = Math.min(...straits.map((s) => (s.high - s.low) / 2));
  let best = polygonsOf(places, straits, low) as readonly (readonly Corner[])[];
  for (let i = 0; i < 200 && high - low > 1e-12 * Math.max(span, 1e-12); i++) {
    const room = i === 0 ? high - 5e-13 * span : (low + high) / 2;
    const found = polygonsOf(places, straits, room);
    if (found === null) high = room;
    else {
      low = room;
      best = found;
    }
  }
  return { values: valuesIn(best, places, straits), room: low };
}

/** For each place but the first the pairs that it and the one before may have; null where some place has none. */
function polygonsOf(
  places: readonly number[],
  straits: readonly Strait[],
  room: number,
): readonly (readonly Corner[])[] | null {
  const bounds = (from: number, to: number): Corner | null => {
    let least = -Infinity;
    let most = Infinity;
    for (const { x, low, high } of straits) {
      if (x < from || x > to) continue;
      least = Math.max(least, low + room);
      most = Math.min(most, high - room);
    }
    return least <= most ? [least, most] : null;
  };
  const all: (readonly Corner[])[] = [];
  const last = places.length - 1;
  let reach = bounds(-Infinity, places[0] as number);
  if (reach === null) return null;
  for (let i = 1; i <= last; i++) {
    const from = places[i - 1] as number;
    const to = places[i] as number;
    const own = bounds(to, i === last ? Infinity : to);
    if (own === null) return null;
    const [a0, a1] = reach;
    const [b0, b1] = own;
    let polygon: readonly Corner[] = [[a0, b0], [a1, b0], [a1, b1], [a0, b1]]; // prettier-ignore
    for (const { x, low, high } of straits) {
      if (x <= from || x >= to) continue;
      const t = (x - from) / (to - from);
      polygon = cut(polygon, t, low + room, 1);
      polygon = cut(polygon, t, high - room, -1);
      if (polygon.length === 0) return null;
    }
    all.push(polygon);
    const b = polygon.map((corner) => corner[1]);
    reach = [Math.min(...b), Math.max(...b)];
  }
  return all;
}

/** The part of a polygon where the line's value at a share of the way is at or above a level, or at or below it. */
function cut(polygon: readonly Corner[], t: number, level: number, sign: 1 | -1): readonly Corner[] {
  const over = ([a, b]: Corner): number => sign * (a + (b - a) * t - level);
  const out: Corner[] = [];
  polygon.forEach((corner, k) => {
    const next = polygon[(k + 1) % polygon.length] as Corner;
    const here = over(corner);
    const there = over(next);
    if (here >= 0) out.push(corner);
    if ((here > 0 && there < 0) || (here < 0 && there > 0)) {
      const s = here / (here - there);
      out.push([corner[0] + (next[0] - corner[0]) * s, corner[1] + (next[1] - corner[1]) * s]);
    }
  });
  return out;
}

/** Values from the last place back, each as near to the middle of its own strait as the others let it be. */
function valuesIn(
  polygons: readonly (readonly Corner[])[],
  places: readonly number[],
  straits: readonly Strait[],
): readonly number[] {
  const middles = places.map((place) => {
    const strait = straits.find(({ x }) => x === place) as Strait;
    return (strait.low + strait.high) / 2;
  });
  const near = (wanted: number, list: readonly number[]): number =>
    Math.min(Math.max(wanted, Math.min(...list)), Math.max(...list));
  const values: number[] = [];
  let later = near(middles[middles.length - 1] as number, (polygons[polygons.length - 1] as readonly Corner[]).map((c) => c[1])); // prettier-ignore
  values.push(later);
  for (let i = polygons.length - 1; i >= 0; i--) {
    later = near(middles[i] as number, slice(polygons[i] as readonly Corner[], later));
    values.push(later);
  }
  return values.reverse();
}

/** What the first of a pair may be where the second is given. */
function slice(polygon: readonly Corner[], b: number): readonly number[] {
  const found: number[] = [];
  polygon.forEach((corner, k) => {
    const next = polygon[(k + 1) % polygon.length] as Corner;
    if (corner[1] === b) found.push(corner[0]);
    if ((corner[1] - b) * (next[1] - b) < 0) {
      found.push(corner[0] + ((next[0] - corner[0]) * (b - corner[1])) / (next[1] - corner[1]));
    }
  });
  return found;
}
