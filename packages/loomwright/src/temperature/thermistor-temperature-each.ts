import { InputError } from '../error/index.js';
import { needInput } from '../error/guard.js';
import type { ThermistorCurve } from '../table/index.js';
import { atResistance, atTemp, type Law, lawOf, polynomial } from './law.js';

export interface ThermistorTemperatureEachInput {
  /** The sensors' common curve. */
  readonly curve: ThermistorCurve;
  /** Resistances in Ω, each above 0 and within the curve. */
  readonly resistanceOhm: Float64Array;
  /** Where the results go, as long as the resistances; a new array unless given. */
  readonly into?: Float64Array;
  /** Go on beyond the range that the curve is meant for; false unless given. */
  readonly extrapolate?: boolean;
}

export interface ThermistorTemperatureEachResult {
  /** Temperatures in °C, one a resistance. */
  readonly tempC: Float64Array;
}

/**
 * Temperature in °C of many thermistor readings by one curve: `thermistorTemperature` for a whole array, exact.
 *
 * Every reading is checked. Where a known error of a few millikelvins is allowed, `thermistorTableEach` is several
 * times faster.
 *
 * @param input curve and resistances
 * @returns °C, one a resistance
 * @throws InputError naming the first reading that is not a number above 0 within the curve
 * @source steinhart-hart-1968; the curve's own
 * @example thermistorTemperatureEach({ curve: ntc10k3mcd1, resistanceOhm: new Float64Array([32649.92]) }).tempC[0] //=> 0
 */
export function thermistorTemperatureEach(input: ThermistorTemperatureEachInput): ThermistorTemperatureEachResult {
  const fn = 'thermistorTemperatureEach';
  needInput(fn, input);
  const { curve, resistanceOhm, extrapolate = false } = input;
  const law = lawOf(fn, curve);
  const into = needArrays(fn, resistanceOhm, input.into);
  const { low, high } = resistanceRange(fn, law, curve, extrapolate);
  const from = law.kind === 'reciprocal' ? fastFrom(law, low, high) : null;
  const stopped = law.kind === 'reciprocal' && from !== null ? fill(law, resistanceOhm, into, from, high) : 0;
  for (let i = stopped; i < resistanceOhm.length; i++) {
    // The slow way: laws that need a closer look, and the reading at which the loop above stopped, for its error.
    const ohm = resistanceOhm[i] as number;
    if (!(ohm >= low && ohm <= high)) throw outOfRange(fn, i, ohm, low, high);
    into[i] = atResistance(fn, law, ohm).tempC;
  }
  return { tempC: into };
}

/** Both arrays must be of numbers and as long as one another; makes the second where it is not given. */
export function needArrays(fn: string, resistanceOhm: Float64Array, into: Float64Array | undefined): Float64Array {
  if (!(resistanceOhm instanceof Float64Array)) {
    const rule = resistanceOhm === undefined ? 'missing' : 'list';
    throw new InputError(fn, 'resistanceOhm', rule, resistanceOhm, 'must be a Float64Array');
  }
  if (into === undefined) return new Float64Array(resistanceOhm.length);
  if (!(into instanceof Float64Array) || into.length !== resistanceOhm.length) {
    throw new InputError(fn, 'into', 'list', into, 'must be a Float64Array as long as resistanceOhm');
  }
  return into;
}

/** The error of one reading of an array. */
export function outOfRange(fn: string, i: number, ohm: number, low: number, high: number): InputError {
  const must = `must lie from ${low.toPrecision(4)} to ${high.toPrecision(4)} Ω`;
  return new InputError(fn, `resistanceOhm[${i}]`, ohm === ohm ? 'range' : 'finite', ohm, must);
}

/** The resistances between which a curve may be used: its own range, or all that are above 0. */
export function resistanceRange(
  fn: string,
  law: Law,
  curve: ThermistorCurve,
  extrapolate: boolean,
): { low: number; high: number } {
  const rows = curve.kind === 'points' ? curve.rows : [];
  const lowTempC = curve.lowTempC ?? rows[0]?.[0];
  const highTempC = curve.highTempC ?? rows[rows.length - 1]?.[0];
  const atHot = extrapolate || highTempC === undefined ? 0 : atTemp(fn, law, highTempC).resistanceOhm * (1 - 1e-12);
  const atCold = extrapolate || lowTempC === undefined ? 0 : atTemp(fn, law, lowTempC).resistanceOhm * (1 + 1e-12);
  return { low: atHot > 0 ? atHot : 1e-12, high: atCold > 0 ? atCold : 1e12 };
}

/**
 * The resistance from which a polynomial needs no second look: it rises everywhere, and lies between 2000 °C and
 * 0.15 K from there to the largest. Null where that is not sure.
 */
function fastFrom(
  { reciprocal: { refOhm, p } }: Law & { readonly kind: 'reciprocal' },
  low: number,
  high: number,
): number | null {
  const [, b = 0, c2 = 0, c3 = 0, , c5 = 0] = p;
  const y = (l: number): number => polynomial(p, l).value;
  let cold = Math.log(high / refOhm);
  let hot = Math.log(low / refOhm);
  const rises = b > 1e-9 && b < 1e3 && c5 >= 0 && c3 >= 0 && c2 * c2 <= 3 * b * c3;
  const leastY = 4.4e-4;
  if (!rises || !(y(cold) < 1 / 0.15 && y(cold) > leastY)) return null;
  if (y(hot) > leastY) return low;
  while (cold - hot > 1e-6) {
    const middle = (hot + cold) / 2;
    if (y(middle) > leastY) cold = middle;
    else hot = middle;
  }
  return refOhm * Math.exp(cold);
}

/** The loops for polynomials in ln R; each returns where it stopped: the length, or the first reading in doubt. */
function fill(
  { reciprocal: { refOhm, p, zeroCInK } }: Law & { readonly kind: 'reciprocal' },
  resistanceOhm: Float64Array,
  into: Float64Array,
  low: number,
  high: number,
): number {
  const [a = 0, b = 0, c2 = 0, c3 = 0, c4 = 0, c5 = 0] = p;
  const shift = Math.log(refOhm);
  if (c2 === 0 && c5 === 0 && (shift === 0 || c3 === 0)) {
    return fillOdd(resistanceOhm, into, low, high, a - b * shift, b, c3, zeroCInK);
  }
  const n = resistanceOhm.length;
  for (let i = 0; i < n; i++) {
    const ohm = resistanceOhm[i] as number;
    if (!(ohm >= low && ohm <= high)) return i;
    const l = Math.log(ohm) - shift;
    into[i] = 1 / (a + l * (b + l * (c2 + l * (c3 + l * (c4 + l * c5))))) - zeroCInK;
  }
  return n;
}

/** The three letters of Steinhart and Hart, and Beta, which lacks the third. */
function fillOdd(
  resistanceOhm: Float64Array,
  into: Float64Array,
  low: number,
  high: number,
  a: number,
  b: number,
  c: number,
  zeroCInK: number,
): number {
  const n = resistanceOhm.length;
  for (let i = 0; i < n; i++) {
    const ohm = resistanceOhm[i] as number;
    if (!(ohm >= low && ohm <= high)) return i;
    const l = Math.log(ohm);
    into[i] = 1 / (a + l * (b + c * l * l)) - zeroCInK;
  }
  return n;
}
