import { type Check, makeCheck } from '../check/index.js';
import { needAbove, needAtLeast, needBetween, needInteger, needList, needOneOf, needText } from '../error/guard.js';
import { needMoreThan } from '../error/bounded.js';
import type { SourceStatus } from '../source/index.js';
import { type FuseFamily, fusePulses } from '../table/index.js';
import { figure } from './figure.js';
import { bandAt } from './fuse-band.js';
import {
  ambientShare,
  conventionalMultiple,
  limitsOf,
  meltingI2tOf,
  needFamily,
  openingMultiple,
} from './fuse-data.js';
import { ADIABATIC_S, type FusedWire, needFusedWire, steadyTempC } from './fused-wire.js';
import { type LetThrough, letThroughOf, strain } from './let-through.js';
import { OVERLOAD_RULES, overloadChecks, overloadIsMet, type OverloadRule } from './overload.js';
import { type PulseI2tInput, pulseOf } from './pulse-i2t.js';
import {
  needUpstream,
  type Selectivity,
  selectivityOf,
  type SelectivityVerdict,
  type UpstreamFuse,
} from './selectivity.js';

export type { SelectivityVerdict, UpstreamFuse } from './selectivity.js';

/** A pulse that the fuse must bear: an inrush, a start. */
export interface FusePulse extends PulseI2tInput {
  /** What it is: 'lamp', 'fan start'. */
  readonly name: string;
  /** How often in the fuse's life, at least 1. */
  readonly count: number;
  /** Time in s from one to the next, at least 0: the shares of the guides hold from 10 s on. */
  readonly restS: number;
}

/** A circuit that a fuse protects. What is left out is not judged, and the answer says so. */
export interface FuseCircuit {
  readonly family: FuseFamily;
  /** Continuous current in A, r.m.s., above 0. */
  readonly continuousA: number;
  /** Share of the rating that a continuous current may use at 25 °C, above 0 to 1; 0.75 in maker guides. */
  readonly continuousFraction: number;
  /** Temperature around the fuse in °C, −40 to the end of the family's re-rating. */
  readonly ambientTempC: number;
  /** Share of the rating left at that temperature, from the fuse's own data; required where the family has no curve. */
  readonly ambientFactor?: number;
  /** Current in A that the wire bears where it lies, above 0. */
  readonly ampacityA: number;
  /** How the rating is held against the ampacity. */
  readonly overloadRule: OverloadRule;
  /** Current in A of a short at the far end of the wire: hot, with the largest resistance, at low battery. Above 0. */
  readonly farShortA: number;
  /** Time in s within which that short must be cleared, above 0. */
  readonly clearWithinS: number;
  /** Pulses that must not open the fuse. */
  readonly pulses?: readonly FusePulse[];
  /** What the wire bears for a while. */
  readonly wire?: FusedWire;
  /** Largest current in A of a short right behind the fuse, above 0. */
  readonly prospectiveA?: number;
  /** What the fuse can interrupt, in A, as printed on it; the family's figure where left out. */
  readonly interruptA?: number;
  /** Highest voltage in V of the system, above 0. */
  readonly systemV?: number;
  /** The next fuse towards the battery. */
  readonly upstream?: UpstreamFuse;
}

/** One named rule of overload, met or not. */
export interface OverloadVerdict {
  readonly rule: OverloadRule;
  readonly ok: boolean;
}

