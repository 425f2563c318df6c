import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  ntc100k,
  ntc103jl1a,
  ntc10k3mcd1,
  ntc10k44031,
  ntc2252,
  ntcCoolant2500,
  ntcMaterial1,
  ntcMaterial1Inverse,
  thermistorResistance,
  thermistorTable,
  thermistorTableEach,
  thermistorTemperature,
  thermistorTemperatureEach,
  type ThermistorCurve,
  type ThermistorTable,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds } from '../support/law.js';

const curves: readonly (readonly [name: string, curve: ThermistorCurve])[] = [
  ['three letters', ntc10k3mcd1],
  ['three letters, 100 kΩ', ntc100k],
  ['four odd terms', ntc103jl1a],
  ['full cubic', ntcMaterial1],
  ['Beta', { kind: 'beta', refOhm: 2500, refTempC: 20, betaK: 3500 }],
  ['printed points, 2252', ntc2252],
  ['printed points, 44031', ntc10k44031],
  ['printed points, coolant', ntcCoolant2500],
];
const rangeOf = (curve: ThermistorCurve): { lowestOhm: number; highestOhm: number } => ({
  lowestOhm: thermistorResistance({ curve, tempC: 120 }).resistanceOhm,
  highestOhm: thermistorResistance({ curve, tempC: -30 }).resistanceOhm,
});

describe('independent', () => {
  it.each(curves)(
    '%s: the worst of a dense sweep stays within the proven bound, and the bound is not slack',
    (_, curve) => {
      for (const maxErrorK of [0.003, 0.1]) {
        const range = rangeOf(curve);
        const table = thermistorTable({ curve, ...range, maxErrorK });
        expect(table.boundK).toBeLessThanOrEqual(maxErrorK);
        // Every piece at 41 places, its ends and one number short of its end among them.
        const places: number[] = [];
        const view = new DataView(new ArrayBuffer(8));
        for (let k = 0; k < table.pieces.length / 2; k++) {
          const edge = (place: number): number => {
            view.setInt32(0, place << (20 - table.mantissaBits));
            return view.getFloat64(0);
          };
          const [from, to] = [edge(table.firstPlace + k), edge(table.firstPlace + k + 1)];
          for (let i = 0; i <= 40; i++) places.push(i < 40 ? from + ((to - from) * i) / 40 : to * (1 - 1.2e-16));
        }
        const resistanceOhm = Float64Array.from(places.filter((r) => r >= range.lowestOhm && r <= range.highestOhm));
        const { tempC: exact } = thermistorTemperatureEach({ curve, resistanceOhm });
        const { tempC: found } = thermistorTableEach({ table, resistanceOhm });
        let worst = 0;
        found.forEach((t, i) => (worst = Math.max(worst, Math.abs(t - exact[i]!))));
        expect(worst).toBeLessThanOrEqual(table.boundK);
        expect(worst).toBeGreaterThan(table.boundK / 4);
      }
    },
  );
});

describe('laws', () => {
  it('gives each of many sensors alive at once its own answer', () => {
    const tables = curves.map(([, curve]) => thermistorTable({ curve, ...rangeOf(curve), maxErrorK: 0.003 }));
    fc.assert(
      fc.property(
        fc.nat({ max: curves.length - 1 }),
        fc.array(evenlyWithEnds(0, 1), { minLength: 1, maxLength: 11 }),
        (s, shares) => {
          const [, curve] = curves[s]!;
          const { lowestOhm, highestOhm } = rangeOf(curve);
          const ohms = shares.map((share) => Math.min(highestOhm, lowestOhm * (highestOhm / lowestOhm) ** share));
          const resistanceOhm = Float64Array.from(ohms, (ohm) => Math.max(lowestOhm, ohm));
          const { tempC: found } = thermistorTableEach({ table: tables[s]!, resistanceOhm });
          resistanceOhm.forEach((ohm, i) => {
            const { tempC } = thermistorTemperature({ curve, resistanceOhm: ohm });
            expect(Math.abs(found[i]! - tempC)).toBeLessThanOrEqual(0.003);
          });
        },
      ),
    );
  });
  it('is data: a copy through JSON answers the same', () => {
    const table = thermistorTable({ curve: ntc10k3mcd1, lowestOhm: 300, highestOhm: 90000, maxErrorK: 0.003 });
    const kept = JSON.parse(JSON.stringify({ ...table, pieces: [...table.pieces] })) as ThermistorTable;
    const loaded = { ...kept, pieces: Float64Array.from(kept.pieces) };
    const resistanceOhm = new Float64Array([300, 1234.5, 90000]);
    expect(thermistorTableEach({ table: loaded, resistanceOhm })).toEqual(
      thermistorTableEach({ table, resistanceOhm }),
    );
  });
  it('answers a slice of a larger array', () => {
    const table = thermistorTable({ curve: ntc10k3mcd1, lowestOhm: 300, highestOhm: 90000, maxErrorK: 0.003 });
    const all = new Float64Array([1e-9, 500, 5000, 50000, 1000, 10000, 1e99]);
    expect([...thermistorTableEach({ table, resistanceOhm: all.subarray(1, 6) }).tempC]).toEqual([
      ...thermistorTableEach({ table, resistanceOhm: all.slice(1, 6) }).tempC,
    ]);
  });
  it('takes the fewest pieces that keep the bound', () => {
    const bits = [1, 0.1, 0.01, 0.001, 1e-4, 1e-5].map(
      (maxErrorK) => thermistorTable({ curve: ntc10k3mcd1, lowestOhm: 300, highestOhm: 90000, maxErrorK }).mantissaBits,
    );
    bits.slice(1).forEach((b, i) => expect(b).toBeGreaterThan(bits[i]!));
  });
});

