import { type BandEdges, firstThatAgrees, secondLimits } from './pedal-band.js';
import { type PedalWires, pinVolts, type PinVolts } from './pedal-pins.js';
import type { PedalTrack } from './pedal-track.js';

/** Volts of a track between which its input calls no fault. */
export interface TrackLimits {
  readonly lowLimitV: number;
  readonly highLimitV: number;
}

/** What watches the pedal, and how its travel is shown. */
export interface PedalWatch {
  readonly limits: readonly [TrackLimits, TrackLimits];
  readonly edges: BandEdges;
}

/** A pedal with what its healthy ends read: the travel is a straight line between them. */
export interface PedalModel {
  readonly tracks: readonly [PedalTrack, PedalTrack];
  readonly supplyV: number;
  readonly wiring: 'own' | 'shared';
  readonly shows: 'first' | 'lowest' | 'mean';
  readonly ends: readonly [readonly [number, number], readonly [number, number]];
}

/** By which of the limits something is seen. */
export type PedalSight = 'first-low' | 'first-high' | 'second-low' | 'second-high' | 'disagree';

const SIGHTS: readonly PedalSight[] = ['first-low', 'first-high', 'second-low', 'second-high', 'disagree', 'disagree'];

/** All wires as they should be. */
export function goodWires(model: Pick<PedalModel, 'supplyV' | 'wiring'>): PedalWires {
  const track = { supplyV: model.supplyV, groundV: 0, signalOpen: false, shortV: null };
  return { first: track, second: track, shared: model.wiring === 'shared', signalsTogether: false };
}

/** Which part of its supply a track gives at a place. */
export function shareAt({ releasedV, pressedV }: PedalTrack, supplyV: number, travel: number): number {
  return (releasedV + (pressedV - releasedV) * travel) / supplyV;
}

/** Volts at both inputs. */
export function pinsAt({ tracks, supplyV }: PedalModel, wires: PedalWires, travel: number): PinVolts {
  const [a, b] = tracks;
  return pinVolts(tracks, [shareAt(a, supplyV, travel), shareAt(b, supplyV, travel)], supplyV, wires);
}

/** The travel that volts of a track stand for; what lies beyond an end is taken for that end. */
export function travelOf(ends: readonly [number, number], inputV: number): number {
  return Math.min(1, Math.max(0, (inputV - ends[0]) / (ends[1] - ends[0])));
}

type Pair = readonly [low: number, high: number];

/**
 * Room to each limit at these volts, in the order of `SIGHTS`: below 0 it is seen. An input that floats may be at any
 * volts: its own limits see nothing, and the tracks agree where some volts of it would do.
 */
export function roomsOf({ limits, edges }: PedalWatch, [firstV, secondV]: PinVolts): readonly number[] {
  const [first, second] = limits;
  const secondLow = secondV === null ? 1 : secondV - second.lowLimitV;
  const secondHigh = secondV === null ? 1 : second.highLimitV - secondV;
  if (firstV === null) {
    const agrees = firstsOf(limits, edges, secondV) === null ? -1 : 1;
    return [1, 1, secondLow, secondHigh, agrees, agrees];
  }
  const [least, most] = secondLimits(edges, firstV);
  return [
    firstV - first.lowLimitV,
    first.highLimitV - firstV,
    secondLow,
    secondHigh,
    (secondV ?? second.highLimitV) - least,
    most - (secondV ?? second.lowLimitV),
  ];
}

/** Between which volts a floating first input would be accepted. */
function firstsOf([first, second]: PedalWatch['limits'], edges: BandEdges, secondV: number | null): Pair | null {
  const [low, high] = [secondV ?? second.lowLimitV, secondV ?? second.highLimitV];
  return firstThatAgrees(edges, first.lowLimitV, first.highLimitV, low, high);
}

/** Least and most travel that may be shown at these volts: the same twice where both inputs are held. */
export function shownOf(model: PedalModel, { limits, edges }: PedalWatch, [firstV, secondV]: PinVolts): Pair {
  const [first, second] = limits;
  if (firstV !== null && secondV !== null) {
    const shown = shownAt(model, travelOf(model.ends[0], firstV), travelOf(model.ends[1], secondV));
    return [shown, shown];
  }
  const firsts: Pair =
    firstV !== null ? [firstV, firstV] : (firstsOf(limits, edges, secondV) ?? [first.lowLimitV, first.highLimitV]);
  let seconds: Pair = [secondV ?? second.lowLimitV, secondV ?? second.highLimitV];
  if (firstV !== null) {
    const [least, most] = secondLimits(edges, firstV);
    const [low, high] = [Math.max(seconds[0], least), Math.min(seconds[1], most)];
    if (low <= high) seconds = [low, high];
  }
  const [a, b] = firsts.map((v) => travelOf(model.ends[0], v)) as [number, number];
  const [c, d] = seconds.map((v) => travelOf(model.ends[1], v)) as [number, number];
  return [shownAt(model, Math.min(a, b), Math.min(c, d)), shownAt(model, Math.max(a, b), Math.max(c, d))];
}

function shownAt({ shows }: PedalModel, first: number, second: number): number {
  return shows === 'first' ? first : shows === 'lowest' ? Math.min(first, second) : (first + second) / 2;
}

/** Every limit that sees it, the range of an input before the agreement; none where nothing does. */
export function sightsOf(rooms: readonly number[]): readonly PedalSight[] {
  return SIGHTS.filter((_, k) => (rooms[k] as number) < 0);
}
