import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  sensorSupplyBudget,
  type SensorSupplyBudgetInput,
  type SensorSupplyBudgetResult,
  type SupplyDevice,
  type SupplyDraw,
  type SupplyFault,
  type SupplyLimiter,
  type SupplyPin,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const device = (name: string, pin: string, draw: SupplyDraw, over: Partial<SupplyDevice> = {}): SupplyDevice => {
  return { name, pin, draw, toleranceFraction: 0, standsV: null, ...over };
};
const track = (ohm: number): SupplyDraw => ({ kind: 'resistance', resistanceOhm: ohm });
const sensor = (milliamp: number, worksFromV = 4.5): SupplyDraw => {
  return { kind: 'current', currentA: milliamp / 1000, worksFromV };
};
const pin = (name: string, over: Partial<SupplyPin> = {}): SupplyPin => {
  return { name, limitA: 0.05, limiter: { kind: 'constant', mostA: 0.1 }, backDropV: null, ...over };
};
const half = { kind: 'share', outFraction: 0.5 } as const;
const input: SensorSupplyBudgetInput = {
  supplyV: 5,
  supplyToleranceFraction: 0,
  reference: 'rail',
  regulator: { limitA: 0.4, limiter: { kind: 'constant', mostA: 0.5 }, ownA: 0.1, worksFromV: 4.5, standsV: 6 },
  pins: [pin('A'), pin('B')],
  devices: [
    device('pedal 1', 'A', track(1000), { trackOf: 'pedal', output: half }),
    device('pedal 2', 'B', track(1000), { trackOf: 'pedal', output: half }),
    device('boost', 'A', sensor(20), { output: half, standsV: 6.5 }),
  ],
  wantedHeadroomFraction: 0,
  shortOhm: 10,
  batteryV: 14.4,
  allowedErrorV: 0.05,
};
const solve = (over: Partial<SensorSupplyBudgetInput>): SensorSupplyBudgetResult =>
  sensorSupplyBudget({ ...input, ...over });
const faultOf = (
  over: Partial<SensorSupplyBudgetInput>,
  fault: SupplyFault['fault'] = 'short-to-ground',
  at = 'A',
): SupplyFault => solve(over).faults.find((f) => f.fault === fault && f.pin === at)!;

