export { analyseNodes, type AnalyseNodesInput, type NodeAnalysis } from './analyse-nodes.js';
export { analyseSymmetric, type AnalyseSymmetricInput, type SymmetricAnalysis } from './analyse-symmetric.js';
export { cubicCurve, type CubicCurveInput, type CubicMethod, type PiecewiseCubic } from './cubic-curve.js';
export { cubicValue, type CubicValue } from './cubic-value.js';
export {
  factorSymmetric,
  type FactorSymmetricInput,
  type NotDefinite,
  type SymmetricFactor,
} from './factor-symmetric.js';
export { type Bridges, findBridges, type FindBridgesInput } from './find-bridges.js';
export { findRoot, type FindRootInput } from './find-root.js';
export { integrate, type IntegrateInput, type IntegrateResult } from './integrate.js';
export { isotonicFit, type IsotonicBlock, type IsotonicFitInput } from './isotonic-fit.js';
export { leastSquares, type LeastSquaresInput, type LeastSquaresResult } from './least-squares.js';
export { monotoneCurve, type MonotoneCurve, type MonotoneCurveInput, type MonotoneLimiter } from './monotone-curve.js';
export { monotonePlace } from './monotone-place.js';
export { monotoneValue, type MonotoneValue } from './monotone-value.js';
export type { SpreadResult } from './spread-of.js';
export { solveLinear, type SolveLinearInput } from './solve-linear.js';
export { solveNodes, type SolvedNodes, type SolveNodesInput, type UnsolvedNodes } from './solve-nodes.js';
export { solveSymmetric, type SolveSymmetricInput } from './solve-symmetric.js';
export { sweepTree, type SweepTreeInput, type TreeSweep } from './sweep-tree.js';
