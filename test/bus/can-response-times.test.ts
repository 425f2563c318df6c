import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  canError29,
  canError31,
  canResponseTimes,
  type CanResponseTimes,
  type CanResponseTimesInput,
  type TimedMessage,
} from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { BENCHMARK, BROSTER, untimed } from './message-sets.js';

const base: CanResponseTimesInput = {
  bitRateBitPerS: 250_000,
  messages: untimed(BROSTER),
  ownInterframe: 'left-out',
  blocking: 'lower-frames-or-space',
  faults: null,
};
const of = (change: Partial<CanResponseTimesInput>): CanResponseTimes => {
  const result = canResponseTimes({ ...base, ...change });
  const found = result.possible ? result : result.nearest;
  if (found === null) throw new Error('no times');
  return found;
};
const ms = (found: CanResponseTimes, i: number): number => 1000 * found.messages[i]!.responseS!;

describe('published', () => {
  const table2 = { source: 'davis-2007', place: 'table 2', status: 'memory' } as const;
  const seven = (name: string, periodMs: number, deadlineMs: number): TimedMessage => ({
    name,
    idBits: 11,
    dataByteCount: 7,
    periodS: periodMs / 1000,
    deadlineS: deadlineMs / 1000,
    jitterS: 0,
  });
  const three: Partial<CanResponseTimesInput> = {
    bitRateBitPerS: 125_000,
    messages: [seven('A', 2.5, 2.5), seven('B', 3.5, 3.25), seven('C', 3.5, 3.25)],
    ownInterframe: 'counted',
    blocking: 'lower-frames',
  };
  const refuted = of(three);
  computed('A', table2, () => expectPrinted(ms(refuted, 0), '2.0'));
  computed('B', table2, () => expectPrinted(ms(refuted, 1), '3.0'));
  computed('C, first sending', table2, () => expectPrinted(1000 * refuted.messages[2]!.firstResponseS!, '3.0'));
  computed('C, second sending', table2, () => expectPrinted(ms(refuted, 2), '3.5'));
  computed('busy with A', table2, () => expectPrinted(1000 * refuted.messages[0]!.busyS!, '2'));
  computed('busy with A and B', table2, () => expectPrinted(1000 * refuted.messages[1]!.busyS!, '5'));
  computed('busy with all', table2, () => expectPrinted(1000 * refuted.messages[2]!.busyS!, '7'));
  computed('C misses 3.25 ms with its second sending', table2, () => {
    const result = canResponseTimes({ ...base, ...three });
    expect(result).toMatchObject({ possible: false, code: 'deadline-missed' });
    expect(refuted.messages.map(({ ok }) => ok)).toEqual([true, true, false]);
    expect(refuted.messages[2]!.worstNumber).toBe(2);
  });

  const broster = { source: 'broster-2002', place: '12 messages at 250 kbit/s', status: 'published' } as const;
  const printed = '1.028 1.368 1.708 2.008 2.428 2.848 3.228 3.648 4.028 4.448 4.708 4.720'.split(' ');
  const set = of({});
  printed.forEach((print, i) => computed(`message ${i + 1}`, broster, () => expectPrinted(ms(set, i), print)));
  computed('the last without the 3 bits that it waits for', { ...broster, status: 'derived' }, () =>
    expectPrinted(ms(of({ blocking: 'lower-frames' }), 11), '4.708'),
  );

  const faulty = { source: 'broster-2002', place: 'messages 1 and 8 with faults', status: 'published' } as const;
  const one = '1.028 1.672 2.316 2.960 3.604 4.248 4.892 5.536 6.180 6.824'.split(' ');
  const eight = '3.648 4.292 4.936 5.580 6.224 6.868 7.512 8.156 8.800 9.444 10.088'.split(' ');
  for (const [list, i] of [
    [one, 0],
    [eight, 7],
  ] as const) {
    list.forEach((print, faultCount) =>
      computed(`message ${i + 1} with ${faultCount} faults`, faulty, () =>
        expectPrinted(ms(of({ faults: { faultCount, rule: canError29 } }), i), print),
      ),
    );
  }

  const bench = { source: 'sae-message-set', place: '17 messages', status: 'memory' } as const;
  const worked = { ...bench, place: '17 messages, the last waits for nothing', status: 'derived' } as const;
  const rates = [
    [
      125_000,
      bench,
      '1.416 2.016 2.536 3.136 3.656 4.256 5.016 8.376 8.976 9.576 10.096 19.096 19.616 20.136 28.976 29.496 29.520',
    ],
    [
      250_000,
      worked,
      '0.708 1.008 1.268 1.568 1.828 2.128 2.508 2.768 3.068 3.368 3.628 3.968 4.228 4.488 4.748 5.008 5.008',
    ],
    [
      500_000,
      worked,
      '0.354 0.504 0.634 0.784 0.914 1.064 1.254 1.384 1.534 1.684 1.814 1.984 2.114 2.244 2.374 2.504 2.504',
    ],
    [
      1_000_000,
      worked,
      '0.177 0.252 0.317 0.392 0.457 0.532 0.627 0.692 0.767 0.842 0.907 0.992 1.057 1.122 1.187 1.252 1.252',
    ],
  ] as const;
  for (const [bitRateBitPerS, cite, line] of rates) {
    const blocking = cite === bench ? 'lower-frames-or-space' : 'lower-frames';
    const found = of({ bitRateBitPerS, messages: untimed(BENCHMARK), blocking });
    line
      .split(' ')
      .forEach((print, i) =>
        computed(`message ${i + 1} at ${bitRateBitPerS / 1000} kbit/s`, cite, () => expectPrinted(ms(found, i), print)),
      );
  }
  computed('the last at 125 kbit/s without its 3 bits', bench, () => {
    const found = of({ bitRateBitPerS: 125_000, messages: untimed(BENCHMARK), blocking: 'lower-frames' });
    expectPrinted(ms(found, 16), '29.496');
  });

  // Priority, frame in ms, period in ms, response; one bit is 2 µs.
  const course = {
    source: 'sae-message-set',
    place: 'course file, own frame in the blocking',
    status: 'derived',
  } as const;
  const file = [
    [11, 0.52, 50, '19.12'],
    [4, 0.6, 5, '3.60'],
    [3, 0.52, 5, '3.00'],
    [6, 0.6, 5, '4.80'],
    [1, 0.52, 5, '1.96'],
    [5, 0.6, 5, '4.20'],
    [9, 0.92, 10, '9.84'],
    [2, 0.52, 10, '2.48'],
    [7, 0.6, 10, '5.40'],
    [8, 0.68, 10, '8.92'],
    [13, 0.52, 50, '20.16'],
    [16, 0.76, 100, '30.52'],
    [12, 0.52, 100, '19.64'],
    [0, 0.52, 100, '1.44'],
    [15, 0.68, 1000, '29.76'],
    [10, 0.52, 1000, '10.20'],
    [14, 0.52, 1000, '29.08'],
  ] as const;
  const ordered = [...file].sort(([a], [b]) => a - b);
  const taught = of({
    bitRateBitPerS: 500_000,
    messages: ordered.map(([priority, frameMs, periodMs]) => ({
      name: `priority ${priority}`,
      frameBits: Math.round(frameMs * 500),
      periodS: periodMs / 1000,
      deadlineS: null,
      jitterS: 0,
    })),
    ownInterframe: 'counted',
    blocking: 'lower-and-own-frames',
  });
  ordered.forEach(([priority, , , print], i) =>
    computed(`priority ${priority} of the course file`, course, () => expectPrinted(ms(taught, i), print)),
  );
});

