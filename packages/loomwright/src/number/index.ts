export { findRoot, type FindRootInput } from './find-root.js';
export { integrate, type IntegrateInput, type IntegrateResult } from './integrate.js';
export { leastSquares, type LeastSquaresInput, type LeastSquaresResult } from './least-squares.js';
export { monotoneCurve, type MonotoneCurve, type MonotoneCurveInput, type MonotoneLimiter } from './monotone-curve.js';
export { monotonePlace } from './monotone-place.js';
export { monotoneValue, type MonotoneValue } from './monotone-value.js';
export type { SpreadResult } from './spread-of.js';
export { solveLinear, type SolveLinearInput } from './solve-linear.js';
