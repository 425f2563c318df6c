import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  fieldUnits,
  formatQuantity,
  parseQuantity,
  type QuantityError,
  type QuantityRule,
  unitChoices,
} from '@loomwright/worked/quantity';
import { type Citation, computed, expectPrinted, expectWithin } from '../../support/published.js';

const read = (text: string, unit: string): number => parseQuantity(text, unit, 'field');

function fault(run: () => unknown): QuantityError {
  try {
    run();
  } catch (error) {
    expect(error).toMatchObject({ code: 'LOOMWRIGHT_QUANTITY' });
    return error as QuantityError;
  }
  throw new Error('expected a QuantityError');
}

describe('published', () => {
  const nist: Citation = { source: 'nist-sp-811', place: 'appendix B.8', status: 'published' };
  const factors: readonly (readonly [text: string, unit: string, print: string])[] = [
    ['1 ft', 'm', '3.048e-1'],
    ['1 in', 'm', '2.54e-2'],
    ['1 in', 'mm', '2.54e+1'],
    ['1 mil', 'm', '2.54e-5'],
    ['1 yd', 'm', '9.144e-1'],
    ['1 mi', 'km', '1.609344'],
    ['1 cmil', 'm²', '5.067075e-10'],
    ['1 cmil', 'mm²', '5.067075e-4'],
    ['1 sq in', 'm²', '6.4516e-4'],
    ['1 ft²', 'm²', '9.290304e-2'],
    ['1 in³', 'm³', '1.638706e-5'],
    ['1 ft³', 'm³', '2.831685e-2'],
    ['1 US gal', 'L', '3.785412'],
    ['1 US gal', 'm³', '3.785412e-3'],
    ['1 imp gal', 'L', '4.54609'],
    ['1 lb', 'kg', '4.535924e-1'],
    ['1 oz', 'kg', '2.834952e-2'],
    ['1 t', 'kg', '1.0e+3'],
    ['1 lbf', 'N', '4.448222'],
    ['1 kgf', 'N', '9.80665'],
    ['1 lbf ft', 'N·m', '1.355818'],
    ['1 lbf in', 'N·m', '1.129848e-1'],
    ['1 psi', 'kPa', '6.894757'],
    ['1 bar', 'kPa', '1.0e+2'],
    ['1 mbar', 'kPa', '1.0e-1'],
    ['1 atm', 'kPa', '1.01325e+2'],
    ['1 inHg', 'kPa', '3.386389'],
    ['1 mmHg', 'Pa', '1.333224e+2'],
    ['1 mph', 'km/h', '1.609344'],
    ['1 mph', 'm/s', '4.4704e-1'],
    ['1 km/h', 'm/s', '2.777778e-1'],
    ['1 kn', 'm/s', '5.144444e-1'],
    ['1 hp', 'W', '7.456999e+2'],
    ['1 PS', 'W', '7.354988e+2'],
    ['1 kWh', 'J', '3.6e+6'],
    ['1 Wh', 'J', '3.6e+3'],
    ['1 lb/in³', 'kg/m³', '2.767990e+4'],
    ['1 lb/ft³', 'kg/m³', '1.601846e+1'],
    ['1 lb/ft', 'kg/m', '1.488164'],
    ['1°', 'rad', '1.745329e-2'],
    ["1'", 'rad', '2.908882e-4'],
    ['1"', 'rad', '4.848137e-6'],
    ['1 rpm', 'rad/s', '1.047198e-1'],
    ['1 ft/s²', 'm/s²', '3.048e-1'],
    ['1 g', 'gₙ', '1'],
    ['9.80665 m/s²', 'gₙ', '1'],
    ['1 °F', 'K', '5.555556e-1'],
    ['1 °C', 'K', '1.0'],
    ['1 ohm cmil/ft', 'Ω·mm²/m', '1.662426e-3'],
    ['1 d', 's', '8.64e+4'],
    ['1 h', 's', '3.6e+3'],
  ];
  for (const [text, unit, print] of factors) {
    computed(`${text} is ${print} ${unit}`, nist, () => expectPrinted(read(text, unit), print));
  }
  const scales: Citation = {
    source: 'nist-sp-811',
    place: 'appendix B.8, t/°C = (t/°F − 32)/1.8',
    status: 'published',
  };
  computed('212 °F is 100 °C', scales, () => expect(read('212 °F', '°C')).toBe(100));
  computed('−40 °F is −40 °C', scales, () => expect(read('−40 °F', '°C')).toBe(-40));
  computed('273.15 K is 0 °C', scales, () => expect(read('273.15 K', '°C')).toBe(0));
});

