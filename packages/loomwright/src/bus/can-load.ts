import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needBetween, needInput, needOneOf } from '../error/guard.js';
import { bitsOf, SPACE_BITS } from './frame-shape.js';
import { type CanMessage, mostWithSpace, needMessages } from './message.js';

export interface CanLoadInput {
  /** Bit rate in bit/s, above 0. */
  readonly bitRateBitPerS: number;
  readonly messages: readonly CanMessage[];
  /** Whether each frame has all the stuff bits that can occur, or none. */
  readonly stuffing: 'most' | 'none';
  /** Whether the 3 bits of space after each frame count as load. */
  readonly interframe: 'counted' | 'left-out';
  /** Most load that you allow, as a fraction, above 0 and at most 1. No standard names one. */
  readonly allowedFraction: number;
}

export interface CanLoadShare {
  readonly name: string;
  readonly frameBits: number;
  readonly frameS: number;
  /** Its part of the line's time. */
  readonly loadFraction: number;
}

export interface CanLoadResult {
  readonly loadFraction: number;
  /** Each message's share, in the order given. */
  readonly messages: readonly CanLoadShare[];
  /** Frames a second. */
  readonly framesPerS: number;
  /** How it was counted, in words. */
  readonly convention: string;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * Which share of a CAN line's time is used up.
 *
 * A sum over all messages of frame time by period. Two people who count stuff bits and spaces unlike differ by a
 * quarter, so both are asked for and the answer says them. A load below 1 does not mean that every message arrives in
 * time: `canResponseTimes` tells that. A message that gives the bits of its frame is taken at those, whatever is said
 * of stuffing.
 *
 * $$U = \sum_m \frac{C_m}{T_m}$$
 *
 * @param input bit rate, messages, how frames are counted, load that is allowed
 * @returns load as a fraction, each message's share, frames a second, the check against what is allowed
 * @throws InputError when a field is missing or out of range, or two messages have one name
 * @source can-frame-bits; broster-2002 (load of its set)
 * @example canLoad({ bitRateBitPerS: 250000, messages: [{ name: 'speed', idBits: 11, dataByteCount: 8, periodS: 0.01 }], stuffing: 'most', interframe: 'left-out', allowedFraction: 0.5 }).loadFraction //=> 0.0528
 */
export function canLoad(input: CanLoadInput): CanLoadResult {
  const fn = 'canLoad';
  needInput(fn, input);
  const { bitRateBitPerS, stuffing, interframe, allowedFraction } = input;
  needMoreThan(fn, 'bitRateBitPerS', bitRateBitPerS);
  needMessages(fn, input.messages);
  needOneOf(fn, 'stuffing', stuffing, ['most', 'none']);
  needOneOf(fn, 'interframe', interframe, ['counted', 'left-out']);
  needMoreThan(fn, 'allowedFraction', allowedFraction);
  needBetween(fn, 'allowedFraction', allowedFraction, 0, 1, '50 % is 0.5');
  const space = interframe === 'counted' ? 0 : SPACE_BITS;
  const messages = input.messages.map((message): CanLoadShare => {
    const most = mostWithSpace(message);
    const stuffed = stuffing === 'none' && !('frameBits' in message) ? bitsOf(message).stuffBits : 0;
    const frameBits = most - stuffed - space;
    const frameS = frameBits / bitRateBitPerS;
    return { name: message.name, frameBits, frameS, loadFraction: frameS / message.periodS };
  });
  const loadFraction = messages.reduce((sum, message) => sum + message.loadFraction, 0);
  const limit = { unit: 'fraction', sense: 'atMost', source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks = [makeCheck({ ...limit, name: 'load of the line', value: loadFraction, limit: allowedFraction })];
  return {
    loadFraction,
    messages,
    framesPerS: input.messages.reduce((sum, { periodS }) => sum + 1 / periodS, 0),
    convention: `${stuffing === 'most' ? 'most stuff bits' : 'no stuff bits'}, space ${interframe === 'counted' ? 'counted' : 'left out'}`,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}
