import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  restVoltsTenSteps,
  restVoltsThumb,
  restVoltsTrade,
  restVoltsWithDensity,
  stateOfCharge,
  type StateOfChargeInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { expectPrinted, expectWithin } from '../support/published.js';

const lists = [restVoltsTenSteps, restVoltsWithDensity, restVoltsThumb, restVoltsTrade];
const percents = (openV: number): (number | null)[] =>
  stateOfCharge({ openV, lists }).byList.map(({ chargeFraction }) =>
    chargeFraction === null ? null : Math.round(chargeFraction * 1e6) / 1e4,
  );

describe('published', () => {
  // The rows of the lists the other way round: volts in, charge out. Transcribed with the table, and not counted again.
  it('12.4 V: 70 % by steps of ten', () => expectPrinted(percents(12.4)[0]!, '70', 1e-3));
  it('12.4 V: 75 % by the rule of thumb', () => expectPrinted(percents(12.4)[2]!, '75', 1e-3));
  it('12.45 V: 75 % by quarters', () => expectPrinted(percents(12.45)[1]!, '75', 1e-3));
  it('12.24 V: 50 % by the trade list', () => expectPrinted(percents(12.24)[3]!, '50', 1e-3));
  it('12.3 V: 60 % by steps of ten, 50 % by quarters', () => {
    expectPrinted(percents(12.3)[0]!, '60', 1e-3);
    expectPrinted(percents(12.3)[1]!, '50', 1e-3);
  });
  it('11.7 V: empty by steps of ten', () => expectPrinted(percents(11.7)[0]!, '0', 1e-3));
});

describe('independent', () => {
  it('lies on the straight line between two rows', () => {
    // 12.3 V by the trade list, by hand: 50 + 25 · 0.06 / 0.21 %.
    expectWithin(
      stateOfCharge({ openV: 12.3, lists: [restVoltsTrade] }).highestFraction!,
      0.5 + (0.25 * 0.06) / 0.21,
      1e-12,
    );
  });
});

describe('laws', () => {
  it('more volts are not less charge, by any list, and the range holds all lists', () => {
    const volts = fc.double({ min: 11.2, max: 13, noNaN: true });
    fc.assert(
      fc.property(volts, volts, (a, b) => {
        const [low, high] = [percents(Math.min(a, b)), percents(Math.max(a, b))];
        low.forEach((p, i) => {
          const q = high[i];
          if (p !== null && q !== null && q !== undefined) expect(q).toBeGreaterThanOrEqual(p);
        });
        const { byList, lowestFraction, highestFraction } = stateOfCharge({ openV: a, lists });
        for (const { chargeFraction } of byList) {
          if (chargeFraction === null) continue;
          expect(chargeFraction).toBeGreaterThanOrEqual(lowestFraction!);
          expect(chargeFraction).toBeLessThanOrEqual(highestFraction!);
        }
      }),
    );
  });
});

describe('edges', () => {
  const input: StateOfChargeInput = { openV: 12.4, lists };
  it('refuses nonsense', () => {
    refusesNonsense(stateOfCharge, input, { required: ['openV', 'lists'] });
    expectInputError(() => stateOfCharge({ ...input, lists: [] }), 'lists', 'list');
    expectInputError(() => stateOfCharge({ ...input, lists: [undefined as never] }), 'lists[0]', 'missing');
    expectInputError(() => stateOfCharge({ ...input, openV: 0 }), 'openV', 'above');
  });
  it('has no number beyond a list, and says on which side', () => {
    const over = stateOfCharge({ openV: 12.8, lists });
    expect(over.byList.every(({ reason }) => reason === 'above-list')).toBe(true);
    expect(over).toMatchObject({ lowestFraction: null, highestFraction: null });
    const under = stateOfCharge({ openV: 12.1, lists: [restVoltsWithDensity] });
    expect(under.byList[0]).toMatchObject({ chargeFraction: null, reason: 'below-list' });
    expect(stateOfCharge({ openV: 12.66, lists: [restVoltsWithDensity] }).highestFraction).toBe(1);
    expect(stateOfCharge({ openV: 12.15, lists: [restVoltsWithDensity] }).lowestFraction).toBe(0.25);
  });
});
