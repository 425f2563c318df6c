import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { e12, e24, type LedDesign, ledResistor, type LedResistorInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const lamp: LedResistorInput = {
  lowestSupplyV: 11,
  highestSupplyV: 14.4,
  ledV: 2,
  seriesCount: 1,
  stringCount: 1,
  wantedA: 0.015,
  mostA: 0.02,
  leastA: 0.005,
  resistorMostW: 0.25,
  series: e24,
  toleranceFraction: 0.05,
};

const designed = (input: LedResistorInput): LedDesign => {
  const result = ledResistor(input);
  if (!result.possible) throw new Error(result.because);
  return result;
};

describe('published', () => {
  const lec = (place: string) =>
    ({
      source: 'lessons-electric-circuits',
      place: `volume III, chapter 3, LED from ${place}`,
      status: 'published',
    }) as const;
  const from = (supplyV: number, resistorMostW: number): LedDesign =>
    designed({
      ...lamp,
      lowestSupplyV: supplyV,
      highestSupplyV: supplyV,
      ledV: 1.6,
      wantedA: 0.02,
      mostA: 0.025,
      resistorMostW,
    });
  const six = from(6, 0.25);
  const twentyFour = from(24, 1);
  computed('6 V: Ω', lec('6 V'), () => {
    expectPrinted(six.exactOhm, '220');
  });
  computed('6 V: mW', lec('6 V'), () => {
    expectPrinted(six.exactW * 1000, '88');
  });
  computed('6 V: the stock value', lec('6 V'), () => {
    expect(six.resistorOhm).toBe(220);
  });
  computed('24 V: kΩ', lec('24 V'), () => {
    expectPrinted(twentyFour.exactOhm / 1000, '1.12');
  });
  computed('24 V: mW', lec('24 V'), () => {
    expectPrinted(twentyFour.exactW * 1000, '448');
  });
  const w9 = {
    source: 'circuit-theory',
    place: 'worked case: LED of 2.0 V, 15 mA at 14.4 V',
    status: 'derived',
  } as const;
  const nine = designed(lamp);
  computed('exact, Ω', w9, () => {
    expectPrinted(nine.exactOhm, '826.7');
  });
  computed('chosen, Ω', w9, () => {
    expect(nine.resistorOhm).toBe(820);
  });
  computed('current, mA', w9, () => {
    expectPrinted(nine.currentA * 1000, '15.1');
  });
  computed('heat, W', w9, () => {
    expectPrinted(nine.resistorW, '0.188');
  });
});

describe('independent', () => {
  it('takes the nearest value within the limit, as a plain search does', () => {
    for (const highestSupplyV of [13, 13.8, 14.4, 15, 16, 28]) {
      for (const wantedA of [0.002, 0.005, 0.01, 0.018]) {
        const input = { ...lamp, highestSupplyV, wantedA, leastA: 0, resistorMostW: 5 };
        const { resistorOhm } = designed(input);
        const exact = (highestSupplyV - 2) / wantedA;
        const all = [1, 2, 3].flatMap((decade) => e24.values.map((v) => v * 10 ** decade));
        const allowed = all.filter((ohm) => (highestSupplyV - 2) / (ohm * 0.95) <= 0.02);
        const nearest = all.reduce((best, ohm) => (Math.abs(ohm - exact) < Math.abs(best - exact) ? ohm : best));
        const above = Math.min(...allowed.filter((ohm) => ohm >= exact));
        expect(resistorOhm).toBe(allowed.includes(nearest) ? nearest : above);
      }
    }
  });
});

describe('laws', () => {
  it('never passes the LED’s limit, whatever the tolerance', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 9, max: 30, noNaN: true }),
        fc.integer({ min: 1, max: 4 }),
        fc.double({ min: 0.001, max: 0.02, noNaN: true }),
        evenlyWithEnds(0, 0.1),
        (highestSupplyV, seriesCount, wantedA, toleranceFraction) => {
          const input = {
            ...lamp,
            lowestSupplyV: 8.5,
            highestSupplyV,
            seriesCount,
            wantedA,
            toleranceFraction,
            leastA: 0,
          };
          const result = ledResistor({ ...input, resistorMostW: 100 });
          const design = result.possible ? result : result.nearest!;
          expect(
            (highestSupplyV - 2 * seriesCount) / (design.resistorOhm * (1 - toleranceFraction)),
          ).toBeLessThanOrEqual(0.02);
          expect(design.worstLowA).toBeLessThanOrEqual(design.lowestCurrentA);
          expect(design.lowestCurrentA).toBeLessThanOrEqual(design.currentA);
          expectWithin(design.resistorW + design.currentA * 2 * seriesCount, design.currentA * highestSupplyV, 1e-12);
        },
      ),
    );
  });
  it('does not mistake one input for another', () => {
    swapsMatter(ledResistor, {
      ...lamp,
      seriesCount: 2,
      stringCount: 3,
      leakageA: 0.0005,
      darkV: 1.4,
      leastLoadA: 0.1,
    });
  });
});

