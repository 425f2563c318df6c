import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needFlag, needInput, needList, needObject, needOwnName, needText } from '../error/guard.js';
import { type Edge, solveEdges } from './network-solve.js';

/** A sender or a fixed resistor between two nodes. The nodes `pin` and `ground` are the ends of the network. */
export interface NetworkPart {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** Ω with the tank empty and full, 0 to 1e8, straight in between; a fixed resistor has the same twice. */
  readonly emptyOhm: number;
  readonly fullOhm: number;
  /** Whether it sits in the tank. */
  readonly inTank: boolean;
}

export interface SenderNetworkInput {
  /** Senders and resistors, 1 to 40. */
  readonly parts: readonly NetworkPart[];
  /** Volts behind the bias resistor, above 0: a reference of 5 V, or the battery. */
  readonly biasV: number;
  /** Bias resistor (pull-up) in Ω, 0.001 to 1e8. */
  readonly biasOhm: number;
  /** Resistance of the input itself to ground in Ω, 0.001 to 1e8; null when it draws nothing worth counting. */
  readonly inputOhm: number | null;
  /** Highest volts that a chafed wire could meet, at least `biasV`: the battery's. */
  readonly faultV: number;
  /** Least distance from every healthy reading at which a fault is told, in V, at least 0. */
  readonly guardV: number;
  /** Most current in any part in the tank in A, above 0; null for no limit. */
  readonly tankMostA: number | null;
  /** Most heat in the tank in W that any fault may make, above 0; null for no limit. */
  readonly tankFaultMostW: number | null;
}

/** The network at one level. */
export interface NetworkReading {
  readonly levelFraction: number;
  /** Volts at the pin, the largest current in a part in the tank, and the heat of all of them. Null: see the code. */
  readonly pinV: number | null;
  readonly tankA: number | null;
  readonly tankW: number | null;
  /** Heat of the bias resistor. */
  readonly biasW: number | null;
  /**
   * `unlimited`: the battery meets ground through 0 Ω, and only a fuse ends it. `dead-short`: so it does in the ground
   * lead, outside the parts; tank and bias then have the most for any volts of that lead, ground to `faultV`.
   */
  readonly code: 'solved' | 'unlimited' | 'dead-short';
}

/** One fault at every level. */
export interface NetworkFault {
  readonly kind: 'part-open' | 'part-shorted' | 'lead-to-ground' | 'lead-to-battery' | 'pin-wire-open' | 'ground-open';
  /** Name of the part, or of the node that the lead belongs to. */
  readonly at: string;
  /** Eleven levels from empty to full. */
  readonly readings: readonly NetworkReading[];
  /** Worst current and heat in the tank over all levels, and the level of that heat; null where unlimited at one. */
  readonly tankA: number | null;
  readonly tankW: number | null;
  readonly tankWorstFraction: number;
  /** Heat of the bias resistor at its worst; null where unlimited. */
  readonly biasW: number | null;
  /** Whether the pin is sure to leave the healthy range by the guard: at every level, at some, at none. */
  readonly seen: 'always' | 'sometimes' | 'never';
}

