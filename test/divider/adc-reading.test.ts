import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { adcReading, type AdcReadingInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const ten = { referenceV: 5, bits: 10, divisor: '2^n', reference: 'ratiometric' } as const;
const feet = { lowV: 0, highV: 5, lowValue: 0, highValue: 40, unit: 'ft' } as const;

describe('published', () => {
  const lec = {
    source: 'lessons-electric-circuits',
    place: 'volume IV, chapter 13, 40 ft tank',
    status: 'published',
  } as const;
  const tank = adcReading({ ...ten, divisor: '2^n-1', pinV: 1, scale: feet });
  computed('states of 10 bits', lec, () => {
    expect(tank.mostCount + 1).toBe(1024);
  });
  computed('states of 11 bits', lec, () => {
    expect(adcReading({ ...ten, bits: 11, pinV: 0 }).mostCount + 1).toBe(2048);
  });
  computed('step of 10 bits over 40 ft, by 2ⁿ − 1', lec, () => {
    expectPrinted(tank.stepValue!, '0.039101');
  });
  computed('the same in inches', lec, () => {
    expectPrinted(tank.stepValue! * 12, '0.46921');
  });
  computed('bits for 0.1 in of 40 ft', lec, () => {
    const inches = { ...feet, highValue: 480, unit: 'in' };
    expect(adcReading({ ...ten, divisor: '2^n-1', pinV: 1, scale: inches, wantedStepValue: 0.1 }).neededBits).toBe(13);
  });
  computed('greatest count of 12 bits', lec, () => {
    expect(adcReading({ ...ten, bits: 12, pinV: 0 }).mostCount).toBe(4095);
  });
  computed('greatest count of 13 bits', lec, () => {
    expect(adcReading({ ...ten, bits: 13, pinV: 0 }).mostCount).toBe(8191);
  });
  const derived = (place: string) => ({ source: 'circuit-theory', place, status: 'derived' }) as const;
  computed('step of 10 bits over 40 ft, by 2ⁿ', derived('40 ÷ 1024'), () => {
    expectPrinted(adcReading({ ...ten, pinV: 1, scale: feet }).stepValue!, '0.0390625');
  });
  const memory = { source: 'circuit-theory', place: 'ideal rounding, step ÷ √12', status: 'memory' } as const;
  computed('rounding noise in steps', memory, () => {
    expectPrinted(tank.roundingNoiseV / tank.stepV, '0.288675');
  });

  const notes = { source: 'switch-ladder-notes', place: '2018, five buttons on 10 bits', status: 'published' } as const;
  for (const [pinV, count] of [
    [0, 0],
    [2.5, 512],
    [10 / 3, 683],
    [3.75, 768],
    [4, 819],
  ] as const) {
    computed(`count at ${pinV.toFixed(2)} V`, notes, () => {
      expect(adcReading({ ...ten, pinV }).count).toBe(count);
    });
  }
  // Six readings of a coolant sensor: 0.57 K and 0.28 K a count at 8.55 and 17.5 mV/K.
  const w6 = derived('worked case: resolution of a thermistor at 100 °C');
  for (const [slope, print] of [
    [8.55, '0.57'],
    [17.5, '0.28'],
  ] as const) {
    computed(`K a count at ${slope} mV/K`, w6, () => {
      const scale = { lowV: 0, highV: slope / 1000, lowValue: 0, highValue: -1, unit: 'K' };
      expectPrinted(adcReading({ ...ten, pinV: 1, scale }).stepValue!, print);
    });
  }
});

describe('laws', () => {
  const bits = fc.integer({ min: 1, max: 24 });
  const divisor = fc.constantFrom('2^n' as const, '2^n-1' as const);
  it('reads back within its rounding', () => {
    fc.assert(
      fc.property(
        evenlyWithEnds(0, 4.9),
        bits,
        divisor,
        fc.constantFrom('nearest' as const, 'down' as const),
        (pinV, n, d, rounding) => {
          const r = adcReading({ pinV, referenceV: 5, bits: n, divisor: d, reference: 'ratiometric', rounding });
          if (r.count === r.mostCount) return; // the last count of 2ⁿ stands for less than full scale
          expect(Math.abs(r.readV - pinV)).toBeLessThanOrEqual(r.roundingErrorV * (1 + 1e-9));
          expect(r.overRange).toBe('no');
        },
      ),
    );
  });
  it('a count goes there and back', () => {
    fc.assert(
      fc.property(bits, divisor, evenlyWithEnds(0, 1), (n, d, share) => {
        const readCount = Math.floor(share * (2 ** n - 1));
        const base = { referenceV: 4.096, bits: n, divisor: d, reference: 'ratiometric' } as const;
        for (const rounding of ['nearest', 'down'] as const) {
          const { readV } = adcReading({ ...base, readCount });
          expect(adcReading({ ...base, pinV: readV, rounding }).count).toBe(readCount);
        }
      }),
    );
  });
  it('does not mistake one input for another', () => {
    swapsMatter(adcReading, { ...ten, pinV: 2.1, reference: 'absolute', referenceToleranceFraction: 0.02 });
  });
});

describe('edges', () => {
  it('holds the count and says that it did', () => {
    expect(adcReading({ ...ten, pinV: 5 })).toMatchObject({ count: 1023, overRange: 'no' });
    expect(adcReading({ ...ten, pinV: 5.2 })).toMatchObject({ count: 1023, overRange: 'above' });
    expect(adcReading({ ...ten, pinV: -0.1 })).toMatchObject({ count: 0, overRange: 'below' });
  });
  it('an absolute reference adds its tolerance, a ratiometric one does not', () => {
    const absolute = adcReading({ ...ten, pinV: 4, reference: 'absolute', referenceToleranceFraction: 0.02 });
    expectWithin(absolute.referenceErrorV, 4 / 0.98 - 4, 1e-12);
    expectWithin(absolute.errorV, 5 / 2048 + 4 / 0.98 - 4, 1e-12);
    expect(adcReading({ ...ten, pinV: 4, referenceToleranceFraction: 0.02 }).referenceErrorV).toBe(0);
    expectInputError(
      () => adcReading({ ...ten, pinV: 4, reference: 'absolute' }),
      'referenceToleranceFraction',
      'missing',
    );
  });
  it('has nothing in the user’s unit without a scale', () => {
    expect(adcReading({ ...ten, pinV: 1, wantedStepValue: 0.1 })).toMatchObject({
      value: null,
      unit: null,
      neededBits: null,
    });
    const kpa = { lowV: 0.5, highV: 4.5, lowValue: 0, highValue: 1000, unit: 'kPa' };
    expect(adcReading({ ...ten, pinV: 2.5, scale: kpa }).value).toBe(500);
  });
  it('more bits than there are is null, not a guess', () => {
    expect(
      adcReading({ ...ten, pinV: 1, scale: { ...feet, highValue: 1e10 }, wantedStepValue: 1e-12 }).neededBits,
    ).toBeNull();
  });
  it('refuses nonsense', () => {
    const input: AdcReadingInput = { ...ten, pinV: 1, scale: feet };
    refusesNonsense(adcReading, input, { required: ['referenceV', 'bits'], optional: ['pinV', 'wantedStepValue'] });
    expectInputError(() => adcReading({ ...input, readCount: 3 }), 'pinV', 'oneOfFields');
    expectInputError(() => adcReading(ten), 'pinV', 'oneOfFields');
    expectInputError(() => adcReading({ ...ten, readCount: 1024 }), 'readCount', 'atMost');
    expectInputError(() => adcReading({ ...ten, readCount: 1.5 }), 'readCount', 'integer');
    expectInputError(() => adcReading({ ...input, divisor: '1024' as never }), 'divisor', 'oneOf');
    expectInputError(() => adcReading({ ...input, bits: 33 }), 'bits', 'atMost');
    expectInputError(() => adcReading({ ...input, scale: { ...feet, highV: 0 } }), 'scale.highV', 'above');
    expectInputError(() => adcReading({ ...input, scale: { ...feet, unit: '' } }), 'scale.unit', 'text');
  });
});
