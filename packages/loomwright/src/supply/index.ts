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
export { fuseDropCurrent, type FuseDropCurrentInput, type FuseDropCurrentResult } from './fuse-drop-current.js';
export type { FuseReading } from './fuse-reading.js';
export {
  type RestDrain,
  type RestFuse,
  restingDrain,
  type RestingDrainInput,
  type RestingDrainResult,
  type SolvedRestFuse,
} from './resting-drain.js';
export { crankingCircuit } from './cranking-circuit.js';
export type {
  CrankingCircuit,
  CrankingCircuitInput,
  CrankingController,
  CrankingMoment,
  CrankingPartState,
  LadderPoint,
  StarterLinePoint,
} from './cranking-type.js';
export type { CrankingCable, CrankingPart, CrankingResistance, CrankingRole } from './cranking-part.js';
export type { CrankingReading, JudgedReading } from './cranking-reading.js';
export type { CrankingStarter, MeasuredStarter, MotorStarter, ResistorStarter } from './cranking-starter.js';
export type { RestEnd } from './rest-end.js';
export {
  type Alternator,
  type AlternatorPoint,
  type BudgetBattery,
  type BudgetLoad,
  type BudgetState,
  energyBudget,
  type EnergyBudgetInput,
  type EnergyBudgetResult,
  type SolvedBudgetLoad,
  type SolvedBudgetState,
} from './energy-budget.js';
export {
  senseError,
  type SenseErrorInput,
  type SenseErrorResult,
  type SensePart,
  type SolvedSensePart,
} from './sense-error.js';
export {
  type BackFeed,
  type BranchState,
  type Brightness,
  type ExcitationDesign,
  excitationResistor,
  type ExcitationResistorInput,
  type ExcitationResistorResult,
  type ExcitedAlternator,
  type WarningLamp,
  type WarningLed,
  type WarningState,
} from './excitation-resistor.js';
export {
  type ConverterMode,
  type SplitAlternator,
  type SplitBattery,
  type SplitCable,
  splitCharge,
  type SplitCharge,
  type SplitChargeInput,
  type SplitChargeResult,
  type SplitCranking,
  type SplitFill,
  type SplitFuse,
  type SplitLink,
  type SplitState,
} from './split-charge.js';
export {
  type IsolatorContact,
  isolatorOpening,
  type IsolatorOpeningInput,
  type IsolatorOpeningResult,
} from './isolator-opening.js';
export {
  type DumpLoad,
  type DumpPulse,
  type DumpSuppressor,
  loadDump,
  type LoadDumpInput,
  type LoadDumpResult,
} from './load-dump.js';
