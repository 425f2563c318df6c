export { airProperties, type AirPropertiesInput, type AirPropertiesResult } from './air-properties.js';
export { ambientFactor, type AmbientFactorInput, type AmbientFactorResult } from './ambient-factor.js';
export { ampacity, type AmpacityInput, type AmpacityResult } from './ampacity.js';
export {
  conductorTemperature,
  type ConductorTemperatureInput,
  type ConductorTemperatureResult,
} from './conductor-temperature.js';
export {
  type Convection,
  nusseltHorizontalCylinder,
  type NusseltHorizontalCylinderInput,
  type NusseltHorizontalCylinderResult,
} from './nusselt-horizontal-cylinder.js';
export { standardPressure, type StandardPressureInput, type StandardPressureResult } from './standard-pressure.js';
export { tableAmpacity, type TableAmpacityInput, type TableAmpacityResult } from './table-ampacity.js';
export type { NoTemperature, WireInAir } from './wire-in-air.js';
