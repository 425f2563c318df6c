export { ConvergenceError } from './convergence-error.js';
export { InputError, type InputRule } from './input-error.js';
