// A plan with a fault seeded, and what a meter would show on it by the general circuit simulator.
import type { LoomPlan, MeterReading } from '@loomwright/harness';
import { netlist } from './plan-netlist.js';
import { simulate } from './simulator.js';

/** A part of a plan: a thing in a circuit's path, or a way of the grounds. */
export interface SeedPart {
  readonly circuit: string;
  readonly name: string;
}

/** Random numbers from 0 to 1, always the same ones for a seed. */
export function randomFrom(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A plan whose vehicle was built otherwise: each part's resistance by a factor, and some ohms more in one of them. */
export function seeded(
  plan: LoomPlan,
  part: SeedPart | null,
  extraOhm: number,
  factor: (kind: string) => number = () => 1,
): LoomPlan {
  return {
    ...plan,
    circuits: plan.circuits.map((one) => ({
      ...one,
      path: one.path.map((each) => ({
        ...each,
        resistanceOhm:
          each.resistanceOhm * factor(each.kind) +
          (one.name === part?.circuit && each.name === part.name ? extraOhm : 0),
      })),
    })),
    ways: plan.ways.map((way) => ({
      ...way,
      resistanceOhm:
        way.resistanceOhm * (way.circuit === null ? factor('body') : 1) +
        (way.circuit === null && way.name === part?.name && way.name === part.circuit ? extraOhm : 0),
    })),
  };
}

/** A vehicle on which readings are taken. */
export class Bench {
  readonly #plan: LoomPlan;
  readonly #volts: ReadonlyMap<string, Readonly<Record<string, number[]>>>;
  readonly #names: ReadonlyMap<string, ReadonlyMap<string, string>>;

  private constructor(
    plan: LoomPlan,
    volts: ReadonlyMap<string, Readonly<Record<string, number[]>>>,
    names: ReadonlyMap<string, ReadonlyMap<string, string>>,
  ) {
    this.#plan = plan;
    this.#volts = volts;
    this.#names = names;
  }

  static async of(plan: LoomPlan, states: readonly string[]): Promise<Bench> {
    const volts = new Map<string, Readonly<Record<string, number[]>>>();
    const names = new Map<string, ReadonlyMap<string, string>>();
    for (const state of states) {
      const { text, names: labels } = netlist(plan, state);
      volts.set(state, await simulate(text));
      names.set(state, labels);
    }
    return new Bench(plan, volts, names);
  }

  /** Volts of a node. */
  at(state: string, node: string): number {
    const label = this.#names.get(state)?.get(node);
    return label === undefined ? 0 : (this.#volts.get(state)?.[`v(${label})`]?.[0] ?? NaN);
  }

  /** Current of a circuit, from the volts at the ends of its way out or back. */
  amps(state: string, circuit: string): number {
    const { nodes, path } = this.#plan.circuits.find(({ name }) => name === circuit)!;
    const ohm = (side: string): number =>
      path.filter((one) => one.side === side).reduce((sum, one) => sum + one.resistanceOhm, 0);
    if (nodes!.to === null || nodes!.back === null || ohm('out') > 0) {
      return (this.at(state, nodes!.from) - this.at(state, nodes!.load)) / ohm('out');
    }
    return (this.at(state, nodes!.back) - this.at(state, nodes!.to)) / ohm('back');
  }

  /** Between two nodes, as an ordinary meter shows it. */
  volts(state: string, red: string, black: string): MeterReading {
    return { state, red, black, readsV: shown(this.at(state, red) - this.at(state, black)) };
  }

  /** Over a part; for a way that is no circuit between its ends. */
  over(state: string, { circuit, name }: SeedPart): MeterReading {
    const way = this.#plan.ways.find((one) => one.name === name && one.circuit === null && name === circuit);
    const volts =
      way === undefined
        ? this.amps(state, circuit) *
          this.#plan.circuits.find((one) => one.name === circuit)!.path.find((one) => one.name === name)!.resistanceOhm
        : this.at(state, way.from) - this.at(state, way.to);
    return way === undefined
      ? { state, over: name, circuit, readsV: shown(Math.abs(volts)) }
      : { state, red: way.from, black: way.to, readsV: shown(volts) };
  }
}

/** Volts as a meter shows them: 10 mV steps from 1 V up, 0.1 mV below. */
export function shown(voltageV: number): number {
  const step = Math.abs(voltageV) < 1 ? 1e-4 : 1e-2;
  return Math.round(voltageV / step) * step;
}
