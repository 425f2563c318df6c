import { InputError } from 'loomwright';
import { meterErrorA, meterErrorOhm, meterErrorV } from './meter.js';
import type { MeterReading } from './diagnosis-type.js';
import { type MeterNet, type NetPoint, type NetState, OPEN_OHM } from './net.js';
import { type FoundPoint, type MeterPoints, tidy, unknown } from './points.js';

const FN = 'diagnose';
/** Most readings that are taken at once. */
export const MOST_READINGS = 1000;

/** A reading with its names looked up. */
export interface Prepared {
  readonly index: number;
  readonly name: string;
  readonly unit: 'V' | 'A' | 'Ω';
  readonly state: string | null;
  readonly red: NetPoint | null;
  readonly black: NetPoint | null;
  /** The branch whose current is read. */
  readonly branch: number;
  /** Parts that are read in a row, dead, and the resistance of a load among them. */
  readonly chain: readonly number[];
  readonly loadOhm: number;
  /** The battery whose posts are read, or null. */
  readonly posts: string | null;
  readonly value: number;
  readonly open: boolean;
  /** One standard deviation of the meter. */
  readonly meterSigma: number;
  /** Ohms where there should be none between these points. */
  readonly apart: boolean;
}

/** What a reading should show, in V, A or Ω, with an extra resistance in one part. */
export function predict(
  net: MeterNet,
  one: Prepared,
  solved: NetState | null,
  faulty: number,
  extraOhm: number,
): number {
  if (one.unit === 'Ω') {
    return one.chain.reduce(
      (sum, p) => sum + (net.parts[p]?.coldOhm ?? 0) + (p === faulty ? extraOhm : 0),
      one.loadOhm,
    );
  }
  if (solved === null) return 0;
  if (one.unit === 'A') return Math.abs(solved.branchA[one.branch] as number);
  const at = (point: NetPoint | null): number => (point === null ? 0 : net.voltsAt(point, solved, faulty, extraOhm));
  return at(one.red) - at(one.black);
}

/** Looks up all readings. */
export function prepare(net: MeterNet, points: MeterPoints, readings: readonly MeterReading[]): readonly Prepared[] {
  if (!Array.isArray(readings)) {
    throw new InputError(FN, 'readings', readings === undefined ? 'missing' : 'list', readings, 'must be a list');
  }
  if (readings.length === 0 || readings.length > MOST_READINGS) {
    throw new InputError(FN, 'readings', 'list', readings, `must have 1 to ${MOST_READINGS} entries`);
  }
  return readings.map((given, index) => prepareOne(net, points, given as MeterReading, index));
}

