import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { AWG_SIZES, awgToAreaMm2, awgToDiameterMm, mm2ToCircularMils } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { circular31, circular31Rows } from './circular-31.js';

describe('published', () => {
  // Squares of the chained and rounded diameters of the Circular: where its print is off, by how many last units.
  const chained: Partial<Record<string, number>> = {
    '1': 1.4,
    '2': 1.8,
    '3': 0.9,
    '4': 0.7,
    '8': 0.7,
    '10': 2.1,
    '12': 1,
    '14': 0.8,
    '16': 1.6,
    '24': 3.1,
    '28': 1.8,
  };
  for (const [awg, , mils] of circular31Rows) {
    computed(`area of No. ${awg}, ${mils} circular mils`, circular31, () => {
      const circularMils = mm2ToCircularMils(awgToAreaMm2(awg));
      expectPrinted(circularMils, mils, chained[awg]);
      expectWithin(circularMils, Number(mils), 5e-4);
    });
  }
});

describe('independent', () => {
  it('is the circle of the diameter', () => {
    for (const awg of AWG_SIZES) expectWithin(awgToAreaMm2(awg), Math.PI * (awgToDiameterMm(awg) / 2) ** 2, 1e-14);
  });
});

describe('laws', () => {
  it('shrinks by 92^(2/39) a step, a factor of 1.261', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 42 }), (i) => {
        expectWithin(awgToAreaMm2(AWG_SIZES[i]!) / awgToAreaMm2(AWG_SIZES[i + 1]!), 92 ** (2 / 39), 1e-12);
      }),
    );
  });
});

describe('edges', () => {
  it('refuses what is not a gauge, in its own name', () => {
    for (const awg of ['5/0', '41', '', 'x']) expectInputError(() => awgToAreaMm2(awg), 'awg', 'inTable');
    expectInputError(() => awgToAreaMm2(18 as never), 'awg', 'text');
    expectInputError(() => awgToAreaMm2(undefined as never), 'awg', 'missing');
    expect(() => awgToAreaMm2('41')).toThrow("awgToAreaMm2: awg must be from '4/0' to '40', got '41'");
  });
});
