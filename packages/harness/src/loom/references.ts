import { nearWords } from '@loomwright/worked/quantity';
import type { Problem } from '../file/problem.js';

/** Something wrong between the parts of a file: an unknown name, a gap, one thing twice. */
export interface Broken {
  readonly path: readonly PropertyKey[];
  readonly rule: Problem['rule'];
  readonly message: string;
  readonly likely: string | null;
}

type Fields = Readonly<Record<string, unknown>>;
type Path = readonly PropertyKey[];

/**
 * What the names of a loom file say of each other. It reads the raw data, so that a file with a bad quantity still has
 * all its names judged; what is no object, no list or no text is passed over here, the schema says so.
 */
export function brokenReferences(data: unknown): readonly Broken[] {
  const found: Broken[] = [];
  const file = fieldsOf(data);
  const supply = fieldsOf(file['supply']);
  const maps = {
    battery: fieldsOf(supply['batteries']),
    place: fieldsOf(file['places']),
    ground: fieldsOf(file['grounds']),
    'fuse box': fieldsOf(file['fuseBoxes']),
    controller: fieldsOf(file['controllers']),
    'relay type': fieldsOf(file['relayTypes']),
    item: fieldsOf(file['items']),
    state: fieldsOf(file['states']),
  };
  type Kind = keyof typeof maps;
  const known = new Map(Object.entries(maps).map(([kind, map]) => [kind, new Set(Object.keys(map))]));
  const add = (path: Path, message: string, likely: string | null = null, rule: Problem['rule'] = 'rule'): void => {
    found.push({ path, rule, message, likely });
  };
  const guess = (name: string, names: readonly string[]): string | null =>
    names.length > 2000 ? null : (nearWords(name, names)[0] ?? null);
  const refer = (kind: Kind, value: unknown, path: Path): value is string => {
    if (typeof value !== 'string') return false;
    const names = known.get(kind) as Set<string>;
    if (names.has(value)) return true;
    add(path, `'${value}' is no ${kind} of this file.`, guess(value, [...names]), 'choice');
    return false;
  };
  const referAll = (kind: Kind, value: unknown, path: Path): void => {
    if (Array.isArray(value)) value.forEach((one, i) => refer(kind, one, [...path, i]));
  };
  const used = new Map<string, { place: string; path: Path }>();
  const standsAt = (value: unknown, path: Path): void => {
    if (refer('place', value, path) && !used.has(value)) used.set(value, { place: value, path });
  };
  const taken = new Map<string, Path>();
  const take = (what: string, path: Path, twice: string): void => {
    const first = taken.get(what);
    if (first === undefined) taken.set(what, path);
    else add(path, `${twice} is taken by ${String(first[1] ?? first[0])} already.`);
  };
  const channelOf = (value: Fields, path: Path, side: 'high' | 'low', use: string): void => {
    const { controller, channel } = value;
    if (!refer('controller', controller, [...path, 'controller']) || typeof channel !== 'string') return;
    const channels = fieldsOf(fieldsOf(maps.controller[controller])['channels']);
    const one = own(channels, channel);
    if (one === undefined) {
      add(
        [...path, 'channel'],
        `'${channel}' is no channel of ${controller}.`,
        guess(channel, Object.keys(channels)),
        'choice',
      );
      return;
    }
    const given = fieldsOf(one)['side'];
    if ((given === 'high' || given === 'low') && given !== side) {
      add([...path, 'channel'], `${use} needs a channel of side ${side}, and ${channel} is of side ${given}.`);
    }
    take(`channel ${controller}\u0000${channel}`, [...path, 'channel'], `channel ${channel} of ${controller}`);
  };
  const inputOf = (value: Fields, path: Path): void => {
    const { controller, input } = value;
    if (!refer('controller', controller, [...path, 'controller']) || typeof input !== 'string') return;
    const inputs = fieldsOf(fieldsOf(maps.controller[controller])['inputs']);
    if (own(inputs, input) === undefined) {
      add([...path, 'input'], `'${input}' is no input of ${controller}.`, guess(input, Object.keys(inputs)), 'choice');
    } else take(`input ${controller}\u0000${input}`, [...path, 'input'], `input ${input} of ${controller}`);
  };
  const fedFrom = (value: unknown, path: Path, protection: unknown, protectionPath: Path): void => {
    const from = fieldsOf(value);
    const fused = protection !== undefined;
    if ('battery' in from) {
      refer('battery', from['battery'], [...path, 'battery']);
      if (!fused)
        add(protectionPath, 'is required where a battery feeds it: a fuse, or why there is none.', null, 'missing');
    } else if ('box' in from || 'controller' in from) {
      if (fused) {
        const what = 'box' in from ? 'the fuse at its position' : 'the channel';
        add(protectionPath, `cannot stand here: ${what} protects it.`);
      }
      const { box, position } = from;
      if (refer('fuse box', box, [...path, 'box']) && typeof position === 'number') {
        const { positions } = fieldsOf(maps['fuse box'][box]);
        if (typeof positions === 'number' && position > positions) {
          add([...path, 'position'], `${box} has ${positions} positions, got ${position}.`, null, 'range');
        } else take(`fuse ${box}\u0000${position}`, [...path, 'position'], `position ${position} of ${box}`);
      }
      if ('controller' in from) channelOf(from, path, 'high', 'a feed');
    }
  };
  const inLine = (value: unknown, path: Path): void => {
    const { at } = fieldsOf(value);
    if (at !== undefined) standsAt(at, [...path, 'at']);
  };

  for (const [name, value] of Object.entries(maps.battery)) {
    const path = ['supply', 'batteries', name];
    const { place, ground } = fieldsOf(value);
    standsAt(place, [...path, 'place']);
    refer('ground', ground, [...path, 'ground']);
  }
  if (Object.keys(maps.battery).length === 0 && 'batteries' in supply) {
    add(['supply', 'batteries'], 'needs at least one battery.', null, 'missing');
  }
  const alternator = fieldsOf(supply['alternator']);
  if ('alternator' in supply) {
    const path = ['supply', 'alternator'];
    standsAt(alternator['place'], [...path, 'place']);
    refer('battery', alternator['battery'], [...path, 'battery']);
    refer('ground', alternator['ground'], [...path, 'ground']);
    inLine(alternator['protection'], [...path, 'protection']);
  }
  if ('isolator' in supply) {
    const path = ['supply', 'isolator'];
    const isolator = fieldsOf(supply['isolator']);
    standsAt(isolator['place'], [...path, 'place']);
    const { between, protection } = isolator;
    referAll('battery', between, [...path, 'between']);
    if (Array.isArray(between) && between.length === 2 && between[0] === between[1]) {
      add([...path, 'between', 1], 'must be another battery than the first.');
    }
    if (Array.isArray(protection)) protection.forEach((one, i) => inLine(one, [...path, 'protection', i]));
  }
  const linked = new Set<unknown>();
  for (const [name, value] of Object.entries(fieldsOf(supply['links']))) {
    const path = ['supply', 'links', name];
    const { between, protection } = fieldsOf(value);
    referAll('battery', between, [...path, 'between']);
    if (Array.isArray(between)) for (const battery of between) linked.add(battery);
    if (Array.isArray(between) && between.length === 2 && between[0] === between[1]) {
      add([...path, 'between', 1], 'must be another battery than the first.');
    }
    inLine(protection, [...path, 'protection']);
  }
  for (const [name, value] of Object.entries(fieldsOf(file['routes']))) {
    const { from, to } = fieldsOf(value);
    refer('place', from, ['routes', name, 'from']);
    refer('place', to, ['routes', name, 'to']);
    if (from === to && typeof from === 'string') add(['routes', name, 'to'], 'must be another place than from.');
  }
  grounds(maps.ground, add, refer, standsAt);
  for (const [name, value] of Object.entries(maps['fuse box'])) {
    const path = ['fuseBoxes', name];
    const { place, from, protection } = fieldsOf(value);
    standsAt(place, [...path, 'place']);
    fedFrom(from, [...path, 'from'], protection, [...path, 'protection']);
    inLine(protection, [...path, 'protection']);
  }
  for (const [name, value] of Object.entries(maps.controller)) {
    const path = ['controllers', name];
    const { place, from, protection, ground, on } = fieldsOf(value);
    standsAt(place, [...path, 'place']);
    refer('ground', ground, [...path, 'ground']);
    referAll('state', on, [...path, 'on']);
    if (from !== undefined) fedFrom(from, [...path, 'from'], protection, [...path, 'protection']);
    else if (protection !== undefined) add([...path, 'protection'], 'cannot stand without from.');
    inLine(protection, [...path, 'protection']);
  }
  feedLoops(maps['fuse box'], maps.controller, add);
  for (const [name, value] of Object.entries(fieldsOf(file['buses']))) {
    const { members } = fieldsOf(value);
    if (!Array.isArray(members)) continue;
    members.forEach((member: unknown, i) => {
      if (typeof member !== 'string') return;
      if (own(maps.controller, member) === undefined && own(maps.item, member) === undefined) {
        const names = [...Object.keys(maps.controller), ...Object.keys(maps.item)];
        add(
          ['buses', name, 'members', i],
          `'${member}' is no controller or item of this file.`,
          guess(member, names),
          'choice',
        );
      }
    });
  }
  for (const [name, value] of Object.entries(maps.item)) {
    const path = ['items', name];
    const item = fieldsOf(value);
    const { kind, place } = item;
    standsAt(place, [...path, 'place']);
    if (own(maps.controller, name) !== undefined && kind !== 'load') {
      add(path, 'has the name of a controller; only its feed may be called so.');
    }
    const isSwitch = (value: unknown, at: Path): void => {
      if (refer('item', value, at) && fieldsOf(maps.item[value])['kind'] !== 'switch') {
        add(at, `'${value}' is an item, but no switch.`);
      }
    };
    if (kind === 'load') {
      referAll('state', item['on'], [...path, 'on']);
      fedFrom(item['from'], [...path, 'from'], item['protection'], [...path, 'protection']);
      inLine(item['protection'], [...path, 'protection']);
      if (item['switch'] !== undefined) isSwitch(item['switch'], [...path, 'switch']);
      if (item['relay'] !== undefined) {
        const relay = fieldsOf(item['relay']);
        refer('relay type', relay['type'], [...path, 'relay', 'type']);
        standsAt(relay['at'], [...path, 'relay', 'at']);
        const control = fieldsOf(relay['control']);
        if ('switch' in control) {
          isSwitch(control['switch'], [...path, 'relay', 'control', 'switch']);
          const by = own(maps.item, String(control['switch']));
          if (by !== undefined && fieldsOf(by)['kind'] === 'switch' && fieldsOf(by)['return'] === undefined) {
            add(
              [...path, 'relay', 'control', 'switch'],
              `'${String(control['switch'])}' needs a return to pull a relay to ground.`,
            );
          }
        } else if ('controller' in control)
          channelOf(control, [...path, 'relay', 'control'], 'low', 'the coil of a relay');
      }
      if ('relay' in item && 'controller' in fieldsOf(item['from'])) {
        add([...path, 'relay'], 'cannot stand behind a channel: the channel is the switch.');
      }
    }
    if (item['input'] !== undefined) inputOf(fieldsOf(item['input']), [...path, 'input']);
    const back = fieldsOf(item['return']);
    if ('ground' in back) refer('ground', back['ground'], [...path, 'return', 'ground']);
    if ('body' in back) {
      const at = back['body'];
      if (refer('ground', at, [...path, 'return', 'body']) && fieldsOf(maps.ground[at])['place'] !== place) {
        add([...path, 'return', 'body'], `'${at}' stands at another place: a case is bolted where it stands.`);
      }
    }
    if ('battery' in back) refer('battery', back['battery'], [...path, 'return', 'battery']);
    if ('controller' in back && refer('controller', back['controller'], [...path, 'return', 'controller'])) {
      if (kind !== 'sensor') {
        add([...path, 'return'], 'the signal ground of a controller is for sensors: a load there moves every reading.');
      }
    }
  }
  const names = new Map<string, Path>();
  for (const [kind, map] of [
    ['items', maps.item],
    ['controllers', maps.controller],
    ['fuseBoxes', maps['fuse box']],
  ] as const) {
    for (const name of Object.keys(map)) {
      const first = names.get(name);
      if (first === undefined) names.set(name, [kind, name]);
      else if (!(first[0] === 'items' && kind === 'controllers' && fieldsOf(map[name])['from'] === undefined)) {
        add([kind, name], `the name is taken in ${String(first[0])} already: labels would be the same.`);
      }
    }
  }
  for (const [name, value] of Object.entries(maps.state)) {
    const state = fieldsOf(value);
    const [volts, atRest] = [fieldsOf(state['volts']), fieldsOf(state['atRest'])];
    for (const battery of Object.keys(volts)) refer('battery', battery, ['states', name, 'volts', battery]);
    for (const battery of Object.keys(atRest)) refer('battery', battery, ['states', name, 'atRest', battery]);
    for (const battery of Object.keys(maps.battery)) {
      const atPosts = own(volts, battery) !== undefined;
      if (own(atRest, battery) !== undefined) {
        if (atPosts) add(['states', name, 'atRest', battery], 'has its volts at the posts already: one of them.');
      } else if (!atPosts) {
        add(['states', name, 'volts'], `needs the volts of ${battery}.`, null, 'missing');
      } else if (linked.has(battery)) {
        const why = 'a battery in parallel needs its volts in atRest: its resistance decides what it carries.';
        add(['states', name, 'volts', battery], why);
      }
    }
  }
  gaps(fieldsOf(file['routes']), maps.place, [...used.values()], add);
  return found;
}

