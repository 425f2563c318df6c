// The one file that imports mathjs. It takes two parts of it and loads neither before it is asked for:
// its Unit class over plain numbers (no matrices, fractions or big numbers: a fifth of the size), and its parser of
// formulas from mathjs/number. Both work together: a formula may be evaluated with units for its names.
import * as mathjs from 'mathjs';
import { create, evaluateDependencies, parseDependencies } from 'mathjs/number';
import type { MathJsInstance, MathNode, Unit, UnitCtor } from 'mathjs';

export type { MathNode, Unit } from 'mathjs';

/** What mathjs's Unit class asks for. Ours are plain numbers. */
interface UnitNeeds {
  readonly config: object;
  readonly addScalar: (a: number, b: number) => number;
  readonly subtractScalar: (a: number, b: number) => number;
  readonly multiplyScalar: (a: number, b: number) => number;
  readonly divideScalar: (a: number, b: number) => number;
  readonly pow: (a: number, b: number) => number;
  readonly abs: (a: number) => number;
  readonly fix: (a: number) => number;
  readonly round: (a: number, digits?: number) => number;
  readonly equal: (a: number, b: number) => boolean;
  readonly isNumeric: (a: unknown) => boolean;
  readonly format: (a: number) => string;
  readonly number: (a: number) => number;
  readonly Complex: unknown;
  readonly BigNumber: unknown;
  readonly Fraction: unknown;
}

let unitClass: UnitCtor | undefined;

function units(): UnitCtor {
  if (unitClass !== undefined) return unitClass;
  // Exported by mathjs and documented for builds of one's own, but missing in its types.
  const make = (mathjs as unknown as { readonly createUnitClass: (needs: UnitNeeds) => UnitCtor }).createUnitClass;
  const made = make({
    config: { number: 'number', predictable: false, relTol: 1e-12, absTol: 1e-15 },
    addScalar: (a, b) => a + b,
    subtractScalar: (a, b) => a - b,
    multiplyScalar: (a, b) => a * b,
    divideScalar: (a, b) => a / b,
    pow: (a, b) => a ** b,
    abs: Math.abs,
    fix: Math.trunc,
    round: (a, digits = 0) => Math.round(a * 10 ** digits) / 10 ** digits,
    equal: (a, b) => Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b)),
    isNumeric: (a) => typeof a === 'number',
    format: String,
    number: Number,
    // It writes its unit of reactive power with the imaginary unit. We name no such unit.
    Complex: { I: Number.NaN },
    BigNumber: null,
    // It writes its degree Fahrenheit as new Fraction(5, 9).
    Fraction: function fraction(n: number, d: number) {
      return { isFraction: true, valueOf: () => n / d };
    },
  });
  made.createUnitSingle('lm', { prefixes: 'short' });
  made.createUnitSingle('dB', '');
  unitClass = made;
  return made;
}

/**
 * How many of one unit make up another, or null where the two differ in dimension. Both are in mathjs's names:
 * `unitRatio('mV', 'V')` is 0.001.
 */
export function unitRatio(from: string, to: string): number | null {
  const Unit = units();
  // A second on both sides, so that a text may be empty: mathjs knows no unit without a name.
  const ratio = new Unit(1, from === '' ? 's' : `${from} * s`).divide(new Unit(1, to === '' ? 's' : `${to} * s`));
  return typeof ratio === 'number' ? ratio : null;
}

/** A number with a unit in mathjs's names, for the names of a formula; '' gives a plain number. */
export function unit(value: number, name: string): Unit | number {
  return name === '' ? value : new (units())(value, name);
}

let formulas: MathJsInstance | undefined;

