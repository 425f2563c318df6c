import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  type SharedDevice,
  sharedSensor,
  type SharedSensorInput,
  type SharedSensorKind,
  type SharedState,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const owner: SharedDevice = {
  name: 'owner',
  seriesOhm: 0,
  pullUpOhm: null,
  pullDownOhm: 100_000,
  railV: 5,
  clampDropV: null,
};
const listener: SharedDevice = {
  name: 'listener',
  seriesOhm: 2200,
  pullUpOhm: null,
  pullDownOhm: 10_000,
  railV: 5,
  clampDropV: 0.6,
};
const pedal: SharedSensorInput = {
  sensor: { kind: 'potentiometer', supplyV: 5, resistanceOhm: 2000, wiperFraction: 0.8, deadSupplyOhm: 0 },
  fedBy: 'own',
  first: owner,
  second: listener,
  allowedErrorV: 0.02,
};
const stateOf = (input: SharedSensorInput, powered: SharedState['powered']): SharedState =>
  sharedSensor(input).states.find((state) => state.powered === powered)!;

describe('published', () => {
  const cite = { source: 'circuit-theory', place: 'Millman’s theorem, worked by hand', status: 'derived' } as const;
  computed('owner only 3.9872 V', cite, () => expectPrinted(sharedSensor(pedal).firstAloneV!, '3.9872'));
  computed('listener powered 3.8856 V', cite, () => expectPrinted(stateOf(pedal, 'both').nodeV!, '3.8856'));
  computed('listener unpowered 3.5583 V', cite, () => expectPrinted(stateOf(pedal, 'first').nodeV!, '3.5583'));
  computed('1.345 mA into the dead unit', cite, () =>
    expectPrinted(stateOf(pedal, 'first').second.intoA! * 1000, '1.345'),
  );
  // Ten times 2.2 kΩ: (4/320 + 0.6/22000)/(1/320 + 1/22000 + 1/100000) = 3.9388 V, 48.41 mV below the owner alone.
  computed('ten times the resistance in series leaves 48.41 mV', cite, () =>
    expectPrinted(
      sharedSensor(pedal).cures.find(({ code }) => code === 'ten-times-series')!.firstErrorV! * 1000,
      '48.41',
    ),
  );
});

/** The netlist of a state: the diode is a conductance of 1e5 S above its drop, so a pin stands some µV higher. */
function netlist(
  sensor: SharedSensorKind,
  devices: readonly SharedDevice[],
  on: readonly boolean[],
  fed = true,
): string {
  const lines: string[] = [];
  if (!fed && sensor.kind === 'potentiometer') {
    const { deadSupplyOhm, resistanceOhm, wiperFraction } = sensor;
    lines.push(`ra s n ${resistanceOhm * (1 - wiperFraction)}`, `rb n 0 ${resistanceOhm * wiperFraction}`);
    // A rail that is open hangs on its track alone.
    lines.push(deadSupplyOhm === 0 ? 'vs s 0 0' : `rs s 0 ${deadSupplyOhm ?? 1e15}`);
  } else if (!fed && sensor.kind === 'active') {
    const drop = sensor.deadClampDropV;
    if (drop !== null)
      lines.push(`ra s n ${sensor.sourceOhm}`, `bs s 0 i = v(s) > ${drop} ? (v(s) - ${drop}) * 1e5 : 0`);
  } else if (!fed && ['open-collector-on', 'current'].includes(sensor.kind)) {
    // Nothing is left of it.
  } else if (sensor.kind === 'resistor') lines.push(`rs n 0 ${sensor.resistanceOhm}`);
  else if (sensor.kind === 'potentiometer') {
    const { supplyV, resistanceOhm, wiperFraction } = sensor;
    lines.push(`vs s 0 ${supplyV}`, `ra s n ${resistanceOhm * (1 - wiperFraction)}`);
    lines.push(`rb n 0 ${resistanceOhm * wiperFraction}`);
  } else if (sensor.kind === 'active') lines.push(`vs s 0 ${sensor.outV}`, `ra s n ${sensor.sourceOhm}`);
  else if (sensor.kind === 'open-collector-on') lines.push(`vs s 0 ${sensor.onV}`, `ra s n ${sensor.onOhm}`);
  else if (sensor.kind === 'open-collector-off') lines.push(`is n 0 ${sensor.leakA}`);
  else lines.push(`is 0 n ${sensor.currentA}`);
  devices.forEach(({ seriesOhm, pullUpOhm, pullDownOhm, railV, clampDropV }, d) => {
    const rail = on[d] === true ? railV : 0;
    lines.push(`rx${d} n p${d} ${Math.max(seriesOhm, 1e-6)}`, `vr${d} r${d} 0 ${rail}`);
    if (pullUpOhm !== null) lines.push(`ru${d} r${d} p${d} ${pullUpOhm}`);
    if (pullDownOhm !== null) lines.push(`rd${d} p${d} 0 ${pullDownOhm}`);
    if (clampDropV !== null) {
      const at = rail + clampDropV;
      lines.push(`bc${d} p${d} 0 i = v(p${d}) > ${at} ? (v(p${d}) - ${at}) * 1e5 : 0`);
    }
  });
  return [...lines, '.options gmin=1e-15 reltol=1e-9 vntol=1e-10 abstol=1e-14', '.op'].join('\n');
}