describe('published', () => {
  const cite = { source: 'circuit-theory', place: 'Ohm’s law, worked by hand', status: 'derived' } as const;
  const sum = (draw: SupplyDraw, over: Partial<SupplyDevice> = {}, supplyToleranceFraction = 0): number =>
    solve({ devices: [device('x', 'A', draw, over)], supplyToleranceFraction }).pins[0]!.sumA * 1000;
  const printed = (name: string, actual: () => number, print: string): void =>
    computed(name, cite, () => expectPrinted(actual(), print));
  printed('a track of 1 kΩ: 5 mA', () => sum(track(1000)), '5.000');
  printed('20 % less of it: 6.25 mA', () => sum(track(1000), { toleranceFraction: 0.2 }), '6.250');
  printed('and 2 % more supply: 6.375 mA', () => sum(track(1000), { toleranceFraction: 0.2 }, 0.02), '6.375');
  printed('10 mA and 10 %: 11 mA', () => sum(sensor(10), { toleranceFraction: 0.1 }), '11.000');
  printed('1 kΩ on a hot thermistor of 100 Ω: 4.5455 mA', () => sum({ kind: 'pull-up', pullOhm: 1000, leastSensorOhm: 100 }), '4.5455'); // prettier-ignore
  printed('a diode of 2 V behind 330 Ω: 9.0909 mA', () => sum({ kind: 'led', resistanceOhm: 330, forwardV: 2 }), '9.0909'); // prettier-ignore
  printed('10 mA, 1.3 times on a cold day: 13 mA', () => sum(sensor(10), { coldFactor: 1.3, hotFactor: 0.9 }), '13.00');
  const sums = solve({});
  printed('pin A: 5 and 20 mA', () => sums.pins[0]!.sumA * 1000, '25.000');
  printed('its headroom: 25 mA', () => sums.pins[0]!.headroomA * 1000, '25.000');
  printed('all and 100 mA of the controller: 130 mA', () => sums.totalA * 1000, '130.00');

  const short = (over: Partial<SensorSupplyBudgetInput>): SupplyFault => faultOf(over);
  const pot = [device('pot', 'A', track(1000), { output: half })];
  printed('100 mA into 1 Ω beside 1 kΩ: 99.9 mV', () => short({ devices: pot, shortOhm: 1 }).pinV, '0.09990');
  const folds: SupplyLimiter = { kind: 'foldback', kneeA: 0.1, shortA: 0.03 };
  printed(
    'folding back from 100 to 30 mA into 10 Ω beside 1 kΩ: 0.03/(0.1 + 0.001 − 0.014)',
    () => short({ devices: pot, pins: [pin('A', { limiter: folds })] }).pinV,
    '0.344828',
  );
  const one = [device('boost', 'A', sensor(20), { output: half })];
  printed('10 Ω beside 20 mA that fades below 4.5 V: 0.95745 V', () => short({ devices: one }).pinV, '0.95745');
  const weak = short({ devices: one, shortOhm: 60, reference: 'own' });
  printed('60 Ω beside 20 mA: 4.8 V', () => weak.pinV, '4.8000');
  printed('half of that is read 100 mV low by an own reference', () => weak.devices[0]!.errorV!, '-0.1000');
  const tied = short({ pins: [pin('A', { limiter: null, backDropV: 0 }), pin('B', { limiter: null, backDropV: 0 })] });
  // Below 4.5 V: 0.5 A = V (1/10 + 2/1000 + 0.02/4.5 + 0.1/5) = V · 0.126444 S.
  printed('both pins one rail of 500 mA into 10 Ω: 3.9543 V', () => tied.pinV, '3.9543');

  const at = (over: Partial<SensorSupplyBudgetInput>): SupplyFault => faultOf({ shortOhm: 0.5, ...over }, 'short-to-battery'); // prettier-ignore
  printed('14.4 V through 0.5 Ω to 1 kΩ behind a pin that blocks', () => at({ devices: pot }).pinV, '14.3928');
  const back = at({
    devices: [...pot, device('boost', 'B', sensor(50))],
    pins: [pin('A', { backDropV: 0.7 }), pin('B')],
  });
  printed('the same with 150 mA behind a diode of 0.7 V: 14.3178 V', () => back.pinV, '14.3178');
  printed('the rail then has 13.6178 V', () => back.railV, '13.6178');
  printed('and 150 mA come in through the pin', () => back.backA * 1000, '150.00');
  const practice = {
    source: 'common-practice',
    place: 'tracks on pins of their own',
    status: 'common-practice',
  } as const;
  computed('two tracks on two pins meet it, on one they do not', practice, () => {
    const check = (over: Partial<SensorSupplyBudgetInput>) =>
      solve(over).checks.find(({ name }) => name === 'pins that tracks of pedal hang on')!;
    expect(check({})).toMatchObject({ ok: true, value: 2, limit: 2 });
    const together = input.devices.map((d) => ({ ...d, pin: 'A' }));
    expect(check({ devices: together })).toMatchObject({ ok: false, value: 1 });
  });
});

const draws: fc.Arbitrary<SupplyDraw> = fc.oneof(
  evenly(2, 30).map((mA) => sensor(mA, 4)),
  evenly(200, 5000).map(track),
  evenly(200, 4000).map((pullOhm): SupplyDraw => ({ kind: 'pull-up', pullOhm, leastSensorOhm: 50 })),
  evenly(150, 900).map((resistanceOhm): SupplyDraw => ({ kind: 'led', resistanceOhm, forwardV: 1.9 })),
);
const vehicles = fc
  .record({
    draws: fc.array(draws, { minLength: 6, maxLength: 6 }),
    places: fc.array(fc.noBias(fc.nat(2)), { minLength: 6, maxLength: 6 }),
    mosts: fc.array(evenly(0.03, 0.25), { minLength: 3, maxLength: 3 }),
    kinds: fc.array(fc.noBias(fc.nat(3)), { minLength: 3, maxLength: 3 }),
    backs: fc.array(fc.noBias(fc.nat(2)), { minLength: 3, maxLength: 3 }),
    railA: evenly(0.15, 0.6),
    ownA: evenly(0, 0.1),
    shortOhm: evenly(0.5, 80),
  })
  .map(({ draws: all, places, mosts, kinds, backs, railA, ownA, shortOhm }): SensorSupplyBudgetInput => {
    const pins = mosts.map((mostA, p) =>
      pin(`p${p}`, {
        limiter: kinds[p] === 0 ? null : { kind: 'constant', mostA },
        // The rail itself blocks nothing.
        backDropV: backs[p] === 1 ? 0.6 : backs[p] === 0 && kinds[p] !== 0 ? null : 0,
      }),
    );
    const devices = all.map((draw, d) => device(`d${d}`, `p${places[d]!}`, draw));
    const regulator = {
      limitA: railA,
      limiter: { kind: 'constant', mostA: railA } as const,
      ownA,
      worksFromV: 4.5,
      standsV: 6,
    };
    return { ...input, pins, devices, regulator, shortOhm };
  });

