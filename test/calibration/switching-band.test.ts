import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  fitSteinhartHart,
  type SwitchingBand,
  switchingBand,
  type SwitchingBandInput,
  type SwitchProcess,
  type SwitchSensor,
  type SwitchStage,
  thermistorInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const fitted = fitSteinhartHart({
  points: [
    { tempC: 0, resistanceOhm: 5900 },
    { tempC: 50, resistanceOhm: 834 },
    { tempC: 100, resistanceOhm: 186 },
  ],
});
// The sensor is taken to follow its three points a little beyond them.
const curve = { ...fitted.curve, lowTempC: -40, highTempC: 140 };
const thermistor = (pullOhm: number): SwitchSensor => {
  return { kind: 'thermistor', by: thermistorInput, curve, side: 'sensor-to-ground', pullOhm };
};
const heat: SwitchProcess = { kind: 'first-order', withoutValue: 130, withValue: 70, timeConstantS: 240 };
const stage: SwitchStage = {
  onValue: 98,
  groundShiftV: 0.03,
  supplyShiftV: 0,
  directShiftValue: 0,
  process: heat,
};
const fan: SwitchingBandInput = {
  sensor: thermistor(1000),
  supplyV: 5,
  referenceV: null,
  converterBits: 10,
  acts: 'lowers',
  noiseV: 0.004,
  delayS: 1,
  marginFraction: 0.25,
  first: stage,
};
const pressure: SwitchingBandInput = {
  sensor: {
    kind: 'points',
    cells: [
      { inValue: 0.5, outValue: 0 },
      { inValue: 4.5, outValue: 10 },
    ],
    output: 'ratiometric',
  },
  supplyV: 5,
  referenceV: null,
  converterBits: 12,
  acts: 'raises',
  noiseV: 0.002,
  delayS: 0.2,
  marginFraction: 0,
  first: {
    onValue: 5,
    groundShiftV: 0.06,
    supplyShiftV: 0,
    directShiftValue: 0,
    process: { kind: 'rates', awayPerS: 0.05, backPerS: 0.4 },
  },
};
const found = (input: SwitchingBandInput): SwitchingBand => {
  const result = switchingBand(input);
  const band = result.possible ? result : result.nearest;
  if (band === null) throw new Error(result.possible ? '' : result.because);
  return band;
};
const first = (input: SwitchingBandInput, change: Partial<SwitchStage>): SwitchingBandInput => {
  return { ...input, first: { ...input.first, ...change } };
};

describe('published', () => {
  const cite = { source: 'circuit-theory', place: 'worked by hand', status: 'derived' } as const;
  const at100 = (pullOhm: number) => found(first({ ...fan, sensor: thermistor(pullOhm) }, { onValue: 100 })).first;
  // The threshold goes to the earlier count, so the slope is met to a per cent.
  for (const [pullOhm, mv, kelvin] of [
    [2490, 8.55, 0.57],
    [1000, 17.5, 0.28],
  ] as const) {
    computed(`${mv} mV/K at 100 °C behind ${pullOhm} Ω`, cite, () =>
      expectWithin(-1000 / at100(pullOhm).valuePerV, mv, 0.02),
    );
    computed(`${kelvin} K a count of ten bits there`, cite, () =>
      expectWithin(at100(pullOhm).parts[3]!.partValue, kelvin, 0.02),
    );
  }
  // A sensor of 40 °C a volt, 50 mV of ground, ±5 mV of noise, 5 V over 1024.
  const plain: SwitchingBandInput = {
    sensor: { kind: 'slope', inputV: 2.5, atValue: 100, valuePerV: 40, output: 'absolute' },
    supplyV: 5,
    referenceV: 5,
    converterBits: 10,
    acts: 'lowers',
    noiseV: 0.005,
    delayS: 0,
    marginFraction: 0,
    first: { onValue: 100, groundShiftV: -0.05, supplyShiftV: 0, directShiftValue: 0, process: null },
  };
  computed('50 + 10 + 4.883 mV', cite, () => expectPrinted(found(plain).first.leastBandV, '0.064883'));
  computed('which is 2.5953 K at 40 K/V', cite, () => expectPrinted(found(plain).first.leastBandValue, '2.5953'));
  computed('on at count 512', cite, () => expectPrinted(found(plain).first.onCount, '512'));
  computed('off 13.29 counts below, so at 498', cite, () => expectPrinted(found(plain).first.offCount, '498'));
  // A share of half the supply sees half of its ground.
  const half = { ...plain, sensor: { ...plain.sensor, output: 'ratiometric' } as SwitchSensor };
  computed('half of it where the sensor gives half its supply', cite, () =>
    expectPrinted(found(half).first.jumpV, '-0.025'),
  );
  const sag = first({ ...half, referenceV: 4.096 }, { groundShiftV: 0, supplyShiftV: -0.1 });
  computed('a supply that sags by 2 % takes 2 % of half of it along', cite, () => {
    const { jumpV, onV } = found(sag).first;
    expectPrinted(jumpV / onV, '-0.02', 1e-6);
  });
  computed('and nothing where the converter hangs on it too', cite, () =>
    expectPrinted(found({ ...sag, referenceV: null }).first.jumpV, '0', 1e-9),
  );
  const own = { ...sag, sensor: plain.sensor, referenceV: null };
  computed('where the sensor has volts of its own, that converter shows 5/4.9 of them', cite, () => {
    const { jumpV, onV } = found(own).first;
    expectPrinted(jumpV / onV, '0.020408', 1);
  });
});

