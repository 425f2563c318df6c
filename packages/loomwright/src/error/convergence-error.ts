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

  /** `where` names what does not come to rest, where that is known. */
  constructor(fn: string, steps: number, best: number, residual: number, where = '') {
    const of = where && ` of ${where}`;
    super(`${fn}: no answer${of} within tolerance after ${steps} steps (residual ${residual} at ${best})`);
    this.name = 'ConvergenceError';
    this.fn = fn;
    this.steps = steps;
    this.best = best;
    this.residual = residual;
  }
}
