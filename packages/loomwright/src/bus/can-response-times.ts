import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput, needInteger, needOneOf } from '../error/guard.js';
import type { CanErrorRule } from '../table/index.js';
import { inBits, type LevelMessage, levelTime, type LevelTime } from './busy-time.js';
import { SPACE_BITS } from './frame-shape.js';
import { type CanMessage, mostWithSpace, needMessages } from './message.js';

/** A message with what it must keep to. */
export type TimedMessage = CanMessage & {
  /** It must have arrived within this after it was due, in s; null where nothing is asked. */
  readonly deadlineS: number | null;
  /** By how much its sending may be late against its period, in s, at least 0. */
  readonly jitterS: number;
};

export interface CanResponseTimesInput {
  /** Bit rate in bit/s, above 0. */
  readonly bitRateBitPerS: number;
  /** From the highest priority (lowest identifier) to the lowest. */
  readonly messages: readonly TimedMessage[];
  /** Whether a response ends with the 3 bits of space after the own frame, or with the frame. */
  readonly ownInterframe: 'counted' | 'left-out';
  /**
   * What may hold the line when a message becomes ready: the longest frame of lower priority; the same, but at least
   * the 3 bits of space, which the lowest message then waits for too; or the longest of lower and own priority, as a
   * course teaches it.
   */
  readonly blocking: 'lower-frames' | 'lower-frames-or-space' | 'lower-and-own-frames';
  /** Faults on the line in one busy time, 0 to 1000, and what each costs; null for none. */
  readonly faults: { readonly faultCount: number; readonly rule: CanErrorRule } | null;
}

export interface CanResponse {
  readonly name: string;
  /** Its frame with all stuff bits and its space. */
  readonly frameBits: number;
  readonly frameS: number;
  /** Load of this message and all of higher priority. */
  readonly loadFraction: number;
  /** What it may find on the line, and what faults cost it. */
  readonly blockingS: number;
  readonly faultS: number;
  /** How long the line stays busy with it and higher ones, and how many of its sendings fall into that. */
  readonly busyS: number | null;
  readonly instanceCount: number | null;
  /** Worst response of its first sending in that time, the worst of all, and which sending that is, from 1. */
  readonly firstResponseS: number | null;
  readonly responseS: number | null;
  readonly worstNumber: number | null;
  readonly deadlineS: number | null;
  /** Why there is no response: the line is full, or too nearly full to count to the end. */
  readonly reason: 'never-ends' | 'not-counted-to-the-end' | null;
  readonly ok: boolean;
}

