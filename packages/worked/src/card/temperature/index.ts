export { betaFromPointsCard, thermistorResistanceCard, thermistorTemperatureCard } from './curve.js';
export { curveChoices, curveOfValues } from './curve-fields.js';
export { fitSteinhartHartCard, fitUncertaintyCard, thermistorResidualsCard } from './fit.js';
export {
  findPullUpCard,
  tempsBetween,
  thermistorErrorBudgetCard,
  thermistorInputCard,
  thermistorSelfHeatingCard,
} from './input.js';
export { rtdResistanceCard, rtdTemperatureCard, rtdToleranceCard } from './rtd.js';
export { thermocoupleTemperatureCard, thermocoupleToleranceCard, thermocoupleVoltageCard } from './thermocouple.js';
