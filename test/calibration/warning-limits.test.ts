import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  lookUp,
  type WarningLimits,
  warningLimits,
  type WarningLimitsInput,
  type WarningLimitsResult,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted } from '../support/published.js';

type Curve = WarningLimitsInput['healthy'];
const curve = (...pairs: readonly (readonly [number, number])[]): Curve =>
  pairs.map(([inValue, outValue]) => ({ inValue, outValue }));
const at = (cells: Curve, inValue: number): number => lookUp({ cells, inValue, outside: 'clamp' }).outValue!;

// Oil pressure in bar by rpm: invented.
const oil = {
  warns: 'below',
  healthy: curve([700, 1.2], [2000, 2.6], [3500, 3.6], [6500, 4]),
  limit: curve([700, 0.5], [2000, 1], [3500, 1.7], [6500, 2]),
  errorValue: 0.15,
  ratePerS: 1,
  delayS: 0.1,
  debounceS: 0.1,
  otherErrorValue: 30,
  otherRatePerS: 1500,
  otherDelayS: 0.05,
  placeValues: [700, 1500, 2000, 3000, 3500, 5000, 6500],
  guardValue: 0.02,
  outStepValue: null,
  blankS: 4,
  buildUpS: 3,
  blindMostS: 6,
} satisfies WarningLimitsInput;
const found = (input: WarningLimitsInput): WarningLimits => {
  const result = warningLimits(input);
  const table = result.possible ? result : result.nearest;
  if (table === null) throw new Error('no table');
  return table;
};

describe('published', () => {
  const cite = { source: 'circuit-theory', place: 'worked by hand', status: 'derived' } as const;
  // Flat: healthy 4, harm 1, ±0.2, 1 a second for 0.4 s: the limit lies between 1.6 and 3.8, in the middle at 2.7.
  const flat: WarningLimitsInput = {
    ...oil,
    healthy: curve([0, 4], [10, 4]),
    limit: curve([0, 1], [10, 1]),
    errorValue: 0.2,
    delayS: 0.1,
    debounceS: 0.3,
    placeValues: [0, 10],
  };
  const level = found(flat);
  computed('limit 2.7', cite, () => expectPrinted(level.cells[0]!.outValue, '2.70'));
  computed('room 1.1 to a false alarm', cite, () => expectPrinted(level.falseRoomValue, '1.10'));
  computed('room 1.1 to a missed one', cite, () => expectPrinted(level.missedRoomValue, '1.10'));
  computed('the alarm must have come at 1.6', cite, () => expectPrinted(level.rows[0]!.lateValue, '1.60'));
  computed('a fault moves by 0.4 meanwhile', cite, () => expectPrinted(level.alarmMoveValue, '0.40'));
  computed('4.4 s without a warning', cite, () => expectPrinted(level.blindS, '4.40'));
  // A slope of 0.1 and 5 to either side sideways: half a unit more.
  const slope: WarningLimitsInput = {
    ...flat,
    healthy: curve([0, 4], [100, 14]),
    limit: curve([0, 1], [100, 11]),
    placeValues: [0, 100],
    otherErrorValue: 5,
    otherRatePerS: 0,
  };
  const leaning = found(slope).rows.find(({ inValue }) => inValue === 95)!;
  computed('at 95 a healthy engine reads 12.8 at least: 13.5 less 0.5 sideways less 0.2', cite, () =>
    expectPrinted(leaning.calmValue, '12.8'),
  );
  computed('at 95 the alarm must have come at 11.6: 10.5, 0.5 sideways, 0.2 and 0.4', cite, () =>
    expectPrinted(leaning.lateValue, '11.6'),
  );
  const moving = found({ ...slope, otherErrorValue: 0, otherRatePerS: 10, otherDelayS: 0.4 });
  const middle = moving.rows.find(({ inValue }) => inValue === 93)!;
  computed('readings 0.3 s apart at 10 a second: 3 sideways', cite, () => expectPrinted(middle.calmValue, '12.8'));
  computed('0.7 s late: 7 sideways', cite, () => expectPrinted(middle.lateValue, '11.6'));
});