/**
 * Sends frames bit by bit from given first moments, by priority, and notes the longest response of each. Before the
 * line is free all that is due by then waits: a moment before it is a sending held back by its jitter.
 */
function simulated(
  frames: readonly { readonly bits: number; readonly period: number; readonly first: number }[],
  until: number,
  heldFor: number,
): readonly number[] {
  const due = frames.map(({ first }) => first);
  const waiting: number[][] = frames.map(() => []);
  const worst = frames.map(() => 0);
  for (let now = heldFor; now < until;) {
    frames.forEach(({ period }, i) => {
      while (due[i]! <= now) {
        waiting[i]!.push(due[i]!);
        due[i]! += period;
      }
    });
    const i = waiting.findIndex((list) => list.length > 0);
    if (i < 0) {
      now = Math.min(...due);
      continue;
    }
    now += frames[i]!.bits;
    worst[i] = Math.max(worst[i]!, now - waiting[i]!.shift()!);
  }
  return worst;
}

describe('independent', () => {
  const sets = fc.array(
    fc.record({ bytes: fc.integer({ min: 0, max: 8 }), period: fc.integer({ min: 400, max: 6000 }) }),
    {
      minLength: 2,
      maxLength: 6,
    },
  );
  const bitsOf = (bytes: number): number => 55 + 10 * bytes;
  const asked = (set: readonly { readonly bytes: number; readonly period: number }[]): CanResponseTimesInput => ({
    ...base,
    bitRateBitPerS: 1,
    messages: set.map(({ bytes, period }, i) => ({
      name: `${i}`,
      idBits: 11,
      dataByteCount: bytes,
      periodS: period,
      deadlineS: null,
      jitterS: 0,
    })),
    ownInterframe: 'counted',
    blocking: 'lower-frames',
  });

  it('no line simulated from random beginnings responds later than the bound', () => {
    fc.assert(
      fc.property(sets, fc.array(fc.integer({ min: 0, max: 6000 }), { minLength: 6, maxLength: 6 }), (set, firsts) => {
        const frames = set.map(({ bytes, period }, i) => ({ bits: bitsOf(bytes), period, first: firsts[i]! % period }));
        const result = canResponseTimes(asked(set));
        const found = (result.possible ? result : result.nearest)!;
        simulated(frames, 60_000, 0).forEach((response, i) => {
          const bound = found.messages[i]!.responseS;
          if (bound !== null) expect(response).toBeLessThanOrEqual(bound);
        });
      }),
    );
  });

  it('with jitter: the first of each held back by all of it until the longest lower frame begins, the next on time', () => {
    const late = fc.array(
      fc.record({
        bytes: fc.integer({ min: 0, max: 8 }),
        period: fc.integer({ min: 200, max: 900 }),
        jitter: fc.integer({ min: 0, max: 1500 }),
      }),
      { minLength: 1, maxLength: 5 },
    );
    let several = 0;
    fc.assert(
      fc.property(late, (set) => {
        const input = asked(set);
        const messages = input.messages.map((message, i) => ({ ...message, jitterS: set[i]!.jitter }));
        const result = canResponseTimes({ ...input, messages });
        const found = (result.possible ? result : result.nearest)!;
        found.messages.forEach(({ responseS, busyS, worstNumber }, level) => {
          if (responseS === null || busyS === null) return;
          if (worstNumber! > 1) several++;
          const lower = Math.max(0, ...set.slice(level + 1).map(({ bytes }) => bitsOf(bytes)));
          const worst = [0, -1].map((shift) => {
            const frames = set.slice(0, level + 1).map(({ bytes, period, jitter }, i) => ({
              bits: bitsOf(bytes),
              period,
              first: (i === level ? 0 : shift) - jitter,
            }));
            return simulated(frames, busyS + 1, lower)[level]!;
          });
          expect(worst[0]).toBeLessThanOrEqual(responseS);
          expect(Math.max(...worst)).toBeGreaterThanOrEqual(responseS);
        });
      }),
      { numRuns: 300 },
    );
    expect(several).toBeGreaterThan(0);
  });

  it('it lies between all due as the longest lower frame begins, and those above due one bit earlier', () => {
    fc.assert(
      fc.property(sets, (set) => {
        const result = canResponseTimes(asked(set));
        const found = (result.possible ? result : result.nearest)!;
        found.messages.forEach(({ responseS, busyS }, level) => {
          if (responseS === null || busyS === null) return;
          const above = set.slice(0, level + 1).map(({ bytes, period }) => ({ bits: bitsOf(bytes), period, first: 0 }));
          const lower = Math.max(0, ...set.slice(level + 1).map(({ bytes }) => bitsOf(bytes)));
          // The bound lets a frame that is due in the bit in which a wait ends go first.
          const exact = simulated(above, busyS + 1, lower)[level]!;
          expect(exact).toBeLessThanOrEqual(responseS);
          const later = simulated(
            above.map((frame, i) => ({ ...frame, first: i === level ? 0 : -1 })),
            busyS + 1,
            lower,
          )[level]!;
          expect(Math.max(exact, later)).toBeGreaterThanOrEqual(responseS);
        });
      }),
    );
  });
});

