import { node } from './draft.js';
import type { PlannedSensorGround } from './plan-type.js';
import type { Settled } from './settled.js';

/** A sensor that returns elsewhere than to its controller, and the two points whose difference it is off by. */
export interface SensorGround {
  readonly circuit: string;
  readonly node: string;
  readonly against: string;
}

/** Every sensor whose ground is not that of its controller. */
export function sensorGrounds({ loom }: Settled): readonly SensorGround[] {
  return Object.keys(loom.items)
    .sort()
    .flatMap((name): SensorGround[] => {
      const item = loom.items[name];
      if (item?.kind !== 'sensor') return [];
      const { return: back, input } = item;
      const own = node.controllerGround(input.controller);
      const end =
        'ground' in back
          ? node.ground(back.ground)
          : 'body' in back
            ? node.ground(back.body)
            : 'battery' in back
              ? node.negative(back.battery)
              : node.controllerGround(back.controller);
      return end === own ? [] : [{ circuit: `sensor ${name}`, node: end, against: own }];
    });
}

/** How far off each of them is, by state, and what each load alone does to it. */
export function plannedSensorGrounds(
  settled: Settled,
  sensors: readonly SensorGround[],
): readonly PlannedSensorGround[] {
  const { network, states, metal, drafts } = settled;
  const { wiring, analysis } = network;
  const { joined, numberOf, loads } = wiring;
  return sensors.flatMap((sensor): PlannedSensorGround[] => {
    const [p, q] = [numberOf.get(sensor.node), numberOf.get(sensor.against)];
    if (p === undefined || q === undefined) return [];
    const volts = network.voltsOf(metal.factor, joined[p] as number, joined[q] as number);
    const moved = loads.flatMap(({ draft, branch }) => {
      const currentA = states.reduce((most, { currents }) => Math.max(most, currents[draft] ?? 0), 0);
      // What enters at one end and leaves at another moves these two points as they would move those.
      const ohm = (volts[analysis.from[branch] as number] ?? 0) - (volts[analysis.to[branch] as number] ?? 0);
      const shiftMv = -currentA * ohm * 1000;
      return Math.abs(shiftMv) < 1e-3 ? [] : [{ circuit: drafts[draft]?.name ?? '', currentA, shiftMv }];
    });
    return [
      {
        ...sensor,
        states: states.map(({ name, volts: at }) => {
          return { state: name, offsetMv: ((at[p] as number) - (at[q] as number)) * 1000 };
        }),
        loads: moved.sort((a, b) => Math.abs(b.shiftMv) - Math.abs(a.shiftMv) || (a.circuit < b.circuit ? -1 : 1)),
      },
    ];
  });
}
