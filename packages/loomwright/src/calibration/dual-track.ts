import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needEarthly, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needOneOf } from '../error/guard.js';
import {
  type AgreementBand,
  type BandEdges,
  edgesAround,
  edgesOfRows,
  type ExpectedLine,
  needBand,
} from './pedal-band.js';
import {
  type FaultLimits,
  judgeFault,
  pinsWith,
  pedalCauses,
  type PedalFault,
  type PedalReading,
  readingOf,
} from './pedal-faults.js';
import { healthyCorners, roomInBand, worstDisagreement } from './pedal-healthy.js';
import { goodWires, type PedalModel, type PedalWatch, pinsAt } from './pedal-state.js';
import { needTrack, type PedalTrack } from './pedal-track.js';

export interface DualTrackInput extends FaultLimits {
  /** Supply of the pedal and of the pulls in V, 0.1 to 1000. */
  readonly supplyV: number;
  /** What the pedal's supply may be off by, beside that of the converter, as a fraction, 0 to 0.5. */
  readonly supplyToleranceFraction: number;
  /** Whether each track has a supply and a ground wire of its own, or both share one of each. */
  readonly wiring: 'own' | 'shared';
  readonly first: PedalTrack;
  readonly second: PedalTrack;
  /** Expected volts of the second input: `ratio` times those of the first, and `offsetV`. Below 0 it is mirrored. */
  readonly ratio: number;
  readonly offsetV: number;
  readonly band: AgreementBand;
  /** Which travel the throttle follows: that of the first track, the lower of both, or their mean. */
  readonly shows: 'first' | 'lowest' | 'mean';
  /** How long a disagreement must last, an input be out of its range, and between two looks, in s, at least 0. */
  readonly disagreeS: number;
  readonly rangeS: number;
  readonly sampleS: number;
  /** Highest volts that a chafed signal could meet, from the supply to 1000. */
  readonly batteryV: number;
  /** What a sagging supply falls to, and what a bad ground rises to, in V, 0 to the supply. */
  readonly sagSupplyV: number;
  readonly raisedGroundV: number;
  /** Room that a healthy pedal must keep to every limit, in V, 0 to 1000. */
  readonly guardV: number;
  /** Travel that may be shown too much without harm, as a fraction of it, 0 to 1. */
  readonly allowedErrorFraction: number;
}

/** The healthy pedal at one place: nothing floats. */
export interface HealthyPedal extends PedalReading {
  readonly firstV: number;
  readonly secondV: number;
  readonly lowestSecondV: number;
  readonly highestSecondV: number;
}

/** One track, healthy. */
export interface TrackRange {
  /** At the input, with the pedal released and pressed, everything as marked. */
  readonly releasedV: number;
  readonly pressedV: number;
  /** Lowest and highest at any place, tolerances and converter at their worst. */
  readonly lowestV: number;
  readonly highestV: number;
}

/** The narrowest limits that a healthy pedal never trips, and what not even they see. */
export interface TightestWatch {
  readonly firstLowLimitV: number;
  readonly firstHighLimitV: number;
  readonly secondLowLimitV: number;
  readonly secondHighLimitV: number;
  readonly bandV: number;
  /** Most travel shown too much unseen, and the faults that do so by more than is allowed. */
  readonly mostOverFraction: number;
  readonly hidden: readonly Pick<PedalFault, 'kind' | 'at' | 'unseen' | 'mostOverFraction'>[];
}