describe('independent', () => {
  it('a circuit simulator sees the same jump: a thermistor on a raised ground, a sagging supply', async () => {
    for (const [groundShiftV, supplyShiftV] of [
      [0.08, 0],
      [-0.05, -0.2],
      [0.02, 0.1],
    ] as const) {
      const { first: one } = found(first({ ...fan, referenceV: 5 }, { groundShiftV, supplyShiftV, process: null }));
      const ohm = (1000 * one.onV) / (5 - one.onV);
      const v = await simulate(`vs s 0 ${5 + supplyShiftV}\nvg g 0 ${groundShiftV}\nrp s p 1000\nrt p g ${ohm}\n.op`);
      expectWithin(one.onV + one.jumpV, v['v(p)']![0]!, 1e-9);
    }
  });
  it('a potentiometer on a raised ground', async () => {
    const { first: one } = found(first({ ...pressure, referenceV: 5 }, { supplyShiftV: -0.1, process: null }));
    const share = one.onV / 5;
    const lines = `vs s 0 4.9\nvg g 0 0.06\nru s p ${1000 * (1 - share)}\nrl p g ${1000 * share}\n.op`;
    const v = await simulate(lines);
    expectWithin(one.onV + one.jumpV, v['v(p)']![0]!, 1e-9);
  });

  /** Whether, at some true place, noise and converter can both start the load and stop it: the controller written out. */
  function canChatter(input: SwitchingBandInput, onCount: number, offCount: number): boolean {
    const { groundShiftV } = input.first;
    const step = 5 / 2 ** input.converterBits;
    const rising = onCount > offCount;
    const ends = [onCount * step, offCount * step].sort((a, b) => a - b) as [number, number];
    for (let u = ends[0] - 0.3; u < ends[1] + 0.3; u += step / 64) {
      const running = u + groundShiftV * (1 - u / 5);
      const counts = (v: number): number[] =>
        [-input.noiseV, input.noiseV].map((n) => Math.floor((v + n) / step + 1e-9));
      const starts = counts(u).some((count) => (rising ? count >= onCount : count <= onCount));
      const stops = counts(running).some((count) => (rising ? count <= offCount : count >= offCount));
      if (starts && stops) return true;
    }
    return false;
  }
  it('no place where the load can both start and stop with the least band, and one with two counts less', () => {
    for (const base of [fan, pressure]) {
      for (const shift of [0.005, 0.03, 0.09]) {
        for (const sign of [1, -1]) {
          const input = first({ ...base, marginFraction: 0 }, { process: null, groundShiftV: sign * shift });
          const { onCount, offCount, jumpV, onV, offV } = found(input).first;
          expect(canChatter(input, onCount, offCount)).toBe(false);
          const away = Math.sign(offV - onV) !== Math.sign(jumpV);
          const narrower = offCount + 2 * Math.sign(onCount - offCount);
          if (!away) expect(canChatter(input, onCount, narrower)).toBe(true);
        }
      }
    }
  });

  /** The loop in small steps of time: starts, stops and how far it goes, with the delay between reading and switching. */
  function run(input: SwitchingBandInput, onV: number, offV: number, hours: number) {
    const { withoutValue, withValue, timeConstantS } = input.first.process as Extract<
      SwitchProcess,
      { kind: 'first-order' }
    >;
    const dt = 0.02;
    const read = (tempC: number, on: boolean): number => {
      const u = thermistorInput({ curve, side: 'sensor-to-ground', supplyV: 5, pullOhm: 1000, tempC }).inputV;
      return on ? u + input.first.groundShiftV * (1 - u / 5) : u;
    };
    let x = 90;
    let on = false;
    let pending = Infinity;
    const starts: number[] = [];
    const stops: number[] = [];
    for (let t = 0; t < hours * 3600; t += dt) {
      x += ((on ? withValue : withoutValue) - x) * (1 - Math.exp(-dt / timeConstantS));
      const u = read(x, on);
      if (pending === Infinity && (on ? u >= offV : u <= onV)) pending = t + input.delayS;
      if (t >= pending) {
        on = !on;
        (on ? starts : stops).push(t);
        pending = Infinity;
      }
    }
    return { starts, stops };
  }
  it('starts an hour, time on and time off as the loop runs through them', () => {
    for (const delayS of [0, 6]) {
      const input = { ...fan, delayS };
      const { first: one } = found(input);
      const { starts, stops } = run(input, one.onV, one.offV, 0.4);
      const [a, b] = starts.slice(-2) as [number, number];
      const stop = stops.filter((t) => t > a && t < b);
      expect(stop).toHaveLength(1);
      expectWithin(one.cyclesPerH!, 3600 / (b - a), 0.005);
      expectWithin(one.onTimeS!, stop[0]! - a, 0.01);
      expectWithin(one.offTimeS!, b - stop[0]!, 0.01);
    }
  });
});