type Add = (path: Path, message: string, likely?: string | null, rule?: Problem['rule']) => void;

/**
 * Ground points: each leads to one other, all to the same last one, by the body or by a strap; further ways may lead
 * anywhere.
 */
function grounds(
  map: Fields,
  add: Add,
  refer: (kind: 'ground' | 'battery', value: unknown, path: Path) => value is string,
  standsAt: (value: unknown, path: Path) => void,
): void {
  const roots: string[] = [];
  const next = new Map<string, string>();
  for (const [name, value] of Object.entries(map)) {
    const { place, to, body, strap, bonds } = fieldsOf(value);
    standsAt(place, ['grounds', name, 'place']);
    if (Array.isArray(bonds)) {
      bonds.forEach((bond: unknown, i) => {
        const path = ['grounds', name, 'bonds', i];
        const { to: other, battery } = fieldsOf(bond);
        if (other !== undefined) refer('ground', other, [...path, 'to']);
        if (other === name) add([...path, 'to'], 'must be another ground point than its own.');
        if (battery !== undefined) refer('battery', battery, [...path, 'battery']);
      });
    }
    const ways = [body, strap].filter((way) => way !== undefined).length;
    if (to === undefined) {
      roots.push(name);
      if (ways > 0) add(['grounds', name], 'has a body or a strap, and no `to` that says where it leads.');
      continue;
    }
    if (ways !== 1) add(['grounds', name], 'needs body or strap, one of them: its way to the next ground point.');
    if (refer('ground', to, ['grounds', name, 'to'])) next.set(name, to);
  }
  if (Object.keys(map).length > 0 && roots.length === 0) {
    add(['grounds'], 'needs one point without `to`: that from which all others are counted.');
  }
  roots.slice(1).forEach((name) => {
    add(
      ['grounds', name],
      `leads nowhere, and neither does ${String(roots[0])}: all ground points must lead to one.`,
      null,
      'missing',
    );
  });
  ring(next, (name) => {
    add(
      ['grounds', name, 'to'],
      'leads back to itself: the first ways of all points end at one; put the way that closes the loop under bonds.',
    );
  });
}

