import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  fitSteinhartHart,
  groundOffsetError,
  type GroundOffsetErrorInput,
  type GroundPiece,
  linearSensor,
  type OffsetCure,
  type OffsetSensor,
  sensorGroundBudget,
  type SensorOffset,
  thermistorInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const piece = (name: string, from: string, to: string, milliohm: number): GroundPiece => {
  return { name, from, to, resistanceOhm: milliohm / 1000 };
};
const pressure: OffsetSensor = {
  name: 'oil pressure',
  groundAt: 'engine',
  controllerAt: 'dash',
  groundedBy: 'wire',
  reads: 'ratiometric',
  inputV: 2,
  scale: { kind: 'slope', valuePerV: 2.5 },
  unit: 'bar',
  budget: sensorGroundBudget,
};
const { curve } = fitSteinhartHart({
  points: [
    { tempC: 0, resistanceOhm: 5900 },
    { tempC: 50, resistanceOhm: 834 },
    { tempC: 100, resistanceOhm: 186 },
  ],
});
const input: GroundOffsetErrorInput = {
  reference: 'post',
  pieces: [
    piece('engine strap', 'engine', 'post', 2),
    piece('body strap', 'body', 'post', 1),
    piece('dash stud', 'dash', 'body', 3),
  ],
  loads: [
    { name: 'fan', returnsAt: 'engine', currentA: 20 },
    { name: 'pump', returnsAt: 'body', currentA: 40 },
    { name: 'screen', returnsAt: 'dash', currentA: 10 },
    { name: 'alternator', returnsAt: 'engine', currentA: -30 },
  ],
  sensors: [pressure],
  supplyV: 5,
  referenceV: 5,
  converterBits: 10,
};
const one = (over: Partial<OffsetSensor>, whole: Partial<GroundOffsetErrorInput> = {}): SensorOffset =>
  groundOffsetError({ ...input, ...whole, sensors: [{ ...pressure, ...over }] }).sensors[0]!;
const cure = ({ cures }: SensorOffset, code: OffsetCure['code']): OffsetCure => cures.find((c) => c.code === code)!;

describe('published', () => {
  const cite = { source: 'circuit-theory', place: 'Ohm’s law along three straps, by hand', status: 'derived' } as const;
  const found = one({});
  const printed = (name: string, actual: () => number, print: string): void =>
    computed(name, cite, () => expectPrinted(actual(), print));
  const shifts = { fan: '40.0', pump: '-40.0', screen: '-40.0', alternator: '-60.0' };
  Object.entries(shifts).forEach(([name, print], l) =>
    printed(`${name} shifts the engine by ${print} mV`, () => found.pairs[l]!.shiftMv, print),
  );
  const errors = { fan: '24.0', pump: '-24.0', screen: '-24.0', alternator: '-36.0' };
  Object.entries(errors).forEach(([name, print], l) =>
    printed(`${name}: 2 of 5 V read ${print} mV off`, () => found.pairs[l]!.errorMv, print),
  );
  printed('24 mV are 4.9152 counts of 10 bits', () => found.pairs[0]!.errorCount, '4.9152');
  printed('and 0.060 bar', () => found.pairs[0]!.errorValue!, '0.060');
  printed('all that lower it: 140 mV', () => found.lowered.shiftMv, '-140.0');
  printed('all on: 100 mV', () => found.all.shiftMv, '-100.0');
  printed('volts of its own: 60 mV by the alternator', () => one({ reads: 'absolute' }).pairs[3]!.errorMv, '-60.0');
  printed('two wires read as a pair: nothing', () => one({ reads: 'differential', permittedMv: 1 }).worst.errorMv, '0');
  printed('strap to the dash: 6 mΩ over 14 − 1', () => cure(found, 'extra-strap').neededOhm! * 1e3, '0.4615');
  printed(
    'a fan alone on 20 mV of budget: the engine strap from 2 to 1 mΩ',
    () =>
      cure(one({ budget: { ...sensorGroundBudget, dropV: 0.02 } }, { loads: input.loads.slice(0, 1) }), 'larger-wire')
        .neededOhm! * 1e3,
    '1.000',
  );
  const budget = { source: 'common-practice', place: '10 mV, a sensor’s ground', status: 'common-practice' } as const;
  computed('140 mV against 10 mV: thirteen times over', budget, () =>
    expectPrinted(found.checks[0]!.marginFraction!, '-13.00'),
  );
  // A thermistor of 834 Ω at 50 °C behind 2490 Ω, its A, B and C from the worked case of three points.
  const kelvinOf = (ohm: number): number =>
    1 / (1.313427e-3 + 2.56439e-4 * Math.log(ohm) + 1.8482e-7 * Math.log(ohm) ** 3);
  const inputV = (5 * 834) / (834 + 2490);
  const readV = inputV + 0.04 * (1 - inputV / 5);
  const shownOhm = (2490 * readV) / (5 - readV);
  const pull = { curve, side: 'sensor-to-ground', supplyV: 5, pullOhm: 2490, extrapolate: true } as const;
  const by = (v: number): number | null => thermistorInput({ ...pull, inputV: v }).tempC;
  const thermistor = one({ reads: 'pull-up', inputV, permittedValue: 0.5, scale: { kind: 'function', by } });
  computed('the fan lifts 1.2546 V by 29.96 mV', cite, () => expectPrinted(thermistor.pairs[0]!.errorMv, '29.96'));
  computed('it then looks like 860.8 Ω', cite, () => expectPrinted(shownOhm, '860.8'));
  computed('and 50 °C is shown as 49.07 °C', cite, () => {
    expectPrinted(kelvinOf(shownOhm) - 273.15, '49.07');
    expectPrinted(thermistor.pairs[0]!.shownValue!, '49.07');
    expectWithin(thermistor.pairs[0]!.errorValue!, kelvinOf(shownOhm) - kelvinOf(834), 1e-4);
  });
});

