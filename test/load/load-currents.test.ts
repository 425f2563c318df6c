import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  filamentLamp,
  inrushLoads,
  type Load,
  loadCurrents,
  type LoadCurrentsInput,
  type LoadCurrentsResult,
  heatingByTable,
  iec60228Class5,
  sizeFeed,
  type SizeFeedResult,
  solvePath,
  textbookLoads,
  us33Cfr183Ampacity,
  vehicleLoads,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds } from '../support/law.js';
import { computed, expectPrinted, expectWithin, transcribed } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const at = (supplyV: number, load: Load, pathResistanceOhm = 0): LoadCurrentsResult => {
  const result = loadCurrents({ supplyV, pathResistanceOhm, load });
  if (!result.possible) throw new Error(result.because);
  return result;
};
const lamp = { kind: 'lamp', ratedPowerW: 55, ratedV: 12, law: filamentLamp, hotOverColdRatio: 12 } as const;
const motor = {
  kind: 'motor',
  windingResistanceOhm: 0.3,
  speedConstantRpmPerV: 300,
  ratedCurrentA: 8,
  ratedV: 12,
  torque: 'speed-squared',
} as const;
const every: readonly Load[] = [
  { kind: 'constant-current', currentA: 5 },
  { kind: 'resistance', resistanceOhm: 2 },
  { kind: 'constant-power', powerW: 40 },
  motor,
  { ...motor, torque: 'constant' },
  lamp,
  { kind: 'led-driver', powerW: 18, efficiency: 0.88, leastV: 9 },
  { kind: 'heater', resistanceOhm: 1.1, coldResistanceOhm: 0.9 },
  { kind: 'capacitor-input', powerW: 20, capacitanceF: 0.001, capacitorResistanceOhm: 0.05 },
  { kind: 'solenoid', resistanceOhm: 20, ratedTempC: 20, coilTempC: 90, inductanceH: 0.1 },
  { kind: 'starter-solenoid', pullInResistanceOhm: 0.25, holdInResistanceOhm: 0.9, stage: 'pull-in' },
  { kind: 'starter-solenoid', pullInResistanceOhm: 0.25, holdInResistanceOhm: 0.9, stage: 'hold' },
  { kind: 'h-bridge-motor', motor, bridgeResistanceOhm: 0.02, dutyFraction: 0.6 },
  { kind: 'pwm', load: { kind: 'resistance', resistanceOhm: 0.6 }, dutyFraction: 0.35 },
];

