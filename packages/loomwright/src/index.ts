export * from './error/index.js';
export * from './unit/index.js';
export * from './source/index.js';
export * from './check/index.js';
export * from './number/index.js';
export * from './table/index.js';
export * from './conductor/index.js';
