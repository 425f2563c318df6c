import { secondLimits } from './pedal-band.js';
import { cutTravel } from './pedal-spans.js';
import type { PedalWires, PinVolts, TrackWires } from './pedal-pins.js';
import {
  goodWires,
  pinsAt,
  type PedalModel,
  type PedalSight,
  type PedalWatch,
  sightsOf,
  roomsOf,
  shownOf,
} from './pedal-state.js';

/** The pedal at one place of its travel. */
export interface PedalReading {
  readonly travelFraction: number;
  /** Volts at both inputs; null for one that nothing holds. */
  readonly firstV: number | null;
  readonly secondV: number | null;
  /** Where the second input must lie for these volts of the first; null where that floats. */
  readonly lowestSecondV: number | null;
  readonly highestSecondV: number | null;
  /** Travel that the controller takes it for; the most that it may, where an input floats. */
  readonly shownFraction: number;
  /** What sees a fault; null for nothing. */
  readonly seenBy: PedalSight | null;
}

/** A stretch of the travel where a fault is accepted. Its ends are known to 1e-6 of the travel. */
export interface PedalSpan {
  readonly fromFraction: number;
  readonly toFraction: number;
  /** Most that the shown travel lies above the true one in it, and below; at least 0. */
  readonly mostOverFraction: number;
  readonly mostUnderFraction: number;
}

/** One fault over the whole travel. */
export interface PedalFault {
  readonly kind:
    | 'supply-open'
    | 'ground-open'
    | 'signal-open'
    | 'signal-to-ground'
    | 'signal-to-supply'
    | 'signal-to-battery'
    | 'signals-together'
    | 'supply-sags'
    | 'ground-raised';
  readonly at: 'first' | 'second' | 'both';
  /** Twenty-one places from released to pressed. */
  readonly readings: readonly PedalReading[];
  /** Whether an input floats: it then counts as unseen wherever some volts would be accepted. */
  readonly floats: boolean;
  readonly unseen: readonly PedalSpan[];
  readonly seen: 'always' | 'sometimes' | 'never';
  /** Share of the travel where it is seen. */
  readonly seenFraction: number;
  /** Most that the shown travel lies above the true one while nothing sees the fault, and where; below likewise. */
  readonly mostOverFraction: number;
  readonly overAtFraction: number | null;
  readonly mostUnderFraction: number;
  readonly underAtFraction: number | null;
  /** Whether the throttle is raised unseen by more than is allowed. */
  readonly dangerous: boolean;
  /** Longest that the fault must last where it is seen, in s; null where it never is. */
  readonly detectS: number | null;
  /** Most that the shown travel lies above the true one where it is seen, until that time is over. */
  readonly untilSeenOverFraction: number;
}

export type PedalCause = Pick<PedalFault, 'kind' | 'at'>;

/** What faults are judged by. */
export interface FaultLimits {
  readonly batteryV: number;
  readonly sagSupplyV: number;
  readonly raisedGroundV: number;
  readonly disagreeS: number;
  readonly rangeS: number;
  readonly sampleS: number;
  readonly allowedErrorFraction: number;
}

/** Every fault that these wires can have, one at a time. */
export function pedalCauses(wiring: 'own' | 'shared'): readonly PedalCause[] {
  const each = ['first', 'second'] as const;
  const cause = (kind: PedalCause['kind'], at: PedalCause['at']): PedalCause => ({ kind, at });
  const feeds = (['supply-open', 'ground-open'] as const).flatMap((kind) =>
    (wiring === 'own' ? each : (['both'] as const)).map((at) => cause(kind, at)),
  );
  const signals = (['signal-open', 'signal-to-ground', 'signal-to-supply', 'signal-to-battery'] as const).flatMap(
    (kind) => each.map((at) => cause(kind, at)),
  );
  const shifts = (['supply-sags', 'ground-raised'] as const).flatMap((kind) =>
    (wiring === 'own' ? ([...each, 'both'] as const) : (['both'] as const)).map((at) => cause(kind, at)),
  );
  return [...feeds, ...signals, cause('signals-together', 'both'), ...shifts];
}

