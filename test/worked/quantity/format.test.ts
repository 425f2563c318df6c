import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  formatNumber,
  formatParts,
  formatQuantity,
  type FormatQuantityOptions,
  parseQuantity,
} from '@loomwright/worked/quantity';
import { expectInputError } from '../../support/edge.js';

const THIN = '\u202f';
const MINUS = '\u2212';
const show = (value: number | null, unit: string, options: FormatQuantityOptions = {}): string =>
  formatQuantity(value, unit, options).replaceAll(THIN, ' ').replaceAll(MINUS, '-');

describe('independent', () => {
  /** Schoolbook rounding on a text of digits: no floating point at all. */
  function schoolbook(value: number, digits: number, round: 'up' | 'down'): bigint {
    const all = (Math.abs(value).toExponential().split('e')[0] ?? '').replace('.', '');
    const head = BigInt(all.padEnd(digits, '0').slice(0, digits));
    const rest = /[1-9]/.test(all.slice(digits));
    return rest && (round === 'up') === value > 0 ? head + 1n : head;
  }

  it('keeps the digits that rounding by hand keeps', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 1e8, noNaN: true }),
        fc.boolean(),
        fc.integer({ min: 1, max: 12 }),
        fc.constantFrom('up' as const, 'down' as const),
        (size, negative, digits, round) => {
          const value = negative ? -size : size;
          const shown = formatNumber(value, { digits, round, plain: true }).replace(/[-.]/g, '').replace(/^0+/, '');
          const byHand = String(schoolbook(value, digits, round)).replace(/0+$/, '');
          expect(shown.replace(/0+$/, '')).toBe(byHand);
        },
      ),
    );
  });

  it('agrees with toPrecision, which rounds the binary value, wherever the decimal is no tie', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 1e8, noNaN: true }), fc.integer({ min: 1, max: 12 }), (value, digits) => {
        const all = (value.toExponential().split('e')[0] ?? '').replace('.', '');
        fc.pre(!(all.length === digits + 1 && all.endsWith('5')));
        expect(Number(formatNumber(value, { digits, plain: true }))).toBe(Number(value.toPrecision(digits)));
      }),
    );
  });
});

describe('laws', () => {
  const value = fc
    .tuple(fc.double({ min: 1, max: 10, noNaN: true }), fc.integer({ min: -12, max: 12 }), fc.boolean())
    .map(([m, e, negative]) => (negative ? -1 : 1) * m * 10 ** e);
  const typed = fc
    .tuple(fc.integer({ min: -99999, max: 99999 }), fc.integer({ min: -9, max: 6 }))
    .map(([n, e]) => Number(`${n}e${e}`));
  const unit = fc.constantFrom(
    'Ω',
    'V',
    'A',
    'F',
    'H',
    's',
    'Hz',
    'W',
    'J',
    'm',
    'mm²',
    '°C',
    'fraction',
    'A²s',
    'Ω/m',
    'kg',
  );
  const digits = fc.integer({ min: 1, max: 9 });

  it('rounded up is never below the value, rounded down never above, and both are within one last digit', () => {
    fc.assert(
      fc.property(fc.oneof(value, typed), unit, digits, (x, u, d) => {
        const read = (round: 'up' | 'down' | 'nearest'): number =>
          parseQuantity(formatQuantity(x, u, { digits: d, round }), u, 'field');
        const [down, near, up] = [read('down'), read('nearest'), read('up')];
        expect(down).toBeLessThanOrEqual(x);
        expect(up).toBeGreaterThanOrEqual(x);
        expect(near === down || near === up, `${down} ${near} ${up}`).toBe(true);
        const last = 10 ** (Math.floor(Math.log10(Math.abs(x) || 1)) + 1 - d);
        expect(up - down).toBeLessThanOrEqual(last * (1 + 1e-6));
        expect(Math.abs(near - x)).toBeLessThanOrEqual(last * (0.5 + 1e-6));
      }),
      { numRuns: 1000 },
    );
  });

  it('does the same at a fixed number of decimals, with and without a prefix', () => {
    fc.assert(
      fc.property(
        typed,
        fc.integer({ min: 0, max: 6 }),
        fc.constantFrom('none' as const, 'm' as const),
        (x, decimals, prefix) => {
          const read = (round: 'up' | 'down'): number =>
            parseQuantity(formatQuantity(x, 'V', { decimals, round, prefix }), 'V', 'field');
          const step = 10 ** -(decimals + (prefix === 'm' ? 3 : 0));
          expect(read('down')).toBeLessThanOrEqual(x);
          expect(read('up')).toBeGreaterThanOrEqual(x);
          expect(read('up') - read('down')).toBeLessThanOrEqual(step * (1 + 1e-6) + Math.abs(x) * 1e-15);
          expect(formatParts(x, 'V', { decimals, prefix }).number.split('.')[1]?.length ?? 0).toBe(decimals);
        },
      ),
    );
  });

  it('shows a typed number as it was typed: no artefacts, in every direction', () => {
    fc.assert(
      fc.property(typed, fc.constantFrom('up' as const, 'down' as const, 'nearest' as const), (x, round) => {
        expect(Number(formatNumber(x, { digits: 5, round, plain: true }))).toBe(x);
      }),
    );
  });

  it('mirrors: −x up is x down', () => {
    fc.assert(
      fc.property(value, digits, (x, d) => {
        const up = formatNumber(-x, { digits: d, round: 'up', plain: true });
        const down = formatNumber(x, { digits: d, round: 'down', plain: true });
        expect(Number(up)).toBe(-Number(down));
      }),
    );
  });

  it('shows as many significant digits as asked for', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 999, noNaN: true }), digits, (x, d) => {
        const shown = formatNumber(x, { digits: d, plain: true });
        const count = shown.replace('.', '').replace(/^0+/, '').length;
        const whole = Math.trunc(Number(shown)) === 0 ? 0 : String(Math.trunc(Number(shown))).length;
        expect(count).toBe(Math.max(d, whole));
      }),
    );
  });

  it('keeps a mantissa between 1 and 1000 where prefixes reach', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 9.98e8, noNaN: true }), fc.integer({ min: 3, max: 9 }), (x, d) => {
        const { number } = formatParts(x, 'Ω', { digits: d, plain: true });
        expect(Number(number)).toBeGreaterThanOrEqual(1);
        expect(Number(number)).toBeLessThan(1000);
      }),
    );
  });
});