describe('independent', () => {
  /** Least room of a table over a fine row of places, each with its window looked through: all written out. */
  function roomOf(input: WarningLimitsInput, cells: Curve): number {
    const { errorValue: e, ratePerS, delayS, debounceS, otherErrorValue, otherRatePerS, otherDelayS } = input;
    const calm = otherErrorValue + otherRatePerS * Math.abs(delayS - otherDelayS);
    const late = otherErrorValue + otherRatePerS * (otherDelayS + debounceS);
    const [a, b] = [input.healthy[0]!.inValue, input.healthy[input.healthy.length - 1]!.inValue];
    let least = Infinity;
    for (let i = 0; i <= 120; i++) {
      const x = a + ((b - a) * i) / 120;
      const w = at(cells, x);
      for (let k = -20; k <= 20; k++) {
        const inside = (z: number): number => Math.min(b, Math.max(a, z));
        const healthy = at(input.healthy, inside(x + (calm * k) / 20)) - e;
        const harm = at(input.limit, inside(x + (late * k) / 20)) + e + ratePerS * (delayS + debounceS);
        least = Math.min(least, healthy - w, w - harm);
      }
    }
    return least;
  }
  it('no table of three places, tried in small steps, keeps more room', () => {
    const places = [0, 4, 10];
    let state = 11;
    const random = (): number => (state = (state * 16807) % 2147483647) / 2147483647;
    for (let round = 0; round < 12; round++) {
      const input: WarningLimitsInput = {
        ...oil,
        healthy: curve(
          [0, 4 + 2 * random()],
          [3 + random(), 3 + 4 * random()],
          [7, 5 + random()],
          [10, 4 + 3 * random()],
        ),
        limit: curve([0, 1 + random()], [2 + 4 * random(), 1 + 2 * random()], [10, 1 + 2 * random()]),
        otherErrorValue: 0.4 * random(),
        otherRatePerS: 2 * random(),
        errorValue: 0.1,
        placeValues: places,
        guardValue: 0,
      };
      const ours = found(input);
      const room = Math.min(ours.falseRoomValue, ours.missedRoomValue);
      // Our rows are where the worst can be: the fine row finds nothing below, and comes near.
      const seen = roomOf(input, ours.cells);
      expect(seen).toBeGreaterThanOrEqual(room - 1e-9);
      expect(seen).toBeLessThan(room + 0.06);
      const steps = 14;
      let best = -Infinity;
      for (let i = 0; i <= steps; i++) {
        for (let j = 0; j <= steps; j++) {
          for (let k = 0; k <= steps; k++) {
            const value = (n: number): number => 1 + (5 * n) / steps;
            const cells = curve([0, value(i)], [4, value(j)], [10, value(k)]);
            // The judging of a given table is held against the fine row above; here it is the quick one.
            const { placeValues: _, ...rest } = input;
            const judged = found({ ...rest, cells });
            best = Math.max(best, Math.min(judged.falseRoomValue, judged.missedRoomValue));
          }
        }
      }
      expect(best).toBeLessThanOrEqual(room + 1e-9);
      // A step of the search is 5/14: it comes within half of that.
      expect(best).toBeGreaterThan(room - 2.5 / steps - 1e-9);
    }
  });

  /** Engines that run in time: speed goes up and down as fast as it may, readings are late and off as far as they may. */
  function runs(input: WarningLimitsInput, cells: Curve, seed: number) {
    let state = seed;
    const random = (): number => (state = (state * 16807) % 2147483647) / 2147483647;
    const dt = 0.01;
    const n = 1500;
    const [a, b] = [700, 6500];
    const x: number[] = [a + (b - a) * random()];
    let way = 1;
    for (let i = 1; i < n; i++) {
      if (random() < 0.02) way = [-1, 0, 1][Math.floor(3 * random())]!;
      x.push(Math.min(b, Math.max(a, x[i - 1]! + way * input.otherRatePerS * dt)));
    }
    const late = (list: readonly number[], i: number, delayS: number): number =>
      list[Math.max(0, i - Math.round(delayS / dt))]!;
    const off = (): number => (random() < 0.5 ? -1 : 1);
    const alarmAt = (y: readonly number[]): number => {
      let since = -1;
      const hold = Math.round(input.debounceS / dt);
      for (let i = 50; i < y.length; i++) {
        const shown = late(y, i, input.delayS) + off() * input.errorValue;
        const other = late(x, i, input.otherDelayS) + off() * input.otherErrorValue;
        if (shown < at(cells, other)) {
          if (since < 0) since = i;
          if (i - since >= hold) return i;
        } else since = -1;
      }
      return Infinity;
    };
    const healthy = x.map((speed) => at(input.healthy, speed));
    const from = 300 + Math.floor(800 * random());
    const faulty = healthy.slice();
    let harmAt = Infinity;
    for (let i = from; i < n; i++) {
      // Falls as fast as it may, and never rises again.
      faulty[i] = Math.min(healthy[i]!, faulty[i - 1]! - input.ratePerS * dt);
      if (harmAt === Infinity && faulty[i]! < at(input.limit, x[i]!)) harmAt = i;
    }
    return { calm: alarmAt(healthy), alarm: alarmAt(faulty), harmAt };
  }
  it('a healthy engine raises no alarm, a failing one always before harm', () => {
    const table = found(oil);
    expect(warningLimits(oil).possible).toBe(true);
    // The fault falls no faster than it is said to, so speed may not take pressure down faster than that either.
    const input = { ...oil, otherRatePerS: 900 };
    for (let seed = 1; seed <= 40; seed++) {
      const { calm, alarm, harmAt } = runs(input, table.cells, seed);
      expect(calm).toBe(Infinity);
      if (harmAt < Infinity) expect(alarm).toBeLessThanOrEqual(harmAt);
    }
  });
  it('a table a little beyond its room does raise a false alarm', () => {
    const table = found(oil);
    const up = table.cells.map(({ inValue, outValue }) => ({
      inValue,
      outValue: outValue + table.falseRoomValue + 0.4,
    }));
    const alarms = Array.from({ length: 20 }, (_, i) => runs({ ...oil, debounceS: 0 }, up, i + 1).calm);
    expect(alarms.some((time) => time < Infinity)).toBe(true);
  });
});

