/** What the dimension of a unit is called, by the powers of SI base names; null where we have no word for it. */
export function quantityName(powers: Readonly<Record<string, number>>): string | null {
  const key = dimensionKey(powers);
  return key === null ? null : (NAMES[key] ?? null);
}

/** m, kg, s, A, K of each name that `unitParts` gives, and four more that mathjs keeps apart. */
const DIMENSIONS: Readonly<Record<string, string>> = {
  m: 'm1',
  g: 'kg1',
  s: 's1',
  h: 's1',
  A: 'A1',
  K: 'K1',
  V: 'kg1 m2 s-3 A-1',
  ohm: 'kg1 m2 s-3 A-2',
  W: 'kg1 m2 s-3',
  J: 'kg1 m2 s-2',
  N: 'kg1 m1 s-2',
  Pa: 'kg1 m-1 s-2',
  bar: 'kg1 m-1 s-2',
  Hz: 's-1',
  H: 'kg1 m2 s-2 A-2',
  F: 'kg-1 m-2 s4 A2',
  C: 'A1 s1',
  S: 'kg-1 m-2 s3 A2',
  L: 'm3',
  l: 'm3',
  lm: 'lm1',
  rad: 'angle1',
  deg: 'angle1',
  cycle: 'angle1',
  bits: 'bit1',
  dB: 'dB1',
};

const NAMES: Readonly<Record<string, string>> = {
  '': 'a plain number',
  m1: 'a length',
  m2: 'an area',
  m3: 'a volume',
  kg1: 'a mass',
  s1: 'a time',
  A1: 'a current',
  K1: 'a temperature',
  'A-1 kg1 m2 s-3': 'a voltage',
  'A-2 kg1 m2 s-3': 'a resistance',
  'kg1 m2 s-3': 'a power',
  'kg1 m2 s-2': 'an energy',
  'kg1 m1 s-2': 'a force',
  'kg1 m-1 s-2': 'a pressure',
  's-1': 'a frequency',
  'A-2 kg1 m2 s-2': 'an inductance',
  'A2 kg-1 m-2 s4': 'a capacitance',
  'A1 s1': 'a charge',
  'A2 kg-1 m-2 s3': 'a conductance',
  lm1: 'a light output',
  angle1: 'an angle',
  'angle1 s-1': 'a speed of rotation',
  'm1 s-1': 'a speed',
  'm1 s-2': 'an acceleration',
  'kg1 m-3': 'a density',
  'kg1 m-1': 'a mass a length',
  'A-2 kg1 m1 s-3': 'a resistance a length',
  'A2 s1': 'an I²t',
  bit1: 'a number of bits',
  'bit1 s-1': 'a bit rate',
  dB1: 'a ratio in decibels',
  'kg1 m1 s-3': 'a power a length',
};

function dimensionKey(powers: Readonly<Record<string, number>>): string | null {
  const sum = new Map<string, number>();
  for (const [name, power] of Object.entries(powers)) {
    const base = DIMENSIONS[name] ?? DIMENSIONS[name.slice(1)];
    if (base === undefined) return null;
    for (const part of base.split(' ')) {
      const [, unit = '', exponent = '1'] = /^([A-Za-z]+)(-?\d)$/.exec(part) ?? [];
      sum.set(unit, (sum.get(unit) ?? 0) + power * Number(exponent));
    }
  }
  return [...sum]
    .filter(([, p]) => p !== 0)
    .map(([unit, p]) => `${unit}${p}`)
    .sort()
    .join(' ');
}
