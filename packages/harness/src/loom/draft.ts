import type { ConstantCurrentLoad, ConstantPowerLoad, MotorLoad, ResistanceLoad, Terminal } from 'loomwright';
import { budgetOf, terminalOf } from '../schema/tables.js';
import { loadOf } from '../schema/load-of.js';
import type { PathElement, PlannedCircuit, WireEnd, WireUse } from './plan-type.js';
import type {
  Loom,
  LoomBond,
  LoomFrom,
  LoomInLine,
  LoomLoad,
  LoomReturn,
  LoomSensor,
  LoomSwitch,
  LoomTakes,
} from './schema.js';
import { type Way, waysOf } from './way.js';

/** A load as the file can name it. */
export type DraftLoad = ConstantCurrentLoad | ResistanceLoad | ConstantPowerLoad | MotorLoad;

/** A wire before its size is known. */
export interface DraftWire {
  readonly name: string;
  readonly use: WireUse;
  readonly from: WireEnd;
  readonly to: WireEnd;
  readonly way: Way;
  readonly lengthM: number;
  readonly side: 'out' | 'back';
  /** Whether no fuse lies between it and its source. */
  readonly unfused: boolean;
  readonly colour: string | null;
}

/** One thing in the path: of known resistance, a wire (by its place in `wires`), or the fuse to be chosen. */
export interface DraftElement {
  readonly name: string;
  readonly kind: PathElement['kind'];
  readonly side: 'out' | 'back';
  readonly ohm: number;
  readonly wire: number | null;
  readonly chosen: boolean;
}

/** What protects it. */
export type DraftProtection =
  | { readonly kind: 'position'; readonly box: string; readonly position: number }
  | { readonly kind: 'in-line'; readonly fuse: Exclude<LoomInLine, { none: string }>; readonly name: string }
  | { readonly kind: 'channel'; readonly controller: string; readonly channel: string }
  | { readonly kind: 'none'; readonly because: string; readonly dangerous: boolean };

/** Terminals that its wires end in, as the file describes them. */
export interface DraftTerminal {
  /** The box, controller or item. */
  readonly at: string;
  readonly terminal: Terminal;
  /** Whether the file says what current they carry. */
  readonly currentKnown: boolean;
  readonly ambientTempC: number;
}

/** A circuit before its size is known. */
export interface Draft {
  readonly name: string;
  readonly kind: PlannedCircuit['kind'];
  readonly serves: string;
  readonly nodes: PlannedCircuit['nodes'];
  readonly wires: readonly DraftWire[];
  readonly elements: readonly DraftElement[];
  /** What hangs on it; null for feeders and straps, whose current is that of others. */
  readonly load: DraftLoad | null;
  /** States in which the load is on. */
  readonly on: readonly string[];
  readonly protection: DraftProtection;
  readonly leastAreaMm2: number;
  /** Areas that its terminals take. */
  readonly takesLeastMm2: number;
  readonly takesMostMm2: number;
  readonly terminals: readonly DraftTerminal[];
  /** Volts that it may lose: from battery to load and back for loads, in itself for others. */
  readonly dropLimitV: number;
  readonly leastLoadV: number | null;
  readonly peakA: number | null;
  readonly inrushA: number | null;
  readonly inrushS: number | null;
  /** Size that the file gives. */
  readonly givenAreaMm2: number | null;
  /** The battery that it is fed from. */
  readonly battery: string | null;
  readonly item: LoomLoad | null;
}

/** Names of nodes. */
export const node = {
  post: (battery: string) => `battery ${battery} +`,
  negative: (battery: string) => `battery ${battery} −`,
  ground: (name: string) => `ground ${name}`,
  /** The metal behind the stud of a ground point, where it leads on in several ways. */
  metal: (name: string) => `metal at ${name}`,
  box: (name: string) => `box ${name}`,
  controller: (name: string) => `controller ${name}`,
  controllerGround: (name: string) => `controller ${name} −`,
  switch: (name: string) => `switch ${name}`,
};