describe('independent', () => {
  const puller: SharedDevice = { ...owner, name: 'dash', seriesOhm: 470, pullUpOhm: 2490, clampDropV: 0.5 };
  const other: SharedDevice = { ...listener, pullUpOhm: 1000, railV: 12 };
  const sensors: readonly SharedSensorKind[] = [
    { kind: 'resistor', resistanceOhm: 834 },
    { kind: 'potentiometer', supplyV: 5, resistanceOhm: 5000, wiperFraction: 0.3, deadSupplyOhm: 0 },
    { kind: 'active', outV: 4.5, sourceOhm: 100, deadClampDropV: 0.7 },
    { kind: 'open-collector-on', onV: 0.2, onOhm: 10 },
    { kind: 'open-collector-off', leakA: 1e-6 },
    { kind: 'current', currentA: 0.004, mostV: 1000 },
  ];
  const cases = sensors.flatMap((sensor) =>
    (['both', 'first', 'second'] as const).map((powered) => [sensor.kind, powered, sensor] as const),
  );
  it.each(cases)('%s, powered: %s: a circuit simulator', async (_, powered, sensor) => {
    const found = stateOf({ sensor, fedBy: 'own', first: puller, second: other, allowedErrorV: 1 }, powered);
    const v = await simulate(netlist(sensor, [puller, other], [powered !== 'second', powered !== 'first']));
    expectWithin(found.nodeV!, v['v(n)']![0]!, 2e-6);
    expectWithin(found.first.pinV!, v['v(p0)']![0]!, 2e-6);
    expectWithin(found.second.pinV!, v['v(p1)']![0]!, 2e-6);
  });
  const dead: readonly SharedSensorKind[] = [
    ...sensors,
    { kind: 'potentiometer', supplyV: 5, resistanceOhm: 5000, wiperFraction: 0.3, deadSupplyOhm: 220 },
    { kind: 'potentiometer', supplyV: 5, resistanceOhm: 5000, wiperFraction: 0.3, deadSupplyOhm: null },
    { kind: 'active', outV: 4.5, sourceOhm: 100, deadClampDropV: null },
  ];
  const fed = dead.flatMap((sensor) =>
    (['first', 'second'] as const).map((fedBy) => [JSON.stringify(sensor), fedBy, sensor] as const),
  );
  it.each(fed)('%s fed by the %s, which is off: a circuit simulator', async (_, fedBy, sensor) => {
    const powered = fedBy === 'first' ? 'second' : 'first';
    const found = stateOf({ sensor, fedBy, first: puller, second: other, allowedErrorV: 1 }, powered);
    expect(found.sensorFed).toBe(false);
    const v = await simulate(netlist(sensor, [puller, other], [fedBy !== 'first', fedBy !== 'second'], false));
    expectWithin(found.nodeV!, v['v(n)']![0]!, 2e-6);
    expectWithin(found.first.pinV!, v['v(p0)']![0]!, 2e-6);
    expectWithin(found.second.pinV!, v['v(p1)']![0]!, 2e-6);
  });
  it('a track on a dead rail, by hand: both halves side by side against a pull-up of 1 kΩ on 5 V', () => {
    const second = { ...listener, seriesOhm: 0, pullUpOhm: 1000, pullDownOhm: null, clampDropV: null };
    const nodeOf = (deadSupplyOhm: number | null): number =>
      stateOf(
        { ...pedal, sensor: { ...pedal.sensor, deadSupplyOhm } as SharedSensorKind, fedBy: 'first', second },
        'second',
      ).nodeV!;
    // Owner's 100 kΩ beside 1600 Ω and 400 Ω: 318.98 Ω, 5·318.98/1318.98.
    const side = (high: number): number => 1 / (1 / 1600 + high + 1 / 100_000);
    expectWithin(nodeOf(0), (5 * side(1 / 400)) / (side(1 / 400) + 1000), 1e-9);
    expectWithin(nodeOf(100), (5 * side(1 / 500)) / (side(1 / 500) + 1000), 1e-9);
    expectWithin(nodeOf(null), (5 * side(0)) / (side(0) + 1000), 1e-9);
  });
  it('the case worked by hand, simulated', async () => {
    const v = await simulate(netlist(pedal.sensor, [owner, listener], [true, false]));
    expectWithin(stateOf(pedal, 'first').nodeV!, v['v(n)']![0]!, 2e-6);
  });
});