describe('published', () => {
  const case16 = {
    source: 'circuit-theory',
    place: 'worked case: 24 A at duty 0.60, switched fast',
    status: 'derived',
  } as const;
  const pwm = at(12, { kind: 'pwm', load: { kind: 'constant-current', currentA: 24 }, dutyFraction: 0.6 });
  computed('peak 24.00 A', case16, () => expectPrinted(pwm.peakA, '24.00'));
  computed('r.m.s. 18.59 A', case16, () => expectPrinted(pwm.rmsA, '18.59'));
  computed('mean 14.40 A', case16, () => expectPrinted(pwm.meanA, '14.40'));
  computed('75 % rule on the r.m.s.: 24.8 A', case16, () => expectPrinted(pwm.rmsA / 0.75, '24.8'));

  const service = (place: string) => ({ source: 'vehicle-service-data', place, status: 'derived' }) as const;
  const coil = (resistanceOhm: number): Load => ({
    kind: 'solenoid',
    resistanceOhm,
    ratedTempC: 20,
    coilTempC: 20,
    inductanceH: 0.05,
  });
  for (const [name, volts, ohm, amps] of [
    ['air-control solenoid, 22 Ω', 13.5, 22, '.61'],
    ['air-control solenoid, 18 Ω', 13.5, 18, '.75'],
    ['throttle actuator, 7.0 Ω', 13.5, 7, '1.9'],
    ['vent solenoid, 22 Ω', 13.5, 22, '.6'],
    ['vent solenoid, 35 Ω', 13.5, 35, '.4'],
    ['idle valve, 20 Ω', 12, 20, '.6'],
    ['power relay, 90 Ω', 12, 90, '.133'],
    ['starter, hold-in 10 V / 15 A', 10, 0.667, '15'],
  ] as const) {
    computed(`${name}: ${amps} A at ${volts} V`, service('coils and solenoids'), () =>
      expectPrinted(at(volts, coil(ohm)).peakA, amps),
    );
  }
  const lambda: Load = { kind: 'heater', resistanceOhm: 22.5, coldResistanceOhm: 9.2 };
  computed('oxygen sensor heater, 8 Ω cold: 1.7 A at 13.5 V', service('heater of a narrow-band sensor'), () =>
    expectPrinted(at(13.5, { kind: 'heater', resistanceOhm: 20, coldResistanceOhm: 8 }).inrushA!, '1.7'),
  );
  computed('the same, cold over hot 2.45', service('9.2 Ω at 20 °C, 22.5 Ω at 700 °C'), () =>
    expectPrinted(at(13.5, lambda).inrushRatio!, '2.45'),
  );
  computed('glow plug of 150 W: 12.5 A at 12 V', service('glow plugs'), () =>
    expectPrinted(at(12, { kind: 'constant-power', powerW: 150 }).peakA, '12.5'),
  );
  computed('four of them: 50 A', service('glow plugs'), () =>
    expectPrinted(at(12, { kind: 'constant-power', powerW: 600 }).peakA, '50'),
  );
  const guide = { source: 'vehicle-load-guide', place: 'two stop lamps 3.5 to 4 A', status: 'published' } as const;
  computed('two stop lamps of 21 W take 3.5 A at 12 V and less than 4 A at 14 V', guide, () => {
    const two = { kind: 'lamp', ratedPowerW: 42, ratedV: 12, law: filamentLamp } as const;
    expectPrinted(at(12, two).peakA, '3.5');
    expect(at(14, two).peakA).toBeLessThan(4);
  });
  // The list rounds watts over 12 V to the half ampere, up more often than down.
  for (const [name, powerW, amps] of [
    ['ignition', 30, 2.5],
    ['fuel injection', 70, 6],
    ['fuel pump', 70, 6],
    ['main beam', 200, 17],
    ['dipped beam', 160, 13.5],
    ['dash lamps', 25, 2],
    ['radio', 15, 1.5],
    ['heater', 50, 4.5],
    ['brake lamps', 40, 3.5],
    ['front wipers', 80, 7],
    ['windows', 150, 13],
    ['rear window', 120, 10],
    ['auxiliary lamps', 110, 9.5],
    ['lighter', 100, 8.5],
    ['seat heater', 200, 17],
    ['instruments', 10, 1],
  ] as const) {
    const textbook = {
      source: 'vehicle-load-textbook',
      place: `${name}: ${powerW} W, ${amps} A`,
      status: 'memory',
    } as const;
    computed(`${name}: within half an ampere`, textbook, () => {
      const { peakA } = at(12, { kind: 'constant-power', powerW });
      expect(Math.abs(peakA - amps)).toBeLessThanOrEqual(0.5);
      expect(textbookLoads.rows.find(([n]) => n === name)).toEqual([name, powerW, amps]);
    });
  }
  const rows: readonly (readonly [string, number, number])[] = [
    ['air conditioner', 13, 20],
    ['alarm', 18, 20],
    ['ABS module', 2, 6],
    ['power outlet', 10, 12],
    ['dash lights', 1.5, 3],
    ['dome light', 1, 1],
    ['wiper', 3, 6],
    ['fog lamps', 8, 9],
    ['gauges', 0.7, 1],
    ['heater blower', 6, 10],
    ['ignition', 1.5, 3.5],
    ['door locks', 3, 5],
    ['sunroof', 20, 25],
    ['trailer socket', 20, 30],
    ['rear window heater', 20, 25],
    ['starter solenoid', 12, 20],
    ['licence lamp', 0.5, 0.5],
    ['parking lamps, two', 1.3, 1.3],
    ['reverse lamps, two', 3.5, 4],
    ['stop lamps, two', 3.5, 4],
    ['side markers, two', 1.3, 1.3],
    ['tail lamps, two', 0.5, 0.5],
    ['boot lamp', 0.5, 0.5],
    ['headlamps, dipped', 8, 9],
    ['headlamps, main', 13, 15],
    ['horns, two', 18, 20],
    ['power antenna', 6, 10],
    ['power seats', 25, 50],
    ['power windows', 2, 20],
    ['radio', 2, 5],
    ['starter motor', 75, 300],
    ['clock', 0.3, 0.3],
  ];
  transcribed(`${rows.length} rows of running currents`, { ...guide, place: 'typical amperage guide' }, () => {
    expect(vehicleLoads.rows.map(({ name, runningA }) => [name, ...runningA])).toEqual(rows);
  });
});

