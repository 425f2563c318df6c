export { cellList } from './cell-list.js';
export { faultBandsCard } from './fault-bands.js';
export { linearSensorCard } from './linear-sensor.js';
export { lookUpCard } from './look-up.js';
export { sharedSensorCard } from './shared-sensor.js';
export { calibrationTableCard } from './table.js';
export { switchingBandCard } from './switching-band.js';
export { warningLimitsCard } from './warning-limits.js';
