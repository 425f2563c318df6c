export { peukertExponent, type PeukertExponentInput, type PeukertExponentResult } from './peukert-exponent.js';
export {
  type DischargeStage,
  type RunTime,
  runTime,
  type RunTimeInput,
  type RunTimeResult,
  type SolvedStage,
} from './run-time.js';
