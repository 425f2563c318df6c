/** A point on the sheet, in pixels. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A way along straight lines, each corner rounded by its own radius. */
export interface Way {
  readonly points: readonly Point[];
  /** Radius at each inner point. */
  readonly radii: readonly number[];
}

const round = (value: number): string => String(Math.round(value * 10) / 10);
const at = ({ x, y }: Point): string => `${round(x)} ${round(y)}`;
const toward = (from: Point, to: Point, by: number): Point => {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  return { x: from.x + ((to.x - from.x) * by) / length, y: from.y + ((to.y - from.y) * by) / length };
};

/** The way as SVG path data: lines, and a quarter circle at each corner. */
export function pathData({ points, radii }: Way): string {
  const [first, ...rest] = points as [Point, ...Point[]];
  const parts = rest.map((corner, i) => {
    const next = rest[i + 1];
    const before = points[i] as Point;
    const radius = next === undefined ? 0 : (radii[i] ?? 0);
    if (next === undefined || radius <= 0) return `L${at(corner)}`;
    const right = (corner.x - before.x) * (next.y - corner.y) - (corner.y - before.y) * (next.x - corner.x) > 0;
    const start = toward(corner, before, radius);
    const end = toward(corner, next, radius);
    return `L${at(start)}A${round(radius)} ${round(radius)} 0 0 ${right ? 1 : 0} ${at(end)}`;
  });
  return `M${at(first)}${parts.join('')}`;
}

/** Two strands that wind around the way: path data of each, as cubic half waves. */
export function twistedPair(way: Way, amplitude: number, halfWave: number): readonly [string, string] {
  const trail = sample(way, 1);
  const count = Math.max(2, Math.round(trail.length / halfWave));
  const step = (trail.length - 1) / count;
  const strand = (side: 1 | -1): string => {
    let d = '';
    for (let i = 0; i <= count; i += 1) {
      const here = trail[Math.round(i * step)] as Sample;
      // Quarter points are enough: a half wave is a quadratic curve through its crest.
      if (i === 0) d += `M${at(here)}`;
      else {
        const crest = trail[Math.round((i - 0.5) * step)] as Sample;
        const sign = (i % 2 === 0 ? 1 : -1) * side * 2 * amplitude;
        d += `Q${at({ x: crest.x + crest.nx * sign, y: crest.y + crest.ny * sign })} ${at(here)}`;
      }
    }
    return d;
  };
  return [strand(1), strand(-1)];
}

interface Sample extends Point {
  readonly nx: number;
  readonly ny: number;
}

/** Points along the way about `every` pixels apart, with the normal to the left. */
function sample({ points, radii }: Way, every: number): readonly Sample[] {
  const out: Sample[] = [];
  const line = (from: Point, to: Point): void => {
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length === 0) return;
    const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
    for (let s = 0; s < length; s += every) out.push({ x: from.x + ux * s, y: from.y + uy * s, nx: uy, ny: -ux });
  };
  let from = points[0] as Point;
  for (let i = 1; i < points.length; i += 1) {
    const corner = points[i] as Point;
    const next = points[i + 1];
    const radius = next === undefined ? 0 : (radii[i - 1] ?? 0);
    const start = toward(corner, from, radius);
    line(from, start);
    from = start;
    if (next === undefined || radius <= 0) continue;
    const end = toward(corner, next, radius);
    const centre = { x: start.x + end.x - corner.x, y: start.y + end.y - corner.y };
    const a0 = Math.atan2(start.y - centre.y, start.x - centre.x);
    const turn = Math.atan2(end.y - centre.y, end.x - centre.x) - a0;
    const sweep = Math.atan2(Math.sin(turn), Math.cos(turn));
    for (let s = 0; s < Math.abs(sweep) * radius; s += every) {
      const angle = a0 + (sweep * s) / (Math.abs(sweep) * radius);
      const outward = sweep > 0 ? 1 : -1;
      out.push({
        x: centre.x + radius * Math.cos(angle),
        y: centre.y + radius * Math.sin(angle),
        nx: outward * Math.cos(angle),
        ny: outward * Math.sin(angle),
      });
    }
    from = end;
  }
  return out;
}
