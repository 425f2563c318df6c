import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Check, checkChannel, type CheckChannelInput, type CheckChannelResult, type TripModel } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';

const base: CheckChannelInput = {
  channel: {
    ratedByTempC: [
      [25, 20],
      [85, 12],
    ],
    onResistanceOhm: 0.005,
    currentLimitA: null,
    trip: { kind: 'threshold', tripA: 30, delayS: 0.1 },
    retry: null,
    leakageA: 0.0005,
    clampV: 40,
    clampEnergyJ: 0.3,
    pwm: { leastHz: 50, mostHz: 400, leastOnS: 0.0002 },
  },
  load: {
    runA: 8,
    startSteps: [{ currentA: 40, durationS: 0.05 }],
    stallA: 40,
    inductanceH: 0,
    freewheel: false,
    glow: null,
  },
  supplyV: 14.4,
  moduleTempC: 55,
  ampacityA: 20,
  wire: { areaMm2: 1.5, ambientTempC: 50, maxConductorTempC: 105, overloadTempC: 105, shortTempC: 160 },
  bank: null,
  module: null,
  drive: null,
  parallel: null,
};
type Change = {
  readonly [K in keyof CheckChannelInput]?: CheckChannelInput[K];
} & { readonly ch?: Partial<CheckChannelInput['channel']>; readonly ld?: Partial<CheckChannelInput['load']> };
const run = ({ ch, ld, ...rest }: Change): CheckChannelResult =>
  checkChannel({ ...base, ...rest, channel: { ...base.channel, ...ch }, load: { ...base.load, ...ld } });
const named = (result: CheckChannelResult, name: string): Check => {
  const found = result.checks.find((check) => check.name === name);
  if (found === undefined) throw new Error(`no check ${name}: ${result.checks.map((c) => c.name).join(', ')}`);
  return found;
};

describe('published', () => {
  const theory = (place: string): Citation => ({ source: 'circuit-theory', place, status: 'derived' });
  const two = run({
    ld: { runA: 60 },
    ch: { onResistanceOhm: 0.001 },
    parallel: { firstOhm: 0.001, secondOhm: 0.005 },
  });
  computed('60 A on 2 and 6 mΩ side by side: 45 A', theory('current divider'), () =>
    expect(two.sharesA?.[0]).toBeCloseTo(45, 12),
  );
  computed('and 15 A', theory('current divider'), () => expect(two.sharesA?.[1]).toBeCloseTo(15, 12));
  // A coil of 3.0 mH at 7.5 A stores 84.4 mJ; a clamp far above the supply takes no more than that.
  computed('3.0 mH at 7.5 A: 84.4 mJ', theory('L I² / 2'), () => {
    const { switchOffEnergyJ } = run({
      ld: { runA: 7.5, startSteps: [], stallA: null, inductanceH: 0.003 },
      ch: { clampV: 1e9 },
    });
    expectPrinted((switchOffEnergyJ as number) * 1000, '84.4');
  });
  computed('and at 5.21 A 40.7 mJ', theory('L I² / 2'), () => {
    const { switchOffEnergyJ } = run({
      ld: { runA: 5.21, startSteps: [], stallA: null, inductanceH: 0.003 },
      ch: { clampV: 1e9 },
    });
    expectPrinted((switchOffEnergyJ as number) * 1000, '40.7');
  });
  // The 1.5 mm² wire of k = 115 bears 29 756 A²s: 172.5 A for one second.
  const wire = { ...base.wire, ambientTempC: 40, maxConductorTempC: 70, overloadTempC: 70 };
  computed('1.5 mm² bears 172.5 A for one second', { source: 'iec-60949', place: 'k = 115', status: 'derived' }, () =>
    expectWithin(run({ wire, ld: { stallA: 172.5 } }).stallBearsS as number, 1, 1e-3),
  );
});

