import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needList, needObject, needOneOf, needText } from '../error/guard.js';
import type { CanLineRule } from '../table/index.js';

/** A stub: from the trunk to a unit. */
export interface CanStub {
  readonly name: string;
  /** Where it leaves the trunk, in m from one end. */
  readonly positionM: number;
  /** Its length in m, at least 0. */
  readonly lengthM: number;
}

export interface CanTopologyInput {
  /** Bit rate in bit/s, above 0. */
  readonly bitRateBitPerS: number;
  /** Length of the trunk from end to end in m, at least 0; 0 where all meet in one joint. */
  readonly trunkM: number;
  /** Where terminators stand, in m from the same end. */
  readonly terminatorPlacesM: readonly number[];
  readonly stubs: readonly CanStub[];
  /** Which manual or rule judges: `canLengthsC`, `canEdgeTenth` and so on. They do not agree. */
  readonly rule: CanLineRule;
  /** Time of an edge in s, above 0, and speed of the wave as a share of light's, above 0 to 1: for an edge rule. */
  readonly edgeS: number | null;
  readonly waveSpeedFraction: number | null;
}

/** One joint at which so many branches meet that none of them is a stub. */
export interface CanStar {
  readonly positionM: number;
  /** Branches that meet there, the trunk's sides among them. */
  readonly branchCount: number;
  readonly cure: string;
}

