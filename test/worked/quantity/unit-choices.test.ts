import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { fieldUnits, formatQuantity, readableUnit, unitChoices } from '@loomwright/worked/quantity';
import { type Citation, computed, expectPrinted, expectWithin } from '../../support/published.js';
import { expectInputError } from '../../support/edge.js';

const choice = (core: string, unit: string) => {
  const found = unitChoices(core).find((c) => c.unit === unit);
  if (found === undefined) throw new Error(`no ${unit} for ${core}`);
  return found;
};

describe('published', () => {
  const nist: Citation = { source: 'nist-sp-811', place: 'appendix B.8', status: 'published' };
  const factors: readonly (readonly [core: string, unit: string, print: string])[] = [
    ['m', 'ft', '3.048e-1'],
    ['m', 'in', '2.54e-2'],
    ['mm', 'in', '25.4'],
    ['km', 'mi', '1.609344'],
    ['kg', 'lb', '4.535924e-1'],
    ['kg/m', 'lb/ft', '1.488164'],
    ['L', 'US gal', '3.785412'],
    ['L', 'imp gal', '4.54609'],
    ['kPa', 'psi', '6.894757'],
    ['kPa', 'bar', '1.0e+2'],
    ['km/h', 'mph', '1.609344'],
    ['N·m', 'lbf·ft', '1.355818'],
    ['g/cm³', 'lb/in³', '27.67990'],
    ['K', '°F', '5.555556e-1'],
  ];
  for (const [core, unit, print] of factors) {
    computed(`1 ${unit} is ${print} ${core}`, nist, () => expectPrinted(choice(core, unit).toCore(1), print));
  }
  computed('1 g is 9.806 65 m/s²', nist, () => expect(choice('gₙ', 'm/s²').fromCore(1)).toBe(9.80665));
  const scale: Citation = { source: 'nist-sp-811', place: 'appendix B.8, t/°C = (t/°F − 32)/1.8', status: 'published' };
  computed('212 °F is 100 °C', scale, () => expect(choice('°C', '°F').toCore(212)).toBe(100));
  computed('98.6 °F is 37 °C', scale, () => expect(choice('°C', '°F').toCore(98.6)).toBe(37));
});

describe('the unit that reads best', () => {
  it.each([
    ['s', 2.5e-8, 'ns', 25],
    ['s', 3e-5, 'µs', 30],
    ['s', 0.01, 's', 0.01],
    ['s', 600, 's', 600],
    ['s', 172800, 'h', 48],
    ['F', 1e-7, 'nF', 100],
    ['H', 0.0004, 'µH', 400],
    ['bit/s', 500000, 'kbit/s', 500],
    ['m', 0, 'm', 0],
    ['°C', 20, '°C', 20],
    ['zorkmid', 1e9, 'zorkmid', 1e9],
  ])('of %s at %d is %s', (core, value, unit, shown) => {
    const best = readableUnit(core, value);
    expect(best.unit).toBe(unit);
    expectWithin(best.fromCore(value), shown, 1e-12);
  });
  it('and of a result in seconds the prefix', () => {
    expect(formatQuantity(2.5e-8, 's', { plain: true })).toBe('25.0 ns');
    expect(formatQuantity(3e-5, 's', { plain: true })).toBe('30.0 µs');
  });
  it('refuses what is no number', () => {
    expectInputError(() => readableUnit('s', NaN), 'value', 'finite');
  });
});

describe('laws', () => {
  const all = [...new Set([...fieldUnits.map(({ unit }) => unit), 'Ω/m', 'kg/m', 'L/h', 'bit/s', 'zorkmid'])];
  const offered = all.flatMap((core) => unitChoices(core).map((c) => [core, c] as const));

  it('offers the core’s own unit first, but % for a share and g for gravity', () => {
    for (const core of all) {
      const [first] = unitChoices(core);
      expect(first?.unit, core).toBe(core === 'fraction' ? '%' : core === 'gₙ' ? 'g' : core);
      if (core !== 'fraction') expect(first?.toCore(12.34), core).toBe(12.34);
      expect(new Set(unitChoices(core).map(({ unit }) => unit)).size).toBe(unitChoices(core).length);
    }
  });

  it('comes back to the same number', () => {
    const size = fc.double({ min: -1e12, max: 1e12, noNaN: true }).filter((x) => x === 0 || Math.abs(x) > 1e-12);
    fc.assert(
      fc.property(size, fc.constantFrom(...offered), (x, [core, c]) => {
        // An offset loses the digits of a temperature near absolute 0 of its scale; a factor loses none.
        const room = core === '°C' ? 1e-13 * (Math.abs(x) + 500) : 4e-16 * Math.abs(x);
        expect(Math.abs(c.fromCore(c.toCore(x)) - x), `${x} ${c.unit}`).toBeLessThanOrEqual(room);
        expect(Math.abs(c.toCore(c.fromCore(x)) - x), `${x} ${core}`).toBeLessThanOrEqual(room);
      }),
      { numRuns: 500 },
    );
  });

  it('scales a difference and offsets a temperature', () => {
    const absolute = choice('°C', '°F');
    const difference = choice('K', '°F');
    fc.assert(
      fc.property(fc.integer({ min: -300, max: 3000 }), fc.integer({ min: -300, max: 3000 }), (a, b) => {
        expect(Math.abs(absolute.toCore(a) - absolute.toCore(b) - difference.toCore(a - b))).toBeLessThan(1e-9);
      }),
    );
    expect(difference.toCore(0)).toBe(0);
    expect(absolute.toCore(32)).toBe(0);
  });

  it('agrees with itself through a third unit', () => {
    expectWithin(choice('m', 'ft').toCore(1), 12 * choice('m', 'in').toCore(1), 1e-15);
    expectWithin(choice('Ω/m', 'Ω/kft').toCore(304.8), 1, 1e-15);
    expectWithin(choice('L/h', 'US gal/h').toCore(2), choice('L', 'US gal').toCore(2), 1e-15);
    expectWithin(choice('°', 'rad').fromCore(180), Math.PI, 1e-15);
  });
});

describe('edges', () => {
  it('leaves a nought a nought and a decimal a decimal', () => {
    for (const [, c] of offered.filter(([core]) => core !== '°C')) expect(c.toCore(0)).toBe(0);
    expect(choice('mm', 'in').toCore(7)).toBe(177.8);
    expect(choice('m', 'ft').toCore(14)).toBe(4.2672);
    expect(choice('Ω', 'mΩ').toCore(3.4)).toBe(0.0034);
    expect(choice('fraction', '%').toCore(3)).toBe(0.03);
    expect(choice('F', 'µF').fromCore(1.2e-6)).toBe(1.2);
  });

  it('refuses what is no finite number', () => {
    for (const [core, unit] of [
      ['m', 'ft'],
      ['°C', '°F'],
      ['m', 'm'],
    ] as const) {
      for (const value of [NaN, Infinity, -Infinity]) {
        expectInputError(() => choice(core, unit).toCore(value), 'value', 'finite');
        expectInputError(() => choice(core, unit).fromCore(value), 'value', 'finite');
      }
      expectInputError(() => choice(core, unit).toCore('3' as never), 'value', 'number');
    }
  });

  const offered = [...new Set([...fieldUnits.map(({ unit }) => unit), 'Ω/m'])].flatMap((core) =>
    unitChoices(core).map((c) => [core, c] as const),
  );
});
