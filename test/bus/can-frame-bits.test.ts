import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { canFrameBits, type CanFrameBitsInput, type CanIdBits } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectPrinted } from '../support/published.js';

const base: CanFrameBitsInput = { idBits: 11, dataByteCount: 8, bitRateBitPerS: 500_000 };

describe('published', () => {
  const base11 = { source: 'can-frame-bits', place: '55 + 10 s bits with space', status: 'published' } as const;
  const ext = { source: 'can-frame-bits', place: '80 + 10 s bits with space', status: 'memory' } as const;
  const bare = { source: 'can-frame-bits', place: 'the same less 3 bits of space', status: 'derived' } as const;
  const times = { source: 'can-frame-bits', place: 'bits over the bit rate', status: 'derived' } as const;
  // Bytes; bits of 11 and 29 with space, of 11 without; µs at 500 and 125 kbit/s.
  const rows = [
    [0, '55', '80', '52', '110', '440'],
    [1, '65', '90', '62', '130', '520'],
    [2, '75', '100', '72', '150', '600'],
    [3, '85', '110', '82', '170', '680'],
    [4, '95', '120', '92', '190', '760'],
    [5, '105', '130', '102', '210', '840'],
    [6, '115', '140', '112', '230', '920'],
    [7, '125', '150', '122', '250', '1000'],
    [8, '135', '160', '132', '270', '1080'],
  ] as const;
  for (const [dataByteCount, bits11, bits29, bare11, us500, us125] of rows) {
    const of = (idBits: CanIdBits, bitRateBitPerS: number) => canFrameBits({ idBits, dataByteCount, bitRateBitPerS });
    computed(`${dataByteCount} bytes, 11 bit`, base11, () => expectPrinted(of(11, 500_000).mostWithSpaceBits, bits11));
    computed(`${dataByteCount} bytes, 29 bit`, ext, () => expectPrinted(of(29, 500_000).mostWithSpaceBits, bits29));
    computed(`${dataByteCount} bytes, 11 bit without space`, bare, () =>
      expectPrinted(of(11, 500_000).mostBits, bare11),
    );
    computed(`${dataByteCount} bytes at 500 kbit/s, µs`, times, () =>
      expectPrinted(of(11, 500_000).mostWithSpaceS * 1e6, us500),
    );
    computed(`${dataByteCount} bytes at 125 kbit/s, µs`, times, () =>
      expectPrinted(of(11, 125_000).mostWithSpaceS * 1e6, us125),
    );
  }
});

/** Puts in a bit of the other kind after five alike, as a sender does, and counts what was put in. */
function stuffed(bits: readonly number[]): number {
  let run = 0;
  let last = -1;
  let count = 0;
  for (const bit of bits) {
    run = bit === last ? run + 1 : 1;
    last = bit;
    if (run === 5) {
      count++;
      last = 1 - bit;
      run = 1;
    }
  }
  return count;
}

describe('independent', () => {
  const stuffableOf = (idBits: CanIdBits, dataByteCount: number) =>
    canFrameBits({ idBits, dataByteCount, bitRateBitPerS: 1 }).stuffableBits;

  it('the most is reached by five of one kind and then four of the other and so on', () => {
    for (const idBits of [11, 29] as const) {
      for (let bytes = 0; bytes <= 8; bytes++) {
        const { stuffBits, stuffableBits } = canFrameBits({ idBits, dataByteCount: bytes, bitRateBitPerS: 1 });
        const worst = Array.from({ length: stuffableBits }, (_, i) => (i < 5 ? 0 : 1 - (Math.floor((i - 5) / 4) % 2)));
        expect(stuffed(worst)).toBe(stuffBits);
      }
    }
  });

  it('no string of bits has more stuff bits than the most', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(11, 29),
        fc.integer({ min: 0, max: 8 }),
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 30, maxLength: 130 }),
        (idBits, bytes, runs) => {
          const bits = runs.flatMap((length, i) => Array.from({ length }, () => i % 2));
          const length = stuffableOf(idBits, bytes);
          while (bits.length < length) bits.push(...bits);
          const { stuffBits } = canFrameBits({
            idBits: idBits,
            dataByteCount: bytes,
            bitRateBitPerS: 1,
          });
          expect(stuffed(bits.slice(0, length))).toBeLessThanOrEqual(stuffBits);
        },
      ),
    );
  });

  it('the bits that no stuffing lengthens are counted one by one', () => {
    // Start, identifier (29: 11 + 18), substitute bits, remote, control, length, checksum; then delimiter, 2 of
    // acknowledgement, 7 of the end.
    const head11 = 1 + 11 + 1 + 2 + 4 + 15;
    const head29 = 1 + 11 + 2 + 18 + 1 + 2 + 4 + 15;
    for (let bytes = 0; bytes <= 8; bytes++) {
      expect(canFrameBits({ ...base, dataByteCount: bytes }).leastBits).toBe(head11 + 8 * bytes + 1 + 2 + 7);
      expect(canFrameBits({ ...base, idBits: 29, dataByteCount: bytes }).leastBits).toBe(
        head29 + 8 * bytes + 1 + 2 + 7,
      );
    }
  });
});

describe('laws', () => {
  it('time goes with one over the bit rate', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e3, max: 1e6, noNaN: true }), (rate) => {
        const { mostS, mostBits } = canFrameBits({ ...base, bitRateBitPerS: rate });
        expect(mostS * rate).toBeCloseTo(mostBits, 9);
      }),
    );
  });
  it('the identifier of 29 bits takes 25 bits more at most', () => {
    for (let bytes = 0; bytes <= 8; bytes++) {
      const frame = { ...base, dataByteCount: bytes };
      expect(canFrameBits({ ...frame, idBits: 29 }).mostBits - canFrameBits(frame).mostBits).toBe(25);
    }
  });
});

describe('edges', () => {
  it('refuses what is no classical frame', () => {
    expectInputError(() => canFrameBits({ ...base, idBits: 12 as CanIdBits }), 'idBits', 'oneOf');
    expectInputError(() => canFrameBits({ ...base, dataByteCount: 9 }), 'dataByteCount', 'atMost');
    expectInputError(() => canFrameBits({ ...base, dataByteCount: 1.5 }), 'dataByteCount');
    expectInputError(() => canFrameBits({ ...base, bitRateBitPerS: 0 }), 'bitRateBitPerS');
  });
  it('refuses nonsense', () => refusesNonsense(canFrameBits, base, { required: ['dataByteCount', 'bitRateBitPerS'] }));
});
