import {
  KG_PER_POUND,
  KPA_PER_PSI,
  L_PER_IMPERIAL_GALLON,
  L_PER_US_GALLON,
  M_PER_FOOT,
  M_PER_MILE,
  MM_PER_INCH,
  STANDARD_GRAVITY,
} from 'loomwright';

/** A unit's name as SI units that mathjs knows, with powers, and a factor from an exact definition. */
export interface NamedUnit {
  readonly factor: number;
  readonly terms: readonly (readonly [name: string, power: number])[];
}

/** SI symbols (case matters), each with the prefixes that we take before it. */
const SI: Readonly<Record<string, string>> = {
  m: 'u m c d k',
  g: 'u m k',
  s: 'n u m',
  h: '',
  A: 'u m k',
  K: 'm',
  V: 'u m k',
  ohm: 'u m k M G',
  W: 'u m k M',
  J: 'u m k M',
  N: 'm k',
  Pa: 'h k M',
  bar: 'm',
  Hz: 'm k M G',
  H: 'n u m',
  F: 'p n u m',
  C: 'u m k',
  S: 'u m',
  L: 'u m c d',
  l: 'u m c d',
  lm: 'k',
  rad: 'm',
};

/** Products written as one word: the prefix goes to the first of the two. */
const PRODUCTS: Readonly<Record<string, readonly [string, string]>> = {
  Ah: ['A', 'h'],
  As: ['A', 's'],
  Wh: ['W', 'h'],
  Ws: ['W', 's'],
  VA: ['V', 'A'],
  Vs: ['V', 's'],
  Nm: ['N', 'm'],
};

/** Whole words, in small letters, and the symbol that they stand for. Long prefixes are taken off before. */
const WORDS: Readonly<Record<string, string>> = {
  metre: 'm',
  meter: 'm',
  gram: 'g',
  gramme: 'g',
  second: 's',
  sec: 's',
  hour: 'h',
  hr: 'h',
  amp: 'A',
  ampere: 'A',
  kelvin: 'K',
  volt: 'V',
  ohm: 'ohm',
  watt: 'W',
  joule: 'J',
  newton: 'N',
  pascal: 'Pa',
  bar: 'bar',
  hertz: 'Hz',
  henry: 'H',
  farad: 'F',
  coulomb: 'C',
  siemens: 'S',
  litre: 'L',
  liter: 'L',
  lumen: 'lm',
  radian: 'rad',
  foot: 'ft',
  feet: 'ft',
  inch: 'in',
  inche: 'in',
  yard: 'yd',
  mile: 'mi',
  pound: 'lb',
  ounce: 'oz',
  tonne: 't',
  minute: 'min',
  day: 'd',
  degree: 'deg',
  percent: '%',
  knot: 'kn',
};

const LONG_PREFIXES: Readonly<Record<string, string>> = {
  pico: 'p',
  nano: 'n',
  micro: 'u',
  milli: 'm',
  centi: 'c',
  kilo: 'k',
  mega: 'M',
  meg: 'M',
  kil: 'k',
};

/** Units of the trade, in small letters: capitals make no difference to them. */
function trade(word: string): NamedUnit | null {
  switch (word) {
    case 'ft':
      return { factor: M_PER_FOOT, terms: [['m', 1]] };
    case 'kft':
      return { factor: 1000 * M_PER_FOOT, terms: [['m', 1]] };
    case 'in':
      return { factor: MM_PER_INCH, terms: [['mm', 1]] };
    case 'mil':
    case 'thou':
      return { factor: MM_PER_INCH / 1000, terms: [['mm', 1]] };
    case 'yd':
      return { factor: 3 * M_PER_FOOT, terms: [['m', 1]] };
    case 'mi':
      return { factor: M_PER_MILE, terms: [['m', 1]] };
    case 'cmil':
      return { factor: (Math.PI / 4) * (MM_PER_INCH / 1000) ** 2, terms: [['mm', 2]] };
    case 'kcmil':
    case 'mcm':
      return { factor: 1000 * (Math.PI / 4) * (MM_PER_INCH / 1000) ** 2, terms: [['mm', 2]] };
    case 'lb':
    case 'lbm':
      return { factor: KG_PER_POUND, terms: [['kg', 1]] };
    case 'oz':
      return { factor: KG_PER_POUND / 16, terms: [['kg', 1]] };
    case 't':
      return { factor: 1000, terms: [['kg', 1]] };
    case 'lbf':
      return { factor: KG_PER_POUND * STANDARD_GRAVITY, terms: [['N', 1]] };
    case 'kgf':
      return { factor: STANDARD_GRAVITY, terms: [['N', 1]] };
    case 'gn':
      return {
        factor: STANDARD_GRAVITY,
        terms: [
          ['m', 1],
          ['s', -2],
        ],
      };
    case 'psi':
      return { factor: KPA_PER_PSI, terms: [['kPa', 1]] };
    case 'atm':
      return { factor: 101.325, terms: [['kPa', 1]] };
    case 'mmhg':
      return { factor: 13.5951 * STANDARD_GRAVITY, terms: [['Pa', 1]] };
    case 'inhg':
      return { factor: MM_PER_INCH * 13.5951 * STANDARD_GRAVITY, terms: [['Pa', 1]] };
    case 'usgal':
      return { factor: L_PER_US_GALLON, terms: [['L', 1]] };
    case 'impgal':
      return { factor: L_PER_IMPERIAL_GALLON, terms: [['L', 1]] };
    case 'cc':
    case 'ccm':
      return { factor: 1, terms: [['cm', 3]] };
    case 'min':
      return { factor: 60, terms: [['s', 1]] };
    case 'd':
      return { factor: 24, terms: [['h', 1]] };
    case 'mph':
      return perHour(M_PER_MILE, 'm');
    case 'kph':
    case 'kmh':
      return perHour(1, 'km');
    case 'kn':
      return perHour(1852, 'm');
    case 'rpm':
      return {
        factor: 1 / 60,
        terms: [
          ['cycle', 1],
          ['s', -1],
        ],
      };
    case 'rev':
    case 'r':
    case 'revolution':
      return { factor: 1, terms: [['cycle', 1]] };
    case 'hp':
      return { factor: 550 * M_PER_FOOT * KG_PER_POUND * STANDARD_GRAVITY, terms: [['W', 1]] };
    case 'ps':
      return { factor: 75 * STANDARD_GRAVITY, terms: [['W', 1]] };
    case 'degc':
      return { factor: 1, terms: [['K', 1]] };
    case 'degf':
      return { factor: 5 / 9, terms: [['K', 1]] };
    case 'deg':
      return { factor: 1, terms: [['deg', 1]] };
    case 'arcmin':
      return { factor: 1 / 60, terms: [['deg', 1]] };
    case 'arcsec':
      return { factor: 1 / 3600, terms: [['deg', 1]] };
    case 'bit':
      return { factor: 1, terms: [['bits', 1]] };
    case 'kbit':
      return { factor: 1e3, terms: [['bits', 1]] };
    case 'mbit':
      return { factor: 1e6, terms: [['bits', 1]] };
    case 'db':
      return { factor: 1, terms: [['dB', 1]] };
    case '%':
      return { factor: 0.01, terms: [] };
    case '‰':
      return { factor: 0.001, terms: [] };
    case 'ppm':
      return { factor: 1e-6, terms: [] };
    case 'pulse':
    case 'event':
    case 'count':
      return { factor: 1, terms: [] };
    default:
      return null;
  }
}

