import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { motorStart, type MotorStartInput, solvePath } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const fan: MotorStartInput = {
  supplyV: 13.5,
  pathResistanceOhm: 0.05,
  windingResistanceOhm: 0.2,
  inductanceH: 0.0002,
  speedConstantRpmPerV: 220,
  inertiaKgM2: 0.002,
  ratedCurrentA: 15,
  ratedV: 13,
  torque: 'speed-squared',
  rampS: 0,
};
const lift: MotorStartInput = { ...fan, torque: 'constant', inertiaKgM2: 0.0006, ratedCurrentA: 18 };

describe('published', () => {
  const practice = (place: string) => ({ source: 'common-practice', place, status: 'common-practice' }) as const;
  computed('a radiator fan takes 3 to 5 times for 0.5 to 1.5 s', practice('radiator fans'), () => {
    const { inrushRatio, runUpS } = motorStart(fan);
    expect(inrushRatio).toBeGreaterThan(3);
    expect(inrushRatio).toBeLessThan(5);
    expect(runUpS!).toBeGreaterThan(0.45);
    expect(runUpS!).toBeLessThan(1.5);
  });
  computed('a small motor at standstill draws 4 to 8 times its running current', practice('stall over run'), () => {
    const { stallA, steadyA } = motorStart({ ...fan, pathResistanceOhm: 0 });
    expect(stallA / steadyA).toBeGreaterThan(4);
    expect(stallA / steadyA).toBeLessThan(8);
  });
  computed('inrush equals stall at standstill, for a rotor heavy enough', practice('brushed motors'), () => {
    const { peakA, stallA } = motorStart({ ...fan, inertiaKgM2: 2 });
    expectWithin(peakA, stallA, 0.005);
  });
});

