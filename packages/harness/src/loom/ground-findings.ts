import { makeCheck } from 'loomwright';
import type { Finding, LoomPlan, Overload, PlannedLoss, PlannedSneak, SensorShift } from './plan-type.js';

/** What the grounds of a plan ask to be looked at: each of their ways lost in turn, and sensors that share a ground. */
export function groundFindings(plan: LoomPlan): readonly Finding[] {
  const limitV = plan.loom.rules.sensorShift;
  const limitMv = limitV === undefined ? null : limitV * 1000;
  return [
    ...plan.losses.flatMap((loss) => [
      ...overloads(plan, loss),
      ...cutOff(plan, loss),
      ...(limitMv === null ? [] : sensorsAfter(loss, limitMv)),
    ]),
    ...sensors(plan, limitMv),
    ...plan.sneaks.flatMap(sneak),
  ];
}

const given = { sense: 'atMost', source: 'given-by-caller', sourceStatus: 'derived' } as const;

/** Wires and stray ways that carry more than they bear once a way is lost: one finding a way, the worst first. */
function overloads(plan: LoomPlan, { lost, states }: PlannedLoss): Finding[] {
  const worst = new Map<string, Overload & { readonly state: string }>();
  for (const { state, overloads: list } of states) {
    for (const one of list) {
      const known = worst.get(one.name);
      if (known === undefined || known.currentA < one.currentA) worst.set(one.name, { ...one, state });
    }
  }
  const list = [...worst.values()].sort((a, b) => b.currentA / b.bearsA - a.currentA / a.bearsA);
  const [first] = list;
  if (first === undefined) return [];
  const check = makeCheck({
    ...given,
    name: `current in ${first.name} with ${lost} lost`,
    value: first.currentA,
    limit: first.bearsA,
    unit: 'A',
  });
  const said = list.map(
    ({ name, currentA, bearsA, state }) =>
      `${name} carries ${figure(currentA)} A in state ${state} and bears ${figure(bearsA)} A`,
  );
  const stray = list.some(({ name }) => plan.ways.find((way) => way.name === name)?.kind === 'stray');
  return [
    {
      severity: 'warn',
      rule: 'ground-lost-overload',
      about: { kind: 'ground', name: lost },
      message: `If ${lost} is lost, its current takes another way: ${said.join('; ')}. Charging currents are counted on the safe side.`,
      marginFraction: check.marginFraction,
      check,
      cure: stray
        ? 'Lay a second strap beside it: what was not laid for current gets hot, and a cable may seize. Make the straps that are left thick enough for all of it.'
        : 'Make the ways beside it thick enough to carry all of it, or lay one more; prove the joint by millivolts under load.',
    },
  ];
}

/** Names of what stops: a load whose relay has no coil current stops as well. */
export function withoutCoils(circuits: readonly string[]): readonly string[] {
  return [...new Set(circuits.map((name) => name.replace(/^coil /, '')))].sort();
}

/** What is without a way back once a way is lost. */
function cutOff(plan: LoomPlan, { lost, cutCircuits, states }: PlannedLoss): Finding[] {
  const names = withoutCoils(cutCircuits);
  if (names.length === 0) return [];
  const alive = states.reduce<{ state: string; islandV: number } | null>(
    (most, { state, islandV }) =>
      islandV !== null && Math.abs(islandV) > Math.abs(most?.islandV ?? 0) ? { state, islandV } : most,
    null,
  );
  const controllers = cutCircuits.filter((name) => plan.loom.controllers[name] !== undefined);
  const count = names.length === 1 ? '1 load or controller stops' : `${names.length} loads and controllers stop`;
  const which = names.length <= 4 ? `: ${names.join(', ')}` : '';
  const dead =
    controllers.length === 0 ? '' : ` Without ground, and all their outputs with them: ${controllers.join(', ')}.`;
  const volts =
    alive === null || Math.abs(alive.islandV) < 1
      ? ''
      : ` What was cut off then stands at ${figure(alive.islandV)} V in state ${alive.state}: a tool between it and the body draws an arc.`;
  return [
    {
      severity: 'note',
      rule: 'ground-lost-cut-off',
      about: { kind: 'ground', name: lost },
      message: `If ${lost} is lost, ${count} for want of a way back${which}.${dead}${volts}`,
      marginFraction: null,
      check: null,
      cure: 'Prove the joint by millivolts under load; a second way (bonds in the file) leaves nothing hanging on one bolt.',
    },
  ];
}

