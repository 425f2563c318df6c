import { describe, expect, it } from 'vitest';
import {
  thermocoupleJ,
  thermocoupleK,
  thermocoupleN,
  thermocoupleT,
  thermocoupleTolerance,
  thermocoupleVoltage,
  type ThermocoupleToleranceInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectPrinted, expectWithin, transcribed, type Citation } from '../support/published.js';

const iec = (place: string): Citation => ({ source: 'iec-60584-1', place, status: 'published' });
const memory: Citation = { source: 'iec-60584-1', place: 'tolerances, from memory', status: 'memory' };
const at = (hotTempC: number, toleranceClass: '1' | '2', thermocouple = thermocoupleK) =>
  thermocoupleTolerance({ thermocouple, hotTempC, toleranceClass });

describe('published', () => {
  for (const [tempC, toleranceClass, print] of [
    [-40, '1', '1.5'],
    [100, '1', '1.5'],
    [375, '1', '1.5'],
    [1000, '1', '4'],
    [0, '2', '2.5'],
    [333, '2', '2.5'],
    [1200, '2', '9'],
  ] as const) {
    computed(`type K class ${toleranceClass} at ${tempC} °C: ${print} K`, iec('type K'), () => {
      expectPrinted(at(tempC, toleranceClass).toleranceK, print);
    });
  }
  for (const [thermocouple, fixed1, high1, fixed2, high2] of [
    [thermocoupleJ, 1.5, 750, 2.5, 750],
    [thermocoupleT, 0.5, 350, 1, 350],
    [thermocoupleN, 1.5, 1000, 2.5, 1200],
  ] as const) {
    transcribed(`type ${thermocouple.letter}: ${fixed1} or 0.004 |t|, ${fixed2} or 0.0075 |t|`, memory, () => {
      expect(thermocouple.classes).toMatchObject([
        { key: '1', fixedK: fixed1, shareFraction: 0.004, rangeC: [-40, high1], status: 'memory' },
        { key: '2', fixedK: fixed2, shareFraction: 0.0075, rangeC: [-40, high2], status: 'memory' },
      ]);
    });
  }
});

describe('laws', () => {
  it('is wider in class 2, and in millivolts what the reference function makes of it', () => {
    for (const thermocouple of [thermocoupleK, thermocoupleJ, thermocoupleT, thermocoupleN]) {
      for (let t = -40; t <= 350; t += 13) {
        const one = at(t, '1', thermocouple);
        expect(at(t, '2', thermocouple).toleranceK).toBeGreaterThan(one.toleranceK);
        const mv = (hotTempC: number): number => thermocoupleVoltage({ thermocouple, hotTempC, coldTempC: 0 }).emfMv;
        expectWithin(one.toleranceMv, (mv(t + 1e-3) - mv(t - 1e-3)) * 500 * one.toleranceK, 1e-4);
      }
    }
  });
});

describe('edges', () => {
  const input: ThermocoupleToleranceInput = { thermocouple: thermocoupleK, hotTempC: 300, toleranceClass: '1' };
  it('says where a class ends', () => {
    const ok = (t: number): boolean => at(t, '1').checks.every((check) => check.ok);
    expect([ok(-40), ok(1000), ok(-40.1), ok(1000.1)]).toEqual([true, true, false, false]);
    expect(at(20, '1', thermocoupleT)).toMatchObject({ source: 'iec-60584-1', sourceStatus: 'memory' });
  });
  it('refuses nonsense', () => {
    refusesNonsense(thermocoupleTolerance, input, { required: ['hotTempC'] });
    expectInputError(
      () => thermocoupleTolerance({ ...input, toleranceClass: '3' as never }),
      'toleranceClass',
      'oneOf',
    );
    expectInputError(
      () => thermocoupleTolerance({ ...input, thermocouple: undefined as never }),
      'thermocouple',
      'missing',
    );
    expectInputError(() => thermocoupleTolerance({ ...input, hotTempC: 1400 }), 'hotTempC', 'range');
  });
});