/** Volts of the points by plain elimination without pivots, in the test's own words. */
function voltsOf({ reference, pieces, loads }: GroundOffsetErrorInput, on: readonly boolean[]): Map<string, number> {
  const points = [...new Set(pieces.flatMap(({ from, to }) => [from, to]))].filter((p) => p !== reference);
  const rows = points.map((p) => [
    ...points.map((q) =>
      pieces.reduce((sum, { from, to, resistanceOhm }) => {
        if (p === q) return sum + (from === p || to === p ? 1 / resistanceOhm : 0);
        return sum - ((from === p && to === q) || (from === q && to === p) ? 1 / resistanceOhm : 0);
      }, 0),
    ),
    loads.reduce((sum, { returnsAt, currentA }, l) => sum + (returnsAt === p && on[l] === true ? currentA : 0), 0),
  ]);
  rows.forEach((row, k) => {
    const pivot = row[k]!;
    for (let j = k; j < row.length; j++) row[j] = row[j]! / pivot;
    rows.forEach((other, i) => {
      if (i === k) return;
      const f = other[k]!;
      for (let j = k; j < row.length; j++) other[j] = other[j]! - f * row[j]!;
    });
  });
  return new Map([[reference, 0], ...points.map((p, i) => [p, rows[i]!.at(-1)!] as const)]);
}

/** Random grounds: a tree, and a few ways more. */
const webs = fc
  .record({
    count: fc.integer({ min: 2, max: 6 }),
    picks: fc.array(fc.noBias(fc.nat()), { minLength: 40, maxLength: 40 }),
    milliohms: fc.array(evenly(0.2, 20), { minLength: 12, maxLength: 12 }),
    amps: fc.array(evenly(-60, 80), { minLength: 3, maxLength: 3 }),
    share: evenly(0.05, 0.95),
    reads: fc.constantFrom<OffsetSensor['reads'][]>('absolute', 'ratiometric', 'pull-up', 'differential'),
    on: fc.array(fc.boolean(), { minLength: 3, maxLength: 3 }),
  })
  .map(({ count, picks, milliohms, amps, share, reads, on }) => {
    const name = (i: number): string => (i === 0 ? 'post' : `p${i}`);
    const tree = Array.from({ length: count }, (_, i) => [i + 1, picks[i]! % (i + 1)] as const);
    const more = Array.from({ length: picks[20]! % 4 }, (_, i) => {
      const a = picks[21 + i]! % (count + 1);
      return [a, (a + 1 + (picks[25 + i]! % count)) % (count + 1)] as const;
    });
    const pieces = [...tree, ...more].map(([a, b], i) => piece(`r${i}`, name(a), name(b), milliohms[i]!));
    const at = (i: number): string => name(picks[30 + i]! % (count + 1));
    const sensor: OffsetSensor = {
      ...pressure,
      groundAt: at(0),
      controllerAt: at(1),
      reads,
      inputV: 5 * share,
      budget: { ...sensorGroundBudget, dropV: 0.004 },
      permittedMv: 5,
    };
    const loads = amps.map((currentA, l) => ({ name: `l${l}`, returnsAt: at(2 + l), currentA }));
    return { web: { ...input, pieces, loads, sensors: [sensor] }, sensor, on, share };
  });