export interface DualTrackResult {
  /** Twenty-one places from released to pressed. */
  readonly healthy: readonly HealthyPedal[];
  readonly first: TrackRange;
  readonly second: TrackRange;
  /** The straight line through both ends of the healthy pedal: what `ratio` and `offsetV` would fit best there. */
  readonly fitRatio: number;
  readonly fitOffsetV: number;
  /** Half of the band at its narrowest and widest, in V of the second input and as a fraction of the travel. */
  readonly narrowestBandV: number;
  readonly widestBandV: number;
  readonly narrowestBandFraction: number;
  readonly widestBandFraction: number;
  /** Least room of a healthy pedal in the band, below 0 where it trips it, and where. */
  readonly roomV: number;
  readonly roomAtFraction: number;
  /** The smallest band around the expected line that a healthy pedal never trips, the guard included. */
  readonly leastBandV: number;
  readonly leastBandFraction: number;
  readonly faults: readonly PedalFault[];
  /** Most travel shown too much while nothing sees it, over all faults, and which it is; null where none does. */
  readonly mostOverFraction: number;
  readonly worstFault: string | null;
  readonly tightest: TightestWatch;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * What a controller sees of a two-track pedal with every wire open, shorted or shifted, and what it does not.
 *
 * Two tracks are there so that no one fault opens the throttle unseen. Whether they do follows from their slopes, the
 * pulls, the limits of both ranges and the band of agreement. Each fault is solved over the whole travel: where it is
 * seen, where not, by how much the throttle is then off, how long it takes. An input without a pull may stand anywhere
 * once its wire is off, and counts as unseen. Of one fault at a time only; it proves no throttle.
 *
 * $$V = \frac{\sum_j V_j / R_j}{\sum_j 1 / R_j} \qquad V_{2,\mathrm{low}}(V_1) \le V_2 \le V_{2,\mathrm{high}}(V_1)$$
 *
 * with the band in volts around $k V_1 + V_0$; a band of travel is one around the line through both healthy ends.
 *
 * @param input both tracks with their inputs, wires, expected line and band, times, what a fault may bring
 * @returns healthy pedal and its room, smallest band, every fault with the spans of travel where it is unseen, checks
 * @throws InputError when a field is missing or out of range, or a track's two ends read the same
 * @source circuit-theory (Millman's theorem; dead shorts; supplies that do not give way; ends of spans to 1e-6 of the travel, errors and worst corners at 201 places); pedal-service-texts (kinds of bands)
 * @example dualTrack({ supplyV: 5, supplyToleranceFraction: 0, wiring: 'shared', first: { kind: 'active', lostSupply: 'floats', lostGround: 'floats', releasedV: 1, pressedV: 4, toleranceV: 0.02, seriesOhm: 100, pullUpOhm: null, pullDownOhm: 100000, inputOhm: null, pullToleranceFraction: 0, converterErrorV: 0.005, lowLimitV: 0.2, highLimitV: 4.8 }, second: { kind: 'active', lostSupply: 'floats', lostGround: 'floats', releasedV: 0.5, pressedV: 2, toleranceV: 0.02, seriesOhm: 100, pullUpOhm: null, pullDownOhm: 100000, inputOhm: null, pullToleranceFraction: 0, converterErrorV: 0.005, lowLimitV: 0.2, highLimitV: 4.8 }, ratio: 0.5, offsetV: 0, band: { by: 'volts', bandV: 0.1 }, shows: 'first', disagreeS: 0.3, rangeS: 0.1, sampleS: 0.01, batteryV: 14.4, sagSupplyV: 4.5, raisedGroundV: 0.5, guardV: 0, allowedErrorFraction: 0.05 }).leastBandV //=> 0.0375
 */
export function dualTrack(input: DualTrackInput): DualTrackResult {
  const fn = 'dualTrack';
  guard(fn, input);
  const { first, second, guardV } = input;
  const bare: PedalModel = {
    ...input,
    tracks: [first, second],
    ends: [
      [0, 1],
      [0, 1],
    ],
  };
  const [atReleased, atPressed] = [0, 1].map((travel) => pinsAt(bare, goodWires(bare), travel) as Held) as [Held, Held];
  const model: PedalModel = {
    ...bare,
    ends: [
      [atReleased[0], atPressed[0]],
      [atReleased[1], atPressed[1]],
    ],
  };
  const span = (t: 0 | 1): number => atPressed[t] - atReleased[t];
  for (const t of [0, 1] as const) {
    if (Math.abs(span(t)) >= 1e-6) continue;
    const track = t === 0 ? 'first' : 'second';
    throw new InputError(fn, `${track}.pressedV`, 'order', input[track].pressedV, 'must read otherwise than releasedV');
  }
  const fitRatio = span(1) / span(0);
  const fit: ExpectedLine = { ratio: fitRatio, offsetV: atReleased[1] - fitRatio * atReleased[0] };
  const line: ExpectedLine = input.band.by === 'travel' || input.band.by === 'angle' ? fit : input;
  const edges = edgesOf(input, line, Math.abs(span(1)));
  const corners = healthyCorners(model, input.supplyToleranceFraction);
  const ranges = ([0, 1] as const).map((t): TrackRange => {
    const volts = corners.map((corner) => (t === 0 ? corner.first : corner.second));
    const lowestV = Math.min(...volts.map(([low]) => low));
    return {
      releasedV: atReleased[t],
      pressedV: atPressed[t],
      lowestV,
      highestV: Math.max(...volts.map(([, high]) => high)),
    };
  }) as [TrackRange, TrackRange];
  const watch: PedalWatch = { limits: [first, second], edges };
  const leastBandV = worstDisagreement(line, corners) + guardV;
  const narrow = narrowWatch(line, leastBandV, ranges, guardV);
  const judged = pedalCauses(input.wiring).map((cause) => {
    const pins = pinsWith(model, input, cause);
    return [watch, narrow].map((each) => judgeFault(model, each, input, cause, pins)) as [PedalFault, PedalFault];
  });
  const faults = judged.map(([fault]) => fault);
  const healthy = Array.from({ length: 21 }, (_, i) => {
    const pins = pinsAt(model, goodWires(model), i / 20);
    // A potentiometer and an output that has supply and ground hold their inputs.
    return readingOf(model, watch, i / 20, pins) as HealthyPedal;
  });
  const halves = healthy.map(({ lowestSecondV, highestSecondV }) => (highestSecondV - lowestSecondV) / 2);
  const { roomV, atFraction: roomAtFraction } = roomInBand(edges, corners);
  const worst = worstOf(faults);
  const checks = checksOf(input, ranges, roomV, worst);
  return {
    healthy,
    first: ranges[0],
    second: ranges[1],
    fitRatio,
    fitOffsetV: fit.offsetV,
    narrowestBandV: Math.min(...halves),
    widestBandV: Math.max(...halves),
    narrowestBandFraction: Math.min(...halves) / Math.abs(span(1)),
    widestBandFraction: Math.max(...halves) / Math.abs(span(1)),
    roomV,
    roomAtFraction,
    leastBandV,
    leastBandFraction: leastBandV / Math.abs(span(1)),
    faults,
    mostOverFraction: worst.mostOverFraction,
    worstFault: worst.mostOverFraction > 0 ? `${worst.kind}, ${worst.at}` : null,
    tightest: tightestOf(
      narrow,
      leastBandV,
      judged.map(([, fault]) => fault),
    ),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

type Held = readonly [number, number];

const worstOf = (faults: readonly PedalFault[]): PedalFault =>
  faults.reduce((a, b) => (b.mostOverFraction > a.mostOverFraction ? b : a));

function edgesOf({ band }: DualTrackInput, line: ExpectedLine, spanV: number): BandEdges {
  switch (band.by) {
    case 'rows':
      return edgesOfRows(band.rows);
    case 'volts':
      return edgesAround(line, band.bandV);
    case 'travel':
      return edgesAround(line, band.bandFraction * spanV);
    case 'angle':
      return edgesAround(line, (band.bandDeg / band.travelDeg) * spanV);
  }
}

/** The narrowest limits and band that a healthy pedal leaves alone. */
function narrowWatch(
  line: ExpectedLine,
  bandV: number,
  ranges: readonly [TrackRange, TrackRange],
  guardV: number,
): PedalWatch {
  const [first, second] = ranges.map(({ lowestV, highestV }) => ({
    lowLimitV: lowestV - guardV,
    highLimitV: highestV + guardV,
  })) as unknown as PedalWatch['limits'];
  return { limits: [first, second], edges: edgesAround(line, bandV) };
}

function tightestOf({ limits }: PedalWatch, bandV: number, faults: readonly PedalFault[]): TightestWatch {
  const [first, second] = limits;
  return {
    firstLowLimitV: first.lowLimitV,
    firstHighLimitV: first.highLimitV,
    secondLowLimitV: second.lowLimitV,
    secondHighLimitV: second.highLimitV,
    bandV,
    mostOverFraction: worstOf(faults).mostOverFraction,
    hidden: faults
      .filter(({ dangerous }) => dangerous)
      .map(({ kind, at, unseen, mostOverFraction }) => ({ kind, at, unseen, mostOverFraction })),
  };
}

function checksOf(
  { first, second, guardV, allowedErrorFraction }: DualTrackInput,
  [one, two]: readonly [TrackRange, TrackRange],
  roomV: number,
  worst: PedalFault,
): readonly Check[] {
  const given = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const room = (name: string, value: number): Check =>
    makeCheck({ ...given, name, value, limit: guardV, unit: 'V', sense: 'atLeast' });
  return [
    room('healthy pedal in the band', roomV),
    room('first track above its low limit', one.lowestV - first.lowLimitV),
    room('first track below its high limit', first.highLimitV - one.highestV),
    room('second track above its low limit', two.lowestV - second.lowLimitV),
    room('second track below its high limit', second.highLimitV - two.highestV),
    makeCheck({
      ...given,
      name: 'throttle raised unseen',
      value: worst.mostOverFraction,
      limit: allowedErrorFraction,
      unit: 'fraction',
      sense: 'atMost',
      ...(worst.mostOverFraction > 0 ? { because: `${worst.kind.replaceAll('-', ' ')}, ${worst.at}` } : {}),
    }),
  ];
}

function guard(fn: string, input: DualTrackInput): void {
  needInput(fn, input);
  const { supplyV, ratio } = input;
  needBetween(fn, 'supplyV', supplyV, 0.1, 1000);
  needBetween(fn, 'supplyToleranceFraction', input.supplyToleranceFraction, 0, 0.5, '5 % is 0.05');
  needOneOf(fn, 'wiring', input.wiring, ['own', 'shared']);
  needTrack(fn, 'first', input.first, supplyV);
  needTrack(fn, 'second', input.second, supplyV);
  needEarthly(fn, 'ratio', ratio);
  if (Math.abs(ratio) < 1e-6) throw new InputError(fn, 'ratio', 'range', ratio, 'must not be 0');
  needEarthly(fn, 'offsetV', input.offsetV);
  needBand(fn, input.band);
  needOneOf(fn, 'shows', input.shows, ['first', 'lowest', 'mean']);
  needNoLessThan(fn, 'disagreeS', input.disagreeS);
  needNoLessThan(fn, 'rangeS', input.rangeS);
  needNoLessThan(fn, 'sampleS', input.sampleS);
  needBetween(fn, 'batteryV', input.batteryV, supplyV, 1000);
  needBetween(fn, 'sagSupplyV', input.sagSupplyV, 0, supplyV);
  needBetween(fn, 'raisedGroundV', input.raisedGroundV, 0, supplyV);
  needBetween(fn, 'guardV', input.guardV, 0, 1000);
  needBetween(fn, 'allowedErrorFraction', input.allowedErrorFraction, 0, 1);
}