export interface SenderNetworkResult {
  /** The healthy network at eleven levels from empty to full, all senders at the same level. */
  readonly readings: readonly NetworkReading[];
  readonly lowestPinV: number;
  readonly highestPinV: number;
  /** Which way the pin goes as the tank fills; `turns` means that one reading stands for two levels. */
  readonly direction: 'rises' | 'falls' | 'turns';
  /** Most current in a part in the tank, most heat in the tank, most heat of the bias resistor, nothing broken. */
  readonly mostTankA: number;
  readonly mostTankW: number;
  readonly biasMostW: number;
  readonly faults: readonly NetworkFault[];
  /** Name of the fault with the most heat in the tank, with its current and heat; null where that is unlimited. */
  readonly worstFault: string;
  readonly worstFaultA: number | null;
  readonly worstFaultW: number | null;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * What an input sees of senders and resistors in any arrangement, and what every broken, grounded or chafed lead does.
 *
 * Series, parallel, bridged: the network is solved as it is. Each fault is solved at every level, with the current and
 * the heat that it makes in the tank. The ground lead on the battery is a dead short: its own current is limited by its
 * fuse alone, and has no number here. For two floats at different levels use `saddleTank`.
 *
 * $$\sum_j \frac{V_i - V_j}{R_{ij}} = 0 \qquad P = \sum_\mathrm{tank} I^2 R$$
 *
 * @param input parts with their nodes, bias, limits
 * @returns volts, current and heat at eleven levels, every fault with its worst heat in the tank, checks
 * @throws InputError when a field is missing or out of range, or no path leads from pin to ground
 * @source circuit-theory (node equations; a part of 0 Ω counts as a tenth of a milliohm; the worst of 41 levels); common-practice (20 mA in a fuel tank)
 * @example senderNetwork({ parts: [{ name: 'sender', from: 'pin', to: 'ground', emptyOhm: 350, fullOhm: 10, inTank: true }], biasV: 5, biasOhm: 270, inputOhm: null, faultV: 14.4, guardV: 0.1, tankMostA: 0.02, tankFaultMostW: null }).worstFaultW //=> 20.736
 */
export function senderNetwork(input: SenderNetworkInput): SenderNetworkResult {
  guard(input);
  const { parts, guardV } = input;
  const levels = Array.from({ length: 41 }, (_, i) => i / 40);
  const healthy = levels.map((level) => readingAt(input, level, null)) as readonly Healthy[];
  const pins = healthy.map((reading) => reading.pinV);
  const lowestPinV = Math.min(...pins);
  const highestPinV = Math.max(...pins);
  const steps = pins.slice(1).map((v, i) => v - (pins[i] as number));
  const direction = steps.every((step) => step > 0) ? 'rises' : steps.every((step) => step < 0) ? 'falls' : 'turns';
  const nodes = [...new Set(parts.flatMap(({ from, to }) => [from, to]))];
  const causes: readonly Cause[] = [
    { kind: 'pin-wire-open', at: 'pin' },
    { kind: 'ground-open', at: 'ground' },
    ...parts.flatMap(({ name }): Cause[] => [
      { kind: 'part-open', at: name },
      { kind: 'part-shorted', at: name },
    ]),
    ...nodes.flatMap((at): Cause[] => [
      ...(at === 'ground' ? [] : [{ kind: 'lead-to-ground', at } as const]),
      { kind: 'lead-to-battery', at },
    ]),
  ];
  // A dead short may leave the pin where it was, and does once the fuse is gone.
  const told = ({ pinV: v, code }: NetworkReading): boolean =>
    code !== 'dead-short' && (v === null || v < lowestPinV - guardV || v > highestPinV + guardV);
  const faults = causes.map((cause): NetworkFault => {
    const all = levels.map((level) => readingAt(input, level, cause));
    const worst = all.reduce((a, b) => ((b.tankW ?? Infinity) > (a.tankW ?? Infinity) ? b : a));
    const seen = all.filter(told).length;
    return {
      ...cause,
      readings: all.filter((_, i) => i % 4 === 0),
      tankA: mostOf(all.map((reading) => reading.tankA)),
      tankW: worst.tankW,
      tankWorstFraction: worst.levelFraction,
      biasW: mostOf(all.map((reading) => reading.biasW)),
      seen: seen === all.length ? 'always' : seen > 0 ? 'sometimes' : 'never',
    };
  });
  const worst = faults.reduce((a, b) => ((b.tankW ?? Infinity) > (a.tankW ?? Infinity) ? b : a));
  const mostTankA = Math.max(...healthy.map((reading) => reading.tankA));
  const checks: Check[] = [];
  const given = { sense: 'atMost', source: 'given-by-caller', sourceStatus: 'derived' } as const;
  if (input.tankMostA !== null) {
    const limit = { ...given, limit: input.tankMostA, unit: 'A' };
    checks.push(makeCheck({ ...limit, name: 'current in the tank', value: mostTankA }));
  }
  if (input.tankFaultMostW !== null) {
    const limit = { ...given, name: 'heat in the tank, worst fault', limit: input.tankFaultMostW, unit: 'W' };
    checks.push(makeCheck({ ...limit, value: worst.tankW, because: `${worst.kind} at ${worst.at}` }));
  }
  return {
    readings: healthy.filter((_, i) => i % 4 === 0),
    lowestPinV,
    highestPinV,
    direction,
    mostTankA,
    mostTankW: Math.max(...healthy.map((reading) => reading.tankW)),
    biasMostW: Math.max(...healthy.map((reading) => reading.biasW)),
    faults,
    worstFault: `${worst.kind} at ${worst.at}`,
    worstFaultA: worst.tankA,
    worstFaultW: worst.tankW,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

type Cause = Pick<NetworkFault, 'kind' | 'at'>;

/** Without a fault nothing but 0 V and the bias resistor are joined: there is always an answer. */
interface Healthy extends NetworkReading {
  readonly pinV: number;
  readonly tankA: number;
  readonly tankW: number;
  readonly biasW: number;
}

const mostOf = (values: readonly (number | null)[]): number | null =>
  values.reduce<number | null>((most, value) => (most === null || value === null ? null : Math.max(most, value)), 0);

// The unit's own ends of the two leads, and what feeds them. Nobody types their first character, so no part has them.
const UNIT_PIN = '\u0000pin of the unit';
const UNIT_GROUND = '\u0000ground of the unit';
const BIAS = '\u0000bias of the unit';
const BATTERY = '\u0000battery of the fault';

function readingAt(input: SenderNetworkInput, levelFraction: number, cause: Cause | null): NetworkReading {
  const { parts, biasV, biasOhm, inputOhm, faultV } = input;
  const ohms = parts.map(({ emptyOhm, fullOhm }) => emptyOhm + (fullOhm - emptyOhm) * levelFraction);
  const joins: (readonly [string, string])[] = [];
  const edges: (Edge & { readonly part?: number })[] = [];
  parts.forEach(({ name, from, to }, part) => {
    if (cause?.at !== name || !cause.kind.startsWith('part')) edges.push({ from, to, ohm: ohms[part] as number, part });
    else if (cause.kind === 'part-shorted') joins.push([from, to]);
  });
  if (cause?.kind !== 'pin-wire-open') joins.push(['pin', UNIT_PIN]);
  const deadShort = cause?.kind === 'lead-to-battery' && cause.at === 'ground';
  if (cause?.kind !== 'ground-open' && !deadShort) joins.push(['ground', UNIT_GROUND]);
  if (cause?.kind === 'lead-to-ground') joins.push([cause.at, UNIT_GROUND]);
  if (cause?.kind === 'lead-to-battery') joins.push([cause.at, BATTERY]);
  if (inputOhm !== null) edges.push({ from: UNIT_PIN, to: UNIT_GROUND, ohm: inputOhm });
  const bias = edges.push({ from: BIAS, to: UNIT_PIN, ohm: biasOhm }) - 1;
  const held = new Map([
    [UNIT_GROUND, 0],
    [BIAS, biasV],
    [BATTERY, faultV],
  ]);
  const solved = solveEdges(edges, held, joins);
  if (solved === null) {
    return { levelFraction, pinV: null, tankA: null, tankW: null, biasW: null, code: 'unlimited' };
  }
  let tankA = 0;
  let tankW = 0;
  edges.forEach(({ part }, i) => {
    if (part === undefined || parts[part]?.inTank !== true) return;
    const a = Math.abs(solved.currentA[i] as number);
    tankA = Math.max(tankA, a);
    tankW += a * a * (ohms[part] as number);
  });
  const biasW = (solved.currentA[bias] as number) ** 2 * biasOhm;
  if (deadShort) {
    // The lead lies between ground and the battery. What grows with the square of its volts is most at one of the two.
    const sound = readingAt(input, levelFraction, null) as Healthy;
    return {
      levelFraction,
      pinV: null,
      tankA: Math.max(tankA, sound.tankA),
      tankW: Math.max(tankW, sound.tankW),
      biasW: Math.max(biasW, sound.biasW),
      code: 'dead-short',
    };
  }
  return { levelFraction, pinV: solved.volts.get(UNIT_PIN) as number, tankA, tankW, biasW, code: 'solved' };
}

function guard(input: SenderNetworkInput): void {
  const fn = 'senderNetwork';
  needInput(fn, input);
  const { parts } = input;
  needList(fn, 'parts', parts, 1);
  needBetween(fn, 'parts.length', parts.length, 1, 40);
  const names = new Set<string>();
  parts.forEach((part, i) => {
    const at = `parts[${i}]`;
    needObject(fn, at, part);
    needOwnName(fn, `${at}.name`, part.name, names);
    for (const field of ['from', 'to'] as const) needText(fn, `${at}.${field}`, part[field]);
    if (part.from === part.to) throw new InputError(fn, `${at}.to`, 'order', part.to, 'must be another node than from');
    needBetween(fn, `${at}.emptyOhm`, part.emptyOhm, 0, 1e8);
    needBetween(fn, `${at}.fullOhm`, part.fullOhm, 0, 1e8);
    needFlag(fn, `${at}.inTank`, part.inTank);
  });
  needMoreThan(fn, 'biasV', input.biasV);
  needBetween(fn, 'biasOhm', input.biasOhm, 0.001, 1e8);
  if (input.inputOhm !== null) needBetween(fn, 'inputOhm', input.inputOhm, 0.001, 1e8);
  needNoLessThan(fn, 'faultV', input.faultV, input.biasV);
  needNoLessThan(fn, 'guardV', input.guardV);
  if (input.tankMostA !== null) needMoreThan(fn, 'tankMostA', input.tankMostA);
  if (input.tankFaultMostW !== null) needMoreThan(fn, 'tankFaultMostW', input.tankFaultMostW);
  const edges = parts.map(({ from, to }) => ({ from, to, ohm: 1 }));
  if (solveEdges(edges, new Map([['pin', 1]]))?.volts.has('ground') !== true) {
    throw new InputError(fn, 'parts', 'list', parts, 'must lead from pin to ground');
  }
}