describe('independent', () => {
  const prefixes = { p: 1e-12, n: 1e-9, µ: 1e-6, u: 1e-6, m: 1e-3, c: 1e-2, d: 0.1, h: 100, k: 1e3, M: 1e6, G: 1e9 };
  const taken = {
    m: ['m', 'µmcdk'],
    A: ['A', 'µmk'],
    V: ['V', 'µmk'],
    Ω: ['Ω', 'µmkMG'],
    W: ['W', 'µmkM'],
    J: ['J', 'µmkM'],
    N: ['N', 'mk'],
    Pa: ['Pa', 'hkM'],
    Hz: ['Hz', 'mkMG'],
    H: ['H', 'nµm'],
    F: ['F', 'pnµm'],
    L: ['L', 'µmcd'],
    s: ['s', 'nµm'],
    Ah: ['Ah', 'm'],
    Wh: ['Wh', 'mkM'],
    lm: ['lm', 'k'],
    K: ['K', 'm'],
  } as const;
  it('agrees with a plain table of prefixes, to the last bit of the decimal', () => {
    for (const [unit, [symbol, list]] of Object.entries(taken)) {
      for (const prefix of list) {
        const exponent = Math.round(Math.log10(prefixes[prefix as keyof typeof prefixes]));
        expect(read(`12.7 ${prefix}${symbol}`, unit), `${prefix}${symbol}`).toBe(Number(`12.7e${exponent}`));
        if (prefix === 'µ') expect(read(`12.7 u${symbol}`, unit)).toBe(Number('12.7e-6'));
      }
    }
  });

  it('agrees with one multiplication in plain numbers for units of every kind', () => {
    const naive: readonly (readonly [unit: string, core: string, factor: number])[] = [
      ['ft', 'm', 0.3048],
      ['in²', 'mm²', 645.16],
      ['kcmil', 'mm²', 0.506707479],
      ['lb', 'kg', 0.45359237],
      ['psi', 'kPa', 6.894757293],
      ['mph', 'km/h', 1.609344],
      ['rev/s', 'rpm', 60],
      ['rad/s', 'rpm', 60 / (2 * Math.PI)],
      ['rpm', 'rad/s', (2 * Math.PI) / 60],
      ['V/A', 'Ω', 1],
      ['W/V', 'A', 1],
      ['J/s', 'W', 1],
      ['A·s', 'Ah', 1 / 3600],
      ['C', 'Ah', 1 / 3600],
      ['kA²s', 'A²s', 1e6],
      ['mV/V', 'fraction', 1e-3],
      ['%', 'fraction', 0.01],
      ['ppm', 'fraction', 1e-6],
      ['mΩ/m', 'Ω/m', 1e-3],
      ['ohm/kft', 'Ω/m', 1 / 304.8],
      ['Ω/km', 'Ω/m', 1e-3],
      ['kg/m³', 'g/cm³', 1e-3],
      ['lb/in³', 'g/cm³', 453.59237 / 16.387064],
      ['cm³', 'L', 1e-3],
      ['cc', 'L', 1e-3],
      ['m³', 'L', 1e3],
      ['mV/°C', 'V/K', 1e-3],
      ['mV/°F', 'V/K', 1.8e-3],
      ['J/(g·K)', 'J/(kg·K)', 1e3],
      ['W/(cm·K)', 'W/(m·K)', 100],
      ['Mbit/s', 'bit/s', 1e6],
      ['kbit/s', 'bit/s', 1e3],
      ['US gal/h', 'L/h', 3.785411784],
      ['/mi', '1/km', 1 / 1.609344],
      ['min', 'h', 1 / 60],
      ['d', 'h', 24],
      ['lb·ft', 'N·m', 1.35581794833],
    ];
    for (const [unit, core, factor] of naive) {
      expectWithin(read(`37.5 ${unit}`, core), 37.5 * factor, 3e-10);
    }
  });
});

