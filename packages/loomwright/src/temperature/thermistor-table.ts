import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';
import type { ThermistorCurve } from '../table/index.js';
import { atResistance, type Law, lawOf } from './law.js';
import { resistanceRange } from './thermistor-temperature-each.js';

export interface ThermistorTableInput {
  /** The sensor's curve, of any kind but `inverse-cubic`. */
  readonly curve: ThermistorCurve;
  /** Smallest resistance in Ω that will be looked up, above 0. */
  readonly lowestOhm: number;
  /** Largest resistance in Ω, above the smallest. */
  readonly highestOhm: number;
  /** Largest error in K that is allowed, 1e-6 or more. */
  readonly maxErrorK: number;
  /** Go on beyond the range that the curve is meant for; false unless given. */
  readonly extrapolate?: boolean;
}

/** A curve as straight pieces for `thermistorTableEach`. Plain data: it can be kept, sent and loaded. */
export interface ThermistorTable {
  /** Bits of the mantissa that choose the piece. */
  readonly mantissaBits: number;
  /** Place of the first piece: the high word of its smallest resistance, shifted. */
  readonly firstPlace: number;
  /** °C = pieces[2k] + pieces[2k + 1] × Ω in piece k. */
  readonly pieces: Float64Array;
  readonly lowestOhm: number;
  readonly highestOhm: number;
  /** Proven bound of the error against the exact curve, in K: at most what was allowed. */
  readonly boundK: number;
}

/**
 * A thermistor's curve as straight pieces with a proven error, for millions of readings.
 *
 * The pieces are not searched: the exponent and the first bits of the mantissa of a number name its piece, so
 * that pieces are equally wide in proportion. The number of bits is the least that keeps the bound.
 *
 * With $g = T_{LL} - T_L$ (derivatives by $L = \ln R$) a chord over $[R_0, R_1]$ is off by at most
 *
 * $$\frac{(R_1 - R_0)^2}{8 R_0^2} \max |g|$$
 *
 * and, where $g$ keeps its sign, the chord moved by half of that is off by half. The maximum is taken by interval
 * arithmetic over each piece, not by sampling; 10⁻⁹ K is added for rounding.
 *
 * @param input curve, range of resistance, allowed error
 * @returns the table, with its bound in K
 * @throws InputError when a field is missing or out of range, the range leaves the curve, the curve does not fall
 * there, or the bound would need more than 2²⁰ pieces
 * @source circuit-theory (linear interpolation error bound)
 * @example thermistorTable({ curve: ntc10k3mcd1, lowestOhm: 200, highestOhm: 300000, maxErrorK: 0.003 }).mantissaBits //=> 5
 */
export function thermistorTable(input: ThermistorTableInput): ThermistorTable {
  const fn = 'thermistorTable';
  needInput(fn, input);
  const { curve, lowestOhm, highestOhm, maxErrorK, extrapolate = false } = input;
  const law = lawOf(fn, curve);
  if (law.kind === 'inverse-cubic') {
    throw new InputError(fn, 'curve.kind', 'oneOf', curve.kind, 'must give 1/T by resistance: fit its points first');
  }
  needMoreThan(fn, 'lowestOhm', lowestOhm);
  needMoreThan(fn, 'highestOhm', highestOhm, lowestOhm);
  needMoreThan(fn, 'maxErrorK', maxErrorK, 1e-6);
  const { low, high } = resistanceRange(fn, law, curve, extrapolate);
  if (lowestOhm < low)
    throw new InputError(fn, 'lowestOhm', 'range', lowestOhm, `must be at least ${low.toPrecision(6)} Ω`);
  if (highestOhm > high)
    throw new InputError(fn, 'highestOhm', 'range', highestOhm, `must be at most ${high.toPrecision(6)} Ω`);
  // Wide pieces reach beyond the range, where the curve may turn: then the next narrower ones are tried.
  let turns = false;
  for (let mantissaBits = 2; mantissaBits <= 16; mantissaBits++) {
    const table = build(fn, law, lowestOhm, highestOhm, mantissaBits);
    if (table === 'too many') break;
    turns = table === 'turns';
    if (table !== 'turns' && table.boundK <= maxErrorK) return table;
  }
  if (turns) throw new InputError(fn, 'curve', 'range', curve, 'must fall with temperature over the whole range');
  throw new InputError(fn, 'maxErrorK', 'range', maxErrorK, 'must leave a table of at most a million pieces');
}

type TableLaw = Exclude<Law, { readonly kind: 'inverse-cubic' }>;

