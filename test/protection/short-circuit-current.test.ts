import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shortCircuitCurrent, type ShortCircuitCurrentInput, wireResistance, geometric } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';

const cite: Citation = { source: 'circuit-theory', place: 'short at the far end', status: 'derived' };
const parts = [
  { name: 'battery', resistanceOhm: 0.008 },
  { name: 'return', resistanceOhm: 0.005 },
  { name: 'holder', resistanceOhm: 0.003 },
  { name: 'fuse', resistanceOhm: 0.004 },
];
const cold: ShortCircuitCurrentInput = {
  supplyV: 12.6,
  parts,
  wireLengthM: 6,
  resistanceOhmPerM: wireResistance({ areaMm2: 0.5, resistanceBasis: geometric, lengthM: 1, conductorTempC: 20 })
    .resistanceOhm,
  ratedTempC: 20,
  conductorTempC: 20,
};
const hot = { ...cold, resistanceOhmPerM: 0.0371, conductorTempC: 85 };

describe('published', () => {
  computed('6 m of 0.5 mm², cold: 226.9 mΩ', cite, () =>
    expectPrinted(shortCircuitCurrent(cold).resistanceOhm * 1000, '226.9'),
  );
  computed('and 55.5 A', cite, () => expectPrinted(shortCircuitCurrent(cold).currentA, '55.5'));
  const hotCite: Citation = { source: 'iso-19642', place: '37.1 mΩ/m, conductor at 85 °C', status: 'memory' };
  computed('hot, at the most that its standard allows: 299.5 mΩ', hotCite, () =>
    expectPrinted(shortCircuitCurrent(hot).resistanceOhm * 1000, '299.5', 1),
  );
  computed('and 42.1 A', hotCite, () => expectPrinted(shortCircuitCurrent(hot).currentA, '42.1'));
  const battery: Citation = { source: 'circuit-theory', place: '12.6 V, 9.0 + 1.56 + 1.4 mΩ', status: 'derived' };
  computed('behind 2 m of 25 mm² and a 40 A blade: 1053.5 A', battery, () => {
    const { currentA, wireResistanceOhm } = shortCircuitCurrent({
      ...cold,
      parts: [
        { name: 'battery', resistanceOhm: 0.009 },
        { name: 'fuse', resistanceOhm: 0.0014 },
      ],
      wireLengthM: 2,
      resistanceOhmPerM: 0.00078,
    });
    expectPrinted(wireResistanceOhm * 1000, '1.56');
    expectPrinted(currentA, '1053.5');
  });
});

describe('laws', () => {
  it('more wire, hotter wire or less voltage never raise the current', () => {
    fc.assert(
      fc.property(
        evenlyWithEnds(0, 50),
        evenly(-40, 200),
        fc.double({ min: 1, max: 3, noNaN: true }),
        (wireLengthM, conductorTempC, k) => {
          const base = shortCircuitCurrent({ ...hot, wireLengthM, conductorTempC }).currentA;
          expect(
            shortCircuitCurrent({ ...hot, wireLengthM: wireLengthM * k, conductorTempC }).currentA,
          ).toBeLessThanOrEqual(base);
          expect(
            shortCircuitCurrent({ ...hot, wireLengthM, conductorTempC: conductorTempC + 10 * k }).currentA,
          ).toBeLessThanOrEqual(base);
          expectWithin(
            shortCircuitCurrent({ ...hot, wireLengthM, conductorTempC, supplyV: 12.6 * k }).currentA,
            base * k,
            1e-9,
          );
        },
      ),
    );
  });
  it('swaps are seen', () => swapsMatter(shortCircuitCurrent, hot));
});

describe('edges', () => {
  it('refuses nonsense, and a loop that nothing limits', () => {
    refusesNonsense(shortCircuitCurrent, hot, {
      required: ['supplyV', 'wireLengthM', 'resistanceOhmPerM', 'ratedTempC', 'conductorTempC'],
    });
    expectInputError(() => shortCircuitCurrent({ ...hot, parts: [], wireLengthM: 0 }), 'parts', 'range');
    expectInputError(
      () => shortCircuitCurrent({ ...hot, parts: [{ name: 'x', resistanceOhm: -1 }] }),
      'parts[0].resistanceOhm',
      'atLeast',
    );
    expectInputError(() => shortCircuitCurrent({ ...hot, metal: 'gold' as never }), 'metal', 'oneOf');
  });
});