export interface CanTopologyResult {
  readonly ok: boolean;
  /** Limits in m by the rule, or null where it names none. */
  readonly mostTrunkM: number | null;
  readonly mostStubM: number | null;
  readonly mostStubSumM: number | null;
  /** Bit rate of the row that was used, in kbit/s; null for an edge rule. */
  readonly rowKbitPerS: number | null;
  readonly longestStubM: number;
  readonly stubSumM: number;
  /** Length in m of the line that one or two branches from a single joint are; null with a trunk, or with a star. */
  readonly lineM: number | null;
  /** Whether exactly two terminators stand, one at each end of the trunk or line. */
  readonly endsTerminated: boolean;
  readonly stars: readonly CanStar[];
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

const LIGHT_M_PER_S = 299_792_458;
/** What counts as one place: a joint is some centimetres long. */
const JOINT_M = 0.05;

/**
 * Whether a CAN line is laid right: trunk, ends, stubs, and no star.
 *
 * The rule is handed in, because manuals differ by a factor of five. Of a table the row of the same bit rate counts,
 * or else that of the next higher one, which allows less. An edge rule limits the stubs alone.
 *
 * $$l_\mathrm{stub} = \frac{p\,t_\mathrm{edge}\,v}{d}$$
 *
 * with the share $p$ of the edge that the stub's delay may take, counted $d$ times.
 *
 * Without a trunk, two branches from one joint are a line through it: it is judged as a trunk, and has its terminators
 * at the far ends, so that those in the joint will do only where the rule lets both branches pass for stubs. Three or
 * more are a star.
 *
 * @param input bit rate, trunk, terminators, stubs and the rule
 * @returns limits of the rule, lengths found, stars, checks and which decided
 * @throws InputError when a field is missing or out of range, a place lies beyond the trunk, the bit rate is above all
 * rows of the table, or an edge rule has no edge
 * @source common-practice (terminators at both ends, no star, a line is measured from end to end); lengths: the rule's own
 * @example canTopology({ bitRateBitPerS: 500000, trunkM: 4, terminatorPlacesM: [0, 4], stubs: [], rule: canLengthsC, edgeS: null, waveSpeedFraction: null }).mostStubM //=> 5
 */
export function canTopology(input: CanTopologyInput): CanTopologyResult {
  guard(input);
  const { trunkM, terminatorPlacesM, stubs, rule } = input;
  const limits = limitsOf(input);
  const longestStubM = stubs.reduce((most, { lengthM }) => Math.max(most, lengthM), 0);
  const stubSumM = stubs.reduce((sum, { lengthM }) => sum + lengthM, 0);
  const ends = [0, trunkM].map((end) => terminatorPlacesM.filter((place) => Math.abs(place - end) <= JOINT_M).length);
  const through = trunkM > JOINT_M ? [] : stubs.filter(({ lengthM }) => lengthM > JOINT_M);
  const lineM = through.length === 1 || through.length === 2 ? stubSumM : null;
  // Terminators in the joint are none at the ends of such a line, unless both branches are short enough for stubs.
  const asStubs = longestStubM <= (limits.mostStubM ?? 0);
  const endsTerminated =
    terminatorPlacesM.length === 2 &&
    (trunkM > JOINT_M ? ends.every((count) => count === 1) : ends[0] === 2 && (lineM === null || asStubs));
  const stars = starsOf(input);
  const by = { unit: 'm', sense: 'atMost', source: rule.source, sourceStatus: rule.status } as const;
  const practice = { unit: '1', source: 'common-practice', sourceStatus: 'common-practice' } as const;
  const checks: Check[] = [
    ...(lineM === null
      ? limited('trunk', trunkM, limits.mostTrunkM, by)
      : limited('line through the joint', lineM, limits.mostTrunkM, by)),
    ...stubs.flatMap(({ name, lengthM }) => limited(`stub of ${name}`, lengthM, limits.mostStubM, by)),
    ...limited('all stubs together', stubSumM, limits.mostStubSumM, by),
    makeCheck({
      ...practice,
      name: 'a terminator at each end and none elsewhere',
      value: endsTerminated ? 1 : 0,
      limit: 1,
      sense: 'atLeast',
    }),
    makeCheck({ ...practice, name: 'stars', value: stars.length, limit: 0, sense: 'atMost' }),
  ];
  const ok = checks.every((check) => check.ok);
  return {
    ok,
    ...limits,
    longestStubM,
    stubSumM,
    lineM,
    endsTerminated,
    stars,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

type Limits = Pick<CanTopologyResult, 'mostTrunkM' | 'mostStubM' | 'mostStubSumM' | 'rowKbitPerS'>;

function limited(
  name: string,
  value: number,
  limit: number | null,
  by: Pick<Check, 'unit' | 'sense' | 'source' | 'sourceStatus'>,
): readonly Check[] {
  return limit === null ? [] : [makeCheck({ name, value, limit, ...by })];
}

function limitsOf({ bitRateBitPerS, rule, edgeS, waveSpeedFraction }: CanTopologyInput): Limits {
  if (rule.kind === 'edge') {
    const speed = (waveSpeedFraction as number) * LIGHT_M_PER_S;
    const mostStubM = (rule.edgeShare * (edgeS as number) * speed) / rule.delayFactor;
    return { mostTrunkM: null, mostStubM, mostStubSumM: null, rowKbitPerS: null };
  }
  const fits = rule.rows.filter(([kbitPerS]) => kbitPerS * 1000 >= bitRateBitPerS);
  const row = fits.sort(([a], [b]) => a - b)[0];
  if (row === undefined) {
    const most = Math.max(...rule.rows.map(([kbitPerS]) => kbitPerS)) * 1000;
    const must = `must be at most ${most}, the highest of this table`;
    throw new InputError('canTopology', 'bitRateBitPerS', 'atMost', bitRateBitPerS, must);
  }
  const [rowKbitPerS, mostTrunkM, mostStubM, mostStubSumM] = row;
  return { mostTrunkM, mostStubM, mostStubSumM, rowKbitPerS };
}

/** Joints with two stubs or more beside the trunk's sides: at least four branches within it, three at its end. */
function starsOf({ trunkM, stubs }: CanTopologyInput): readonly CanStar[] {
  const stars: CanStar[] = [];
  const left = stubs.filter(({ lengthM }) => lengthM > JOINT_M).sort((a, b) => a.positionM - b.positionM);
  while (left.length > 0) {
    const { positionM } = left[0] as CanStub;
    const here = left.filter((stub) => stub.positionM - positionM <= JOINT_M);
    left.splice(0, here.length);
    const sides = (positionM > JOINT_M ? 1 : 0) + (trunkM - positionM > JOINT_M ? 1 : 0);
    const branchCount = sides + here.length;
    if (here.length < 2 || branchCount < 3) continue;
    const cure = 'make the two longest branches the trunk with a terminator at each end, and lead it past the others';
    stars.push({ positionM, branchCount, cure });
  }
  return stars;
}

function guard(input: CanTopologyInput): void {
  const fn = 'canTopology';
  needInput(fn, input);
  const { trunkM, rule } = input;
  needMoreThan(fn, 'bitRateBitPerS', input.bitRateBitPerS);
  needNoLessThan(fn, 'trunkM', trunkM);
  needList(fn, 'terminatorPlacesM', input.terminatorPlacesM);
  input.terminatorPlacesM.forEach((place, i) => needBetween(fn, `terminatorPlacesM[${i}]`, place, 0, trunkM));
  needList(fn, 'stubs', input.stubs);
  input.stubs.forEach((stub, i) => {
    const at = `stubs[${i}]`;
    needObject(fn, at, stub);
    needText(fn, `${at}.name`, stub.name);
    needBetween(fn, `${at}.positionM`, stub.positionM, 0, trunkM);
    needNoLessThan(fn, `${at}.lengthM`, stub.lengthM);
  });
  const must = 'must be a rule such as canLengthsC or canEdgeTenth';
  if (typeof rule !== 'object' || rule === null) throw new InputError(fn, 'rule', 'missing', rule, must);
  needOneOf(fn, 'rule.kind', rule.kind, ['lengths', 'edge']);
  if (rule.kind === 'lengths') needList(fn, 'rule.rows', rule.rows, 1);
  const asked = rule.kind === 'edge';
  if (asked) {
    needMoreThan(fn, 'rule.edgeShare', rule.edgeShare);
    needMoreThan(fn, 'rule.delayFactor', rule.delayFactor);
  }
  const { edgeS, waveSpeedFraction } = input;
  if (asked || edgeS !== null) needMoreThan(fn, 'edgeS', edgeS as number);
  if (!asked && waveSpeedFraction === null) return;
  needMoreThan(fn, 'waveSpeedFraction', waveSpeedFraction as number);
  needBetween(fn, 'waveSpeedFraction', waveSpeedFraction as number, 0, 1);
}
