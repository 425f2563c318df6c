import {
  type InputError,
  type Load,
  type LimitedBranch,
  M_PER_FOOT,
  type Network,
  type NetworkBranch,
  type NetworkDiode,
  type NetworkLoad,
  type NetworkSource,
  type NetworkSwitch,
  type SneakChange,
  type SneakRelay,
  type SneakState,
  type WatchedGround,
  filamentLamp,
  settleNetwork,
  type ResistanceBasis,
  wireResistance,
} from 'loomwright';
import { sizeOf } from '../conductor/basis.js';
import { entriesOf, unread } from '../entries.js';

// A network and what is asked of it, as people write them: entries parted by semicolons, each with its name first.

const NUMBER = String.raw`(\d*\.?\d+(?:e[+-]?\d+)?)`;
const FACTOR: Readonly<Record<string, number>> = { '': 1, k: 1e3, M: 1e6, m: 1e-3, µ: 1e-6, u: 1e-6 };

/** The quantity of a unit, `45 mΩ`, or null. */
function quantity(text: string, unit: string): number | null {
  const match = new RegExp(`^${NUMBER}\\s*([kMmµu]?)\\s*(?:${unit})$`).exec(text);
  return match === null ? null : Number(match[1]) * (FACTOR[match[2] ?? ''] as number);
}

const ohm = (text: string | undefined): number | null => (text === undefined ? null : quantity(text, 'Ω|ohm|R'));
const volt = (text: string | undefined): number | null => (text === undefined ? null : quantity(text, 'V'));

/** `45 mΩ`, `5 A`, `60 W`, `21 W lamp at 12 V`. */
function loadOf(text: string): Load | null {
  const resistanceOhm = ohm(text);
  if (resistanceOhm !== null) return { kind: 'resistance', resistanceOhm };
  const currentA = quantity(text, 'A');
  if (currentA !== null) return { kind: 'constant-current', currentA };
  const powerW = quantity(text, 'W');
  if (powerW !== null) return { kind: 'constant-power', powerW };
  const lamp = new RegExp(`^${NUMBER}\\s*W\\s+lamp\\s+at\\s+${NUMBER}\\s*V$`).exec(text);
  if (lamp === null) return null;
  return { kind: 'lamp', ratedPowerW: Number(lamp[1]), ratedV: Number(lamp[2]), law: filamentLamp };
}

type Kind = 'wire' | 'source' | 'load' | 'diode' | 'switch';

/** How an entry of each kind reads. */
function likeOf(kind: Kind): string {
  switch (kind) {
    case 'wire':
      return 'strap: wire engine > post, 0.5 mΩ';
    case 'source':
      return 'battery: source post > plus, 12.6 V, 6 mΩ';
    case 'load':
      return 'starter: load plus > engine, 45 mΩ';
    case 'diode':
      return 'blocker: diode rail > coil, 0.7 V, 20 mΩ';
    case 'switch':
      return 'key: switch plus > rail, closed, 5 mΩ';
  }
}

/** What wires are made of that are written by length and size. */
export interface WiresOfText {
  readonly resistanceBasis: ResistanceBasis;
  readonly conductorTempC: number;
}

/** Ohms of `5.5 m of 1.5`, or null where it does not read so. */
function wireOhm(fn: string, text: string, { resistanceBasis, conductorTempC }: WiresOfText): number | null {
  const [, amount, unit, size] = new RegExp(`^${NUMBER}\\s*(m|ft)\\s+of\\s+(.+)$`).exec(text) ?? [];
  if (amount === undefined) return null;
  const lengthM = Number(amount) * (unit === 'ft' ? M_PER_FOOT : 1);
  return wireResistance({ ...sizeOf(fn, size, resistanceBasis), resistanceBasis, lengthM, conductorTempC })
    .resistanceOhm;
}

/**
 * A network in one text: `strap: wire engine > post, 0.5 mΩ; battery: source post > plus, 12.6 V, 6 mΩ; starter: load
 * plus > engine, 45 mΩ`. A source is written from its negative end to its positive one. With `wires` a wire may also be
 * written as `5.5 m of 1.5`.
 */
