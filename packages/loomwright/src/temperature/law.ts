import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needFinite, needList, needOneOf, needTempC } from '../error/guard.js';
import { findRoot, monotoneCurve, monotonePlace, monotoneValue, type MonotoneCurve } from '../number/index.js';
import type { PointCurve, ThermistorCurve } from '../table/index.js';
import { ZERO_C_IN_K } from '../unit/index.js';

// The laws of thermistor curves, all in L = ln(R/ref) and Y = 1/T. Four of the six kinds are one polynomial Y(L).

/** Y = p₀ + p₁ L + p₂ L² + … with L = ln(R/refOhm). */
export interface Reciprocal {
  readonly refOhm: number;
  readonly p: readonly number[];
  readonly zeroCInK: number;
}

/** A place on a curve: kelvins by the curve's own zero, and how Y goes with L there. */
export interface Place {
  readonly tempC: number;
  readonly resistanceOhm: number;
  /** dY/dL = 1/β at the place: β in K is the local Beta. */
  readonly slope: number;
}

const KINDS = ['steinhart-hart', 'beta', 'odd-four-term', 'cubic', 'inverse-cubic', 'points'];

/** A curve must be one of the six kinds with finite numbers. */
function needCurve(fn: string, curve: ThermistorCurve): void {
  if (typeof curve !== 'object' || curve === null) {
    const hint = 'import one, such as ntc2252, or fit one with fitSteinhartHart';
    throw new InputError(fn, 'curve', curve === undefined ? 'missing' : 'object', curve, 'must be a curve', hint);
  }
  needOneOf(fn, 'curve.kind', curve.kind, KINDS);
  if (curve.lowTempC !== undefined) needTempC(fn, 'curve.lowTempC', curve.lowTempC);
  if (curve.highTempC !== undefined) needTempC(fn, 'curve.highTempC', curve.highTempC);
  if (curve.kind === 'points') {
    needList(fn, 'curve.rows', curve.rows, 2);
    return;
  }
  if ('refOhm' in curve) needMoreThan(fn, 'curve.refOhm', curve.refOhm);
  if (curve.kind === 'beta') {
    needTempC(fn, 'curve.refTempC', curve.refTempC);
    needMoreThan(fn, 'curve.betaK', curve.betaK);
    return;
  }
  const letters = curve as unknown as Readonly<Record<string, number>>;
  for (const field of curve.kind === 'steinhart-hart' ? ['a', 'b', 'c'] : ['a', 'b', 'c', 'd']) {
    needFinite(fn, `curve.${field}`, letters[field] as number);
  }
  if ('zeroCInK' in curve && curve.zeroCInK !== undefined && !(curve.zeroCInK >= 273 && curve.zeroCInK <= 273.2)) {
    throw new InputError(fn, 'curve.zeroCInK', 'range', curve.zeroCInK, 'must lie from 273 to 273.2');
  }
}

/** A checked curve made ready: one of three laws. */
export type Law =
  | { readonly kind: 'reciprocal'; readonly reciprocal: Reciprocal }
  | { readonly kind: 'points'; readonly points: MonotoneCurve }
  | { readonly kind: 'inverse-cubic'; readonly refOhm: number; readonly p: readonly number[] };

/** Checks a curve and makes its law ready. */
export function lawOf(fn: string, curve: ThermistorCurve): Law {
  needCurve(fn, curve);
  switch (curve.kind) {
    case 'steinhart-hart':
      return polynomialLaw(1, [curve.a, curve.b, 0, curve.c], curve.zeroCInK);
    case 'odd-four-term':
      return polynomialLaw(1, [curve.a, curve.b, 0, curve.c, 0, curve.d], curve.zeroCInK);
    case 'beta':
      return polynomialLaw(curve.refOhm, [1 / (curve.refTempC + ZERO_C_IN_K), 1 / curve.betaK]);
    case 'cubic':
      return polynomialLaw(curve.refOhm, [curve.a, curve.b, curve.c, curve.d]);
    case 'points':
      return { kind: 'points', points: pointCurve(fn, curve) };
    case 'inverse-cubic':
      return { kind: 'inverse-cubic', refOhm: curve.refOhm, p: [curve.a, curve.b, curve.c, curve.d] };
  }
}

