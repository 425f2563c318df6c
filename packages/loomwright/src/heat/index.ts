export { adiabaticConstant, type AdiabaticConstantInput, type AdiabaticConstantResult } from './adiabatic-constant.js';
export { airProperties, type AirPropertiesInput, type AirPropertiesResult } from './air-properties.js';
export {
  altitudeFactor,
  type AltitudeFactorInput,
  type AltitudeFactorResult,
  type AltitudeRule,
  type WireAtAltitude,
} from './altitude-factor.js';
export { ambientFactor, type AmbientFactorInput, type AmbientFactorResult } from './ambient-factor.js';
export { ampacity, type AmpacityInput, type AmpacityResult } from './ampacity.js';
export { bundleAmpacity, type BundleAmpacityInput, type BundleAmpacityResult } from './bundle-ampacity.js';
export { bundleFactor, type BundleFactorInput, type BundleFactorResult, type BundleRule } from './bundle-factor.js';
export {
  bundleTemperature,
  type BundleTemperatureInput,
  type BundleTemperatureResult,
  type WireInBundle,
} from './bundle-temperature.js';
export {
  conductorTemperature,
  type ConductorTemperatureInput,
  type ConductorTemperatureResult,
} from './conductor-temperature.js';
export { fusingCurrent, type FusingCurrentInput, type FusingCurrentResult, type FusingRule } from './fusing-current.js';
export {
  hotConductorLength,
  type HotConductorLengthInput,
  type HotConductorLengthResult,
} from './hot-conductor-length.js';
export {
  type Convection,
  nusseltHorizontalCylinder,
  type NusseltHorizontalCylinderInput,
  type NusseltHorizontalCylinderResult,
} from './nusselt-horizontal-cylinder.js';
export { pulsedTemperature, type PulsedTemperatureInput, type PulsedTemperatureResult } from './pulsed-temperature.js';
export type { RuleFactor } from './rule-factor.js';
export {
  type ShortCircuitMetal,
  shortCircuitWithstand,
  type ShortCircuitWithstandInput,
  type ShortCircuitWithstandResult,
} from './short-circuit-withstand.js';
export { standardPressure, type StandardPressureInput, type StandardPressureResult } from './standard-pressure.js';
export { tableAmpacity, type TableAmpacityInput, type TableAmpacityResult } from './table-ampacity.js';
export {
  type CurrentStep,
  timeToTemperature,
  type TimeToTemperatureInput,
  type TimeToTemperatureResult,
} from './time-to-temperature.js';
export type { NoTemperature, WireInAir } from './wire-in-air.js';
export type { WireInTime } from './wire-in-time.js';
export { type Heated, type Heating } from './heating.js';
export { type BalanceHeating, heatingByBalance, type HeatingByBalanceInput } from './heating-by-balance.js';
export { heatingByTable, type HeatingByTableInput, type TableHeating } from './heating-by-table.js';