/** Boxes and controllers that feed each other in a ring. */
function feedLoops(boxes: Fields, controllers: Fields, add: Add): void {
  const next = new Map<string, string>();
  for (const [kind, map] of [
    ['fuseBoxes', boxes],
    ['controllers', controllers],
  ] as const) {
    for (const [name, value] of Object.entries(map)) {
      const from = fieldsOf(fieldsOf(value)['from']);
      if (typeof from['box'] === 'string') next.set(`${kind}\u0000${name}`, `fuseBoxes\u0000${from['box']}`);
      else if (typeof from['controller'] === 'string')
        next.set(`${kind}\u0000${name}`, `controllers\u0000${from['controller']}`);
    }
  }
  ring(next, (key) => {
    const [kind = '', name = ''] = key.split('\u0000');
    add([kind, name, 'from'], 'is fed from itself in a ring.');
  });
}

/** Calls for one member of each ring of a map in which each leads to at most one other. */
function ring(next: ReadonlyMap<string, string>, found: (name: string) => void): void {
  const done = new Map<string, number>();
  let walk = 0;
  for (const start of [...next.keys()].sort()) {
    walk++;
    let here: string | undefined = start;
    while (here !== undefined && !done.has(here)) {
      done.set(here, walk);
      here = next.get(here);
    }
    if (here !== undefined && done.get(here) === walk) found(here);
  }
}

