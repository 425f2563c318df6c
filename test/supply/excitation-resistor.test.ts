import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  e12,
  e24,
  type ExcitationDesign,
  excitationResistor,
  type ExcitationResistorInput,
  type ExcitedAlternator,
  filamentLamp,
  type WarningState,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const field: Extract<ExcitedAlternator, { readonly kind: 'field' }> = {
  kind: 'field',
  rotorOhm: 4,
  regulatorDropV: 1,
  neededA: 0.2,
  chargingV: 14.2,
};
const driver: Extract<ExcitedAlternator, { readonly kind: 'driver' }> = {
  kind: 'driver',
  driverDropV: 1.1,
  driverMostA: 0.5,
  neededA: 0.05,
  chargingV: null,
};
const lamp = { ratedPowerW: 2, ratedV: 12, law: filamentLamp };
const led = { forwardV: 2, seriesOhm: 820, fullA: 0.015 };
const base: ExcitationResistorInput = {
  alternator: field,
  ignitionV: 11.8,
  runningV: 14.4,
  lamp,
  led: null,
  resistor: 'choose',
  series: e12,
  toleranceFraction: 0.05,
  countLamp: false,
  diodeDropV: null,
  ignitionLoadOhm: null,
  ignitionHoldV: 4,
};
const of = (change: Partial<ExcitationResistorInput>): ExcitationDesign => {
  const result = excitationResistor({ ...base, ...change });
  const found = result.possible ? result : result.nearest;
  if (found === null) throw new Error(result.possible ? '' : result.because);
  return found;
};
const state = (design: ExcitationDesign, name: WarningState['state']): WarningState =>
  design.states.find((s) => s.state === name)!;

describe('published', () => {
  const law = {
    source: 'lamp-rerating',
    place: 'current with the 0.55th power, light with the 3.4th',
    status: 'derived',
  } as const;
  const at = (volts: number): WarningState => {
    const bulb = { ratedPowerW: 13.5, ratedV: 13.5, law: filamentLamp };
    return state(of({ lamp: bulb, resistor: 'none', ignitionV: volts, runningV: volts }), 'wire-grounded');
  };
  computed('a 13.5 V lamp at 12.0 V: 0.937 of its current', law, () => expectPrinted(at(12).currentA, '.937'));
  computed('at 14.2 V: 1.028 of it', law, () => expectPrinted(at(14.2).currentA, '1.028'));
  computed('and 1.188 of its light', law, () => expectPrinted(at(14.2).lampLightFraction!, '1.188'));
  const one = { source: 'circuit-theory', place: 'LED of 2.0 V behind 820 Ω at 14.4 V', status: 'derived' } as const;
  computed('15.1 mA', one, () => {
    const found = state(of({ lamp: null, led, resistor: 'none' }), 'wire-grounded');
    expectPrinted(1000 * found.currentA, '15.1');
  });
  const ladder = {
    source: 'lessons-electric-circuits',
    place: 'volume I, chapter 6, voltage divider',
    status: 'published',
  } as const;
  const back = (ohm: number, load: number, volts: number): number =>
    of({
      alternator: { ...field, chargingV: volts, neededA: 1e-6 },
      lamp: null,
      resistor: ohm,
      toleranceFraction: 0,
      ignitionLoadOhm: load,
      ignitionV: 45,
      runningV: 45,
    }).backFeed!.nodeV;
  computed('10 V of 45 V over the first of 5, 10 and 7.5 kΩ', ladder, () =>
    expectPrinted(45 - back(5e3, 17.5e3, 45), '10'),
  );
  computed('20 V over the second', ladder, () => expectPrinted(45 - back(10e3, 12.5e3, 45), '20'));
  computed('15 V over the third', ladder, () => expectPrinted(45 - back(7.5e3, 15e3, 45), '15'));
});

