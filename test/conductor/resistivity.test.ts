import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { circularMilsToMm2, M_PER_FOOT, resistivity, type TemperatureForm } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin, transcribed, type Citation } from '../support/published.js';

const hb100: Citation = { source: 'nbs-hb-100', place: 'section 1.1', status: 'published' };
const al: Citation = { source: 'iec-60889', place: '61 % IACS', status: 'memory' };
const nec: Citation = { source: 'nec-chapter-9-table-8', place: 'note 2, from memory', status: 'memory' };
const factors: Citation = { source: 'iec-60228', place: 'temperature correction factors', status: 'published' };
const relay: Citation = { source: 'automotive-relay-notes', place: 'coil temperature', status: 'published' };
const b33: Citation = { source: 'astm-b33', place: 'conductivity by strand, from memory', status: 'memory' };

/** Resistance at one temperature over resistance at another. */
function ratio(toC: number, fromC: number, metal: 'copper' | 'aluminium' = 'copper'): number {
  return (
    resistivity({ conductorTempC: toC, metal }).temperatureFactor /
    resistivity({ conductorTempC: fromC, metal }).temperatureFactor
  );
}

describe('published', () => {
  computed('conductivity of the copper standard, 58 MS/m', hb100, () =>
    expectPrinted(1 / resistivity({ conductorTempC: 20 }).resistivityOhmMm2PerM, '58'),
  );
  computed('0.15328 ohm g/m2 at 8.89 g/cm3 is its resistivity, to the 5e-5 by which the two prints differ', hb100, () =>
    expectWithin(resistivity({ conductorTempC: 20 }).resistivityOhmMm2PerM * 8.89, 0.15328, 5e-5),
  );
  computed('10.371 ohm circular mil per foot', { ...hb100, status: 'memory' }, () =>
    expectPrinted(
      (resistivity({ conductorTempC: 20 }).resistivityOhmMm2PerM / circularMilsToMm2(1)) * M_PER_FOOT,
      '10.371',
    ),
  );
  computed('slope at 20 °C, 0.00393 /K', hb100, () => expectPrinted(ratio(21, 20) - 1, '0.00393'));
  computed('slope at 20 °C through −234.5 °C, 0.003929 /K', relay, () => expectPrinted(ratio(21, 20) - 1, '0.003929'));
  // 1/259.5 is 0.0038536: the note cut the digit off.
  computed('slope at 25 °C, 0.003853 /K', relay, () => expectPrinted(ratio(26, 25) - 1, '0.003853', 0.7));
  computed('slope of aluminium at 20 °C, 0.00403 /K', al, () =>
    expectPrinted(ratio(21, 20, 'aluminium') - 1, '0.00403'),
  );
  transcribed('aluminium at 20 °C, 0.028264 ohm mm2/m', al, () =>
    expectPrinted(resistivity({ conductorTempC: 20, metal: 'aluminium' }).resistivityOhmMm2PerM, '0.028264'),
  );
  computed('61 % of copper’s conductivity', al, () =>
    expectPrinted(
      (100 * resistivity({ conductorTempC: 20 }).resistivityOhmMm2PerM) /
        resistivity({ conductorTempC: 20, metal: 'aluminium' }).resistivityOhmMm2PerM,
      '61',
    ),
  );
  computed('slope of copper at 75 °C, 0.00323 /K', nec, () => expectPrinted(ratio(76, 75) - 1, '0.00323'));
  computed('slope of aluminium at 75 °C, 0.00330 /K', nec, () =>
    expectPrinted(ratio(76, 75, 'aluminium') - 1, '0.00330'),
  );

  // Factors by which a resistance measured at a temperature is brought to 20 °C. The standard's own, simplified:
  // 1/(1 + 0.004 (T − 20)).
  const kt: readonly (readonly [tempC: number, print: string])[] = [
    [5, '1.064'],
    [10, '1.042'],
    [15, '1.020'],
    [25, '0.980'],
    [30, '0.962'],
    [35, '0.943'],
    [40, '0.926'],
    [45, '0.909'],
    [50, '0.893'],
    [55, '0.877'],
    [60, '0.862'],
    [65, '0.847'],
    [70, '0.833'],
    [75, '0.820'],
    [80, '0.806'],
    [85, '0.794'],
    [90, '0.781'],
    [95, '0.769'],
    [100, '0.758'],
  ];
  for (const [conductorTempC, print] of kt) {
    computed(`factor to 20 °C from ${conductorTempC} °C, ${print}`, factors, () =>
      expectPrinted(1 / resistivity({ conductorTempC, form: 'simplified-0.004' }).temperatureFactor, print),
    );
  }

  computed('a coil of 320 ohm at 25 °C has 443.3 at 125 °C', relay, () => expectPrinted(320 * ratio(125, 25), '443.3'));
  computed('13.0 V of pick-up at 25 °C become 18 V at 125 °C', relay, () => expectPrinted(13 * ratio(125, 25), '18'));
  // The note goes on with the rounded factor: 290 × 1.39 = 403 ohm, where 401.75 is exact.
  computed('factor from 25 to 125 °C, 1.39 on the chart', relay, () => expectPrinted(ratio(125, 25), '1.39'));
  for (const [tempC, print] of [
    [85, '19.7'],
    [100, '20.6'],
    [-25, '12.9'],
  ] as const) {
    computed(`16 V of pick-up at 25 °C become ${print} V at ${tempC} °C`, relay, () =>
      expectPrinted(16 * ratio(tempC, 25), print),
    );
  }

  const tinned: readonly (readonly [mm: number, print: string])[] = [
    [0.1, '93.15'],
    [0.4, '94.16'],
    [1, '96.16'],
    [5, '97.16'],
    [10, '97.66'],
  ];
  for (const [strandDiameterMm, print] of tinned) {
    transcribed(`tinned strand of ${strandDiameterMm} mm, ${print} % IACS`, b33, () => {
      const tin = resistivity({ conductorTempC: 20, metal: 'tinned-copper', strandDiameterMm });
      expectPrinted((100 * 0.017241) / tin.resistivityOhmMm2PerM, print);
    });
  }
});