export interface CanResponseTimes {
  readonly possible: true;
  readonly messages: readonly CanResponse[];
  /** Frames with space and all stuff bits, over the periods. */
  readonly loadFraction: number;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

export type CanResponseTimesResult = CanResponseTimes | NotPossible<CanResponseTimes>;

/** Looks at one message each before the count is given up: a second or two. */
const MOST_LOOKS = 3e8;

/**
 * The longest time from when a CAN message is due until it has arrived, for every message of a line.
 *
 * For classical CAN where each node always offers its message of highest priority: no first-in, first-out queues, no
 * frame that cannot be taken back from a transmit buffer. The worst sending need not be the first in a busy time, so
 * all of them are looked at; the older analysis looked at one and could promise too much.
 *
 * $$w_q = B + E + q\,C + \sum_{k \in hp} \left\lceil\frac{w_q + J_k + \tau}{T_k}\right\rceil C_k, \qquad R = \max_q\,(J + w_q - q\,T + C)$$
 *
 * @param input bit rate, messages in order of priority, the conventions on the 3 bits of space and on blocking, faults
 * @returns responses in s with their busy times, checks against the deadlines; or not possible, because, with the same
 * figures, where a deadline is missed or the line is full. A response that never ends is null with its reason
 * @throws InputError when a field is missing or out of range, or two messages have one name
 * @source davis-2007: equations (from memory); broster-2002 (faults); sae-message-set (blocking with the own frame)
 * @example canResponseTimes({ bitRateBitPerS: 250000, messages: [{ name: 'a', idBits: 11, dataByteCount: 8, periodS: 0.01, deadlineS: 0.01, jitterS: 0 }, { name: 'b', idBits: 11, dataByteCount: 7, periodS: 0.1, deadlineS: null, jitterS: 0 }], ownInterframe: 'left-out', blocking: 'lower-frames', faults: null }).messages[0].responseS //=> 0.001028
 */
export function canResponseTimes(input: CanResponseTimesInput): CanResponseTimesResult {
  guard(input);
  const { bitRateBitPerS: rate, ownInterframe, faults } = input;
  const levels = input.messages.map((message): LevelMessage => ({
    frameBits: mostWithSpace(message),
    periodBits: inBits(message.periodS, rate),
    jitterBits: inBits(message.jitterS, rate),
  }));
  const blocking = blockingBits(levels, input.blocking);
  const spent = ownInterframe === 'counted' ? 0 : SPACE_BITS;
  const budget = Float64Array.of(MOST_LOOKS);
  let loadFraction = 0;
  let longest = 0;
  const messages = input.messages.map((message, i): CanResponse => {
    const { frameBits, periodBits } = levels[i] as LevelMessage;
    loadFraction += frameBits / periodBits;
    longest = Math.max(longest, frameBits);
    const faultBits = costOf(faults, longest);
    const blocked = blocking[i] as number;
    const full = loadFraction > 1 - 1e-12;
    const time = full ? null : levelTime(levels, i, frameBits - spent, blocked + faultBits, budget);
    const reason = full ? 'never-ends' : time === null ? 'not-counted-to-the-end' : null;
    return {
      name: message.name,
      frameBits,
      frameS: frameBits / rate,
      loadFraction,
      blockingS: blocked / rate,
      faultS: faultBits / rate,
      ...timesOf(time, rate),
      deadlineS: message.deadlineS,
      reason,
      ok: time !== null && (message.deadlineS === null || time.worstBits <= inBits(message.deadlineS, rate)),
    };
  });
  return answer(messages, loadFraction);
}

function guard(input: CanResponseTimesInput): void {
  const fn = 'canResponseTimes';
  needInput(fn, input);
  needMoreThan(fn, 'bitRateBitPerS', input.bitRateBitPerS);
  needMessages(fn, input.messages);
  input.messages.forEach(({ deadlineS, jitterS }, i) => {
    if (deadlineS !== null) needMoreThan(fn, `messages[${i}].deadlineS`, deadlineS);
    needNoLessThan(fn, `messages[${i}].jitterS`, jitterS);
  });
  needOneOf(fn, 'ownInterframe', input.ownInterframe, ['counted', 'left-out']);
  needOneOf(fn, 'blocking', input.blocking, ['lower-frames', 'lower-frames-or-space', 'lower-and-own-frames']);
  if (input.faults === null) return;
  if (typeof input.faults !== 'object') {
    throw new InputError(
      fn,
      'faults',
      input.faults === undefined ? 'missing' : 'object',
      input.faults,
      'must be faults',
    );
  }
  const { faultCount, rule } = input.faults;
  needInteger(fn, 'faults.faultCount', faultCount);
  if (faultCount > 1000) throw new InputError(fn, 'faults.faultCount', 'atMost', faultCount, 'must be at most 1000');
  if (typeof rule !== 'object' || rule === null) {
    throw new InputError(fn, 'faults.rule', 'missing', rule, 'must be a rule such as canError29');
  }
  needNoLessThan(fn, 'faults.rule.errorBits', rule.errorBits);
  needOneOf(fn, 'faults.rule.resendInterframe', rule.resendInterframe, ['counted', 'left-out']);
}

/** What each level may find on the line, in bits. */
function blockingBits(levels: readonly LevelMessage[], kind: CanResponseTimesInput['blocking']): readonly number[] {
  const bits: number[] = [];
  let below = kind === 'lower-frames-or-space' ? SPACE_BITS : 0;
  for (const { frameBits } of [...levels].reverse()) {
    const withOwn = Math.max(below, frameBits);
    bits.push(kind === 'lower-and-own-frames' ? withOwn : below);
    below = withOwn;
  }
  return bits.reverse();
}

/** What faults cost: their own bits, and each time the longest frame of this level or above once more. */
function costOf(faults: CanResponseTimesInput['faults'], longestBits: number): number {
  if (faults === null) return 0;
  const { errorBits, resendInterframe } = faults.rule;
  return faults.faultCount * (errorBits + longestBits - (resendInterframe === 'counted' ? 0 : SPACE_BITS));
}

type Times = Pick<CanResponse, 'busyS' | 'instanceCount' | 'firstResponseS' | 'responseS' | 'worstNumber'>;

function timesOf(time: LevelTime | null, rate: number): Times {
  if (time === null) {
    return { busyS: null, instanceCount: null, firstResponseS: null, responseS: null, worstNumber: null };
  }
  return {
    busyS: time.busyBits / rate,
    instanceCount: time.instanceCount,
    firstResponseS: time.firstBits / rate,
    responseS: time.worstBits / rate,
    worstNumber: time.worstNumber,
  };
}

function answer(messages: readonly CanResponse[], loadFraction: number): CanResponseTimesResult {
  const checks = messages
    .filter(({ deadlineS, responseS }) => deadlineS !== null || responseS === null)
    .map(({ name, responseS, deadlineS, ok, reason }) => {
      const check = makeCheck({
        name: `${name} arrives in time`,
        value: responseS,
        limit: deadlineS,
        unit: 's',
        sense: 'atMost',
        source: 'davis-2007',
        sourceStatus: 'memory',
        okWithoutNumber: ok,
        ...(reason === null ? {} : { because: BECAUSE[reason] }),
      });
      return { ...check, ok };
    });
  const found: CanResponseTimes = {
    possible: true,
    messages,
    loadFraction,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
  const failed = messages.filter(({ ok }) => !ok);
  const [first] = failed;
  if (first === undefined) return found;
  const endless = failed.filter(({ reason }) => reason !== null);
  const late = failed.filter(({ reason }) => reason === null);
  const because = [
    ...late.map(({ name }) => `${name} may miss its deadline`),
    ...endless.map(({ name, reason }) => `${name}: ${BECAUSE[reason as keyof typeof BECAUSE]}`),
  ].join('; ');
  const code = endless.some(({ reason }) => reason === 'never-ends')
    ? 'line-full'
    : endless.length > 0
      ? 'not-counted-to-the-end'
      : 'deadline-missed';
  return { possible: false, code, because, nearest: found };
}

const BECAUSE = {
  'never-ends': 'it and what goes before it need the whole time of the line, so the wait never ends',
  'not-counted-to-the-end': 'the line is so nearly full that the count was given up',
} as const;
