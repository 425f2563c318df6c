export { coilCharge, type CoilChargeInput, type CoilChargeLimit, type CoilChargeResult } from './coil-charge.js';
export { injectorFeed, type InjectorFeedInput, type InjectorFeedResult, type PeakHold } from './injector-feed.js';
export { lampAtVoltage, type LampAtVoltageInput, type LampAtVoltageResult } from './lamp-at-voltage.js';
export { lampInrush, type LampInrushInput, type LampInrushResult } from './lamp-inrush.js';
export type {
  CapacitorInputLoad,
  ConstantCurrentLoad,
  ConstantPowerLoad,
  HBridgeMotorLoad,
  HeaterLoad,
  LampLoad,
  LedDriverLoad,
  Load,
  MotorLoad,
  PwmLoad,
  ResistanceLoad,
  SolenoidLoad,
  StarterSolenoidLoad,
} from './load.js';
export { loadCurrents, type LoadCurrentsInput, type LoadCurrentsResult } from './load-currents.js';
export { motorStart, type MotorStartInput, type MotorStartResult } from './motor-start.js';
export {
  type PartKind,
  type PathLimit,
  type PathPart,
  solvePath,
  type SolvedPart,
  type SolvePathInput,
  type SolvePathResult,
} from './solve-path.js';
export {
  type SolenoidState,
  starterSolenoid,
  type StarterSolenoidInput,
  type StarterSolenoidResult,
} from './starter-solenoid.js';