function formulaMath(): MathJsInstance {
  if (formulas !== undefined) return formulas;
  const made = create({ parseDependencies, evaluateDependencies } as never, {});
  const { typed } = made;
  const both = (name: string, plain: (a: number, b: number) => number, rest: object): unknown =>
    typed(name, { 'number, number': plain, ...rest } as never);
  const one = (name: string, plain: (a: number) => number, rest: object = {}): unknown =>
    typed(name, { number: plain, ...rest } as never);
  const turn = (name: string, plain: (a: number) => number): unknown =>
    one(name, plain, { Unit: (a: Unit) => plain(a.toNumber('rad')) });
  // Sums of different dimensions are refused by the Unit methods; so is a number and a unit, by having no signature.
  const sum = (name: string, plain: (a: number, b: number) => number): unknown =>
    both(name, plain, { 'Unit, Unit': (a: Unit, b: Unit) => added(a, b, plain) });
  made.import(
    {
      add: sum('add', (a, b) => a + b),
      subtract: sum('subtract', (a, b) => a - b),
      min: sum('min', Math.min),
      max: sum('max', Math.max),
      multiply: both('multiply', (a, b) => a * b, {
        'Unit, Unit': (a: Unit, b: Unit) => a.multiply(b),
        'number, Unit': (a: number, b: Unit) => stretched(b, a),
        'Unit, number': stretched,
      }),
      divide: both('divide', (a, b) => a / b, {
        'Unit, Unit': (a: Unit, b: Unit) => a.divide(b),
        'number, Unit': (a: number, b: Unit) => stretched(raised(b, -1), a),
        'Unit, number': (a: Unit, b: number) => stretched(a, 1 / b),
      }),
      pow: both('pow', (a, b) => a ** b, { 'Unit, number': raised }),
      sqrt: one('sqrt', Math.sqrt, { Unit: (a: Unit) => raised(a, 0.5) }),
      cbrt: one('cbrt', Math.cbrt, { Unit: (a: Unit) => raised(a, 1 / 3) }),
      abs: one('abs', Math.abs, { Unit: (a: Unit) => stretched(a, a.value < 0 ? -1 : 1) }),
      unaryMinus: one('unaryMinus', (a) => -a, { Unit: (a: Unit) => stretched(a, -1) }),
      unaryPlus: one('unaryPlus', (a) => a, { Unit: (a: Unit) => a }),
      exp: one('exp', Math.exp),
      log: one('log', Math.log),
      log10: one('log10', Math.log10),
      sin: turn('sin', (a) => Math.sin(a)),
      cos: turn('cos', (a) => Math.cos(a)),
      tan: turn('tan', (a) => Math.tan(a)),
      asin: one('asin', Math.asin),
      acos: one('acos', Math.acos),
      atan: one('atan', Math.atan),
      pi: Math.PI,
      e: Math.E,
    },
    { override: true },
  );
  formulas = made;
  return made;
}

function raised(a: Unit, power: number): Unit {
  return (a as unknown as { pow: (power: number) => Unit }).pow(power);
}

/** A quantity some times over. */
function stretched(a: Unit, times: number): Unit {
  const product = a.clone();
  product.value = a.value * times;
  return product;
}

/** Two quantities of one dimension put together by a function of their values. */
function added(a: Unit, b: Unit, plain: (a: number, b: number) => number): Unit {
  if (!a.equalBase(b)) throw new TypeError(`Units do not match: ${a.toString()} and ${b.toString()}`);
  const sum = a.clone();
  sum.value = plain(a.value, b.value);
  return sum;
}

/** A formula in mathjs syntax as a tree, for TeX, for walking, or for evaluating with a scope. */
export function parse(text: string): MathNode {
  return formulaMath().parse(text);
}

/** The value of a formula with numbers or units for its names. Units that do not fit throw. */
export function evaluate(text: string, scope: Readonly<Record<string, Unit | number>>): Unit | number {
  return formulaMath().evaluate(text, { ...scope }) as Unit | number;
}

/** What the rest of the house uses of mathjs. */
export const math: {
  readonly unit: typeof unit;
  readonly parse: typeof parse;
  readonly evaluate: typeof evaluate;
} = { unit, parse, evaluate };