describe('independent', { timeout: 60_000 }, () => {
  it('agrees with a circuit simulator on lamps, drivers and coils behind resistance', async () => {
    const cases: [Load, string][] = [
      [lamp, `B1 n 0 I=${55 / 12}*pow(abs(V(n))/12,0.55)`],
      [{ kind: 'led-driver', powerW: 18, efficiency: 0.88, leastV: 9 }, `B1 n 0 I=${18 / 0.88}/V(n)`],
      [{ kind: 'capacitor-input', powerW: 20, capacitanceF: 0.001, capacitorResistanceOhm: 0.05 }, 'B1 n 0 I=20/V(n)'],
      [{ kind: 'heater', resistanceOhm: 1.1, coldResistanceOhm: 0.9 }, 'R2 n 0 1.1'],
      [every[9]!, `R2 n 0 ${(20 * 324.5) / 254.5}`],
      [every[10]!, 'R2 n 0 0.25\nR3 n 0 0.9'],
    ];
    for (const ohm of [1e-4, 0.05, 0.4]) {
      for (const [load, element] of cases) {
        const theirs = await simulate(
          `V1 s 0 13.2\nR1 s n ${ohm}\n${element}\n.nodeset v(n)=13\n.options reltol=1e-9 abstol=1e-12 vntol=1e-9\n.op`,
        );
        const ours = at(13.2, load, ohm);
        expectWithin(ours.peakA, -theirs['i(v1)']![0]!, 1e-6);
        expectWithin(ours.loadV, theirs['v(n)']![0]!, 1e-6);
      }
    }
  });

  it('agrees with a simulated bridge that switches a motor, to 1 %', async () => {
    const load = {
      kind: 'h-bridge-motor',
      motor: { ...motor, torque: 'constant' },
      bridgeResistanceOhm: 0.02,
      dutyFraction: 0.6,
    } as const;
    const ours = at(13, load, 0.04);
    // 20 kHz; one switch to the supply, one that carries the current on; the motor holds its EMF.
    const emf = 0.6 * 13 - 8 * (0.6 * 0.04 + 0.32);
    const net = [
      'V1 s 0 13',
      'R1 s p 0.04',
      'Vg g 0 PULSE(0 1 0 1e-8 1e-8 3e-5 5e-5)',
      'S1 p m g 0 on',
      'S2 0 m 0 g off',
      '.model on sw vt=0.5 ron=0.02 roff=1e7',
      '.model off sw vt=-0.5 ron=0.02 roff=1e7',
      'L1 m a 0.002 ic=8',
      'R2 a b 0.3',
      `V2 b 0 ${emf}`,
      '.tran 1e-7 0.002 0.001 1e-7 uic',
    ].join('\n');
    const theirs = await simulate(net);
    const t = theirs['time']!;
    const i = theirs['i(v1)']!.map((x) => -x);
    let charge = 0;
    let squares = 0;
    for (let k = 1; k < t.length; k++) {
      const dt = t[k]! - t[k - 1]!;
      charge += (dt * (i[k]! + i[k - 1]!)) / 2;
      squares += (dt * (i[k]! ** 2 + i[k - 1]! ** 2)) / 2;
    }
    const span = t.at(-1)! - t[0]!;
    expectWithin(ours.meanA, charge / span, 0.01);
    expectWithin(ours.rmsA, Math.sqrt(squares / span), 0.01);
    expectWithin(ours.peakA, Math.max(...i), 0.015);
  });

  it('agrees with a simulated charging of a capacitor, to 1 %', async () => {
    const load: Load = { kind: 'capacitor-input', powerW: 1e-6, capacitanceF: 0.0022, capacitorResistanceOhm: 0.03 };
    const ours = at(13.2, load, 0.07);
    const theirs = await simulate('V1 s 0 13.2\nR1 s n 0.1\nC1 n 0 0.0022 ic=0\n.tran 1e-6 0.003 0 1e-6 uic');
    const t = theirs['time']!;
    const i = theirs['i(v1)']!.map((x) => -x);
    let i2t = 0;
    for (let k = 1; k < t.length; k++) i2t += ((t[k]! - t[k - 1]!) * (i[k]! ** 2 + i[k - 1]! ** 2)) / 2;
    expectWithin(ours.inrushI2tA2s!, i2t, 0.01);
    expectWithin(ours.inrushA!, Math.max(...i), 0.01);
    expectWithin(ours.timeConstantS!, 0.00022, 1e-9);
  });
});

