// Exact decimal arithmetic: a number that someone typed is the decimal that stands there, and a factor such as 0.3048
// is exact, so their product must be the nearest double of the exact product. 7 in are 177.8 mm, not
// 177.79999999999998; 3.4 mΩ are 0.0034 Ω.

/** num / den × 10^exp, exactly. `den` is above 0. */
export interface Rational {
  readonly num: bigint;
  readonly den: bigint;
  readonly exp: number;
}

/** A decimal as JavaScript writes it ('-12.5', '3e-4') as a rational. The caller has checked its form. */
export function rational(text: string): Rational {
  const [mantissa = '0', exponent = '0'] = text.toLowerCase().split('e');
  const [whole = '', part = ''] = mantissa.split('.');
  return { num: BigInt(`${whole === '-' ? '-0' : whole}${part}` || '0'), den: 1n, exp: Number(exponent) - part.length };
}

/** a × b. */
export function times(a: Rational, b: Rational): Rational {
  return { num: a.num * b.num, den: a.den * b.den, exp: a.exp + b.exp };
}

/** a ÷ b; b is not 0. */
export function over(a: Rational, b: Rational): Rational {
  const sign = b.num < 0n ? -1n : 1n;
  return { num: a.num * b.den * sign, den: a.den * b.num * sign, exp: a.exp - b.exp };
}

/** a + b. */
export function plus(a: Rational, b: Rational): Rational {
  const exp = Math.min(a.exp, b.exp);
  const num = a.num * b.den * 10n ** BigInt(a.exp - exp) + b.num * a.den * 10n ** BigInt(b.exp - exp);
  return { num, den: a.den * b.den, exp };
}

/** The nearest double; Infinity where it is too large, 0 where it is too small. */
export function toNumber({ num, den, exp }: Rational): number {
  if (num === 0n) return 0;
  if (den === 1n) return Number(`${num}e${exp}`);
  const shift = Math.max(0, 40 - String(num).length + String(den).length);
  return Number(`${(num * 10n ** BigInt(shift)) / den}e${exp - shift}`);
}

/**
 * A conversion factor as a rational. Exact definitions are short decimals or one over a short decimal (3.6, 1.8); a
 * double that lies within rounding of one is taken to be it. Any other keeps the digits of the double.
 */
export function exactFactor(factor: number): Rational {
  const short = Number(factor.toPrecision(12));
  if (isClose(short, factor)) return rational(String(short));
  const inverse = Number((1 / factor).toPrecision(12));
  if (isClose(inverse, 1 / factor)) return over({ num: 1n, den: 1n, exp: 0 }, rational(String(inverse)));
  return rational(String(factor));
}

function isClose(a: number, b: number): boolean {
  return Math.abs(a - b) <= 8 * 2.220446049250313e-16 * Math.abs(b);
}

/** value × numerator ÷ denominator, correctly rounded; the value is a finite number. */
export function scaled(value: number, numerator: number, denominator: number): number {
  const top = times(rational(String(value)), exactFactor(numerator));
  return toNumber(denominator === 1 ? top : over(top, exactFactor(denominator)));
}

/** Degrees Fahrenheit as degrees Celsius: an offset and a scale, both exact. */
export function fahrenheitToCelsius(fahrenheit: Rational): Rational {
  return over(times(plus(fahrenheit, rational('-32')), rational('5')), rational('9'));
}

/** Degrees Celsius as degrees Fahrenheit. */
export function celsiusToFahrenheit(celsius: Rational): Rational {
  return plus(times(celsius, rational('1.8')), rational('32'));
}