describe('independent', () => {
  // A lamp as volts by its current, smooth at nothing; the current is sensed in a source of no volts.
  const bulb = (a: string, b: string): string => `bl ${a} x v=12*sgn(i(vl))*pow(abs(i(vl))/(2/12),1/0.55)\nvl x ${b} 0`;
  it('lamp, LED and resistor before the rotor, in a circuit simulator', async () => {
    const v = await simulate(
      ['v1 i 0 11.8', bulb('i', 'd'), 'bd i d i=max(v(i,d)-2,0)/820', 'r1 i d 47', 'rf d r 4', 'vr r 0 1', '.op'].join(
        '\n',
      ),
    );
    const found = state(of({ led, resistor: 47 }), 'key-on');
    expectWithin(found.branchV, 11.8 - v['v(d)']![0]!, 1e-6);
    expectWithin(found.currentA, v['i(vr)']![0]!, 1e-6);
  });
  it('what keeps the engine alive, in a circuit simulator', async () => {
    const v = await simulate(['v1 d 0 14.2', bulb('d', 'i'), 'r1 d i 46.53', 'rn i 0 15', '.op'].join('\n'));
    const found = of({ resistor: 47, toleranceFraction: 0.01, ignitionLoadOhm: 15 }).backFeed!;
    expectWithin(found.nodeV, v['v(i)']![0]!, 1e-6);
    expect(found.keepsOn).toBe(true);
  });
  it('the resistor is the largest of its series that does: every value tried', () => {
    const values = [0, 1, 2, 3, 4].flatMap((decade) => e24.values.map((v) => (v / 10) * 10 ** decade));
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1.5, noNaN: true }), fc.boolean(), (neededA, countLamp) => {
        const input = { ...base, series: e24, countLamp, alternator: { ...field, neededA } };
        const chosen = excitationResistor(input);
        expect(chosen.possible).toBe(true);
        if (!chosen.possible || chosen.resistorOhm === null) return;
        // One that carries less than a hundredth of the excitation is none.
        const most = (100 * (11.8 - 1 - 4 * neededA)) / neededA;
        const works = values.filter(
          (resistor) => resistor <= most && excitationResistor({ ...input, resistor }).possible,
        );
        expect(chosen.resistorOhm).toBeCloseTo(Math.max(...works), 9);
      }),
    );
  });
});

describe('laws', () => {
  it('current into the terminal, volts of branch, rotor and regulator add up', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 500, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.boolean(),
        (resistor, rotorOhm, diode) => {
          const design = of({ resistor, alternator: { ...field, rotorOhm }, diodeDropV: diode ? 0.7 : null, led });
          const on = state(design, 'key-on');
          expect(on.branchV + on.currentA * rotorOhm + 1).toBeCloseTo(11.8, 9);
          expect(state(design, 'belt-off').currentA).toBe(on.currentA);
        },
      ),
    );
  });
  it('a larger resistor excites less, feeds back less and heats less', () => {
    const [small, large] = [47, 68].map((resistor) => of({ resistor, ignitionLoadOhm: 15 })) as [
      ExcitationDesign,
      ExcitationDesign,
    ];
    expect(large.excitationA).toBeLessThan(small.excitationA);
    expect(large.backFeed!.nodeV).toBeLessThan(small.backFeed!.nodeV);
    expect(large.resistorW).toBeLessThan(small.resistorW);
    expect(small.leastRatingW).toBe(2 * small.resistorW);
    expect(small.groundedW).toBeGreaterThan(small.resistorW);
  });
  it('a resistor alone of the least resistance lets the engine just stop', () => {
    const { leastOhm } = of({ lamp: null, ignitionLoadOhm: 15, resistor: 10 }).backFeed!;
    const just = of({ lamp: null, ignitionLoadOhm: 15, resistor: leastOhm, toleranceFraction: 0 }).backFeed!;
    expect(just.nodeV).toBeCloseTo(4, 9);
  });
  it('swapping two inputs of a kind is seen', () => {
    swapsMatter(excitationResistor, { ...base, resistor: 100, ignitionLoadOhm: 15, diodeDropV: 0.7 });
  });
});