describe('laws', () => {
  it('parts add up to the least band, whatever the sensor', () => {
    fc.assert(
      fc.property(
        evenly(-0.1, 0.1),
        evenly(0, 0.02),
        evenly(0, 5),
        fc.constantFrom(fan, pressure),
        (groundShiftV, noiseV, delayS, base) => {
          const { first: one } = found(first({ ...base, noiseV, delayS }, { groundShiftV }));
          const sum = one.parts.reduce((total, { partV }) => total + partV, 0);
          expectWithin(sum, one.leastBandV, 1e-9);
          for (const { partV, partValue } of one.parts) {
            expect(partV).toBeGreaterThanOrEqual(0);
            expectWithin(partValue, partV * Math.abs(one.valuePerV), 1e-12);
          }
          expect(one.bandV).toBeGreaterThan(one.leastBandV * (1 - 2e-9));
        },
      ),
    );
  });
  it('a jump away from the other threshold is no help', () => {
    for (const [base, sign] of [
      [fan, -1],
      [pressure, -1],
    ] as const) {
      const none = found(first(base, { groundShiftV: 0 })).first;
      const away = found(first(base, { groundShiftV: sign * 0.08 })).first;
      expect(away.parts[0]!.partV).toBe(0);
      expect(away.leastBandV).toBeGreaterThanOrEqual(none.leastBandV * 0.98);
    }
  });
  it('more of anything asks for more band', () => {
    const least = (input: SwitchingBandInput): number => found(input).first.leastBandV;
    const base = least(fan);
    expect(least({ ...fan, noiseV: 0.008 })).toBeCloseTo(base + 0.008, 3);
    expect(least({ ...fan, delayS: 3 })).toBeGreaterThan(base);
    expect(least({ ...fan, converterBits: 8 })).toBeGreaterThan(base);
    expect(least(first(fan, { groundShiftV: 0.05 }))).toBeGreaterThan(base);
    expect(least(first(fan, { directShiftValue: -1 }))).toBeGreaterThan(base);
  });
  it('a straight sensor as two points and as a slope are one', () => {
    const slope: SwitchSensor = { kind: 'slope', inputV: 2.5, atValue: 5, valuePerV: 2.5, output: 'ratiometric' };
    const [a, b] = [found(pressure).first, found({ ...pressure, sensor: slope }).first];
    expectWithin(a.leastBandV, b.leastBandV, 1e-12);
    expect([a.onCount, a.offCount]).toEqual([b.onCount, b.offCount]);
  });
  it('points of a thermistor give what its curve gives', () => {
    const cells = Array.from({ length: 141 }, (_, i) => 120 - i).map((tempC) => {
      const at = { curve, side: 'sensor-to-ground', supplyV: 5, pullOhm: 1000, tempC } as const;
      return { inValue: thermistorInput(at).inputV, outValue: tempC };
    });
    const points = found({ ...fan, sensor: { kind: 'points', cells, output: 'ratiometric' } }).first;
    const own = found(fan).first;
    expectWithin(points.leastBandValue, own.leastBandValue, 2e-3);
    expectWithin(points.cyclesPerH!, own.cyclesPerH!, 2e-2);
  });
  it('what lowers a rising sensor and what raises a falling one mirror each other', () => {
    const up: SwitchSensor = { kind: 'slope', inputV: 2.5, atValue: 0, valuePerV: 10, output: 'absolute' };
    const rates: SwitchProcess = { kind: 'rates', awayPerS: 0.1, backPerS: 0.3 };
    const input = first(
      { ...pressure, sensor: up, referenceV: 5 },
      { onValue: 0, groundShiftV: -0.03, process: rates },
    );
    const lowers = found({ ...input, acts: 'lowers' }).first;
    const raises = found({ ...input, acts: 'raises', sensor: { ...up, valuePerV: -10 } }).first;
    expect(raises.offCount).toBe(lowers.offCount);
    expect(raises.offValue).toBeCloseTo(-lowers.offValue, 12);
    expect(raises.cyclesPerH).toBeCloseTo(lowers.cyclesPerH!, 9);
    expect(raises.highestValue).toBeCloseTo(-lowers.lowestValue!, 9);
  });
  it('two speeds: the fast one starts from the slow one’s disturbance', () => {
    const slow = { ...stage, onValue: 92, groundShiftV: 0.02 };
    const fast: SwitchStage = { ...stage, onValue: 100, groundShiftV: 0.05, process: null };
    const both = found({ ...fan, first: slow, second: fast });
    expect(both.second).not.toBeNull();
    expect(both.first).toEqual(found({ ...fan, first: slow }).first);
    // Only the 30 mV more that the fast speed adds make its jump.
    const share = 1 - both.second!.onV / 5;
    expect(both.second!.jumpV).toBeCloseTo(0.03 * share, 3);
    expect(both.gapV).toBeCloseTo(both.first.onV - both.second!.offV, 12);
  });
  it('swapping two inputs of a kind is seen', () => {
    swapsMatter(
      (flat: { supplyV: number; referenceV: number; noiseV: number; groundShiftV: number; supplyShiftV: number }) => {
        const { groundShiftV, supplyShiftV, ...rest } = flat;
        return switchingBand({ ...first(fan, { groundShiftV, supplyShiftV }), ...rest });
      },
      { supplyV: 5, referenceV: 4.5, noiseV: 0.004, groundShiftV: 0.03, supplyShiftV: -0.02 },
    );
    swapsMatter(
      (flat: { leastOnTimeS: number; leastOffTimeS: number; delayS: number }) => switchingBand({ ...fan, ...flat }),
      { leastOnTimeS: 5, leastOffTimeS: 9, delayS: 2 },
    );
  });
});