/** One rating, judged. */
export interface JudgedFuse {
  readonly ratingA: number;
  /** Every limit with its margin. */
  readonly checks: readonly Check[];
  /** Share of its rating that the fuse keeps in its surroundings. */
  readonly ambientFactor: number;
  /** The short at the far end as a multiple of the rating. */
  readonly farShortRatio: number;
  /** Every named rule of overload, chosen or not. */
  readonly overloadRules: readonly OverloadVerdict[];
  /** Largest current in A that may flow for good without opening the fuse. */
  readonly mayNeverOpenA: number;
  /** Steady temperature of the wire at that current in °C; null beyond 400 °C or where no wire is given. */
  readonly mayNeverOpenTempC: number | null;
  /** The wire against the longest opening at each current; empty where no wire is given. */
  readonly letThrough: readonly LetThrough[];
  /** Largest current in A up to which the bands keep the fuse upstream whole; null where none is given. */
  readonly selectiveUpToA: number | null;
  /** Whether it stays whole at every current that can flow; null where none is given. */
  readonly selectivity: SelectivityVerdict | null;
  /** What was not judged because nothing was said of it. */
  readonly notJudged: readonly string[];
}

/** Throws unless the circuit is whole; gives the share of the rating that its surroundings leave. */
export function needCircuit(fn: string, circuit: FuseCircuit): number {
  const { family, continuousA, continuousFraction, ambientTempC, ampacityA, overloadRule, farShortA, clearWithinS } =
    circuit;
  needFamily(fn, family);
  needAbove(fn, 'continuousA', continuousA);
  needAbove(fn, 'continuousFraction', continuousFraction);
  needBetween(fn, 'continuousFraction', continuousFraction, 0, 1);
  needBetween(fn, 'ambientTempC', ambientTempC, -40, 200);
  needAbove(fn, 'ampacityA', ampacityA);
  needOneOf(fn, 'overloadRule', overloadRule, OVERLOAD_RULES);
  needAbove(fn, 'farShortA', farShortA);
  needAbove(fn, 'clearWithinS', clearWithinS);
  const { pulses, wire, prospectiveA, interruptA, systemV, upstream } = circuit;
  if (pulses !== undefined) {
    needList(fn, 'pulses', pulses);
    pulses.forEach((pulse, i) => {
      needText(fn, `pulses[${i}].name`, pulse.name);
      needInteger(fn, `pulses[${i}].count`, pulse.count, 1);
      needAtLeast(fn, `pulses[${i}].restS`, pulse.restS);
    });
  }
  if (wire !== undefined) needFusedWire(fn, wire);
  if (prospectiveA !== undefined) needMoreThan(fn, 'prospectiveA', prospectiveA);
  if (interruptA !== undefined) needMoreThan(fn, 'interruptA', interruptA);
  if (systemV !== undefined) needMoreThan(fn, 'systemV', systemV);
  if (upstream !== undefined) needUpstream(fn, upstream);
  return ambientShare(fn, family, ambientTempC, circuit.ambientFactor);
}

/** Everything about one rating: first what the load asks of the fuse, then what the wire asks, then the rest. */
export function judgeFuse(fn: string, circuit: FuseCircuit, ratingA: number, share: number): JudgedFuse {
  const { family, ampacityA, overloadRule, farShortA, wire, upstream } = circuit;
  const checks = [...loadChecks(fn, circuit, ratingA, share)];
  checks.push(...overloadChecks(overloadRule, family, ratingA, ampacityA));
  const mayNeverOpenA = conventionalMultiple(family, ratingA) * ratingA;
  let mayNeverOpenTempC: number | null = null;
  let letThrough: readonly LetThrough[] = [];
  if (wire !== undefined) {
    mayNeverOpenTempC = steadyTempC(wire, ampacityA, mayNeverOpenA);
    letThrough = letThroughOf(family, ratingA, wire, ampacityA, circuit.prospectiveA ?? null);
    checks.push(...wireChecks(circuit, ratingA, wire, mayNeverOpenTempC, letThrough));
  }
  checks.push(farShortCheck(circuit, ratingA));
  const selective =
    upstream === undefined ? null : selectivityOf(family, ratingA, upstream, circuit.prospectiveA ?? farShortA);
  checks.push(...supplyChecks(circuit, selective));
  return {
    ratingA,
    checks,
    ambientFactor: share,
    farShortRatio: farShortA / ratingA,
    overloadRules: OVERLOAD_RULES.map((rule) => ({
      rule,
      ok: overloadIsMet(rule, family, ratingA, ampacityA),
    })),
    mayNeverOpenA,
    mayNeverOpenTempC,
    letThrough,
    selectiveUpToA: selective?.upToA ?? null,
    selectivity: selective?.verdict ?? null,
    notJudged: notJudged(circuit),
  };
}