describe('independent', { timeout: 60_000 }, () => {
  /** The motor as a winding and a voltage that a capacitor holds; the channel as duty times what stands before it. */
  const netlist = (x: MotorStartInput, endS: number): string => {
    const k = 30 / (Math.PI * x.speedConstantRpmPerV);
    const a = (k * k) / x.inertiaKgM2;
    const emf = x.ratedV - x.ratedCurrentA * x.windingResistanceOhm;
    const load =
      x.torque === 'constant'
        ? `min(${x.ratedCurrentA}, i(Vm)+1000*V(e))`
        : `${x.ratedCurrentA / emf ** 2}*V(e)*abs(V(e))`;
    return [
      x.rampS > 0 ? `Vd d 0 PWL(0 0 ${x.rampS} 1 ${10 * endS} 1)` : 'Vd d 0 1',
      `B1 b 0 V=V(d)*(${x.supplyV}-${x.pathResistanceOhm}*i(Vm))`,
      'Vm b c 0',
      `L1 c f ${x.inductanceH} ic=0`,
      `R1 f g ${x.windingResistanceOhm}`,
      'B2 g 0 V=V(e)',
      'C1 e 0 1 ic=0',
      `B3 0 e I=${a}*(i(Vm)-${load})`,
      '.options reltol=1e-5 method=gear',
      `.tran ${endS / 2000} ${endS} 0 ${Math.min(endS / 4000, x.inductanceH / x.windingResistanceOhm / 4)} uic`,
    ].join('\n');
  };
  it.each([
    ['a fan switched on hard', fan, 0.7],
    ['a fan with a soft start', { ...fan, rampS: 0.6 }, 1.1],
    ['a lift switched on hard', lift, 0.6],
    ['a lift with a soft start', { ...lift, rampS: 0.3 }, 0.8],
    ['a light rotor with much inductance', { ...fan, inertiaKgM2: 0.00005, inductanceH: 0.002 }, 0.1],
  ] as const)('agrees with a circuit simulator to 1 %%: %s', async (_, motor, endS) => {
    const ours = motorStart(motor);
    const theirs = await simulate(netlist(motor, endS));
    const [t, i, e, d] = [theirs['time']!, theirs['i(vm)']!, theirs['v(e)']!, theirs['v(d)']!];
    const peak = Math.max(...i);
    expectWithin(ours.peakA, peak, 0.01);
    const flat = i.filter((x) => x > 0.995 * peak).length;
    if (flat < 40) expectWithin(ours.peakTimeS, t[i.indexOf(peak)]!, 0.05);
    const wanted = (0.95 * ours.steadyRpm) / motor.speedConstantRpmPerV;
    const k = e.findIndex((x) => x >= wanted);
    expectWithin(ours.runUpS!, t[k]!, 0.01);
    let charge = 0;
    let i2t = 0;
    for (let j = 1; j <= k; j++) {
      const dt = t[j]! - t[j - 1]!;
      charge += (dt * (d[j]! * i[j]! + d[j - 1]! * i[j - 1]!)) / 2;
      i2t += (dt * (d[j]! * i[j]! ** 2 + d[j - 1]! * i[j - 1]! ** 2)) / 2;
    }
    expectWithin(ours.i2tA2s!, i2t, 0.01);
    expectWithin(ours.meanA, charge / t[k]!, 0.01);
    expectWithin(ours.rmsA, Math.sqrt(i2t / t[k]!), 0.01);
  });

  it('finds the first top of a light rotor that rings as it breaks away: the same equations in small even steps', () => {
    const ringing: MotorStartInput = {
      supplyV: 9,
      pathResistanceOhm: 0,
      windingResistanceOhm: 0.05,
      inductanceH: 2e-5,
      speedConstantRpmPerV: 100,
      inertiaKgM2: 1.26e-4,
      ratedCurrentA: 2.66,
      ratedV: 13,
      torque: 'constant',
      rampS: 1,
    };
    for (const pathResistanceOhm of [0, 0.2]) {
      const ours = motorStart({ ...ringing, pathResistanceOhm });
      const k = 30 / (Math.PI * ringing.speedConstantRpmPerV);
      const rates = (t: number, i: number, e: number): [number, number] => [
        (t * ringing.supplyV - (ringing.windingResistanceOhm + t * pathResistanceOhm) * i - e) / ringing.inductanceH,
        e <= 0 && i < ringing.ratedCurrentA ? 0 : (k * k * (i - ringing.ratedCurrentA)) / ringing.inertiaKgM2,
      ];
      const step = 1e-6;
      let [i, e, peak] = [0, 0, 0];
      for (let n = 0; n < 40_000; n++) {
        const [di, de] = rates(n * step, i, e);
        const [dj, df] = rates((n + 0.5) * step, i + 0.5 * step * di, e + 0.5 * step * de);
        i += step * dj;
        e = Math.max(0, e + step * df);
        peak = Math.max(peak, i);
      }
      expectWithin(ours.peakA, peak, 1e-4);
      expect(ours.peakTimeS).toBeLessThan(0.02);
    }
  });

  it('follows the closed form of two poles: a constant load that asks for next to nothing', () => {
    const free: MotorStartInput = { ...lift, ratedCurrentA: 1e-9, inertiaKgM2: 0.0004, inductanceH: 0.0005 };
    const k = 30 / (Math.PI * free.speedConstantRpmPerV);
    const ohm = free.windingResistanceOhm + free.pathResistanceOhm;
    // L i'' + R i' + (K²/J) i = 0 from i = 0 and i' = V/L.
    const alpha = ohm / (2 * free.inductanceH);
    const root = alpha ** 2 - k ** 2 / (free.inertiaKgM2 * free.inductanceH);
    expect(root).toBeGreaterThan(0);
    const w = Math.sqrt(root);
    const top = Math.atanh(w / alpha) / w;
    const peak = (free.supplyV / (free.inductanceH * w)) * Math.exp(-alpha * top) * Math.sinh(w * top);
    const ours = motorStart(free);
    expectWithin(ours.peakA, peak, 1e-5);
    expectWithin(ours.peakTimeS, top, 1e-3);
  });
});