describe('edges', () => {
  const cases: readonly (readonly [
    value: number | null,
    unit: string,
    options: FormatQuantityOptions,
    shown: string,
  ])[] = [
    [0.0034, 'Ω', {}, '3.40 mΩ'],
    [1.2e-6, 'F', {}, '1.20 µF'],
    [4.7e-9, 'F', {}, '4.70 nF'],
    [1e-4, 'F', {}, '100 µF'],
    [0.003, 'H', {}, '3.00 mH'],
    [0.00034, 'Ω', {}, '340 µΩ'],
    [4700, 'Ω', {}, '4.70 kΩ'],
    [1.5e6, 'Ω', {}, '1.50 MΩ'],
    [0.99996, 'Ω', {}, '1.00 Ω'],
    [0.99996, 'Ω', { round: 'down' }, '999 mΩ'],
    [999.6, 'Ω', {}, '1.00 kΩ'],
    [0.0049, 'Ω/m', {}, '4.90 mΩ/m'],
    [12.746, 'V', {}, '12.7 V'],
    [0.948, 'V', {}, '0.948 V'],
    [0.0005, 'V', {}, '0.000500 V'],
    [0.0005, 'V', { prefix: 'm' }, '0.500 mV'],
    [0.0425, 'V', { prefix: 'auto' }, '42.5 mV'],
    [12.6, 'V', { prefix: 'auto' }, '12.6 V'],
    [0.0425, 'V', { decimals: 1, prefix: 'm' }, '42.5 mV'],
    [12.746, 'V', { decimals: 2 }, '12.75 V'],
    [12.746, 'V', { decimals: 2, round: 'down' }, '12.74 V'],
    [12.7, 'V', { decimals: 2 }, '12.70 V'],
    [-0.001, 'V', { decimals: 2 }, '0.00 V'],
    [-0.001, 'V', { decimals: 2, round: 'down' }, '-0.01 V'],
    [-0.001, 'V', { decimals: 2, round: 'up' }, '0.00 V'],
    [0, 'V', {}, '0 V'],
    [-0, 'V', {}, '0 V'],
    [0, 'V', { decimals: 2 }, '0.00 V'],
    [0, 'Ω', {}, '0 Ω'],
    [15, 'A', {}, '15.0 A'],
    [15, 'A', { trim: true }, '15 A'],
    [0.002, 'A', {}, '2.00 mA'],
    [1575, 'A', {}, '1580 A'],
    [1575, 'A', { round: 'down' }, '1570 A'],
    [4000, 'W', {}, '4.00 kW'],
    [55, 'W', {}, '55.0 W'],
    [0.15, 's', {}, '150 ms'],
    [50, 'Hz', {}, '50.0 Hz'],
    [12345, 'Hz', {}, '12.3 kHz'],
    [29756, 'A²s', {}, '29 800 A²s'],
    [29756, 'A²s', { digits: 5 }, '29 756 A²s'],
    [3300, 'A²s', { digits: 4 }, '3300 A²s'],
    [1749600, 'A²s', { digits: 7 }, '1 749 600 A²s'],
    [2.5, 'mm²', { trim: true }, '2.5 mm²'],
    [16, 'mm²', { trim: true }, '16 mm²'],
    [100, 'mm²', { trim: true }, '100 mm²'],
    [133.5, '°C', {}, '134 °C'],
    [133.5, '°C', { round: 'down' }, '133 °C'],
    [-28.6, '°C', {}, '-28.6 °C'],
    [-28.64, '°C', { round: 'up' }, '-28.6 °C'],
    [-28.64, '°C', { round: 'down' }, '-28.7 °C'],
    [0.03, 'fraction', {}, '3.00 %'],
    [0.0251, 'fraction', { round: 'up', digits: 2 }, '2.6 %'],
    [1.5, 'fraction', {}, '150 %'],
    [2, 'gₙ', {}, '2.00 g'],
    [30, '°', {}, '30.0°'],
    [1.313427e-3, '1', { digits: 7 }, '0.001313427'],
    [1.8482e-7, '1', { digits: 6 }, '1.84820×10⁻⁷'],
    [5.67e-8, 'W/(m²·K⁴)', {}, '5.67×10⁻⁸ W/(m²·K⁴)'],
    [1.23e12, 'A²s', {}, '1.23×10¹² A²s'],
    [9.999e-6, 'V', { digits: 3 }, '0.0000100 V'],
    [0.1, 'V', { round: 'up' }, '0.100 V'],
    [0.1 + 0.2, 'V', {}, '0.300 V'],
    [0.1 + 0.2, 'V', { round: 'up' }, '0.301 V'],
    [1.0000000002, 'V', {}, '1.00 V'],
    [4.35, 'V', { digits: 2 }, '4.4 V'],
    [1.005, 'V', { digits: 3 }, '1.01 V'],
    [0.125, 'V', { digits: 2 }, '0.13 V'],
    [-0.125, 'V', { digits: 2 }, '-0.13 V'],
    [1e23, 'V', { digits: 3, round: 'down' }, '1.00×10²³ V'],
    [5e-324, 'V', { digits: 1 }, '5×10⁻³²⁴ V'],
    [1.7976931348623157e308, 'V', { digits: 3 }, '1.80×10³⁰⁸ V'],
    [null, 'V', {}, '–'],
    [null, 'A', { because: 'never opens' }, '– (never opens)'],
  ];
  for (const [value, unit, options, shown] of cases) {
    it(`shows ${String(value)} ${unit} ${JSON.stringify(options)} as ${shown}`, () => {
      expect(show(value, unit, options)).toBe(shown);
    });
  }

  it('joins number and unit by a narrow space that does not break, and writes a true minus', () => {
    expect(formatQuantity(-12.7, 'V')).toBe(`${MINUS}12.7${THIN}V`);
    expect(formatQuantity(29756, 'A²s')).toBe(`29${THIN}800${THIN}A²s`);
    expect(formatQuantity(30, '°')).toBe('30.0°');
    expect(formatQuantity(-12.7, 'V', { plain: true })).toBe('-12.7 V');
    expect(formatQuantity(29756, 'A²s', { plain: true })).toBe('29800 A²s');
    expect(formatQuantity(1.3e-7, 'V', { plain: true })).toBe('1.30e-7 V');
  });

  it('gives number and unit apart', () => {
    expect(formatParts(0.0034, 'Ω')).toEqual({ number: '3.40', unit: 'mΩ', text: `3.40${THIN}mΩ` });
    expect(formatParts(null, 'Ω')).toEqual({ number: '–', unit: '', text: '–' });
    expect(formatParts(3, '1')).toEqual({ number: '3.00', unit: '', text: '3.00' });
    expect(formatNumber(0.0125)).toBe('0.0125');
    expect(formatNumber(null, { because: 'no limit' })).toBe(`–${THIN}(no limit)`);
  });

  it('refuses what is no number, and options out of range', () => {
    for (const value of [NaN, Infinity, -Infinity])
      expectInputError(() => formatQuantity(value, 'V'), 'value', 'finite');
    expectInputError(() => formatQuantity('3' as never, 'V'), 'value', 'number');
    expectInputError(() => formatQuantity(undefined as never, 'V'), 'value', 'number');
    for (const digits of [0, 18, 2.5, NaN])
      expectInputError(() => formatQuantity(1, 'V', { digits }), 'digits', 'range');
    for (const decimals of [-1, 21, 0.5])
      expectInputError(() => formatQuantity(1, 'V', { decimals }), 'decimals', 'range');
    expectInputError(() => formatQuantity(1, 'V', { round: 'safe' as never }), 'round', 'oneOf');
    expectInputError(() => formatQuantity(1, 'V', { prefix: 'x' as never }), 'prefix', 'oneOf');
  });
});
