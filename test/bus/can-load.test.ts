import { describe, expect, it } from 'vitest';
import { canLoad, type CanLoadInput, type CanMessage } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { BENCHMARK } from './message-sets.js';

const message = (name: string, dataByteCount: number, periodS: number): CanMessage => ({
  name,
  idBits: 11,
  dataByteCount,
  periodS,
});
const base: CanLoadInput = {
  bitRateBitPerS: 250_000,
  messages: [message('a', 8, 0.01), message('b', 7, 0.02), message('c', 6, 0.02), message('d', 5, 0.05)],
  stuffing: 'most',
  interframe: 'left-out',
  allowedFraction: 0.5,
};

describe('published', () => {
  const broster = {
    source: 'broster-2002',
    place: 'loads at 250 kbit/s, frames without space',
    status: 'published',
  } as const;
  const shares = canLoad(base).messages;
  computed('8 bytes every 10 ms', broster, () => expectPrinted(shares[0]!.loadFraction, '0.0528'));
  computed('7 bytes every 20 ms', broster, () => expectPrinted(shares[1]!.loadFraction, '0.0244'));
  computed('6 bytes every 20 ms', broster, () => expectPrinted(shares[2]!.loadFraction, '0.0224'));
  computed('5 bytes every 50 ms', broster, () => expectPrinted(shares[3]!.loadFraction, '0.00816'));

  const set = { source: 'sae-message-set', place: 'load of the 17 messages', status: 'memory' } as const;
  const derived = {
    source: 'sae-message-set',
    place: 'load of the 17 messages, worked out',
    status: 'derived',
  } as const;
  const loadAt = (bitRateBitPerS: number): number =>
    canLoad({ ...base, bitRateBitPerS, messages: BENCHMARK, interframe: 'counted', allowedFraction: 1 }).loadFraction;
  computed('17 messages at 125 kbit/s', set, () => expectPrinted(loadAt(125_000), '0.8673'));
  computed('at 250 kbit/s', derived, () => expectPrinted(loadAt(250_000), '0.4337'));
  computed('at 500 kbit/s', derived, () => expectPrinted(loadAt(500_000), '0.2168'));
  computed('at 1 Mbit/s', derived, () => expectPrinted(loadAt(1_000_000), '0.1084'));
  const davis = { source: 'davis-2007', place: 'table 2, load', status: 'memory' } as const;
  computed('three messages of 1 ms', davis, () => {
    const messages = [message('A', 7, 0.0025), message('B', 7, 0.0035), message('C', 7, 0.0035)];
    const { loadFraction } = canLoad({ ...base, bitRateBitPerS: 125_000, messages, interframe: 'counted' });
    expectPrinted(100 * loadFraction, '97.1');
  });
});

describe('independent', () => {
  it('a naive sum of frame times over periods', () => {
    const bits = (bytes: number): number => 47 + 8 * bytes + Math.floor((34 + 8 * bytes - 1) / 4) - 3;
    const sum = bits(8) / 2500 + bits(7) / 5000 + bits(6) / 5000 + bits(5) / 12_500;
    expectWithin(canLoad(base).loadFraction, sum, 1e-14);
  });
});

describe('laws', () => {
  it('twice the bit rate, half the load', () => {
    const twice = canLoad({ ...base, bitRateBitPerS: 500_000 });
    expectWithin(2 * twice.loadFraction, canLoad(base).loadFraction, 1e-14);
  });
  it('the spaces add 3 bits a frame, the stuff bits a quarter', () => {
    const counted = canLoad({ ...base, interframe: 'counted' });
    expect(counted.messages.map(({ frameBits }, i) => frameBits - canLoad(base).messages[i]!.frameBits)).toEqual([
      3, 3, 3, 3,
    ]);
    expect(canLoad({ ...base, stuffing: 'none' }).messages[0]!.frameBits).toBe(108);
  });
  it('bits that are given stay as they are', () => {
    const messages = [{ name: 'a', frameBits: 130, periodS: 0.01 }];
    expect(canLoad({ ...base, messages, stuffing: 'none', interframe: 'counted' }).messages[0]!.frameBits).toBe(130);
  });
  it('says how it counted', () => {
    expect(canLoad(base).convention).toBe('most stuff bits, space left out');
    expect(canLoad({ ...base, stuffing: 'none', interframe: 'counted' }).convention).toBe(
      'no stuff bits, space counted',
    );
  });
});

describe('edges', () => {
  it('judges against what is allowed, at the limit too', () => {
    const { loadFraction } = canLoad(base);
    expect(canLoad({ ...base, allowedFraction: loadFraction }).checks[0]!.ok).toBe(true);
    expect(canLoad({ ...base, allowedFraction: loadFraction * 0.999 }).checks[0]!.ok).toBe(false);
  });
  it('refuses nonsense by its place', () => {
    expectInputError(() => canLoad({ ...base, messages: [] }), 'messages');
    expectInputError(() => canLoad({ ...base, messages: [message('a', 8, 0)] }), 'messages[0].periodS');
    expectInputError(
      () => canLoad({ ...base, messages: [message('a', 8, 1), message('a', 8, 1)] }),
      'messages[1].name',
    );
    expectInputError(() => canLoad({ ...base, allowedFraction: 50 }), 'allowedFraction');
    expectInputError(() => canLoad({ ...base, stuffing: 'some' as 'most' }), 'stuffing', 'oneOf');
    expectInputError(
      () => canLoad({ ...base, messages: [{ name: 'a', frameBits: 3, periodS: 1 }] }),
      'messages[0].frameBits',
    );
  });
});
