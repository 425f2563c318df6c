import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  airProperties,
  conductorTemperature,
  nusseltHorizontalCylinder,
  timeToTemperature,
  type TimeToTemperatureInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { expectWithin } from '../support/published.js';

const input: TimeToTemperatureInput = {
  startTempC: 40,
  limitTempC: 105,
  currentA: 60,
  areaMm2: 2.5,
  insulationHeatJPerCm3K: 1.7,
  resistanceOhmPerM: 0.0076,
  ratedTempC: 20,
  conductorDiameterMm: 2.1,
  outerDiameterMm: 3,
  insulationConductivityWPerMK: 0.17,
  ambientTempC: 40,
  altitudeM: 0,
};
const { currentA: _, ...stepped } = input;

/** Heat given off by a metre of surface, from the public correlations. */
function surface(tempC: number, { outerDiameterMm, ambientTempC, altitudeM }: TimeToTemperatureInput): number {
  const d = outerDiameterMm / 1000;
  const rise = tempC - ambientTempC;
  const p = airProperties({ filmTempC: (tempC + ambientTempC) / 2, altitudeM });
  const rayleigh =
    (9.80665 * p.expansionPerK * Math.abs(rise) * d ** 3) / (p.kinematicViscosityM2PerS * p.diffusivityM2PerS);
  const { nusselt } = nusseltHorizontalCylinder({ rayleigh, prandtl: p.prandtl, convection: 'churchill-chu' });
  return (
    Math.PI * nusselt * p.conductivityWPerMK * rise +
    Math.PI * d * 0.9 * 5.670374419e-8 * ((tempC + 273.15) ** 4 - (ambientTempC + 273.15) ** 4)
  );
}

/** Chain of the conductor and n shells of equal resistance, after the same sharing of heat, written apart. */
function chain(wire: TimeToTemperatureInput, n: number) {
  const x = (wire.outerDiameterMm / wire.conductorDiameterMm) ** (1 / n);
  const p = 1 / (2 * Math.log(x)) - 1 / (x * x - 1);
  const heats = [3.45 * wire.areaMm2];
  for (let i = 0; i < n; i++) {
    const r1 = (wire.conductorDiameterMm / 2) * x ** i;
    const heat = Math.PI * ((r1 * x) ** 2 - r1 ** 2) * wire.insulationHeatJPerCm3K!;
    heats[i]! += p * heat;
    heats.push((1 - p) * heat);
  }
  const between = Math.log(x) / (2 * Math.PI * wire.insulationConductivityWPerMK!);
  const rates = (y: readonly number[], currentA: number): number[] => {
    let flow = (currentA ** 2 * wire.resistanceOhmPerM * (234.5 + y[0]!)) / (234.5 + wire.ratedTempC);
    return heats.map((heat, i) => {
      const on = i < n ? (y[i]! - y[i + 1]!) / between : surface(y[n]!, wire);
      const rate = (flow - on) / heat;
      flow = on;
      return rate;
    });
  };
  return { heats, rates };
}

/** The classical Runge–Kutta method with a fixed step: time to the limit, the last step by a straight line. */
function slow(wire: TimeToTemperatureInput, h: number, currentAt: (t: number) => number): number {
  const { heats, rates } = chain(wire, 4);
  let y = heats.map(() => wire.startTempC);
  const add = (a: readonly number[], b: readonly number[], f: number): number[] => a.map((v, i) => v + f * b[i]!);
  for (let t = 0; ; t += h) {
    const i = currentAt(t + h / 2);
    const k1 = rates(y, i);
    const k2 = rates(add(y, k1, h / 2), i);
    const k3 = rates(add(y, k2, h / 2), i);
    const k4 = rates(add(y, k3, h), i);
    const next = y.map((v, j) => v + (h / 6) * (k1[j]! + 2 * k2[j]! + 2 * k3[j]! + k4[j]!));
    if (next[0]! >= wire.limitTempC) return t + (h * (wire.limitTempC - y[0]!)) / (next[0]! - y[0]!);
    y = next;
  }
}

