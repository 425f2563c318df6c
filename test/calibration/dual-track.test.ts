import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  type AgreementRow,
  dualTrack,
  type DualTrackInput,
  type DualTrackResult,
  type PedalFault,
  type PedalTrack,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenly, swapsMatter } from '../support/law.js';
import { anyPedal, circuitOf, naivePins, netlistOf } from '../support/pedal.js';
import { type Citation, computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const track = (releasedV: number, pressedV: number, over: object = {}): PedalTrack => ({
  kind: 'potentiometer',
  resistanceOhm: 2000,
  seriesOhm: 100,
  releasedV,
  pressedV,
  toleranceV: 0,
  pullUpOhm: null,
  pullDownOhm: 10_000,
  inputOhm: null,
  pullToleranceFraction: 0,
  converterErrorV: 0,
  lowLimitV: 0.2,
  highLimitV: 4.8,
  ...over,
});
const bare = { pullDownOhm: null, lowLimitV: 0, highLimitV: 5 };
const half: DualTrackInput = {
  supplyV: 5,
  supplyToleranceFraction: 0,
  wiring: 'own',
  first: track(0.8, 4),
  second: track(0.4, 2),
  ratio: 0.5,
  offsetV: 0,
  band: { by: 'volts', bandV: 0.19 },
  shows: 'first',
  disagreeS: 0.3,
  rangeS: 0.1,
  sampleS: 0,
  batteryV: 14.4,
  sagSupplyV: 4.5,
  raisedGroundV: 0.5,
  guardV: 0,
  allowedErrorFraction: 0.02,
};
const mirrored: DualTrackInput = { ...half, second: track(4.2, 1), ratio: -1, offsetV: 5 };
const faultOf = (result: DualTrackResult, kind: PedalFault['kind'], at: PedalFault['at']): PedalFault =>
  result.faults.find((fault) => fault.kind === kind && fault.at === at)!;
const fault = (input: DualTrackInput, kind: PedalFault['kind'], at: PedalFault['at']): PedalFault =>
  faultOf(dualTrack(input), kind, at);

/** A pedal without pulls whose tracks go over these volts at the first input, the second at half of them. */
const halves = (fromV: number, toV: number, band: DualTrackInput['band'], over: object = {}): DualTrackInput => ({
  ...half,
  first: track(fromV, toV, bare),
  second: track(fromV / 2, toV / 2, bare),
  band,
  ...over,
});
/** Whether the second input, pressed, is called wrong when its supply alone falls so far that it is off by so much. */
const trips = (input: DualTrackInput, offV: number): boolean => {
  const pressedV = input.second.pressedV;
  const { readings } = fault({ ...input, sagSupplyV: 5 * (1 - offV / pressedV) }, 'supply-sags', 'second');
  expectWithin(readings[20]!.secondV!, pressedV - offV, 1e-9);
  return readings[20]!.seenBy === 'disagree';
};

describe('published', () => {
  const place = (what: string) => ({ source: 'pedal-service-texts', place: what, status: 'published' }) as const;
  // Worked by hand from what the source prints, which does not print the result.
  const ours = (cite: Citation): Citation => ({ ...cite, status: 'derived' });
  const whole = dualTrack(halves(0, 5, { by: 'volts', bandV: 0.19 }));
  const two = place('2021, track 2 is half of track 1: 0 to 5 V and 0 to 2.5 V');
  computed('the ratio is a half', two, () => expectPrinted(whole.fitRatio, '0.50'));
  it('it needs no offset', () => expectPrinted(whole.fitOffsetV, '0.00'));
  it('without pulls both tracks give the volts that were put in', () => {
    expectPrinted(whole.first.pressedV, '5.0');
    expectPrinted(whole.second.pressedV, '2.5');
  });
  it('a healthy pedal of it is in the middle of the band', () => expectPrinted(whole.roomV, '0.19'));

  const early = place('a trouble code: |V1/2 − V2| more than 0.094 to 0.134 V for 0.24 s');
  for (const print of ['0.094', '0.134']) {
    const input = halves(0.5, 4.6, { by: 'volts', bandV: Number(print) }, { disagreeS: 0.24 });
    computed(`a band of ${print} V: a millivolt less is left alone`, early, () =>
      expect(trips(input, Number(print) - 0.001)).toBe(false),
    );
    computed(`a band of ${print} V: a millivolt more is seen`, early, () =>
      expect(trips(input, Number(print) + 0.001)).toBe(true),
    );
    it(`a band of ${print} V is so wide everywhere`, () => expectPrinted(dualTrack(input).narrowestBandV, print));
  }
  it('seen after the 0.24 s that were put in', () =>
    expectPrinted(
      fault(halves(0.5, 4.6, { by: 'volts', bandV: 0.1 }, { disagreeS: 0.24 }), 'supply-sags', 'second').detectS!,
      '0.24',
    ));

  const rows = (
    low: readonly [number, number, number],
    high: readonly [number, number, number],
  ): readonly AgreementRow[] =>
    [low, high].map(([firstV, lowestSecondV, highestSecondV]) => ({ firstV, lowestSecondV, highestSecondV }));
  const y2009 = place('2009: V2 outside 0 to 0.37 V at V1 0.37 V, outside 2.31 to 2.69 V at V1 5 V, for 0.3 s');
  const as2009 = halves(0.37, 5, { by: 'rows', rows: rows([0.37, 0, 0.37], [5, 2.31, 2.69]) });
  const r2009 = dualTrack(as2009);
  for (const [name, at, v2, band, low, high] of [
    ['0.37 V', 0, '0.185', 0.185, '0.00', '0.37'],
    ['5 V', 20, '2.500', 0.19, '2.31', '2.69'],
  ] as const) {
    const by = dualTrack(halves(0.37, 5, { by: 'volts', bandV: band })).healthy[at]!;
    it(`at ${name} track 2 is the middle of the row`, () => expectPrinted(r2009.healthy[at]!.secondV, v2));
    computed(`at ${name} the lowest is V1/2 − ${band} V`, y2009, () => expectPrinted(by.lowestSecondV, low));
    computed(`at ${name} the highest is V1/2 + ${band} V`, y2009, () => expectPrinted(by.highestSecondV, high));
  }
  computed('half of the rows: 0.185 V', ours(y2009), () => expectPrinted(r2009.narrowestBandV, '0.185'));
  computed('to 0.19 V', ours(y2009), () => expectPrinted(r2009.widestBandV, '0.19'));
  computed('2.311 V at 5 V is left alone', y2009, () => expect(trips(as2009, 2.5 - 2.311)).toBe(false));
  computed('2.309 V is seen', y2009, () => expect(trips(as2009, 2.5 - 2.309)).toBe(true));
  computed('above 2.69 V is seen: a second track that ends at 2.691 V', y2009, () => {
    const high = dualTrack({ ...as2009, second: track(0.185, 2.691, bare) });
    expect(high.healthy[20]!.seenBy).toBe('disagree');
    expect(dualTrack({ ...as2009, second: track(0.185, 2.689, bare) }).healthy[20]!.seenBy).toBeNull();
  });
  it('seen after the 0.3 s that were put in', () =>
    expectPrinted(fault(as2009, 'supply-sags', 'second').detectS!, '0.3'));

  const y2008 = place('2008: V2 outside 0 to 0.361 V at V1 0.361 V, outside 2.319 to 2.681 V at V1 4.995 V, for 0.3 s');
  const as2008 = halves(0.361, 4.995, { by: 'rows', rows: rows([0.361, 0, 0.361], [4.995, 2.319, 2.681]) });
  computed('half of the first row: V1/2', ours(y2008), () => expectPrinted(dualTrack(as2008).narrowestBandV, '0.1805'));
  computed('half of the second: 0.181 V', ours(y2008), () => expectPrinted(dualTrack(as2008).widestBandV, '0.181'));
  computed('V1/2 at 4.995 V lies 0.1785 V above the lowest', ours(y2008), () =>
    expectPrinted(dualTrack(as2008).roomV, '0.1785'),
  );
  computed('2.320 V at 4.995 V is left alone', y2008, () => expect(trips(as2008, 2.4975 - 2.32)).toBe(false));
  computed('2.318 V is seen', y2008, () => expect(trips(as2008, 2.4975 - 2.318)).toBe(true));

  const by018 = place('2008, a variant: beyond ±0.18 V for 0.3 s');
  const as018 = halves(0.5, 4.6, { by: 'volts', bandV: 0.18 });
  computed('0.179 V off is left alone', by018, () => expect(trips(as018, 0.179)).toBe(false));
  computed('0.181 V off is seen', by018, () => expect(trips(as018, 0.181)).toBe(true));

  const angle = place('2021: more than 2 degrees apart for 110 ms');
  for (const [travelDeg, pressedV, share, first, second] of [
    [20, 4.5, '0.100', '0.40', '0.20'],
    [16, 4.5, '0.125', '0.50', '0.25'],
    [16, 3.7, '0.125', '0.40', '0.20'],
  ] as const) {
    const input = halves(0.5, pressedV, { by: 'angle', bandDeg: 2, travelDeg }, { disagreeS: 0.11 });
    const result = dualTrack(input);
    computed(`2° of ${travelDeg}° is ${share} of the travel`, ours(angle), () =>
      expectPrinted(result.widestBandFraction, share),
    );
    computed(`that is ${second} V of track 2, ${first} V of track 1, from 0.5 to ${pressedV} V`, ours(angle), () => {
      expectPrinted(result.narrowestBandV, second);
      expectPrinted(result.widestBandFraction * (result.first.pressedV - result.first.releasedV), first);
    });
    computed(`1.99° of ${travelDeg}° is left alone, 2.01° seen`, angle, () => {
      const perDeg = (pressedV - 0.5) / 2 / travelDeg;
      expect(trips(input, 1.99 * perDeg)).toBe(false);
      expect(trips(input, 2.01 * perDeg)).toBe(true);
    });
  }
  it('seen after the 110 ms that were put in', () =>
    expectPrinted(
      fault(
        halves(0.5, 4.5, { by: 'angle', bandDeg: 2, travelDeg: 16 }, { disagreeS: 0.11, sagSupplyV: 3 }),
        'supply-sags',
        'second',
      ).detectS! * 1000,
      '110',
    ));
  it('and after the 116 ms of a variant', () =>
    expectPrinted(fault({ ...half, disagreeS: 0.116, sagSupplyV: 3 }, 'supply-sags', 'second').detectS! * 1000, '116'));

  const range = place('2006: 0.2 to 5 V usable on both outputs');
  const wide = { lowLimitV: 0.2, highLimitV: 5 };
  const usable = dualTrack({ ...half, first: track(0.8, 4, wide), second: track(0.4, 2, wide) });
  for (const at of ['first', 'second'] as const) {
    for (const [kind, sight] of [
      ['signal-open', `${at}-low`],
      ['signal-to-ground', `${at}-low`],
      ['signal-to-battery', `${at}-high`],
      ['signal-to-supply', 'disagree'],
    ] as const) {
      computed(`${kind} of the ${at} track: by ${sight}`, ours(range), () => {
        const found = faultOf(usable, kind, at);
        expect(found.readings.map(({ seenBy }) => seenBy)).toEqual(Array.from({ length: 21 }, () => sight));
        expect(found).toMatchObject({ seen: 'always', unseen: [], seenFraction: 1 });
      });
    }
  }

  const hand = { source: 'circuit-theory', place: 'worked by hand', status: 'derived' } as const;
  const middle = (input: DualTrackInput, kind: PedalFault['kind'], at: PedalFault['at']) =>
    fault(input, kind, at).readings[10]!;
  const two5 = { ...half, first: track(0.5, 4.5), second: track(0.25, 2.25) };
  computed('2 kΩ half way behind 100 Ω into 10 kΩ: 2.3585 V', hand, () =>
    expectPrinted(dualTrack(two5).healthy[10]!.firstV, '2.3585'),
  );
  const up = { pullDownOhm: null, pullUpOhm: 10_000 };
  computed('10 kΩ up and 100 kΩ of the input: an open signal at 4.5455 V', hand, () => {
    const input = { ...two5, first: track(0.5, 4.5, { ...up, inputOhm: 100_000 }) };
    expectPrinted(middle(input, 'signal-open', 'first').firstV!, '4.5455');
  });
  computed('supply open, 10 kΩ up through 1.1 kΩ to ground: 0.4955 V', hand, () =>
    expectPrinted(middle({ ...two5, first: track(0.5, 4.5, up) }, 'supply-open', 'first').firstV!, '0.4955'),
  );
  computed('ground open, 10 kΩ down through 1.1 kΩ from the supply: 4.5045 V', hand, () =>
    expectPrinted(middle(two5, 'ground-open', 'first').firstV!, '4.5045'),
  );
  computed('signals together, one half way, one at a quarter: 1.7116 V', hand, () => {
    const { firstV, secondV } = middle(two5, 'signals-together', 'both');
    expectPrinted(firstV!, '1.7116');
    expect(secondV).toBe(firstV);
  });
  const sharedGround = middle({ ...two5, wiring: 'shared' }, 'ground-open', 'both');
  computed('shared ground open, five nodes: 4.4570 V', hand, () => expectPrinted(sharedGround.firstV!, '4.4570'));
  computed('and 4.3786 V', hand, () => expectPrinted(sharedGround.secondV!, '4.3786'));
  computed('equal tracks mirrored and joined: half of the supply at any travel', hand, () => {
    const none = { pullDownOhm: null };
    const joined = fault(
      { ...mirrored, first: track(0.8, 4.2, none), second: track(4.2, 0.8, none) },
      'signals-together',
      'both',
    );
    for (const { firstV, shownFraction } of joined.readings) {
      expectPrinted(firstV!, '2.5000');
      expectPrinted(shownFraction, '0.5000');
    }
    expect(joined).toMatchObject({ seen: 'never', dangerous: true, detectS: null });
    expectPrinted(joined.mostOverFraction, '0.5000');
  });
  computed('a floating input in a band of 0.1 V at half slope over 3.2 V: 6.25 % either way', hand, () => {
    const none = { pullDownOhm: null };
    const input = {
      ...half,
      first: track(0.8, 4, none),
      second: track(0.4, 2, none),
      band: { by: 'volts', bandV: 0.1 } as const,
    };
    const open = fault(input, 'signal-open', 'first');
    expect(open).toMatchObject({ floats: true, seen: 'never', dangerous: true, detectS: null });
    expectPrinted(100 * open.mostOverFraction, '6.25');
    expectPrinted(100 * open.mostUnderFraction, '6.25');
  });
});

const CAUSES = (result: DualTrackResult) => result.faults.map(({ kind, at }) => ({ kind, at }));

/** What the definition of a fault says of two inputs, told anew: whether the controller takes them for good. */
function accepted(
  input: DualTrackInput,
  result: DualTrackResult,
  pins: readonly [number | null, number | null],
): boolean {
  const [v1, v2] = pins;
  const { first, second, band, ratio, offsetV } = input;
  if (v1 !== null && (v1 < first.lowLimitV || v1 > first.highLimitV)) return false;
  if (v2 !== null && (v2 < second.lowLimitV || v2 > second.highLimitV)) return false;
  const agree = (a: number, b: number): boolean => {
    if (band.by === 'volts') return Math.abs(b - ratio * a - offsetV) <= band.bandV;
    if (band.by === 'travel') {
      const t1 = (a - result.first.releasedV) / (result.first.pressedV - result.first.releasedV);
      const t2 = (b - result.second.releasedV) / (result.second.pressedV - result.second.releasedV);
      return Math.abs(t1 - t2) <= band.bandFraction;
    }
    if (band.by !== 'rows') throw new Error('no angle here');
    const list = band.rows;
    const i = Math.max(
      1,
      list.findIndex((row) => row.firstV >= a),
    );
    const [from, to] = a >= list.at(-1)!.firstV ? [list.at(-1)!, list.at(-1)!] : [list[i - 1]!, list[i]!];
    const share = to === from ? 0 : Math.min(1, Math.max(0, (a - from.firstV) / (to.firstV - from.firstV)));
    const mix = (x: number, y: number): number => x + (y - x) * share;
    return b >= mix(from.lowestSecondV, to.lowestSecondV) && b <= mix(from.highestSecondV, to.highestSecondV);
  };
  if (v1 !== null && v2 !== null) return agree(v1, v2);
  // A floating input is tried at a thousand volts of its range: it is good where one of them is.
  const tries = (low: number, high: number): number[] =>
    Array.from({ length: 1001 }, (_, i) => low + ((high - low) * i) / 1000);
  if (v1 !== null) return tries(second.lowLimitV, second.highLimitV).some((b) => agree(v1, b));
  if (v2 !== null) return tries(first.lowLimitV, first.highLimitV).some((a) => agree(a, v2));
  return true;
}

describe('independent', () => {
  it('a circuit simulator gives the same volts for every fault of sixty pedals', async () => {
    let compared = 0;
    for (const [p, input] of fc.sample(anyPedal, { numRuns: 60, seed: 684 }).entries()) {
      const result = dualTrack(input);
      const step = (7 * p) % 21;
      const causes = CAUSES(result);
      const circuits = [null, ...causes].map((cause) => circuitOf(input, cause, step / 20));
      const lines = circuits.flatMap((circuit, k) => netlistOf(circuit, `x${k}`));
      const v = await simulate(['.options gmin=1e-15 reltol=1e-9 vntol=1e-10', ...lines, '.op'].join('\n'));
      [result.healthy, ...result.faults.map(({ readings }) => readings)].forEach((readings, k) => {
        const together = k > 0 && causes[k - 1]!.kind === 'signals-together';
        const { firstV, secondV } = readings[step]!;
        for (const [ours, node] of [
          [firstV, 'p1'],
          [secondV, together ? 'p1' : 'p2'],
        ] as const) {
          const theirs = v[`v(${node}x${k})`]?.[0];
          if (ours === null) expect(theirs, `${p} ${k} ${node} floats`).toBeUndefined();
          else expect(Math.abs(ours - theirs!), `${p} ${k} ${node}`).toBeLessThan(1e-6);
          compared++;
        }
      });
    }
    expect(compared).toBeGreaterThan(1500);
  }, 60_000);

  /** Places where the answer and a plain solver do not agree on whether a fault is seen, and how many are unseen. */
  const scan = (input: DualTrackInput, placeCount: number, of: (found: PedalFault) => boolean) => {
    const result = dualTrack(input);
    const wrong: string[] = [];
    let unseen = 0;
    for (const found of result.faults.filter(of)) {
      const places = found.floats ? 501 : placeCount;
      const spans = found.unseen.map(({ fromFraction, toFraction }) => [fromFraction, toFraction] as const);
      // Ends are known to 1e-6 of the travel: a place nearer to one is not asked.
      const ends = spans.flat().filter((end) => end > 0 && end < 1);
      for (let i = 0; i < places; i++) {
        const travel = i / (places - 1);
        if (ends.some((end) => Math.abs(end - travel) < 2e-6)) continue;
        const told = spans.some(([from, to]) => travel >= from && travel <= to);
        const pins = naivePins(circuitOf(input, found, travel), found.kind === 'signals-together');
        const good = accepted(input, result, pins);
        if (good) unseen++;
        if (told !== good) wrong.push(`${found.kind} ${found.at} at ${travel}: ${pins.join(', ')}`);
      }
    }
    return { wrong, unseen };
  };
  it('a scan of 10 001 places with a plain solver finds no unseen place that the answer misses, nor one too many', () => {
    let unseen = 0;
    for (const input of fc.sample(anyPedal, { numRuns: 5, seed: 10_001 })) {
      const found = scan(input, 10_001, () => true);
      expect(found.wrong.slice(0, 5)).toEqual([]);
      unseen += found.unseen;
    }
    expect(unseen).toBeGreaterThan(10_000);
  }, 60_000);
  it('nor where a limit is only just touched, between two steps of the search', () => {
    // Two mirrored tracks joined, one with much in its wiper and the other with much in its track: their middle turns.
    const turns: DualTrackInput = {
      ...mirrored,
      first: track(0.8, 4.2, { resistanceOhm: 500, seriesOhm: 2000, pullDownOhm: null }),
      second: track(4.2, 0.8, { resistanceOhm: 10_000, seriesOhm: 10, pullDownOhm: null }),
    };
    const cause = { kind: 'signals-together', at: 'both' } as const;
    const offAt = (travel: number) => Math.abs(2 * naivePins(circuitOf(turns, cause, travel), true)[0]! - 5);
    const places = Array.from({ length: 100_001 }, (_, i) => i / 100_000);
    const inner = places.filter((x) => x > 0.22 && x < 0.49);
    const top = inner.reduce((a, b) => (offAt(b) > offAt(a) ? b : a));
    expect(top).toBeGreaterThan(0.23);
    expect(top).toBeLessThan(0.48);
    for (const share of [1 - 1e-6, 1 + 1e-6]) {
      const input = { ...turns, band: { by: 'volts', bandV: offAt(top) * share } as const };
      const found = scan(input, 10_001, ({ kind }) => kind === 'signals-together');
      expect(found.wrong.slice(0, 5)).toEqual([]);
      const { unseen } = fault(input, 'signals-together', 'both');
      const gap = unseen.find(({ toFraction }) => Math.abs(toFraction - top) < 2e-3);
      if (share < 1) expect(gap).toBeDefined();
      else expect(gap).toBeUndefined();
    }
  });
  it('the worst errors of a scan are those of the answer', () => {
    for (const input of fc.sample(anyPedal, { numRuns: 12, seed: 77 })) {
      const result = dualTrack({ ...input, shows: 'first' });
      const { releasedV, pressedV } = result.first;
      for (const found of result.faults.filter(({ floats }) => !floats)) {
        let [over, under] = [0, 0];
        for (const { fromFraction, toFraction } of found.unseen) {
          for (let i = 0; i <= 300; i++) {
            const travel = fromFraction + ((toFraction - fromFraction) * i) / 300;
            const [v1] = naivePins(circuitOf(input, found, travel), found.kind === 'signals-together');
            const shown = Math.min(1, Math.max(0, (v1! - releasedV) / (pressedV - releasedV)));
            over = Math.max(over, shown - travel);
            under = Math.max(under, travel - shown);
          }
        }
        expect(Math.abs(over - found.mostOverFraction)).toBeLessThan(2e-3);
        expect(Math.abs(under - found.mostUnderFraction)).toBeLessThan(2e-3);
      }
    }
  });

  it('no pedal within its tolerances leaves what a healthy one is said to read', () => {
    const side = evenly(-1, 1);
    const places = evenly(0, 1);
    let closest = Infinity;
    fc.assert(
      fc.property(anyPedal, places, fc.array(side, { minLength: 7, maxLength: 7 }), (input, travel, s) => {
        const result = dualTrack(input);
        const pulled = (t: PedalTrack, k: number): PedalTrack => ({
          ...t,
          pullUpOhm: t.pullUpOhm === null ? null : t.pullUpOhm * (1 + 0.05 * s[k]!),
          pullDownOhm: t.pullDownOhm === null ? null : t.pullDownOhm * (1 + 0.05 * s[k + 1]!),
        });
        const other = { ...input, first: pulled(input.first, 0), second: pulled(input.second, 2) };
        const feedV = 5 * (1 + 0.01 * s[4]!);
        const shares = ([input.first, input.second] as const).map((t, k) => {
          const nominal = t.releasedV + (t.pressedV - t.releasedV) * travel;
          return Math.min(1, Math.max(0, (nominal + t.toleranceV * s[5 + k]!) / 5));
        }) as [number, number];
        const [v1, v2] = naivePins(circuitOf(other, null, travel, feedV, shares), false) as readonly [number, number];
        for (const [v, range] of [
          [v1, result.first],
          [v2, result.second],
        ] as const) {
          expect(v).toBeGreaterThanOrEqual(range.lowestV - 1e-9);
          expect(v).toBeLessThanOrEqual(range.highestV + 1e-9);
        }
        const line =
          input.band.by === 'travel'
            ? { k: result.fitRatio, o: result.fitOffsetV }
            : { k: input.ratio, o: input.offsetV };
        const off = Math.abs(v2 - line.k * v1 - line.o);
        // A place between two of the 201 may lie a hair beyond both.
        expect(off).toBeLessThanOrEqual(result.leastBandV + 1e-4);
        closest = Math.min(closest, result.leastBandV - off);
      }),
      { numRuns: 60, seed: 5 },
    );
    expect(closest).toBeLessThan(0.05);
  });
});

describe('laws', () => {
  const spans = (found: PedalFault): number[] =>
    found.unseen.flatMap(({ fromFraction, toFraction }) => [fromFraction, toFraction]);
  const sameSpans = (a: PedalFault, b: PedalFault): void => {
    expect(a.unseen.length, `${a.kind} ${a.at}`).toBe(b.unseen.length);
    spans(a).forEach((end, i) => expect(Math.abs(end - spans(b)[i]!)).toBeLessThan(3e-6));
    expect(Math.abs(a.mostOverFraction - b.mostOverFraction)).toBeLessThan(1e-5);
    expect(Math.abs(a.mostUnderFraction - b.mostUnderFraction)).toBeLessThan(1e-5);
  };
  const byVolts = anyPedal.filter(({ band }) => band.by === 'volts');

  it('tracks that change places answer for one another', () => {
    const other = { first: 'second', second: 'first', both: 'both' } as const;
    fc.assert(
      fc.property(byVolts, fc.constantFrom('lowest' as const, 'mean' as const), (input, shows) => {
        const { ratio, offsetV, band } = input;
        const bandV = band.by === 'volts' ? band.bandV : 0;
        const there = dualTrack({ ...input, shows });
        const back = dualTrack({
          ...input,
          shows,
          first: input.second,
          second: input.first,
          ratio: 1 / ratio,
          offsetV: -offsetV / ratio,
          band: { by: 'volts', bandV: bandV / Math.abs(ratio) },
        });
        // A floating input's range is a hull of both: only what is held is the same from both sides.
        for (const found of there.faults.filter(({ floats }) => !floats))
          sameSpans(found, faultOf(back, found.kind, other[found.at]));
        expectWithin(back.leastBandV * Math.abs(ratio), there.leastBandV, 1e-9);
        expectWithin(back.fitRatio, 1 / there.fitRatio, 1e-9);
      }),
      { numRuns: 20 },
    );
  });

  it('twice the volts everywhere leaves every span where it is', () => {
    fc.assert(
      fc.property(byVolts, (input) => {
        const twice = (t: PedalTrack): PedalTrack => ({
          ...t,
          releasedV: 2 * t.releasedV,
          pressedV: 2 * t.pressedV,
          toleranceV: 2 * t.toleranceV,
          converterErrorV: 2 * t.converterErrorV,
          lowLimitV: 2 * t.lowLimitV,
          highLimitV: 2 * t.highLimitV,
        });
        const bandV = input.band.by === 'volts' ? 2 * input.band.bandV : 1;
        const there = dualTrack(input);
        const high = dualTrack({
          ...input,
          supplyV: 10,
          batteryV: 28.8,
          sagSupplyV: 2 * input.sagSupplyV,
          raisedGroundV: 2 * input.raisedGroundV,
          offsetV: 2 * input.offsetV,
          first: twice(input.first),
          second: twice(input.second),
          band: { by: 'volts', bandV },
        });
        there.faults.forEach((found, i) => sameSpans(found, high.faults[i]!));
        expectWithin(high.leastBandV, 2 * there.leastBandV, 1e-9);
        expectWithin(high.leastBandFraction, there.leastBandFraction, 1e-9);
      }),
      { numRuns: 20 },
    );
  });

  /** Everything seen from the supply instead of from ground. */
  const upsideDown = (input: DualTrackInput): DualTrackInput => {
    const turn = (t: PedalTrack): PedalTrack => ({
      ...t,
      releasedV: 5 - t.releasedV,
      pressedV: 5 - t.pressedV,
      pullUpOhm: t.pullDownOhm,
      pullDownOhm: t.pullUpOhm,
      lowLimitV: 5 - t.highLimitV,
      highLimitV: 5 - t.lowLimitV,
    });
    return {
      ...input,
      first: turn(input.first),
      second: turn(input.second),
      offsetV: 5 - 5 * input.ratio - input.offsetV,
      sagSupplyV: 5 - input.raisedGroundV,
      raisedGroundV: 5 - input.sagSupplyV,
    };
  };
  it('upside down, ground and supply change places; twice, all is as it was', () => {
    const other: Partial<Record<PedalFault['kind'], PedalFault['kind']>> = {
      'supply-open': 'ground-open',
      'ground-open': 'supply-open',
      'signal-to-ground': 'signal-to-supply',
      'signal-to-supply': 'signal-to-ground',
      'signal-open': 'signal-open',
      'signals-together': 'signals-together',
      'supply-sags': 'ground-raised',
      'ground-raised': 'supply-sags',
    };
    const plain = byVolts.map((input): DualTrackInput => ({
      ...input,
      supplyToleranceFraction: 0,
      first: {
        ...input.first,
        inputOhm: null,
        ...(input.first.kind === 'active' ? { lostSupply: 'floats', lostGround: 'floats' } : {}),
      },
      second: {
        ...input.second,
        inputOhm: null,
        ...(input.second.kind === 'active' ? { lostSupply: 'floats', lostGround: 'floats' } : {}),
      },
    }));
    fc.assert(
      fc.property(plain, (input) => {
        const there = dualTrack(input);
        const turned = dualTrack(upsideDown(input));
        for (const found of there.faults) {
          const kind = other[found.kind];
          if (kind !== undefined) sameSpans(found, faultOf(turned, kind, found.at));
        }
        const again = dualTrack(upsideDown(upsideDown(input)));
        there.faults.forEach((found, i) => sameSpans(found, again.faults[i]!));
        expectWithin(again.leastBandV, there.leastBandV, 1e-9);
      }),
      { numRuns: 20 },
    );
  });

  it('a wider band hides more, and never less', () => {
    fc.assert(
      fc.property(byVolts, fc.double({ min: 1, max: 3, noNaN: true }), (input, factor) => {
        const bandV = input.band.by === 'volts' ? input.band.bandV * factor : 1;
        const narrow = dualTrack(input);
        const wide = dualTrack({ ...input, band: { by: 'volts', bandV } });
        narrow.faults.forEach((found, i) =>
          expect(wide.faults[i]!.seenFraction).toBeLessThanOrEqual(found.seenFraction + 1e-5),
        );
        expect(wide.roomV).toBeGreaterThanOrEqual(narrow.roomV);
      }),
      { numRuns: 20 },
    );
  });

  it('the least band is the edge: a healthy pedal is within it, and without a hair of it not', () => {
    fc.assert(
      fc.property(anyPedal, (input) => {
        const { leastBandV, leastBandFraction } = dualTrack(input);
        const room = (band: DualTrackInput['band']): number => dualTrack({ ...input, band }).roomV;
        if (input.band.by === 'travel') {
          expect(Math.abs(room({ by: 'travel', bandFraction: Math.min(1, leastBandFraction) }))).toBeLessThan(1e-9);
        } else {
          expect(Math.abs(room({ by: 'volts', bandV: leastBandV }))).toBeLessThan(1e-9);
          expect(room({ by: 'volts', bandV: leastBandV * 0.999 })).toBeLessThan(0);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('each way to tell a band of one width gives the same answer', () => {
    const bandV = 0.16;
    const line = { ...half, first: track(0.8, 4, { pullDownOhm: null }), second: track(0.4, 2, { pullDownOhm: null }) };
    const row = (firstV: number): AgreementRow => ({
      firstV,
      lowestSecondV: firstV / 2 - bandV,
      highestSecondV: firstV / 2 + bandV,
    });
    const answers = (
      [
        { by: 'volts', bandV },
        { by: 'travel', bandFraction: 0.1 },
        { by: 'angle', bandDeg: 1.5, travelDeg: 15 },
        { by: 'rows', rows: [row(0.4), row(1.7), row(4.8)] },
      ] as const
    ).map((band) => dualTrack({ ...line, band }));
    for (const answer of answers.slice(1)) {
      // Below the first row its limits are held: there the range of the second track sees all that they do not.
      answer.faults.forEach((found, i) => sameSpans(found, answers[0]!.faults[i]!));
    }
  });

  it('does not mistake one input for another', () => {
    swapsMatter(dualTrack, { ...half, sampleS: 0.01, guardV: 0.01, supplyToleranceFraction: 0.03 });
  });
});

describe('what it says of pedals', () => {
  const free = { pullDownOhm: null };
  it('a sagging supply of both tracks is hidden where the second is a share of the first, and not with an offset', () => {
    const shared: DualTrackInput = {
      ...half,
      wiring: 'shared',
      first: track(0.8, 4, free),
      second: track(0.4, 2, free),
    };
    const hidden = fault(shared, 'supply-sags', 'both');
    expect(hidden).toMatchObject({ seen: 'never', detectS: null, dangerous: false, mostOverFraction: 0 });
    expectWithin(hidden.mostUnderFraction, (4 * 0.1) / 3.2, 1e-9);
    const narrow = { ...shared, band: { by: 'volts', bandV: 1e-6 } as const };
    expect(fault(narrow, 'supply-sags', 'both').seen).toBe('never');
    const offset = { ...shared, second: track(4.2, 1, free), ratio: -1, offsetV: 5 };
    expect(fault(offset, 'supply-sags', 'both').seen).toBe('always');
  });
  it('joined signals are hidden between equal tracks, and seen between a whole and a half one', () => {
    const equal = fault({ ...half, second: half.first, ratio: 1 }, 'signals-together', 'both');
    expect(equal).toMatchObject({ seen: 'never', detectS: null });
    expect(fault(half, 'signals-together', 'both')).toMatchObject({ seen: 'always', detectS: 0.3 });
  });
  it('mirrored tracks joined stand near half throttle, unseen from end to end', () => {
    const none = { ...mirrored, first: track(0.8, 4, free), second: track(4.2, 1, free) };
    const joined = fault(none, 'signals-together', 'both');
    expect(joined).toMatchObject({ seen: 'never', dangerous: true, overAtFraction: 0, underAtFraction: 1 });
    expect(joined.mostOverFraction).toBeGreaterThan(0.4);
    // A slope of −1 keeps the middle of both on its line, wherever that is; of −1/2 only at one place.
    const output = (from: number, to: number) =>
      track(from, to, { ...free, kind: 'active', lostSupply: 'floats', lostGround: 'floats', lowLimitV: 0.1 });
    const shifted = { ...none, first: output(0.8, 4), second: output(3.4, 0.2), offsetV: 4.2 };
    expect(fault(shifted, 'signals-together', 'both')).toMatchObject({ seen: 'never', dangerous: true });
    const slower = {
      ...none,
      second: track(2.6, 1, free),
      ratio: -0.5,
      offsetV: 3,
      band: { by: 'volts', bandV: 0.1 } as const,
    };
    expect(fault(slower, 'signals-together', 'both')).toMatchObject({ seen: 'sometimes' });
    expect(fault({ ...half, second: track(0.4, 2, free) }, 'signals-together', 'both').mostOverFraction).toBe(0);
  });
  it('with the lower of both shown, an open ground of the first track raises nothing', () => {
    const open = { ...half, band: { by: 'volts', bandV: 2 } as const, first: track(0.8, 4, { highLimitV: 5 }) };
    expect(fault(open, 'ground-open', 'first')).toMatchObject({ seen: 'never', dangerous: true });
    expect(fault({ ...open, shows: 'lowest' }, 'ground-open', 'first').dangerous).toBe(false);
    expect(fault({ ...open, shows: 'mean' }, 'ground-open', 'first').mostOverFraction).toBeGreaterThan(0.1);
  });
  it('an active output does what its data sheet says, without supply and without ground', () => {
    const active = (lostSupply: string, lostGround: string) =>
      track(0.8, 4, { kind: 'active', seriesOhm: 100, lostSupply, lostGround, resistanceOhm: undefined });
    const at = (first: PedalTrack, kind: PedalFault['kind']) =>
      fault({ ...half, first }, kind, 'first').readings[10]!.firstV!;
    expect(at(active('floats', 'floats'), 'supply-open')).toBe(0);
    expect(at(active('to-ground', 'floats'), 'ground-open')).toBe(0);
    expectWithin(at(active('floats', 'to-supply'), 'ground-open'), (5 * 10_000) / 10_100, 1e-12);
  });
  it('both inputs afloat are unseen everywhere, and may show anything', () => {
    const loose = (a: number, b: number) =>
      track(a, b, { kind: 'active', lostSupply: 'floats', lostGround: 'floats', pullDownOhm: null });
    const input: DualTrackInput = { ...half, wiring: 'shared', first: loose(0.8, 4), second: loose(0.4, 2) };
    const lost = fault(input, 'supply-open', 'both');
    expect(lost).toMatchObject({
      floats: true,
      seen: 'never',
      dangerous: true,
      mostOverFraction: 1,
      mostUnderFraction: 1,
    });
    expect(lost.readings[3]).toMatchObject({ firstV: null, secondV: null, seenBy: null, shownFraction: 1 });
  });
  it('a floating second input leaves the first as it is, or pulls the mean with it', () => {
    const input = { ...half, second: track(0.4, 2, free) };
    expect(fault(input, 'signal-open', 'second')).toMatchObject({ floats: true, seen: 'never' });
    expect(fault(input, 'signal-open', 'second').mostOverFraction).toBeLessThan(0.01);
    const mean = fault({ ...input, shows: 'mean' }, 'signal-open', 'second');
    expect(mean.mostOverFraction).toBeGreaterThan(0.05);
  });
  it('a short to the supply opens the throttle until it is seen', () => {
    const short = fault(half, 'signal-to-supply', 'first');
    expect(short).toMatchObject({
      seen: 'always',
      mostOverFraction: 0,
      dangerous: false,
      detectS: 0.1,
      untilSeenOverFraction: 1,
    });
    expect(fault({ ...half, sampleS: 0.02 }, 'signal-to-supply', 'first').detectS).toBeCloseTo(0.12, 12);
  });
  it('own wires have nineteen faults, shared ones thirteen', () => {
    expect(dualTrack(half).faults).toHaveLength(19);
    expect(dualTrack({ ...half, wiring: 'shared' }).faults).toHaveLength(13);
  });
  it('names the worst, and judges the healthy pedal', () => {
    const loose = { ...half, first: track(0.8, 4, { ...free, toleranceV: 0.05 }), guardV: 0.02 };
    const result = dualTrack(loose);
    expect(result.worstFault).toBe('signal-open, first');
    expectWithin(result.leastBandV, dualTrack({ ...loose, guardV: 0 }).leastBandV + 0.02, 1e-9);
    expect(result.checks.map(({ name, ok }) => [name, ok])).toEqual([
      ['healthy pedal in the band', true],
      ['first track above its low limit', true],
      ['first track below its high limit', true],
      ['second track above its low limit', true],
      ['second track below its high limit', true],
      ['throttle raised unseen', false],
    ]);
    expect(result.decidedBy).toBe('throttle raised unseen');
    expect(result.checks[5]!.because).toBe('signal open, first');
    expect(dualTrack({ ...loose, band: { by: 'volts', bandV: 0.03 } }).checks[0]!.ok).toBe(false);
    const quiet = dualTrack({ ...half, sagSupplyV: 5, raisedGroundV: 0, allowedErrorFraction: 0.05 });
    expect(
      quiet.checks.every(
        ({ ok, source, sourceStatus }) => ok && source === 'given-by-caller' && sourceStatus === 'derived',
      ),
    ).toBe(true);
  });
  it('the tightest watch still hides what no watch of this kind can see', () => {
    const { tightest } = dualTrack(mirrored);
    expect(tightest.hidden.map(({ kind, at }) => `${kind} ${at}`)).toContain('signals-together both');
    const seen = dualTrack({ ...half, sagSupplyV: 4, raisedGroundV: 1 }).tightest;
    expect(seen.hidden).toEqual([]);
    expect(seen.mostOverFraction).toBeLessThan(0.02);
  });
});

describe('edges', () => {
  it('refuses nonsense', () => {
    refusesNonsense(dualTrack, half, {
      required: [
        ...(['supplyV', 'supplyToleranceFraction', 'ratio', 'offsetV', 'disagreeS', 'rangeS', 'sampleS'] as const),
        ...(['batteryV', 'sagSupplyV', 'raisedGroundV', 'guardV', 'allowedErrorFraction'] as const),
      ],
    });
    for (const field of ['wiring', 'shows'] as const) {
      expectInputError(() => dualTrack({ ...half, [field]: 'neither' }), field, 'oneOf');
    }
    const bad = (over: object, field: string, rule?: Parameters<typeof expectInputError>[2]) => {
      expectInputError(() => dualTrack({ ...half, first: track(0.8, 4, over) }), `first.${field}`, rule);
      expectInputError(() => dualTrack({ ...half, second: track(0.4, 2, over) }), `second.${field}`, rule);
    };
    for (const value of [NaN, -1, Infinity, 'abc', undefined]) {
      for (const field of [
        'resistanceOhm',
        'releasedV',
        'pressedV',
        'toleranceV',
        'seriesOhm',
        'pullUpOhm',
        'pullDownOhm',
        'inputOhm',
        'pullToleranceFraction',
        'converterErrorV',
        'lowLimitV',
        'highLimitV',
      ]) {
        bad({ [field]: value }, field);
      }
    }
    bad({ kind: 'magnet' }, 'kind', 'oneOf');
    bad({ kind: 'active', lostGround: 'floats' }, 'lostSupply', 'missing');
    bad({ kind: 'active', lostSupply: 'floats', lostGround: 'to-ground' }, 'lostGround', 'oneOf');
    bad({ releasedV: 5.01 }, 'releasedV', 'atMost');
    bad({ seriesOhm: 0.09 }, 'seriesOhm', 'atLeast');
    bad({ lowLimitV: 4.8 }, 'highLimitV', 'above');
    bad({ releasedV: 2, pressedV: 2 }, 'pressedV', 'order');
    expectInputError(() => dualTrack({ ...half, ratio: 0 }), 'ratio', 'range');
    expectInputError(() => dualTrack({ ...half, batteryV: 4.9 }), 'batteryV', 'atLeast');
    expectInputError(() => dualTrack({ ...half, sagSupplyV: 5.1 }), 'sagSupplyV', 'atMost');
    expectInputError(() => dualTrack({ ...half, first: null as never }), 'first', 'object');
  });
  it('refuses a band that is none', () => {
    const bad = (band: object, field: string) =>
      expectInputError(() => dualTrack({ ...half, band: band as never }), field);
    bad({ by: 'feel' }, 'band.by');
    bad({ by: 'volts', bandV: 0 }, 'band.bandV');
    bad({ by: 'travel', bandFraction: 1.01 }, 'band.bandFraction');
    bad({ by: 'angle', bandDeg: 20, travelDeg: 16 }, 'band.bandDeg');
    bad({ by: 'angle', bandDeg: 2, travelDeg: 0 }, 'band.travelDeg');
    const row = { firstV: 1, lowestSecondV: 0.4, highestSecondV: 0.6 };
    bad({ by: 'rows', rows: [row] }, 'band.rows');
    bad({ by: 'rows', rows: [row, row] }, 'band.rows[1].inValue');
    bad({ by: 'rows', rows: [row, { ...row, firstV: 2, highestSecondV: 0.4 }] }, 'band.rows[1].highestSecondV');
    bad({ by: 'rows', rows: [{ ...row, firstV: NaN }, row] }, 'band.rows[0].firstV');
  });
  it('says it in words', () => {
    expect(() => dualTrack({ ...half, sagSupplyV: 6 })).toThrow('dualTrack: sagSupplyV must be at most 5, got 6');
  });
  it('takes a pedal down to its ends: a track from ground to supply', () => {
    const whole = dualTrack({ ...half, first: track(0, 5, bare), second: track(5, 0, bare), ratio: -1, offsetV: 5 });
    expect(whole.healthy[0]!.firstV).toBeLessThan(1e-5);
    expect(whole.healthy[20]!.firstV).toBeGreaterThan(5 - 1e-5);
    expectWithin(whole.fitRatio, -1, 1e-9);
  });
  it('never runs out of numbers', () => {
    neverRunsOut(dualTrack, half, 40);
    neverRunsOut(
      ({ resistanceOhm, seriesOhm, pullDownOhm, toleranceV, lowLimitV, highLimitV, bandV }: Record<string, number>) =>
        dualTrack({
          ...half,
          first: track(0.8, 4, { resistanceOhm, seriesOhm, pullDownOhm, toleranceV, lowLimitV, highLimitV }),
          band: { by: 'volts', bandV: bandV! },
        }),
      {
        resistanceOhm: 2000,
        seriesOhm: 100,
        pullDownOhm: 1e4,
        toleranceV: 0.1,
        lowLimitV: 0.2,
        highLimitV: 4.8,
        bandV: 0.1,
      },
      40,
    );
  });
});