describe('laws', () => {
  const units = [...new Set(fieldUnits.map(({ unit }) => unit))].filter((unit) => unit !== 'fraction' && unit !== '1');
  const value = fc.double({ min: -1e9, max: 1e9, noNaN: true }).filter((x) => x === 0 || Math.abs(x) > 1e-9);

  it('gives back the very number that stands before the unit of the field', () => {
    fc.assert(
      fc.property(value, fc.constantFrom(...units), (x, unit) => {
        expect(read(`${x} ${unit === 'gₙ' ? 'g' : unit}`, unit)).toBe(x === 0 ? 0 : x);
      }),
    );
  });

  it('reads what the formatter writes', () => {
    fc.assert(
      fc.property(value, fc.constantFrom(...units, 'fraction', 'Ω/m', 'kg/m', 'J/(kg·K)', 'rpm/V'), (x, unit) => {
        const back = read(formatQuantity(x, unit, { digits: 17 }), unit);
        expect(back).toBe(x === 0 ? 0 : x);
        expect(read(formatQuantity(x, unit, { digits: 17, plain: true }), unit)).toBe(back);
      }),
    );
  });

  it('agrees with the units that the page offers, to the last bit where the factor is a short decimal', () => {
    const long = ['lb/in³', 'rad', 'lbf·ft', 'psi', 'lb/ft'];
    const offered = units.flatMap((unit) => unitChoices(unit).map((choice) => [unit, choice] as const));
    fc.assert(
      fc.property(value, fc.constantFrom(...offered), (x, [unit, choice]) => {
        const typed = read(`${x} ${choice.unit}`, unit);
        if (long.includes(choice.unit)) expectWithin(typed, choice.toCore(x), 2e-15);
        else expect(typed, `${x} ${choice.unit}`).toBe(choice.toCore(x));
      }),
      { numRuns: 400 },
    );
  });

  it('offsets a temperature and scales a difference', () => {
    fc.assert(
      fc.property(fc.integer({ min: -400, max: 4000 }), fc.integer({ min: -400, max: 4000 }), (a, b) => {
        const apart = read(`${a} °F`, '°C') - read(`${b} °F`, '°C');
        expect(Math.abs(apart - read(`${a - b} °F`, 'K'))).toBeLessThan(1e-9);
        expect(read(`${a} K`, 'K')).toBe(a);
        expect(read(`${a} °C`, 'K')).toBe(a);
        expect(Math.abs(read(`${a} K`, '°C') - (a - 273.15))).toBeLessThan(1e-9);
      }),
    );
    expect(read('10 °F', 'K')).toBeCloseTo(5.5556, 4);
    expect(read('10 °F', '°C')).toBeCloseTo(-12.2222, 4);
    expect(read('185 °F', '°C')).toBe(85);
  });

  it('is linear: twice the number is twice the quantity, and parts add up', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 11 }), (ft, inches) => {
        expectWithin(read(`${2 * ft + 2} ft`, 'm'), 2 * read(`${ft + 1} ft`, 'm'), 1e-15);
        expect(read(`${ft} ft ${inches} in`, 'm')).toBe(read(`${12 * ft + inches} in`, 'm'));
        expect(read(`-${ft}' ${inches}"`, 'm')).toBe(read(`-${12 * ft + inches} in`, 'm'));
      }),
    );
  });

  it('never ends with anything but a finite number or a QuantityError, whatever is typed', () => {
    const letters = fc.constantFrom(
      ...['1', '2', '0', '9', '.', ',', '-', '−', '+', ' ', '\u202f', 'e', 'E', '/', '*', '^', '(', ')', '°', "'", '"'],
      ...['m', 'mm', 'ft', 'in', 'V', 'A', 'Ω', 'k', 'K', 'µ', 'C', 'F', 'gal', 'US', '%', '²', '⁻', '¹', '×10', 'AWG'],
      ...['constructor', '__proto__', 'toString', 'per', 'sq', 'deg', 'rpm', 'lb', '½', '⁄', '\u0000', '😀', 'Å', '\n'],
    );
    const typed = fc.oneof(
      { weight: 3, arbitrary: fc.array(letters, { maxLength: 12 }).map((parts) => parts.join('')) },
      { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 40 }) },
      {
        weight: 1,
        arbitrary: fc.tuple(fc.float(), fc.array(letters, { maxLength: 6 })).map(([x, l]) => `${x}${l.join('')}`),
      },
    );
    fc.assert(
      fc.property(typed, fc.constantFrom(...units, 'fraction', 'Ω/m', 'J/(kg·K)'), (text, unit) => {
        let result: unknown;
        try {
          result = read(text, unit);
        } catch (error) {
          expect(error, `${JSON.stringify(text)} for ${unit}`).toMatchObject({ code: 'LOOMWRIGHT_QUANTITY' });
          expect((error as QuantityError).message.length).toBeLessThan(400);
          return;
        }
        expect(Number.isFinite(result), `${JSON.stringify(text)} for ${unit}`).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });
});

