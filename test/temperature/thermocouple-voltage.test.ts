import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  thermocoupleJ,
  thermocoupleK,
  thermocoupleN,
  thermocoupleT,
  thermocoupleVoltage,
  type ThermocoupleVoltageInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, type Citation } from '../support/published.js';
import { its90Rows } from './its-90-print.js';

const nist = (letter: string): Citation => ({
  source: 'nist-monograph-175',
  place: `table of type ${letter}`,
  status: 'published',
});
const types = [thermocoupleK, thermocoupleJ, thermocoupleT, thermocoupleN];
const emf = (input: ThermocoupleVoltageInput): number => thermocoupleVoltage(input).emfMv;

describe('published', () => {
  for (const [thermocouple, t, print] of its90Rows) {
    computed(`${thermocouple.letter} ${t} °C: ${print} mV`, nist(thermocouple.letter), () => {
      expectPrinted(emf({ thermocouple, hotTempC: t, coldTempC: 0 }), print);
    });
  }
});

describe('laws', () => {
  const kinds = fc.constantFrom(...types);
  const share = evenly(0.001, 0.999);
  const ends = (type: (typeof types)[number]): [number, number] => [
    type.pieces[0]!.fromTempC,
    type.pieces[type.pieces.length - 1]!.toTempC,
  ];
  it('turns its sign with the junctions and vanishes between equal ones', () => {
    fc.assert(
      fc.property(kinds, share, share, (thermocouple, x, y) => {
        const [low, high] = ends(thermocouple);
        const [hotTempC, coldTempC] = [low + x * (high - low), low + y * (high - low)];
        const there = emf({ thermocouple, hotTempC, coldTempC });
        expect(emf({ thermocouple, hotTempC: coldTempC, coldTempC: hotTempC })).toBe(-there || 0);
        expect(emf({ thermocouple, hotTempC, coldTempC: hotTempC })).toBe(0);
      }),
    );
  });
  it('adds up over a junction between', () => {
    const part = (hotTempC: number, coldTempC: number): number =>
      emf({ thermocouple: thermocoupleN, hotTempC, coldTempC });
    expect(part(800, 300) + part(300, 20)).toBeCloseTo(part(800, 20), 12);
  });
  it('rises with temperature over all of its range, at the stated sensitivity', () => {
    for (const thermocouple of types) {
      const [low, high] = ends(thermocouple);
      let before = -Infinity;
      for (let t = low; t <= high; t += 1) {
        const { hotMv, slopeMvPerK } = thermocoupleVoltage({ thermocouple, hotTempC: t, coldTempC: 0 });
        expect(hotMv).toBeGreaterThan(before);
        before = hotMv;
        if (t <= low || t >= high || thermocouple.pieces.some(({ fromTempC }) => fromTempC === t)) continue;
        const around = (d: number): number => emf({ thermocouple, hotTempC: t + d, coldTempC: 0 });
        expect(Math.abs((around(0.01) - around(-0.01)) / 0.02 - slopeMvPerK)).toBeLessThan(1e-6);
      }
    }
  });
  it('has no step where its pieces meet', () => {
    for (const thermocouple of types) {
      for (const { fromTempC } of thermocouple.pieces.slice(1)) {
        const step =
          emf({ thermocouple, hotTempC: fromTempC + 1e-9, coldTempC: 0 }) -
          emf({ thermocouple, hotTempC: fromTempC, coldTempC: 0 });
        expect(Math.abs(step)).toBeLessThan(2e-7);
      }
    }
  });
  it('sees swapped inputs', () => {
    swapsMatter(thermocoupleVoltage, { thermocouple: thermocoupleK, hotTempC: 300, coldTempC: 20 });
  });
});

describe('edges', () => {
  const input: ThermocoupleVoltageInput = { thermocouple: thermocoupleK, hotTempC: 300, coldTempC: 20 };
  it('is nothing at 0 °C against 0 °C', () => {
    for (const thermocouple of types) {
      expect(thermocoupleVoltage({ thermocouple, hotTempC: 0, coldTempC: 0 })).toMatchObject({
        emfMv: 0,
        hotMv: 0,
        coldMv: 0,
      });
    }
  });
  it('refuses nonsense', () => {
    refusesNonsense(thermocoupleVoltage, input, { required: ['hotTempC', 'coldTempC'] });
    for (const thermocouple of types) {
      const [low, high] = [thermocouple.pieces[0]!.fromTempC, thermocouple.pieces[1]!.toTempC];
      for (const t of [low - 1e-6, high + 1e-6]) {
        expectInputError(() => thermocoupleVoltage({ ...input, thermocouple, hotTempC: t }), 'hotTempC', 'range');
        expectInputError(() => thermocoupleVoltage({ ...input, thermocouple, coldTempC: t }), 'coldTempC', 'range');
      }
    }
    expectInputError(
      () => thermocoupleVoltage({ ...input, thermocouple: undefined as never }),
      'thermocouple',
      'missing',
    );
    expectInputError(() => thermocoupleVoltage({ ...input, thermocouple: 'K' as never }), 'thermocouple', 'object');
    expect(() => thermocoupleVoltage({ ...input, hotTempC: 1500 })).toThrow(
      'thermocoupleVoltage: hotTempC must lie from -270 to 1372 for type K, got 1500',
    );
  });
});
