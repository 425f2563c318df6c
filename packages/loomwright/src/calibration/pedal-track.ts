import { InputError } from '../error/index.js';
import { needBetween, needObject, needOneOf } from '../error/guard.js';

/** The input that a track ends at. */
export interface PedalInput {
  /** Pull-up from the input to the supply in Ω, 1 to 1e9; null for none. */
  readonly pullUpOhm: number | null;
  /** Pull-down from the input to ground in Ω, 1 to 1e9; null for none. */
  readonly pullDownOhm: number | null;
  /** Resistance of the input itself to ground in Ω, 1 to 1e9; null where it draws nothing worth counting. */
  readonly inputOhm: number | null;
  /** Tolerance of both pulls as a fraction, 0 to 0.5. */
  readonly pullToleranceFraction: number;
  /** What the converter may be off by, either side, in V, 0 to 1000. */
  readonly converterErrorV: number;
  /** Below and above these volts the input calls a fault, 0 to 1000. */
  readonly lowLimitV: number;
  readonly highLimitV: number;
}

interface TrackEnds extends PedalInput {
  /** Volts with the pedal released and fully pressed, at the rated supply and with nothing connected: 0 to the supply. */
  readonly releasedV: number;
  readonly pressedV: number;
  /** What the track may be off by anywhere, either side, in V at the rated supply, 0 to 1000. */
  readonly toleranceV: number;
  /** Resistance of the wiper's contact and its wire, or of an active output, in Ω, 0.1 to 1e7. */
  readonly seriesOhm: number;
}

/** A track and the input that reads it. */
export type PedalTrack =
  /** A potentiometer across supply and ground: its whole resistance in Ω, 1 to 1e7. */
  | (TrackEnds & { readonly kind: 'potentiometer'; readonly resistanceOhm: number })
  /** An output that drives a share of its supply; what it does without supply or ground is on its data sheet. */
  | (TrackEnds & {
      readonly kind: 'active';
      readonly lostSupply: 'floats' | 'to-ground';
      readonly lostGround: 'floats' | 'to-supply';
    });

/** Checks a track. */
export function needTrack(fn: string, field: string, track: PedalTrack, supplyV: number): void {
  needObject(fn, field, track);
  needOneOf(fn, `${field}.kind`, track.kind, ['potentiometer', 'active']);
  if (track.kind === 'potentiometer') needBetween(fn, `${field}.resistanceOhm`, track.resistanceOhm, 1, 1e7);
  else {
    needOneOf(fn, `${field}.lostSupply`, track.lostSupply, ['floats', 'to-ground']);
    needOneOf(fn, `${field}.lostGround`, track.lostGround, ['floats', 'to-supply']);
  }
  needBetween(fn, `${field}.releasedV`, track.releasedV, 0, supplyV);
  needBetween(fn, `${field}.pressedV`, track.pressedV, 0, supplyV);
  needBetween(fn, `${field}.toleranceV`, track.toleranceV, 0, 1000);
  needBetween(fn, `${field}.seriesOhm`, track.seriesOhm, 0.1, 1e7);
  for (const name of ['pullUpOhm', 'pullDownOhm', 'inputOhm'] as const) {
    const ohm = track[name];
    if (ohm !== null) needBetween(fn, `${field}.${name}`, ohm, 1, 1e9);
  }
  needBetween(fn, `${field}.pullToleranceFraction`, track.pullToleranceFraction, 0, 0.5, '5 % is 0.05');
  needBetween(fn, `${field}.converterErrorV`, track.converterErrorV, 0, 1000);
  needBetween(fn, `${field}.lowLimitV`, track.lowLimitV, 0, 1000);
  needBetween(fn, `${field}.highLimitV`, track.highLimitV, 0, 1000);
  if (!(track.highLimitV - track.lowLimitV >= 1e-6)) {
    const must = `must be above lowLimitV, ${track.lowLimitV}`;
    throw new InputError(fn, `${field}.highLimitV`, 'above', track.highLimitV, must);
  }
}