describe('independent', () => {
  it('a circuit simulator on 120 random grounds, with the sensor as a circuit of its own', async () => {
    let moved = 0;
    for (const { web, sensor, on, share } of fc.sample(webs, { numRuns: 120, seed: 686 })) {
      const node = (point: string): string => (point === 'post' ? '0' : point);
      const lines = web.pieces.map(
        ({ from, to, resistanceOhm }, i) => `r${i} ${node(from)} ${node(to)} ${resistanceOhm}`,
      );
      web.loads.forEach(({ returnsAt, currentA }, l) => {
        if (on[l]! && returnsAt !== 'post') lines.push(`i${l} 0 ${node(returnsAt)} ${currentA}`);
      });
      const [s, c] = [node(sensor.groundAt), node(sensor.controllerAt)];
      // Supply and converter stand on the controller's ground. The potentiometer is so large that it moves nothing.
      lines.push(`vs sup ${c} 5`, `rx sup 0 1e9`);
      if (sensor.reads === 'absolute') lines.push(`vo out ${s} ${5 * share}`);
      else lines.push(`ru sup out ${1e9 * (1 - share)}`, `rl out ${s} ${1e9 * share}`);
      lines.push('.options gmin=1e-18 reltol=1e-9 vntol=1e-13 abstol=1e-16', '.op');
      const v = await simulate(lines.join('\n'));
      const volts = (name: string): number => (name === '0' ? 0 : v[`v(${name})`]![0]!);
      const [offset] = groundOffsetError({ ...web, sensors: [sensor] }).sensors;
      const shiftMv = offset!.pairs.reduce((sum, p, l) => sum + (on[l]! ? p.shiftMv : 0), 0);
      const errorMv = offset!.pairs.reduce((sum, p, l) => sum + (on[l]! ? p.errorMv : 0), 0);
      expect(Math.abs(shiftMv - (volts(s) - volts(c)) * 1000)).toBeLessThan(1e-5);
      const readMv = (volts('out') - volts(c)) * 1000;
      if (sensor.reads !== 'differential' && offset!.pairs.every(({ overRange }) => overRange === 'no')) {
        expect(Math.abs(errorMv - (readMv - 5000 * share))).toBeLessThan(1e-4);
        if (Math.abs(errorMv) > 0.1) moved++;
      }
    }
    expect(moved).toBeGreaterThan(40);
  });

  it('node equations by plain elimination, every pair of 150 random grounds', () => {
    for (const { web, sensor } of fc.sample(webs, { numRuns: 150, seed: 688 })) {
      const [offset] = groundOffsetError(web).sensors;
      const sums: number[] = [];
      for (let mask = 0; mask < 8; mask++) {
        const v = voltsOf(
          web,
          [0, 1, 2].map((l) => ((mask >> l) & 1) === 1),
        );
        sums.push((v.get(sensor.groundAt)! - v.get(sensor.controllerAt)!) * 1000);
      }
      [1, 2, 4].forEach((mask, l) => expect(Math.abs(offset!.pairs[l]!.shiftMv - sums[mask]!)).toBeLessThan(1e-8));
      expect(Math.abs(offset!.raised.shiftMv - Math.max(...sums))).toBeLessThan(1e-8);
      expect(Math.abs(offset!.lowered.shiftMv - Math.min(...sums))).toBeLessThan(1e-8);
      expect(Math.abs(offset!.all.shiftMv - sums[7]!)).toBeLessThan(1e-8);
    }
  });

  it('each cure built in and solved anew leaves what it says, and is just enough', () => {
    const seen: Record<string, number> = {};
    for (const { web, sensor } of fc.sample(webs, { numRuns: 150, seed: 10 })) {
      const limitMv = sensor.reads === 'differential' ? 5 : 4;
      const worst = (changed: GroundOffsetErrorInput): number => {
        const shifts = [1, 2, 4].map((mask) => {
          const v = voltsOf(
            changed,
            [0, 1, 2].map((l) => ((mask >> l) & 1) === 1),
          );
          return (v.get(sensor.groundAt)! - v.get(sensor.controllerAt)!) * 1000;
        });
        const up = shifts.reduce((sum, e) => sum + Math.max(e, 0), 0);
        return Math.max(up, up - shifts.reduce((sum, e) => sum + e, 0));
      };
      for (const { code, meets, neededOhm, areaFactor, piece: which, loads, left } of groundOffsetError(web).sensors[0]!
        .cures) {
        if (code === 'extra-strap') {
          const strap = { name: 'strap', from: sensor.groundAt, to: sensor.controllerAt, resistanceOhm: neededOhm! };
          const after = worst({ ...web, pieces: [...web.pieces, strap] });
          expectWithin(Math.abs(left.shiftMv), after, 1e-7);
          expectWithin(after, limitMv, 1e-6);
        } else if (code === 'own-return') {
          const after = worst({
            ...web,
            loads: web.loads.map((l) => (loads.includes(l.name) ? { ...l, currentA: 0 } : l)),
          });
          expect(Math.abs(Math.abs(left.shiftMv) - after)).toBeLessThan(1e-8);
          expect(after).toBeLessThanOrEqual(limitMv);
          for (const kept of loads) {
            const fewer = loads.filter((l) => l !== kept);
            const without = web.loads.map((l) => (fewer.includes(l.name) ? { ...l, currentA: 0 } : l));
            expect(worst({ ...web, loads: without })).toBeGreaterThan(limitMv);
          }
        } else if (code === 'larger-wire') {
          const with_ = (name: string, factor: number): number =>
            worst({
              ...web,
              pieces: web.pieces.map((p) => (p.name === name ? { ...p, resistanceOhm: p.resistanceOhm / factor } : p)),
            });
          if (meets) {
            expectWithin(Math.abs(left.shiftMv), with_(which!, areaFactor!), 1e-6);
            expectWithin(neededOhm! * areaFactor!, web.pieces.find((p) => p.name === which)!.resistanceOhm, 1e-8);
            for (const { name } of web.pieces) expect(with_(name, areaFactor! * 0.999)).toBeGreaterThan(limitMv);
          } else for (const { name } of web.pieces) expect(with_(name, 99.99)).toBeGreaterThan(limitMv * 0.999);
        }
        seen[`${code} ${meets}`] = (seen[`${code} ${meets}`] ?? 0) + 1;
      }
    }
    expect(seen['extra-strap true']).toBeGreaterThan(50);
    expect(seen['larger-wire true']).toBeGreaterThan(10);
    expect(seen['larger-wire false']).toBeGreaterThan(10);
  });

  it('the house’s own straight line reads the same as by hand', () => {
    const line = (v: number): number | null =>
      linearSensor({
        lowV: 0.5,
        highV: 4.5,
        lowValue: 0,
        highValue: 10,
        output: 'ratiometric',
        ratedSupplyV: 5,
        supplyV: 5,
        inputV: v,
        lowFaultV: 0.25,
        highFaultV: 4.75,
      }).value;
    const found = one({ scale: { kind: 'function', by: line }, permittedValue: 0.05 });
    expectWithin(found.trueValue!, 3.75, 1e-12);
    expectWithin(found.pairs[3]!.errorValue!, -0.09, 1e-9);
    expect(found.checks.map(({ name }) => name)).toEqual(['ground of oil pressure', 'oil pressure in its unit']);
  });
});