describe('edges', () => {
  it('exactly the margin is enough, a count less is not', () => {
    const own = found(fan).first;
    const set = first(fan, { offValue: own.offValue });
    expect(switchingBand(set).possible).toBe(true);
    const narrow = thermistorInput({
      curve,
      side: 'sensor-to-ground',
      supplyV: 5,
      pullOhm: 1000,
      inputV: (own.offCount - 1) * (5 / 1024),
    });
    const refused = switchingBand(first(fan, { offValue: narrow.tempC! }));
    expect(refused).toMatchObject({ possible: false, code: 'band-too-narrow' });
    expect(refused.possible || refused.because).toContain('wanted at least');
  });
  it('bands that overlap, limits passed, and starts too often are told', () => {
    const fast = { ...stage, onValue: 100, groundShiftV: 0.08 };
    expect(switchingBand({ ...fan, second: fast })).toMatchObject({ possible: false, code: 'bands-overlap' });
    expect(switchingBand({ ...fan, highestValue: 98 })).toMatchObject({ possible: false, code: 'beyond-limits' });
    expect(switchingBand({ ...fan, lowestValue: 97 })).toMatchObject({ possible: false, code: 'beyond-limits' });
    expect(switchingBand({ ...fan, mostCyclesPerH: 1 })).toMatchObject({ code: 'switches-too-often' });
    expect(switchingBand({ ...fan, leastOnTimeS: 1000 })).toMatchObject({ code: 'switches-too-often' });
    expect(switchingBand({ ...fan, highestValue: 110, lowestValue: 80, mostCyclesPerH: 600 }).possible).toBe(true);
  });
  it('what never starts or never stops has no cycles, and says why', () => {
    const cool = found(first(fan, { process: { ...heat, withoutValue: 95 } })).first;
    expect(cool).toMatchObject({ cyclesPerH: null, noCycle: 'never-on', onTimeS: null, highestValue: 95 });
    const hot = found({ ...first(fan, { process: { ...heat, withValue: 99 } }), leastOffTimeS: 5 });
    expect(hot.first).toMatchObject({ cyclesPerH: null, noCycle: 'never-off' });
    expect(hot.checks.find(({ name }) => name === 'time off')).toMatchObject({ ok: true, value: null });
    expect(found(first(fan, { process: null })).first.noCycle).toBe('no-process');
    const none = switchingBand({ ...first(fan, { process: null }), highestValue: 120 });
    expect(none).toMatchObject({ possible: false, code: 'beyond-limits' });
  });
  it('a band that leaves the sensor or the converter is not possible', () => {
    const low = first(pressure, { onValue: 9.9 });
    expect(switchingBand(low)).toMatchObject({ possible: false, code: 'off-sensor', nearest: null });
    expect(switchingBand({ ...pressure, referenceV: 2 })).toMatchObject({ possible: false, code: 'off-sensor' });
  });
  it('a thermistor to the supply does not see the ground of its sensor', () => {
    const sensor = { ...thermistor(1000), side: 'sensor-to-supply' } as SwitchSensor;
    expect(found({ ...fan, sensor }).first.jumpV).toBeCloseTo(0, 12);
  });
  it('refuses nonsense', () => {
    const whole = { ...fan, highestValue: 110, lowestValue: 80, leastOnTimeS: 1, leastOffTimeS: 1, mostCyclesPerH: 60 };
    refusesNonsense(switchingBand, whole, {
      required: ['supplyV', 'converterBits', 'noiseV', 'delayS', 'marginFraction'],
      optional: ['highestValue', 'lowestValue', 'leastOnTimeS', 'leastOffTimeS', 'mostCyclesPerH'],
    });
    const bad = (change: Partial<SwitchingBandInput>, field: string, rule?: never): void =>
      expectInputError(() => switchingBand({ ...fan, ...change }), field, rule);
    bad({ acts: 'cools' as never }, 'acts');
    bad({ converterBits: 3 }, 'converterBits');
    bad({ converterBits: 25 }, 'converterBits');
    bad({ referenceV: 0 }, 'referenceV');
    bad({ sensor: { ...thermistor(1000), by: undefined } as never }, 'sensor.by');
    bad({ sensor: { ...thermistor(1000), side: 'up' } as never }, 'sensor.side');
    bad({ sensor: { kind: 'slope', inputV: 1, atValue: 1, valuePerV: 0, output: 'absolute' } }, 'sensor.valuePerV');
    bad({ sensor: { ...pressure.sensor, output: 'digital' } as never }, 'sensor.output');
    const back = [
      { inValue: 1, outValue: 0 },
      { inValue: 2, outValue: 5 },
      { inValue: 3, outValue: 4 },
    ];
    bad({ sensor: { kind: 'points', cells: back, output: 'absolute' } }, 'sensor.cells[2].outValue');
    const one = (change: Partial<SwitchStage>, field: string): void =>
      expectInputError(() => switchingBand(first(fan, change)), `first.${field}`);
    for (const value of [NaN, Infinity, undefined as never]) {
      for (const field of ['onValue', 'groundShiftV', 'supplyShiftV', 'directShiftValue'] as const)
        one({ [field]: value }, field);
    }
    one({ onValue: 2500 }, 'onValue');
    one({ offValue: 99 }, 'offValue');
    one({ offValue: NaN }, 'offValue');
    one({ offValue: -300 }, 'offValue');
    one({ groundShiftV: 2.4, supplyShiftV: -2.4 }, 'groundShiftV');
    one({ groundShiftV: 2.6 }, 'groundShiftV');
    one({ process: { kind: 'rates', awayPerS: 0, backPerS: 1 } }, 'process.awayPerS');
    one({ process: { ...heat, timeConstantS: 0 } }, 'process.timeConstantS');
    bad({ second: { ...stage, onValue: 97 } }, 'second.onValue');
  });
});
