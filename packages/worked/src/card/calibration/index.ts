export { cellList } from './cell-list.js';
export { lookUpCard } from './look-up.js';
export { calibrationTableCard } from './table.js';
