/** A point of the sheet, in px. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A straight line with the width at which it is drawn. */
export interface Stroke {
  readonly from: Spot;
  readonly to: Spot;
  readonly widthPx: number;
}

/** A rectangle. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where a text may stand: the frame, and what is there already. */
export interface Ground {
  readonly frame: Area;
  readonly strokes: readonly Stroke[];
  readonly taken: readonly Area[];
}

/**
 * The best of several areas for a text: inside the frame, on nothing that is taken, across no more lines than allowed,
 * the fewer and the earlier the better. Null where none is free.
 */
export function freeArea({ frame, strokes, taken }: Ground, wanted: readonly Area[], mostCrossed = 1): Area | null {
  let best: Area | null = null;
  let least = Infinity;
  // An area costs at least its place in the list: those behind the best need no look.
  for (let i = 0; i < wanted.length && i < least; i++) {
    const area = wanted[i] as Area;
    if (!inside(area, frame) || taken.some((other) => overlap(area, other))) continue;
    let crossed = 0;
    for (const stroke of strokes) {
      if (crosses(area, stroke) && ++crossed > mostCrossed) break;
    }
    const cost = i + 40 * crossed;
    if (crossed <= mostCrossed && cost < least) [best, least] = [area, cost];
  }
  return best;
}

/** Areas around a point, near before far, beside before above. */
export function around(spot: Spot, width: number, height: number, gaps: readonly number[]): Area[] {
  return gaps.flatMap((gap) => {
    const diagonal = gap * 0.75;
    return [
      { x: spot.x + gap, y: spot.y - height / 2, width, height },
      { x: spot.x - gap - width, y: spot.y - height / 2, width, height },
      { x: spot.x - width / 2, y: spot.y - gap - height, width, height },
      { x: spot.x - width / 2, y: spot.y + gap, width, height },
      { x: spot.x + diagonal, y: spot.y - diagonal - height, width, height },
      { x: spot.x - diagonal - width, y: spot.y - diagonal - height, width, height },
      { x: spot.x + diagonal, y: spot.y + diagonal, width, height },
      { x: spot.x - diagonal - width, y: spot.y + diagonal, width, height },
    ];
  });
}

function inside(area: Area, frame: Area): boolean {
  return (
    area.x >= frame.x &&
    area.y >= frame.y &&
    area.x + area.width <= frame.x + frame.width &&
    area.y + area.height <= frame.y + frame.height
  );
}

/** Whether two areas share any of their inside. */
export function overlap(a: Area, b: Area): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** Whether a line with its width passes an area. */
export function crosses(area: Area, { from, to, widthPx }: Stroke): boolean {
  const half = widthPx / 2;
  const left = area.x - half;
  const right = area.x + area.width + half;
  const top = area.y - half;
  const bottom = area.y + area.height + half;
  if (Math.max(from.x, to.x) < left || Math.min(from.x, to.x) > right) return false;
  if (Math.max(from.y, to.y) < top || Math.min(from.y, to.y) > bottom) return false;
  // Clip the line to the rectangle (Liang and Barsky): what is left of it, if anything, lies inside.
  let enter = 0;
  let leave = 1;
  const clip = (p: number, q: number): boolean => {
    if (p < 0) enter = Math.max(enter, q / p);
    else if (p > 0) leave = Math.min(leave, q / p);
    return p !== 0 || q >= 0;
  };
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return (
    clip(-dx, from.x - left) &&
    clip(dx, right - from.x) &&
    clip(-dy, from.y - top) &&
    clip(dy, bottom - from.y) &&
    enter < leave
  );
}