/** Draws a current that is constant from some volts on and in proportion below: a sink that a diode keeps at ground. */
const fading = (name: string, node: string, currentA: number, fromV: number): string[] => [
  `rf${name} ${node} y${name} ${fromV / Math.max(currentA, 1e-9)}`,
  `if${name} y${name} 0 ${Math.max(currentA, 1e-9)}`,
  `df${name} 0 y${name} ideal`,
];

/** A device as a circuit of sources, resistors and diodes of nearly no drop. */
function deviceLines(name: string, node: string, draw: SupplyDraw): string[] {
  if (draw.kind === 'current') return fading(name, node, draw.currentA, draw.worksFromV);
  if (draw.kind === 'led') {
    const { resistanceOhm, forwardV } = draw;
    return [
      `rl${name} ${node} l${name} ${resistanceOhm}`,
      `dl${name} l${name} k${name} ideal`,
      `vl${name} k${name} 0 ${forwardV}`,
    ];
  }
  return [`rr${name} ${node} 0 ${draw.kind === 'pull-up' ? draw.pullOhm + draw.leastSensorOhm : draw.resistanceOhm}`];
}

/**
 * The whole supply as a circuit. A limiter is a source of its most current, and a diode that leads back what is not
 * taken; what may not flow backwards has a diode in series.
 */
function netlist(vehicle: SensorSupplyBudgetInput, at: number, battery: boolean): string {
  const { pins, devices, regulator, shortOhm, batteryV } = vehicle;
  const { mostA } = regulator.limiter as { mostA: number };
  const lines = [
    `ireg 0 reg ${mostA}`,
    'dreg reg five ideal',
    'vfive five 0 5',
    'dout reg rail ideal',
    'rz rail 0 1e9',
  ];
  lines.push(...fading('own', 'rail', regulator.ownA, 5));
  pins.forEach(({ limiter, backDropV }, p) => {
    const node = `n${p}`;
    const most = limiter === null ? 5 : (limiter as { mostA: number }).mostA;
    lines.push(
      `il${p} rail x${p} ${most}`,
      `dl${p} x${p} rail ideal`,
      `ds${p} x${p} ${node} ideal`,
      `rz${p} ${node} 0 1e9`,
    );
    if (p === at && battery && backDropV !== null)
      lines.push(`db${p} ${node} z${p} ideal`, `vb${p} z${p} rail ${backDropV}`);
  });
  devices.forEach(({ pin: on, draw }, d) => lines.push(...deviceLines(`d${d}`, `n${on.slice(1)}`, draw)));
  if (battery) lines.push(`vbat bat 0 ${batteryV}`, `rs bat n${at} ${shortOhm}`);
  else lines.push(`rs n${at} 0 ${shortOhm}`);
  lines.push('.model ideal d is=1e-14 n=0.0005', '.options gmin=1e-12 reltol=1e-6 itl1=500', '.op');
  return lines.join('\n');
}

