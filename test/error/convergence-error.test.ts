import { describe, expect, it } from 'vitest';
import { ConvergenceError, findRoot } from 'loomwright';

describe('the error of an iteration', () => {
  it('carries function, steps, best estimate and residual', () => {
    const error = new ConvergenceError('conductorTemperature', 100, 85.2, 0.01);
    expect(error).toBeInstanceOf(Error);
    expect({ ...error }).toEqual({
      code: 'LOOMWRIGHT_CONVERGENCE',
      name: 'ConvergenceError',
      fn: 'conductorTemperature',
      steps: 100,
      best: 85.2,
      residual: 0.01,
    });
    expect(error.message).toBe(
      'conductorTemperature: no answer within tolerance after 100 steps (residual 0.01 at 85.2)',
    );
  });
  it('is what a solver throws in the name of its caller', () => {
    expect(() => findRoot({ fn: 'caller', f: (x) => x * x + 1, low: 0, high: 1, tolerance: 1e-9 })).toThrow(
      'caller: no answer within tolerance after 2 steps (residual 1 at 0)',
    );
  });
});
