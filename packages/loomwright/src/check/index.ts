export type { NotPossible } from './answer.js';
export { type Check, type CheckInput, makeCheck, tightestCheck } from './check.js';
