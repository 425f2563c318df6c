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
  wanted.forEach((area, i) => {
    if (!inside(area, frame) || taken.some((other) => overlap(area, other))) return;
    const crossed = strokes.filter((stroke) => crosses(area, stroke)).length;
    const cost = i + 40 * crossed;
    if (crossed <= mostCrossed && cost < least) [best, least] = [area, cost];
  });
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
  const grown = {
    x: area.x - widthPx / 2,
    y: area.y - widthPx / 2,
    width: area.width + widthPx,
    height: area.height + widthPx,
  };
  // Clip the line to the rectangle (Liang and Barsky): what is left of it, if anything, lies inside.
  let [enter, leave] = [0, 1];
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  for (const [p, q] of [
    [-dx, from.x - grown.x],
    [dx, grown.x + grown.width - from.x],
    [-dy, from.y - grown.y],
    [dy, grown.y + grown.height - from.y],
  ] as const) {
    if (p === 0) {
      if (q < 0) return false;
    } else if (p < 0) enter = Math.max(enter, q / p);
    else leave = Math.min(leave, q / p);
  }
  return enter < leave;
}
