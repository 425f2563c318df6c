export { cellList } from './cell-list.js';
export { calibrationTableCard } from './table.js';