function prepareOne(net: MeterNet, points: MeterPoints, given: MeterReading, index: number): Prepared {
  const field = `readings[${index}]`;
  if (typeof given !== 'object' || given === null) {
    throw new InputError(FN, field, 'object', given, 'must be an object with named fields');
  }
  for (const key of ['name', 'state', 'over', 'red', 'black', 'circuit'] as const) {
    const text: unknown = given[key];
    if (text !== undefined && (typeof text !== 'string' || text === '')) {
      throw new InputError(FN, `${field}.${key}`, 'text', text, 'must be a text');
    }
  }
  const { unit, value, open } = valueOf(field, given);
  const { plan } = net;
  const named = given.name === undefined ? null : readingNamed(net, `${field}.name`, given.name);
  if (named !== null && (given.over !== undefined || given.red !== undefined || given.black !== undefined)) {
    throw new InputError(FN, `${field}.name`, 'oneOfFields', given.name, 'stands alone, without over, red and black');
  }
  const wanted = named === null ? unit : (({ ohms: 'Ω', amps: 'A' } as const)[named.kind as 'ohms' | 'amps'] ?? 'V');
  if (wanted !== unit) {
    throw new InputError(
      FN,
      `${field}.reads${wanted === 'Ω' ? 'Ohm' : wanted}`,
      'missing',
      undefined,
      `is required for '${named?.name ?? ''}'`,
    );
  }
  const circuit = named?.circuit ?? given.circuit;
  if (named === null && circuit !== undefined) {
    const names = [...plan.circuits, ...plan.ways].map((one) => one.name);
    if (!names.includes(circuit)) throw unknown(FN, `${field}.circuit`, circuit, names, 'a circuit of the plan');
  }
  const state = unit === 'Ω' ? null : stateOf(net, field, named?.state ?? given.state, given.state);
  const base = { index, unit, value, open, state, branch: -1, chain: [], loadOhm: 0, posts: null, apart: false };
  const none = { red: null, black: null };
  const sigma = (error: number): number => error / Math.sqrt(3);
  const over = named === null ? given.over : (named.part ?? undefined);
  if (over !== undefined) {
    const p = partNamed(net, `${field}.over`, over, circuit);
    const name = named?.name ?? `over ${over}${state === null ? '' : `, ${state}`}`;
    const { branch } = net.parts[p] as (typeof net.parts)[number];
    if (unit === 'A') return { ...base, ...none, name, branch, meterSigma: sigma(meterErrorA(value)) };
    if (unit === 'Ω') return { ...base, ...none, name, chain: [p], meterSigma: sigma(meterErrorOhm(value)) };
    const [before, behind] = points.around(p);
    const flowA = net.healthy(state ?? '').branchA[branch] as number;
    const [red, black] = flowA < 0 ? [behind, before] : [before, behind];
    return { ...base, name, red, black, meterSigma: sigma(meterErrorV(value)) };
  }
  if (unit === 'A')
    throw new InputError(FN, `${field}.over`, 'missing', undefined, 'is required: the fuse in whose place it was read');
  if (named?.name.endsWith(': ohms, load in') === true) return loadIn(net, points, base, named.name, circuit ?? '');
  const [redName, blackName] = named?.probes ?? [given.red, given.black];
  if (redName === undefined)
    throw new InputError(FN, `${field}.red`, 'missing', undefined, 'is required, or over, or name');
  if (blackName === undefined) throw new InputError(FN, `${field}.black`, 'missing', undefined, 'is required');
  const red = points.find(`${field}.red`, redName, circuit);
  const black = points.find(`${field}.black`, blackName, circuit);
  const name = named?.name ?? `${tidy(redName)} to ${tidy(blackName)}${state === null ? '' : `, ${state}`}`;
  if (unit === 'V') {
    const battery = Object.keys(plan.loom.supply.batteries).find(
      (one) => tidy(redName) === `battery ${one} +` && tidy(blackName) === `battery ${one} −`,
    );
    const posts = battery ?? null;
    return { ...base, name, red: red.point, black: black.point, posts, meterSigma: sigma(meterErrorV(value)) };
  }
  const meterSigma = sigma(meterErrorOhm(value));
  if (named?.name.endsWith(': ohms, load out') === true) {
    return { ...base, ...none, name, apart: true, meterSigma };
  }
  return { ...base, ...none, name, ...between(net, points, field, red, black), meterSigma };
}

/** Parts of one path between two of its points, and the load where it lies between them. */
function between(
  net: MeterNet,
  points: MeterPoints,
  field: string,
  red: FoundPoint,
  black: FoundPoint,
): Pick<Prepared, 'chain' | 'loadOhm'> {
  for (const a of red.places) {
    const b = black.places.find(({ circuit }) => circuit === a.circuit);
    if (b === undefined) continue;
    const [low, high] = a.place < b.place || (a.place === b.place && !a.behindLoad) ? [a, b] : [b, a];
    const first = points.firstPart(a.circuit);
    const chain = Array.from({ length: high.place - low.place }, (_, i) => first + low.place + i);
    if (low.behindLoad === high.behindLoad) return { chain, loadOhm: 0 };
    const load = net.drafts[a.circuit]?.load;
    if (load?.kind === 'resistance') return { chain, loadOhm: load.resistanceOhm };
    throw new InputError(
      FN,
      `${field}.readsOhm`,
      'range',
      undefined,
      'cannot be judged through a load whose ohms the file does not give',
    );
  }
  throw new InputError(
    FN,
    `${field}.black`,
    'oneOf',
    black.point.name,
    `must be in one path with '${red.point.name}': ohms are judged along one circuit`,
  );
}

