import { InputError } from '../error/index.js';
import { needEarthly, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needInteger, needList, needObject, needOneOf, needText } from '../error/guard.js';
import { randomDraw } from '../number/random.js';
import { spreadOf, type SpreadResult } from '../number/spread-of.js';
import { cornersOf, type ToleranceCorners } from './corners.js';
import { needTolerance } from './guard.js';

/** One part that is not exactly what is written on it. Give one of the three widths. */
export interface TolerancePart {
  readonly name: string;
  /** What it should be, in any unit. */
  readonly value: number;
  /** Tolerance on either side as a fraction of the value, 0 to below 1. */
  readonly toleranceFraction?: number;
  /** Tolerance on either side in the part's own unit, at least 0. */
  readonly halfWidthValue?: number;
  /** Standard uncertainty in the part's own unit, at least 0: normal, without bounds. */
  readonly deviationValue?: number;
  /** How a part with bounds lies between them; `rectangular` unless given: anything within is as likely. */
  readonly distribution?: 'rectangular' | 'triangular' | 'arcsine';
}

/** How much two parts go wrong together. Both must be given by `deviationValue`. */
export interface ToleranceCorrelation {
  readonly firstIndex: number;
  readonly secondIndex: number;
  /** Correlation coefficient, −1 to 1. */
  readonly correlationFactor: number;
}

export interface ToleranceStackInput {
  /** What is built of the parts: a function of their values, in the order of `parts`. */
  readonly quantity: (values: readonly number[]) => number;
  /** The parts, 1 to 16. */
  readonly parts: readonly TolerancePart[];
  readonly correlations?: readonly ToleranceCorrelation[];
  /** A whole number; the same seed gives the same simulation. */
  readonly seed: number;
  /** Simulated builds, 1000 to 2 000 000; 100 000 unless given. */
  readonly runs?: number;
  /** Share of builds within the intervals, above 0 and below 1; 0.95 unless given. */
  readonly coverageFraction?: number;
}

/** What one part adds. */
export interface ToleranceShare {
  readonly name: string;
  /** Change of the quantity for one unit of the part. */
  readonly sensitivityFactor: number;
  /** Standard uncertainty of the quantity from this part alone. */
  readonly deviationValue: number;
  /** Its share of the squares, as a fraction; correlations apart. */
  readonly varianceFraction: number;
}

export interface ToleranceStackResult {
  /** The quantity with every part as written. */
  readonly nominalValue: number;
  /** The worst that parts within their bounds can do. */
  readonly corners: ToleranceCorners;
  /** Tolerances added as the root of the sum of squares; null where a part has no bounds. */
  readonly rootSumSquare: {
    readonly halfWidthValue: number | null;
    readonly lowValue: number | null;
    readonly highValue: number | null;
    readonly code: 'bounded' | 'unbounded-part';
  };
  /** Combined standard uncertainty by the law of propagation. */
  readonly deviationValue: number;
  readonly shares: readonly ToleranceShare[];
  /** Simulation: mean, standard deviation, intervals that hold the share of builds. */
  readonly monteCarlo: SpreadResult & {
    readonly runs: number;
    readonly seed: number;
    readonly coverageFraction: number;
  };
}

interface Resolved {
  readonly value: number;
  readonly halfWidth: number | null;
  readonly deviation: number;
  readonly shape: 'rectangular' | 'triangular' | 'arcsine' | 'normal';
}

/**
 * What tolerances of parts do to what is built of them, in three ways side by side.
 *
 * Corners: every part at one of its bounds; nothing within tolerance can be worse, so design inputs by it. Root sum
 * square: what is unlikely to be passed when many parts differ independently. Simulation: how many units of a batch
 * lie where. In a network of resistors every voltage rises or falls steadily with each resistance, so the corners
 * are exact; for other quantities `corners.code` says when they are not.
 *
 * $$u^2(y) = \sum_i c_i^2 u_i^2 + 2 \sum_{i<j} c_i c_j u_i u_j r_{ij} \qquad c_i = \frac{\partial f}{\partial x_i}$$
 *
 * @param input quantity, parts, seed
 * @returns nominal value, corners, root sum square, standard uncertainty with its shares, simulation
 * @throws InputError when a field is missing or out of range, or the quantity is not a number for some build
 * @source jcgm-100, 5.1 and 5.2 (propagation); jcgm-101, 7 (simulation, coverage intervals; from memory)
 * @example toleranceStack({ quantity: ([a, b]) => b / (a + b), parts: [{ name: 'R1', value: 1000, toleranceFraction: 0.01 }, { name: 'R2', value: 1000, toleranceFraction: 0.01 }], seed: 1 }).corners.lowValue //=> 0.495
 */