describe('laws', () => {
  it('twice the current or twice all resistances shift twice; a share of the supply passes what is left', () => {
    fc.assert(
      fc.property(webs, ({ web, share }) => {
        const shiftsOf = (changed: GroundOffsetErrorInput): readonly number[] =>
          groundOffsetError(changed).sensors[0]!.pairs.map(({ shiftMv }) => shiftMv);
        const before = shiftsOf(web);
        const loads = web.loads.map((l) => ({ ...l, currentA: 2 * l.currentA }));
        const pieces = web.pieces.map((p) => ({ ...p, resistanceOhm: 2 * p.resistanceOhm }));
        for (const after of [shiftsOf({ ...web, loads }), shiftsOf({ ...web, pieces })])
          after.forEach((e, l) => expect(e).toBeCloseTo(2 * before[l]!, 8));
        const sensors = web.sensors.map((s) => ({ ...s, reads: 'ratiometric' as const }));
        const [offset] = groundOffsetError({ ...web, sensors }).sensors;
        offset!.pairs.forEach((p) => {
          if (p.overRange === 'no') expect(p.errorMv).toBeCloseTo(p.shiftMv * (1 - share), 9);
        });
      }),
    );
  });
  it('sensor and controller swapped turn every sign, and a sensor grounded at its controller is not moved', () => {
    fc.assert(
      fc.property(webs, ({ web, sensor }) => {
        const turned = { ...sensor, groundAt: sensor.controllerAt, controllerAt: sensor.groundAt };
        const same = { ...sensor, groundAt: sensor.controllerAt };
        const [there] = groundOffsetError(web).sensors;
        const [back] = groundOffsetError({ ...web, sensors: [turned] }).sensors;
        there!.pairs.forEach(({ shiftMv }, l) => expect(back!.pairs[l]!.shiftMv).toBeCloseTo(-shiftMv, 9));
        const [still] = groundOffsetError({ ...web, sensors: [same] }).sensors;
        expect(still!.worst).toMatchObject({ shiftMv: 0, errorMv: 0, errorCount: 0 });
        expect(still!.worstLoad).toBeNull();
      }),
    );
  });
  it('what a sensor bears is just what its checks bear', () => {
    const scale = {
      kind: 'points',
      cells: [
        { inValue: 0.5, outValue: 0 },
        { inValue: 1.9, outValue: 3 },
        { inValue: 4.5, outValue: 20 },
      ],
    } as const;
    const at = (currentA: number): SensorOffset =>
      one({ scale, inputV: 2, reads: 'absolute', permittedValue: 0.7, budget: undefined } as never, {
        loads: [{ name: 'l', returnsAt: 'engine', currentA }],
      });
    const { mostRaisedMv, mostLoweredMv } = at(1);
    // Upwards along one piece; downwards past the bend, where a volt means less.
    expectWithin(mostRaisedMv!, (0.7 / 17) * 2.6 * 1000, 1e-9);
    expectWithin(mostLoweredMv!, 100 + (0.7 - (17 / 2.6) * 0.1) * (1.4 / 3) * 1000, 1e-9);
    for (const [most, sign] of [
      [mostRaisedMv!, 1],
      [mostLoweredMv!, -1],
    ] as const) {
      expect(at((sign * most * 0.999999) / 2).checks[0]!.ok).toBe(true);
      expect(at((sign * most * 1.000001) / 2).checks[0]!.ok).toBe(false);
    }
  });
  it('a sensor that meets its limits gets no cures, and the worst pair is named', () => {
    const calm = { ...pressure, name: 'calm', budget: { ...sensorGroundBudget, dropV: 0.2 } };
    const result = groundOffsetError({ ...input, sensors: [calm, pressure] });
    expect(result.sensors[0]!.cures).toEqual([]);
    expect(result).toMatchObject({ worstLoad: 'alternator', worstSensor: 'oil pressure' });
    expect(result.sensors[1]!).toMatchObject({ worstLoad: 'alternator' });
    expect(result.decidedBy).toBe('ground of oil pressure');
    expectWithin(result.sensors[1]!.pairs[3]!.shareFraction, 6, 1e-9);
  });
  it('a body that is the ground cannot be led back, and the answer says so', () => {
    expect(cure(one({ groundedBy: 'body' }), 'ground-to-controller')).toMatchObject({ meets: false });
    expect(cure(one({}), 'ground-to-controller')).toMatchObject({ meets: true, left: { errorMv: 0 } });
  });
});

