import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  thermocoupleJ,
  thermocoupleK,
  thermocoupleN,
  thermocoupleT,
  thermocoupleTemperature,
  thermocoupleVoltage,
  type ThermocoupleTemperatureInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, type Citation } from '../support/published.js';
import { fixture } from './fixture.js';
import { its90Rows } from './its-90-print.js';

const nist = (letter: string): Citation => ({
  source: 'nist-monograph-175',
  place: `table of type ${letter}, read backwards`,
  status: 'published',
});
const types = [thermocoupleK, thermocoupleJ, thermocoupleT, thermocoupleN];
const hot = (input: ThermocoupleTemperatureInput): number => thermocoupleTemperature(input).hotTempC;

describe('published', () => {
  for (const [thermocouple, t, print] of its90Rows) {
    const { fromMv, toMv } = { fromMv: thermocouple.inverse[0]!.fromMv, toMv: thermocouple.inverse[thermocouple.inverse.length - 1]!.toMv }; // prettier-ignore
    const mv = Number(print);
    if (mv < fromMv || mv > toMv) continue;
    const piece = thermocouple.inverse.find((found) => mv >= found.fromMv && mv <= found.toMv)!;
    // Half of the last digit of the table in kelvins, and the printed bounds of the inverse's error.
    const halfDigitK = 0.0005 / thermocoupleVoltage({ thermocouple, hotTempC: t, coldTempC: 0 }).slopeMvPerK;
    computed(`${thermocouple.letter} ${print} mV: ${t} °C by the printed inverse`, nist(thermocouple.letter), () => {
      const off = hot({ thermocouple, emfMv: mv, coldTempC: 0, method: 'printed-inverse' }) - t;
      // The bounds themselves are printed to 0.01 K.
      expect(off).toBeGreaterThanOrEqual(piece.errorLowK - 0.005 - halfDigitK);
      expect(off).toBeLessThanOrEqual(piece.errorHighK + 0.005 + halfDigitK);
    });
  }
});

describe('independent', () => {
  it.each(fixture.thermocouples)('%s %d mV: %d °C, by mpmath', (letter, emfMv, t) => {
    const thermocouple = types.find((type) => type.letter === letter)!;
    expect(Math.abs(hot({ thermocouple, emfMv, coldTempC: 0 }) - t)).toBeLessThan(1e-7);
  });
  it('turns the table round to its last digit, down to the coldest row that still rises by a digit', () => {
    for (const [thermocouple, t, print] of its90Rows) {
      const { slopeMvPerK } = thermocoupleVoltage({ thermocouple, hotTempC: t, coldTempC: 0 });
      if (slopeMvPerK < 0.0015 || t === 1372 || t === thermocouple.pieces[1]!.toTempC) continue;
      const off = hot({ thermocouple, emfMv: Number(print), coldTempC: 0 }) - t;
      expect(Math.abs(off), `${thermocouple.letter} ${print}`).toBeLessThan(0.00075 / slopeMvPerK);
    }
  });
  it('gives the printed inverse the values worked from its coefficients', () => {
    for (const [emfMv, print] of [
      [-5, '-153.7362'],
      [-1, '-25.8574'],
      [1, '24.9836'],
      [5, '121.9518'],
      [10, '246.2220'],
      [20, '484.8818'],
      [30, '720.8178'],
      [40, '967.4040'],
      [50, '1232.0658'],
    ] as const) {
      expectPrinted(hot({ thermocouple: thermocoupleK, emfMv, coldTempC: 0, method: 'printed-inverse' }), print);
    }
  });
});

describe('laws', () => {
  const kinds = fc.constantFrom(...types);
  it('comes back from the voltage, with any cold junction', () => {
    fc.assert(
      fc.property(
        kinds,
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        evenly(-40, 100),
        (thermocouple, x, coldTempC) => {
          const low = thermocouple.pieces[0]!.fromTempC;
          const hotTempC = low + x * (thermocouple.pieces[1]!.toTempC - low);
          const { emfMv, slopeMvPerK } = thermocoupleVoltage({ thermocouple, hotTempC, coldTempC });
          const found = thermocoupleTemperature({ thermocouple, emfMv, coldTempC });
          expect(Math.abs(found.hotTempC - hotTempC)).toBeLessThan(1e-6);
          expect(found.slopeMvPerK).toBeCloseTo(slopeMvPerK, 7);
        },
      ),
    );
  });
  it('passes an error of the cold junction on by the ratio of sensitivities', () => {
    const input = { thermocouple: thermocoupleK, emfMv: 20, coldTempC: 25 };
    const { coldJunctionFraction } = thermocoupleTemperature(input);
    const shift = (hot({ ...input, coldTempC: 25.01 }) - hot({ ...input, coldTempC: 24.99 })) / 0.02;
    expect(shift).toBeCloseTo(coldJunctionFraction, 4);
  });
  it('is not the same as adding the degrees', () => {
    const straight = hot({ thermocouple: thermocoupleN, emfMv: 10, coldTempC: 0 }) + 40;
    expect(Math.abs(hot({ thermocouple: thermocoupleN, emfMv: 10, coldTempC: 40 }) - straight)).toBeGreaterThan(5);
  });
  it('sees swapped inputs', () => {
    swapsMatter(thermocoupleTemperature, { thermocouple: thermocoupleK, emfMv: 12, coldTempC: 25 });
  });
});

describe('edges', () => {
  const input: ThermocoupleTemperatureInput = { thermocouple: thermocoupleK, emfMv: 10, coldTempC: 25 };
  it('reaches both ends of each type', () => {
    for (const thermocouple of types) {
      for (const t of [thermocouple.pieces[0]!.fromTempC, thermocouple.pieces[1]!.toTempC]) {
        const { emfMv } = thermocoupleVoltage({ thermocouple, hotTempC: t, coldTempC: 0 });
        expect(Math.abs(hot({ thermocouple, emfMv, coldTempC: 0 }) - t)).toBeLessThan(1e-6);
        const beyond = emfMv + Math.sign(emfMv) * 1e-6;
        expectInputError(() => hot({ thermocouple, emfMv: beyond, coldTempC: 0 }), 'emfMv', 'range');
      }
    }
  });
  it('refuses nonsense', () => {
    refusesNonsense(thermocoupleTemperature, input, { required: ['emfMv', 'coldTempC'] });
    expectInputError(() => hot({ ...input, coldTempC: -300 }), 'coldTempC', 'range');
    expectInputError(() => hot({ ...input, method: 'straight' as never }), 'method', 'oneOf');
    expectInputError(() => hot({ ...input, thermocouple: null as never }), 'thermocouple', 'object');
    expectInputError(() => hot({ ...input, emfMv: -6, coldTempC: 0, method: 'printed-inverse' }), 'emfMv', 'range');
    expect(() => hot({ ...input, emfMv: 10000 })).toThrow(
      'thermocoupleTemperature: emfMv must with its cold junction lie from -6.458 to 54.886 mV for type K, got 10000: ' +
        'is this in µV?',
    );
  });
});