function loadIn(
  net: MeterNet,
  points: MeterPoints,
  base: Omit<Prepared, 'name' | 'red' | 'black' | 'meterSigma'>,
  name: string,
  circuit: string,
): Prepared {
  const i = net.plan.circuits.findIndex((one) => one.name === circuit);
  const load = net.drafts[i]?.load;
  if (load?.kind !== 'resistance') {
    throw new InputError(
      FN,
      `readings[${base.index}].readsOhm`,
      'range',
      base.value,
      'cannot be judged: the file does not give the ohms of this load',
    );
  }
  const first = points.firstPart(i);
  const chain = (net.plan.circuits[i]?.path ?? []).map((_, k) => first + k);
  const meterSigma = Math.hypot(meterErrorOhm(base.value), 0.1 * load.resistanceOhm) / Math.sqrt(3);
  return { ...base, name, red: null, black: null, chain, loadOhm: load.resistanceOhm, meterSigma };
}

function valueOf(field: string, given: MeterReading): { unit: 'V' | 'A' | 'Ω'; value: number; open: boolean } {
  const fields = (['readsV', 'readsA', 'readsOhm'] as const).filter((key) => given[key] !== undefined);
  const [key] = fields;
  if (key === undefined || fields.length > 1) {
    throw new InputError(
      FN,
      `${field}.${fields[1] ?? 'readsV'}`,
      key === undefined ? 'missing' : 'oneOfFields',
      given[fields[1] ?? 'readsV'],
      'is wanted once: one of readsV, readsA, readsOhm',
    );
  }
  const value: unknown = given[key];
  if (key === 'readsOhm' && value === 'open') return { unit: 'Ω', value: OPEN_OHM, open: true };
  if (typeof value !== 'number')
    throw new InputError(FN, `${field}.${key}`, 'number', value, 'must be a number, without its unit');
  if (!Number.isFinite(value)) throw new InputError(FN, `${field}.${key}`, 'finite', value, 'must be a finite number');
  const [low, high] = { readsV: [-1e4, 1e4], readsA: [0, 1e5], readsOhm: [0, 1e9] }[key] as [number, number];
  if (value < low || value > high)
    throw new InputError(FN, `${field}.${key}`, 'range', value, `must be ${low} to ${high}`);
  const unit = ({ readsV: 'V', readsA: 'A', readsOhm: 'Ω' } as const)[key];
  return { unit, value: unit === 'Ω' ? Math.min(value, OPEN_OHM) : value, open: unit === 'Ω' && value >= OPEN_OHM };
}

function readingNamed({ plan }: MeterNet, field: string, given: string) {
  const found = plan.readings.find(({ name }) => name === tidy(given));
  if (found !== undefined) return found;
  throw unknown(
    FN,
    field,
    given,
    plan.readings.map(({ name }) => name),
    'an expected reading of the plan',
  );
}

function stateOf(
  { plan }: MeterNet,
  field: string,
  state: string | null | undefined,
  given: string | undefined,
): string {
  const names = plan.states.map(({ name }) => name);
  if (state === undefined || state === null) {
    throw new InputError(FN, `${field}.state`, 'missing', undefined, `is required: one of ${names.join(', ')}`);
  }
  if (given !== undefined && given !== state) {
    throw new InputError(
      FN,
      `${field}.state`,
      'oneOf',
      given,
      `must be '${state}' for a reading of that name, or left out`,
    );
  }
  if (!names.includes(state)) throw unknown(FN, `${field}.state`, state, names, `one of ${names.join(', ')}`);
  return state;
}

function partNamed({ parts }: MeterNet, field: string, given: string, circuit: string | undefined): number {
  const name = tidy(given);
  const all = parts.flatMap((one, p) => (one.name === name ? [p] : []));
  if (all.length === 0)
    throw unknown(FN, field, given, [...new Set(parts.map((one) => one.name))], 'a part of the plan');
  const mine = circuit === undefined ? all : all.filter((p) => parts[p]?.circuit === circuit);
  const [p] = mine;
  if (p !== undefined && mine.length === 1) return p;
  const among = [...new Set(all.map((each) => `'${parts[each]?.circuit ?? ''}'`))].join(', ');
  throw new InputError(FN, field, 'oneOf', given, `is in several circuits: say circuit, one of ${among}`);
}