/** A name for each further way of a ground point, which neither its order nor that of the file changes for another. */
export function bondNames(ground: string, bonds: readonly LoomBond[]): readonly (readonly [string, LoomBond])[] {
  const taken = new Map<string, number>();
  return bonds.map((bond) => {
    const kind = 'strap' in bond ? 'strap' : 'stray' in bond ? 'stray' : 'body';
    const end = 'battery' in bond ? `battery ${bond.battery}` : bond.to;
    const name = `${kind} ${ground} to ${end}`;
    const count = (taken.get(name) ?? 0) + 1;
    taken.set(name, count);
    return [count === 1 ? name : `${name} ${count}`, bond] as const;
  });
}

/** Every circuit of a loom, sorted by name. */
export function draftsOf(loom: Loom): readonly Draft[] {
  return new Drafting(loom).all();
}

/** The area that a size names, in mm². */
export function areaOf(size: {
  areaMm2?: number | undefined;
  awg?: string | undefined;
  saeGauge?: string | undefined;
}): number {
  if (size.areaMm2 !== undefined) return size.areaMm2;
  const gauge = size.awg ?? size.saeGauge ?? '0';
  const zeros = /^(\d)\/0$/.exec(gauge);
  const n = zeros !== null ? 1 - Number(zeros[1]) : /^0+$/.test(gauge) ? 1 - gauge.length : Number(gauge);
  const diameterMm = 0.127 * 92 ** ((36 - n) / 39);
  return (Math.PI / 4) * diameterMm ** 2;
}

class Drafting {
  readonly #loom: Loom;
  readonly #way: (from: string, to: string) => Way;
  readonly #drafts: Draft[] = [];

  constructor(loom: Loom) {
    this.#loom = loom;
    this.#way = waysOf(loom);
  }

  all(): readonly Draft[] {
    const { supply, grounds, fuseBoxes, controllers, buses, items } = this.#loom;
    for (const name of sorted(supply.batteries)) this.#negative(name);
    for (const name of sorted(grounds)) this.#straps(name);
    for (const name of sorted(supply.links ?? {})) this.#link(name);
    for (const name of sorted(fuseBoxes)) this.#box(name);
    for (const name of sorted(controllers)) this.#controller(name);
    for (const name of sorted(items)) {
      const item = items[name] as Loom['items'][string];
      if (item.kind === 'load') this.#item(name, item);
      else if (item.kind === 'sensor') this.#sensor(name, item);
      else this.#switch(name, item);
    }
    this.#charging();
    for (const name of sorted(buses)) this.#bus(name);
    return this.#drafts.sort((a, b) => (a.name < b.name ? -1 : 1));
  }

