import { needMoreThan } from '../error/bounded.js';
import { needInput } from '../error/guard.js';
import { bitsOf, type CanFrameShape, needFrame, SPACE_BITS } from './frame-shape.js';

export interface CanFrameBitsInput extends CanFrameShape {
  /** Bit rate in bit/s, above 0. */
  readonly bitRateBitPerS: number;
}

export interface CanFrameBitsResult {
  /** Bits from the start to the checksum: those that stuffing may lengthen. */
  readonly stuffableBits: number;
  /** Most stuff bits among them. */
  readonly stuffBits: number;
  /** Frame without any stuff bit, and with the most of them; without the space after it. */
  readonly leastBits: number;
  readonly mostBits: number;
  /** The same with the 3 bits of space that keep the line busy after it. */
  readonly leastWithSpaceBits: number;
  readonly mostWithSpaceBits: number;
  /** Times on the line, without space and with it, in s. */
  readonly leastS: number;
  readonly mostS: number;
  readonly mostWithSpaceS: number;
}

/**
 * How many bits a CAN data frame takes, and how long it holds the line.
 *
 * For classical CAN with 11 or 29 bits of identifier. After five alike bits the sender puts in one of the other kind,
 * so the length depends on what is sent: the least has no such bit, the most has one after the first five and then
 * after every four. Frames of 0 to 3 bytes with an 11-bit identifier always have at least one, for five noughts stand
 * in their control bits; the least is a bound there. Not for CAN FD, remote frames or error frames.
 *
 * $$n_\mathrm{most} = g + 8 s + 10 + \left\lfloor\frac{g + 8 s - 1}{4}\right\rfloor, \quad g = 34\ (11\ \mathrm{bit}),\ 54\ (29\ \mathrm{bit})$$
 *
 * @param input identifier, bytes of data and bit rate
 * @returns bits and s, least and most, without and with the 3 bits of space
 * @throws InputError when a field is missing or out of range
 * @source can-frame-bits: 55 + 10 s and 80 + 10 s with space, most
 * @example canFrameBits({ idBits: 11, dataByteCount: 8, bitRateBitPerS: 500000 }).mostWithSpaceBits //=> 135
 */
export function canFrameBits(input: CanFrameBitsInput): CanFrameBitsResult {
  const fn = 'canFrameBits';
  needInput(fn, input);
  needFrame(fn, '', input);
  needMoreThan(fn, 'bitRateBitPerS', input.bitRateBitPerS);
  const rate = input.bitRateBitPerS;
  const { stuffableBits, stuffBits, leastBits, mostBits } = bitsOf(input);
  return {
    stuffableBits,
    stuffBits,
    leastBits,
    mostBits,
    leastWithSpaceBits: leastBits + SPACE_BITS,
    mostWithSpaceBits: mostBits + SPACE_BITS,
    leastS: leastBits / rate,
    mostS: mostBits / rate,
    mostWithSpaceS: (mostBits + SPACE_BITS) / rate,
  };
}
