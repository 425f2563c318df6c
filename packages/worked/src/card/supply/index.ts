export { peukertExponentCard, runTimeCard } from './run-time.js';
export { fuseDropCurrentCard, restingDrainCard } from './drain.js';
export { energyBudgetCard } from './budget.js';