describe('laws', () => {
  const ohm = fc.double({ min: 100, max: 1e6, noNaN: true });
  const device = (name: string) =>
    fc
      .tuple(ohm, fc.option(ohm), fc.option(ohm), fc.option(fc.double({ min: 0.2, max: 0.8, noNaN: true })))
      .map(([seriesOhm, pullUpOhm, pullDownOhm, clampDropV]): SharedDevice => {
        return { name, seriesOhm, pullUpOhm, pullDownOhm, railV: 5, clampDropV };
      });
  it('currents at the wire add up to nought, and no pin stands above its diode', () => {
    fc.assert(
      fc.property(device('a'), device('b'), ohm, evenly(0, 5), (first, second, r, v) => {
        const input = {
          sensor: { kind: 'active', outV: v, sourceOhm: r, deadClampDropV: null } as const,
          fedBy: 'own' as const,
          first,
          second,
          allowedErrorV: 1,
        };
        for (const { nodeV, first: f, second: s, powered } of sharedSensor(input).states) {
          const given = (v - nodeV!) / r;
          expect(Math.abs(given - f.intoA! - s.intoA!)).toBeLessThan(1e-12);
          for (const [reading, made] of [
            [f, first],
            [s, second],
          ] as const) {
            const rail = powered === 'both' || reading.powered ? 5 : 0;
            if (made.clampDropV !== null) expect(reading.pinV!).toBeLessThanOrEqual(rail + made.clampDropV + 1e-9);
            expect(reading.clampA!).toBeGreaterThanOrEqual(-1e-12);
          }
        }
      }),
    );
  });
  it('a listener that connects nothing moves nothing', () => {
    const second = { ...listener, pullDownOhm: null, clampDropV: null };
    for (const { first } of sharedSensor({ ...pedal, second }).states.slice(0, 2))
      expect(first.errorV).toBeCloseTo(0, 12);
  });
  it('the two devices swapped answer for one another', () => {
    const there = sharedSensor(pedal);
    const back = sharedSensor({ ...pedal, first: listener, second: owner });
    expect(back.states[0]!.nodeV).toBeCloseTo(there.states[0]!.nodeV!, 12);
    expect(back.states[2]!.nodeV).toBeCloseTo(there.states[1]!.nodeV!, 12);
    expect(back.states[1]!.nodeV).not.toBeCloseTo(there.states[1]!.nodeV!, 3);
  });
  it('each shows its own unit by its own table', () => {
    const cells = [
      { inValue: 0.5, outValue: 0 },
      { inValue: 4.5, outValue: 100 },
    ];
    const { states, firstAloneValue } = sharedSensor({ ...pedal, first: { ...owner, cells } });
    expectWithin(firstAloneValue!, ((3.9872408 - 0.5) / 4) * 100, 1e-6);
    expectWithin(states[1]!.first.errorValue!, states[1]!.first.errorV! * 25, 1e-9);
    expect(states[2]!.first.shownValue).toBeNull();
    expect(states[0]!.second.shownValue).toBeNull();
  });
});