describe('independent', () => {
  const cases = fc.sample(vehicles, { numRuns: 60, seed: 686 });
  it.each([false, true])('a circuit simulator on 60 random vehicles, to the battery: %s', async (battery) => {
    let rail = 0;
    let limited = 0;
    for (const [k, vehicle] of cases.entries()) {
      const at = k % 3;
      const v = await simulate(netlist(vehicle, at, battery));
      const fault = sensorSupplyBudget(vehicle).faults[2 * at + (battery ? 1 : 0)]!;
      const volts = (node: string): number => v[`v(${node})`]![0]!;
      expect(Math.abs(fault.railV - volts('rail')), `rail of ${k}`).toBeLessThan(2e-3);
      fault.pins.forEach(({ pinV }, p) =>
        expect(Math.abs(pinV - volts(`n${p}`)), `pin ${p} of ${k}`).toBeLessThan(2e-3),
      );
      if (Math.abs(fault.railV - 5) > 0.01) rail++;
      if (fault.pinV < 4.9) limited++;
    }
    expect(rail).toBeGreaterThan(10);
    if (!battery) expect(limited).toBeGreaterThan(20);
  });

  it('volts that fall in small steps from the top rest where folding back lets them', () => {
    const folded = fc.record({
      vehicle: vehicles,
      kneeA: evenly(0.03, 0.2),
      part: evenly(0, 1),
    });
    let low = 0;
    for (const { vehicle, kneeA, part } of fc.sample(folded, { numRuns: 100, seed: 3 })) {
      const limiter: SupplyLimiter = { kind: 'foldback', kneeA, shortA: kneeA * part };
      const devices = vehicle.devices.map((d) => ({ ...d, pin: 'p0' }));
      const regulator = {
        limitA: 9,
        limiter: { kind: 'constant', mostA: 9 } as const,
        ownA: 0,
        worksFromV: 0,
        standsV: null,
      };
      const { pinV } = faultOf(
        { ...vehicle, devices, regulator, pins: [pin('p0', { limiter })] },
        'short-to-ground',
        'p0',
      );
      const taken = (v: number): number =>
        devices.reduce((sum, { draw }) => {
          if (draw.kind === 'current') return sum + draw.currentA * Math.min(1, v / draw.worksFromV);
          if (draw.kind === 'led') return sum + Math.max(0, v - draw.forwardV) / draw.resistanceOhm;
          return (
            sum + v / (draw.kind === 'pull-up' ? draw.pullOhm + 50 : (draw as { resistanceOhm: number }).resistanceOhm)
          );
        }, v / vehicle.shortOhm);
      let v = 5;
      while (v > 0 && taken(v) > kneeA * part + (kneeA * (1 - part) * v) / 5) v -= 1e-4;
      expect(Math.abs(pinV - Math.max(v, 0))).toBeLessThan(2e-4);
      if (pinV > 0.05 && pinV < 4.9) low++;
    }
    expect(low).toBeGreaterThan(50);
  });

  it('every way tried: both splits of 200 small cases, and what competes', () => {
    const small = fc.record({
      mA: fc.array(fc.noBias(fc.integer({ min: 1, max: 30 })), { minLength: 2, maxLength: 6 }),
      pinOf: fc.array(fc.noBias(fc.nat(2)), { minLength: 6, maxLength: 6 }),
      limits: fc.array(fc.noBias(fc.integer({ min: 15, max: 50 })), { minLength: 2, maxLength: 3 }),
      tracks: fc.array(fc.noBias(fc.nat(3)), { minLength: 6, maxLength: 6 }),
      fixed: fc.array(fc.noBias(fc.nat(5)), { minLength: 6, maxLength: 6 }),
    });
    const seen = { possible: 0, moved: 0, not: 0 };
    for (const { mA, pinOf, limits, tracks, fixed } of fc.sample(small, { numRuns: 200, seed: 688 })) {
      const pins = limits.map((limit, p) => pin(`p${p}`, { limitA: limit / 1000 }));
      const devices = mA.map((each, d) =>
        device(`d${d}`, `p${pinOf[d]! % limits.length}`, sensor(each), {
          ...(tracks[d]! < 2 ? { trackOf: `t${tracks[d]!}` } : {}),
          fixed: fixed[d] === 0,
        }),
      );
      /** Every assignment of some devices, judged in whole milliamperes. */
      const ways = (some: readonly number[]): { readonly moves: number; readonly least: number }[] => {
        const found: { readonly moves: number; readonly least: number }[] = [];
        for (let code = 0; code < limits.length ** some.length; code++) {
          const at = some.map((_, i) => Math.floor(code / limits.length ** i) % limits.length);
          const sums = limits.map((_, p) => some.reduce((sum, d, i) => sum + (at[i] === p ? mA[d]! : 0), 0));
          const apart = some.every((d, i) =>
            some.every((e, j) => i === j || at[i] !== at[j] || tracks[d]! >= 2 || tracks[d] !== tracks[e]),
          );
          const stays = some.every((d, i) => fixed[d] !== 0 || at[i] === pinOf[d]! % limits.length);
          if (!apart || !stays || sums.some((s, p) => s > limits[p]!)) continue;
          const moves = some.filter((d, i) => at[i] !== pinOf[d]! % limits.length).length;
          found.push({ moves, least: Math.min(...sums.map((s, p) => 1 - s / limits[p]!)) });
        }
        return found;
      };
      const every = ways(mA.map((_, d) => d));
      const { fewestMoves, mostHeadroom } = solve({ pins, devices });
      if (every.length === 0) {
        seen.not++;
        if (fewestMoves.possible) throw new Error('found a split that is none');
        expect(mostHeadroom.possible).toBe(false);
        const rest = fewestMoves.competing.map((name) => Number(name.slice(1)));
        expect(rest.length).toBeGreaterThan(0);
        expect(ways(rest)).toEqual([]);
        for (const away of rest) expect(ways(rest.filter((d) => d !== away)).length).toBeGreaterThan(0);
        continue;
      }
      seen.possible++;
      if (!fewestMoves.possible || !mostHeadroom.possible) throw new Error('missed a split');
      const fewest = Math.min(...every.map(({ moves }) => moves));
      if (fewest > 0) seen.moved++;
      expect(fewestMoves.moved).toHaveLength(fewest);
      const bestOfFewest = Math.max(...every.filter(({ moves }) => moves === fewest).map(({ least }) => least));
      expect(fewestMoves.headroomFraction).toBeCloseTo(bestOfFewest, 9);
      const best = Math.max(...every.map(({ least }) => least));
      expect(mostHeadroom.headroomFraction).toBeCloseTo(best, 9);
      const atBest = every.filter(({ least }) => least > best - 1e-9).map(({ moves }) => moves);
      expect(mostHeadroom.moved).toHaveLength(Math.min(...atBest));
    }
    expect(seen.possible).toBeGreaterThan(50);
    expect(seen.moved).toBeGreaterThan(30);
    expect(seen.not).toBeGreaterThan(30);
  });

  it('sums added up again, device by device', () => {
    for (const vehicle of fc.sample(vehicles, { numRuns: 50, seed: 5 })) {
      const spread = vehicle.devices.map((d, i) => ({
        ...d,
        toleranceFraction: 0.05 * i,
        coldFactor: 1 + 0.1 * i,
        hotFactor: 0.8,
      }));
      const { pins, totalA } = sensorSupplyBudget({ ...vehicle, devices: spread, supplyToleranceFraction: 0.03 });
      const at = (d: SupplyDevice): number => {
        const off = d.toleranceFraction;
        const most = Math.max(1, d.coldFactor!);
        if (d.draw.kind === 'current') return d.draw.currentA * (1 + off) * most;
        if (d.draw.kind === 'led') return ((5.15 - 1.9) / (d.draw.resistanceOhm * (1 - off))) * most;
        const ohm = d.draw.kind === 'pull-up' ? d.draw.pullOhm + 50 : d.draw.resistanceOhm;
        return (5.15 / (ohm * (1 - off))) * most;
      };
      let all = vehicle.regulator.ownA;
      for (const { name, sumA, headroomA, limitA, coldA, hotA } of pins) {
        let sumOf = 0;
        for (const d of spread) if (d.pin === name) sumOf += at(d);
        all += sumOf;
        expectWithin(sumA + 1e-9, sumOf + 1e-9, 1e-9);
        expectWithin(headroomA, limitA - sumOf, 1e-6);
        expect(coldA).toBeGreaterThanOrEqual(hotA);
        expect(coldA).toBeLessThanOrEqual(sumA + 1e-12);
      }
      expectWithin(totalA, all, 1e-12);
    }
  });
});