describe('edges', () => {
  it('a bleeder keeps a leaking output dark and lets the lamp be seen', () => {
    const both = designed({ ...lamp, leakageA: 0.0005, darkV: 1.4, leastLoadA: 0.1, series: e12 });
    const { bleeder, checks, totalA } = both;
    // 1.4 V ÷ 0.5 mA = 2.8 kΩ for the dark; 11 V ÷ (100 − 10.45) mA = 122.8 Ω for the load, less 5 %: 116.99 → 100 Ω.
    expect(bleeder?.resistanceOhm).toBe(100);
    expectWithin(bleeder!.powerW, 14.4 ** 2 / 95, 1e-12);
    expectWithin(totalA, both.currentA + 0.144, 1e-12);
    expect(checks.every((check) => check.ok)).toBe(true);
    const dark = designed({ ...lamp, leakageA: 0.0005, darkV: 1.4, series: e12 });
    expect(dark.bleeder?.resistanceOhm).toBe(2200);
    expect(designed({ ...lamp, leastLoadA: 0.001 }).bleeder).toBeNull();
  });
  it('names a string that is too long, with the longest that works', () => {
    const result = ledResistor({ ...lamp, seriesCount: 6, leastA: 0 });
    expect(result).toMatchObject({ possible: false, code: 'string-too-long', nearest: { possible: true } });
    expect(result.possible ? '' : result.because).toBe(
      '6 LEDs need 12 V and the supply falls to 11 V: at most 5 in a string',
    );
    expect(ledResistor({ ...lamp, ledV: 11 })).toMatchObject({ code: 'string-too-long', nearest: null });
  });
  it('names what fails', () => {
    expect(ledResistor({ ...lamp, leastA: 0.014 })).toMatchObject({ possible: false, code: 'too-dim' });
    expect(ledResistor({ ...lamp, resistorMostW: 0.125 })).toMatchObject({ possible: false, code: 'resistor-too-hot' });
  });
  it('refuses nonsense', () => {
    refusesNonsense(
      ledResistor,
      { ...lamp, darkV: 1, leakageA: 0.001 },
      {
        required: [
          'lowestSupplyV',
          'highestSupplyV',
          'ledV',
          'seriesCount',
          'stringCount',
          'wantedA',
          'mostA',
          'leastA',
          'resistorMostW',
          'toleranceFraction',
        ],
        optional: ['leakageA', 'darkV', 'leastLoadA'],
      },
    );
    expectInputError(() => ledResistor({ ...lamp, leakageA: 0.001 }), 'darkV', 'missing');
    expectInputError(() => ledResistor({ ...lamp, mostA: 0.01 }), 'mostA', 'atLeast');
    expectInputError(() => ledResistor({ ...lamp, seriesCount: 1.5 }), 'seriesCount', 'integer');
    expectInputError(() => ledResistor({ ...lamp, highestSupplyV: 10 }), 'highestSupplyV', 'atLeast');
    expectInputError(() => ledResistor({ ...lamp, series: undefined as never }), 'series', 'missing');
  });
});
