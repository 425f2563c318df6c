import { over, plus, type Rational, rational } from './decimal.js';

/** A number at the head of a text, and the rest of the text. */
export interface NumberText {
  readonly ok: true;
  readonly value: Rational;
  /** True where every digit is a nought: only then may the result be 0. */
  readonly zero: boolean;
  readonly rest: string;
}

/** Why there is no number. */
export interface NumberFault {
  readonly ok: false;
  readonly rule: 'number' | 'comma' | 'magnitude';
  readonly hint: string;
}

const FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/**
 * One spelling for the spaces, minus signs, primes, ohms, micros and fractions that people, keyboards and typesetters write. A thin
 * or fixed space between groups of three digits goes: that is how `formatQuantity` writes 12 000.
 */
export function tidy(text: string): string {
  return text
    .replace(/[\u200b-\u200f\u2060\ufeff]/g, '')
    .replace(/(\d)[\u2009\u202f\u00a0](?=\d{3}(?!\d))/g, '$1')
    .replace(/[\s\u00a0\u2000-\u200a\u202f\u205f\u3000]+/g, ' ')
    .replace(/[\u2212\u2010-\u2013\ufe63\uff0d]/g, '-')
    .replace(/\u2126/g, '\u03a9')
    .replace(/\u03bc/g, '\u00b5')
    .replace(/[″“”]/g, '"')
    .replace(/[′’‘´`]/g, "'")
    .replace(/(\d?) ?([½¼¾⅛⅜⅝⅞])/g, (_, whole: string, part: string) => {
      return `${whole === '' ? '' : `${whole} `}${FRACTIONS[part] as string}`;
    })
    .replace(/⁄/g, '/')
    .trim();
}

/** Reads the number at the head of a tidy text: 12, −0.5, .5, 1e-3, 1.2×10⁻³, 3/8, 1 1/2. It never throws. */
export function numberText(text: string): NumberText | NumberFault {
  const comma = /^[+-]? ?(\d*),(\d+)/.exec(text) ?? /^[+-]? ?(\d*\.\d+),(\d+)/.exec(text);
  if (comma) return commaFault(text, comma[1] as string, comma[2] as string);
  const fraction = /^([+-]?) ?(?:(\d+)[ -])?(\d+) ?\/ ?(\d+)(?![\d.])/.exec(text);
  if (fraction) {
    const [all, sign = '', whole = '0', top = '0', bottom = '1'] = fraction;
    if (/^0+$/.test(bottom)) {
      return { ok: false, rule: 'number', hint: `nothing is divided by 0; the gauge is written '${top}/0 AWG'` };
    }
    const part = over(rational(top), rational(bottom));
    return signed(sign, plus(rational(whole), part), text.slice(all.length));
  }
  const found = /^([+-]?) ?(\d+(?:\.\d*)?|\.\d+)(?:[eE]([+-]?\d+)| ?[×x*] ?10(?:\^([+-]?\d+)|(⁻?[⁰¹²³⁴-⁹]+)))?/.exec(
    text,
  );
  if (!found) return { ok: false, rule: 'number', hint: noNumber(text) };
  const [all, sign = '', mantissa = '0', e, caret, raised] = found;
  const exponent = Number(e ?? caret ?? (raised === undefined ? '0' : plainDigits(raised)));
  const zero = !/[1-9]/.test(mantissa);
  if (Math.abs(exponent) > 400) {
    return { ok: false, rule: 'magnitude', hint: 'no computer number is that large or small' };
  }
  const value = rational(`${mantissa.startsWith('.') ? `0${mantissa}` : mantissa}e${exponent}`);
  return { ...signed(sign, value, text.slice(all.length)), zero };
}

function signed(sign: string, value: Rational, rest: string): NumberText {
  const num = sign === '-' ? -value.num : value.num;
  return { ok: true, value: { ...value, num }, zero: num === 0n, rest };
}

function plainDigits(raised: string): string {
  return [...raised].map((c) => (c === '⁻' ? '-' : String('⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(c)))).join('');
}

function commaFault(text: string, before: string, after: string): NumberFault {
  const whole = before === '' ? '0' : before;
  const groups = after.length === 3 && /^[1-9]/.test(before) && !before.includes('.');
  const hint =
    groups && !/^[+-]? ?\d+,\d{3}[.,]/.test(text)
      ? `a comma can mean two things: write ${whole}${after} or ${whole}.${after}`
      : /,.*[.,]\d|\..*,/.test(text)
        ? 'write the number with one point and no comma'
        : `write ${whole}.${after}, not ${before},${after}`;
  return { ok: false, rule: 'comma', hint };
}

function noNumber(text: string): string {
  if (/^[<>≤≥~≈±]/.test(text)) return 'write one number, without a sign of comparison';
  if (/^[+-]+$/.test(text)) return 'a sign alone is no number';
  if (/^[+-]?(?:inf|nan|∞)/i.test(text)) return 'write a finite number';
  if (/^\$|^€|^£/.test(text)) return 'money is not a quantity here';
  return 'it does not begin with a number';
}
