export { coilChargeCard, injectorFeedCard } from './coils.js';
export { lampAtVoltageCard, lampInrushCard } from './lamps.js';
export { motorStartCard } from './motor.js';
export { loadCurrentsCard, solvePathCard } from './path.js';
export { starterSolenoidCard } from './starter.js';