describe('laws', () => {
  it('nothing gets quicker by jitter, faults or a slower line', () => {
    const plain = of({});
    const late = of({ messages: untimed(BROSTER).map((m) => ({ ...m, jitterS: 0.001 })) });
    const faulty = of({ faults: { faultCount: 1, rule: canError31 } });
    const slow = of({ bitRateBitPerS: 125_000 });
    plain.messages.forEach((_, i) => {
      for (const other of [late, faulty, slow]) expect(ms(other, i)).toBeGreaterThan(ms(plain, i));
    });
  });
  it('a sending that is held back and the next one run into one another', () => {
    // 135 bits each 270, the first late by 200: due again after 70, so two in one busy time.
    const { messages } = of({
      bitRateBitPerS: 1,
      messages: [{ name: 'a', frameBits: 135, periodS: 270, deadlineS: null, jitterS: 200 }],
      ownInterframe: 'counted',
      blocking: 'lower-frames',
    });
    expect(messages[0]).toMatchObject({ busyS: 270, instanceCount: 2, responseS: 335, worstNumber: 1 });
  });
  it('time and bit rate scale together', () => {
    const twice = of({
      bitRateBitPerS: 500_000,
      messages: untimed(BROSTER).map((m) => ({ ...m, periodS: m.periodS / 2 })),
    });
    of({}).messages.forEach(({ responseS }, i) => expectWithin(2 * twice.messages[i]!.responseS!, responseS!, 1e-12));
  });
  it('the cost of a fault is 29 or 31 bits and the longest frame again', () => {
    const one = of({ faults: { faultCount: 1, rule: canError29 } });
    const other = of({ faults: { faultCount: 1, rule: canError31 } });
    expectWithin(one.messages[0]!.faultS, (29 + 132) / 250_000, 1e-12);
    expectWithin(other.messages[0]!.faultS, (31 + 135) / 250_000, 1e-12);
  });
});

