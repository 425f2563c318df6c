export { ladderSender, type LadderSenderInput, type LadderSenderResult, type LadderStep } from './ladder-sender.js';
export type { LadderFault, LadderReading } from './ladder-faults.js';
export type { LevelPoint } from './strapping.js';
export {
  adaptSender,
  type AdaptSenderDesign,
  type AdaptSenderInput,
  type AdaptSenderResult,
  type DialPoint,
  type DialReading,
} from './adapt-sender.js';
export type { DialNetwork } from './dial.js';
export {
  type NetworkFault,
  type NetworkPart,
  type NetworkReading,
  senderNetwork,
  type SenderNetworkInput,
  type SenderNetworkResult,
} from './sender-network.js';
export type { SaddleFault } from './saddle-faults.js';
export type { SaddleLobe } from './saddle-split.js';
export { type SaddlePoint, saddleTank, type SaddleTankInput, type SaddleTankResult } from './saddle-tank.js';
export { type TankRow, tankVolume, type TankVolumeInput, type TankVolumeResult } from './tank-volume.js';
export {
  calibrateLevel,
  type CalibrateLevelInput,
  type CalibrateLevelResult,
  type LevelCalibration,
  type LevelCell,
} from './calibrate-level.js';
export {
  matchSenderRange,
  type MatchSenderRangeInput,
  type MatchSenderRangeResult,
  type SenderMatch,
} from './match-sender-range.js';
export type { LevelCan } from './can-fit.js';
export type { CanRow } from './can-rows.js';
export type { LevelWarning } from './can-warnings.js';
export type { DeadZone } from './can-zones.js';
export {
  sloshFilter,
  type SloshFilter,
  type SloshFilterInput,
  type SloshFilterResult,
  type SloshWay,
} from './slosh-filter.js';
export type { SloshKind, SloshSetting } from './slosh-ways.js';