function notJudged({ pulses, wire, prospectiveA, systemV, upstream }: FuseCircuit): string[] {
  const list: string[] = [];
  if (pulses === undefined) list.push('inrush and pulses');
  if (wire === undefined) list.push('the wire against the longest opening');
  if (prospectiveA === undefined) list.push('interrupting rating');
  if (systemV === undefined) list.push('rated voltage');
  if (upstream === undefined) list.push('selectivity upstream');
  return list;
}

/** Whether a rating carries the load: the verdict of its checks, without them where none has a pulse. */
export function carries(fn: string, circuit: FuseCircuit, ratingA: number, share: number): boolean {
  if (!(circuit.continuousA <= ratingA * share * circuit.continuousFraction)) return false;
  return (circuit.pulses ?? []).every((pulse, i) => pulseCheck(fn, circuit.family, ratingA, pulse, i).ok);
}

/** What the load asks of the fuse. All of it gets easier with a larger rating. */
function loadChecks(fn: string, circuit: FuseCircuit, ratingA: number, share: number): Check[] {
  const { continuousA, continuousFraction, pulses = [] } = circuit;
  const byGuide = continuousFraction === 0.75;
  return [
    makeCheck({
      name: 'continuous current of the fuse',
      value: continuousA,
      limit: ratingA * share * continuousFraction,
      unit: 'A',
      sense: 'atMost',
      source: byGuide ? 'fuse-selection-guides' : 'given-by-caller',
      sourceStatus: byGuide ? 'published' : 'derived',
    }),
    ...pulses.map((pulse, i) => pulseCheck(fn, circuit.family, ratingA, pulse, i)),
  ];
}

/** A pulse against the share of the least melting I²t that its number allows. */
function pulseCheck(fn: string, family: FuseFamily, ratingA: number, pulse: FusePulse, i: number): Check {
  const { i2tA2s, rmsA } = pulseOf(fn, pulse, `pulses[${i}].`);
  const row = fusePulses.rows.find(([count]) => pulse.count <= count);
  const typical = meltingI2tOf(family, ratingA);
  // Where no melting figure is known the printed shortest opening of the family stands for it.
  const { shortestS, shortestBasis } = bandAt(limitsOf(family, ratingA), rmsA / ratingA);
  const edge = shortestS === null || shortestBasis === 'bound' ? null : rmsA * rmsA * shortestS;
  const melting = typical ?? edge;
  const carried = typical === null && shortestBasis === 'bound';
  const because =
    pulse.restS < fusePulses.restS
      ? `the shares hold for ${fusePulses.restS} s between pulses`
      : row === undefined
        ? 'no share is printed for so many pulses'
        : carried
          ? `a current of ${figure(rmsA)} A is carried for ${String(shortestS)} s and more`
          : melting === null
            ? `no melting I²t of ${family.key} ${ratingA} A is known, nor a shortest time at this current`
            : null;
  const limit = because !== null || melting === null || row === undefined ? null : melting * row[1];
  const rests = typical === null ? 'the shortest opening of the family stands for the melting I²t' : null;
  const said = because ?? rests;
  return makeCheck({
    name: `pulse: ${pulse.name}`,
    value: i2tA2s,
    limit,
    unit: 'A²s',
    sense: 'atMost',
    source: typical === null ? family.source : 'blade-fuse-data',
    sourceStatus: 'memory',
    okWithoutNumber: carried && row !== undefined && pulse.restS >= fusePulses.restS,
    ...(said === null ? {} : { because: said }),
  });
}

