export { good, areaToGood, type GoodInput } from './good.js';
export { twoArguments, plainArgument, aToB } from './arguments.js';
export type { Unit } from './unit.js';
