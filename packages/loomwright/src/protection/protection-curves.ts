import { needBetween, needInput, needInteger, needList, needObject, needText } from '../error/guard.js';
import { needMoreThan } from '../error/bounded.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { FuseFamily } from '../table/index.js';
import { edgeOf } from './fuse-band.js';
import { limitsOf, needFamily, needRating } from './fuse-data.js';
import { type FusedWire, needFusedWire, wireLine } from './fused-wire.js';
import { needSteps, type SurgeStep } from './trip.js';

/** A point of a time-current picture. */
export interface CurvePoint {
  readonly currentA: number;
  readonly timeS: number;
}

/** A fuse in the picture. */
export interface CurveFuse {
  readonly name: string;
  readonly family: FuseFamily;
  readonly ratingA: number;
}

/** A wire in the picture. */
export interface CurveWire {
  readonly name: string;
  /** Current in A that it bears for good, above 0. */
  readonly ampacityA: number;
  readonly wire: FusedWire;
}

/** A load in the picture. */
export interface CurveLoad {
  readonly name: string;
  /** Currents at switching on, one after another; may be empty. */
  readonly startSteps: readonly SurgeStep[];
  /** Current in A from then on, above 0. */
  readonly runA: number;
}

/** A current that is drawn as an upright line: a short at the far end, a short behind the fuse. */
export interface CurveLine {
  readonly name: string;
  readonly currentA: number;
}

export interface ProtectionCurvesInput {
  /** At least one. */
  readonly fuses: readonly CurveFuse[];
  readonly wires: readonly CurveWire[];
  readonly loads: readonly CurveLoad[];
  readonly lines: readonly CurveLine[];
  /** Points of a wire's line in each tenfold of current, 2 to 200; 20 unless given. */
  readonly pointCount?: number;
}

