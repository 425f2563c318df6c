export { acidVoltage, type AcidVoltageInput, type AcidVoltageResult } from './acid-voltage.js';
export { batteryLoadTest, type BatteryLoadTestInput, type BatteryLoadTestResult } from './battery-load-test.js';
export {
  batteryResistance,
  type BatteryResistanceInput,
  type BatteryResistanceResult,
  type ResistanceFromLoads,
  type ResistanceFromLoadTest,
  type ResistanceFromRating,
} from './battery-resistance.js';
export {
  openCircuitVoltage,
  type OpenCircuitVoltageInput,
  type OpenCircuitVoltageResult,
} from './open-circuit-voltage.js';
export { peukertExponent, type PeukertExponentInput, type PeukertExponentResult } from './peukert-exponent.js';
export {
  type DischargeStage,
  type RunTime,
  runTime,
  type RunTimeInput,
  type RunTimeResult,
  type SolvedStage,
} from './run-time.js';
export {
  type ChargeByList,
  stateOfCharge,
  type StateOfChargeInput,
  type StateOfChargeResult,
} from './state-of-charge.js';
