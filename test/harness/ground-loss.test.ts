import { describe, expect, it } from 'vitest';
import { type Loom, type LoomPlan, parseLoom, planLoom } from '@loomwright/harness';
import { groundFaults, type Network, prepareGroundFaults, settleNetwork, solveNetwork } from 'loomwright';
import { looped } from '../support/looped-loom.js';
import { netlist } from '../support/plan-netlist.js';
import { simulate } from '../support/simulator.js';
import { sandpiperText } from '../support/small-plan.js';

const read = (text: string): Loom => {
  const parsed = parseLoom(text);
  if (!parsed.ok) throw new Error('not read');
  return parsed.loom;
};
const tree = planLoom(read(sandpiperText));
const loops = planLoom(looped);
const plans: [string, LoomPlan][] = [
  ['a tree', tree],
  ['loops', loops],
];
const stateOf = (plan: LoomPlan, name: string) => plan.states.find((state) => state.name === name)!;

type NetworkLoad = NonNullable<Network['loads']>[number]['load'];

/** A circuit's load as the core has it, from the file. */
function loadOf(plan: LoomPlan, name: string): NetworkLoad {
  const { serves, kind } = plan.circuits.find((circuit) => circuit.name === name)!;
  const item = plan.loom.items[serves];
  if (item?.kind !== 'load') return { kind: 'constant-current', currentA: plan.loom.controllers[name]!.ownCurrent };
  if (kind === 'coil') {
    const { coil, coilTemperature, ratedAt } = plan.loom.relayTypes[item.relay!.type]!;
    return { kind: 'resistance', resistanceOhm: (coil * (234.5 + coilTemperature)) / (234.5 + ratedAt) };
  }
  const { load } = item;
  if (load.kind === 'constant current') return { kind: 'constant-current', currentA: load.current };
  if (load.kind === 'resistance') return { kind: 'resistance', resistanceOhm: load.resistance };
  if (load.kind === 'constant power') return { kind: 'constant-power', powerW: load.power };
  return {
    kind: 'motor',
    windingResistanceOhm: load.windingResistance,
    speedConstantRpmPerV: load.speedConstant,
    ratedCurrentA: load.ratedCurrent,
    ratedV: load.ratedVoltage,
    torque: load.torque === 'constant' ? 'constant' : 'speed-squared',
  };
}

/** Circuits that stand still once a way is lost: electronics, and what is behind a controller that lost its ground. */
function still(plan: LoomPlan, cutOff: readonly string[], cutCircuits: readonly string[]): string[] {
  return cutCircuits.filter((name) => {
    const circuit = plan.circuits.find((each) => each.name === name)!;
    const item = plan.loom.items[circuit.serves];
    const channel = item?.kind === 'load' && 'controller' in item.from ? item.from.controller : null;
    if (circuit.kind === 'load' && channel !== null && cutOff.includes(`controller ${channel} −`)) return true;
    return circuit.kind !== 'coil' && !(item?.kind === 'load' && /^(resistance|motor)$/.test(item.load.kind));
  });
}

describe('independent: the general circuit simulator', () => {
  for (const [kind, plan] of plans) {
    it.each(['cranking', 'night and rain', 'rescue'])(
      `every point after each loss, ${kind}, state %s`,
      async (state) => {
        const { nodes } = stateOf(plan, state);
        const points = new Set(plan.ways.flatMap(({ from, to }) => [from, to]));
        let compared = 0;
        for (const { lost, cutOff, cutCircuits, states } of plan.losses) {
          const off = still(plan, cutOff, cutCircuits);
          const { shifts, islandV } = states.find((each) => each.state === state)!;
          const { text, names } = netlist(plan, state, [lost, ...off], cutOff);
          const theirs = await simulate(text);
          const at = (name: string): number => (names.has(name) ? theirs[`v(${names.get(name)!})`]![0]! : 0);
          for (const point of points) {
            if (cutOff.includes(point)) continue;
            const listed = shifts.find((shift) => shift.node === point);
            const moved = (at(point) - nodes[point]!) * 1000;
            if (listed === undefined) expect(Math.abs(moved), `${lost}: ${point}`).toBeLessThan(1.001);
            else expect(Math.abs(listed.shiftMv - moved), `${lost}: ${point}`).toBeLessThan(1e-3);
            compared++;
          }
          // Where nothing but electronics hangs on it, no current tells its volts.
          const tied = cutCircuits.some(
            (name) => !off.includes(name) && stateOf(plan, state).currents[name] !== undefined,
          );
          if (islandV !== null && tied) {
            const way = plan.ways.find(({ name }) => name === lost)!;
            const near = cutOff.includes(way.from) ? way.from : way.to;
            expect(Math.abs(islandV - at(near)), `${lost}: ${near}`).toBeLessThan(1e-3);
            compared++;
          }
        }
        expect(compared).toBeGreaterThan(150);
      },
    );
  }
});

