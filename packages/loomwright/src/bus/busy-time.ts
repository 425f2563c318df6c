// The corrected analysis on whole bits: what one priority level waits, in bit times. Periods and jitter may be broken
// numbers of bits; what is within rounding of a whole one is taken as that, so that no frame is counted twice.

/** One message in bit times. */
export interface LevelMessage {
  /** Frame with its space. */
  readonly frameBits: number;
  readonly periodBits: number;
  readonly jitterBits: number;
}

/** What one level comes to, in bit times. */
export interface LevelTime {
  readonly busyBits: number;
  readonly instanceCount: number;
  /** Response of the first instance of the busy time, the worst one, and which that is (from 1). */
  readonly firstBits: number;
  readonly worstBits: number;
  readonly worstNumber: number;
}

/** How much may still be computed, as its one number: looks at one message each. */
export type Budget = Float64Array;

/** Takes so many looks; false where they are used up. */
function take(budget: Budget, looks: number): boolean {
  budget[0] = (budget[0] as number) - looks;
  return budget[0] >= 0;
}

/** Bits of a time; a whole number where it is within rounding of one. */
export function inBits(timeS: number, bitRateBitPerS: number): number {
  const bits = timeS * bitRateBitPerS;
  const whole = Math.round(bits);
  return Math.abs(bits - whole) <= 1e-9 * whole ? whole : bits;
}

/** Frames of all messages up to `count` that come within a time, in bits. */
function demand(messages: readonly LevelMessage[], count: number, bits: number): number {
  let sum = 0;
  for (let k = 0; k < count; k++) {
    const { frameBits, periodBits, jitterBits } = messages[k] as LevelMessage;
    sum += Math.ceil((bits + jitterBits) / periodBits) * frameBits;
  }
  return sum;
}

/**
 * The times of the message at `level` (0 the highest), or null where the budget runs out. The load of this level and
 * those above it is below 1, so the busy time ends; each turn of a loop adds at least one frame to it.
 *
 * @param ownBits bits of the last own frame that count into its response
 * @param fixedBits what goes before all: blocking by one lower frame, and faults
 */
export function levelTime(
  messages: readonly LevelMessage[],
  level: number,
  ownBits: number,
  fixedBits: number,
  budget: Budget,
): LevelTime | null {
  const own = messages[level] as LevelMessage;
  let busyBits = own.frameBits;
  for (;;) {
    if (!take(budget, level + 1)) return null;
    const next = fixedBits + demand(messages, level + 1, busyBits);
    if (next <= busyBits) break;
    busyBits = next;
  }
  const instanceCount = Math.ceil((busyBits + own.jitterBits) / own.periodBits);
  let firstBits = 0;
  let worstBits = 0;
  let worstNumber = 1;
  let waitBits = fixedBits;
  for (let q = 0; q < instanceCount; q++) {
    for (;;) {
      if (!take(budget, level + 1)) return null;
      const next = fixedBits + q * own.frameBits + demand(messages, level, waitBits + 1);
      if (next <= waitBits) break;
      waitBits = next;
    }
    const responseBits = own.jitterBits + waitBits - q * own.periodBits + ownBits;
    if (q === 0) firstBits = responseBits;
    if (responseBits > worstBits) {
      worstBits = responseBits;
      worstNumber = q + 1;
    }
    waitBits += own.frameBits;
  }
  return { busyBits, instanceCount, firstBits, worstBits, worstNumber };
}
