// The staged tests of a plan: that each figure is the plan's, that limits enclose what a healthy vehicle shows, and
// that a vehicle built at either end of the stated spread passes.
import { describe, expect, it } from 'vitest';
import { type LoomPlan, parseLoom, planLoom, type TestStep, testPlan } from '@loomwright/harness';
import { looped } from '../support/looped-loom.js';
import { netlist } from '../support/plan-netlist.js';
import { simulate } from '../support/simulator.js';
import { sandpiperText, smallPlan } from '../support/small-plan.js';

const parsed = parseLoom(sandpiperText);
if (!parsed.ok) throw new Error('Sandpiper cannot be read');
const plan = planLoom(parsed.loom);
const tests = testPlan(plan);
const steps = tests.stages.flatMap((stage) => stage.steps);
const of = (name: string): TestStep => {
  const step = steps.find((one) => one.name === name);
  if (step === undefined) throw new Error(`no step ${name}`);
  return step;
};

describe('independent: node equations of the general circuit simulator', () => {
  /** Every part of a plan multiplied, wires and contacts each by its own factor. */
  function built(from: LoomPlan, factor: (kind: string) => number): LoomPlan {
    return {
      ...from,
      circuits: from.circuits.map((one) => ({
        ...one,
        path: one.path.map((part) => ({ ...part, resistanceOhm: part.resistanceOhm * factor(part.kind) })),
      })),
      ways: from.ways.map((way) => ({
        ...way,
        resistanceOhm: way.resistanceOhm * factor(way.kind === 'joint' ? 'joint' : 'body'),
      })),
    };
  }
  // Inside the stated spread of every kind: contacts a quarter to one and a half, body a half to one and a half, fuses
  // and wires nearer to their figure.
  const edges: readonly [string, (kind: string) => number][] = [
    ['as planned', () => 1],
    ['good contacts', (kind) => (kind === 'wire' || kind === 'fuse' ? 1 : kind === 'body' ? 0.55 : 0.3)],
    ['poor contacts', (kind) => (kind === 'wire' || kind === 'fuse' ? 1 : 1.45)],
  ];
  it.each(edges)('a healthy vehicle with %s passes every reading of volts', async (_, factor) => {
    for (const from of [plan, planLoom(looped)]) {
      const vehicle = built(from, factor);
      let read = 0;
      for (const { name: state } of from.states) {
        const { text, names } = netlist(vehicle, state);
        const theirs = await simulate(text);
        const volts = (name: string): number =>
          names.has(name) ? (theirs[`v(${names.get(name)!})`]?.[0] ?? NaN) : name.startsWith('ground ') ? 0 : NaN;
        for (const step of testPlan(from).stages.flatMap((stage) => stage.steps)) {
          if (step.state !== state || (step.kind !== 'volts' && step.kind !== 'ground')) continue;
          const apart = (volts(step.red) - volts(step.black)) * (step.unit === 'mV' ? 1000 : 1);
          // Loads that stand at a controller itself have no ends of their own in the netlist.
          if (Number.isNaN(apart)) continue;
          read++;
          expect(apart, step.name).toBeGreaterThanOrEqual(step.lowLimit ?? -Infinity);
          expect(apart, step.name).toBeLessThanOrEqual(step.highLimit ?? Infinity);
        }
      }
      expect(read).toBeGreaterThan(100);
    }
  });

  it('and one bad joint does not: 60 mΩ in the way of the lift pump', async () => {
    const bad = {
      ...plan,
      circuits: plan.circuits.map((one) =>
        one.name === 'lift pump'
          ? {
              ...one,
              path: one.path.map((part) =>
                part.kind === 'relay' ? { ...part, resistanceOhm: part.resistanceOhm + 0.06 } : part,
              ),
            }
          : one,
      ),
    };
    const { text, names } = netlist(bad, 'road');
    const theirs = await simulate(text);
    const volts = (name: string): number => theirs[`v(${names.get(name)!})`]![0]!;
    const step = of('lift pump: volts, road');
    expect(volts(step.red) - volts(step.black)).toBeLessThan(step.lowLimit!);
  });
});

describe('by hand', () => {
  it('millivolts over a fuse: current times its resistance, 10 % and 15 % off, with the error of the meter', () => {
    const lift = plan.circuits.find(({ name }) => name === 'lift pump')!;
    const fuse = lift.path.find(({ kind }) => kind === 'fuse')!;
    const step = steps.find(
      (one) => one.kind === 'millivolts' && one.circuit === 'lift pump' && one.part === fuse.name,
    )!;
    const high = step.currentA * 1.1 * fuse.resistanceOhm * 1.15 * 1000;
    const low = step.currentA * 0.9 * fuse.coldOhm! * 0.85 * 1000;
    expect(step.value).toBeCloseTo(step.currentA * fuse.resistanceOhm * 1000, 9);
    expect(step.highLimit).toBeCloseTo(high * 1.005 + 0.2, 9);
    expect(step.lowLimit).toBeCloseTo(low * 0.995 - 0.2, 9);
  });
  it('ohms of a way back: pin, wire and terminal cold, within 0.3 Ω for the leads', () => {
    const step = of('lift pump: ohms, way back');
    const back = plan.circuits.find(({ name }) => name === 'lift pump')!.path.filter(({ side }) => side === 'back');
    const cold = back.reduce((sum, { coldOhm }) => sum + coldOhm!, 0);
    expect(step.value).toBeCloseTo(cold, 12);
    expect(step.highLimit).toBeGreaterThan(cold + 0.3);
    expect(step.highLimit).toBeLessThan(1.6 * cold + 0.302);
  });
  it('amperes of a fuse are those of its circuit in the state that draws least', () => {
    const amps = steps.filter(({ kind }) => kind === 'amps');
    expect(amps.length).toBe(
      plan.fuses.filter(({ circuit, ratingA }) => circuit !== null && ratingA !== null).length - noFlow(),
    );
    for (const { circuit, state, value } of amps) {
      const solved = plan.states.find(({ name }) => name === state)!;
      expect(value).toBe(Math.abs(solved.currents[circuit]!));
    }
  });
  /** Fuses in whose place nothing flows in any state: those of charging cables. */
  function noFlow(): number {
    return plan.fuses.filter(
      ({ circuit, ratingA }) =>
        circuit !== null && ratingA !== null && plan.states.every(({ currents }) => (currents[circuit] ?? 0) === 0),
    ).length;
  }
});

