import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { e12, e192, e24, e3, e48, e6, e96, nearestPreferred } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectWithin } from '../support/published.js';

const SERIES = [e3, e6, e12, e24, e48, e96, e192];

describe('published', () => {
  const el = (place: string) => ({ source: 'divider-assignment', place, status: 'published' }) as const;
  const lec = {
    source: 'lessons-electric-circuits',
    place: 'volume III, chapter 3, LED from 6 V',
    status: 'published',
  } as const;
  computed('220 Ω is a stock value', lec, () => {
    expect(nearestPreferred({ value: 220, series: e6 }).nearestErrorFraction).toBe(0);
  });
  computed('2031 Ω is met by 2 kΩ', el('question 2'), () => {
    expect(nearestPreferred({ value: 2031, series: e24 }).nearestValue).toBe(2000);
  });
  computed('1320 Ω is met by 1.3 kΩ', el('question 3'), () => {
    expect(nearestPreferred({ value: 1320, series: e24 }).nearestValue).toBe(1300);
  });
  const worked = (place: string) =>
    ({ source: 'circuit-theory', place: `worked case: ${place}`, status: 'derived' }) as const;
  computed('at least 240 Ω of E12', worked('pull-up of a sender'), () => {
    expect(nearestPreferred({ value: 240, series: e12 }).aboveValue).toBe(270);
  });
  computed('826.7 Ω of E24', worked('LED'), () => {
    expect(nearestPreferred({ value: 826.7, series: e24 }).nearestValue).toBe(820);
  });
  computed('132.63 Ω of E24', worked('parallel resistor'), () => {
    expect(nearestPreferred({ value: 132.63, series: e24 }).nearestValue).toBe(130);
  });
});

describe('independent', () => {
  it('agrees with a plain search through three decades', () => {
    for (const series of SERIES) {
      const scale = series.values[0]!;
      const all = [-1, 0, 1, 2, 3].flatMap((decade) => series.values.map((v) => Number(`${v / scale}e${decade}`)));
      for (let i = 0; i < 400; i++) {
        const value = 0.2 * 1.02 ** i * (1 + 1e-5);
        if (value > 900) break;
        const result = nearestPreferred({ value, series });
        expectWithin(result.belowValue, Math.max(...all.filter((v) => v <= value)), 1e-12);
        expectWithin(result.aboveValue, Math.min(...all.filter((v) => v >= value)), 1e-12);
        const nearest = all.reduce((best, v) => (Math.abs(v - value) < Math.abs(best - value) ? v : best));
        expectWithin(result.nearestValue, nearest, 1e-12);
      }
    }
  });
});

describe('laws', () => {
  it('brackets the wanted value, with the nearest one of the two', () => {
    fc.assert(
      fc.property(evenly(-14, 14), fc.constantFrom(...SERIES), (log, series) => {
        const value = 10 ** log;
        const r = nearestPreferred({ value, series });
        expect(r.belowValue).toBeLessThanOrEqual(value * (1 + 1e-9));
        expect(r.aboveValue).toBeGreaterThanOrEqual(value * (1 - 1e-9));
        expect([r.belowValue, r.aboveValue]).toContain(r.nearestValue);
        expect(Math.abs(r.nearestErrorFraction)).toBe(
          Math.min(Math.abs(r.belowErrorFraction), Math.abs(r.aboveErrorFraction)),
        );
      }),
    );
  });
  it('a value of the series is its own neighbour on both sides, through the decades', () => {
    for (const series of SERIES) {
      for (const v of series.values) {
        for (const decade of [-12, -3, 0, 6]) {
          const value = Number(`${v}e${decade}`);
          expect(nearestPreferred({ value, series })).toMatchObject({
            belowValue: value,
            nearestValue: value,
            aboveValue: value,
          });
        }
      }
    }
  });
});

describe('edges', () => {
  it('goes over the end of a decade', () => {
    expect(nearestPreferred({ value: 95, series: e24 })).toMatchObject({
      belowValue: 91,
      aboveValue: 100,
      nearestValue: 91,
    });
    expect(nearestPreferred({ value: 0.0099, series: e12 })).toMatchObject({ belowValue: 0.0082, aboveValue: 0.01 });
  });
  it('of two with the same error takes the lower', () => {
    expect(nearestPreferred({ value: 10.5, series: e24 }).nearestValue).toBe(10);
  });
  it('refuses nonsense', () => {
    refusesNonsense(nearestPreferred, { value: 100, series: e24 }, { required: ['value'] });
    expectInputError(() => nearestPreferred({ value: 0, series: e24 }), 'value', 'atLeast');
    expectInputError(() => nearestPreferred({ value: 1e16, series: e24 }), 'value', 'atMost');
    expectInputError(() => nearestPreferred({ value: 1, series: undefined as never }), 'series', 'missing');
    expectInputError(() => nearestPreferred({ value: 1, series: 'E24' as never }), 'series', 'object');
  });
});
