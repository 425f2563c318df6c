import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { all, create } from 'mathjs';
import { math, type Unit } from '@loomwright/worked/quantity';
import { expectWithin } from '../../support/published.js';

/** The whole of mathjs, as it comes, to hold our slim build of it against. */
const whole = create(all!, {});
const inUnit = (value: Unit | number, unit: string): number => (value as Unit).toNumber(unit);

describe('independent', () => {
  const formulas: readonly (readonly [formula: string, units: Readonly<Record<string, string>>, result: string])[] = [
    ['supply - current * (wire + fixed)', { supply: 'V', current: 'A', wire: 'mohm', fixed: 'mohm' }, 'V'],
    ['resistivity * length / area', { resistivity: 'ohm mm^2 / m', length: 'm', area: 'mm^2' }, 'mohm'],
    ['(area * 4 / pi)^0.5', { area: 'mm^2' }, 'mm'],
    ['sqrt(power / resistance)', { power: 'W', resistance: 'ohm' }, 'A'],
    ['current^2 * time', { current: 'A', time: 's' }, 'A^2 s'],
    ['2 * pi / period', { period: 'ms' }, 'Hz'],
    ['-drop + 3 * drop', { drop: 'mV' }, 'V'],
    ['inductance * current^2 / 2', { inductance: 'mH', current: 'A' }, 'mJ'],
    ['abs(a - b) / 2', { a: 'V', b: 'mV' }, 'V'],
    ['1 / (1 / r + 1 / s)', { r: 'ohm', s: 'kohm' }, 'ohm'],
    ['cbrt(volume)', { volume: 'cm^3' }, 'mm'],
  ];
  for (const [formula, units, result] of formulas) {
    it(`evaluates ${formula} as the whole of mathjs does`, () => {
      fc.assert(
        fc.property(
          fc.array(fc.double({ min: 0.1, max: 100, noNaN: true }), { minLength: 4, maxLength: 4 }),
          (values) => {
            const entries = Object.entries(units).map(([name, unit], i) => [name, values[i] as number, unit] as const);
            const ours = math.evaluate(formula, Object.fromEntries(entries.map(([n, v, u]) => [n, math.unit(v, u)])));
            const theirs = whole.evaluate(
              formula,
              Object.fromEntries(entries.map(([n, v, u]) => [n, whole.unit(v, u)])),
            ) as unknown as Unit;
            // A difference of near equals loses digits in both.
            const scale = Math.max(Math.abs(theirs.toNumber(result)), 1e-3);
            expect(Math.abs(inUnit(ours, result) - theirs.toNumber(result)) / scale).toBeLessThan(1e-9);
          },
        ),
        { numRuns: 25 },
      );
    });
  }

  it('evaluates formulas of plain numbers as JavaScript does', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 50, noNaN: true }),
        fc.double({ min: 0.01, max: 50, noNaN: true }),
        (a, b) => {
          const cases: readonly (readonly [string, number])[] = [
            ['a + b * 2 - a / b', a + b * 2 - a / b],
            ['exp(-a) + log(b) + log10(a)', Math.exp(-a) + Math.log(b) + Math.log10(a)],
            ['sin(a) * cos(b) + tan(a / 100)', Math.sin(a) * Math.cos(b) + Math.tan(a / 100)],
            ['min(a, b) + max(a, b)', a + b],
            ['a^2 + sqrt(b) + cbrt(a) + abs(-b)', a * a + Math.sqrt(b) + Math.cbrt(a) + b],
            ['atan(a) + asin(a / 50) + acos(b / 50)', Math.atan(a) + Math.asin(a / 50) + Math.acos(b / 50)],
            ['pi + e + +a', Math.PI + Math.E + a],
          ];
          for (const [formula, value] of cases) expectWithin(math.evaluate(formula, { a, b }) as number, value, 1e-13);
        },
      ),
    );
  });

  it('cancels units to a plain number, and takes angles', () => {
    expectWithin(
      math.evaluate('exp(a / b)', { a: math.unit(500, 'mV'), b: math.unit(1, 'V') }) as number,
      Math.exp(0.5),
      1e-12,
    );
    expectWithin(math.evaluate('sin(a)', { a: math.unit(30, 'deg') }) as number, 0.5, 1e-12);
    expectWithin(math.evaluate('cos(a)', { a: math.unit(Math.PI, 'rad') }) as number, -1, 1e-12);
    expect(math.unit(3, '')).toBe(3);
  });
});

describe('edges', () => {
  it('refuses what does not fit together', () => {
    const scope = { a: math.unit(1, 'V'), b: math.unit(1, 'A'), n: 2 };
    for (const formula of [
      'a + b',
      'a - b',
      'a + n',
      'min(a, b)',
      'exp(a)',
      'log(a)',
      'a ^ b',
      'n ^ a',
      'sin(a)',
      'zorkmid',
    ]) {
      expect(() => math.evaluate(formula, scope), formula).toThrow();
    }
    for (const formula of ['a +', '(a', 'a b)', '*']) expect(() => math.parse(formula), formula).toThrow();
  });

  it('gives trees that can be walked and written as TeX', () => {
    const names: string[] = [];
    math.parse('rho * l / A').traverse((node) => {
      if (node.type === 'SymbolNode') names.push(String(node));
    });
    expect(names).toEqual(['rho', 'l', 'A']);
    expect(math.parse('a / b').toTex()).toBe('\\frac{ a}{ b}');
    expect(math.parse('sqrt(x)^2').toTex()).toContain('\\sqrt{ x}');
  });
});