/** Places that something stands at and no route leads to. */
function gaps(routes: Fields, places: Fields, used: readonly { place: string; path: Path }[], add: Add): void {
  const parent = new Map<string, string>(Object.keys(places).map((name) => [name, name]));
  const root = (name: string): string => {
    let here = name;
    for (;;) {
      const up = parent.get(here) ?? here;
      if (up === here) return here;
      parent.set(here, parent.get(up) ?? up);
      here = up;
    }
  };
  for (const value of Object.values(routes)) {
    const { from, to } = fieldsOf(value);
    if (typeof from !== 'string' || typeof to !== 'string' || !parent.has(from) || !parent.has(to)) continue;
    parent.set(root(from), root(to));
  }
  const groups = new Map<string, { place: string; path: Path }[]>();
  for (const one of used) groups.set(root(one.place), [...(groups.get(root(one.place)) ?? []), one]);
  const sorted = [...groups.values()].sort((a, b) => b.length - a.length);
  const main = sorted[0]?.[0]?.place ?? '';
  for (const group of sorted.slice(1)) {
    for (const { place, path } of group) {
      add(path, `there is a gap in the routes: none leads from '${place}' to '${main}'.`, null, 'rule');
    }
  }
}

function fieldsOf(value: unknown): Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : {};
}

function own(map: Fields, name: string): unknown {
  return Object.hasOwn(map, name) ? map[name] : undefined;
}
