import { InputError } from '../error/index.js';
import { needInteger } from '../error/guard.js';

/** Identifier of a classical CAN frame: 11 bits (base format) or 29 (extended). */
export type CanIdBits = 11 | 29;

/** A data frame of classical CAN by its identifier and its bytes. */
export interface CanFrameShape {
  readonly idBits: CanIdBits;
  /** Bytes of data, 0 to 8. */
  readonly dataByteCount: number;
}

/** Bits between two frames. */
export const SPACE_BITS = 3;
/** CRC delimiter, two bits of acknowledgement, seven of the end: never stuffed. */
const TAIL_BITS = 10;
/** Start, identifier, control and checksum without data: stuffed. */
const HEAD_BITS: Readonly<Record<CanIdBits, number>> = { 11: 34, 29: 54 };

/** Refuses what is no classical data frame. `at` is the place in a list, such as `messages[2].`. */
export function needFrame(fn: string, at: string, frame: CanFrameShape): void {
  const { idBits, dataByteCount } = frame;
  if (idBits !== 11 && idBits !== 29) {
    const rule = idBits === undefined || idBits === null ? 'missing' : 'oneOf';
    throw new InputError(fn, `${at}idBits`, rule, idBits, 'must be 11 or 29');
  }
  needInteger(fn, `${at}dataByteCount`, dataByteCount);
  if (dataByteCount > 8) {
    const hint = 'a classical frame holds 8; CAN FD is not covered';
    throw new InputError(fn, `${at}dataByteCount`, 'atMost', dataByteCount, 'must be at most 8', hint);
  }
}

/** Bits of a frame without space: as they are, and with the most stuff bits that can occur. */
export function bitsOf({ idBits, dataByteCount }: CanFrameShape): {
  readonly stuffableBits: number;
  readonly stuffBits: number;
  readonly leastBits: number;
  readonly mostBits: number;
} {
  const stuffableBits = HEAD_BITS[idBits] + 8 * dataByteCount;
  const stuffBits = Math.floor((stuffableBits - 1) / 4);
  const leastBits = stuffableBits + TAIL_BITS;
  return { stuffableBits, stuffBits, leastBits, mostBits: leastBits + stuffBits };
}