export function networkText(fn: string, field: string, text: string, reference: string, wires?: WiresOfText): Network {
  const branches: NetworkBranch[] = [];
  const sources: NetworkSource[] = [];
  const loads: NetworkLoad[] = [];
  const diodes: NetworkDiode[] = [];
  const switches: NetworkSwitch[] = [];
  for (const entry of entriesOf(text)) {
    const match = /^([^:]+):\s*(wire|source|load|diode|switch)\s+([^>,]+)>([^>,]+)((?:,[^,]+)*)$/.exec(entry);
    if (match === null) throw unread(fn, field, entry, likeOf('wire'));
    const kind = match[2] as Kind;
    const ends = { name: part(match[1]), from: part(match[3]), to: part(match[4]) };
    const rest = (match[5] as string).split(',').slice(1).map(part);
    const bad = (): InputError => unread(fn, field, entry, likeOf(kind));
    const byLength = kind === 'wire' && wires !== undefined ? wireOhm(fn, rest[0] ?? '', wires) : null;
    const last = byLength ?? ohm(rest.at(-1));
    if (kind === 'load') {
      const load = rest.length === 1 ? loadOf(rest[0] as string) : null;
      if (load === null) throw bad();
      loads.push({ ...ends, load });
      continue;
    }
    if (last === null || rest.length !== (kind === 'wire' ? 1 : 2)) throw bad();
    if (kind === 'wire') branches.push({ ...ends, resistanceOhm: last });
    else if (kind === 'switch') {
      if (rest[0] !== 'closed' && rest[0] !== 'open') throw bad();
      switches.push({ ...ends, closed: rest[0] === 'closed', resistanceOhm: last });
    } else {
      const volts = volt(rest[0]);
      if (volts === null) throw bad();
      if (kind === 'source') sources.push({ ...ends, voltageV: volts, resistanceOhm: last });
      else diodes.push({ ...ends, forwardV: volts, resistanceOhm: last });
    }
  }
  return { reference, branches, sources, loads, diodes, switches, settle: settleNetwork };
}

const part = (text: string | undefined): string => (text ?? '').trim();

/** A network as such a text, for fields that begin with one. */
export function textOfNetwork({ branches, sources, loads = [], diodes = [], switches = [] }: Network): string {
  const number = (value: number): string => String(Number(value.toPrecision(12)));
  const ohms = (value: number): string => (value < 1 ? `${number(value * 1000)} mΩ` : `${number(value)} Ω`);
  const drawn = (load: Load): string => {
    if (load.kind === 'resistance') return ohms(load.resistanceOhm);
    if (load.kind === 'constant-current') return `${number(load.currentA)} A`;
    if (load.kind === 'constant-power') return `${number(load.powerW)} W`;
    if (load.kind === 'lamp') return `${number(load.ratedPowerW)} W lamp at ${number(load.ratedV)} V`;
    throw new Error(`no text for a load of kind ${load.kind}`);
  };
  return [
    ...sources.map((s) => `${s.name}: source ${s.from} > ${s.to}, ${number(s.voltageV)} V, ${ohms(s.resistanceOhm)}`),
    ...branches.map((b) => `${b.name}: wire ${b.from} > ${b.to}, ${ohms(b.resistanceOhm)}`),
    ...switches.map(
      (s) => `${s.name}: switch ${s.from} > ${s.to}, ${s.closed ? 'closed' : 'open'}, ${ohms(s.resistanceOhm)}`,
    ),
    ...diodes.map((d) => `${d.name}: diode ${d.from} > ${d.to}, ${number(d.forwardV)} V, ${ohms(d.resistanceOhm)}`),
    ...loads.map((l) => `${l.name}: load ${l.from} > ${l.to}, ${drawn(l.load)}`),
  ].join('; ');
}

/** `engine strap; body strap`: names. */
export function namesText(text: string): string[] {
  return entriesOf(text);
}

/** `coolant sensor: engine > dash, 20 mV`: what is watched, against which node, and what it bears. */
export function watchedText(fn: string, field: string, text: string): WatchedGround[] {
  return entriesOf(text).map((entry) => {
    const match = new RegExp(`^([^:]+):([^>,]+)>([^>,]+),\\s*${NUMBER}\\s*mV$`).exec(entry);
    if (match === null) throw unread(fn, field, entry, 'coolant sensor: engine > dash, 20 mV');
    return { name: part(match[1]), node: part(match[2]), against: part(match[3]), permittedMv: Number(match[4]) };
  });
}

