import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { voltageDrop, voltageDropEach, type VoltageDropEachInput } from 'loomwright';
import { expectInputError } from '../support/edge.js';

const base: VoltageDropEachInput = {
  count: 3,
  supplyV: 12,
  currentA: new Float64Array([1, 5, 10]),
  outLengthM: 5,
  returnLengthM: new Float64Array([0, 1, 5]),
  resistanceOhmPerM: 0.039,
  ratedTempC: 20,
  conductorTempC: new Float64Array([20, 60, 85]),
};

describe('laws', () => {
  it('gives in each case what voltageDrop gives, to the last bit', () => {
    const value = fc.double({ min: 0.001, max: 300, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(value, value, value, value, value, value, value), { minLength: 1, maxLength: 9 }),
        (cases) => {
          const column = (i: number): Float64Array => Float64Array.from(cases, (c) => c[i] as number);
          const each = voltageDropEach({
            count: cases.length,
            supplyV: column(0),
            currentA: column(1),
            outLengthM: column(2),
            returnLengthM: column(3),
            resistanceOhmPerM: column(4),
            ratedTempC: column(5),
            conductorTempC: column(6),
          });
          cases.forEach(
            ([supplyV, currentA, outLengthM, returnLengthM, resistanceOhmPerM, ratedTempC, conductorTempC], k) => {
              const one = voltageDrop({
                supplyV,
                currentA,
                outLengthM,
                returnLengthM,
                resistanceOhmPerM,
                ratedTempC,
                conductorTempC,
              });
              expect({
                dropV: each.dropV[k],
                dropFraction: each.dropFraction[k],
                loadV: each.loadV[k],
                resistanceOhm: each.resistanceOhm[k],
                lossW: each.lossW[k],
              }).toEqual(one);
            },
          );
        },
      ),
    );
  });
  it('takes one number for all cases as an array of it', () => {
    expect(voltageDropEach({ ...base, supplyV: new Float64Array([12, 12, 12]) })).toEqual(voltageDropEach(base));
  });
});

describe('edges', () => {
  it('names the case and the field that it refuses', () => {
    expectInputError(
      () => voltageDropEach({ ...base, currentA: new Float64Array([1, -3, 10]) }),
      'currentA[1]',
      'atLeast',
    );
    expectInputError(
      () => voltageDropEach({ ...base, conductorTempC: new Float64Array([20, 60, 401]) }),
      'conductorTempC[2]',
      'atMost',
    );
    expectInputError(
      () => voltageDropEach({ ...base, supplyV: new Float64Array([NaN, 1, 1]) }),
      'supplyV[0]',
      'finite',
    );
    expect(() => voltageDropEach({ ...base, currentA: new Float64Array([1, -3, 10]) })).toThrow(
      'voltageDropEach: currentA[1] must be at least 0, got -3',
    );
  });
  it('refuses arrays of another length or kind, and a count that is none', () => {
    expectInputError(() => voltageDropEach({ ...base, currentA: new Float64Array(2) }), 'currentA', 'list');
    expectInputError(() => voltageDropEach({ ...base, currentA: [1, 2, 3] as never }), 'currentA', 'number');
    expectInputError(() => voltageDropEach({ ...base, currentA: undefined as never }), 'currentA', 'missing');
    expectInputError(() => voltageDropEach({ ...base, count: 0 }), 'count', 'atLeast');
    expectInputError(() => voltageDropEach({ ...base, count: 1.5 }), 'count', 'integer');
  });
});