/** The wires with one fault. */
export function wiresWith(
  model: Pick<PedalModel, 'supplyV' | 'wiring'>,
  limits: FaultLimits,
  { kind, at }: PedalCause,
): PedalWires {
  const good = goodWires(model);
  if (kind === 'signals-together') return { ...good, signalsTogether: true };
  const changes: Readonly<Record<Exclude<PedalCause['kind'], 'signals-together'>, Partial<TrackWires>>> = {
    'supply-open': { supplyV: null },
    'ground-open': { groundV: null },
    'signal-open': { signalOpen: true },
    'signal-to-ground': { shortV: 0 },
    'signal-to-supply': { shortV: model.supplyV },
    'signal-to-battery': { shortV: limits.batteryV },
    'supply-sags': { supplyV: limits.sagSupplyV },
    'ground-raised': { groundV: limits.raisedGroundV },
  };
  const changed = { ...good.first, ...changes[kind] };
  return { ...good, first: at === 'second' ? good.first : changed, second: at === 'first' ? good.second : changed };
}

/** Volts at both inputs over the travel with one fault; each place is solved once. */
export function pinsWith(model: PedalModel, limits: FaultLimits, cause: PedalCause): (travel: number) => PinVolts {
  const wires = wiresWith(model, limits, cause);
  const known = new Map<number, PinVolts>();
  return (travel) => {
    const pins = known.get(travel) ?? pinsAt(model, wires, travel);
    known.set(travel, pins);
    return pins;
  };
}

/** One fault at every place of the travel. */
export function judgeFault(
  model: PedalModel,
  watch: PedalWatch,
  limits: FaultLimits,
  cause: PedalCause,
  pins: (travel: number) => PinVolts,
): PedalFault {
  const roomsAt = (travel: number): readonly number[] => roomsOf(watch, pins(travel));
  const cuts = cutTravel(roomsAt);
  const unseen: PedalSpan[] = [];
  let [over, under]: readonly [Most, Most] = [NONE, NONE];
  let [seenFraction, untilSeenOverFraction] = [0, 0];
  let detectS: number | null = null;
  let last: number | null = null;
  for (let i = 1; i < cuts.length; i++) {
    const [from, to] = [cuts[i - 1] as number, cuts[i] as number];
    if (!(to > from)) continue;
    const middle = (from + to) / 2;
    const sights = sightsOf(roomsAt(middle));
    let [mostOver, mostUnder]: readonly [Most, Most] = [NONE, NONE];
    for (const travel of [from, middle, to]) {
      const [low, high] = shownOf(model, watch, pins(travel));
      if (high - travel > mostOver.value) mostOver = { at: travel, value: high - travel };
      if (travel - low > mostUnder.value) mostUnder = { at: travel, value: travel - low };
    }
    if (sights.length > 0) {
      const waitS = Math.min(...sights.map((sight) => (sight === 'disagree' ? limits.disagreeS : limits.rangeS)));
      detectS = Math.max(detectS ?? 0, waitS + limits.sampleS);
      seenFraction += to - from;
      untilSeenOverFraction = Math.max(untilSeenOverFraction, mostOver.value);
      continue;
    }
    if (mostOver.value > over.value) over = mostOver;
    if (mostUnder.value > under.value) under = mostUnder;
    const before = last === from ? unseen.pop() : undefined;
    unseen.push({
      fromFraction: before?.fromFraction ?? from,
      toFraction: to,
      mostOverFraction: Math.max(before?.mostOverFraction ?? 0, mostOver.value),
      mostUnderFraction: Math.max(before?.mostUnderFraction ?? 0, mostUnder.value),
    });
    last = to;
  }
  return {
    ...cause,
    readings: Array.from({ length: 21 }, (_, i) => readingOf(model, watch, i / 20, pins(i / 20))),
    floats: pins(0).includes(null),
    unseen,
    seen: unseen.length === 0 ? 'always' : detectS === null ? 'never' : 'sometimes',
    seenFraction: unseen.length === 0 ? 1 : detectS === null ? 0 : Math.min(1, seenFraction),
    mostOverFraction: over.value,
    overAtFraction: over.at,
    mostUnderFraction: under.value,
    underAtFraction: under.at,
    dangerous: over.value > limits.allowedErrorFraction,
    detectS,
    untilSeenOverFraction,
  };
}

/** A largest value and where it is. */
interface Most {
  readonly at: number | null;
  readonly value: number;
}

const NONE: Most = { at: null, value: 0 };

/** The pedal at one place, as a result tells it. */
export function readingOf(model: PedalModel, watch: PedalWatch, travelFraction: number, pins: PinVolts): PedalReading {
  const [firstV, secondV] = pins;
  const [lowestSecondV, highestSecondV] = firstV === null ? [null, null] : secondLimits(watch.edges, firstV);
  return {
    travelFraction,
    firstV,
    secondV,
    lowestSecondV,
    highestSecondV,
    shownFraction: shownOf(model, watch, pins)[1],
    seenBy: sightsOf(roomsOf(watch, pins))[0] ?? null,
  };
}
