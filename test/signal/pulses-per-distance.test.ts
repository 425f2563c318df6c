import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { pulsesPerDistance, type PulsesPerDistanceInput, toothFrequency } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

describe('published', () => {
  const derived = { source: 'circuit-theory', place: '44 teeth on 1.95 m', status: 'derived' } as const;
  const ring = pulsesPerDistance({ circumferenceM: 1.95, turnPulses: 44, turnRatio: 1 });
  computed('pulses a km', derived, () => {
    expectPrinted(ring.pulsesPerKm, '22564.1');
  });
  computed('Hz at 100 km/h', derived, () => {
    expectPrinted(ring.frequencyHzPerKmh * 100, '626.781');
  });
  // 195/65R15: 15 · 25.4 + 2 · 195 · 0.65 = 634.5 mm; × 3.05 by the tyre makers' rule.
  const tyre = { source: 'tyre-standards', place: '195/65R15', status: 'memory' } as const;
  const radial = pulsesPerDistance({
    tyreSize: '195/65R15',
    rollingFactor: 3.05 / Math.PI,
    turnPulses: 1,
    turnRatio: 1,
  });
  computed('diameter of 195/65R15, mm', tyre, () => {
    expectPrinted(radial.diameterMm!, '634.5');
  });
  computed('rolling circumference of 195/65R15, m', tyre, () => {
    expectPrinted(radial.circumferenceM, '1.935');
  });
});

const base: PulsesPerDistanceInput = { tyreSize: '205/55R16', rollingFactor: 0.97, turnPulses: 48, turnRatio: 1 };

describe('independent', () => {
  it('reads the sizes that are on sidewalls', () => {
    const diameter = (tyreSize: string): number | null => pulsesPerDistance({ ...base, tyreSize }).diameterMm;
    for (const [size, mm] of [
      ['205/55R16', 406.4 + 225.5],
      ['205/55 R 16', 406.4 + 225.5],
      ['205/55zr16', 406.4 + 225.5],
      ['P225/75R15', 381 + 337.5],
      ['LT265/70R17', 431.8 + 371],
      ['225/70R15C', 381 + 315],
      ['225/70R19.5', 495.3 + 315],
      ['155/80-13', 330.2 + 248],
      ['31x10.5R15', 787.4],
      ['35X12.50R15LT', 889],
    ] as const) {
      expectWithin(diameter(size)!, mm, 1e-12);
    }
  });
});

describe('laws', () => {
  it('times the speed it is the frequency of the toothed wheel', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        fc.integer({ min: 1, max: 200 }),
        fc.double({ min: 0.2, max: 6, noNaN: true }),
        fc.double({ min: 1, max: 300, noNaN: true }),
        (circumferenceM, turnPulses, turnRatio, speedKmh) => {
          const r = pulsesPerDistance({ circumferenceM, turnPulses, turnRatio });
          const wheel = toothFrequency({ teeth: turnPulses, turnRatio, speedKmh, circumferenceM });
          expectWithin(r.frequencyHzPerKmh * speedKmh, wheel.frequencyHz, 1e-9);
          expectWithin(r.pulsesPerMile, r.pulsesPerKm * 1.609344, 1e-12);
          expectWithin(r.wheelTurnsPerKm * turnPulses * turnRatio, r.pulsesPerKm, 1e-12);
        },
      ),
    );
  });
  it('a larger tyre gives fewer pulses, and a display set for the small one shows too little', () => {
    const small = pulsesPerDistance({ ...base });
    const large = pulsesPerDistance({ ...base, tyreSize: '235/65R16', setPulsesPerKm: small.pulsesPerKm });
    expect(large.pulsesPerKm).toBeLessThan(small.pulsesPerKm);
    expectWithin(large.displayErrorFraction!, small.circumferenceM / large.circumferenceM - 1, 1e-12);
    expect(large.displayErrorFraction!).toBeLessThan(0);
  });
  it('does not mistake one input for another', () => {
    swapsMatter(pulsesPerDistance, { circumferenceM: 1.9, turnPulses: 48, turnRatio: 4.1, setPulsesPerKm: 100000 }, [
      ['turnPulses', 'turnRatio'],
    ]);
  });
});

describe('edges', () => {
  it('has no error without a setting, nor a diameter for a measured wheel', () => {
    expect(pulsesPerDistance({ circumferenceM: 2, turnPulses: 1, turnRatio: 1 })).toMatchObject({
      diameterMm: null,
      displayErrorFraction: null,
      wheelTurnsPerKm: 500,
    });
  });
  it('refuses nonsense', () => {
    refusesNonsense<PulsesPerDistanceInput>(
      pulsesPerDistance,
      { circumferenceM: 2, turnPulses: 48, turnRatio: 1 },
      {
        required: ['turnPulses', 'turnRatio'],
        optional: ['circumferenceM', 'setPulsesPerKm'],
      },
    );
    expectInputError(() => pulsesPerDistance({ turnPulses: 1, turnRatio: 1 }), 'circumferenceM', 'oneOfFields');
    expectInputError(() => pulsesPerDistance({ ...base, circumferenceM: 2 }), 'circumferenceM', 'oneOfFields');
    expectInputError(
      () => pulsesPerDistance({ tyreSize: '205/55R16', turnPulses: 1, turnRatio: 1 }),
      'rollingFactor',
      'missing',
    );
    expectInputError(() => pulsesPerDistance({ ...base, rollingFactor: 3.05 }), 'rollingFactor', 'atMost');
    for (const tyreSize of ['7.50R16', '205', '', 'tall'])
      expectInputError(() => pulsesPerDistance({ ...base, tyreSize }), 'tyreSize', 'text');
    expect(() => pulsesPerDistance({ ...base, tyreSize: '205' })).toThrow(
      "pulsesPerDistance: tyreSize must be a size such as '205/55R16' or '31x10.5R15', got '205': else measure the rolling circumference",
    );
  });
});