  #draft(draft: Partial<Draft> & Pick<Draft, 'name' | 'kind' | 'serves' | 'wires' | 'elements' | 'protection'>): void {
    const { rules } = this.#loom;
    this.#drafts.push({
      nodes: null,
      load: null,
      on: [],
      leastAreaMm2: rules.leastArea,
      takesLeastMm2: 0,
      takesMostMm2: Infinity,
      terminals: [],
      dropLimitV: rules.signalDrop,
      leastLoadV: null,
      peakA: null,
      inrushA: null,
      inrushS: null,
      givenAreaMm2: null,
      battery: null,
      item: null,
      ...draft,
    });
  }

  /** Negative cable of a battery: from its ground point to the post. */
  #negative(name: string): void {
    const { rules, supply } = this.#loom;
    const battery = supply.batteries[name] as Loom['supply']['batteries'][string];
    const path = new Path(this.#loom, this.#way, `negative ${name}`);
    const ground = { at: node.ground(battery.ground), place: groundPlace(this.#loom, battery.ground) };
    path.add('joint', `ring at ${ground.at}`, rules.stud);
    path.fixedWire('ground', ground, { at: node.negative(name), place: battery.place }, battery.cable);
    path.add('joint', `clamp at ${node.negative(name)}`, rules.stud);
    this.#draft({
      name: `negative ${name}`,
      kind: 'strap',
      serves: name,
      nodes: { from: ground.at, load: node.negative(name), back: null, to: null },
      ...path.done(),
      protection: harmless('a way back needs no fuse'),
      dropLimitV: rules.strapDrop,
    });
  }

  /** Every strap of a ground point: its first way where that is one, and those among its bonds. */
  #straps(name: string): void {
    const { to, strap, bonds = [] } = this.#loom.grounds[name] as Loom['grounds'][string];
    if (to !== undefined && strap !== undefined) this.#strap(name, `strap ${name}`, { to }, strap);
    for (const [way, bond] of bondNames(name, bonds)) {
      if ('strap' in bond) this.#strap(name, way, bond, bond.strap);
    }
  }

  #strap(name: string, circuit: string, end: { to: string } | { battery: string }, lengthM: number): void {
    const { rules, supply } = this.#loom;
    const ground = this.#loom.grounds[name] as Loom['grounds'][string];
    const far =
      'to' in end
        ? { at: node.ground(end.to), place: groundPlace(this.#loom, end.to) }
        : {
            at: node.negative(end.battery),
            place: (supply.batteries[end.battery] as Loom['supply']['batteries'][string]).place,
          };
    const path = new Path(this.#loom, this.#way, circuit);
    path.add('joint', `joint of ${node.ground(name)}`, ground.joint);
    path.fixedWire('ground', { at: node.ground(name), place: ground.place }, far, lengthM);
    path.add('joint', `${'to' in end ? 'ring' : 'clamp'} at ${far.at}`, rules.stud);
    this.#draft({
      name: circuit,
      kind: 'strap',
      serves: name,
      nodes: { from: node.ground(name), load: far.at, back: null, to: null },
      ...path.done(),
      protection: harmless('a way back needs no fuse'),
      dropLimitV: rules.strapDrop,
    });
  }

  /** The cable between two batteries that stand in parallel: alive from both ends, so all of it counts as unfused. */
  #link(name: string): void {
    const { rules, supply } = this.#loom;
    const { between, cable, protection } = supply.links?.[name] as NonNullable<Loom['supply']['links']>[string];
    const [first, second] = between;
    const circuit = `link ${name}`;
    const place = (battery: string): string => (supply.batteries[battery] as Loom['supply']['batteries'][string]).place;
    const path = new Path(this.#loom, this.#way, circuit);
    path.at = { at: node.post(first), place: place(first) };
    path.unfused = true;
    path.add('joint', `ring at ${path.at.at}`, rules.stud);
    if (!('none' in protection)) {
      // The fuse sits on the post of the first battery.
      path.fuse(`fuse of ${circuit}`, protection.resistance ?? null);
      path.add('joint', `ring at fuse of ${circuit}`, rules.stud);
    }
    path.fixedWire('feed', path.at, { at: node.post(second), place: place(second) }, cable);
    path.add('joint', `ring at ${node.post(second)}`, rules.stud);
    this.#draft({
      name: circuit,
      kind: 'feeder',
      serves: name,
      nodes: { from: node.post(first), load: node.post(second), back: null, to: null },
      ...path.done(),
      protection:
        'none' in protection
          ? { kind: 'none', because: protection.none, dangerous: true }
          : { kind: 'in-line', fuse: protection, name: `fuse of ${circuit}` },
      dropLimitV: rules.feederDrop,
      battery: first,
    });
  }

  #air(place: string): number {
    return (this.#loom.places[place] as Loom['places'][string]).ambient;
  }

  /** The start of a feed: up to its fuse or channel. */
  #start(path: Path, name: string, from: LoomFrom, protection: LoomInLine | undefined) {
    const { rules, supply, fuseBoxes, controllers } = this.#loom;
    if ('battery' in from) {
      const { place } = supply.batteries[from.battery] as Loom['supply']['batteries'][string];
      path.at = { at: node.post(from.battery), place };
      path.add('joint', `ring at ${path.at.at}`, rules.stud);
      const given = protection ?? { none: 'the file names none' };
      if ('none' in given) {
        path.unfused = true;
        return { node: path.at.at, protection: { kind: 'none', because: given.none, dangerous: true } } as const;
      }
      path.unfused = true;
      path.wireTo('feed', { at: `fuse of ${name}`, place: given.at }, rules.stud);
      path.unfused = false;
      path.fuse(`fuse of ${name}`, given.resistance ?? null);
      path.add('joint', `ring at fuse of ${name}`, rules.stud);
      return {
        node: node.post(from.battery),
        protection: { kind: 'in-line', fuse: given, name: `fuse of ${name}` },
      } as const;
    }
    if ('box' in from) {
      const box = fuseBoxes[from.box] as Loom['fuseBoxes'][string];
      path.at = { at: `${from.box} ${from.position}`, place: box.place };
      path.fuse(`fuse ${path.at.at}`, null);
      path.add('connector', `contacts of ${path.at.at}`, box.contact);
      path.add('terminal', `terminal at ${path.at.at}`, rules.terminal);
      path.take(box.takes, from.box, box.temperature);
      return {
        node: node.box(from.box),
        protection: { kind: 'position', box: from.box, position: from.position },
      } as const;
    }
    const controller = controllers[from.controller] as Loom['controllers'][string];
    const channel = controller.channels[from.channel] as Loom['controllers'][string]['channels'][string];
    path.at = { at: `${from.controller} ${from.channel}`, place: controller.place };
    path.add('channel', `channel ${path.at.at}`, channel.resistance);
    path.add('connector', `pin of ${path.at.at}`, controller.contact);
    path.take(controller.takes, from.controller, controller.temperature);
    return {
      node: node.controller(from.controller),
      protection: { kind: 'channel', controller: from.controller, channel: from.channel },
    } as const;
  }

  #box(name: string): void {
    const { rules } = this.#loom;
    const box = this.#loom.fuseBoxes[name] as Loom['fuseBoxes'][string];
    const path = new Path(this.#loom, this.#way, `feeder ${name}`);
    const start = this.#start(path, `feeder ${name}`, box.from, box.protection);
    path.wireTo('feed', { at: node.box(name), place: box.place }, rules.stud);
    this.#draft({
      name: `feeder ${name}`,
      kind: 'feeder',
      serves: name,
      nodes: { from: start.node, load: node.box(name), back: null, to: null },
      ...path.done(),
      protection: start.protection,
      dropLimitV: rules.feederDrop,
      battery: batteryOf(this.#loom, box.from),
    });
  }

  #controller(name: string): void {
    const { rules } = this.#loom;
    const controller = this.#loom.controllers[name] as Loom['controllers'][string];
    const { place, contact, takes, ground } = controller;
    const back = new Path(this.#loom, this.#way, `ground ${name}`);
    back.at = { at: node.controllerGround(name), place };
    back.add('connector', `pin of ${node.controllerGround(name)}`, contact);
    back.take(takes, name, controller.temperature);
    back.wireTo('ground', { at: node.ground(ground), place: groundPlace(this.#loom, ground) }, rules.terminal);
    this.#draft({
      name: `ground ${name}`,
      kind: 'strap',
      serves: name,
      nodes: { from: node.controllerGround(name), load: node.ground(ground), back: null, to: null },
      ...back.done(),
      protection: harmless('a way back needs no fuse'),
      dropLimitV: rules.strapDrop,
    });
    if (controller.from === undefined) return;
    const path = new Path(this.#loom, this.#way, `feeder ${name}`);
    const start = this.#start(path, `feeder ${name}`, controller.from, controller.protection);
    path.wireTo('feed', { at: node.controller(name), place }, null);
    path.add('connector', `pin of ${node.controller(name)}`, contact);
    path.take('battery' in controller.from ? undefined : takes, name, controller.temperature);
    this.#draft({
      name: `feeder ${name}`,
      kind: 'feeder',
      serves: name,
      nodes: { from: start.node, load: node.controller(name), back: null, to: null },
      ...path.done(),
      protection: start.protection,
      dropLimitV: rules.feederDrop,
      battery: batteryOf(this.#loom, controller.from),
    });
    this.#draft({
      name,
      kind: 'load',
      serves: name,
      nodes: {
        from: node.controller(name),
        load: node.controller(name),
        back: node.controllerGround(name),
        to: node.controllerGround(name),
      },
      wires: [],
      elements: [],
      load: { kind: 'constant-current', currentA: controller.ownCurrent },
      on: [...controller.on].sort(),
      protection: harmless('its feeder protects it'),
      dropLimitV: budgetOf(controller.budget).dropV,
      battery: batteryOf(this.#loom, controller.from),
    });
  }

  #item(name: string, item: LoomLoad): void {
    const { rules, items, relayTypes } = this.#loom;
    const path = new Path(this.#loom, this.#way, name, item.colour);
    const start = this.#start(path, name, item.from, item.protection);
    const heavy = 'battery' in item.from;
    if (item.relay !== undefined) {
      const type = relayTypes[item.relay.type] as Loom['relayTypes'][string];
      const relay = `relay of ${name}`;
      path.wireTo('load', { at: `${relay} 30`, place: item.relay.at }, heavy ? rules.stud : rules.terminal);
      path.add('relay', `contact of ${relay}`, type.contact);
      path.at = { at: `${relay} 87`, place: item.relay.at };
      path.add('terminal', `terminal at ${relay} 87`, heavy ? rules.stud : rules.terminal);
    }
    if (item.switch !== undefined) {
      const by = items[item.switch] as LoomSwitch;
      path.wireTo('load', { at: `${item.switch} in`, place: by.place }, null);
      path.add('connector', `pins of ${item.switch}`, 2 * by.connector);
      path.add('switch', `contact of ${item.switch}`, by.resistance);
      path.take(by.takes, item.switch, this.#air(by.place));
      path.at = { at: `${item.switch} out`, place: by.place };
    }
    path.wireTo('load', { at: `${name} +`, place: item.place }, null);
    path.add('connector', `pin of ${name} +`, item.connector);
    path.take(item.takes, name, this.#air(item.place));
    const to = this.#back(path, name, item.place, item.connector, item.return, heavy ? rules.stud : rules.terminal);
    this.#draft({
      name,
      kind: 'load',
      serves: name,
      nodes: { from: start.node, load: `${name} +`, back: `${name} −`, to },
      ...path.done(),
      load: loadOf(item.load),
      on: [...new Set(item.on)].sort(),
      protection: start.protection,
      dropLimitV: budgetOf(item.budget).dropV,
      leastLoadV: item.leastVolts ?? null,
      peakA: item.peak ?? null,
      inrushA: item.inrush ?? null,
      inrushS: item.inrushTime ?? null,
      battery: batteryOf(this.#loom, item.from),
      item,
    });
    if (item.relay !== undefined) this.#coil(name, item, item.relay, start.node);
  }

  /** The way back of a load; returns the node at its end. */
  #back(path: Path, name: string, place: string, connector: number, back: LoomReturn, endOhm: number): string {
    path.side = 'back';
    path.unfused = false;
    path.at = { at: `${name} −`, place };
    if ('body' in back) {
      path.add('joint', `case of ${name}`, endOhm);
      return node.ground(back.body);
    }
    path.add('connector', `pin of ${name} −`, connector);
    if ('ground' in back) {
      path.wireTo('ground', { at: node.ground(back.ground), place: groundPlace(this.#loom, back.ground) }, endOhm);
      return node.ground(back.ground);
    }
    if ('battery' in back) {
      const battery = this.#loom.supply.batteries[back.battery] as Loom['supply']['batteries'][string];
      path.wireTo('ground', { at: node.negative(back.battery), place: battery.place }, this.#loom.rules.stud);
      return node.negative(back.battery);
    }
    const controller = this.#loom.controllers[back.controller] as Loom['controllers'][string];
    path.wireTo('sensor ground', { at: `${back.controller} signal ground`, place: controller.place }, null);
    path.add('connector', `pin of ${back.controller} signal ground`, controller.contact);
    path.take(controller.takes, back.controller, controller.temperature);
    return node.controllerGround(back.controller);
  }

  /** The coil of an item's relay: fed where its contact is, pulled to ground by a switch or a channel. */
  #coil(name: string, item: LoomLoad, relay: NonNullable<LoomLoad['relay']>, from: string): void {
    const { rules, relayTypes, items, controllers } = this.#loom;
    const type = relayTypes[relay.type] as Loom['relayTypes'][string];
    const path = new Path(this.#loom, this.#way, `coil ${name}`);
    path.side = 'back';
    path.at = { at: `relay of ${name} 85`, place: relay.at };
    path.add('terminal', `terminal at relay of ${name} 85`, rules.terminal);
    let to: string;
    if ('switch' in relay.control) {
      const by = items[relay.control.switch] as LoomSwitch;
      path.wireTo('coil', { at: `${relay.control.switch} in`, place: by.place }, null);
      path.take(by.takes, relay.control.switch, this.#air(by.place));
      to = node.switch(relay.control.switch);
    } else {
      const controller = controllers[relay.control.controller] as Loom['controllers'][string];
      const channel = controller.channels[relay.control.channel] as Loom['controllers'][string]['channels'][string];
      const at = `${relay.control.controller} ${relay.control.channel}`;
      path.wireTo('coil', { at, place: controller.place }, null);
      path.add('connector', `pin of ${at}`, controller.contact);
      path.add('channel', `channel ${at}`, channel.resistance);
      path.take(controller.takes, relay.control.controller, controller.temperature);
      to = node.controllerGround(relay.control.controller);
    }
    const hot = (234.5 + type.coilTemperature) / (234.5 + type.ratedAt);
    this.#draft({
      name: `coil ${name}`,
      kind: 'coil',
      serves: name,
      nodes: { from, load: from, back: `coil ${name} −`, to },
      ...path.done(),
      load: { kind: 'resistance', resistanceOhm: type.coil * hot },
      on: [...new Set(item.on)].sort(),
      leastAreaMm2: rules.leastSignalArea,
      protection: harmless('the coil before it limits the current'),
      battery: batteryOf(this.#loom, item.from),
    });
  }

  #sensor(name: string, sensor: LoomSensor): void {
    const { rules, controllers } = this.#loom;
    const controller = controllers[sensor.input.controller] as Loom['controllers'][string];
    const path = new Path(this.#loom, this.#way, `sensor ${name}`, sensor.colour);
    const to = { at: `${name} signal`, place: sensor.place };
    path.at = { at: `${sensor.input.controller} ${sensor.input.input}`, place: controller.place };
    path.add('connector', `pin of ${path.at.at}`, controller.contact);
    path.wireTo('signal', to, null);
    path.add('connector', `pin of ${to.at}`, sensor.connector);
    if (sensor.supply)
      path.beside(
        'reference',
        { at: `${sensor.input.controller} reference`, place: controller.place },
        { at: `${name} supply`, place: sensor.place },
      );
    path.take(controller.takes, sensor.input.controller, controller.temperature);
    path.take(sensor.takes, name, this.#air(sensor.place));
    this.#back(path, name, sensor.place, sensor.connector, sensor.return, rules.terminal);
    this.#draft({
      name: `sensor ${name}`,
      kind: 'sensor',
      serves: name,
      ...path.done(),
      load: { kind: 'constant-current', currentA: sensor.current },
      leastAreaMm2: rules.leastSignalArea,
      protection: harmless('its controller limits the current: see its data'),
    });
  }

  /** The wires of a switch that pulls to ground: shared by all that it pulls. */
  #switch(name: string, item: LoomSwitch): void {
    const { rules, controllers } = this.#loom;
    if (item.return !== undefined) {
      const path = new Path(this.#loom, this.#way, `switch ${name}`, item.colour);
      path.add('connector', `pin of ${name} in`, item.connector);
      path.add('switch', `contact of ${name}`, item.resistance);
      path.take(item.takes, name, this.#air(item.place));
      const to = this.#back(path, name, item.place, item.connector, item.return, rules.terminal);
      const { wires, elements, ...takes } = path.done();
      this.#draft({
        name: `switch ${name}`,
        kind: 'switch',
        serves: name,
        nodes: { from: node.switch(name), load: to, back: null, to: null },
        wires,
        elements,
        ...takes,
        leastAreaMm2: rules.leastSignalArea,
        protection: harmless('what is before it limits the current'),
      });
    }
    if (item.input !== undefined) {
      const controller = controllers[item.input.controller] as Loom['controllers'][string];
      const input = controller.inputs[item.input.input] as Loom['controllers'][string]['inputs'][string];
      const path = new Path(this.#loom, this.#way, `input ${name}`, item.colour);
      path.at = { at: `${item.input.controller} ${item.input.input}`, place: controller.place };
      path.add('connector', `pin of ${path.at.at}`, controller.contact);
      path.wireTo('signal', { at: `${name} in`, place: item.place }, null);
      path.take(controller.takes, item.input.controller, controller.temperature);
      path.take(item.takes, name, this.#air(item.place));
      this.#draft({
        name: `input ${name}`,
        kind: 'sensor',
        serves: name,
        ...path.done(),
        load: { kind: 'constant-current', currentA: input.pullUp === undefined ? 0.01 : 5 / input.pullUp },
        leastAreaMm2: rules.leastSignalArea,
        protection: harmless('its controller limits the current: see its data'),
      });
    }
  }

  /** Cables of alternator and isolator. */
  #charging(): void {
    const { rules, supply, states } = this.#loom;
    const { alternator, isolator, batteries } = supply;
    if (alternator !== undefined) {
      const path = new Path(this.#loom, this.#way, 'alternator');
      const start = this.#start(path, 'alternator', { battery: alternator.battery }, alternator.protection);
      path.wireTo('charge', { at: 'alternator +', place: alternator.place }, rules.stud);
      this.#draft({
        name: 'alternator',
        kind: 'charge',
        serves: 'alternator',
        ...path.done(),
        load: { kind: 'constant-current', currentA: alternator.current },
        on: sorted(states).filter((name) => states[name]?.alternator !== 'off'),
        protection: start.protection,
        dropLimitV: budgetOf('charging-0-7-v').dropV,
        battery: alternator.battery,
      });
    }
    if (isolator !== undefined) {
      isolator.between.forEach((battery, i) => {
        const name = `isolator ${battery}`;
        const path = new Path(this.#loom, this.#way, name);
        const start = this.#start(path, name, { battery }, isolator.protection[i]);
        path.wireTo('charge', { at: `isolator ${i + 1}`, place: isolator.place }, rules.stud);
        this.#draft({
          name,
          kind: 'charge',
          serves: 'isolator',
          ...path.done(),
          load: { kind: 'constant-current', currentA: isolator.current },
          on: sorted(states).filter((state) => states[state]?.isolator === 'closed'),
          protection: start.protection,
          dropLimitV: rules.feederDrop,
          battery,
        });
      });
      for (const battery of isolator.between) if (batteries[battery] === undefined) throw new Error(battery);
    }
  }

  #bus(name: string): void {
    const { buses, controllers, items } = this.#loom;
    const bus = buses[name] as Loom['buses'][string];
    const path = new Path(this.#loom, this.#way, `bus ${name}`);
    const placeOf = (member: string): string => controllers[member]?.place ?? items[member]?.place ?? '';
    bus.members.slice(1).forEach((to, i) => {
      const from = bus.members[i] as string;
      for (const wire of ['high', 'low']) {
        path.beside(
          'bus',
          { at: `${from} ${name} ${wire}`, place: placeOf(from) },
          { at: `${to} ${name} ${wire}`, place: placeOf(to) },
        );
      }
    });
    this.#draft({
      name: `bus ${name}`,
      kind: 'bus',
      serves: name,
      ...path.done(),
      leastAreaMm2: 0,
      protection: harmless('its drivers limit the current'),
      givenAreaMm2: areaOf(bus.size),
    });
  }
}