function build(
  fn: string,
  law: TableLaw,
  lowestOhm: number,
  highestOhm: number,
  mantissaBits: number,
): ThermistorTable | 'too many' | 'turns' {
  const firstPlace = placeOf(lowestOhm, mantissaBits);
  const count = placeOf(highestOhm, mantissaBits) - firstPlace + 1;
  if (count > 1 << 20) return 'too many';
  const pieces = new Float64Array(2 * count);
  let boundK = 0;
  for (let k = 0; k < count; k++) {
    const from = startOf(firstPlace + k, mantissaBits);
    const to = startOf(firstPlace + k + 1, mantissaBits);
    const curvature = curvatureOver(law, Math.log(from), Math.log(to));
    if (curvature === null) return 'turns';
    const [least, most] = curvature;
    const chordK = ((to - from) ** 2 / (8 * from * from)) * Math.max(Math.abs(least), Math.abs(most));
    const oneSided = least >= 0 || most <= 0;
    const fromC = atResistance(fn, law, from).tempC;
    const slope = (atResistance(fn, law, to).tempC - fromC) / (to - from);
    // A curve that is bent upwards lies below its chord; half of what it can sag there evens both sides out.
    const move = oneSided ? (least >= 0 ? -chordK / 2 : chordK / 2) : 0;
    pieces[2 * k] = fromC - slope * from + move;
    pieces[2 * k + 1] = slope;
    boundK = Math.max(boundK, (oneSided ? chordK / 2 : chordK) + 1e-9);
  }
  return { mantissaBits, firstPlace, pieces, lowestOhm, highestOhm, boundK };
}

/** The place of a number: its exponent and first mantissa bits as one whole number, which rises with it. */
function placeOf(x: number, mantissaBits: number): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, x);
  return view.getInt32(0) >> (20 - mantissaBits);
}

/** The smallest number at a place. */
function startOf(place: number, mantissaBits: number): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setInt32(0, place << (20 - mantissaBits));
  return view.getFloat64(0);
}

type Interval = readonly [low: number, high: number];

/** Bounds of T_LL − T_L between two values of ln R, or null where the law may turn or 1/T reach 0 there. */
function curvatureOver(law: TableLaw, fromL: number, toL: number): Interval | null {
  if (law.kind === 'reciprocal') {
    const shift = Math.log(law.reciprocal.refOhm);
    return curvature(law.reciprocal.p, [fromL - shift, toL - shift]);
  }
  // Printed points: the union over the cubics that the piece touches. A bend in the slope at a joint does no harm,
  // since the bound needs the second derivative between joints alone.
  const { x, y, slope } = law.points;
  let all: Interval | null = null;
  for (let i = -1; i < x.length; i++) {
    const from = Math.max(fromL, i < 0 ? -Infinity : (x[i] as number));
    const to = Math.min(toL, i + 1 >= x.length ? Infinity : (x[i + 1] as number));
    if (!(to > from)) continue;
    const at = Math.max(0, Math.min(i, x.length - 1));
    const x0 = x[at] as number;
    const y0 = y[at] as number;
    const m0 = slope[at] as number;
    let p: readonly number[] = [y0, m0];
    if (i >= 0 && i + 1 < x.length) {
      const h = (x[i + 1] as number) - x0;
      const rise = ((y[i + 1] as number) - y0) / h;
      const m1 = slope[i + 1] as number;
      p = [y0, m0, (3 * rise - 2 * m0 - m1) / h, (m0 + m1 - 2 * rise) / (h * h)];
    }
    const part = curvature(p, [from - x0, to - x0]);
    if (part === null) return null;
    all = all === null ? part : [Math.min(all[0], part[0]), Math.max(all[1], part[1])];
  }
  return all;
}

/** T_LL − T_L for Y = p(L): 2 Y'²/Y³ + (Y' − Y'')/Y², bounded over an interval of L. */
function curvature(p: readonly number[], l: Interval): Interval | null {
  const first = p.slice(1).map((x, i) => x * (i + 1));
  const second = first.slice(1).map((x, i) => x * (i + 1));
  const y = bounds(p, l);
  const y1 = bounds(first, l);
  const y2 = bounds(second, l);
  // A little within what atResistance takes, so that it answers at both ends.
  if (!(y[0] > 1 / 2270 && y[1] < 1 / 0.2 && y1[0] > 1e-9 && y1[1] < 1e3)) return null;
  const bend: Interval = [y1[0] - y2[1], y1[1] - y2[0]];
  const bendLow = bend[0] >= 0 ? bend[0] / (y[1] * y[1]) : bend[0] / (y[0] * y[0]);
  const bendHigh = bend[1] >= 0 ? bend[1] / (y[0] * y[0]) : bend[1] / (y[1] * y[1]);
  const low = (2 * y1[0] * y1[0]) / y[1] ** 3 + bendLow;
  const high = (2 * y1[1] * y1[1]) / y[0] ** 3 + bendHigh;
  const slack = 1e-12 * Math.max(Math.abs(low), Math.abs(high));
  return [low - slack, high + slack];
}

/** A polynomial over an interval: Taylor at the middle, each term bounded by itself, so that little is given away. */
function bounds(p: readonly number[], [low, high]: Interval): Interval {
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  let q = p.slice();
  let centre = 0;
  let spread = 0;
  let power = 1;
  for (let k = 0; k < p.length; k++) {
    let value = 0;
    for (let i = q.length - 1; i >= 0; i--) value = value * middle + (q[i] as number);
    if (k === 0) centre = value;
    else spread += Math.abs(value) * power;
    power *= half / (k + 1);
    q = q.slice(1).map((x, i) => x * (i + 1));
  }
  const slack = 1e-14 * (Math.abs(centre) + spread);
  return [centre - spread - slack, centre + spread + slack];
}
