import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  iec60751,
  platinumClassA,
  platinumClassAA,
  platinumClassB,
  platinumClassC,
  rtdTolerance,
  type PlatinumClass,
  type RtdToleranceInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, transcribed, type Citation } from '../support/published.js';
import { toleranceRows } from './platinum-print.js';

const iec: Citation = { source: 'iec-60751', place: 'table of tolerances', status: 'published' };
const at = (tempC: number, toleranceClass: PlatinumClass, element: RtdToleranceInput['element'] = 'wire-wound') =>
  rtdTolerance({ curve: iec60751, nominalOhm: 100, tempC, toleranceClass, element });

describe('published', () => {
  for (const [t, aK, aOhm, bK, bOhm] of toleranceRows) {
    for (const [name, toleranceClass, kelvin, ohm] of [
      ['A', platinumClassA, aK, aOhm],
      ['B', platinumClassB, bK, bOhm],
    ] as const) {
      if (kelvin === '') continue;
      computed(`class ${name} at ${t} °C: ${kelvin} K`, iec, () => {
        expectPrinted(at(t, toleranceClass).toleranceK, kelvin);
      });
      // The table rounds its ohms down to half a unit more than once (0.35 K is 0.1326 Ω, 0.13; 1.13 is 1.1386).
      computed(`class ${name} at ${t} °C: ${ohm} Ω`, iec, () => {
        expectPrinted(at(t, toleranceClass).toleranceOhm, ohm, 1);
      });
    }
  }
  for (const [key, c, fixed, share] of [
    ['AA', platinumClassAA, 0.1, 0.0017],
    ['A', platinumClassA, 0.15, 0.002],
    ['B', platinumClassB, 0.3, 0.005],
    ['C', platinumClassC, 0.6, 0.01],
  ] as const) {
    transcribed(`class ${key}: ${fixed} + ${share} |t|`, { ...iec, place: 'classes of the 2008 edition' }, () => {
      expect(c).toMatchObject({ key, fixedK: fixed, shareFraction: share });
    });
  }
});

describe('laws', () => {
  it('is even in temperature, wider in each class, and brackets the nominal', () => {
    fc.assert(
      fc.property(evenlyWithEnds(0, 200), (t) => {
        const classes = [platinumClassAA, platinumClassA, platinumClassB, platinumClassC].map((c) => at(t, c));
        classes.slice(1).forEach((c, i) => expect(c.toleranceK).toBeGreaterThan(classes[i]!.toleranceK));
        expect(at(-t, platinumClassB).toleranceK).toBe(at(t, platinumClassB).toleranceK);
        const { lowestOhm, highestOhm, toleranceOhm } = at(t, platinumClassB);
        expect(highestOhm - lowestOhm).toBeCloseTo(2 * toleranceOhm, 10);
      }),
    );
  });
  it('sees swapped inputs', () => {
    const input = { curve: iec60751, toleranceClass: platinumClassA, nominalOhm: 100, tempC: 90 } as const;
    swapsMatter(rtdTolerance, { ...input, element: 'film' });
  });
});

describe('edges', () => {
  it('says where a class ends, film before wire', () => {
    const ok = (tempC: number, element: RtdToleranceInput['element']): boolean =>
      at(tempC, platinumClassA, element).checks.every((check) => check.ok);
    expect([ok(-30, 'film'), ok(300, 'film'), ok(-30.1, 'film'), ok(300.1, 'film')]).toEqual([
      true,
      true,
      false,
      false,
    ]);
    expect([ok(-100, 'wire-wound'), ok(450, 'wire-wound'), ok(451, 'wire-wound')]).toEqual([true, true, false]);
    expect(at(20, platinumClassA).checks[0]).toMatchObject({
      name: 'class A from',
      limit: -100,
      sourceStatus: 'memory',
    });
  });
  it('refuses nonsense', () => {
    const input: RtdToleranceInput = {
      curve: iec60751,
      nominalOhm: 100,
      tempC: 20,
      toleranceClass: platinumClassB,
      element: 'film',
    };
    refusesNonsense(rtdTolerance, input, { required: ['nominalOhm', 'tempC'] });
    expectInputError(() => rtdTolerance({ ...input, toleranceClass: undefined as never }), 'toleranceClass', 'missing');
    expectInputError(() => rtdTolerance({ ...input, toleranceClass: 'B' as never }), 'toleranceClass', 'object');
    expectInputError(() => rtdTolerance({ ...input, element: 'coil' as never }), 'element', 'oneOf');
    expectInputError(() => rtdTolerance({ ...input, tempC: 900 }), 'tempC', 'range');
  });
});