/** The band of one fuse. Straight between its points on logarithmic scales, and nothing beyond them. */
export interface FuseBandCurve {
  readonly name: string;
  /** Before these times it does not open. */
  readonly shortest: readonly CurvePoint[];
  /** By these times it has opened. */
  readonly longest: readonly CurvePoint[];
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/** A named row of points. */
export interface NamedCurve {
  readonly name: string;
  readonly points: readonly CurvePoint[];
}

export interface ProtectionCurvesResult {
  readonly fuses: readonly FuseBandCurve[];
  /** How long each wire bears each current above what it bears for good. */
  readonly wires: readonly NamedCurve[];
  /** How long each load draws at least each current; its last point is the running current at `mostS`. */
  readonly loads: readonly NamedCurve[];
  readonly lines: readonly CurveLine[];
  /** Smallest and largest current, shortest and longest time that occur. */
  readonly leastA: number;
  readonly mostA: number;
  readonly leastS: number;
  readonly mostS: number;
}

/**
 * The data of a time-current picture: fuse bands, load surges, what wires bear, and shorts.
 *
 * Use it to draw the one figure that shows whether a fuse suits its circuit: the surge of the load stays left of and
 * below the band, the line of the wire right of and above it, and the short at the far end crosses the band low down.
 * Both axes are logarithmic.
 *
 * $$t_\mathrm{wire}(I) = \frac{k^2 S^2}{I^2}\ \text{up to 5 s}$$
 *
 * and beyond by the wire's overload temperature, followed in time where the wire's data allow.
 *
 * @param input fuses, wires, loads, shorts
 * @returns points in A and s of each, and the ends of both axes
 * @throws InputError when a field is missing or out of range
 * @source iso-8820-3; iec-60949; the families' own
 * @example protectionCurves({ fuses: [{ name: 'F1', family: bladeFuse, ratingA: 20 }], wires: [], loads: [], lines: [] }).fuses[0].longest[0].currentA //=> 27
 */
export function protectionCurves(input: ProtectionCurvesInput): ProtectionCurvesResult {
  const fn = 'protectionCurves';
  needInput(fn, input);
  guard(fn, input);
  const { lines, pointCount = 20 } = input;
  const fuses = input.fuses.map(({ name, family, ratingA }) => {
    const limits = limitsOf(family, ratingA);
    const points = (edge: 'shortest' | 'longest'): CurvePoint[] =>
      edgeOf(limits, edge).map(([percent, timeS]) => ({ currentA: (percent / 100) * ratingA, timeS }));
    return {
      name,
      shortest: points('shortest'),
      longest: points('longest'),
      source: family.source,
      sourceStatus: limits.status,
    };
  });
  const onBands = fuses.flatMap(({ shortest, longest }) => [...shortest, ...longest]);
  const mostS = Math.max(...onBands.map(({ timeS }) => timeS));
  const loads = input.loads.map((load) => ({ name: load.name, points: surge(load, mostS) }));
  const drawn = [...onBands, ...loads.flatMap(({ points }) => points)];
  const mostA = Math.max(...drawn.map(({ currentA }) => currentA), ...lines.map(({ currentA }) => currentA));
  const wires = input.wires.map((wire) => ({ name: wire.name, points: wirePoints(wire, mostA, mostS, pointCount) }));
  const all = [...drawn, ...wires.flatMap(({ points }) => points)];
  return {
    fuses,
    wires,
    loads,
    lines,
    leastA: Math.min(...all.map(({ currentA }) => currentA), ...lines.map(({ currentA }) => currentA)),
    mostA,
    leastS: Math.min(...all.map(({ timeS }) => timeS)),
    mostS,
  };
}

/** How long a load draws at least each of its currents, the largest first. */
function surge({ startSteps, runA }: CurveLoad, mostS: number): CurvePoint[] {
  const currents = [...new Set(startSteps.map(({ currentA }) => currentA))]
    .filter((currentA) => currentA > runA)
    .sort((a, b) => b - a);
  const points = currents.map((at) => ({
    currentA: at,
    timeS: startSteps.reduce((sum, { currentA, durationS }) => sum + (currentA >= at ? durationS : 0), 0),
  }));
  return [...points, { currentA: runA, timeS: mostS }];
}

/** The line of a wire, from just above what it bears for good to the largest current in the picture. */
function wirePoints({ ampacityA, wire }: CurveWire, mostA: number, mostS: number, pointCount: number): CurvePoint[] {
  const { goodA: fromA, turnA, bearsForS } = wireLine(wire, ampacityA);
  if (!(mostA > fromA)) return [];
  const count = Math.max(2, Math.ceil(pointCount * Math.log10(mostA / fromA)));
  const turns = [turnA].filter((currentA) => currentA > fromA && currentA < mostA);
  const even = Array.from({ length: count + 1 }, (_, i) => fromA * (mostA / fromA) ** (i / count));
  const points: CurvePoint[] = [];
  for (const currentA of [...even, ...turns].sort((a, b) => a - b)) {
    const timeS = bearsForS(currentA);
    if (timeS !== null && timeS <= mostS) points.push({ currentA, timeS });
  }
  return points;
}

function guard(fn: string, { fuses, wires, loads, lines, pointCount }: ProtectionCurvesInput): void {
  needList(fn, 'fuses', fuses, 1);
  fuses.forEach((fuse, i) => {
    needObject(fn, `fuses[${i}]`, fuse);
    needText(fn, `fuses[${i}].name`, fuse.name);
    needFamily(fn, fuse.family, `fuses[${i}].family`);
    needRating(fn, fuse.family, fuse.ratingA, `fuses[${i}].ratingA`);
  });
  needList(fn, 'wires', wires);
  wires.forEach((wire, i) => {
    needObject(fn, `wires[${i}]`, wire);
    needText(fn, `wires[${i}].name`, wire.name);
    needMoreThan(fn, `wires[${i}].ampacityA`, wire.ampacityA);
    needFusedWire(fn, wire.wire, `wires[${i}].wire`);
  });
  needList(fn, 'loads', loads);
  loads.forEach((load, i) => {
    needObject(fn, `loads[${i}]`, load);
    needText(fn, `loads[${i}].name`, load.name);
    needSteps(fn, `loads[${i}].startSteps`, load.startSteps);
    needMoreThan(fn, `loads[${i}].runA`, load.runA);
  });
  needList(fn, 'lines', lines);
  lines.forEach((line, i) => {
    needObject(fn, `lines[${i}]`, line);
    needText(fn, `lines[${i}].name`, line.name);
    needMoreThan(fn, `lines[${i}].currentA`, line.currentA);
  });
  if (pointCount !== undefined) {
    needInteger(fn, 'pointCount', pointCount, 2);
    needBetween(fn, 'pointCount', pointCount, 2, 200);
  }
}
