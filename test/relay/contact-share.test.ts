import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { contactShare, type ContactShareInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const two: ContactShareInput = {
  currentA: 60,
  contacts: [
    { name: 'first', resistanceOhm: 0.002, ratedA: 40, switchA: 50 },
    { name: 'second', resistanceOhm: 0.006, ratedA: 40, switchA: 70 },
  ],
};

describe('published', () => {
  const cite = {
    source: 'circuit-theory',
    place: 'worked case: relays of 2 and 6 mΩ side by side on 60 A',
    status: 'derived',
  } as const;
  computed('the one carries 45 A', cite, () => expectPrinted(contactShare(two).parts[0]!.currentA, '45'));
  computed('the other carries 15 A', cite, () => expectPrinted(contactShare(two).parts[1]!.currentA, '15'));
});

describe('laws', () => {
  const ohms = fc.array(fc.double({ min: 1e-4, max: 0.1, noNaN: true }), { minLength: 2, maxLength: 6 });
  const named = (list: readonly number[]): ContactShareInput => ({
    currentA: 60,
    contacts: list.map((resistanceOhm, i) => ({ name: `c${i}`, resistanceOhm })),
  });
  it('loses nothing, drops the same volts in each, and none carries more than all', () => {
    fc.assert(
      fc.property(ohms, (list) => {
        const { parts, dropV, lossW, resistanceOhm, unevenRatio } = contactShare(named(list));
        expectWithin(
          parts.reduce((sum, part) => sum + part.currentA, 0),
          60,
          1e-12,
        );
        expectWithin(
          parts.reduce((sum, part) => sum + part.lossW, 0),
          lossW,
          1e-12,
        );
        parts.forEach((part, i) => expectWithin(part.currentA * list[i]!, dropV, 1e-12));
        expectWithin(60 * resistanceOhm, dropV, 1e-12);
        expect(unevenRatio).toBeGreaterThanOrEqual(1 - 1e-12);
        expect(unevenRatio).toBeLessThan(list.length);
      }),
    );
  });
  it('more resistance in one never gives it more', () => {
    fc.assert(
      fc.property(ohms, fc.double({ min: 1e-5, max: 0.01, noNaN: true }), (list, more) => {
        const before = contactShare(named(list)).parts[0]!.currentA;
        const after = contactShare(named([list[0]! + more, ...list.slice(1)])).parts[0]!.currentA;
        expect(after).toBeLessThan(before);
      }),
    );
  });
});

describe('edges', () => {
  it('judges what each carries, and that one alone may have to switch it all', () => {
    const { checks, decidedBy, aloneA } = contactShare(two);
    expect(checks.map(({ name, ok }) => [name, ok])).toEqual([
      ['first carries', false],
      ['first switches it all alone', false],
      ['second carries', true],
      ['second switches it all alone', true],
    ]);
    expect(decidedBy).toBe('first switches it all alone');
    expect(aloneA).toBe(60);
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(contactShare, two, { required: ['currentA'] });
    expectInputError(() => contactShare({ ...two, contacts: [two.contacts[0]!] }), 'contacts', 'list');
    const bad = (contact: object, field: string): void =>
      expectInputError(
        () => contactShare({ ...two, contacts: [two.contacts[0]!, { ...two.contacts[1]!, ...contact }] }),
        `contacts[1].${field}`,
      );
    bad({ name: '' }, 'name');
    for (const value of [NaN, 0, -1, 'x']) {
      bad({ resistanceOhm: value }, 'resistanceOhm');
      bad({ ratedA: value }, 'ratedA');
      bad({ switchA: value }, 'switchA');
    }
  });
});
