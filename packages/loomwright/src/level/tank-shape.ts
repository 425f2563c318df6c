// Volumes below a plane in mm³, from the floor of the tank upwards; `slope` is how far the surface falls for a step
// along the tank, away from its low end.

/** arccos((r − h)/r), in a form that keeps its digits next to the floor and the top. */
function angle(r: number, h: number): number {
  return 2 * Math.atan2(Math.sqrt(Math.max(0, h)), Math.sqrt(Math.max(0, 2 * r - h)));
}

/** Area of a circle up to a depth from 0 to its diameter. */
export function segment(r: number, h: number): number {
  const u = r - h;
  return r * r * angle(r, h) - u * Math.sqrt(Math.max(0, h * (2 * r - h)));
}

/** Its sum over the depth from the floor; beyond the diameter the whole circle counts on. */
export function segmentSummed(r: number, h: number): number {
  if (h <= 0) return 0;
  const u = r - h;
  if (h >= 2 * r) return Math.PI * r * r * -u;
  const s = Math.sqrt(h * (2 * r - h));
  return r * r * (s - u * angle(r, h)) - (s * s * s) / 3;
}

/** Of a section that is the same along the tank: its area up to a depth, and the sum of that over the depth. */
export interface Section {
  readonly height: number;
  readonly area: (h: number) => number;
  readonly summed: (h: number) => number;
}

/** Below a tilted surface: `deep` is the depth at the low end. */
export function alongPrism({ height, area, summed }: Section, length: number, deep: number, slope: number): number {
  const clamp = (h: number): number => Math.min(height, Math.max(0, h));
  if (slope === 0) return length * area(clamp(deep));
  const shallow = deep - slope * length;
  const low = clamp(shallow);
  const high = clamp(deep);
  // Above the top the area stays that of the whole section.
  const full = Math.max(0, deep - Math.max(height, shallow));
  // A difference so small that the sums would cancel: Simpson's rule, exact to the fourth order of it.
  const wet =
    high - low < 1e-3 * height
      ? ((high - low) * (area(low) + 4 * area((low + high) / 2) + area(high))) / 6
      : summed(high) - summed(low);
  return (wet + full * area(height)) / slope;
}

/**
 * A box below a surface that is tilted both ways: the sum across its width of what one strip holds, exact, because that
 * is a parabola between the places where the surface meets an edge. `deep` is the depth in the lowest corner.
 */
export function tiltedBox(
  [length, width, height]: readonly [number, number, number],
  deep: number,
  slope: number,
  crossSlope: number,
): number {
  const strip: Section = { height, area: (h) => h, summed: (h) => (h * h) / 2 };
  const at = (y: number): number => alongPrism(strip, length, deep - crossSlope * y, slope);
  if (crossSlope === 0) return width * at(0);
  const edges = [0, height, slope * length, height + slope * length]
    .map((depth) => (deep - depth) / crossSlope)
    .filter((y) => y > 0 && y < width);
  const cuts = [0, ...edges, width].sort((a, b) => a - b);
  let sum = 0;
  for (let i = 1; i < cuts.length; i++) {
    const [from, to] = [cuts[i - 1] as number, cuts[i] as number];
    sum += ((to - from) * (at(from) + 4 * at((from + to) / 2) + at(to))) / 6;
  }
  return sum;
}

/**
 * A dished end, the half of an ellipsoid, below a tilted surface: circles of radius ρ along its depth c, each up to a
 * depth of its own. `rim` is the depth at the rim, on the scale of the whole diameter, and `rise` what it grows by for
 * each step outwards. Summed by the midpoint rule between the places where the surface meets the shell, with steps
 * that die away there: its error is below 10⁻⁹ of the end.
 */
export function tiltedHead(r: number, c: number, rim: number, rise: number): number {
  const off = rim - r;
  const a = rise * rise + (r / c) ** 2;
  const root = Math.sqrt(a);
  const beyond = (root - Math.abs(off) / c) * (root + Math.abs(off) / c);
  const half = beyond > 0 ? (r * Math.sqrt(beyond)) / a : 0;
  const middle = (-off * rise) / a;
  const cuts = [0, middle - half, middle + half, c].map((x) => Math.asin(Math.min(1, Math.max(0, x / c))));
  const STEPS = 64;
  let sum = 0;
  for (let i = 1; i < cuts.length; i++) {
    const [from, to] = [cuts[i - 1] as number, cuts[i] as number];
    if (!(to > from)) continue;
    for (let k = 0; k < STEPS; k++) {
      const t = (k + 0.5) / STEPS;
      const phi = from + (to - from) * t ** 5 * (126 + t * (-420 + t * (540 + t * (-315 + 70 * t))));
      const rho = r * Math.cos(phi);
      const depth = rim + rise * c * Math.sin(phi) - (r - rho);
      const weight = (630 * (t * (1 - t)) ** 4 * (to - from)) / STEPS;
      sum += segment(rho, Math.min(2 * rho, Math.max(0, depth))) * c * Math.cos(phi) * weight;
    }
  }
  return sum;
}

/** An upright cylinder between two dished ends, its axis plumb. */
export function plumb(r: number, length: number, c: number, level: number): number {
  const base = Math.PI * r * r;
  /** A dished end filled from its middle up to its rim. */
  const end = (h: number): number => (c === 0 ? 0 : base * ((h * h) / c - (h * h * h) / (3 * c * c)));
  const bottom = Math.min(level, c);
  const middle = Math.min(Math.max(level - c, 0), length);
  const top = Math.min(Math.max(level - c - length, 0), c);
  return end(bottom) + base * middle + end(c) - end(c - top);
}