function polynomialLaw(refOhm: number, p: readonly number[], zeroCInK: number = ZERO_C_IN_K): Law {
  return { kind: 'reciprocal', reciprocal: { refOhm, p, zeroCInK } };
}

/** A polynomial and its slope. */
export function polynomial(p: readonly number[], x: number): { value: number; slope: number } {
  let value = 0;
  let slope = 0;
  for (let i = p.length - 1; i >= 0; i--) {
    slope = slope * x + value;
    value = value * x + (p[i] as number);
  }
  return { value, slope };
}

/** Where a law is at a resistance. No range is checked but that of physics: 1/T above 0 and rising with R. */
export function atResistance(fn: string, law: Law, resistanceOhm: number): Place {
  let y: number;
  let slope: number;
  let zeroCInK = ZERO_C_IN_K;
  if (law.kind === 'reciprocal') {
    zeroCInK = law.reciprocal.zeroCInK;
    ({ value: y, slope } = polynomial(law.reciprocal.p, Math.log(resistanceOhm / law.reciprocal.refOhm)));
  } else if (law.kind === 'points') {
    ({ value: y, slope } = joined(fn, law.points, Math.log(resistanceOhm)));
  } else {
    const wanted = Math.log(resistanceOhm / law.refOhm);
    y = solveRising(fn, 'resistanceOhm', resistanceOhm, law.p, wanted, 1 / 298.15, 1e-4);
    slope = 1 / polynomial(law.p, y).slope;
  }
  return place(fn, 'resistanceOhm', resistanceOhm, resistanceOhm, 1 / y - zeroCInK, y, slope);
}

/** Where a law is at a temperature. */
export function atTemp(fn: string, law: Law, tempC: number): Place {
  if (law.kind === 'reciprocal') {
    const { refOhm, p, zeroCInK } = law.reciprocal;
    const y = 1 / (tempC + zeroCInK);
    const l = logOf(fn, tempC, p, y);
    return place(fn, 'tempC', tempC, refOhm * Math.exp(l), tempC, y, polynomial(p, l).slope);
  }
  const y = 1 / (tempC + ZERO_C_IN_K);
  if (law.kind === 'points') {
    const { x, y: ys, slope } = law.points;
    const end = y < (ys[0] as number) ? 0 : y > (ys[ys.length - 1] as number) ? ys.length - 1 : -1;
    const l =
      end < 0
        ? monotonePlace({ fn, curve: law.points, y })
        : (x[end] as number) + (y - (ys[end] as number)) / (slope[end] as number);
    return place(fn, 'tempC', tempC, Math.exp(l), tempC, y, joined(fn, law.points, l).slope);
  }
  const { value, slope } = polynomial(law.p, y);
  return place(fn, 'tempC', tempC, law.refOhm * Math.exp(value), tempC, y, 1 / slope);
}

/** Throws where a place lies outside what the curve is meant for, unless asked to go on; says whether it does. */
export function needWithin(
  fn: string,
  curve: ThermistorCurve,
  { tempC }: Place,
  extrapolate: boolean,
  field: string,
  given: number,
): boolean {
  const rows = curve.kind === 'points' ? curve.rows : [];
  const low = curve.lowTempC ?? rows[0]?.[0] ?? -Infinity;
  const high = curve.highTempC ?? rows[rows.length - 1]?.[0] ?? Infinity;
  const outside = tempC < low - 1e-9 || tempC > high + 1e-9;
  if (outside && !extrapolate) {
    const means = field === 'tempC' ? '' : ` (that is ${Number(tempC.toFixed(1))} °C)`;
    const must = `must stay within the curve, ${low} to ${high} °C${means}`;
    throw new InputError(fn, field, 'range', given, must, 'say extrapolate: true to go on without support');
  }
  return outside;
}

function place(
  fn: string,
  field: 'resistanceOhm' | 'tempC',
  given: number,
  resistanceOhm: number,
  tempC: number,
  y: number,
  slope: number,
): Place {
  // Beyond these a curve is a formula only: no sensor is there, and the numbers run out.
  const within = tempC >= -273 && tempC <= 2000 && resistanceOhm >= 1e-12 && resistanceOhm <= 1e15;
  if (!(y > 0 && slope > 1e-9 && slope < 1e3 && within)) {
    throw new InputError(fn, field, 'range', given, 'must lie where the curve falls with temperature');
  }
  return { tempC, resistanceOhm, slope };
}