/** A path being laid: wires and what is between them, in order. */
class Path {
  at: WireEnd = { at: '', place: '' };
  side: 'out' | 'back' = 'out';
  unfused = false;
  readonly #loom: Loom;
  readonly #way: (from: string, to: string) => Way;
  readonly #name: string;
  readonly #colour: string | null;
  readonly #wires: DraftWire[] = [];
  readonly #elements: DraftElement[] = [];
  #leastMm2 = 0;
  #mostMm2 = Infinity;
  readonly #terminals: DraftTerminal[] = [];

  constructor(loom: Loom, way: (from: string, to: string) => Way, name: string, colour?: string) {
    this.#loom = loom;
    this.#way = way;
    this.#name = name;
    this.#colour = colour ?? null;
  }

  add(kind: PathElement['kind'], name: string, ohm: number): void {
    this.#elements.push({ name, kind, side: this.side, ohm, wire: null, chosen: false });
  }

  /** A fuse: of the resistance that the file gives, or of the one that is chosen. */
  fuse(name: string, ohm: number | null): void {
    this.#elements.push({ name, kind: 'fuse', side: this.side, ohm: ohm ?? 0, wire: null, chosen: ohm === null });
  }

  /** Terminals at a box, a controller or an item: what they take bounds the size. */
  take(takes: LoomTakes | undefined, at: string, ambientTempC: number): void {
    if (takes === undefined) return;
    const terminal = terminalOf(takes, areaOf);
    this.#leastMm2 = Math.max(this.#leastMm2, terminal.areaLeastMm2);
    this.#mostMm2 = Math.min(this.#mostMm2, terminal.areaMostMm2);
    this.#terminals.push({ at, terminal, currentKnown: 'blade' in takes || takes.current !== undefined, ambientTempC });
  }