describe('independent', () => {
  it('at −100 to 400 °C is near the measured line of pure copper, in µΩ·cm: 200, 300, 400, 500, 600 K', () => {
    // Pure annealed copper by the temperature-dependent part alone, as physics handbooks tabulate it (from memory).
    const pure: readonly (readonly [kelvin: number, microOhmCm: number])[] = [
      [200, 1.046],
      [300, 1.725],
      [400, 2.402],
      [500, 3.09],
      [600, 3.792],
    ];
    for (const [kelvin, microOhmCm] of pure) {
      const ours = resistivity({ conductorTempC: kelvin - 273.15 }).resistivityOhmMm2PerM * 100;
      // Annealed commercial copper has a little more, the same at every temperature: its impurities.
      expect(Math.abs(ours - microOhmCm - 0.03)).toBeLessThan(0.03);
    }
  });
  it('linear and simplified forms by their own formula', () => {
    for (const t of [-100, 0, 20, 60, 90, 400]) {
      expectWithin(resistivity({ conductorTempC: t, form: 'linear' }).temperatureFactor, 1 + 0.00393 * (t - 20), 1e-14);
      expectWithin(
        resistivity({ conductorTempC: t, form: 'simplified-0.004' }).temperatureFactor,
        1 + 0.004 * (t - 20),
        1e-14,
      );
      expectWithin(
        resistivity({ conductorTempC: t, form: 'linear', metal: 'aluminium' }).temperatureFactor,
        1 + 0.00403 * (t - 20),
        1e-14,
      );
    }
  });
  it('the forms differ by 0.4 % at 90 °C and less below', () => {
    const at = (form: TemperatureForm): number => resistivity({ conductorTempC: 90, form }).temperatureFactor;
    expect(at('simplified-0.004') / at('inferred-zero') - 1).toBeCloseTo(0.0039, 4);
    expect(Math.abs(at('linear') / at('inferred-zero') - 1)).toBeLessThan(1e-4);
  });
});

