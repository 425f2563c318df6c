import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { filamentLamp, halogenLamp, lampAtVoltage, type LampAtVoltageInput, unR37Lamps } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const stop: LampAtVoltageInput = {
  ratedPowerW: 21,
  ratedV: 13.5,
  lampV: 12,
  law: filamentLamp,
  ratedLightLumen: 460,
  ratedLifeTimeH: 300,
};

describe('published', () => {
  const law = (place: string) => ({ source: 'lamp-rerating', place, status: 'derived' }) as const;
  const low = lampAtVoltage(stop);
  const high = lampAtVoltage({ ...stop, lampV: 14.2 });
  computed('12.0 V on a 13.5 V lamp: light 0.670', law('(V/Vd)^3.4'), () =>
    expectPrinted(low.mostLightFraction, '0.670'),
  );
  computed('12.0 V on a 13.5 V lamp: current 0.937', law('(V/Vd)^0.55'), () =>
    expectPrinted(low.currentA / low.ratedA, '0.937'),
  );
  computed('12.0 V on a 13.5 V lamp: life 4.11', law('(V/Vd)^-12'), () => expectPrinted(low.lifeFraction!, '4.11'));
  // The exponent 13 in common use lies within the band of 12 to 16.
  computed('12.0 V on a 13.5 V lamp: life 4.62 by exponent 13', law('(V/Vd)^-13'), () => {
    const common = lampAtVoltage({ ...stop, law: { ...filamentLamp, lifeExponents: [13, 13] } });
    expectPrinted(common.lifeFraction!, '4.62');
    expect(low.lifeFraction!).toBeLessThan(4.62);
    expect(low.mostLifeFraction!).toBeGreaterThan(4.62);
  });
  computed('14.2 V on a 13.5 V lamp: light 1.188', law('(V/Vd)^3.4'), () => expectPrinted(high.lightFraction, '1.188'));
  computed('14.2 V on a 13.5 V lamp: current 1.028', law('(V/Vd)^0.55'), () =>
    expectPrinted(high.currentA / high.ratedA, '1.028'),
  );
  computed('14.2 V on a 13.5 V lamp: life 0.545', law('(V/Vd)^-12'), () =>
    expectPrinted(high.mostLifeFraction!, '0.545'),
  );
  computed('14.2 V on a 13.5 V lamp: life 0.518 by exponent 13', law('(V/Vd)^-13'), () =>
    expectPrinted(
      lampAtVoltage({ ...stop, lampV: 14.2, law: { ...filamentLamp, lifeExponents: [13, 13] } }).lifeFraction!,
      '0.518',
    ),
  );
  const printed = { source: 'lamp-rerating', place: 'power with (V/Vd)^1.6', status: 'published' } as const;
  for (const lampV of [12, 14.2]) {
    // The table rounds 1.55 to 1.6: within 0.6 % at these volts.
    computed(`power at ${lampV} V as the table's exponent gives it`, printed, () =>
      expectWithin(lampAtVoltage({ ...stop, lampV }).powerW / 21, (lampV / 13.5) ** 1.6, 0.0062),
    );
  }

  const guide = { source: 'vehicle-load-guide', place: 'nominal watts over 12 V', status: 'published' } as const;
  for (const [ratedPowerW, amps] of [
    [55, '4.58'],
    [60, '5.00'],
    [35, '2.92'],
    [45, '3.75'],
    [21, '1.75'],
    [5, '.42'],
  ] as const) {
    computed(`${ratedPowerW} W at 12 V: ${amps} A`, guide, () =>
      expectPrinted(lampAtVoltage({ ratedPowerW, ratedV: 12, lampV: 12, law: filamentLamp }).ratedA, amps),
    );
  }
  const regulation = { source: 'un-r37', place: 'largest power at the test voltage', status: 'memory' } as const;
  const amps: Readonly<Record<string, string>> = {
    'H1 single': '5.15',
    'H3 single': '5.15',
    'H4 main': '5.68',
    'H4 dipped': '5.15',
    'H7 single': '4.39',
    'H11 single': '4.70',
    'P21W single': '1.96',
    'P21/5W stop': '1.96',
    'P21/5W tail': '.49',
    'PY21W single': '1.96',
    'R5W single': '.41',
    'W5W single': '.41',
    'C5W single': '.41',
    'T4W single': '.33',
  };
  for (const { category, filament, mostW, testV } of unR37Lamps.rows) {
    const print = amps[`${category} ${filament}`];
    computed(`${category} ${filament}: ${print} A at ${testV} V`, regulation, () =>
      expectPrinted(
        lampAtVoltage({ ratedPowerW: mostW, ratedV: testV, lampV: testV, law: filamentLamp }).currentA,
        print!,
      ),
    );
  }
});