describe('independent', () => {
  it('energy of the clamp agrees with the current of the coil followed in time', () => {
    const { switchOffEnergyJ } = run({ ld: { runA: 6, startSteps: [], stallA: null, inductanceH: 0.02 } });
    const [vClamp, vSupply, inductance] = [40, 14.4, 0.02];
    let currentA = 6;
    let energy = 0;
    const dt = 1e-7;
    while (currentA > 0) {
      energy += vClamp * currentA * dt;
      currentA -= ((vClamp - vSupply) / inductance) * dt;
    }
    expectWithin(switchOffEnergyJ as number, energy, 1e-3);
  });
  const trips: readonly TripModel[] = [
    { kind: 'threshold', tripA: 30, delayS: 0.1 },
    { kind: 'i2t', carryA: 15, i2tA2s: 120 },
    {
      kind: 'curve',
      points: [
        [15, 20],
        [30, 1],
        [60, 0.1],
        [90, 0.001],
      ],
    },
  ];
  for (const trip of trips) {
    it(`${trip.kind}: a start followed in small steps trips at the same time`, () => {
      const steps = [
        { currentA: 28, durationS: 0.05 },
        { currentA: 50, durationS: 0.06 },
        { currentA: 10, durationS: 0.02 },
        { currentA: 70, durationS: 0.5 },
      ];
      const found = run({ ch: { trip }, ld: { startSteps: steps } }).startTripsAfterS as number;
      const dt = 1e-6;
      let used = 0;
      let t = 0;
      search: for (const { currentA, durationS } of steps) {
        for (let k = 0; k < Math.round(durationS / dt); k++) {
          if (trip.kind === 'threshold') used = currentA > trip.tripA ? used + dt / trip.delayS : 0;
          if (trip.kind === 'i2t') used = Math.max(0, used + ((currentA ** 2 - trip.carryA ** 2) * dt) / trip.i2tA2s);
          if (trip.kind === 'curve' && currentA >= 15) {
            const i = trip.points.findIndex(([a]) => a >= currentA);
            const [[a1, t1], [a2, t2]] = [trip.points[i - 1]!, trip.points[i]!];
            used += dt / Math.exp(Math.log(t1) + (Math.log(t2 / t1) * Math.log(currentA / a1)) / Math.log(a2 / a1));
          }
          t += dt;
          if (used >= 1) break search;
        }
      }
      expectWithin(found, t, 1e-3);
    });
  }
});

describe('laws', () => {
  it('a stall trips no later at more current; a longer wire never raises its share', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 31, max: 200, noNaN: true }),
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.constantFrom<TripModel>(
          { kind: 'i2t', carryA: 20, i2tA2s: 300 },
          { kind: 'threshold', tripA: 30, delayS: 0.1 },
        ),
        (stallA, k, trip) => {
          const one = run({ ch: { trip }, ld: { stallA } });
          const more = run({ ch: { trip }, ld: { stallA: stallA * k } });
          expect(more.stallTripsAfterS as number).toBeLessThanOrEqual(one.stallTripsAfterS as number);
          const pair = (firstOhm: number): number => run({ parallel: { firstOhm, secondOhm: 0.01 } }).sharesA![0];
          expect(pair(0.01 * k)).toBeLessThanOrEqual(pair(0.01));
          const sum = run({ parallel: { firstOhm: 0.01 * k, secondOhm: 0.004 } }).sharesA!;
          expectWithin(sum[0] + sum[1], 8, 1e-12);
        },
      ),
    );
  });
});