  /** A wire from here along the routes, with its allowances and, where one is given, a terminal at its end. */
  wireTo(use: WireUse, to: WireEnd, terminalOhm: number | null): void {
    const way = this.#way(this.at.place, to.place);
    const { slack, ends } = this.#loom.rules;
    this.#wire(use, this.at, to, way, way.lengthM * (1 + slack) + 2 * ends);
    if (terminalOhm !== null) this.add('terminal', `terminal at ${to.at}`, terminalOhm);
    this.at = to;
  }

  /** A wire of a length that the file gives: a strap or a negative cable. */
  fixedWire(use: WireUse, from: WireEnd, to: WireEnd, lengthM: number): void {
    const way = { ...this.#way(from.place, to.place), routes: [], lengthM };
    this.#wire(use, from, to, way, lengthM);
    this.at = to;
  }

  /** A wire that carries nothing of the path's own current: a reference, a bus. */
  beside(use: WireUse, from: WireEnd, to: WireEnd): void {
    const way = this.#way(from.place, to.place);
    const { slack, ends } = this.#loom.rules;
    this.#wires.push(this.#drawn(use, from, to, way, way.lengthM * (1 + slack) + 2 * ends));
  }

  done(): Pick<Draft, 'wires' | 'elements' | 'takesLeastMm2' | 'takesMostMm2' | 'terminals'> {
    return {
      wires: this.#wires,
      elements: this.#elements,
      takesLeastMm2: this.#leastMm2,
      takesMostMm2: this.#mostMm2,
      terminals: this.#terminals,
    };
  }

  #wire(use: WireUse, from: WireEnd, to: WireEnd, way: Way, lengthM: number): void {
    const wire = this.#drawn(use, from, to, way, lengthM);
    this.#elements.push({
      name: wire.name,
      kind: 'wire',
      side: this.side,
      ohm: 0,
      wire: this.#wires.length,
      chosen: false,
    });
    this.#wires.push(wire);
  }

  #drawn(use: WireUse, from: WireEnd, to: WireEnd, way: Way, lengthM: number): DraftWire {
    const base = `${this.#name} ${use === 'reference' || use === 'bus' ? use : this.side}`;
    const before = this.#wires.filter((wire) => wire.name === base || wire.name.startsWith(`${base} `)).length;
    const name = before === 0 ? base : `${base} ${before + 1}`;
    return { name, use, from, to, way, lengthM, side: this.side, unfused: this.unfused, colour: this.#colour };
  }
}

function groundPlace(loom: Loom, name: string): string {
  return (loom.grounds[name] as Loom['grounds'][string]).place;
}

/** The battery at the start of a feed. */
function batteryOf(loom: Loom, from: LoomFrom): string | null {
  let here: LoomFrom | undefined = from;
  while (here !== undefined && !('battery' in here)) {
    here = 'box' in here ? loom.fuseBoxes[here.box]?.from : loom.controllers[here.controller]?.from;
  }
  return here?.battery ?? null;
}

function harmless(because: string): DraftProtection {
  return { kind: 'none', because, dangerous: false };
}

function sorted(map: Readonly<Record<string, unknown>>): string[] {
  return Object.keys(map).sort();
}
