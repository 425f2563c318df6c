import { InputError } from '../error/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needInteger, needList, needObject, needOwnName } from '../error/guard.js';
import { bitsOf, type CanFrameShape, needFrame, SPACE_BITS } from './frame-shape.js';

/** A message that is sent again and again: its frame, or the bits of its frame with space where they are known. */
export type CanMessage = (CanFrameShape | { readonly frameBits: number }) & {
  readonly name: string;
  /** Time between two sendings in s, above 0; of a message sent on an event the least time. */
  readonly periodS: number;
};

/** Most messages that a call takes. */
const MOST_MESSAGES = 5000;

/** Refuses an empty or nonsensical list, and two messages of one name. */
export function needMessages(fn: string, messages: readonly CanMessage[]): void {
  needList(fn, 'messages', messages, 1);
  if (messages.length > MOST_MESSAGES) {
    throw new InputError(fn, 'messages', 'range', messages.length, `must have at most ${MOST_MESSAGES} entries`);
  }
  const names = new Set<string>();
  messages.forEach((message, i) => {
    const at = `messages[${i}].`;
    needObject(fn, `messages[${i}]`, message);
    needOwnName(fn, `${at}name`, message.name, names);
    if ('frameBits' in message) {
      needInteger(fn, `${at}frameBits`, message.frameBits, SPACE_BITS + 1);
      needMoreThan(fn, `${at}frameBits`, message.frameBits);
    } else needFrame(fn, at, message);
    needMoreThan(fn, `${at}periodS`, message.periodS, 0, 'a period of 20 ms is 0.02');
  });
}

/** Most bits of a message's frame, its space included. */
export function mostWithSpace(message: CanMessage): number {
  return 'frameBits' in message ? message.frameBits : bitsOf(message).mostBits + SPACE_BITS;
}