describe('what it judges', () => {
  it('a lamp-like start that stays below the delay starts; a longer one trips', () => {
    expect(run({})).toMatchObject({ ok: true, startTripsAfterS: null, startLimited: false, ratedA: 16, shareA: 8 });
    const long = run({ ld: { startSteps: [{ currentA: 40, durationS: 0.2 }] } });
    expect(long).toMatchObject({ ok: false, startTripsAfterS: 0.1, decidedBy: 'starts without a trip' });
  });
  it('a start that is held back takes longer, and may trip by it', () => {
    const held = run({ ch: { currentLimitA: 32 } });
    expect(held).toMatchObject({ startLimited: true, startTripsAfterS: null, stallA: 32 });
    const longer = run({ ch: { currentLimitA: 32, trip: { kind: 'threshold', tripA: 30, delayS: 0.06 } } });
    expectWithin(longer.startTripsAfterS as number, 0.06, 1e-12);
    expect(named(run({ ch: { currentLimitA: 5 } }), 'starts without a trip').because).toContain(
      'less than the load runs on',
    );
  });
  it('a stall that never trips is said, whether the wire bears it or not', () => {
    const quiet = { trip: { kind: 'threshold', tripA: 90, delayS: 0.1 } } as const;
    expect(named(run({ ch: quiet }), 'stall trips in time for the wire')).toMatchObject({ ok: false, value: null });
    const borne = named(run({ ch: quiet, ampacityA: 45 }), 'stall trips in time for the wire');
    expect(borne).toMatchObject({ ok: true, value: null, limit: null });
    expect(borne.because).toContain('the load itself is not protected');
  });
  it('retries heat the wire: counted ones by their let-through, endless ones by their r.m.s.', () => {
    const three = named(run({ ch: { retry: { count: 3, offS: 1 } } }), 'retries against the wire');
    expectWithin(three.value as number, 4 * 40 * 40 * 0.1, 1e-12);
    const endless = named(run({ ch: { retry: { count: null, offS: 0.3 } } }), 'retries against the wire');
    expectWithin(endless.value as number, 20, 1e-12);
    expect(endless).toMatchObject({ limit: 20, unit: 'A' });
  });
  it('two outputs: one opens, and the other must trip in time for its wire', () => {
    const parallel = { firstOhm: 0.02, secondOhm: 0.03 };
    const both = run({ ld: { runA: 36, stallA: null, startSteps: [] }, moduleTempC: 25, ampacityA: 22, parallel });
    expectWithin(both.sharesA![0], (36 * 35) / 60, 1e-12);
    expect(both.otherTripsAfterS).toBe(0.1);
    expect(named(both, 'one opens: the other in time for its wire').ok).toBe(true);
    const below = run({ ld: { runA: 29, stallA: null, startSteps: [] }, moduleTempC: 25, ampacityA: 22, parallel });
    expect(below.otherTripsAfterS).toBeNull();
    expect(named(below, 'one opens: the other in time for its wire')).toMatchObject({ ok: false, value: null });
  });
  it('totals of bank and module', () => {
    const result = run({ bank: { mostA: 40, othersA: 30 }, module: { mostA: 40, othersA: 33 } });
    expect(named(result, 'total of the bank')).toMatchObject({ value: 38, ok: true });
    expect(named(result, 'total of the module')).toMatchObject({ value: 41, ok: false });
  });
  it('pulse-width modulation: range, shortest pulse, coil without a diode', () => {
    const drive = { frequencyHz: 200, dutyFraction: 0.03 };
    const result = run({ drive, ld: { inductanceH: 0.001 } });
    expect(named(result, 'switching frequency').ok).toBe(true);
    expectWithin(named(result, 'shortest pulse').value as number, 0.00015, 1e-12);
    expect(named(result, 'shortest pulse').ok).toBe(false);
    expect(named(result, 'pulsed coil has a diode').ok).toBe(false);
    expect(run({ drive, ld: { inductanceH: 0.001, freewheel: true } }).checks.map(({ name }) => name)).not.toContain(
      'pulsed coil has a diode',
    );
    expect(named(run({ drive: { ...drive, frequencyHz: 30 } }), 'switching frequency, least').ok).toBe(false);
    expect(named(run({ drive, ch: { pwm: null } }), 'switching frequency').ok).toBe(false);
    const full = run({ drive: { ...drive, dutyFraction: 1 } });
    expect(full.checks.map(({ name }) => name)).not.toContain('shortest pulse');
  });
  it('energy at switching off without clamp, with a clamp too low, or with none stated', () => {
    const coil = { inductanceH: 0.01 };
    const energy = (ch: Partial<CheckChannelInput['channel']>): Check =>
      named(run({ ld: coil, ch }), 'energy at switching off');
    expect(energy({ clampV: null })).toMatchObject({ ok: false, value: null });
    expect(energy({ clampV: 14 }).because).toContain('does not hold');
    expect(energy({ clampEnergyJ: null })).toMatchObject({ ok: false, limit: null });
    // The largest current is the stall, at which the output opens.
    expectWithin(energy({}).value as number, (0.5 * 0.01 * 40 * 40 * 40) / 25.6, 1e-12);
    expect(run({ ld: { ...coil, freewheel: true } }).switchOffEnergyJ).toBeNull();
  });
  it('an LED that glows on the leakage, and the resistor that keeps it dark', () => {
    const glow = run({ ld: { glow: { glowA: 0.0001, glowV: 6 } } });
    expect(named(glow, 'LED stays dark').ok).toBe(false);
    expect(glow.bleedResistanceOhm).toBeCloseTo(12000, 6);
    const dark = run({ ld: { glow: { glowA: 0.001, glowV: 6 } } });
    expect(named(dark, 'LED stays dark').ok).toBe(true);
    expect(dark.bleedResistanceOhm).toBeNull();
  });
});