describe('who feeds the sensor', () => {
  it('a sensor of its own supply reads on; fed by the dead device it is gone, and the check says so', () => {
    const own = sharedSensor(pedal);
    const owned = sharedSensor({ ...pedal, fedBy: 'first' });
    expect(owned.states.map(({ sensorFed }) => sensorFed)).toEqual([true, true, false]);
    expect(own.states.map(({ sensorFed }) => sensorFed)).toEqual([true, true, true]);
    expect(owned.states.slice(0, 2)).toEqual(own.states.slice(0, 2));
    expect(owned.secondAloneV).toBe(own.secondAloneV);
    expect(owned.states[2]!.nodeV).toBe(0);
    expect(owned.decidedBy).toBe('error of listener, the other and the sensor without power');
    expect(owned.checks.find(({ name }) => name === owned.decidedBy)).toMatchObject({ ok: false });
  });
  it('the more lies from the dead rail to ground, the higher a pull-up lifts the wire, up to an open rail', () => {
    const second = { ...listener, pullUpOhm: 4700 };
    const at = (deadSupplyOhm: number | null): number =>
      stateOf(
        { ...pedal, sensor: { ...pedal.sensor, deadSupplyOhm } as SharedSensorKind, fedBy: 'first', second },
        'second',
      ).nodeV!;
    const list = [at(0), at(10), at(1000), at(1e6), at(null)];
    expect(list).toEqual([...list].sort((a, b) => a - b));
    expect(new Set(list).size).toBe(5);
  });
  it('an open output floats where nothing else holds it, whatever diodes hang on the wire', () => {
    const sensor = { kind: 'active', outV: 2, sourceOhm: 100, deadClampDropV: 0.6 } as const;
    const bare = { ...owner, pullDownOhm: null };
    const second = { ...bare, name: 'other', seriesOhm: 1000, clampDropV: 0.6 };
    const result = sharedSensor({ ...pedal, sensor, fedBy: 'first', first: bare, second });
    expect(result.states[2]).toMatchObject({ nodeV: null, second: { pinV: null, errorV: null } });
  });
  it('fed by the second, the first is helped by feeding it itself', () => {
    const { cures } = sharedSensor({ ...pedal, fedBy: 'second' });
    const by = Object.fromEntries(cures.map(({ code, firstErrorV }) => [code, firstErrorV!]));
    expect(by['buffer']).toBeGreaterThan(3.9);
    expectWithin(by['feed-from-first']!, 3.9872408 - stateOf(pedal, 'first').nodeV!, 1e-6);
    expect(sharedSensor(pedal).cures.some(({ code }) => code === 'feed-from-first')).toBe(false);
  });
});

describe('cures and checks', () => {
  it('fails the pedal, and each cure helps but the diode that stays', () => {
    const { checks, cures, decidedBy } = sharedSensor(pedal);
    expect(checks.some(({ ok }) => !ok)).toBe(true);
    expect(decidedBy).toBe('error of owner, the other without power');
    const by = Object.fromEntries(cures.map(({ code, firstErrorV }) => [code, firstErrorV!]));
    const before = Math.abs(sharedSensor(pedal).states[1]!.first.errorV!);
    for (const value of Object.values(by)) expect(value).toBeLessThanOrEqual(before + 1e-12);
    expect(by['buffer']).toBeLessThan(0.001);
    expect(by['one-switch']).toBeCloseTo(3.9872 - 3.8856, 3);
    expect(by['no-second-pulls']).toBeGreaterThan(0.3);
  });
  it('a current that runs out of volts holds the wire there', () => {
    const sensor = { kind: 'current', currentA: 0.02, mostV: 8 } as const;
    expect(stateOf({ ...pedal, sensor, second: { ...listener, clampDropV: null } }, 'both').nodeV).toBeCloseTo(8, 5);
  });
  it('what leaks through a transistor draws the wire to ground, and no further', () => {
    const sensor = { kind: 'open-collector-off', leakA: 1 } as const;
    const pulled = { ...owner, pullUpOhm: 1000 };
    for (const { nodeV } of sharedSensor({ ...pedal, sensor, first: pulled }).states) {
      expect(nodeV).toBeGreaterThanOrEqual(0);
      expect(nodeV).toBeCloseTo(0, 5);
    }
  });
  it('nothing holds the wire: null, and the checks say so', () => {
    const open = { ...owner, pullDownOhm: null };
    const result = sharedSensor({
      sensor: { kind: 'open-collector-off', leakA: 0 },
      fedBy: 'own',
      first: open,
      second: { ...open, name: 'other' },
      allowedErrorV: 1,
    });
    expect(result.firstAloneV).toBeNull();
    expect(result.states[0]).toMatchObject({ nodeV: null, first: { pinV: null, errorV: null } });
    expect(result.checks.every(({ ok, because }) => !ok && because !== undefined)).toBe(true);
    expect(result.cures.filter(({ code }) => code !== 'buffer').every(({ firstErrorV }) => firstErrorV === null)).toBe(
      true,
    );
  });
});