/** L for a Y: closed for straight lines and for a + b L + c L³, by bracketing for the other two. */
function logOf(fn: string, tempC: number, p: readonly number[], y: number): number {
  const [a = 0, b = 0, c2 = 0, c3 = 0, , c5 = 0] = p;
  const odd = c2 === 0 ? cubicRoot(fn, tempC, a, b, c3, y) : (y - a) / b;
  return c2 === 0 && c5 === 0 ? odd : solveRising(fn, 'tempC', tempC, p, y, odd, 0.05);
}

/**
 * The root of a + b L + c L³ = y on the rising branch, in closed form. With u³ − v³ = (y − a)/c and u v = b/(3c) it
 * is u − v; written as a quotient nothing cancels, and c → 0 goes over into (y − a)/b.
 */
function cubicRoot(fn: string, tempC: number, a: number, b: number, c: number, y: number): number {
  const lift = y - a;
  if (c === 0) return lift / b;
  const third = b / (3 * c);
  const half = lift / (2 * c);
  if (c > 0 && b > 0) {
    const root = Math.sqrt(third ** 3 + half * half);
    const u = Math.cbrt(root + half);
    const v = Math.cbrt(root - half);
    return (2 * half) / (u * u + u * v + v * v);
  }
  // c below 0: the curve rises only between two turning points; the middle of three roots lies there.
  const turn = Math.sqrt(-third);
  const ratio = -half / (turn * turn * turn);
  if (!(Math.abs(ratio) <= 1)) {
    throw new InputError(fn, 'tempC', 'range', tempC, 'must lie where the curve falls with temperature');
  }
  return 2 * turn * Math.sin(Math.asin(ratio) / 3);
}

/** Where a rising polynomial has a value: steps outwards from a start until it is bracketed, never past a turn. */
function solveRising(
  fn: string,
  field: string,
  given: number,
  p: readonly number[],
  wanted: number,
  start: number,
  firstStep: number,
): number {
  const f = (x: number): number => polynomial(p, x).value - wanted;
  const direction = f(start) < 0 ? 1 : -1;
  let near = start;
  let step = firstStep;
  for (let i = 0; i < 60; i++) {
    const far = near + direction * step;
    if (!(polynomial(p, far).slope > 0)) break;
    if (f(far) * direction >= 0) {
      return findRoot({ fn, f, low: near, high: far, tolerance: 1e-15 * Math.max(1e-3, Math.abs(far)) });
    }
    near = far;
    step *= 1.4;
  }
  throw new InputError(fn, field, 'range', given, 'must lie where the curve falls with temperature');
}

/** Printed points as a monotone cubic of 1/T over ln R. The coldest point is the last. */
function pointCurve(fn: string, curve: PointCurve): MonotoneCurve {
  const x: number[] = [];
  const y: number[] = [];
  for (let i = curve.rows.length - 1; i >= 0; i--) {
    const [tempC, resistanceOhm] = curve.rows[i] as readonly [number, number];
    needTempC(fn, `curve.rows[${i}][0]`, tempC);
    needMoreThan(fn, `curve.rows[${i}][1]`, resistanceOhm);
    x.push(Math.log(resistanceOhm));
    y.push(1 / (tempC + ZERO_C_IN_K));
    const n = x.length - 1;
    if (n > 0 && !((x[n] as number) > (x[n - 1] as number) && (y[n] as number) > (y[n - 1] as number))) {
      const must = 'must be in order from cold to hot, with resistance falling';
      throw new InputError(fn, `curve.rows[${i}]`, 'order', resistanceOhm, must);
    }
  }
  return monotoneCurve({ fn, x, y, limiter: 'fritsch-carlson' });
}

/** The cubic inside its points, the straight line of its last slope beyond them. */
function joined(fn: string, points: MonotoneCurve, x: number): { value: number; slope: number } {
  const n = points.x.length - 1;
  const end = x < (points.x[0] as number) ? 0 : x > (points.x[n] as number) ? n : -1;
  if (end < 0) return monotoneValue({ fn, curve: points, x });
  const slope = points.slope[end] as number;
  return { value: (points.y[end] as number) + slope * (x - (points.x[end] as number)), slope };
}