export function toleranceStack(input: ToleranceStackInput): ToleranceStackResult {
  const fn = 'toleranceStack';
  needInput(fn, input);
  const { quantity, parts, correlations = [], seed, runs = 100_000, coverageFraction = 0.95 } = input;
  if (typeof quantity !== 'function') {
    throw new InputError(fn, 'quantity', quantity === undefined ? 'missing' : 'object', quantity, 'must be a function');
  }
  needList(fn, 'parts', parts, 1);
  needBetween(fn, 'parts.length', parts.length, 1, 16);
  needInteger(fn, 'seed', seed, -2147483648);
  needInteger(fn, 'runs', runs, 1000);
  needBetween(fn, 'runs', runs, 1000, 2_000_000);
  needBetween(fn, 'coverageFraction', coverageFraction, 0.01, 0.9999);
  const f = (values: readonly number[]): number => {
    const y = quantity(values);
    if (!(y - y === 0)) throw new InputError(fn, 'quantity', 'finite', y, 'must give a finite number within tolerance');
    return y;
  };
  const resolved = parts.map((part, i) => resolve(fn, part, i));
  const matrix = correlationMatrix(fn, correlations, resolved);
  const nominal = resolved.map((part) => part.value);
  const nominalValue = f(nominal);
  const slopes = resolved.map((part, i) => slopeAt(f, nominal, i, part.halfWidth ?? part.deviation));
  const each = resolved.map((part, i) => (slopes[i] as number) * part.deviation);
  let variance = 0;
  matrix.forEach((row, i) => {
    row.forEach((r, j) => {
      variance += (each[i] as number) * (each[j] as number) * r;
    });
  });
  const squares = each.reduce((sum, u) => sum + u * u, 0);
  const simulated = spreadOf(simulate(f, resolved, matrix, seed, runs), coverageFraction);
  const half = resolved.some((part) => part.halfWidth === null)
    ? null
    : Math.hypot(...resolved.map((part, i) => (slopes[i] as number) * (part.halfWidth as number)));
  return {
    nominalValue,
    corners: cornersOf(
      f,
      nominal,
      resolved.map((part) => part.halfWidth),
      simulated,
    ),
    rootSumSquare: {
      halfWidthValue: half,
      lowValue: half === null ? null : nominalValue - half,
      highValue: half === null ? null : nominalValue + half,
      code: half === null ? 'unbounded-part' : 'bounded',
    },
    deviationValue: Math.sqrt(Math.max(0, variance)),
    shares: parts.map((part, i) => ({
      name: part.name,
      sensitivityFactor: slopes[i] as number,
      deviationValue: Math.abs(each[i] as number),
      varianceFraction: squares === 0 ? 0 : (each[i] as number) ** 2 / squares,
    })),
    monteCarlo: { ...simulated, runs, seed, coverageFraction },
  };
}

/** Standard deviation of each shape in half-widths: a/√3, a/√6, a/√2 (JCGM 100, 4.3.7, 4.3.9, H.1). */
const DEVIATIONS = { rectangular: 3, triangular: 6, arcsine: 2 } as const;

function resolve(fn: string, part: TolerancePart, i: number): Resolved {
  needObject(fn, `parts[${i}]`, part);
  const { name, value, toleranceFraction, halfWidthValue, deviationValue, distribution = 'rectangular' } = part;
  const at = `parts[${i}]`;
  needText(fn, `${at}.name`, name);
  needEarthly(fn, `${at}.value`, value);
  needOneOf(fn, `${at}.distribution`, distribution, ['rectangular', 'triangular', 'arcsine']);
  const given = [toleranceFraction, halfWidthValue, deviationValue].filter((width) => width !== undefined).length;
  if (given !== 1) {
    throw new InputError(
      fn,
      `${at}.toleranceFraction`,
      'oneOfFields',
      given === 0 ? undefined : given,
      'or halfWidthValue or deviationValue must be given, one only',
    );
  }
  if (deviationValue !== undefined) {
    needNoLessThan(fn, `${at}.deviationValue`, deviationValue);
    return { value, halfWidth: deviationValue === 0 ? 0 : null, deviation: deviationValue, shape: 'normal' };
  }
  if (toleranceFraction !== undefined) {
    needTolerance(fn, `${at}.toleranceFraction`, toleranceFraction);
  } else needNoLessThan(fn, `${at}.halfWidthValue`, halfWidthValue as number);
  const halfWidth = toleranceFraction === undefined ? (halfWidthValue as number) : Math.abs(value) * toleranceFraction;
  return { value, halfWidth, deviation: halfWidth / Math.sqrt(DEVIATIONS[distribution]), shape: distribution };
}