describe('edges', () => {
  it('what the lamp shows in every state', () => {
    const design = of({});
    expect(design.states.map((s) => [s.state, s.lamp])).toEqual([
      ['key-on', 'bright'],
      ['charging', 'dark'],
      ['belt-off', 'bright'],
      ['wire-open', 'dark'],
      ['wire-grounded', 'bright'],
      ['rotor-open', 'dark'],
    ]);
    expect(state(design, 'wire-grounded').intoA).toBe(0);
    expect(state(of({ alternator: driver }), 'rotor-open').lamp).toBe('bright');
  });
  it('volts lost on the way to the ignition let the lamp glow while it charges, either way round', () => {
    const glow = state(of({ runningV: 12.2 }), 'charging');
    expect(glow.branchV).toBeCloseTo(-2, 12);
    expect(glow.lamp).toBe('glimmer');
    expect(glow.intoA).toBeLessThan(0);
    const blocked = state(of({ runningV: 12.2, diodeDropV: 0.7 }), 'charging');
    expect(blocked).toMatchObject({ currentA: 0, lamp: 'dark' });
  });
  it('an LED alone does not excite; a resistor beside it does', () => {
    const alone = excitationResistor({ ...base, lamp: null, led, resistor: 'none', countLamp: true });
    expect(alone).toMatchObject({ possible: false, code: 'too-little-excitation' });
    expect(excitationResistor({ ...base, lamp: null, led, countLamp: true })).toMatchObject({ possible: true });
  });
  it('a lamp that does by itself needs no resistor, unless its death must not matter', () => {
    const weak = { ...field, neededA: 0.1 };
    expect(of({ alternator: weak, countLamp: true })).toMatchObject({ resistorOhm: null, exactOhm: null });
    expect(of({ alternator: weak, countLamp: false }).resistorOhm).not.toBeNull();
  });
  it('the engine that will not stop, and the diode that lets it', () => {
    const on = excitationResistor({ ...base, ignitionLoadOhm: 30 });
    expect(on).toMatchObject({ possible: false, code: 'engine-stays-on' });
    const off = excitationResistor({ ...base, ignitionLoadOhm: 30, diodeDropV: 0.7 });
    expect(off).toMatchObject({ possible: true, backFeed: { nodeV: 0, keepsOn: false } });
    const through = excitationResistor({
      ...base,
      ignitionLoadOhm: 30,
      lamp: null,
      led,
      resistor: 'none',
      countLamp: true,
    });
    expect(through.possible || through.nearest?.backFeed?.nodeV).toBe(0);
  });
  it('no volts left, and a driver overloaded', () => {
    const hungry = excitationResistor({ ...base, alternator: { ...field, neededA: 3 } });
    expect(hungry).toMatchObject({ possible: false, code: 'no-volts-left', nearest: null });
    expect(hungry.possible || hungry.because).toContain('at most 2.7 A');
    const burnt = excitationResistor({ ...base, alternator: driver, resistor: 10 });
    expect(burnt).toMatchObject({ possible: false, code: 'driver-overloaded' });
  });
  it('an alternator without an exciter wire is an answer', () => {
    for (const control of ['self-exciting', 'by-bus'] as const) {
      const none = excitationResistor({ ...base, alternator: { kind: 'no-wire', control } });
      expect(none).toMatchObject({ possible: false, code: 'no-exciter-wire', nearest: null });
    }
    expect(of({ alternator: { ...field, selfExcitationRpm: 2500 } }).selfExcitationRpm).toBe(2500);
  });
  it('refuses nonsense', () => {
    const whole = { ...base, diodeDropV: 0.7, ignitionLoadOhm: 20 };
    refusesNonsense(excitationResistor, whole, {
      required: ['ignitionV', 'runningV', 'toleranceFraction', 'diodeDropV', 'ignitionLoadOhm', 'ignitionHoldV'],
    });
    const bad =
      (change: object): (() => unknown) =>
      () =>
        excitationResistor({ ...whole, ...change });
    expectInputError(bad({ runningV: 11 }), 'runningV', 'atLeast');
    expectInputError(bad({ resistor: 'some' }), 'resistor', 'oneOf');
    expectInputError(bad({ resistor: 0 }), 'resistor', 'above');
    expectInputError(bad({ resistor: 'none', lamp: null }), 'resistor', 'oneOf');
    expectInputError(bad({ toleranceFraction: 1 }), 'toleranceFraction', 'below');
    expectInputError(bad({ countLamp: undefined }), 'countLamp', 'missing');
    expectInputError(bad({ series: undefined }), 'series', 'missing');
    expectInputError(bad({ lamp: undefined }), 'lamp', 'missing');
    expectInputError(bad({ lamp: { ...lamp, ratedV: 6 } }), 'lamp.ratedV', 'atLeast');
    expectInputError(bad({ lamp: { ...lamp, ratedPowerW: 0 } }), 'lamp.ratedPowerW', 'above');
    expectInputError(bad({ led: { ...led, seriesOhm: 0 } }), 'led.seriesOhm', 'above');
    expectInputError(bad({ alternator: { ...field, rotorOhm: 0 } }), 'alternator.rotorOhm', 'above');
    expectInputError(bad({ alternator: { ...field, neededA: NaN } }), 'alternator.neededA', 'finite');
    expectInputError(bad({ alternator: { ...field, selfExcitationRpm: 0 } }), 'alternator.selfExcitationRpm', 'above');
    expectInputError(bad({ alternator: { ...driver, driverMostA: 0 } }), 'alternator.driverMostA', 'above');
    expectInputError(bad({ alternator: { kind: 'steam' } }), 'alternator.kind', 'oneOf');
    expectInputError(bad({ alternator: { kind: 'no-wire' } }), 'alternator.control', 'missing');
    expect(bad({ lamp: { ...lamp, ratedV: 6 } })).toThrow(
      'excitationResistor: lamp.ratedV must be at least half of the highest volts, 14.4, got 6: no filament lamp stands twice its volts',
    );
  });
  it('never runs out of numbers', () => {
    neverRunsOut(excitationResistor, { ...base, resistor: 47, diodeDropV: 0.7, ignitionLoadOhm: 20 });
    neverRunsOut(excitationResistor, { ...base, lamp: null, led, resistor: 47, ignitionLoadOhm: 20 });
  });
});