function sensorsAfter({ lost, states }: PlannedLoss, limitMv: number): Finding[] {
  const worst = new Map<string, SensorShift & { readonly state: string }>();
  for (const { state, sensors: list } of states) {
    for (const one of list) {
      if (one.offsetMv === null || Math.abs(one.offsetMv) <= limitMv) continue;
      const known = worst.get(one.circuit)?.offsetMv ?? 0;
      if (Math.abs(one.offsetMv) > Math.abs(known ?? 0)) worst.set(one.circuit, { ...one, state });
    }
  }
  return [...worst.values()].map(({ circuit, offsetMv, state }): Finding => {
    const check = makeCheck({
      ...given,
      name: `ground of ${circuit} off that of its controller with ${lost} lost`,
      value: Math.abs(offsetMv ?? 0),
      limit: limitMv,
      unit: 'mV',
    });
    return {
      severity: 'warn',
      rule: 'ground-lost-sensor',
      about: { kind: 'ground', name: lost },
      message: `If ${lost} is lost, ${circuit} reads ${figure(offsetMv ?? 0)} mV off in state ${state}, and may be off by ${figure(limitMv)} mV.`,
      marginFraction: check.marginFraction,
      check,
      cure: 'Return the sensor to the signal ground of its controller: then no load can move it.',
    };
  });
}

/** Sensors whose ground is not that of their controller, as planned. */
function sensors(plan: LoomPlan, limitMv: number | null): Finding[] {
  return plan.sensorGrounds.flatMap(({ circuit, node, states, loads }): Finding[] => {
    const worst = states.reduce((a, b) => (Math.abs(b.offsetMv) > Math.abs(a.offsetMv) ? b : a));
    const [most] = loads;
    const mover =
      most === undefined ? '' : ` ${most.circuit} alone moves it by ${figure(most.shiftMv)} mV when it switches on.`;
    const off = `${circuit} returns to ${node}, which stands ${figure(worst.offsetMv)} mV off its controller's ground in state ${worst.state}`;
    const check =
      limitMv === null
        ? null
        : makeCheck({
            ...given,
            name: `ground of ${circuit} off that of its controller`,
            value: Math.abs(worst.offsetMv),
            limit: limitMv,
            unit: 'mV',
          });
    if (check?.ok === true) return [];
    return [
      {
        severity: check === null ? 'note' : 'warn',
        rule: 'sensor-ground',
        about: { kind: 'circuit', name: circuit },
        message:
          limitMv === null
            ? `${off}: not judged, since the rules give no sensorShift.${mover}`
            : `${off}, and may be off by ${figure(limitMv)} mV.${mover}`,
        marginFraction: check?.marginFraction ?? null,
        check,
        cure: 'Return the sensor to the signal ground of its controller: then no load can move it.',
      },
    ];
  });
}

/** What is fed back through coils or loads although what feeds it is out. A whole box is worth a look. */
function sneak({ fault, opened, points, by, fedFrom, path, relays, state, states }: PlannedSneak): Finding[] {
  const [first] = points;
  if (by === 'wire' || first === undefined) return [];
  const box = points.find(({ node }) => node.startsWith('box '));
  const lead = (box ?? first).node;
  const more = points.length === 1 ? '' : ` and ${points.length - 1} more points`;
  const others = states.length === 1 ? '' : ` (and in ${states.length - 1} more)`;
  const held = relays.length === 0 ? '' : ` It holds in: ${relays.join(', ')}.`;
  const off = `${fault} ${{ fuse: 'out', contact: 'open', battery: 'off' }[opened]}`;
  return [
    {
      severity: box === undefined ? 'note' : 'warn',
      rule: 'sneak-path',
      about: { kind: opened === 'fuse' ? 'fuse' : 'vehicle', name: fault },
      message: `With ${off}, ${lead}${more} ${points.length === 1 ? 'still stands' : 'still stand'} at up to ${figure(first.voltageV)} V in state ${state}${others}, fed from ${fedFrom ?? 'elsewhere'} through ${path.join(', then ')}.${held}`,
      marginFraction: null,
      check: null,
      cure: 'Feed coils that one switch pulls from one fuse, give each its own contact of the switch, or put a diode into the wire of each coil. Until then measure before you touch.',
    },
  ];
}

function figure(value: number): string {
  return String(Number(value.toPrecision(3))).replace('-', '−');
}
