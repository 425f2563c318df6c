import { describe, expect, it } from 'vitest';
import { integrate, type IntegrateInput } from 'loomwright';
import { expectWithin } from '../support/published.js';

const run = (rest: Partial<IntegrateInput> & Pick<IntegrateInput, 'rates' | 'start' | 'duration'>) =>
  integrate({ fn: 'test', tolerance: 1e-9, ...rest });

describe('independent', () => {
  it('follows systems solved in closed form', () => {
    const decay = run({ rates: (y, out) => void (out[0] = -0.7 * y[0]!), start: Float64Array.of(5), duration: 3 });
    expectWithin(decay.state[0]!, 5 * Math.exp(-2.1), 1e-8);
    expect(decay).toMatchObject({ time: 3, ended: 'duration' });
    // Logistic growth.
    const grown = run({
      rates: (y, out) => void (out[0] = y[0]! * (1 - y[0]!)),
      start: Float64Array.of(0.01),
      duration: 6,
    });
    expectWithin(grown.state[0]!, 1 / (1 + 99 * Math.exp(-6)), 1e-8);
    // A turn of a circle.
    const turn = run({
      rates: (y, out) => {
        out[0] = -y[1]!;
        out[1] = y[0]!;
      },
      start: Float64Array.of(1, 0),
      duration: 2 * Math.PI,
    });
    expect(Math.hypot(turn.state[0]! - 1, turn.state[1]!)).toBeLessThan(1e-6);
  });
  it('is of order 4: a step halved leaves a sixteenth of the error', () => {
    // With a generous tolerance and a duration below the first step, one call is one step.
    const off = (h: number): number => {
      const rates = (y: Float64Array, out: Float64Array): void => void (out[0] = y[0]! * y[0]!);
      const n = Math.round(0.4 / h);
      let y = Float64Array.of(1);
      for (let i = 0; i < n; i++) y = run({ rates, start: y, duration: h, tolerance: 1e9 }).state as typeof y;
      return Math.abs(y[0]! - 1 / (1 - 0.4));
    };
    const order = Math.log2(off(0.02) / off(0.01));
    expect(order).toBeGreaterThan(3.8);
    expect(order).toBeLessThan(4.3);
  });
  it('takes stiff systems in few steps', () => {
    let calls = 0;
    const stiff = run({
      rates: (y, out) => {
        calls++;
        out[0] = -1e6 * (y[0]! - y[1]!);
        out[1] = -0.01 * y[1]!;
      },
      start: Float64Array.of(0, 1),
      duration: 100,
      tolerance: 1e-7,
    });
    expectWithin(stiff.state[0]!, Math.exp(-1), 1e-5);
    expect(calls).toBeLessThan(3000);
  });
  it('finds the moment of an event', () => {
    const half = run({
      rates: (y, out) => void (out[0] = -y[0]!),
      start: Float64Array.of(1),
      duration: Infinity,
      event: (y) => 0.5 - y[0]!,
    });
    expect(half.ended).toBe('event');
    expectWithin(half.time, Math.LN2, 1e-8);
  });
});

describe('edges', () => {
  const falling = {
    rates: (y: Float64Array, out: Float64Array): void => void (out[0] = -y[0]!),
    start: Float64Array.of(1),
  };
  it('ends at once where the event is past or all is settled', () => {
    expect(run({ ...falling, duration: 1, event: () => 0 })).toMatchObject({ time: 0, ended: 'event' });
    expect(run({ ...falling, duration: 1, settled: () => true })).toMatchObject({ time: 0, ended: 'settled' });
    expect(run({ ...falling, duration: Infinity, settled: (y) => y[0]! < 1e-3 }).ended).toBe('settled');
  });
  it('stands still where nothing changes', () => {
    expect(run({ rates: (_, out) => void (out[0] = 0), start: Float64Array.of(4), duration: 9 }).state[0]).toBe(4);
  });
  it('does not change what it is given', () => {
    const start = Float64Array.of(1);
    run({ ...falling, start, duration: 1 });
    expect(start[0]).toBe(1);
  });
  it('says so when steps run out or a rate is no number', () => {
    expect(() => run({ ...falling, duration: Infinity, steps: 50 })).toThrow(/test: no answer/);
    expect(() => run({ ...falling, rates: (_, out) => void (out[0] = NaN), duration: 1 })).toThrow(/test: no answer/);
  });
});