describe('edges', () => {
  const full = (periodS: number): TimedMessage[] =>
    [1, 2].map((i) => ({ name: `${i}`, idBits: 11, dataByteCount: 8, periodS, deadlineS: 1, jitterS: 0 }));
  it('a full line never ends, and says so', () => {
    // 135 bits each, at 1 bit/s: both every 270 s fill the line.
    const result = canResponseTimes({ ...base, bitRateBitPerS: 1, messages: full(270) });
    expect(result).toMatchObject({ possible: false, code: 'line-full' });
    const [first, second] = (result as { nearest: CanResponseTimes }).nearest.messages;
    expect(first!.responseS).not.toBeNull();
    expect(second).toMatchObject({ responseS: null, reason: 'never-ends', ok: false });
  });
  it('a thousand messages end in bounded time', () => {
    const messages = untimed(
      Array.from({ length: 1000 }, (_, i) => ({ name: `${i}`, idBits: 29, dataByteCount: 8, periodS: 0.4 + i * 1e-4 })),
    );
    const begin = performance.now();
    const found = of({ bitRateBitPerS: 1_000_000, messages });
    expect(found.messages.every(({ responseS }) => responseS !== null)).toBe(true);
    expect(performance.now() - begin).toBeLessThan(20_000);
  });
  it('a deadline is met at its very moment', () => {
    const messages = untimed(BROSTER).map((m, i) => (i === 0 ? { ...m, deadlineS: 0.001028 } : m));
    expect(canResponseTimes({ ...base, messages }).possible).toBe(true);
  });
  it('refuses nonsense by its place', () => {
    const [first] = base.messages as [TimedMessage];
    const bad = (change: Partial<TimedMessage>): (() => unknown) => {
      return () => canResponseTimes({ ...base, messages: [{ ...first, ...change }] });
    };
    expectInputError(bad({ deadlineS: 0 }), 'messages[0].deadlineS');
    expectInputError(bad({ jitterS: -1 }), 'messages[0].jitterS');
    expectInputError(bad({ periodS: NaN }), 'messages[0].periodS');
    expectInputError(() => canResponseTimes({ ...base, blocking: 'none' as 'lower-frames' }), 'blocking', 'oneOf');
    expectInputError(
      () => canResponseTimes({ ...base, faults: { faultCount: -1, rule: canError29 } }),
      'faults.faultCount',
    );
    expectInputError(
      () => canResponseTimes({ ...base, faults: { faultCount: 1, rule: null as unknown as typeof canError29 } }),
      'faults.rule',
    );
    expectInputError(
      () => canResponseTimes({ ...base, faults: { faultCount: 1, rule: {} as unknown as typeof canError29 } }),
      'faults.rule.errorBits',
      'missing',
    );
    expectInputError(() => canResponseTimes({ ...base, faults: undefined as unknown as null }), 'faults');
  });
});
