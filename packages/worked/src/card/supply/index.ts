export { peukertExponentCard, runTimeCard } from './run-time.js';
export { fuseDropCurrentCard, restingDrainCard } from './drain.js';
export { energyBudgetCard } from './budget.js';
export { senseErrorCard } from './sense.js';
export {
  acidVoltageCard,
  batteryLoadTestCard,
  batteryResistanceCard,
  openCircuitVoltageCard,
  stateOfChargeCard,
} from './battery.js';
export { crankingCircuitCard } from './cranking.js';
export { crankingParts, readingList } from './cranking-lists.js';
export { excitationResistorCard } from './excitation.js';
export { splitChargeCard } from './split.js';
export { isolatorOpeningCard, loadDumpCard } from './isolator.js';
