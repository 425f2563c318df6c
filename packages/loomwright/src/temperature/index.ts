export { betaFromPoints, type BetaFromPointsInput, type BetaFromPointsResult } from './beta-from-points.js';
export { findPullUp, type FindPullUpInput, type FindPullUpResult } from './find-pull-up.js';
export { fitSteinhartHart, type FitSteinhartHartInput, type FitSteinhartHartResult } from './fit-steinhart-hart.js';
export { fitUncertainty, type FitUncertaintyInput, type FitUncertaintyResult } from './fit-uncertainty.js';
export type { FittedPoint } from './letters.js';
export type { CurveWarning, ThermistorPoint } from './point.js';
export type { PullInput, SensorSide } from './pull.js';
export { rtdResistance, type RtdResistanceInput, type RtdResistanceResult } from './rtd-resistance.js';
export { rtdTemperature, type RtdTemperatureInput, type RtdTemperatureResult } from './rtd-temperature.js';
export { rtdTolerance, type RtdToleranceInput, type RtdToleranceResult } from './rtd-tolerance.js';
export type { SuspiciousPoint } from './suspicious-point.js';
export {
  type ErrorBudgetRow,
  thermistorErrorBudget,
  type ThermistorErrorBudgetInput,
  type ThermistorErrorBudgetResult,
} from './thermistor-error-budget.js';
export { thermistorInput, type ThermistorInputInput, type ThermistorInputResult } from './thermistor-input.js';
export {
  thermistorResiduals,
  type ThermistorResidualsInput,
  type ThermistorResidualsResult,
} from './thermistor-residuals.js';
export {
  thermistorResistance,
  type ThermistorResistanceInput,
  type ThermistorResistanceResult,
} from './thermistor-resistance.js';
export {
  thermistorSelfHeating,
  type ThermistorSelfHeatingInput,
  type ThermistorSelfHeatingResult,
} from './thermistor-self-heating.js';
export { thermistorTable, type ThermistorTable, type ThermistorTableInput } from './thermistor-table.js';
export {
  thermistorTableEach,
  type ThermistorTableEachInput,
  type ThermistorTableEachResult,
} from './thermistor-table-each.js';
export {
  thermistorTemperature,
  type ThermistorTemperatureInput,
  type ThermistorTemperatureResult,
} from './thermistor-temperature.js';
export {
  thermistorTemperatureEach,
  type ThermistorTemperatureEachInput,
  type ThermistorTemperatureEachResult,
} from './thermistor-temperature-each.js';
export {
  thermocoupleTemperature,
  type ThermocoupleTemperatureInput,
  type ThermocoupleTemperatureResult,
} from './thermocouple-temperature.js';
export {
  thermocoupleTolerance,
  type ThermocoupleToleranceInput,
  type ThermocoupleToleranceResult,
} from './thermocouple-tolerance.js';
export {
  thermocoupleVoltage,
  type ThermocoupleVoltageInput,
  type ThermocoupleVoltageResult,
} from './thermocouple-voltage.js';
