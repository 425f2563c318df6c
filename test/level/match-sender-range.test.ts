import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { matchSenderRange, type MatchSenderRangeInput, senderRanges } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin, transcribed } from '../support/published.js';

const table = senderRanges;
const base: MatchSenderRangeInput = { emptyOhm: 105, fullOhm: 5, table };

describe('published', () => {
  const page = (place: string, status: 'published' | 'memory' = 'published') =>
    ({ source: 'sender-range-pages', place, status }) as const;
  const rows = [
    ['American marine', 240, 33, null, null, 'published'],
    ['European marine', 0, 190, 10, 10, 'published'],
    ['older American', 0, 90, null, null, 'published'],
    ['a Japanese car of 2006', 110, 3, 2.5, 0.8, 'published'],
    ['a Japanese car built in America', 112, 4, 7, 2, 'published'],
    ['a Japanese car, its meter', 410, 15, null, null, 'published'],
    ['range of an American body', 0, 275, null, null, 'published'],
    ['American cars before 1987', 73, 10, null, null, 'memory'],
    ['American cars before 1965', 0, 30, null, null, 'memory'],
    ['American cars from 1987', 16, 158, null, null, 'memory'],
    ['European gauge makers', 10, 180, null, null, 'published'],
  ] as const;
  rows.forEach(([name, empty, full, emptyTolerance, fullTolerance, status], i) => {
    transcribed(`${name}: ${empty} to ${full} Ω`, page(`row ${i + 1}`, status), () => {
      const row = table.rows[i]!;
      expect(row.name.startsWith(name)).toBe(true);
      expect([row.emptyOhm, row.fullOhm]).toEqual([empty, full]);
      expect([row.emptyToleranceOhm, row.fullToleranceOhm]).toEqual([emptyTolerance, fullTolerance]);
      expect(row.status).toBe(status);
    });
  });
  it('has no other row, and says of one that its direction is not printed', () => {
    expect(table.rows.length).toBe(rows.length);
    expect(table.status).toBe('common-practice');
    expect(table.rows.filter(({ direction }) => direction === 'not-printed').map(({ fullOhm }) => fullOhm)).toEqual([
      275,
    ]);
    expect(table.rows[0]!.alsoFullOhm).toBe(30);
    expect([table.rows[1]!.alsoEmptyOhm, table.rows[1]!.alsoFullOhm]).toEqual([10, 180]);
  });
  // Printed as approximate, some rounded down and some up: within one ohm.
  for (const [emptyOhm, fullOhm, prints] of [
    [240, 33, '240 188 136 84 33'],
    [0, 190, '0 48 95 143 190'],
  ] as const) {
    prints.split(' ').forEach((print, i) => {
      computed(`${emptyOhm} to ${fullOhm} Ω at quarter ${i}: ${print}`, page('quarter points, approximate'), () => {
        expectPrinted(matchSenderRange({ emptyOhm, fullOhm, table }).quarterOhm[i]!, print, 1);
      });
    });
  }
  const hand = { ...page('by hand from the rows'), status: 'derived' } as const;
  computed('105 and 5 Ω lie 5 Ω off 110 and 3: 5/107', hand, () => {
    const found = matchSenderRange(base);
    expect([found.rangeEmptyOhm, found.rangeFullOhm]).toEqual([110, 3]);
    expectPrinted(found.offOhm, '5.0');
    expectPrinted(found.offFraction, '0.04673');
    expect(found.within).toBe(false);
  });
  computed('the other figures that are printed count too: 10 to 180 Ω is of the class of 0 to 190', hand, () => {
    const { matches } = matchSenderRange({ ...base, emptyOhm: 10, fullOhm: 180 });
    expect(matches.slice(0, 2).map(({ offOhm }) => offOhm)).toEqual([0, 0]);
  });
});

describe('independent', () => {
  it('every range finds itself, and turned round finds itself turned', () => {
    for (const row of table.rows) {
      const found = matchSenderRange({ ...base, emptyOhm: row.emptyOhm, fullOhm: row.fullOhm });
      expect(found.offOhm).toBe(0);
      expect(found.matches.find(({ name }) => name === row.name)!.turned).toBe(false);
      const turned = matchSenderRange({ ...base, emptyOhm: row.fullOhm, fullOhm: row.emptyOhm });
      const own = turned.matches.find(({ name }) => name === row.name)!;
      expect(own.offOhm).toBe(0);
      expect(own.turned).toBe(row.direction === 'printed');
    }
  });
});

describe('laws', () => {
  it('the nearest is the least of all, and quarters are straight', () => {
    const ohm = evenly(0, 500);
    fc.assert(
      fc.property(ohm, ohm, (emptyOhm, fullOhm) => {
        if (emptyOhm === fullOhm) return;
        const { matches, offFraction } = matchSenderRange({ emptyOhm, fullOhm, table });
        expect(matches.length).toBe(table.rows.length);
        for (const match of matches) {
          expect(match.offFraction).toBeGreaterThanOrEqual(offFraction);
          const [a, b, c] = match.quarterOhm as [number, number, number];
          expectWithin(b - a + 1000, c - b + 1000, 1e-12);
        }
      }),
    );
  });
  it('does not mistake one end for the other', () => {
    swapsMatter(matchSenderRange, base);
  });
});

describe('edges', () => {
  it('within a printed tolerance or not, and unknown where none is printed', () => {
    const within = (emptyOhm: number, fullOhm: number) =>
      matchSenderRange({ ...base, emptyOhm, fullOhm }).matches.find(({ rangeEmptyOhm }) => rangeEmptyOhm === 110)!
        .within;
    expect(within(112.5, 3.8)).toBe(true);
    expect(within(112.6, 3.8)).toBe(false);
    expect(within(110, 3.9)).toBe(false);
    expect(matchSenderRange({ ...base, emptyOhm: 240, fullOhm: 33 }).within).toBeNull();
  });
  it('refuses nonsense', () => {
    refusesNonsense(matchSenderRange, base, { required: ['emptyOhm', 'fullOhm'] });
    expectInputError(() => matchSenderRange({ ...base, emptyOhm: -1 }), 'emptyOhm');
    expectInputError(() => matchSenderRange({ ...base, fullOhm: 105 }), 'fullOhm', 'order');
    expectInputError(() => matchSenderRange({ ...base, table: null as never }), 'table');
    expectInputError(() => matchSenderRange({ ...base, table: { ...table, rows: [] } }), 'table.rows');
  });
  it('never runs out of numbers', () => {
    neverRunsOut(matchSenderRange, base, 40);
  });
});