describe('laws', () => {
  it('a harder short never raises a pin, and a fault takes no pin that has its own limiter with it', () => {
    fc.assert(
      fc.property(vehicles, evenly(1, 10), (vehicle, times) => {
        const soft = sensorSupplyBudget({ ...vehicle, shortOhm: vehicle.shortOhm * times }).faults;
        sensorSupplyBudget(vehicle).faults.forEach((hard, i) => {
          const ground = hard.fault === 'short-to-ground';
          if (ground) expect(hard.pinV).toBeLessThanOrEqual(soft[i]!.pinV + 1e-9);
          else expect(hard.pinV).toBeGreaterThanOrEqual(soft[i]!.pinV - 1e-9);
        });
        const strong = { ...vehicle.regulator, limiter: { kind: 'constant', mostA: 9 } as const };
        const guarded = vehicle.pins.map((p) => ({ ...p, limiter: { kind: 'constant', mostA: 0.3 } as const }));
        for (const { fault, pin: at, pins } of sensorSupplyBudget({ ...vehicle, pins: guarded, regulator: strong })
          .faults)
          if (fault === 'short-to-ground') for (const p of pins) if (p.name !== at) expect(p.pinV).toBe(5);
      }),
    );
  });
  it('every current that is given is taken: the rail balances', () => {
    fc.assert(
      fc.property(vehicles, (vehicle) => {
        for (const f of sensorSupplyBudget(vehicle).faults) {
          if (f.fault !== 'short-to-ground') continue;
          const own = vehicle.regulator.ownA * Math.min(1, f.railV / 5);
          const taken = f.pins.reduce((sum, p) => sum + p.currentA, own + f.faultA);
          const { mostA } = vehicle.regulator.limiter as { mostA: number };
          if (f.railV < 5) expectWithin(taken, mostA, 1e-9);
          else expect(taken).toBeLessThanOrEqual(mostA + 1e-12);
        }
      }),
    );
  });
});

