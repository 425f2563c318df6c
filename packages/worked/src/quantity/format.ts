import { InputError } from 'loomwright';

/** Which way a display may round. `up` is towards +∞ and `down` towards −∞, so that neither flatters a limit. */
export type Round = 'nearest' | 'up' | 'down';

/** How a number is shown. */
export interface FormatOptions {
  /** Significant digits, 1 to 17; 3 unless given. */
  readonly digits?: number;
  /** Digits after the point in the unit shown, 0 to 20, in place of `digits`: for columns. */
  readonly decimals?: number;
  /** Which way to round; `nearest` (a half away from 0) unless given. */
  readonly round?: Round;
  /** Leaves out noughts at the end of the fraction: 2.5 instead of 2.50. For values that someone typed. */
  readonly trim?: boolean;
  /** Ordinary spaces, hyphen as minus, no groups of digits: for files and for code. */
  readonly plain?: boolean;
  /** Why there is no number, shown where the value is null. */
  readonly because?: string;
}

/** How a quantity is shown. */
export interface FormatQuantityOptions extends FormatOptions {
  /**
   * `natural` picks the prefix where the trade uses one (Ω, A, W, F, H, Hz, s, J, not V), `auto` for volts too,
   * `none` never, and a prefix such as `m` or `k` takes that one. `natural` unless given; `none` with `decimals`.
   */
  readonly prefix?: 'natural' | 'auto' | 'none' | Prefix;
}

/** A prefix of SI. */
export type Prefix = 'p' | 'n' | 'µ' | 'm' | 'k' | 'M' | 'G';

/** A quantity in its parts, for TeX, HTML or a table with the unit at the head. */
export interface FormattedQuantity {
  /** The number as text, or '–'. */
  readonly number: string;
  /** The unit with its prefix, '' where there is none to show. */
  readonly unit: string;
  /** Both, with the space that belongs between them. */
  readonly text: string;
}

const EXPONENT: Readonly<Record<Prefix | '', number>> = {
  p: -12,
  n: -9,
  µ: -6,
  m: -3,
  '': 0,
  k: 3,
  M: 6,
  G: 9,
};

/** Prefixes that the trade puts before a unit, small to large; '' is none. */
const NATURAL: Readonly<Record<string, readonly (Prefix | '')[]>> = {
  Ω: ['µ', 'm', '', 'k', 'M'],
  'Ω/m': ['µ', 'm', ''],
  A: ['µ', 'm', ''],
  W: ['µ', 'm', '', 'k'],
  J: ['µ', 'm', '', 'k'],
  F: ['p', 'n', 'µ', 'm'],
  H: ['n', 'µ', 'm', ''],
  Hz: ['', 'k', 'M'],
  s: ['n', 'µ', 'm', ''],
};

/** Narrow space that does not break: number and unit stay on one line, as the SI Brochure (5.4.3) asks for a space. */
const THIN = '\u202f';
const MINUS = '\u2212';

/**
 * A quantity as text, for people: `3.40 mΩ`, `−28.6 °C`, `12.7 V`, `3.00 %`, `29 800 A²s`.
 *
 * The one formatter of the house. Rounding works on the shortest decimal that stands for the number, so 0.1 rounded
 * up stays 0.100; rounded up, the text read back is never below the value, rounded down never above it. A drop, a
 * heat, a current to be borne is shown rounded up, volts left over and an ampacity rounded down.
 * Number and unit are joined by U+202F, a narrow space that does not break (none before °); the minus is U+2212.
 *
 * @param value number in `unit`, or null for "no number"
 * @param unit unit as `fieldUnit` names it; 'fraction' is shown in %, 'gₙ' as g, '1' and '' without a unit
 * @param options digits or decimals, rounding, prefix
 * @returns the text; '–' for null, with the reason in brackets where one is given
 * @throws InputError for NaN, ±Infinity, or digits out of range
 * @example formatQuantity(0.0034, 'Ω', { plain: true }) //=> '3.40 mΩ'
 */
export function formatQuantity(value: number | null, unit: string, options: FormatQuantityOptions = {}): string {
  return formatParts(value, unit, options).text;
}

/** The same as `formatQuantity`, in its parts. @example formatParts(0.0034, 'Ω').unit //=> 'mΩ' */
export function formatParts(
  value: number | null,
  unit: string,
  options: FormatQuantityOptions = {},
): FormattedQuantity {
  if (value === null) {
    return {
      number: '–',
      unit: '',
      text: options.because === undefined ? '–' : `–${gap(options)}(${options.because})`,
    };
  }
  const rounded = roundedOf('formatQuantity', value, options, unit === 'fraction' ? 2 : 0, (lead) =>
    prefixFor(unit, lead, options),
  );
  const shown = unit === 'fraction' ? '%' : unit === 'gₙ' ? 'g' : unit === '1' ? '' : `${rounded.prefix}${unit}`;
  const number = write(rounded, options);
  const space = shown === '' || shown === '°' ? '' : gap(options);
  return { number, unit: shown, text: `${number}${space}${shown}` };
}

/**
 * A number as text, for people, with the same rounding as `formatQuantity`.
 *
 * @param value number, or null for "no number"
 * @param options digits or decimals, rounding
 * @returns the text; '–' for null, with the reason in brackets where one is given
 * @throws InputError for NaN, ±Infinity, or digits out of range
 * @example formatNumber(0.0125) //=> '0.0125'
 */
export function formatNumber(value: number | null, options: FormatOptions = {}): string {
  return formatParts(value, '', options).text;
}

function gap({ plain = false }: FormatOptions): string {
  return plain ? ' ' : THIN;
}

