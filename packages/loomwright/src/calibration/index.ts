export {
  type CalibrationCurve,
  calibrationTable,
  type CalibrationResidual,
  type CalibrationTable,
  type CalibrationTableInput,
  type CalibrationTableResult,
} from './calibration-table.js';
export type { CalibrationCell } from '../number/cells.js';
export { lookUp, type LookUpInput, type LookUpResult } from './look-up.js';
export { type FaultBands, faultBands, type FaultBandsInput, type FaultBandsResult } from './fault-bands.js';
export type { SharedDevice, SharedSensorKind } from './shared-node.js';
export {
  type SharedCure,
  type SharedReading,
  sharedSensor,
  type SharedSensorInput,
  type SharedSensorResult,
  type SharedState,
} from './shared-sensor.js';
export { linearSensor, type LinearSensorInput, type LinearSensorResult } from './linear-sensor.js';
export type { SwitchProcess } from './switch-process.js';
export type { SensorOutput, SwitchSensor, TalkBack } from './switch-sensor.js';
export type { BandPart, SwitchStage, SwitchStageResult } from './switch-stage.js';
export {
  type SwitchingBand,
  switchingBand,
  type SwitchingBandInput,
  type SwitchingBandResult,
} from './switching-band.js';
export {
  type WarningLimits,
  warningLimits,
  type WarningLimitsInput,
  type WarningLimitsResult,
  type WarningRow,
} from './warning-limits.js';
export type { WarningErrors } from './warning-straits.js';
export {
  groundOffsetError,
  type GroundOffsetErrorInput,
  type GroundOffsetErrorResult,
  type OffsetPair,
  type SensorOffset,
} from './ground-offset-error.js';
export type { OffsetCure, OffsetLoad } from './ground-offset-cures.js';
export type { OffsetConverter, OffsetError, OffsetScale, OffsetSensor } from './ground-offset-sensor.js';
export type { GroundPiece } from './ground-web.js';
export type { PedalInput, PedalTrack } from './pedal-track.js';
export type { AgreementBand, AgreementRow } from './pedal-band.js';
export type { PedalSight } from './pedal-state.js';
export type { PedalFault, PedalReading, PedalSpan } from './pedal-faults.js';
export {
  dualTrack,
  type DualTrackInput,
  type DualTrackResult,
  type HealthyPedal,
  type TightestWatch,
  type TrackRange,
} from './dual-track.js';
export {
  sensorSupplyBudget,
  type SensorSupplyBudgetInput,
  type SensorSupplyBudgetResult,
  type SupplyOpen,
  type SupplyPinSum,
  type SupplyTracks,
} from './sensor-supply-budget.js';
export type { SupplyDevice, SupplyDraw, SupplyOutput, SupplyPin, SupplyRegulator } from './supply-device.js';
export type { SupplyFault, SupplyFaultDevice, SupplyFaultInput } from './supply-faults.js';
export type { SupplyLimiter } from './supply-law.js';
export type { NoSupplySplit, SupplySplit, SupplySplitResult } from './supply-split.js';