describe('edges', () => {
  it('readings stop at the ends of the converter', () => {
    const big = { loads: [{ name: 'winch', returnsAt: 'engine', currentA: 400 }] };
    const found = one({ reads: 'absolute', inputV: 4.5 }, big).pairs[0]!;
    expect(found).toMatchObject({ overRange: 'above', shiftMv: 800 });
    expectWithin(found.errorMv, 500, 1e-12);
    const low = one({ reads: 'absolute', inputV: 0.5, controllerAt: 'engine', groundAt: 'post' }, big).pairs[0]!;
    expect(low).toMatchObject({ overRange: 'below' });
    expectWithin(low.errorMv, -500, 1e-12);
  });
  it('off its scale a sensor shows nothing, and its check says so', () => {
    const cells = [
      { inValue: 0, outValue: 0 },
      { inValue: 2, outValue: 8 },
    ];
    const found = one({
      scale: { kind: 'points', cells },
      permittedValue: 1,
      budget: sensorGroundBudget,
      reads: 'absolute',
    });
    expect(found.raised).toMatchObject({ shownValue: null, errorValue: null });
    expect(found.checks[1]).toMatchObject({ ok: false, value: null });
    expect(found.checks[1]!.because).toBeDefined();
    expect(cure(found, 'extra-strap')).toMatchObject({ meets: false, neededOhm: null });
    expect(JSON.stringify(found)).not.toContain('Infinity');
  });
  it('refuses nonsense', () => {
    refusesNonsense(groundOffsetError, input, { required: ['supplyV', 'referenceV', 'converterBits'] });
    neverRunsOut(groundOffsetError, input);
    const sensor = (over: object) => () => one(over);
    for (const value of [NaN, -1, 5.01, 'abc']) expectInputError(sensor({ inputV: value }), 'sensors[0].inputV');
    expectInputError(sensor({ reads: 'magic' }), 'sensors[0].reads', 'oneOf');
    expectInputError(sensor({ groundedBy: 'hope' }), 'sensors[0].groundedBy', 'oneOf');
    expectInputError(sensor({ groundAt: 'moon' }), 'sensors[0].groundAt', 'inTable');
    expectInputError(sensor({ controllerAt: 'moon' }), 'sensors[0].controllerAt', 'inTable');
    expectInputError(sensor({ unit: NaN }), 'sensors[0].unit', 'text');
    expectInputError(sensor({ budget: undefined }), 'sensors[0].budget', 'missing');
    expectInputError(sensor({ scale: undefined, permittedValue: 1 }), 'sensors[0].scale', 'missing');
    expectInputError(sensor({ scale: { kind: 'slope', valuePerV: 0 } }), 'sensors[0].scale.valuePerV', 'above');
    expectInputError(sensor({ scale: { kind: 'function' } }), 'sensors[0].scale.by', 'missing');
    expectInputError(sensor({ scale: { kind: 'function', by: () => NaN } }), 'sensors[0].scale.by', 'finite');
    expectInputError(sensor({ scale: { kind: 'function', by: () => null } }), 'sensors[0].inputV', 'range');
    const turning = [0, 5, 3].map((outValue, i) => ({ inValue: i * 2, outValue }));
    expectInputError(
      sensor({ scale: { kind: 'points', cells: turning } }),
      'sensors[0].scale.cells[2].outValue',
      'order',
    );
    const whole = (over: object) => () => groundOffsetError({ ...input, ...over });
    expectInputError(whole({ sensors: [pressure, pressure] }), 'sensors[1].name', 'order');
    expectInputError(whole({ sensors: [] }), 'sensors', 'list');
    expectInputError(whole({ loads: [] }), 'loads', 'list');
    expectInputError(
      whole({ loads: [{ name: 'x', returnsAt: 'moon', currentA: 1 }] }),
      'loads[0].returnsAt',
      'inTable',
    );
    expectInputError(
      whole({ loads: [{ name: 'x', returnsAt: 'body', currentA: NaN }] }),
      'loads[0].currentA',
      'finite',
    );
    expectInputError(whole({ pieces: [piece('a', 'x', 'y', 1)] }), 'pieces', 'list');
    expectInputError(whole({ pieces: [piece('a', 'x', 'x', 1)] }), 'pieces[0].to', 'order');
    expectInputError(whole({ pieces: [piece('a', 'x', 'post', 0)] }), 'pieces[0].resistanceOhm', 'atLeast');
    expect(whole({ sensors: [{ ...pressure, inputV: 9 }] })).toThrow(
      'groundOffsetError: sensors[0].inputV must be at most 5, got 9',
    );
  });
});
