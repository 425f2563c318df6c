export { cellList } from './cell-list.js';
export { faultBandsCard } from './fault-bands.js';
export { lookUpCard } from './look-up.js';
export { calibrationTableCard } from './table.js';
