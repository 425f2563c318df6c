export {
  type ChannelLoad,
  checkChannel,
  type CheckChannelInput,
  type CheckChannelResult,
  type SharedTotal,
  type SolidStateChannel,
} from './check-channel.js';
export { checkFuse, type CheckFuseInput, type CheckFuseResult } from './check-fuse.js';
export {
  chooseFuse,
  type ChooseFuseInput,
  type ChosenFuse,
  type NearestFuse,
  type OverloadRule,
} from './choose-fuse.js';
export type { BandBasis } from './fuse-band.js';
export type {
  FuseCircuit,
  FusePulse,
  JudgedFuse,
  OverloadVerdict,
  SelectivityVerdict,
  UpstreamFuse,
} from './fuse-circuit.js';
export type { FollowedWire, FusedWire } from './fused-wire.js';
export { fuseOpeningTime, type FuseOpeningTimeInput, type FuseOpeningTimeResult } from './fuse-opening-time.js';
export { fusesInRow, type FusesInRowInput, type FusesInRowResult } from './fuses-in-row.js';
export type { LetThrough } from './let-through.js';
export {
  type JudgedMainFuse,
  type MainCable,
  mainFuse,
  type MainFuseInput,
  type MainFuseResult,
  type MustHold,
  type UnprotectedCable,
} from './main-fuse.js';
export {
  type CurveFuse,
  type CurveLine,
  type CurveLoad,
  type CurvePoint,
  type CurveWire,
  type FuseBandCurve,
  type NamedCurve,
  protectionCurves,
  type ProtectionCurvesInput,
  type ProtectionCurvesResult,
} from './protection-curves.js';
export { pulseI2t, type PulseI2tInput, type PulseI2tResult, type PulseShape } from './pulse-i2t.js';
export {
  shortCircuitCurrent,
  type ShortCircuitCurrentInput,
  type ShortCircuitCurrentResult,
} from './short-circuit-current.js';
export type { CurveTrip, HeatTrip, SurgeStep, ThresholdTrip, TripModel } from './trip.js';
