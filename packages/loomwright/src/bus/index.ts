export { canFrameBits, type CanFrameBitsInput, type CanFrameBitsResult } from './can-frame-bits.js';
export { canLoad, type CanLoadInput, type CanLoadResult, type CanLoadShare } from './can-load.js';
export {
  canResponseTimes,
  type CanResponse,
  type CanResponseTimes,
  type CanResponseTimesInput,
  type CanResponseTimesResult,
  type TimedMessage,
} from './can-response-times.js';
export {
  canResistance,
  type CanPlug,
  type CanReading,
  type CanResistanceInput,
  type CanResistanceResult,
} from './can-resistance.js';
export {
  canTopology,
  type CanStar,
  type CanStub,
  type CanTopologyInput,
  type CanTopologyResult,
} from './can-topology.js';
export type { CanFrameShape, CanIdBits } from './frame-shape.js';
export type { CanMessage } from './message.js';