/** digits × 10^place, in a unit with this prefix. */
interface Rounded {
  readonly negative: boolean;
  readonly digits: string;
  readonly place: number;
  readonly prefix: Prefix | '';
}

/** Rounds the shortest decimal of a number, then sets the point for the prefix. */
function roundedOf(
  fn: string,
  value: number,
  options: FormatOptions,
  shift: number,
  prefixOf: (lead: number | null) => Prefix | '',
): Rounded {
  const { digits = 3, decimals, round = 'nearest' } = options;
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    throw new InputError(
      fn,
      'value',
      typeof value === 'number' ? 'finite' : 'number',
      value,
      'must be a finite number',
    );
  }
  needWhole(fn, 'digits', digits, 1, 17);
  if (decimals !== undefined) needWhole(fn, 'decimals', decimals, 0, 20);
  if (round !== 'nearest' && round !== 'up' && round !== 'down') {
    throw new InputError(fn, 'round', 'oneOf', round, "must be 'nearest', 'up' or 'down'");
  }
  const negative = value < 0;
  // As 1.2345e-7: a digit, a point if there are more, the rest.
  const shortest = Math.abs(value).toExponential();
  const end = shortest.indexOf('e');
  const all = shortest.charAt(0) + shortest.slice(2, Math.max(2, end));
  const place = Number(shortest.slice(end + 1)) - all.length + 1 + shift;
  if (value === 0) {
    const prefix = decimals === undefined ? '' : prefixOf(null);
    return { negative: false, digits: '0', place: decimals === undefined ? 0 : -decimals, prefix };
  }
  const away = round === 'nearest' ? null : (round === 'up') !== negative;
  if (decimals !== undefined) {
    const prefix = prefixOf(null);
    const cut = roundAt(all, place - EXPONENT[prefix], -decimals, away);
    return { negative: negative && /[1-9]/.test(cut), digits: cut, place: -decimals, prefix };
  }
  const lead = place + all.length - 1;
  let last = lead - digits + 1;
  let kept = roundAt(all, place, last, away);
  if (kept.length > digits) {
    kept = kept.slice(0, -1);
    last++;
  }
  const prefix = prefixOf(last + kept.length - 1);
  return { negative, digits: kept, place: last - EXPONENT[prefix], prefix };
}

/** digits × 10^place cut or filled at 10^last. `away` from 0, towards it, or to the nearest (null). */
function roundAt(digits: string, place: number, last: number, away: boolean | null): string {
  if (place >= last) return `${digits}${'0'.repeat(place - last)}`;
  const cut = last - place;
  const filled = digits.padStart(cut + 1, '0');
  const head = filled.slice(0, -cut);
  const tail = filled.slice(-cut);
  const raise = away === null ? tail >= '5' : away && /[1-9]/.test(tail);
  // A double has at most 17 digits; up to 15 of them are whole numbers that Number holds exactly.
  if (head.length <= 15) return String(Number(head) + (raise ? 1 : 0));
  return String(BigInt(head) + (raise ? 1n : 0n));
}

function prefixFor(unit: string, lead: number | null, options: FormatQuantityOptions): Prefix | '' {
  const { prefix = options.decimals === undefined ? 'natural' : 'none' } = options;
  if (prefix === 'none') return '';
  if (prefix !== 'natural' && prefix !== 'auto') {
    if (!Object.hasOwn(EXPONENT, prefix)) {
      throw new InputError('formatQuantity', 'prefix', 'oneOf', prefix, 'must be a prefix of SI');
    }
    return prefix;
  }
  const offered = prefix === 'auto' && unit === 'V' ? (['µ', 'm', '', 'k'] as const) : NATURAL[unit];
  if (offered === undefined || lead === null) return '';
  return offered.findLast((p) => EXPONENT[p] <= lead) ?? (offered[0] as Prefix | '');
}

/** The digits with their point, groups and sign; a power of ten where there would be too many noughts. */
function write({ negative, digits, place }: Rounded, options: FormatOptions): string {
  const { decimals, plain = false, trim = false } = options;
  const sign = negative ? (plain ? '-' : MINUS) : '';
  const lead = place + digits.length - 1;
  if (decimals === undefined && digits !== '0' && (lead >= 9 || lead < -5)) {
    const text = pointed(digits, 1 - digits.length, trim, true);
    return `${sign}${text}${plain ? `e${lead}` : `×10${raised(lead)}`}`;
  }
  return `${sign}${pointed(digits, place, trim, plain)}`;
}

/** digits × 10^place in plain notation; five or more digits before the point stand in groups of three. */
function pointed(digits: string, place: number, trim: boolean, plain: boolean): string {
  const padded = place > 0 ? `${digits}${'0'.repeat(place)}` : digits.padStart(1 - place, '0');
  const cut = padded.length - Math.max(0, -place);
  const whole = padded.slice(0, cut);
  const grouped = plain || whole.length < 5 ? whole : whole.replace(/\B(?=(?:\d{3})+$)/g, THIN);
  const part = trim ? padded.slice(cut).replace(/0+$/, '') : padded.slice(cut);
  return part === '' ? grouped : `${grouped}.${part}`;
}

function raised(exponent: number): string {
  return [...String(exponent)].map((c) => (c === '-' ? '⁻' : '⁰¹²³⁴⁵⁶⁷⁸⁹'.charAt(Number(c)))).join('');
}

function needWhole(fn: string, field: string, value: number, low: number, high: number): void {
  if (!Number.isInteger(value) || value < low || value > high) {
    throw new InputError(fn, field, 'range', value, `must be a whole number from ${low} to ${high}`);
  }
}