describe('laws', () => {
  const loads = fc.constantFrom(...every);
  const ohms = evenlyWithEnds(0, 0.15);
  it('more loop resistance never raises inrush, nor the volts at the load; mean, r.m.s. and peak keep their order', () => {
    fc.assert(
      fc.property(loads, ohms, fc.double({ min: 1e-4, max: 0.1, noNaN: true }), (load, ohm, more) => {
        const a = at(13, load, ohm + 1e-4);
        const b = at(13, load, ohm + 1e-4 + more);
        if (a.inrushA !== null) expect(b.inrushA!).toBeLessThan(a.inrushA);
        expect(b.loadV).toBeLessThanOrEqual(a.loadV);
        expect(a.meanA).toBeLessThanOrEqual(a.rmsA);
        expect(a.rmsA).toBeLessThanOrEqual(a.peakA);
      }),
    );
  });
  it('says the same as a solved path, which loses no power of switched loads either', () => {
    fc.assert(
      fc.property(loads, fc.double({ min: 1e-9, max: 0.15, noNaN: true }), (load, ohm) => {
        const solved = solvePath({ supplyV: 13, outParts: [{ name: 'w', resistanceOhm: ohm }], returnParts: [], load });
        if (!solved.possible) throw new Error(solved.because);
        const { peakA, rmsA, meanA, loadV } = at(13, load, ohm);
        expect(solved).toMatchObject({ peakA, rmsA, meanA, loadV });
        expectWithin(solved.loadPowerW + solved.lossW, 13 * meanA, 1e-9);
        expectWithin(solved.lossW, rmsA ** 2 * ohm, 1e-9);
      }),
    );
  });
  it('a lamp at its rated volts takes its rated current, and a duty of 1 is no switching', () => {
    expectWithin(at(12, lamp).peakA, 55 / 12, 1e-12);
    const plain = at(13, every[1]!, 0.1);
    const always = at(13, { kind: 'pwm', load: { kind: 'resistance', resistanceOhm: 2 }, dutyFraction: 1 }, 0.1);
    expect(always).toMatchObject({ peakA: plain.peakA, rmsA: plain.peakA, meanA: plain.peakA });
    const { peakA: still } = at(
      13,
      {
        ...(every[12] as {
          kind: 'h-bridge-motor';
          motor: typeof motor;
          bridgeResistanceOhm: number;
          dutyFraction: number;
        }),
        dutyFraction: 1,
        bridgeResistanceOhm: 0,
      },
      0.1,
    );
    expectWithin(still, at(13, motor, 0.1).peakA, 1e-12);
  });
  it('a lamp satisfies its own law at any path and supply', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 50, noNaN: true }),
        fc.double({ min: 0.1, max: 40, noNaN: true }),
        (ohm, volts) => {
          const { peakA, loadV } = at(volts, lamp, ohm);
          expectWithin(peakA, (55 / 12) * (loadV / 12) ** 0.55, 1e-6);
        },
      ),
    );
  });
  it('a feed of a switched load is sized for heat by its r.m.s. current', () => {
    const size = (load: Load): SizeFeedResult => {
      const sized = sizeFeed({
        supplyV: 13.8,
        outParts: [{ name: 'out', lengthM: 0.3 }],
        returnParts: [{ name: 'back', lengthM: 0.3 }],
        load,
        resistanceBasis: iec60228Class5,
        limits: { dropV: 5 },
        judgedAtV: [],
        heating: { by: heatingByTable, table: us33Cfr183Ampacity, insulationTempC: 105, ambientTempC: 30 },
        leastAreaMm2: 0.1,
        protection: { kind: 'none', because: 'test' },
      });
      if (!sized.possible) throw new Error(sized.because);
      return sized;
    };
    const switched = size({ kind: 'pwm', load: { kind: 'constant-current', currentA: 24 }, dutyFraction: 0.6 });
    const steady = size({ kind: 'constant-current', currentA: 24 * Math.sqrt(0.6) });
    expect(switched.size).toBe(steady.size);
    expectWithin(switched.reachedTempC, steady.reachedTempC, 1e-6);
  });
});