describe('laws', () => {
  const motors = fc.record({
    supplyV: fc.double({ min: 9, max: 15, noNaN: true }),
    pathResistanceOhm: evenlyWithEnds(0, 0.2),
    windingResistanceOhm: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
    inductanceH: fc.double({ min: 2e-5, max: 1e-3, noNaN: true }),
    speedConstantRpmPerV: fc.double({ min: 100, max: 500, noNaN: true }),
    inertiaKgM2: fc.double({ min: 1e-4, max: 1e-2, noNaN: true }),
    ratedCurrentA: fc.double({ min: 1, max: 15, noNaN: true }),
    ratedV: fc.constant(13),
    torque: fc.constantFrom('constant' as const, 'speed-squared' as const),
    rampS: fc.constantFrom(0, 0.2, 1),
  });
  it('more path resistance never raises the peak; a soft start never does; r.m.s. lies between mean and peak', () => {
    fc.assert(
      fc.property(motors, fc.double({ min: 1e-3, max: 0.2, noNaN: true }), (motor, more) => {
        const a = motorStart(motor);
        const b = motorStart({ ...motor, pathResistanceOhm: motor.pathResistanceOhm + more });
        const hard = motorStart({ ...motor, rampS: 0 });
        expect(b.peakA).toBeLessThanOrEqual(a.peakA * (1 + 1e-5));
        expect(a.peakA).toBeLessThanOrEqual(hard.peakA * (1 + 1e-5));
        for (const x of [a, b, hard]) {
          expect(x.peakA).toBeLessThanOrEqual(Math.max(x.stallA, x.steadyA) * (1 + 1e-5));
          expect(x.peakA).toBeGreaterThanOrEqual(x.steadyA);
          expect(x.rmsA).toBeLessThanOrEqual(x.peakA * (1 + 1e-5));
          expect(x.meanA).toBeLessThanOrEqual(x.rmsA * (1 + 1e-9));
        }
      }),
      { numRuns: 40 },
    );
  });
  it('ends where the same motor runs in a solved path', () => {
    for (const { supplyV, pathResistanceOhm, rampS: _, inductanceH: __, inertiaKgM2: ___, ...motor } of [fan, lift]) {
      const solved = solvePath({
        supplyV,
        outParts: [{ name: 'path', resistanceOhm: pathResistanceOhm }],
        returnParts: [],
        load: { kind: 'motor', ...motor },
      });
      const { steadyA, steadyRpm } = motorStart({ ...fan, supplyV, pathResistanceOhm, ...motor });
      expect(solved).toMatchObject({ currentA: steadyA, speedRpm: steadyRpm });
    }
  });
  it('twice the inertia is about twice the run-up, where the winding is quick', () => {
    const a = motorStart(fan).runUpS!;
    const b = motorStart({ ...fan, inertiaKgM2: 0.004 }).runUpS!;
    expectWithin(b, 2 * a, 0.01);
  });
  it('its curve begins at rest and ends running', () => {
    const { timesS, currentsA, speedsRpm, dutyFractions, steadyRpm } = motorStart({ ...fan, rampS: 0.4 });
    expect([timesS[0], currentsA[0], speedsRpm[0], dutyFractions[0]]).toEqual([0, 0, 0, 0]);
    expect(dutyFractions.at(-1)).toBe(1);
    expect(speedsRpm.at(-1)!).toBeGreaterThan(0.95 * steadyRpm);
    expect(new Set([timesS, currentsA, speedsRpm, dutyFractions].map((list) => list.length)).size).toBe(1);
  });
  it('two swapped inputs of one kind do not go unseen', () => swapsMatter(motorStart, fan));
});

describe('edges', () => {
  it('says that a lift stalls behind too much resistance', () => {
    const stalled = motorStart({ ...lift, pathResistanceOhm: 0.6 });
    expect(stalled).toMatchObject({ reason: 'stalls', runUpS: null, i2tA2s: null, steadyRpm: 0 });
    for (const key of ['peakA', 'rmsA', 'meanA', 'steadyA'] as const) expectWithin(stalled[key], 13.5 / 0.8, 1e-9);
    expectWithin(stalled.currentsA.at(-1)!, 13.5 / 0.8, 1e-4);
  });
  it('refuses nonsense with the field that is at fault', () => {
    const numbers = Object.keys(fan).filter((key) => key !== 'torque') as (keyof MotorStartInput)[];
    refusesNonsense(motorStart, fan, { required: numbers });
    expectInputError(() => motorStart({ ...fan, torque: 'cubic' as 'constant' }), 'torque', 'oneOf');
    expectInputError(() => motorStart({ ...fan, ratedCurrentA: 65 }), 'ratedCurrentA', 'below');
    expectInputError(() => motorStart({ ...fan, inductanceH: 0 }), 'inductanceH', 'above');
    expectInputError(() => motorStart({ ...fan, rampS: -0.1 }), 'rampS', 'atLeast');
  });
});