describe('independent', () => {
  it('agrees with the classical Runge–Kutta method in tiny steps, to 1e-5 of the time', { timeout: 60_000 }, () => {
    for (const [currentA, h] of [
      [45, 0.01],
      [60, 0.005],
      [100, 0.002],
      [300, 2e-4],
      [1500, 4e-6],
    ] as const) {
      const { timeS } = timeToTemperature({ ...input, currentA });
      expectWithin(
        timeS!,
        slow(input, h, () => currentA),
        1e-5,
      );
    }
  });
  it('and with steps of current', () => {
    const currentSteps = [{ currentA: 60, durationS: 10 }, { currentA: 30, durationS: 20 }, { currentA: 80 }];
    const { timeS } = timeToTemperature({ ...stepped, currentSteps });
    expectWithin(
      timeS!,
      slow(input, 0.005, (t) => (t < 10 ? 60 : t < 30 ? 30 : 80)),
      1e-5,
    );
  });
  it(
    'four shells stand for an insulation of forty: 0.1 % in minutes, 1 % in seconds, 10 % too long at most',
    { timeout: 60_000 },
    () => {
      // Implicit Euler in steps that grow, on the fine chain; its own error is below 0.05 % by halving.
      const fine = (currentA: number): number => {
        const run = (steps: number): number => {
          const { heats } = chain(input, 40);
          const x = (input.outerDiameterMm / input.conductorDiameterMm) ** (1 / 40);
          const g = (2 * Math.PI * 0.17) / Math.log(x);
          let y = heats.map(() => input.startTempC);
          const estimate = timeToTemperature({ ...input, currentA }).timeS!;
          const h = estimate / steps;
          for (let t = 0; ; t += h) {
            // One step: tridiagonal, the surface and the resistance taken at the last temperatures.
            const last = heats.length - 1;
            const made = (currentA ** 2 * 0.0076 * (234.5 + y[0]!)) / 254.5;
            const out = surface(y[last]!, input);
            const lower = heats.map((_, i) => (i > 0 ? -g : 0));
            const upper = heats.map((_, i) => (i < last ? -g : 0));
            const main = heats.map((heat, i) => heat / h - lower[i]! - upper[i]!);
            const side = heats.map((heat, i) => (heat / h) * y[i]! + (i === 0 ? made : 0) - (i === last ? out : 0));
            for (let i = 1; i <= last; i++) {
              const f = lower[i]! / main[i - 1]!;
              main[i]! -= f * upper[i - 1]!;
              side[i]! -= f * side[i - 1]!;
            }
            const next = [...y];
            for (let i = last; i >= 0; i--) next[i] = (side[i]! - (i < last ? upper[i]! * next[i + 1]! : 0)) / main[i]!;
            if (next[0]! >= 105) return t + (h * (105 - y[0]!)) / (next[0]! - y[0]!);
            y = next;
          }
        };
        return 2 * run(8000) - run(4000); // one step of Richardson's extrapolation
      };
      for (const [currentA, most] of [
        [42, 0.001],
        [60, 0.001],
        [100, 0.002],
        [200, 0.01],
        [1000, 0.06],
        [3000, 0.1],
      ] as const) {
        const ratio = timeToTemperature({ ...input, currentA }).timeS! / fine(currentA);
        expect(Math.abs(ratio - 1), `${currentA} A`).toBeLessThan(most);
      }
    },
  );
  it('the adiabatic time is the closed form, and the whole is never shorter', () => {
    const heat = 3.45 * 2.5;
    for (const currentA of [40, 60, 300, 3000]) {
      const { timeS, adiabaticTimeS } = timeToTemperature({ ...input, currentA });
      const closed = ((heat * 254.5) / (currentA ** 2 * 0.0076)) * Math.log((234.5 + 105) / (234.5 + 40));
      expectWithin(adiabaticTimeS!, closed, 1e-12);
      expect(timeS!).toBeGreaterThan(closed);
    }
    // A bare wire in a short circuit has nothing else.
    const bare = timeToTemperature({ ...input, outerDiameterMm: 2.1, currentA: 5000 });
    expectWithin(bare.timeS!, bare.adiabaticTimeS!, 1e-4);
  });
});

