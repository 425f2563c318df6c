/**
 * An iteration that did not meet its tolerance within its stated number of steps. Recognise it by
 * `code === 'LOOMWRIGHT_CONVERGENCE'`. It carries the best estimate, which the caller must not use as an answer.
 */
export class ConvergenceError extends Error {
  readonly code: 'LOOMWRIGHT_CONVERGENCE' = 'LOOMWRIGHT_CONVERGENCE';
  readonly fn: string;
  readonly steps: number;
  readonly best: number;
  readonly residual: number;

  constructor(fn: string, steps: number, best: number, residual: number) {
    super(`${fn}: no answer within tolerance after ${steps} steps (residual ${residual} at ${best})`);
    this.name = 'ConvergenceError';
    this.fn = fn;
    this.steps = steps;
    this.best = best;
    this.residual = residual;
  }
}