describe('laws', () => {
  const forms: readonly TemperatureForm[] = ['inferred-zero', 'linear', 'simplified-0.004'];
  it('grows with temperature, for every metal and form, and is exact at 20 °C', () => {
    fc.assert(
      fc.property(
        evenly(-100, 399),
        fc.constantFrom(...forms),
        fc.constantFrom('copper' as const, 'tinned-copper' as const, 'aluminium' as const),
        (conductorTempC, form, metal) => {
          const rho = (t: number): number =>
            resistivity({ conductorTempC: t, form, metal, strandDiameterMm: 0.25 }).resistivityOhmMm2PerM;
          expect(rho(conductorTempC + 1)).toBeGreaterThan(rho(conductorTempC));
          expect(rho(conductorTempC)).toBeGreaterThan(0);
        },
      ),
    );
    for (const form of forms) expect(resistivity({ conductorTempC: 20, form }).temperatureFactor).toBe(1);
  });
  it('a factor there and the factor back make one', () => {
    fc.assert(
      fc.property(evenly(-100, 400), evenly(-100, 400), (a, b) => expectWithin(ratio(a, b) * ratio(b, a), 1, 1e-14)),
    );
  });
  it('tin never makes copper better, and the thinner strand never has the less', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.0762, max: 11.684, noNaN: true }),
        fc.double({ min: 0.0762, max: 11.684, noNaN: true }),
        (a, b) => {
          const rho = (d: number): number =>
            resistivity({ conductorTempC: 20, metal: 'tinned-copper', strandDiameterMm: d }).resistivityOhmMm2PerM;
          expect(rho(a)).toBeGreaterThan(0.017241);
          expect(rho(Math.min(a, b))).toBeGreaterThanOrEqual(rho(Math.max(a, b)));
        },
      ),
    );
  });
  it('swapped inputs are seen', () => swapsMatter(resistivity, { conductorTempC: 0.3, strandDiameterMm: 0.25 }));
});

describe('edges', () => {
  it('takes −100 and 400 °C, and nothing beyond', () => {
    expect(resistivity({ conductorTempC: -100 }).temperatureFactor).toBeCloseTo(134.5 / 254.5, 12);
    expect(resistivity({ conductorTempC: 400 }).temperatureFactor).toBeCloseTo(634.5 / 254.5, 12);
    expectInputError(() => resistivity({ conductorTempC: -100.1 }), 'conductorTempC', 'atLeast');
    expectInputError(() => resistivity({ conductorTempC: 400.1 }), 'conductorTempC', 'atMost');
  });
  it('takes tinned strands from 0.0030 to 0.460 in, each step on the poorer side', () => {
    const iacs = (strandDiameterMm: number): number =>
      0.017241 / resistivity({ conductorTempC: 20, metal: 'tinned-copper', strandDiameterMm }).resistivityOhmMm2PerM;
    for (const [step, below, above] of [
      [0.28194, 0.9315, 0.9416],
      [0.51054, 0.9416, 0.9616],
      [2.6162, 0.9616, 0.9716],
      [7.366, 0.9716, 0.9766],
    ] as const) {
      expect(iacs(step)).toBeCloseTo(below, 12);
      expect(iacs(step + 1e-9)).toBeCloseTo(above, 12);
    }
    expect(iacs(0.0762)).toBeCloseTo(0.9315, 12);
    expect(iacs(11.684)).toBeCloseTo(0.9766, 12);
    const tin = (strandDiameterMm?: number): unknown =>
      resistivity({
        conductorTempC: 20,
        metal: 'tinned-copper',
        ...(strandDiameterMm === undefined ? {} : { strandDiameterMm }),
      });
    expectInputError(() => tin(0.0761), 'strandDiameterMm', 'atLeast');
    expectInputError(() => tin(11.685), 'strandDiameterMm', 'atMost');
    expectInputError(() => tin(), 'strandDiameterMm', 'missing');
  });
  it('refuses nonsense', () => {
    refusesNonsense(
      resistivity,
      { conductorTempC: 20, strandDiameterMm: 0.2 },
      { required: ['conductorTempC'], optional: ['strandDiameterMm'] },
    );
    expectInputError(() => resistivity({ conductorTempC: 20, metal: 'gold' as never }), 'metal', 'oneOf');
    expectInputError(() => resistivity({ conductorTempC: 20, form: 'exact' as never }), 'form', 'oneOf');
  });
  it('says which values rest on memory', () => {
    expect(resistivity({ conductorTempC: 20 })).toMatchObject({ source: 'nbs-hb-100', sourceStatus: 'published' });
    expect(resistivity({ conductorTempC: 20, metal: 'aluminium' })).toMatchObject({
      source: 'iec-60889',
      sourceStatus: 'memory',
    });
    expect(resistivity({ conductorTempC: 20, metal: 'tinned-copper', strandDiameterMm: 1 })).toMatchObject({
      source: 'astm-b33',
      sourceStatus: 'memory',
    });
  });
});

describe('regression', () => {
  it('a strand of exactly 0.0111 in has the poorer conductivity of its step', () => {
    const { resistivityOhmMm2PerM } = resistivity({
      conductorTempC: 20,
      metal: 'tinned-copper',
      strandDiameterMm: 0.28194,
    });
    expectWithin(resistivityOhmMm2PerM, 0.017241 / 0.9315, 1e-14);
  });
});