/** `throttle cable: 1 A`: branches and the most that they bear. */
export function limitedText(fn: string, field: string, text: string): LimitedBranch[] {
  return entriesOf(text).map((entry) => {
    const match = /^([^:]+):(.+)$/.exec(entry);
    const limitA = match === null ? null : quantity(part(match[2]), 'A');
    if (match === null || limitA === null) throw unread(fn, field, entry, 'throttle cable: 1 A');
    return { branch: part(match[1]), limitA };
  });
}

const CHANGE = 'key off: open key + wipers';

/** What a clause names: `open key + wipers`. */
function clause(fn: string, field: string, entry: string, text: string): readonly [string, string[]] {
  const match = /^(open|closed|away|lost|dead|relays)\s+(.+)$/.exec(text);
  if (match === null) throw unread(fn, field, entry, CHANGE);
  return [match[1] as string, (match[2] as string).split('+').map(part)];
}

/** `starter fuse out: open starter fuse; tail ground lost: lost tail strap`: faults. */
export function changesText(fn: string, field: string, text: string): SneakChange[] {
  return entriesOf(text).map((entry) => {
    const match = /^([^:]+):(.+)$/.exec(entry);
    if (match === null) throw unread(fn, field, entry, CHANGE);
    const clauses = (match[2] as string).split(',').map((each) => clause(fn, field, entry, part(each)));
    if (clauses.some(([word]) => word === 'dead' || word === 'relays')) throw unread(fn, field, entry, CHANGE);
    return { name: part(match[1]), ...Object.fromEntries(clauses) };
  });
}

/**
 * `key off: open key, relays in, dead rail + ignition; cranking: closed starter contact, relays out`: states, with the
 * relays as they were before, and the nodes and loads that ought to be dead.
 */
export function statesText(fn: string, field: string, text: string, { loads = [] }: Network): SneakState[] {
  const isLoad = (name: string): boolean => loads.some((load) => load.name === name);
  const like = 'key off: open key, relays in, dead rail';
  return entriesOf(text).map((entry) => {
    const match = /^([^:]+):(.+)$/.exec(entry);
    if (match === null) throw unread(fn, field, entry, like);
    const clauses = (match[2] as string).split(',').map((each) => clause(fn, field, entry, part(each)));
    const of = (word: string): string[] => clauses.flatMap(([each, names]) => (each === word ? names : []));
    const [relays] = of('relays');
    if (relays !== 'in' && relays !== 'out') throw unread(fn, field, entry, like);
    return {
      name: part(match[1]),
      open: of('open'),
      closed: of('closed'),
      away: of('away'),
      lost: of('lost'),
      relaysBefore: relays === 'in' ? 'energised' : 'released',
      deadNodes: of('dead').filter((name) => !isLoad(name)),
      deadLoads: of('dead').filter(isLoad),
    };
  });
}

/** `main coil: in 7.5 V, holds 3 V, closes main contact + fan contact`: relays. */
export function relaysText(fn: string, field: string, text: string): SneakRelay[] {
  return entriesOf(text).map((entry) => {
    const match = new RegExp(`^([^:]+):\\s*in\\s+${NUMBER}\\s*V,\\s*holds\\s+${NUMBER}\\s*V((?:,[^,]+)*)$`).exec(entry);
    const like = 'main coil: in 7.5 V, holds 3 V, closes main contact';
    if (match === null) throw unread(fn, field, entry, like);
    const contacts = (match[4] as string)
      .split(',')
      .slice(1)
      .flatMap((each) => {
        const moved = /^(closes|opens)\s+(.+)$/.exec(part(each));
        if (moved === null) throw unread(fn, field, entry, like);
        const closedWhile = moved[1] === 'closes' ? ('energised' as const) : ('released' as const);
        return (moved[2] as string).split('+').map((name) => ({ switch: part(name), closedWhile }));
      });
    return { coil: part(match[1]), pickUpV: Number(match[2]), holdV: Number(match[3]), contacts };
  });
}
