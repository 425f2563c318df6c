export * from './quantity/index.js';
export * from './card/index.js';
export * from './work/index.js';
export * from './draw/index.js';
export * from './plot/index.js';