describe('edges', () => {
  it('a wiper at its end is a contact', () => {
    const sensor = {
      kind: 'potentiometer',
      supplyV: 5,
      resistanceOhm: 2000,
      wiperFraction: 1,
      deadSupplyOhm: 0,
    } as const;
    expect(stateOf({ ...pedal, sensor }, 'first').nodeV).toBeCloseTo(5, 5);
    expect(stateOf({ ...pedal, sensor: { ...sensor, wiperFraction: 0 } }, 'first').nodeV).toBeCloseTo(0, 5);
  });
  it('refuses nonsense', () => {
    refusesNonsense(sharedSensor, pedal, { required: ['allowedErrorV'] });
    const first = (over: object) => () => sharedSensor({ ...pedal, first: { ...owner, ...over } });
    for (const field of ['seriesOhm', 'pullUpOhm', 'pullDownOhm', 'railV', 'clampDropV']) {
      for (const value of [NaN, -1, Infinity, 'abc']) expectInputError(first({ [field]: value }), `first.${field}`);
    }
    expectInputError(first({ name: '' }), 'first.name', 'text');
    expectInputError(first({ clampDropV: 0.6 }), 'first.seriesOhm', 'atLeast');
    expectInputError(first({ cells: [] }), 'first.cells', 'list');
    const sensor = (kind: object) => () => sharedSensor({ ...pedal, sensor: kind as SharedSensorKind });
    expectInputError(sensor({ kind: 'magnet' }), 'sensor.kind', 'oneOf');
    expectInputError(sensor({ kind: 'resistor', resistanceOhm: 0 }), 'sensor.resistanceOhm', 'above');
    expectInputError(sensor({ ...pedal.sensor, wiperFraction: 1.01 }), 'sensor.wiperFraction', 'atMost');
    expectInputError(
      sensor({ kind: 'active', outV: 1, sourceOhm: 0, deadClampDropV: null }),
      'sensor.sourceOhm',
      'above',
    );
    expectInputError(sensor({ kind: 'active', outV: 1, sourceOhm: 1, deadClampDropV: 0 }), 'sensor.deadClampDropV');
    expectInputError(sensor({ kind: 'active', outV: 1, sourceOhm: 1 }), 'sensor.deadClampDropV', 'missing');
    expectInputError(sensor({ ...pedal.sensor, deadSupplyOhm: -1 }), 'sensor.deadSupplyOhm', 'atLeast');
    expectInputError(sensor({ ...pedal.sensor, deadSupplyOhm: undefined }), 'sensor.deadSupplyOhm', 'missing');
    expectInputError(sensor(null as never), 'sensor', 'object');
    const input = (over: object) => () => sharedSensor({ ...pedal, ...over });
    expectInputError(input({ fedBy: undefined }), 'fedBy', 'missing');
    expectInputError(input({ fedBy: 'third' }), 'fedBy', 'oneOf');
    expectInputError(input({ second: null }), 'second', 'object');
    expectInputError(input({ second: { ...listener, name: 'owner' } }), 'second.name', 'order');
    expectInputError(sensor({ kind: 'open-collector-on', onV: -1, onOhm: 1 }), 'sensor.onV', 'atLeast');
    expectInputError(sensor({ kind: 'open-collector-off', leakA: -1 }), 'sensor.leakA', 'atLeast');
    expectInputError(sensor({ kind: 'current', currentA: 1, mostV: 0 }), 'sensor.mostV', 'above');
  });
});