describe('edges', () => {
  it('refuses nonsense with the field that is at fault', () => {
    const curve = (points: readonly (readonly [number, number])[]): Change => ({
      ch: { trip: { kind: 'curve', points } },
    });
    const cases: readonly (readonly [string, Change, Parameters<typeof expectInputError>[2]])[] = [
      ['supplyV', { supplyV: NaN }, 'finite'],
      ['supplyV', { supplyV: 0 }, 'above'],
      ['ampacityA', { ampacityA: -1 }, 'above'],
      ['moduleTempC', { moduleTempC: 85.1 }, 'atMost'],
      ['channel.ratedByTempC', { ch: { ratedByTempC: [] } }, 'list'],
      [
        'channel.ratedByTempC[1]',
        {
          ch: {
            ratedByTempC: [
              [25, 10],
              [85, 12],
            ],
          },
        },
        'order',
      ],
      ['channel.onResistanceOhm', { ch: { onResistanceOhm: 0 } }, 'above'],
      ['channel.currentLimitA', { ch: { currentLimitA: Infinity } }, 'finite'],
      ['channel.trip.kind', { ch: { trip: { kind: 'slow' } as never } }, 'oneOf'],
      ['channel.trip', { ch: { trip: null as never } }, 'object'],
      ['channel.trip.tripA', { ch: { trip: { kind: 'threshold', tripA: 0, delayS: 0 } } }, 'above'],
      ['channel.trip.points', curve([[1, 1]]), 'list'],
      [
        'channel.trip.points[1]',
        curve([
          [2, 1],
          [1, 0.5],
        ]),
        'order',
      ],
      ['channel.retry.count', { ch: { retry: { count: 0, offS: 1 } } }, 'atLeast'],
      ['channel.retry.offS', { ch: { retry: { count: 1, offS: 0 } } }, 'above'],
      ['channel.leakageA', { ch: { leakageA: -1 } }, 'atLeast'],
      ['channel.pwm.mostHz', { ch: { pwm: { leastHz: 10, mostHz: 10, leastOnS: 0 } } }, 'above'],
      ['load.runA', { ld: { runA: undefined as never } }, 'missing'],
      ['load.startSteps[0].durationS', { ld: { startSteps: [{ currentA: 1, durationS: 0 }] } }, 'above'],
      ['load.inductanceH', { ld: { inductanceH: -1 } }, 'atLeast'],
      ['load.glow.glowA', { ld: { glow: { glowA: 0, glowV: 1 } } }, 'above'],
      ['bank.mostA', { bank: { mostA: 0, othersA: 0 } }, 'above'],
      ['module.othersA', { module: { mostA: 1, othersA: -1 } }, 'atLeast'],
      ['drive.dutyFraction', { drive: { frequencyHz: 100, dutyFraction: 1.1 } }, 'atMost'],
      ['parallel.firstOhm', { parallel: { firstOhm: -1, secondOhm: 0 } }, 'atLeast'],
    ];
    for (const [field, change, rule] of cases) expectInputError(() => run(change), field, rule);
    for (const value of [undefined, null, 3, 'abc', []]) {
      expectInputError(() => checkChannel(value as never), 'input', 'object');
    }
  });
  it('a threshold without delay trips at once, and a curve holds its end times beyond its ends', () => {
    expect(run({ ch: { trip: { kind: 'threshold', tripA: 30, delayS: 0 } } }).startTripsAfterS).toBe(0);
    const trip: TripModel = {
      kind: 'curve',
      points: [
        [20, 5],
        [40, 0.2],
      ],
    };
    expect(run({ ch: { trip }, ld: { stallA: 400 } }).stallTripsAfterS).toBeCloseTo(0.2, 12);
    expect(run({ ch: { trip }, ld: { stallA: 20 } }).stallTripsAfterS).toBeCloseTo(5, 12);
    expect(run({ ch: { trip }, ld: { stallA: 19.9 } }).stallTripsAfterS).toBeNull();
  });
});
