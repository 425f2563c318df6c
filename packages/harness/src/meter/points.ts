import { InputError } from 'loomwright';
import { nearWords } from '@loomwright/worked/quantity';
import type { MeterNet, NetPoint } from './net.js';

/** A place in the path of a circuit: behind so many of its parts, before or behind its load. */
export interface PathPlace {
  /** The circuit, by its number. */
  readonly circuit: number;
  readonly place: number;
  readonly behindLoad: boolean;
}

/** What a point's name leads to. */
export interface FoundPoint {
  readonly point: NetPoint;
  readonly places: readonly PathPlace[];
}

/** Names of points and parts of a network, and what they lead to. */
export class MeterPoints {
  readonly #net: MeterNet;
  readonly #places = new Map<string, PathPlace[]>();
  readonly #firstPart: readonly number[];
  readonly #nearest: readonly string[];

  constructor(net: MeterNet) {
    this.#net = net;
    const { circuits } = net.plan;
    const add = (name: string, place: PathPlace): void => {
      const list = this.#places.get(name);
      if (list === undefined) this.#places.set(name, [place]);
      else if (!list.some((one) => one.circuit === place.circuit)) list.push(place);
    };
    let part = 0;
    this.#firstPart = circuits.map(({ name, nodes, path, kind }, circuit) => {
      const first = part;
      if (nodes === null || (net.network.wiring.branchOf[circuit] ?? -1) < 0) return first;
      part += path.length;
      const outs = path.filter(({ side }) => side === 'out').length;
      const at = (place: number, behindLoad: boolean): PathPlace => ({ circuit, place, behindLoad });
      add(nodes.from, at(0, false));
      path.forEach((one, i) => {
        add(`before ${one.name}`, at(i, one.side === 'back'));
        add(`behind ${one.name}`, at(i + 1, one.side === 'back'));
      });
      add(nodes.load, at(outs, false));
      if (nodes.back === null || nodes.to === null) return first;
      add(nodes.back, at(outs, true));
      add(nodes.to, at(path.length, true));
      if (kind !== 'coil') {
        add(`${name} +`, at(outs, false));
        add(`${name} −`, at(outs, true));
        add(`${name} + plug`, at(outs, false));
        add(`${name} − plug`, at(outs, true));
      }
      return first;
    });
    this.#nearest = [...new Set([...net.network.nodes, ...this.#places.keys()])];
  }

  /** All names of points. */
  get names(): readonly string[] {
    return this.#nearest;
  }

  /** The number of the first part of a circuit's path. */
  firstPart(circuit: number): number {
    return this.#firstPart[circuit] ?? 0;
  }

  /** A point by its name; where several circuits have one of the name, `circuit` says which. */
  find(field: string, given: string, circuit: string | undefined): FoundPoint {
    const name = tidy(given);
    const { network, plan } = this.#net;
    const node = network.wiring.numberOf.get(name);
    const places = this.#places.get(name) ?? [];
    if (node !== undefined) return { point: { name, node, parts: [], sign: -1 }, places };
    if (places.length === 0) throw unknown('diagnose', field, given, this.#nearest, 'a point of the plan');
    const mine = circuit === undefined ? places : places.filter((one) => plan.circuits[one.circuit]?.name === circuit);
    const [place] = mine;
    if (place === undefined || mine.length > 1) {
      const among = places.map((one) => `'${plan.circuits[one.circuit]?.name ?? ''}'`).join(', ');
      throw new InputError('diagnose', field, 'oneOf', given, `is in several circuits: say circuit, one of ${among}`);
    }
    return { point: this.#pointAt(name, place), places: mine };
  }

  /** The point before or behind a part. */
  around(p: number): readonly [NetPoint, NetPoint] {
    const { parts, plan, network } = this.#net;
    const { circuit, name, branch } = parts[p] as (typeof parts)[number];
    const index = plan.circuits.findIndex((one) => one.name === circuit);
    if (index < 0) {
      const { nodes, from, to } = network.wiring;
      const at = (node: number): NetPoint => ({ name: nodes[node] as string, node, parts: [], sign: -1 });
      return [at(from[branch] as number), at(to[branch] as number)];
    }
    const place = p - this.firstPart(index);
    const behindLoad = parts[p]?.side === 'back';
    return [
      this.#pointAt(`before ${name}`, { circuit: index, place, behindLoad }),
      this.#pointAt(`behind ${name}`, { circuit: index, place: place + 1, behindLoad }),
    ];
  }

  /** Points along the path of a circuit, from its beginning to its end. */
  along(index: number): readonly NetPoint[] {
    const circuit = this.#net.plan.circuits[index];
    if (circuit?.nodes === undefined || circuit.nodes === null) return [];
    const { nodes, path } = circuit;
    const outs = path.filter(({ side }) => side === 'out').length;
    const list: NetPoint[] = [];
    for (let place = 0; place <= outs; place++) {
      const name = place === 0 ? nodes.from : place === outs ? nodes.load : `behind ${path[place - 1]?.name ?? ''}`;
      list.push(this.#pointAt(name, { circuit: index, place, behindLoad: false }));
    }
    if (nodes.back === null || nodes.to === null) return list;
    for (let place = outs; place <= path.length; place++) {
      const behind = `behind ${path[place - 1]?.name ?? ''}`;
      const name = place === path.length ? nodes.to : place === outs ? nodes.back : behind;
      list.push(this.#pointAt(name, { circuit: index, place, behindLoad: true }));
    }
    return list;
  }

  #pointAt(name: string, { circuit, place, behindLoad }: PathPlace): NetPoint {
    const { network, plan } = this.#net;
    const { nodes, path } = plan.circuits[circuit] as (typeof plan.circuits)[number];
    const first = this.firstPart(circuit);
    const number = (node: string | null | undefined): number => network.wiring.numberOf.get(node ?? '') ?? 0;
    if (!behindLoad) {
      return { name, node: number(nodes?.from), parts: Array.from({ length: place }, (_, i) => first + i), sign: -1 };
    }
    const rest = path.length - place;
    return { name, node: number(nodes?.to), parts: Array.from({ length: rest }, (_, i) => first + place + i), sign: 1 };
  }
}

/** A name as the plan writes it: people type a hyphen for a minus, and more blanks than one. */
export function tidy(name: string): string {
  return name
    .trim()
    .replace(/\s+/g, ' ')
    .replace(/ -( plug)?$/, ' −$1');
}

/** Bad input: a name that is not known, with the nearest that are. */
export function unknown(fn: string, field: string, given: string, names: readonly string[], what: string): InputError {
  const near = nearWords(tidy(given), names);
  const hint = near.length === 0 ? '' : `did you mean ${near.map((one) => `'${one}'`).join(' or ')}?`;
  return new InputError(fn, field, 'oneOf', given, `must be ${what}`, hint);
}
