import { type CurvePoint, protectionCurves, type ProtectionCurvesInput } from 'loomwright';
import type { ChartBand, ChartSeries, ChartSpec } from './chart.js';

type Point = [x: number, y: number];

/** The next of 1, 2, 5 in its decade, downwards or upwards. */
function round125(value: number, up: boolean): number {
  const decade = 10 ** Math.floor(Math.log10(value));
  const steps = [1, 2, 5, 10].map((step) => step * decade);
  return (up ? steps.find((step) => step >= value * (1 - 1e-9)) : steps.findLast((step) => step <= value)) as number;
}

/** A falling line cut off at the top and the bottom of the picture. */
function clipped(points: readonly CurvePoint[], bottom: number, top: number): Point[] {
  const out: Point[] = [];
  const within = (t: number): boolean => t >= bottom && t <= top;
  points.forEach((b, i) => {
    const a = points[i - 1];
    if (a !== undefined) {
      for (const edge of [top, bottom]) {
        if (a.timeS > edge === b.timeS > edge || a.timeS === b.timeS) continue;
        const share = Math.log(edge / a.timeS) / Math.log(b.timeS / a.timeS);
        out.push([a.currentA * (b.currentA / a.currentA) ** share, edge]);
      }
    }
    if (within(b.timeS)) out.push([b.currentA, b.timeS]);
  });
  return out;
}

/**
 * The time-current picture as a chart: fuse bands, loads, wires and shorts, both axes logarithmic.
 *
 * Left of and below a band no fuse of the family opens, right of and above it every one has. Above a wire's line its
 * insulation is harmed.
 *
 * @param input fuses, wires, loads, lines, as `protectionCurves` takes them
 * @returns what `chart` draws
 */
export function timeCurrent(input: ProtectionCurvesInput): ChartSpec {
  const { fuses, loads, leastA, mostA } = protectionCurves(input);
  const right = round125(mostA * 1.15, true);
  // The lines of the wires run to the edge of the picture.
  const { wires } = protectionCurves({ ...input, lines: [...input.lines, { name: 'edge', currentA: right }] });
  const shortest = Math.min(...fuses.flatMap(({ longest }) => longest.map(({ timeS }) => timeS)));
  const surges = loads.flatMap(({ points }) => points.map(({ timeS }) => timeS));
  const bottom = Math.max(1e-4, round125(Math.min(shortest, ...surges) / 5, false));
  const top = 10000;
  const bands: ChartBand[] = [];
  const series: ChartSeries[] = [];
  for (const { name, points } of wires) {
    const line = clipped(points, bottom, top);
    const first = line[0];
    if (first === undefined) continue;
    bands.push({ name: '', points: line.map(([x, y]): [number, number, number] => [x, y, top]), colour: 'red' });
    // What it bears for good ends upright.
    const whole: Point[] = first[1] < top ? [[first[0], top], ...line] : line;
    series.push({ name, points: whole, colour: 'red', as: 'line', dash: '8 3 2 3', labelAt: 0 });
  }
  for (const { name, shortest: low, longest: high } of fuses) {
    const lower = clipped(low, bottom, top);
    const upper = clipped(high, bottom, top);
    bands.push({ name, points: bandOf(lower, upper, bottom, top), colour: 'copper' });
    series.push(
      { name: '', points: lower, colour: 'copper', as: 'line', dash: '2 3' },
      { name: '', points: upper, colour: 'copper', as: 'line', dash: '' },
    );
  }
  for (const { name, points } of loads) {
    const steps: Point[] = [];
    let from = bottom;
    for (const { currentA, timeS } of points) {
      const to = Math.min(top, Math.max(bottom, timeS));
      steps.push([currentA, from], [currentA, to]);
      from = to;
    }
    series.push({ name, points: steps, colour: 'verdigris', as: 'line', dash: '', labelAt: steps.length - 2 });
  }
  for (const { name, currentA } of input.lines) {
    const upright: Point[] = [
      [currentA, top],
      [currentA, bottom],
    ];
    series.push({ name, points: upright, colour: 'blue', as: 'line', dash: '6 3' });
  }
  return {
    title: 'Time and current: load, fuse, wire, short',
    x: { label: 'Current', unit: 'A', log: true, domain: [round125(leastA / 1.05, false), right] },
    y: { label: 'Time', unit: 's', log: true, domain: [bottom, top] },
    series,
    bands,
  };
}

/** Low and high of a band at each current: to the top where a fuse may never open, to the bottom where nothing is said. */
function bandOf(
  lower: readonly Point[],
  upper: readonly Point[],
  bottom: number,
  top: number,
): [number, number, number][] {
  const firstUpper = upper[0] as Point;
  const lastLower = lower[lower.length - 1] as Point;
  const at = (points: readonly Point[], x: number): number | null => {
    const i = points.findIndex(([px]) => px >= x);
    const b = points[i];
    if (b === undefined) return null;
    const a = points[i - 1];
    if (a === undefined) return b[0] === x ? b[1] : null;
    return a[1] * (b[1] / a[1]) ** (Math.log(x / a[0]) / Math.log(b[0] / a[0]));
  };
  const xs = [...new Set([...lower, ...upper].map(([x]) => x))].sort((a, b) => a - b);
  return xs.flatMap((x): [number, number, number][] => {
    const low = at(lower, x);
    const high = at(upper, x);
    const here: [number, number, number] = [x, low ?? (x < lastLower[0] ? top : bottom), high ?? top];
    if (x === firstUpper[0]) return [[x, here[1], top], here];
    if (x === lastLower[0]) return [here, [x, bottom, here[2]]];
    return [here];
  });
}