describe('edges', () => {
  const input = { curve: ntc10k44031, lowestOhm: 300, highestOhm: 90000, maxErrorK: 0.003 };
  const table = thermistorTable(input);
  it('refuses readings outside the table, each by its place', () => {
    const into = new Float64Array(6);
    for (const bad of [299.999, 90000.1, 0, -5000, NaN, Infinity]) {
      for (let place = 0; place < 6; place++) {
        const resistanceOhm = Float64Array.from({ length: 6 }, (_, i) => (i === place ? bad : 1000));
        const rule = Number.isNaN(bad) ? 'finite' : 'range';
        expectInputError(() => thermistorTableEach({ table, resistanceOhm, into }), `resistanceOhm[${place}]`, rule);
      }
    }
    expect([...thermistorTableEach({ table, resistanceOhm: new Float64Array([]) }).tempC]).toEqual([]);
  });
  it('fills the array that it is given', () => {
    const into = new Float64Array(2);
    expect(thermistorTableEach({ table, resistanceOhm: new Float64Array([300, 90000]), into }).tempC).toBe(into);
    expect(into[0]!).toBeGreaterThan(100);
  });
  it('refuses nonsense', () => {
    refusesNonsense(thermistorTable, input, { required: ['lowestOhm', 'highestOhm', 'maxErrorK'] });
    const wrong =
      (change: object): (() => unknown) =>
      () =>
        thermistorTable({ ...input, ...change });
    expectInputError(wrong({ highestOhm: 300 }), 'highestOhm', 'above');
    expectInputError(wrong({ lowestOhm: 200 }), 'lowestOhm', 'range');
    expectInputError(wrong({ highestOhm: 1e7 }), 'highestOhm', 'range');
    expectInputError(wrong({ maxErrorK: 1e-7 }), 'maxErrorK', 'above');
    expectInputError(wrong({ curve: ntcMaterial1Inverse }), 'curve.kind', 'oneOf');
    expectInputError(wrong({ curve: undefined }), 'curve', 'missing');
    const turning = { kind: 'steinhart-hart', a: 1e-3, b: 2.5e-4, c: -1e-6 } as const;
    expectInputError(wrong({ curve: turning }), 'curve', 'range');
    expectInputError(wrong({ lowestOhm: 1e-60 }), 'lowestOhm', 'range'); // prettier-ignore
    // A curve so steep that no table of a million pieces is fine enough.
    const steep = { kind: 'beta', refOhm: 1000, refTempC: 25, betaK: 5 } as const;
    expectInputError(wrong({ curve: steep, lowestOhm: 990, highestOhm: 1010, maxErrorK: 2e-6 }), 'maxErrorK', 'range');
    expect(thermistorTable({ ...input, lowestOhm: 200, extrapolate: true }).boundK).toBeLessThan(0.003);
  });
  it('refuses what is no table and no array', () => {
    const resistanceOhm = new Float64Array([1000]);
    const wrong =
      (change: object): (() => unknown) =>
      () =>
        thermistorTableEach({ table, resistanceOhm, ...change });
    expectInputError(wrong({ table: undefined }), 'table', 'missing');
    expectInputError(wrong({ table: {} }), 'table', 'object');
    expectInputError(wrong({ table: null }), 'table', 'object');
    expectInputError(wrong({ resistanceOhm: undefined }), 'resistanceOhm', 'missing');
    expectInputError(wrong({ resistanceOhm: [1000] }), 'resistanceOhm', 'list');
    expectInputError(wrong({ into: new Float64Array(2) }), 'into', 'list');
    expectInputError(() => thermistorTableEach(undefined as never), 'input', 'object');
  });
});