describe('laws', () => {
  const least = (result: WarningLimits): number => Math.min(result.falseRoomValue, result.missedRoomValue);
  it('anything that is off or late takes room', () => {
    const room = least(found(oil));
    for (const field of ['errorValue', 'ratePerS', 'delayS', 'debounceS', 'otherErrorValue'] as const) {
      expect(least(found({ ...oil, [field]: oil[field] * 1.5 })), field).toBeLessThan(room);
    }
    expect(least(found({ ...oil, otherRatePerS: 2500 }))).toBeLessThanOrEqual(room);
  });
  it('more places keep no less room', () => {
    fc.assert(
      fc.property(fc.double({ min: 800, max: 6400, noNaN: true }), (place) => {
        const few = [700, 2000, 6500];
        if (few.includes(place)) return;
        const more = [...few, place].sort((a, b) => a - b);
        const before = least(found({ ...oil, placeValues: few }));
        expect(least(found({ ...oil, placeValues: more }))).toBeGreaterThanOrEqual(before - 1e-9);
      }),
    );
  });
  it('from above is from below with all turned', () => {
    const turned = (cells: Curve): Curve => cells.map(({ inValue, outValue }) => ({ inValue, outValue: -outValue }));
    const below = found(oil);
    const above = found({ ...oil, warns: 'above', healthy: turned(oil.healthy), limit: turned(oil.limit) });
    above.cells.forEach(({ outValue }, i) => expect(outValue).toBeCloseTo(-below.cells[i]!.outValue, 12));
    expect(above.falseRoomValue).toBeCloseTo(below.falseRoomValue, 12);
    expect(above.rows[3]!.harmValue).toBeCloseTo(-below.rows[3]!.harmValue, 12);
  });
  it('the table judged again has the room that it was found with', () => {
    const own = found(oil);
    const { placeValues: _, ...rest } = oil;
    const again = found({ ...rest, cells: own.cells });
    expect(again.falseRoomValue).toBeCloseTo(own.falseRoomValue, 9);
    expect(again.missedRoomValue).toBeCloseTo(own.missedRoomValue, 9);
    const moved = own.cells.map(({ inValue, outValue }) => ({ inValue, outValue: outValue + 0.01 }));
    expect(found({ ...rest, cells: moved }).falseRoomValue).toBeCloseTo(own.falseRoomValue - 0.01, 9);
    expect(found({ ...rest, cells: moved }).missedRoomValue).toBeCloseTo(own.missedRoomValue + 0.01, 9);
  });
  it('both rooms are equal where they decide: the limit stands in the middle of what is tightest', () => {
    const { falseRoomValue, missedRoomValue } = found(oil);
    expect(falseRoomValue).toBeCloseTo(missedRoomValue, 9);
  });
  it('swapping two inputs of a kind is seen', () => {
    swapsMatter(
      (flat: {
        delayS: number;
        debounceS: number;
        otherDelayS: number;
        blankS: number;
        buildUpS: number;
        blindMostS: number;
      }) => warningLimits({ ...oil, ...flat }),
      { delayS: 0.1, debounceS: 0.3, otherDelayS: 0.05, blankS: 4, buildUpS: 3, blindMostS: 7 },
    );
  });
});

