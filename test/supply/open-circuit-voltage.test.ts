import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  openCircuitVoltage,
  type OpenCircuitVoltageInput,
  type RestVoltsTable,
  restVoltsTenSteps,
  restVoltsThumb,
  restVoltsTrade,
  restVoltsWithDensity,
  stateOfCharge,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds } from '../support/law.js';
import { expectPrinted, expectWithin } from '../support/published.js';

const lists = [restVoltsTenSteps, restVoltsWithDensity, restVoltsThumb, restVoltsTrade];
const at = (list: RestVoltsTable, chargeFraction: number): number => openCircuitVoltage({ list, chargeFraction }).openV;

describe('published', () => {
  // The rule of thumb itself: 80 mV each 10 %. Its rows are transcribed with the table, and not counted again.
  for (const percent of [90, 80, 70, 60, 50, 40, 30]) {
    it(`from ${percent + 10} to ${percent} %: 80 mV`, () => {
      const fallV = at(restVoltsThumb, (percent + 10) / 100) - at(restVoltsThumb, percent / 100);
      expectPrinted(fallV * 1000, '80', 1e-6);
    });
  }
});

describe('independent', () => {
  it('halfway between two rows lies halfway between their volts', () => {
    for (const list of lists) {
      for (let i = 1; i < list.rows.length; i++) {
        const [p, v] = list.rows[i - 1]!;
        const [q, u] = list.rows[i]!;
        expectWithin(at(list, (p + q) / 200), (v + u) / 2, 1e-12);
      }
    }
  });
});

describe('laws', () => {
  it('rises with the charge, and stateOfCharge goes back', () => {
    for (const list of lists) {
      const least = list.rows.at(-1)![0] / 100;
      const charge = evenlyWithEnds(least, 1);
      fc.assert(
        fc.property(charge, charge, (a, b) => {
          fc.pre(a !== b);
          const [va, vb] = [at(list, a), at(list, b)];
          if (Math.abs(a - b) > 1e-9) expect(va < vb).toBe(a < b);
          const back = stateOfCharge({ openV: va, lists: [list] }).highestFraction;
          expect(Math.abs((back ?? NaN) - a)).toBeLessThan(1e-9);
        }),
      );
    }
  });
});

describe('edges', () => {
  const input: OpenCircuitVoltageInput = { list: restVoltsTrade, chargeFraction: 0.8 };
  it('refuses nonsense', () => {
    refusesNonsense(openCircuitVoltage, input, { required: ['chargeFraction', 'list'] });
  });
  it('says where it is from', () => {
    expect(openCircuitVoltage(input)).toMatchObject({ source: 'battery-rest-lists', sourceStatus: 'memory' });
    expect(openCircuitVoltage({ ...input, list: restVoltsThumb }).sourceStatus).toBe('common-practice');
  });
  it('is not read beyond its rows', () => {
    expectInputError(() => at(restVoltsWithDensity, 0.2499), 'chargeFraction', 'atLeast');
    expect(at(restVoltsWithDensity, 0.25)).toBe(12.15);
    expectInputError(() => at(restVoltsTrade, 1.0001), 'chargeFraction', 'atMost');
    expectInputError(() => at(restVoltsTrade, 80), 'chargeFraction', 'atMost');
  });
  it('refuses a list whose rows do not fall', () => {
    const list: RestVoltsTable = {
      ...restVoltsTrade,
      rows: [
        [0, 11.9],
        [100, 12.6],
      ],
    };
    expectInputError(() => at(list, 0.5), 'list.rows[1]', 'order');
    expectInputError(() => at({ ...list, rows: [[100, 12.6]] }, 1), 'list', 'object');
  });
});
