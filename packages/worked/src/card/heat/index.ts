export { airPropertiesCard, nusseltHorizontalCylinderCard, standardPressureCard } from './air.js';
export { altitudeFactorCard } from './altitude-factor.js';
export { ambientFactorCard } from './ambient-factor.js';
export { ampacityCard } from './ampacity.js';
export { bundleAmpacityCard, bundleFactorCard, bundleTemperatureCard, wiresInPlace } from './bundle.js';
export { conductorTemperatureCard } from './conductor-temperature.js';
export {
  adiabaticConstantCard,
  fusingCurrentCard,
  hotConductorLengthCard,
  shortCircuitWithstandCard,
} from './short-time.js';
export { tableAmpacityCard } from './table-ampacity.js';
export { pulsedTemperatureCard, timeToTemperatureCard } from './time.js';
