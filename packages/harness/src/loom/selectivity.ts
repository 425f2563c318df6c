import { type Check, checkFuse, fuseOpeningTime, makeCheck, type SelectivityVerdict } from 'loomwright';
import { familyOf } from '../schema/tables.js';
import type { Finding, LoomPlan } from './plan-type.js';
import type { Loom, LoomFrom } from './schema.js';

/** What opens: a fuse of the plan, or an output of a controller by its setting. */
interface Device {
  readonly name: string;
  readonly kind: 'fuse' | 'channel';
  /** Rating of a fuse, setting of a channel, in A. */
  readonly ratingA: number;
  /** Family of a fuse. */
  readonly family: string;
  /** Delay of a channel in s. */
  readonly delayS: number;
  /** Melting I²t of a fuse from its own data, in A²s. */
  readonly meltingI2tA2s: number | null;
}

/** Two devices in a row, judged. */
export interface Pair {
  readonly down: Device;
  readonly up: Device;
  readonly verdict: SelectivityVerdict;
  /** Largest current in A of a short right behind the one downstream. */
  readonly mostA: number;
  readonly check: Check;
}

/**
 * Every fuse and output that stands behind another, with what is known of which opens first. The short is taken right
 * behind the one downstream: the highest volts of any state, the battery and the cold feeders alone in its way.
 */
export function pairsOf(plan: LoomPlan): readonly Pair[] {
  const { loom } = plan;
  const devices = devicesOf(plan);
  const feeders = new Map(plan.circuits.map((circuit) => [circuit.name, circuit]));
  const pairs: Pair[] = [];
  const add = (downName: string, owner: string, from: LoomFrom | undefined): void => {
    const down = devices.get(downName);
    const up = from === undefined ? undefined : devices.get(upName(owner, from));
    if (down === undefined || up === undefined) return;
    const mostA = shortA(loom, owner, feeders);
    if (mostA !== null) pairs.push({ down, up, mostA, ...judge(down, up, mostA) });
  };
  for (const { name, box } of plan.fuses) if (box !== null) add(name, box, loom.fuseBoxes[box]?.from);
  for (const { name, controller } of plan.channels) add(name, controller, loom.controllers[controller]?.from);
  return pairs;
}

/** Where the one nearer to the battery may open first. */
export function pairFindings(pairs: readonly Pair[]): readonly Finding[] {
  return pairs
    .filter(({ verdict }) => verdict === 'not-kept')
    .map(({ down, up, mostA, check }) => ({
      severity: 'warn',
      rule: 'selectivity',
      about: { kind: down.kind, name: down.name },
      message: `${down.name}: in a short behind it, of up to ${rounded(mostA)} A, ${up.name} may open with it or before it (${check.because ?? ''}), and all behind that goes dead.`,
      marginFraction: check.marginFraction,
      check,
      cure: 'Take a larger rating or a slower family nearer to the battery, or a smaller or quicker one here.',
    }));
}

/** The pairs of which nothing tells, in sentences: one for each device upstream. */
export function openPairs(pairs: readonly Pair[]): readonly string[] {
  const open = new Map<string, Pair[]>();
  for (const pair of pairs) {
    if (pair.verdict !== 'not-printed') continue;
    const key = `${pair.up.name}\u0000${pair.down.kind}`;
    open.set(key, [...(open.get(key) ?? []), pair]);
  }
  return [...open.values()].map((list) => {
    const [{ up, down, check }] = list as [Pair, ...Pair[]];
    const names = list.map((pair) => pair.down.name).join(', ');
    return down.kind === 'channel'
      ? `Which opens first in a short, ${up.name} or an output behind it (${names}): the file does not say how soon these open in a short.`
      : `Which opens first above ${rounded(check.value ?? 0)} A, ${up.name} or a fuse behind it (${names}): no band is printed there, and no melting I²t of ${up.name} is given (melting).`;
  });
}

function rounded(value: number): string {
  return String(Number(value.toPrecision(3)));
}

function devicesOf({ loom, fuses, channels }: LoomPlan): ReadonlyMap<string, Device> {
  const melting = new Map<string, number>();
  for (const [name, { protection }] of [...Object.entries(loom.fuseBoxes), ...Object.entries(loom.controllers)]) {
    if (protection === undefined || 'none' in protection || protection.melting === undefined) continue;
    melting.set(`fuse of feeder ${name}`, protection.melting);
  }
  const list: Device[] = [];
  for (const { name, family, ratingA } of fuses) {
    if (ratingA === null) continue;
    list.push({ name, kind: 'fuse', ratingA, family, delayS: 0, meltingI2tA2s: melting.get(name) ?? null });
  }
  for (const { name, controller, channel, settingA } of channels) {
    const given = loom.controllers[controller]?.channels[channel];
    // A low-side output pulls a coil to ground: it is in no row with a fuse.
    if (settingA === null || given === undefined || given.side === 'low') continue;
    list.push({ name, kind: 'channel', ratingA: settingA, family: '', delayS: given.tripDelay, meltingI2tA2s: null });
  }
  return new Map(list.map((device) => [device.name, device]));
}