/** Slope of the quantity in one part, by a difference over a small share of its width. */
function slopeAt(f: (x: readonly number[]) => number, nominal: readonly number[], i: number, width: number): number {
  const value = nominal[i] as number;
  // Wide enough to be seen in the digits of the value, and never 0.
  const step = Math.max(width * 1e-3, Math.abs(value) * 1e-7, 1e-300);
  const up = f(nominal.map((x, k) => (k === i ? x + step : x)));
  const down = f(nominal.map((x, k) => (k === i ? x - step : x)));
  return (up - down) / (value + step - (value - step));
}

function correlationMatrix(
  fn: string,
  correlations: readonly ToleranceCorrelation[],
  parts: readonly Resolved[],
): readonly (readonly number[])[] {
  needList(fn, 'correlations', correlations);
  const matrix = parts.map((_, i) => parts.map((__, j) => (i === j ? 1 : 0)));
  correlations.forEach((correlation, k) => {
    needObject(fn, `correlations[${k}]`, correlation);
    const at = `correlations[${k}]`;
    const { firstIndex, secondIndex, correlationFactor } = correlation;
    needInteger(fn, `${at}.firstIndex`, firstIndex);
    needInteger(fn, `${at}.secondIndex`, secondIndex);
    needBetween(fn, `${at}.correlationFactor`, correlationFactor, -1, 1);
    const first = parts[firstIndex];
    const second = parts[secondIndex];
    if (first?.shape !== 'normal' || second?.shape !== 'normal' || firstIndex === secondIndex) {
      throw new InputError(fn, `${at}.firstIndex`, 'range', firstIndex, 'must name two parts given by deviationValue');
    }
    (matrix[firstIndex] as number[])[secondIndex] = correlationFactor;
    (matrix[secondIndex] as number[])[firstIndex] = correlationFactor;
  });
  return matrix;
}

/** Lower triangle whose product with its transpose is the matrix (Cholesky). */
function triangleOf(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const triangle: number[][] = [];
  matrix.forEach((row, i) => {
    const line: number[] = [];
    for (let j = 0; j <= i; j++) {
      const other = j === i ? line : (triangle[j] as number[]);
      let sum = row[j] as number;
      for (let k = 0; k < j; k++) sum -= (line[k] as number) * (other[k] as number);
      if (i === j && sum < -1e-12) {
        const must = 'must be possible together';
        throw new InputError('toleranceStack', 'correlations', 'range', row[j], must, 'no such set of numbers exists');
      }
      const pivot = j === i ? 0 : (other[j] as number);
      line.push(i === j ? Math.sqrt(Math.max(0, sum)) : pivot === 0 ? 0 : sum / pivot);
    }
    triangle.push(line);
  });
  return triangle;
}

function simulate(
  f: (values: readonly number[]) => number,
  parts: readonly Resolved[],
  matrix: readonly (readonly number[])[],
  seed: number,
  runs: number,
): Float64Array {
  const draw = randomDraw(seed);
  const triangle = triangleOf(matrix);
  const outcomes = new Float64Array(runs);
  const normals = new Float64Array(parts.length);
  const values = new Array<number>(parts.length).fill(0);
  for (let run = 0; run < runs; run++) {
    parts.forEach(({ value, halfWidth, deviation, shape }, i) => {
      if (shape === 'normal') {
        normals[i] = draw.normal();
        let mixed = 0;
        const row = triangle[i] as readonly number[];
        for (let j = 0; j <= i; j++) mixed += (row[j] as number) * (normals[j] as number);
        values[i] = value + deviation * mixed;
        return;
      }
      const u = draw.uniform();
      const share =
        shape === 'rectangular'
          ? 2 * u - 1
          : shape === 'triangular'
            ? u + draw.uniform() - 1
            : Math.sin(2 * Math.PI * u);
      values[i] = value + (halfWidth as number) * share;
    });
    outcomes[run] = f(values);
  }
  return outcomes;
}
