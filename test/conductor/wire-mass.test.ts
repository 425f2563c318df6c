import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { awgToAreaMm2, circularMilsToMm2, feetToM, KG_PER_POUND, MM_PER_INCH, wireMass } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';
import { circular31, circular31Pounds } from './circular-31.js';

const hb100: Citation = { source: 'nbs-hb-100', place: 'section 1.1', status: 'published' };

describe('published', () => {
  computed('density of copper, 0.32117 lb/in3', hb100, () => {
    const { massKg } = wireMass({ areaMm2: MM_PER_INCH ** 2, lengthM: MM_PER_INCH / 1000 });
    expectPrinted(massKg / KG_PER_POUND, '0.32117');
  });
  for (const [awg, pounds] of circular31Pounds) {
    computed(`mass of 1000 ft of No. ${awg}, ${pounds} lb`, circular31, () => {
      const { massKg } = wireMass({ areaMm2: awgToAreaMm2(awg), lengthM: feetToM(1000) });
      // 1/0 and 4 are halfway between two prints: 319.4499 and 126.3498.
      expectPrinted(massKg / KG_PER_POUND, pounds, 0.51);
    });
  }
});

describe('independent', () => {
  it('is volume times density', () => {
    expectWithin(wireMass({ areaMm2: 25, lengthM: 4 }).massKg, 25e-6 * 4 * 8890, 1e-14);
    expectWithin(wireMass({ areaMm2: 25, lengthM: 4, metal: 'aluminium' }).massKg, 25e-6 * 4 * 2703, 1e-14);
    expectWithin(
      wireMass({ areaMm2: 25, lengthM: 4, metal: 'tinned-copper' }).massKg,
      wireMass({ areaMm2: 25, lengthM: 4 }).massKg,
      0,
    );
  });
  it('gives 3.027 lb per 1000 ft and thousand circular mils, the trade’s figure', () => {
    const { massKg } = wireMass({ areaMm2: circularMilsToMm2(1000), lengthM: feetToM(1000) });
    expectPrinted(massKg / KG_PER_POUND, '3.027');
  });
});

describe('laws', () => {
  it('scales with area, length and lay', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 500, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.double({ min: 1, max: 1.1, noNaN: true }),
        (areaMm2, lengthM, layFactor) => {
          const { massKg, massKgPerM } = wireMass({ areaMm2, lengthM, layFactor });
          expectWithin(massKg, massKgPerM * lengthM, 1e-14);
          expectWithin(wireMass({ areaMm2: 2 * areaMm2, lengthM, layFactor }).massKg, 2 * massKg, 1e-14);
          expectWithin(massKg, wireMass({ areaMm2, lengthM }).massKg * layFactor, 1e-14);
        },
      ),
    );
  });
  it('swapped inputs are seen', () => swapsMatter(wireMass, { areaMm2: 2, lengthM: 3, layFactor: 1.02 }));
});

describe('edges', () => {
  it('takes no length, and a lay from 1 to 1.1', () => {
    expect(wireMass({ areaMm2: 1, lengthM: 0 }).massKg).toBe(0);
    expect(wireMass({ areaMm2: 1, lengthM: 1, layFactor: 1.1 }).massKgPerM).toBeCloseTo(0.009779, 9);
    expectInputError(() => wireMass({ areaMm2: 1, lengthM: 1, layFactor: 0.99 }), 'layFactor', 'atLeast');
    expectInputError(() => wireMass({ areaMm2: 1, lengthM: 1, layFactor: 1.11 }), 'layFactor', 'atMost');
    expectInputError(() => wireMass({ areaMm2: 1, lengthM: -1e-9 }), 'lengthM', 'atLeast');
    expectInputError(() => wireMass({ areaMm2: 1, lengthM: 1e6 + 1 }), 'lengthM', 'atMost');
    expectInputError(() => wireMass({ areaMm2: 1e6 + 1, lengthM: 1 }), 'areaMm2', 'atMost');
    expect(Number.isFinite(wireMass({ areaMm2: 1e6, lengthM: 1e6 }).massKg)).toBe(true);
  });
  it('refuses an area in m², and nonsense', () => {
    expectInputError(() => wireMass({ areaMm2: 2.5e-6, lengthM: 1 }), 'areaMm2', 'atLeast');
    expectInputError(() => wireMass({ areaMm2: 0, lengthM: 1 }), 'areaMm2', 'above');
    expectInputError(() => wireMass({ areaMm2: 1, lengthM: 1, metal: 'brass' as never }), 'metal', 'oneOf');
    refusesNonsense(
      wireMass,
      { areaMm2: 1, lengthM: 1, layFactor: 1 },
      { required: ['areaMm2', 'lengthM'], optional: ['layFactor'] },
    );
  });
  it('says that the density of aluminium rests on memory', () => {
    expect(wireMass({ areaMm2: 1, lengthM: 1 })).toMatchObject({ source: 'nbs-hb-100', sourceStatus: 'published' });
    expect(wireMass({ areaMm2: 1, lengthM: 1, metal: 'aluminium' })).toMatchObject({
      source: 'iec-60889',
      sourceStatus: 'memory',
    });
  });
});