describe('faults, tracks and splits', () => {
  it('a pin that is the rail takes the other track with it; one with a limiter does not', () => {
    const left = (pins: readonly SupplyPin[]) =>
      solve({ pins, shortOhm: 1 }).checks.find(({ name }) => name === 'tracks of pedal left by one fault')!;
    expect(left([pin('A'), pin('B')])).toMatchObject({ ok: true, value: 1 });
    const tied = [pin('A', { limiter: null, backDropV: 0 }), pin('B', { limiter: null, backDropV: 0 })];
    const own = solve({ pins: tied, shortOhm: 1, reference: 'own' });
    expect(own.checks.find(({ name }) => name === 'tracks of pedal left by one fault')).toMatchObject({
      ok: false,
      value: 0,
      because: 'A shorted to ground',
    });
  });
  it('says who dies, who reads off and who has too many volts', () => {
    const ground = faultOf({ shortOhm: 1 });
    const state = (f: SupplyFault): Record<string, string> =>
      Object.fromEntries(f.devices.map((d) => [d.name, d.state]));
    expect(state(ground)).toEqual({ 'pedal 1': 'reads-off', 'pedal 2': 'works', boost: 'dead' });
    expect(ground.devices[2]).toMatchObject({ shownV: null, errorV: null });
    const light = device('light', 'A', { kind: 'led', resistanceOhm: 330, forwardV: 2 });
    expect(state(faultOf({ devices: [light], shortOhm: 1 }))).toEqual({ light: 'dead' });
    expect(state(faultOf({ devices: [light], shortOhm: 45 }))).toEqual({ light: 'works' });
    const battery = faultOf({ shortOhm: 1 }, 'short-to-battery');
    expect(state(battery)).toEqual({ 'pedal 1': 'reads-off', 'pedal 2': 'works', boost: 'over-volts' });
    const volts = solve({ shortOhm: 1 }).checks.find(({ name }) => name === 'most volts at boost')!;
    expect(volts).toMatchObject({ ok: false, limit: 6.5 });
  });
  it('a controller on a rail too low or too high reads nothing; one with its own reference reads on', () => {
    const strong = { trackOf: 'pedal', output: half };
    const devices = [device('pedal 1', 'A', track(1000), strong), device('pedal 2', 'B', track(1000), strong)];
    const tied = [pin('A', { limiter: null, backDropV: 0 }), pin('B', { limiter: null, backDropV: 0 })];
    const states = (over: Partial<SensorSupplyBudgetInput>, fault: SupplyFault['fault']) =>
      faultOf({ devices, pins: tied, shortOhm: 1, ...over }, fault).devices.map(({ state }) => state);
    expect(states({}, 'short-to-ground')).toEqual(['unread', 'unread']);
    expect(states({}, 'short-to-battery')).toEqual(['unread', 'unread']);
    expect(states({ reference: 'own' }, 'short-to-ground')).toEqual(['reads-off', 'reads-off']);
    // A share of a rail that still carries the converter is read right, however far the rail has sagged.
    const regulator = { ...input.regulator, worksFromV: 0, standsV: null };
    expect(states({ regulator }, 'short-to-ground')).toEqual(['works', 'works']);
    const rail = (over: Partial<SensorSupplyBudgetInput>) =>
      solve({ devices, ...over })
        .checks.filter(({ name }) => name.includes('rail'))
        .map(({ ok }) => ok);
    expect(rail({ pins: tied })).toEqual([false, false]);
    expect(rail({})).toEqual([true, true]);
  });
  it('a limiter that switches off leaves nothing, of a pin or of the rail', () => {
    const off = { kind: 'off', tripA: 0.1 } as const;
    expect(faultOf({ pins: [pin('A', { limiter: off }), pin('B')] })).toMatchObject({ pinV: 0, railV: 5 });
    const regulator = { ...input.regulator, limiter: { kind: 'off', tripA: 0.15 } as const };
    expect(faultOf({ regulator })).toMatchObject({ pinV: 0, railV: 0 });
  });
  it('an open supply wire leaves a wiper at its ground, and electronics silent', () => {
    const cells = [
      { inValue: 0.5, outValue: 0 },
      { inValue: 4.5, outValue: 100 },
    ];
    const devices = input.devices.map((d) => ({ ...d, cells }));
    expect(solve({ devices }).opens).toEqual([
      { name: 'pedal 1', shownV: 0, shownValue: 0 },
      { name: 'pedal 2', shownV: 0, shownValue: 0 },
      { name: 'boost', shownV: null, shownValue: null },
    ]);
    const [first] = faultOf({ devices, shortOhm: 1 }).devices;
    expect(first).toMatchObject({ shownValue: 0, errorValue: -50 });
  });
  it('names the code of what cannot be split', () => {
    const code = (devices: readonly SupplyDevice[]) => {
      const { fewestMoves } = solve({ devices });
      return fewestMoves.possible ? null : ([fewestMoves.code, fewestMoves.competing] as const);
    };
    const pedal = [1, 2, 3].map((i) => device(`t${i}`, 'A', sensor(1), { trackOf: 'pedal' }));
    expect(code(pedal)).toEqual(['too-few-pins', ['t1', 't2', 't3']]);
    expect(code([device('lidar', 'A', sensor(60)), device('x', 'A', sensor(1))])).toEqual([
      'device-over-pin',
      ['lidar'],
    ]);
    const three = [1, 2, 3].map((i) => device(`d${i}`, 'A', sensor(30)));
    expect(code([...three, device('x', 'A', sensor(1))])).toEqual(['too-much-current', ['d1', 'd2', 'd3']]);
    const stuck = [1, 2].map((i) => device(`t${i}`, 'A', sensor(1), { trackOf: 'pedal', fixed: true }));
    expect(code(stuck)).toEqual(['tracks-and-current', ['t1', 't2']]);
    const mixed = [
      device('t1', 'A', sensor(30), { trackOf: 'pedal' }),
      device('t2', 'A', sensor(30), { trackOf: 'pedal' }),
      device('big', 'A', sensor(20)),
    ];
    expect(code(mixed)).toBeNull();
    expect(code([...mixed, device('more', 'A', sensor(25))])![0]).toBe('too-much-current');
  });
  it('does not claim what it could not try out', () => {
    const pins = Array.from({ length: 8 }, (_, p) => pin(`p${p}`, { limitA: 0.1 }));
    const devices = Array.from({ length: 24 }, (_, d) => device(`d${d}`, 'p0', sensor(33.33 + d / 1000)));
    const { fewestMoves } = solve({ pins, devices });
    if (fewestMoves.possible) expect(fewestMoves.pins.every(({ sumA }) => sumA <= 0.1)).toBe(true);
    else expect(['not-decided', 'too-much-current']).toContain(fewestMoves.code);
  });
  it('keeps the wanted headroom free', () => {
    const devices = [1, 2].map((i) => device(`d${i}`, 'A', sensor(22)));
    expect(solve({ devices }).fewestMoves).toMatchObject({ possible: true, moved: [] });
    const wanted = solve({ devices, wantedHeadroomFraction: 0.2 });
    expect(wanted.fewestMoves).toMatchObject({ possible: true });
    expect(wanted.fewestMoves).toHaveProperty('moved.length', 1);
    expect(wanted.checks[0]!.ok).toBe(false);
    expectWithin(wanted.checks[0]!.limit!, 0.04, 1e-12);
    expect(wanted.decidedBy).toBe('current of A');
  });
});