describe('edges', () => {
  const same: readonly (readonly [core: string, value: number, ...spellings: string[]])[] = [
    ['m', 4.2672, '14 ft', '14ft', "14'", '14 feet', '14 foot', '14 FT', '14 Ft', '14′', '14’', '168 in', ' 14  ft '],
    ['m', 1.6002, '5 ft 3 in', '5\' 3"', '5\'3"', '5′ 3″', '5 ft, 3 in', '5ft3in', "5' 3''"],
    ['m', 0.0127, '1/2 in', '½ in', '½"', '0.5"', '.5 in', '0.5 inch', '12.7 mm', '12.7mm', '1.27 cm', '500 thou'],
    ['m', 0.0381, '1 1/2 in', '1-1/2 in', '1½ in', '1 ½"', '3/2 in', '1.5 in'],
    [
      'm',
      12000,
      '12 km',
      '12\u202f000 m',
      '12\u2009000 m',
      '12\u00a0000 m',
      '1.2e4 m',
      '1.2E+4 m',
      '1.2×10⁴ m',
      '1.2x10^4 m',
    ],
    ['m', -3, '-3 m', '−3 m', '- 3 m', '–3 m', '-3.0 metres', '-3 meters'],
    ['mm', 177.8, '7 in', '7"', '7 inches', '17.78 cm', '0.1778 m'],
    [
      'mm²',
      2.5,
      '2.5 mm²',
      '2.5 mm2',
      '2.5mm²',
      '2.5 mm^2',
      '2.5 sq mm',
      '2.5 sqmm',
      '2.5 sq. mm',
      '2.5 square mm',
      '2.5 mm sq',
    ],
    ['mm²', 126.67686977437442, '250 kcmil', '250 MCM', '250 mcm', '250000 cmil'],
    [
      'A',
      12,
      '12 A',
      '12A',
      '12 amps',
      '12 amp',
      '12 Ampere',
      '12 amperes',
      '12 A DC',
      '12 ADC',
      '12000 mA',
      '0.012 kA',
    ],
    ['V', 13.8, '13.8 V', '13.8 volts', '13.8 VDC', '13.8 V DC', '13.8 V d.c.', '13800 mV', '13800 millivolts'],
    [
      'Ω',
      0.0034,
      '3.4 mΩ',
      '3.4 mΩ',
      '3.4 mohm',
      '3.4 mOhm',
      '3.4 milliohm',
      '3.4 milliohms',
      '3400 µΩ',
      '3400 μΩ',
      '0.0034 ohms',
    ],
    ['Ω', 4700, '4k7', '4K7', '4.7k', '4.7 kΩ', '4700 Ω', '4700R', '4k7Ω', '4.7 kohm', '4.7 kilohms', '0M0047'],
    ['Ω', 120, '120R', '0.12 kΩ', '120 ohm', '120R0'],
    ['Ω', 0.47, 'R47', '0R47', '470 mΩ'],
    ['Ω', 1e6, '1M', '1M0', '1 MΩ', '1 Mohm', '1 megohm', '1 megaohm', '1000 kΩ'],
    [
      'Ω/m',
      0.0049,
      '4.9 mΩ/m',
      '4.9 mohm/m',
      '4.9 Ω/km',
      '4.9 ohm per km',
      '0.0049 ohm/metre',
      '4.9 mΩ·m⁻¹',
      '4.9 mΩ m^-1',
    ],
    [
      'F',
      4.7e-9,
      '4n7',
      '4.7 nF',
      '4.7nF',
      '4700 pF',
      '0.0047 µF',
      '0.0047 μF',
      '0.0047 uF',
      '0.0047 microfarads',
      '4700p',
    ],
    ['H', 0.003, '3 mH', '3000 µH', '3 millihenry', '0.003 H'],
    [
      '°C',
      85,
      '85 °C',
      '85°C',
      '85 C',
      '85C',
      '85 c',
      '85 ℃',
      '85 degC',
      '85 deg C',
      '85 degrees Celsius',
      '185 °F',
      '185F',
      '185 ℉',
      '185 degrees fahrenheit',
      '358.15 K',
      '358.15 kelvin',
    ],
    ['K', 10, '10 K', '10 °C', '10 C', '18 °F', '18 F', '18 deg F', '10 kelvins', '10000 mK'],
    ['fraction', 0.03, '3 %', '3%', '0.03', '.03', '30 ‰', '3 percent', '30000 ppm', '3e-2', '30 mV/V'],
    ['rpm', 3000, '3000 rpm', '3000 RPM', '3000 r/min', '3000 rev/min', '50 rev/s', '3\u202f000 rpm'],
    ['km/h', 96.56064, '60 mph', '60 mi/h', '60 miles per hour', '96.56064 km/h', '96.56064 kph', '96.56064 kmh'],
    ['L', 7.570823568, '2 US gal', '2 U.S. gal', '2 US gallons', '2 us gal', '2 gal (US)', '2 US liquid gallons'],
    ['L', 9.09218, '2 imp gal', '2 imp. gal', '2 imperial gallons', '2 UK gal', '2 gal (imp)'],
    [
      'L',
      0.5,
      '0.5 L',
      '0.5 l',
      '500 mL',
      '500 ml',
      '500 cc',
      '500 cm³',
      '500 cm3',
      '0.5 litres',
      '0.5 liter',
      '50 cL',
      '5 dL',
    ],
    [
      'Ah',
      40,
      '40 Ah',
      '40 A h',
      '40 A·h',
      '40 A.h',
      '40 amp-hours',
      '40 amp hours',
      '144000 C',
      '40000 mAh',
      '144 kC',
      '144000 A s',
    ],
    ['kPa', 300, '300 kPa', '3 bar', '3000 mbar', '0.3 MPa', '3000 hPa', '300 kilopascal', '300 kilopascals'],
    ['N·m', 10, '10 N·m', '10 Nm', '10 N m', '10 N.m', '10 N*m', '10000 mNm', '10 newton metres'],
    [
      'N·m',
      13.558179483314003,
      '10 lbf·ft',
      '10 lb ft',
      '10 ft lb',
      '10 ft-lb',
      '10 lb-ft',
      '10 lbs ft',
      '10 foot pounds',
    ],
    ['gₙ', 2, '2 g', '2 G', '2 gₙ', '19.6133 m/s²', '19.6133 m/s/s', '19.6133 m s^-2'],
    ['°', 30.25, '30.25°', '30.25 deg', '30.25 degrees', "30° 15'", "30 deg 15'", '30° 15′'],
    ['s', 5400, '5400 s', '90 min', '1.5 h', '1 h 30 min', '1h30min', '1 hr 30 mins', '5400 seconds', '5400000 ms'],
    [
      'kg',
      1.0205828325,
      '2.25 lb',
      '2 lb 4 oz',
      '36 oz',
      '2.25 lbs',
      '2.25 pounds',
      '1020.5828325 g',
      '0.0010205828325 t',
    ],
    ['A²s', 3300, '3300 A²s', '3300 A2s', '3300 A^2s', '3300 A² s', '3300 A²·s', '0.0033 kA²s'],
    [
      'J/(kg·K)',
      390,
      '390 J/(kg·K)',
      '390 J/(kg K)',
      '390 J/kg/K',
      '390 J kg^-1 K^-1',
      '0.39 J/(g·K)',
      '390 J/(kg·°C)',
    ],
    ['1/km', 4000, '4000 /km', '4000 1/km', '4000 pulses/km', '4000 pulses per km', '4 /m'],
    ['lm', 500, '500 lm', '500 lumens', '0.5 klm'],
    ['bit', 10, '10 bit', '10 bits'],
  ];
  for (const [core, value, ...spellings] of same) {
    it(`reads ${value} ${core} in ${spellings.length} spellings`, () => {
      for (const text of spellings) expect(read(text, core), text).toBe(value);
    });
  }

  const refused: readonly (readonly [core: string, rule: QuantityRule, ...texts: string[]])[] = [
    ['m', 'empty', '', ' ', '\t\n', '\u200b', '\u202f'],
    [
      'm',
      'number',
      'abc',
      '-',
      '+',
      '−',
      '--3 m',
      '+-3 m',
      'm',
      'ft 14',
      '<5 m',
      '≈3 m',
      '~3 m',
      'NaN m',
      'Infinity m',
      '∞ m',
      '.',
      '. m',
      '$5',
      '(3 m)',
      'x3 m',
      '٣ m',
      '[object Object]',
      'null',
      'true',
      '4/0 m',
      '1/0',
      '=3 m',
      'e3 m',
    ],
    ['m', 'comma', '2,5 m', '1,000 ft', '1.000,5 m', '1,234.5 m', '1,234,567 m', ',5 m', '-2,5 m', '0,003 km'],
    [
      'm',
      'magnitude',
      '1e999 m',
      '1e400 m',
      '1e-400 m',
      '1e308 km',
      '1e-323 mm',
      `${'9'.repeat(60)}e300 m`,
      '1e99999999999999999999 m',
    ],
    ['m', 'unit', '14', '14.', '-14', '1e3', '0', '  14  ', '3/8', '1 1/2'],
    [
      'm',
      'unknownUnit',
      '14 q',
      '14 MM',
      '14 M',
      '14 meterz',
      '14 ft ft²²',
      '14 m^',
      '14 m^9',
      '14 m/',
      '14 /',
      '14 (m',
      '14 m)',
      '14 m m)',
      '14 fot',
      '14 !',
      '14 m;',
      '14 m=3',
      "5' 3",
      '14 m²³',
      '14 mm⁹',
      '14 €',
      '1.2.3 m',
      '5 100 mm',
      '12 000 mm',
      '10-12 m',
      '10..12 m',
      '10 to 12 m',
      '10 … 12 m',
      '5±1 m',
      '5 +/- 1 m',
      '3 m, 2 m',
      '0x10 m',
      '5 ft -3 in',
      '3 constructor',
      '3 __proto__',
      '3 toString',
      '3 hasOwnProperty',
      '3 valueOf',
      '3 smoot',
      '3 furlong',
      '3 lightyear',
      '3 i',
      '3 pi',
      '3 undefined',
    ],
    [
      'm',
      'dimension',
      '14 V',
      '14 A',
      '3 s',
      '3 mm²',
      '3 m²',
      '3 ft²',
      '3 m m',
      '3 kg',
      '3 L',
      '3 %',
      '3 m/s',
      '3 Hz',
      '3 °C',
      '3 °',
      '3 1',
      '3 ft·lbf',
      '3 bit',
      '3 lm',
      '3 dB',
      '3 kΩ',
      '3 V/m',
      '3 /m',
      '3 Ω·m',
      '3 K',
    ],
    ['mm²', 'size', 'SAE 14', '14 SAE', '41 AWG', '5/0 AWG', '14 ga', '14 gauge'],
    ['m', 'size', '14 AWG', '14 SAE', '14 ga', '14 gauge', '14 SWG'],
    ['m', 'ambiguous', '2 gal', '2 ton', '2 gph', '2 psig', '3 months', '3 years', '3 W/m²K', '3 W/m K', '3 J/kg K'],
    ['L', 'ambiguous', '2 gal', '10 gallons', '2 gal.', '1 gallon', '3 qt', '3 pt'],
    ['°C', 'unit', '85', '-40'],
    ['°C', 'dimension', '85°', '85 deg', '85 V', '85 °C/m', '85 K²', '85 m', '85 °C·s', '85 %', '85 mK'],
    ['K', 'dimension', '10°', '10 m', '10 W'],
    ['Ω', 'unit', '120', '4.7', '0'],
    ['Ω', 'unknownUnit', '4k7k', '4 M', '4k 7', '4Q7', '12 M'],
    ['Ω', 'number', 'R', 'k', 'kΩ', 'k7x'],
    ['Ω', 'dimension', '3 V', '3 A', '3 Ω/m', '3 S', '10 K', '4 F'],
    ['F', 'dimension', '4 H', '3 °', '5 C'],
    ['N·m', 'dimension', '10 J', '10 Wh', '10 joules', '10 N', '10 kg'],
    ['Hz', 'dimension', '3000 rpm', '3 s', '3 rad/s', '3 bit/s'],
    ['rpm', 'dimension', '50 Hz', '3000 /min', '3 rad'],
    ['s', 'dimension', '5 m', '5 Hz', '5 S'],
    ['fraction', 'dimension', '3 V', '3 m', '3 dB', '3 °', '3 mV'],
    ['fraction', 'comma', '0,03', '2,5 %'],
    ['W/(m·K)', 'dimension', '0.19 W/mK', '0.19 W/m'],
  ];
  for (const [core, rule, ...texts] of refused) {
    it(`refuses ${texts.length} texts for ${core}: ${rule}`, () => {
      for (const text of texts) {
        const error = fault(() => read(text, core));
        expect({ text, rule: error.rule, field: error.field }).toEqual({ text, rule, field: 'field' });
        expect(error.given).toBe(text);
        expect(error.message).toContain('field must be ');
      }
    });
  }

  it('takes an AWG size for an area, and mixes no two signs that look alike', () => {
    expectWithin(read('14 AWG', 'mm²'), 2.0809, 1e-4);
    expect(read('AWG 4/0', 'mm²')).toBe(read('4/0 AWG', 'mm²'));
    for (const ohm of ['\u2126', '\u03a9']) expect(read(`3.4 m${ohm}`, 'Ω')).toBe(0.0034);
    for (const ohm of ['\u2126', '\u03a9']) expect(read(`4k7${ohm}`, 'Ω')).toBe(4700);
    for (const micro of ['\u00b5', '\u03bc']) {
      expect(read(`1.2 ${micro}F`, 'F')).toBe(1.2e-6);
      expect(read(`4${micro}7`, 'F')).toBe(4.7e-6);
    }
  });

  it('says the whole of each kind of mistake', () => {
    const says = (text: string, unit: string): string => fault(() => parseQuantity(text, unit, 'outLengthM')).message;
    const length = 'outLengthM must be a length with its unit (m, ft, in, mm), got ';
    expect(says('', 'm')).toBe(`${length}'': nothing was written`);
    expect(says('-', 'm')).toBe(`${length}'-': a sign alone is no number`);
    expect(says('abc', 'm')).toBe(`${length}'abc': it does not begin with a number`);
    expect(says('1e999 m', 'm')).toBe(`${length}'1e999 m': no computer number is that large or small`);
    expect(says('2,5 m', 'm')).toBe(`${length}'2,5 m': write 2.5, not 2,5`);
    expect(says('1,000 ft', 'm')).toBe(`${length}'1,000 ft': a comma can mean two things: write 1000 or 1.000`);
    expect(says('14', 'm')).toBe(`${length}'14': the number has no unit: write '14 m'`);
    expect(says('14 fot', 'm')).toBe(`${length}'14 fot': 'fot' is not a unit known here: ft?`);
    expect(says('14 V', 'm')).toBe(`${length}'14 V': 'V' is a voltage`);
    expect(says('14 AWG', 'm')).toBe(`${length}'14 AWG': a gauge is a size and fits an area only`);
    expect(says('12 a', 'A')).toBe(
      "outLengthM must be a current with its unit (A, mA, µA), got '12 a': 'a' is not a unit known here: A?",
    );
    expect(says('2 gal', 'L')).toBe(
      "outLengthM must be a volume with its unit (L, US gal, imp gal), got '2 gal': a gallon is 'US gal' or 'imp gal'",
    );
    expect(says('10-12 m', 'm')).toBe(`${length}'10-12 m': write one number, not a range`);
    expect(says('85°', '°C')).toBe(
      "outLengthM must be a temperature with its unit (°C, °F), got '85°': a temperature is written in °C, °F or K",
    );
    expect(says('3 V', 'fraction')).toBe(
      "outLengthM must be a share (a number such as 0.03, or 3 %), got '3 V': 'V' is a voltage",
    );
    expect(says('3 W/m²K', 'W/(m²·K)')).toBe(
      "outLengthM must be a quantity with its unit (W/(m²·K)), got '3 W/m²K': put what stands below the line in brackets, such as 'W/(m²·K)'",
    );
  });

  it('refuses what is no text, and a bare number with its likely unit', () => {
    expect(fault(() => read(14 as never, 'm'))).toMatchObject({ rule: 'unit', given: 14 });
    expect(fault(() => read(14 as never, 'm')).message).toContain("write it with its unit, as text: '14 m'");
    for (const odd of [undefined, null, true, {}, [], ['3 m'], () => 3, Symbol('3 m'), 3n]) {
      expect(fault(() => read(odd as never, 'm')).rule).toBe('text');
    }
  });

  it('stays quick and calm at long texts', () => {
    for (const text of [
      '9'.repeat(1e6),
      `${'1 '.repeat(5e5)}m`,
      `3 ${'m'.repeat(1e6)}`,
      '('.repeat(1e6),
      `3 ${'('.repeat(90)}m`,
    ]) {
      const error = fault(() => read(text, 'm'));
      expect(error.message.length).toBeLessThan(200);
    }
  });

  it('names its own slip when the field has no such unit', () => {
    expect(fault(() => read('3 m', 'zorkmid'))).toMatchObject({ field: 'unitOfField', rule: 'unknownUnit' });
  });
});