describe('laws', () => {
  it('every step has its number, probes, setting and what may be wrong', () => {
    expect(steps.map(({ number }) => number)).toEqual(steps.map((_, i) => i + 1));
    for (const step of steps) {
      for (const text of [step.red, step.black, step.setting, step.ifNot]) expect(text).not.toBe('');
      expect(step.value === null).toBe(step.because !== null);
    }
    expect(new Set(steps.map(({ name }) => name)).size).toBe(steps.length);
  });
  it('the plan lies within what a healthy one may have, and that within the limits', () => {
    for (const { name, value, lowValue, highValue, lowLimit, highLimit } of steps) {
      if (value === null || lowValue === null || highValue === null) continue;
      expect(lowValue, name).toBeLessThanOrEqual(value + 1e-12);
      expect(highValue, name).toBeGreaterThanOrEqual(value - 1e-12);
      if (lowLimit !== null) expect(lowLimit, name).toBeLessThan(lowValue + 1e-12);
      if (highLimit !== null) expect(highLimit, name).toBeGreaterThan(highValue - 1e-12);
    }
  });
  it('goes from dead to running, posts before all else of a state', () => {
    expect(tests.stages.map(({ key }) => key)).toEqual(['dead', 'first power', 'standing', 'cranking', 'running']);
    for (const { steps: own } of tests.stages) {
      const last = own.findLastIndex(({ kind }) => kind === 'posts');
      const other = own.findIndex(({ kind }) => kind !== 'posts' && kind !== 'lamp');
      if (last >= 0) expect(last).toBeLessThan(other);
    }
  });
  it('cranks where what turns the engine over is on, whatever the state is called', () => {
    const stagesOf = (change: (text: string) => string): ReadonlyMap<string, string> => {
      const read = parseLoom(change(sandpiperText));
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      return new Map(
        testPlan(planLoom(read.loom)).stages.flatMap(({ key, steps: own }) =>
          own.flatMap(({ state, kind }) => (state === null || kind === 'amps' ? [] : [[state, key] as const])),
        ),
      );
    };
    const renamed = (text: string): string =>
      text.replace(/\bcranking\b/g, 'key held').replace(/\baccessory\b/g, 'before start');
    expect([...stagesOf(renamed)]).toEqual(
      expect.arrayContaining([
        ['key held', 'cranking'],
        ['before start', 'standing'],
        ['idle', 'running'],
      ]),
    );
    // Or the file says so itself.
    const budget = /budget: (starter-0-8-v, from: \{ battery: starter \})/;
    expect(stagesOf((text) => text.replace(budget, 'cranks: false, budget: $1')).get('cranking')).toBe('standing');
    const other = (text: string): string =>
      text.replace(budget, 'cranks: true, budget: $1').replace('starter-0-8-v', 'lamp-0-5-v');
    expect(other(sandpiperText)).not.toContain('starter-0-8-v');
    expect(stagesOf(other).get('cranking')).toBe('cranking');
  });
  it('prints the cautions where work can hurt', () => {
    const cautions = new Map(tests.stages.map((stage) => [stage.key, stage.cautions]));
    expect(cautions.get('dead')).toEqual(expect.arrayContaining(['insulation-tester', 'battery', 'restraint']));
    expect(cautions.get('cranking')).toContain('fuel');
    expect(cautions.get('running')).toEqual(expect.arrayContaining(['prove-slowly', 'throttle', 'fan-starts']));
  });
});

describe('edges', () => {
  it('a plan by hand, and one with nothing in it', () => {
    const hand = testPlan(smallPlan).stages.flatMap((stage) => stage.steps);
    expect(hand.find(({ kind }) => kind === 'millivolts')?.highLimit).toBeCloseTo(30.01 * 1.0625 * 1.005 + 0.2, 4);
    const none = testPlan({
      ...smallPlan,
      readings: [],
      loom: { ...smallPlan.loom, supply: { batteries: {} } },
    });
    expect(none.stages).toEqual([]);
  });
  it('a figure that the plan does not know has no limits, and says why', () => {
    const motor = of('winch: ohms, load in');
    expect([motor.value, motor.lowLimit, motor.highLimit]).toEqual([null, null, null]);
    expect(motor.because).not.toBeNull();
  });
  it('what must not touch has a least resistance', () => {
    expect(of('lift pump: ohms, load out').lowLimit).toBe(10_000);
  });
});