function perHour(factor: number, length: string): NamedUnit {
  return {
    factor,
    terms: [
      [length, 1],
      ['h', -1],
    ],
  };
}

/** A symbol of SI, with a prefix or without. */
function si(symbol: string): NamedUnit | null {
  if (Object.hasOwn(SI, symbol)) return { factor: 1, terms: [[symbol, 1]] };
  const base = symbol.slice(1);
  if (Object.hasOwn(SI, base) && SI[base]?.split(' ').includes(symbol.charAt(0))) {
    return { factor: 1, terms: [[symbol, 1]] };
  }
  const whole = Object.hasOwn(PRODUCTS, symbol);
  const product = whole ? PRODUCTS[symbol] : Object.hasOwn(PRODUCTS, base) ? PRODUCTS[base] : undefined;
  if (product === undefined) return null;
  const [first, second] = product;
  const prefixed = si(whole ? first : `${symbol.charAt(0)}${first}`);
  return prefixed === null ? null : { factor: 1, terms: [...prefixed.terms, [second, 1]] };
}

/** Names of the trade that capitals would turn into something else. */
const AS_WRITTEN = ['d', 't', 'kn', 'r'];

/** A unit by the name that people write, or null. */
export function namedUnit(name: string): NamedUnit | null {
  const exact = si(name);
  if (exact !== null) return exact;
  const ohm = /^([umkKMG]?)(?:ohm|Ohm|OHM)s?$/.exec(name);
  if (ohm) return si(`${(ohm[1] as string).replace('K', 'k')}ohm`);
  const low = name.toLowerCase();
  if (name !== low && AS_WRITTEN.includes(low)) return null;
  if (low === 'ps' && name !== 'PS') return null;
  const word = low.length > 3 || low === 'lbs' || low === 'hrs' ? low.replace(/s$/, '') : low;
  for (const form of [low, word]) {
    const found = trade(form) ?? (Object.hasOwn(WORDS, form) ? fromSymbol(WORDS[form] as string) : null);
    if (found !== null) return found;
  }
  for (const [long, short] of Object.entries(LONG_PREFIXES)) {
    const rest = word.slice(long.length);
    if (word.startsWith(long) && Object.hasOwn(WORDS, rest)) {
      const found = si(`${short}${WORDS[rest] as string}`);
      if (found !== null) return found;
    }
  }
  return null;
}

function fromSymbol(symbol: string): NamedUnit | null {
  return si(symbol) ?? trade(symbol);
}

/** Every symbol that `namedUnit` knows, for the hint at a mistyped one. */
export function unitNames(): string[] {
  const prefixed = Object.entries(SI).flatMap(([base, prefixes]) => [
    base,
    ...(prefixes === '' ? [] : prefixes.split(' ').map((prefix) => `${prefix}${base}`)),
  ]);
  const others = [
    'Ah',
    'mAh',
    'Wh',
    'kWh',
    'Nm',
    'VA',
    'ft',
    'in',
    'yd',
    'mi',
    'cmil',
    'kcmil',
    'lb',
    'oz',
    't',
    'lbf',
  ];
  const more = ['psi', 'min', 'd', 'mph', 'rpm', 'hp', 'deg', 'bit', 'kbit', 'Mbit', 'dB', 'ppm', 'inHg', 'mmHg', 'cc'];
  return [...prefixed, ...others, ...more];
}