describe('edges', () => {
  const code = (result: WarningLimitsResult): string => (result.possible ? 'possible' : result.code);
  it('bands that cross say where', () => {
    const crossed = warningLimits({ ...oil, limit: curve([700, 1.1], [2000, 1.3], [6500, 2]) });
    expect(crossed).toMatchObject({ possible: false, code: 'bands-cross' });
    // Speed reads up to 105 too high, so at 805 it may really be 700: 1.2 less 0.15. Harm may be as at 1060: 1.1554, and
    // 0.15 and 0.2 above it.
    expect(crossed.possible || crossed.because).toContain(
      'at 805 a healthy engine may read 1.05, and the alarm must have come at 1.51',
    );
  });
  it('exactly the room is enough, a little less is not', () => {
    const room = found({ ...oil, guardValue: 0 }).falseRoomValue;
    expect(code(warningLimits({ ...oil, guardValue: room * (1 - 1e-9) }))).toBe('possible');
    expect(code(warningLimits({ ...oil, guardValue: room * 1.001 }))).not.toBe('possible');
  });
  it('two places for a curve that bends, a step that is coarse, a table that comes too near', () => {
    const bent = { ...oil, healthy: curve([700, 3], [2000, 1.5], [6500, 4]), limit: curve([700, 2], [2000, 0.5], [6500, 3]), otherRatePerS: 0 }; // prettier-ignore
    expect(code(warningLimits({ ...bent, placeValues: [700, 6500] }))).toBe('too-few-places');
    expect(code(warningLimits({ ...bent, placeValues: [700, 2000, 6500] }))).toBe('possible');
    expect(code(warningLimits({ ...oil, outStepValue: 1 }))).toBe('rounding');
    const fine = warningLimits({ ...oil, outStepValue: 0.01 });
    expect(code(fine)).toBe('possible');
    for (const { outValue } of found({ ...oil, outStepValue: 0.01 }).cells)
      expectPrinted(outValue, outValue.toFixed(2), 1e-6);
    const { placeValues: _, ...rest } = oil;
    expect(code(warningLimits({ ...rest, cells: curve([700, 1], [6500, 1]) }))).toBe('table-misses');
    const guardTooWide = { ...oil, guardValue: 2 };
    expect(code(warningLimits(guardTooWide))).toBe('too-little-room');
  });
  it('holds the end cells beyond the places', () => {
    const short = found({ ...oil, placeValues: [1500, 5000] });
    expect(short.rows[0]!.warnValue).toBe(short.cells[0]!.outValue);
    expect(short.rows[short.rows.length - 1]!.warnValue).toBe(short.cells[1]!.outValue);
  });
  it('blanking is judged both ways', () => {
    expect(code(warningLimits({ ...oil, blankS: 3 }))).toBe('blanking-too-short');
    expect(code(warningLimits({ ...oil, blankS: 3.1 }))).toBe('possible');
    expect(code(warningLimits({ ...oil, blindMostS: 4 }))).toBe('blind-too-long');
    expect(code(warningLimits({ ...oil, blindMostS: null }))).toBe('possible');
  });
  it('refuses nonsense', () => {
    refusesNonsense(warningLimits, oil, {
      required: [
        ...(['errorValue', 'ratePerS', 'delayS', 'debounceS', 'otherErrorValue', 'otherRatePerS'] as const),
        ...(['otherDelayS', 'guardValue', 'blankS', 'buildUpS'] as const),
      ],
      optional: ['outStepValue', 'blindMostS'],
    });
    const bad = (change: Partial<WarningLimitsInput>, field: string): void =>
      expectInputError(() => warningLimits({ ...oil, ...change }), field);
    bad({ warns: 'low' as never }, 'warns');
    bad({ healthy: curve([700, 1]) }, 'healthy');
    bad({ limit: curve([700, 1], [6000, 1]) }, 'limit');
    bad({ placeValues: undefined as never }, 'placeValues');
    bad({ cells: oil.healthy }, 'placeValues');
    bad({ placeValues: [700] }, 'placeValues');
    bad({ placeValues: [700, 700] }, 'placeValues[1]');
    bad({ placeValues: [700, NaN] }, 'placeValues[1]');
    bad({ placeValues: [600, 6500] }, 'placeValues[0]');
    bad({ outStepValue: 0 }, 'outStepValue');
    bad({ blindMostS: -1 }, 'blindMostS');
  });
});