/** The device that protects the feeder of a box or controller. */
function upName(owner: string, from: LoomFrom): string {
  if ('battery' in from) return `fuse of feeder ${owner}`;
  return 'box' in from ? `${from.box} ${from.position}` : `${from.controller} ${from.channel}`;
}

/** Largest current of a short at a box or controller, or null where no battery feeds it. */
function shortA(loom: Loom, owner: string, feeders: ReadonlyMap<string, LoomPlan['circuits'][number]>): number | null {
  let ohm = 0;
  let here: string | undefined = owner;
  while (here !== undefined) {
    for (const one of feeders.get(`feeder ${here}`)?.path ?? []) ohm += one.coldOhm ?? 0;
    const from: LoomFrom | undefined = loom.fuseBoxes[here]?.from ?? loom.controllers[here]?.from;
    if (from === undefined) return null;
    if (!('battery' in from)) {
      here = 'box' in from ? from.box : from.controller;
      continue;
    }
    const { battery } = from;
    const volts = Math.max(...Object.values(loom.states).map((state) => state.volts[battery] ?? 0));
    ohm += loom.supply.batteries[battery]?.resistance ?? 0;
    return volts > 0 ? volts / Math.max(ohm, 1e-6) : null;
  }
  return null;
}

function judge(down: Device, up: Device, mostA: number): Pick<Pair, 'verdict' | 'check'> {
  if (down.kind === 'fuse' && up.kind === 'fuse') return fuses(down, up, mostA);
  if (up.kind === 'channel') return behindChannel(down, up);
  // An output in front of which a fuse stands: by its delay it opens at every current above its setting.
  const at = (currentA: number) => fuseOpeningTime({ family: familyOf(up.family), ratingA: up.ratingA, currentA });
  const { shortestS } = at(mostA);
  const carries = at(down.ratingA).shortestBasis === 'bound';
  const check = makeCheck({
    ...heading(up),
    value: down.delayS,
    limit: carries ? shortestS : null,
    unit: 's',
    sense: 'atMost',
    okWithoutNumber: false,
    because: carries
      ? `in a short of ${rounded(mostA)} A`
      : `${up.name} may open at ${down.ratingA} A, which the output carries for good`,
  });
  return { verdict: check.ok ? 'kept' : carries ? 'not-printed' : 'not-kept', check };
}

function heading(up: Device) {
  const { source, status } =
    up.kind === 'fuse' ? familyOf(up.family) : ({ source: 'given-by-caller', status: 'derived' } as const);
  return { name: `opens before ${up.name}`, source, sourceStatus: status };
}

/** Of the answer of a whole fuse check only which of the two opens first is read: the rest is judged elsewhere. */
function fuses(down: Device, up: Device, mostA: number): Pick<Pair, 'verdict' | 'check'> {
  const { selectivity, checks } = checkFuse({
    family: familyOf(down.family),
    ratingA: down.ratingA,
    continuousA: 1e-3,
    continuousFraction: 1,
    ambientTempC: 20,
    ambientFactor: 1,
    ampacityA: down.ratingA,
    overloadRule: 'rating-at-most-ampacity',
    farShortA: mostA,
    clearWithinS: 1,
    prospectiveA: mostA,
    upstream: {
      name: up.name,
      family: familyOf(up.family),
      ratingA: up.ratingA,
      ...(up.meltingI2tA2s === null ? {} : { meltingI2tA2s: up.meltingI2tA2s }),
    },
  });
  const check = checks.find(({ name }) => name === `opens before ${up.name}`);
  if (check === undefined || selectivity === null) throw new Error(down.name);
  return { verdict: selectivity, check };
}

/** Behind an output that opens a delay after its setting is passed: what stands downstream must be quicker there. */
function behindChannel(down: Device, up: Device): Pick<Pair, 'verdict' | 'check'> {
  const longestS =
    down.kind === 'channel'
      ? down.ratingA < up.ratingA
        ? down.delayS
        : null
      : fuseOpeningTime({ family: familyOf(down.family), ratingA: down.ratingA, currentA: up.ratingA }).longestS;
  const check = makeCheck({
    ...heading(up),
    value: longestS,
    limit: up.delayS,
    unit: 's',
    sense: 'atMost',
    okWithoutNumber: false,
    because:
      longestS === null
        ? `at the ${up.ratingA} A that ${up.name} is set to, ${down.name} may never open`
        : `just above the ${up.ratingA} A that ${up.name} is set to`,
  });
  return { verdict: check.ok ? 'kept' : 'not-kept', check };
}