describe('edges', () => {
  it('refuses nonsense', () => {
    refusesNonsense(sensorSupplyBudget, input, {
      required: [
        'supplyV',
        'supplyToleranceFraction',
        'wantedHeadroomFraction',
        'shortOhm',
        'batteryV',
        'allowedErrorV',
      ],
    });
    neverRunsOut(sensorSupplyBudget, input);
    const whole = (over: object) => () => solve(over);
    expectInputError(whole({ reference: 'moon' }), 'reference', 'oneOf');
    expectInputError(whole({ supplyToleranceFraction: 1 }), 'supplyToleranceFraction', 'below');
    expectInputError(whole({ batteryV: 5 }), 'batteryV', 'above');
    expectInputError(whole({ shortOhm: 0 }), 'shortOhm', 'atLeast');
    expectInputError(whole({ pins: [] }), 'pins', 'list');
    expectInputError(whole({ pins: [pin('A'), pin('A')] }), 'pins[1].name', 'order');
    expectInputError(whole({ pins: [pin('A'), pin('B'), pin('A')] }), 'pins[2].name', 'order');
    expectInputError(whole({ pins: Array.from({ length: 9 }, (_, p) => pin(`${p}`)) }), 'pins', 'list');
    expectInputError(whole({ devices: [] }), 'devices', 'list');
    expectInputError(whole({ devices: [...input.devices, input.devices[0]!] }), 'devices[3].name', 'order');
    const of = (over: object) => whole({ devices: [{ ...input.devices[0]!, ...over }] });
    expectInputError(of({ pin: 'Z' }), 'devices[0].pin', 'inTable');
    expectInputError(of({ toleranceFraction: 1 }), 'devices[0].toleranceFraction', 'below');
    expectInputError(of({ draw: { kind: 'hope' } }), 'devices[0].draw.kind', 'oneOf');
    expectInputError(of({ draw: track(0) }), 'devices[0].draw.resistanceOhm', 'above');
    expectInputError(of({ draw: sensor(0) }), 'devices[0].draw.currentA', 'above');
    expectInputError(of({ draw: sensor(1, 0) }), 'devices[0].draw.worksFromV', 'above');
    expectInputError(
      of({ draw: { kind: 'led', resistanceOhm: 1, forwardV: -1 } }),
      'devices[0].draw.forwardV',
      'atLeast',
    );
    expectInputError(of({ draw: { kind: 'pull-up', pullOhm: 1, leastSensorOhm: -1 } }), 'devices[0].draw.leastSensorOhm', 'atLeast'); // prettier-ignore
    expectInputError(of({ output: { kind: 'share', outFraction: 2 } }), 'devices[0].output.outFraction', 'atMost');
    expectInputError(of({ output: { kind: 'volts', outV: -1 } }), 'devices[0].output.outV', 'atLeast');
    expectInputError(of({ coldFactor: 0 }), 'devices[0].coldFactor', 'above');
    expectInputError(of({ standsV: 0 }), 'devices[0].standsV', 'above');
    expectInputError(of({ cells: [] }), 'devices[0].cells', 'list');
    const regulator = (over: object) => whole({ regulator: { ...input.regulator, ...over } });
    expectInputError(regulator({ limitA: 0 }), 'regulator.limitA', 'above');
    expectInputError(regulator({ ownA: -1 }), 'regulator.ownA', 'atLeast');
    expectInputError(regulator({ limiter: { kind: 'foldback', kneeA: 1, shortA: 2 } }), 'regulator.limiter.shortA', 'atMost'); // prettier-ignore
    expectInputError(regulator({ worksFromV: -1 }), 'regulator.worksFromV', 'atLeast');
    expectInputError(regulator({ standsV: 0 }), 'regulator.standsV', 'above');
    expectInputError(regulator({ limiter: { kind: 'x' } }), 'regulator.limiter.kind', 'oneOf');
    expectInputError(whole({ pins: [pin('A', { backDropV: -1 })] }), 'pins[0].backDropV', 'atLeast');
    // A pin that is the rail itself lets the battery in: it would be told as harmless otherwise.
    expectInputError(whole({ pins: [pin('A', { limiter: null })] }), 'pins[0].backDropV', 'range');
    expect(whole({ batteryV: 4 })).toThrow('sensorSupplyBudget: batteryV must be above 5, got 4');
  });
});
