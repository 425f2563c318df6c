export { ambientFactor, type AmbientFactorInput, type AmbientFactorResult } from './ambient-factor.js';
export { tableAmpacity, type TableAmpacityInput, type TableAmpacityResult } from './table-ampacity.js';