/** What the wire asks of the fuse. */
function wireChecks(
  circuit: FuseCircuit,
  ratingA: number,
  wire: FusedWire,
  tempC: number | null,
  rows: readonly LetThrough[],
): Check[] {
  const { family } = circuit;
  const status = limitsOf(family, ratingA).status;
  const checks = [
    makeCheck({
      name: 'temperature where the fuse may never open',
      value: tempC,
      limit: wire.overloadTempC,
      unit: '°C',
      sense: 'atMost',
      source: family.source,
      sourceStatus: status,
      okWithoutNumber: false,
      ...(tempC === null
        ? { because: `beyond 400 °C at ${figure(conventionalMultiple(family, ratingA) * ratingA)} A` }
        : {}),
    }),
  ];
  const slow = worst(rows.filter(({ longestS }) => longestS > ADIABATIC_S));
  if (slow !== null) {
    checks.push(
      makeCheck({
        name: 'overload until the fuse opens',
        value: slow.longestS,
        limit: slow.bearsS,
        unit: 's',
        sense: 'atMost',
        source: family.source,
        sourceStatus: status,
        okWithoutNumber: true,
        because:
          slow.bearsS === null ? `the wire bears ${figure(slow.currentA)} A for good` : `at ${figure(slow.currentA)} A`,
      }),
    );
  }
  const fast = worst(rows.filter(({ longestS }) => longestS <= ADIABATIC_S));
  if (fast !== null) {
    checks.push(
      makeCheck({
        name: 'let-through until the fuse opens',
        value: fast.i2tA2s,
        limit: fast.ok && fast.i2tA2s > fast.withstandI2tA2s ? null : fast.withstandI2tA2s,
        unit: 'A²s',
        sense: 'atMost',
        source: family.source,
        sourceStatus: status === 'published' ? 'common-practice' : status,
        okWithoutNumber: true,
        because: `at ${figure(fast.currentA)} A; above the last printed current the let-through is taken not to grow`,
      }),
    );
  }
  return checks;
}

/** The row with the least room, of equals the last; or null. */
function worst(rows: readonly LetThrough[]): LetThrough | null {
  let least: LetThrough | null = null;
  for (const row of rows) if (least === null || strain(row) >= strain(least)) least = row;
  return least;
}

function farShortCheck({ family, farShortA, clearWithinS }: FuseCircuit, ratingA: number): Check {
  const multiple = openingMultiple(family, ratingA, clearWithinS);
  return makeCheck({
    name: 'far-end short opens the fuse in time',
    value: farShortA,
    limit: multiple === null ? null : multiple * ratingA,
    unit: 'A',
    sense: 'atLeast',
    source: family.source,
    sourceStatus: limitsOf(family, ratingA).status,
    okWithoutNumber: false,
    ...(multiple === null ? { because: `no printed limit of ${family.key} opens within ${clearWithinS} s` } : {}),
  });
}

/** What the supply and the fuse upstream ask. */
function supplyChecks(circuit: FuseCircuit, selective: Selectivity | null): Check[] {
  const { family, prospectiveA, systemV } = circuit;
  const status: SourceStatus = family.status;
  const checks: Check[] = [];
  if (prospectiveA !== undefined) {
    const limit = circuit.interruptA ?? family.interruptA;
    const given = circuit.interruptA !== undefined;
    checks.push(
      makeCheck({
        name: 'interrupting rating',
        value: prospectiveA,
        limit,
        unit: 'A',
        sense: 'atMost',
        source: given ? 'given-by-caller' : family.source,
        sourceStatus: given ? 'derived' : status,
        okWithoutNumber: false,
        ...(limit === null ? { because: `none is known of ${family.key}: read it on the fuse` } : {}),
      }),
    );
  }
  if (systemV !== undefined) {
    checks.push(
      makeCheck({
        name: 'rated voltage',
        value: systemV,
        limit: family.ratedV,
        unit: 'V',
        sense: 'atMost',
        source: family.source,
        sourceStatus: status,
      }),
    );
  }
  if (selective !== null) checks.push(selective.check);
  return checks;
}
