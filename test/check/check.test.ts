import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { makeCheck, tightestCheck, type Check, type CheckInput } from 'loomwright';

const base: CheckInput = {
  name: 'voltage at the load',
  value: 12.4,
  limit: 12,
  unit: 'V',
  sense: 'atLeast',
  source: 'given-by-caller',
  sourceStatus: 'derived',
};

describe('independent', () => {
  it('works out verdict and margin, worked by hand', () => {
    expect(makeCheck(base)).toEqual({ ...base, marginFraction: (12.4 - 12) / 12, ok: true });
    expect(makeCheck({ ...base, sense: 'atMost' })).toMatchObject({ marginFraction: (12 - 12.4) / 12, ok: false });
    expect(makeCheck({ ...base, value: 11 })).toMatchObject({ marginFraction: -1 / 12, ok: false });
  });
  it('measures the margin of a limit below zero by its size', () => {
    expect(makeCheck({ ...base, value: -30, limit: -40 })).toMatchObject({ marginFraction: 0.25, ok: true });
    expect(makeCheck({ ...base, value: -50, limit: -40 })).toMatchObject({ marginFraction: -0.25, ok: false });
  });
  it('carries the reason only where there is one', () => {
    expect(makeCheck(base)).not.toHaveProperty('because');
    expect(makeCheck({ ...base, because: 'hot' }).because).toBe('hot');
    expect(makeCheck({ ...base, okWithoutNumber: false }).ok).toBe(true);
  });
});

describe('laws', () => {
  const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  const sense = fc.constantFrom('atMost' as const, 'atLeast' as const);
  it('is met exactly where the margin is 0 or more, and compares unrounded', () => {
    fc.assert(
      fc.property(number, number, sense, (value, limit, way) => {
        const check = makeCheck({ ...base, value, limit, sense: way });
        expect(check.ok).toBe(way === 'atMost' ? value <= limit : value >= limit);
        expect((check.marginFraction ?? NaN) >= 0).toBe(check.ok);
        expect(Number.isFinite(check.marginFraction)).toBe(true);
      }),
    );
  });
  it('a limit that is just reached is met, with no margin', () => {
    fc.assert(
      fc.property(number, sense, (value, way) => {
        expect(makeCheck({ ...base, value, limit: value, sense: way })).toMatchObject({ ok: true });
        expect(Math.abs(makeCheck({ ...base, value, limit: value, sense: way }).marginFraction ?? NaN)).toBe(0);
      }),
    );
  });
  it('the tightest of several is one of them: a failed one if any, and none has less room', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(number, number, sense), { minLength: 1, maxLength: 8 }), (list) => {
        const checks = list.map(([value, limit, way]) => makeCheck({ ...base, value, limit, sense: way }));
        const tightest = tightestCheck(checks);
        expect(checks).toContain(tightest);
        expect(tightest?.ok).toBe(checks.every((check) => check.ok));
        const same = checks.filter((check) => check.ok === tightest?.ok);
        expect(tightest?.marginFraction).toBe(Math.min(...same.map((check) => check.marginFraction ?? NaN)));
      }),
    );
  });
});

describe('edges', () => {
  it('has no margin where there is no number, and takes the verdict that it is given', () => {
    const never = { ...base, value: null, because: 'never opens' };
    expect(makeCheck(never)).toMatchObject({ value: null, marginFraction: null, ok: false, because: 'never opens' });
    expect(makeCheck({ ...never, okWithoutNumber: true })).toMatchObject({ marginFraction: null, ok: true });
    expect(makeCheck({ ...base, limit: null, okWithoutNumber: true })).toMatchObject({
      marginFraction: null,
      ok: true,
    });
  });
  it('never lets a limit of 0 make an infinite margin', () => {
    expect(makeCheck({ ...base, value: 1, limit: 0 })).toMatchObject({ marginFraction: 1, ok: true });
    expect(makeCheck({ ...base, value: -1, limit: 0 })).toMatchObject({ marginFraction: -1, ok: false });
    expect(makeCheck({ ...base, value: 0, limit: 0 })).toMatchObject({ marginFraction: 0, ok: true });
  });
  it('does not call a value that is not a number met', () => {
    expect(makeCheck({ ...base, value: NaN }).ok).toBe(false);
  });
  it('puts a failed check without a number before all, a met one without a number last', () => {
    const met = makeCheck(base);
    const failed = makeCheck({ ...base, value: 1, name: 'failed' });
    const never = makeCheck({ ...base, value: null, name: 'never' });
    const unlimited = makeCheck({ ...base, limit: null, okWithoutNumber: true, name: 'unlimited' });
    const first = (...checks: Check[]): string | undefined => tightestCheck(checks)?.name;
    expect(first(met, failed, never, unlimited)).toBe('never');
    expect(first(met, failed, unlimited)).toBe('failed');
    expect(first(never, met)).toBe('never');
    expect(first(unlimited, failed)).toBe('failed');
    expect(first(unlimited, met)).toBe(base.name);
    expect(first(unlimited)).toBe('unlimited');
    expect(tightestCheck([])).toBeNull();
  });
});

describe('regression', () => {
  it('tells failed checks apart however near they are, and no limit makes the margin infinite', () => {
    const failed = (value: number): Check => makeCheck({ ...base, value, name: String(value) });
    expect(tightestCheck([failed(11.99999), failed(11.99998), failed(11.999985)])?.name).toBe('11.99998');
    expect(makeCheck({ ...base, value: -1, limit: 5e-324 })).toMatchObject({ marginFraction: -1, ok: false });
  });
});