describe('independent', { timeout: 60_000 }, () => {
  it('has the slopes of its exponents, taken from two nearby points', () => {
    const h = 1e-6;
    const a = lampAtVoltage({ ...stop, lampV: 13.5 * (1 - h) });
    const b = lampAtVoltage({ ...stop, lampV: 13.5 * (1 + h) });
    const slope = (x: number, y: number): number => Math.log(y / x) / Math.log((1 + h) / (1 - h));
    expectWithin(slope(a.currentA, b.currentA), 0.55, 1e-6);
    expectWithin(slope(a.powerW, b.powerW), 1.55, 1e-6);
    expectWithin(slope(a.colourFraction!, b.colourFraction!), 0.42, 1e-6);
    expectWithin(b.resistanceOhm, (13.5 * (1 + h)) / b.currentA, 1e-12);
  });
});

describe('laws', () => {
  const volts = fc.double({ min: 6, max: 26, noNaN: true });
  it('more volts never give less light or current, nor longer life', () => {
    fc.assert(
      fc.property(volts, fc.double({ min: 1e-6, max: 1, noNaN: true }), (lampV, more) => {
        const a = lampAtVoltage({ ...stop, lampV });
        const b = lampAtVoltage({ ...stop, lampV: lampV + more });
        expect(b.currentA).toBeGreaterThan(a.currentA);
        expect(b.lightFraction).toBeGreaterThan(a.lightFraction);
        expect(b.lifeFraction!).toBeLessThanOrEqual(a.lifeFraction!);
        expect(a.lightFraction).toBeLessThanOrEqual(a.mostLightFraction);
        expect(a.lifeFraction!).toBeLessThanOrEqual(a.mostLifeFraction!);
      }),
    );
  });
  it('is what it is rated at its rated volts', () => {
    expect(lampAtVoltage({ ...stop, lampV: 13.5 })).toMatchObject({
      lightFraction: 1,
      mostLightFraction: 1,
      lifeFraction: 1,
      lightLumen: 460,
      lifeTimeH: 300,
      colourFraction: 1,
    });
    expectWithin(lampAtVoltage({ ...stop, lampV: 13.5 }).powerW, 21, 1e-12);
  });
  it('two swapped inputs of one kind do not go unseen', () => swapsMatter(lampAtVoltage, stop));
});

describe('edges', () => {
  it('says nothing of a halogen lamp that has no life law, nor of what was not given', () => {
    expect(lampAtVoltage({ ...stop, law: halogenLamp })).toMatchObject({
      lifeFraction: null,
      mostLifeFraction: null,
      lifeTimeH: null,
      colourFraction: null,
    });
    const { ratedLightLumen: _, ratedLifeTimeH: __, ...bare } = stop;
    expect(lampAtVoltage(bare)).toMatchObject({ lightLumen: null, lifeTimeH: null });
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(lampAtVoltage, stop, {
      required: ['ratedPowerW', 'ratedV', 'lampV'],
      optional: ['ratedLightLumen', 'ratedLifeTimeH'],
    });
    expectInputError(() => lampAtVoltage({ ...stop, lampV: 27.1 }), 'lampV', 'atMost');
    expectInputError(() => lampAtVoltage({ ...stop, lampV: 0 }), 'lampV', 'above');
    expectInputError(() => lampAtVoltage({ ...stop, law: undefined as never }), 'law', 'missing');
    expectInputError(
      () => lampAtVoltage({ ...stop, law: { ...filamentLamp, currentExponent: 1.2 } }),
      'law.currentExponent',
      'atMost',
    );
  });
});