describe('laws', () => {
  it(
    'more current, a hotter start, hotter air and a lower limit never take longer; more copper never less',
    { timeout: 60_000 },
    () => {
      fc.assert(
        fc.property(fc.double({ min: 45, max: 900, noNaN: true }), evenly(-20, 60), (currentA, ambientTempC) => {
          const base = { ...input, currentA, ambientTempC, startTempC: ambientTempC };
          const { timeS } = timeToTemperature(base);
          if (timeS === null) return;
          const never = (rest: Partial<TimeToTemperatureInput>): void =>
            expect(timeToTemperature({ ...base, ...rest }).timeS!).toBeLessThanOrEqual(timeS * (1 + 1e-6));
          never({ currentA: currentA * 1.1 });
          never({ startTempC: ambientTempC + 5 });
          never({ ambientTempC: ambientTempC + 5 });
          never({ limitTempC: 100 });
          never({ altitudeM: 3000 });
          expect(timeToTemperature({ ...base, areaMm2: 2.2 }).timeS!).toBeLessThan(timeS);
        }),
        { numRuns: 40 },
      );
    },
  );
  it('is never reached exactly where the steady temperature stays below', () => {
    for (const currentA of [10, 30, 36, 36.7, 36.8, 38]) {
      const { timeS, reason, steadyTempC } = timeToTemperature({ ...input, currentA });
      expectWithin(steadyTempC!, conductorTemperature({ ...input, currentA }).conductorTempC!, 1e-12);
      expect(reason).toBe(steadyTempC! > 105 ? null : 'never-reached');
      expect(timeS === null).toBe(steadyTempC! <= 105);
    }
  });
  it('a current cut into equal steps is one current', () => {
    const whole = timeToTemperature(input).timeS!;
    const cut = timeToTemperature({
      ...stepped,
      currentSteps: [{ currentA: 60, durationS: 7 }, { currentA: 60, durationS: 11 }, { currentA: 60 }],
    }).timeS!;
    expectWithin(cut, whole, 1e-6);
  });
  it('changes when two inputs of a kind are swapped', () =>
    swapsMatter(timeToTemperature, { ...input, startTempC: 30, ratedTempC: 25, emissivity: 0.8 }));
});

describe('edges', () => {
  it('is there already, or the steps end before', () => {
    expect(timeToTemperature({ ...input, startTempC: 105 })).toMatchObject({ timeS: 0, reason: 'already-there' });
    const short = timeToTemperature({ ...stepped, currentSteps: [{ currentA: 60, durationS: 10 }] });
    expect(short).toMatchObject({ timeS: null, reason: 'not-within-steps', adiabaticTimeS: null });
    expect(short.endTempC).toBeGreaterThan(60);
    expect(short.endTempC).toBeLessThan(90);
  });
  it('no current never warms', () => {
    expect(timeToTemperature({ ...input, currentA: 0 })).toMatchObject({
      timeS: null,
      reason: 'never-reached',
      adiabaticTimeS: null,
      steadyTempC: 40,
    });
  });
  it('reaches a limit for a while from a warm cover, though the steady state lies below', () => {
    const found = timeToTemperature({ ...input, startTempC: 104.9, currentA: 36.7 });
    expect(found.steadyTempC!).toBeLessThan(105);
    expect(found.reason).toBe(null);
    expect(found.timeS!).toBeLessThan(1);
  });
  it('warms in hot air without current of its own', () => {
    const found = timeToTemperature({ ...input, currentA: 0, startTempC: 20, limitTempC: 60, ambientTempC: 90 });
    expect(found.timeS!).toBeGreaterThan(10);
    expect(found.adiabaticTimeS).toBe(null);
  });
  it('refuses nonsense', () => {
    refusesNonsense(timeToTemperature, input, {
      required: [
        'startTempC',
        'limitTempC',
        'areaMm2',
        'insulationHeatJPerCm3K',
        'resistanceOhmPerM',
        'ambientTempC',
        'altitudeM',
        'currentA',
      ],
    });
    const steps = (currentSteps: unknown) => () =>
      timeToTemperature({ ...stepped, currentSteps: currentSteps as never });
    expectInputError(steps([]), 'currentSteps', 'list');
    expectInputError(steps('60 A'), 'currentSteps', 'list');
    expectInputError(steps([3]), 'currentSteps[0]', 'object');
    expectInputError(steps([{ currentA: -1 }]), 'currentSteps[0].currentA', 'atLeast');
    expectInputError(steps([{ currentA: 1 }, { currentA: 1 }]), 'currentSteps[0].durationS', 'missing');
    expectInputError(steps([{ currentA: 1, durationS: 0 }]), 'currentSteps[0].durationS', 'above');
    expectInputError(() => timeToTemperature({ ...input, currentSteps: [{ currentA: 1 }] }), 'currentA', 'oneOfFields');
    expectInputError(() => timeToTemperature({ ...input, areaMm2: 3.6 }), 'areaMm2', 'atMost');
    expectInputError(() => timeToTemperature({ ...input, limitTempC: 401 }), 'limitTempC', 'atMost');
  });
});