describe('independent: the core, the whole network named and each loss settled anew', () => {
  it.each(['rescue', 'night and rain'])('state %s of the plan with loops', (state) => {
    const solved = stateOf(loops, state);
    const branches: Network['branches'][number][] = loops.ways
      .filter(({ circuit }) => circuit === null)
      .map(({ name, from, to, resistanceOhm }) => ({ name, from, to, resistanceOhm }));
    const loads: NonNullable<Network['loads']>[number][] = [];
    for (const { name, nodes, path } of loops.circuits) {
      if (nodes === null) continue;
      const resistanceOhm = path.reduce((sum, one) => sum + one.resistanceOhm, 0);
      if (nodes.back === null) branches.push({ name, from: nodes.from, to: nodes.load, resistanceOhm });
      const currentA = solved.currents[name] ?? 0;
      if (nodes.back === null || nodes.to === null || currentA === 0) continue;
      branches.push({ name: `path of ${name}`, from: nodes.from, to: `${name} behind its path`, resistanceOhm });
      loads.push({ name, from: `${name} behind its path`, to: nodes.to, load: loadOf(loops, name) });
    }
    const sources = solved.batteries.map(({ name, supplyV }) => {
      const restV = looped.states[state]!.atRest?.[name];
      const resistanceOhm = restV === undefined ? 0 : looped.supply.batteries[name]!.resistance;
      const voltageV = restV ?? supplyV;
      return { name: `source ${name}`, from: `battery ${name} −`, to: `battery ${name} +`, voltageV, resistanceOhm };
    });
    const beside = loops.losses.filter(({ cutOff }) => cutOff.length === 0);
    const { nodes, cases } = groundFaults({
      network: { reference: 'ground frame middle', branches, sources, loads, settle: settleNetwork },
      grounds: beside.map(({ lost }) => lost),
      pairs: false,
      watched: [],
      limited: [],
      detail: 'every-node',
      exact: true,
      prepare: prepareGroundFaults,
      by: solveNetwork,
    });
    for (const { lost, states } of beside) {
      const theirs = cases.find((each) => each.lost[0] === lost)!;
      for (const { node, shiftMv } of states.find((each) => each.state === state)!.shifts) {
        const shift = theirs.nodeShiftMv![nodes.indexOf(node)]!;
        expect(Math.abs(shift - shiftMv), `${lost}: ${node}`).toBeLessThan(1e-3);
      }
    }
    expect(beside.length).toBeGreaterThan(6);
  });
});

describe('what is cut off', () => {
  it.each(plans)('is what no way leads to any more, in %s', (_, plan) => {
    const metal = [
      ...plan.ways.map(({ name, from, to }) => ({ name, from, to })),
      ...plan.circuits.flatMap(({ name, nodes }) =>
        nodes !== null && nodes.back === null ? [{ name, from: nodes.from, to: nodes.load }] : [],
      ),
      ...Object.keys(plan.loom.supply.batteries).map((name) => {
        return { name: `of ${name}`, from: `battery ${name} −`, to: `battery ${name} +` };
      }),
    ];
    for (const { lost, cutOff } of plan.losses) {
      const reached = new Set(['ground frame middle']);
      for (let before = 0; before < reached.size;) {
        before = reached.size;
        for (const { name, from, to } of metal) {
          if (name === lost || reached.has(from) === reached.has(to)) continue;
          reached.add(from).add(to);
        }
      }
      const all = new Set(metal.flatMap(({ from, to }) => [from, to]));
      expect(cutOff, lost).toEqual([...all].filter((point) => !reached.has(point)).sort());
    }
    expect(plan.losses.some(({ cutOff }) => cutOff.length > 0)).toBe(true);
  });
  it('takes the outputs of a controller with it that loses its ground', () => {
    const { cutCircuits } = tree.losses.find(({ lost }) => lost === 'ground power module')!;
    expect(cutCircuits).toEqual(expect.arrayContaining(['power module', 'wipers', 'search light left', 'heater fan']));
  });
});

describe('what carries more than it bears', () => {
  it('is the starter strap and the throttle cable once the other strap is lost, by the plan’s own ampacity', () => {
    const { states } = loops.losses.find(({ lost }) => lost === 'strap engine block')!;
    const { overloads } = states.find(({ state }) => state === 'cranking')!;
    expect(overloads.map(({ name }) => name).sort()).toEqual([
      'strap engine block to battery starter',
      'stray engine block to dash stud',
    ]);
    for (const { name, currentA, intactA, bearsA } of overloads) {
      expect(currentA).toBeGreaterThan(bearsA);
      expect(intactA).toBeLessThanOrEqual(bearsA);
      const circuit = loops.circuits.find((each) => each.name === name);
      expect(bearsA).toBe(circuit === undefined ? 5 : circuit.ampacityA);
    }
  });
  it('is nothing in a tree: what hangs on one way has no other', () => {
    expect(tree.losses.flatMap(({ states }) => states.flatMap(({ overloads }) => overloads))).toEqual([]);
  });
});

describe('sensors', () => {
  const changed = read(
    sandpiperText.replace(/(tank level: .*)return: \{ controller: power module \}/, '$1return: { ground: tail stud }'),
  );
  const plan = planLoom(changed);
  it('are off by the volts between their ground and that of their controller', () => {
    const [sensor] = plan.sensorGrounds;
    expect(plan.sensorGrounds.length).toBe(1);
    for (const { state, offsetMv } of sensor!.states) {
      const { nodes } = stateOf(plan, state);
      expect(offsetMv).toBeCloseTo((nodes['ground tail stud']! - nodes['controller power module −']!) * 1000, 9);
    }
  });
  it('are moved by each load by its current times the resistance that both share', () => {
    const lamp = plan.sensorGrounds[0]!.loads.find(({ circuit }) => circuit === 'trailer socket supply')!;
    const ohm = (name: string) => plan.ways.find((way) => way.name === name)!.resistanceOhm;
    // It returns to the tail stud, and its battery to the rear frame: only the stud's own way lies in both.
    expect(lamp.shiftMv).toBeCloseTo(12 * ohm('ground tail stud') * 1000, 6);
  });
  it('have no reading where one side is cut off', () => {
    const { states } = plan.losses.find(({ lost }) => lost === 'ground tail stud')!;
    expect(states.every(({ sensors }) => sensors[0]?.offsetMv === null)).toBe(true);
  });
});