describe('edges', () => {
  it('has no inrush number where there is none, and says why', () => {
    const { hotOverColdRatio: _, ...cold } = lamp;
    expect(at(12, cold)).toMatchObject({ inrushA: null, inrushRatio: null, inrushReason: 'ratio-not-given' });
    expect(at(12, every[9]!)).toMatchObject({ inrushA: null, inrushReason: 'rises-from-zero' });
    expect(at(12, every[0]!)).toMatchObject({ inrushA: null, inrushReason: 'not-known' });
    expect(at(12, { kind: 'capacitor-input', powerW: 1, capacitanceF: 1e-3, capacitorResistanceOhm: 0 })).toMatchObject(
      { inrushA: null, inrushReason: 'nothing-limits-it' },
    );
  });
  it('says that an LED driver goes out, and what the path could carry', () => {
    const driver: Load = { kind: 'led-driver', powerW: 18, efficiency: 0.9, leastV: 9 };
    expect(loadCurrents({ supplyV: 10, pathResistanceOhm: 0.6, load: driver })).toMatchObject({
      possible: false,
      code: 'below-least-volts',
    });
    expect(loadCurrents({ supplyV: 8, pathResistanceOhm: 0, load: driver })).toMatchObject({
      possible: false,
      nearest: { currentA: 0 },
    });
  });
  it('refuses nonsense with the field that is at fault', () => {
    const input: LoadCurrentsInput = { supplyV: 12, pathResistanceOhm: 0.1, load: every[1]! };
    refusesNonsense(loadCurrents, input, { required: ['supplyV', 'pathResistanceOhm'] });
    const bad = (load: unknown, field: string): void =>
      expectInputError(() => loadCurrents({ ...input, load: load as Load }), field);
    for (const load of every) {
      for (const [key, value] of Object.entries(load)) {
        if (typeof value !== 'number') continue;
        for (const wrong of [NaN, -1e9, 'x']) bad({ ...load, [key]: wrong }, `load.${key}`);
        if (key !== 'hotOverColdRatio') bad({ ...load, [key]: undefined }, `load.${key}`);
      }
    }
    bad({ ...lamp, law: null }, 'load.law');
    bad({ ...lamp, hotOverColdRatio: 1 }, 'load.hotOverColdRatio');
    bad({ ...every[10], stage: 'x' }, 'load.stage');
    bad({ ...every[13], dutyFraction: 1.01 }, 'load.dutyFraction');
    bad({ ...every[13], dutyFraction: 0 }, 'load.dutyFraction');
    bad({ kind: 'pwm', load: every[13], dutyFraction: 0.5 }, 'load.load.kind');
    bad({ kind: 'pwm', load: { kind: 'resistance', resistanceOhm: 0 }, dutyFraction: 0.5 }, 'load.load.resistanceOhm');
    bad({ kind: 'pwm', load: null, dutyFraction: 0.5 }, 'load.load');
    bad({ ...every[12], motor: { ...motor, ratedCurrentA: 50 } }, 'load.motor.ratedCurrentA');
    bad({ ...every[12], motor: lamp }, 'load.motor.kind');
    bad({ ...every[6], efficiency: 1.01 }, 'load.efficiency');
  });
  it('keeps the usual inrush of things within what it is printed as', () => {
    for (const { name, runningA, inrushRatio } of inrushLoads.rows) {
      expect(runningA[0], name).toBeLessThanOrEqual(runningA[1]);
      expect(inrushRatio![0], name).toBeLessThanOrEqual(inrushRatio![1]);
      expect(inrushRatio![0], name).toBeGreaterThanOrEqual(1);
    }
  });
});
