import { type Check, makeCheck, type NotPossible } from '../check/index.js';
import type { ResolvedSize } from '../conductor/index.js';
import { ConvergenceError, InputError } from '../error/index.js';
import { needAbove, needAtLeast, needConductorTempC, needInput, needList, needObject } from '../error/guard.js';
import type { Heated, Heating } from '../heat/index.js';
import { heat } from '../heat/heating.js';
import { type Load, solvePath, type SolvePathResult } from '../load/index.js';
import { needLoad, settle } from '../load/load.js';
import type { ChosenFuse } from '../protection/index.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { DropBudget, ResistanceBasis } from '../table/index.js';
import { type FeedPart, fixedOhm, type FuseToChoose, needParts, wireLengthM, withFuse, withSize } from './path.js';
import { needHeating, needProtection, type Protection } from './protect.js';
import { stockSizes } from './stock.js';

/** What a feed may lose, and what it must not fall below. At least one of the four is needed. */
export interface FeedLimits {
  /** A named budget for this class of circuit. */
  readonly budget?: DropBudget;
  /** Most volts lost out and back, fixed parts counted. */
  readonly dropV?: number;
  /** Most volts lost in the wire alone. */
  readonly wireDropV?: number;
  /** Fewest volts at the load. */
  readonly loadV?: number;
}

export interface SizeFeedInput {
  /** Supply voltage in V, above 0. */
  readonly supplyV: number;
  /** From the supply to the load, in order. At most one part may be the fuse that is to be chosen. */
  readonly outParts: readonly (FeedPart | FuseToChoose)[];
  /** From the load back to the supply, in order: a wire, a body, or both. */
  readonly returnParts: readonly FeedPart[];
  readonly load: Load;
  /** Which resistance the sizes have: the table of the wire that you buy, or `geometric`. */
  readonly resistanceBasis: ResistanceBasis;
  /** Sizes to choose from: numbers are mm², texts gauges of the basis. The whole table where left out. */
  readonly stock?: readonly (number | string)[];
  readonly limits: FeedLimits;
  /** Other supply voltages in V at which the volts lost are judged too, such as 9 and 14.4; may be empty. */
  readonly judgedAtV: readonly number[];
  /** How the wire's heating is judged. */
  readonly heating: Heating;
  /** Copper temperature in °C at which volts are judged; where left out, the one that the wire reaches. */
  readonly conductorTempC?: number;
  /** Smallest area in mm² that stands being handled and shaken here, at least 0. */
  readonly leastAreaMm2: number;
  readonly protection: Protection;
}

/** One size, judged. */
export interface JudgedSize {
  readonly size: string;
  readonly areaMm2: number;
  readonly ok: boolean;
  readonly checks: readonly Check[];
}

/** The feed at one supply voltage. */
export interface FeedAt {
  readonly supplyV: number;
  /** Volts at the load, volts lost, and current; null where the path cannot feed the load. */
  readonly loadV: number | null;
  readonly dropV: number | null;
  readonly currentA: number | null;
}

/** Something a reader should know that is no limit. */
export interface Remark {
  readonly code: 'fixed-parts-take-more' | 'geometric-is-ideal' | 'unprotected' | 'rests-on-memory';
  readonly text: string;
}

export interface SizeFeedResult {
  readonly possible: true;
  /** The size as the trade writes it. */
  readonly size: string;
  readonly areaMm2: number;
  /** The check that turned down the next smaller size; `smallest size in stock` where there is none. */
  readonly decidedBy: string;
  /** Every limit with its margin. */
  readonly checks: readonly Check[];
  /** The whole path at the supply voltage. */
  readonly solved: SolvePathResult;
  /** Volts lost in the wire alone, and in the fixed parts alone. */
  readonly wireDropV: number;
  readonly fixedDropV: number;
  /** Copper temperature in °C at which volts were judged. */
  readonly conductorTempC: number;
  /** Copper temperature in °C that the wire reaches by the heating rule. */
  readonly reachedTempC: number;
  /** Current in A that the wire bears by the heating rule. */
  readonly ampacityA: number;
  /** The fuse that protects it, or null where another device does or none. */
  readonly fuse: ChosenFuse | null;
  /** Current in A of a short at the far end, hot; null without a fuse to judge by it. */
  readonly farShortA: number | null;
  /** The feed at the supply voltage and at each of `judgedAtV`. */
  readonly at: readonly FeedAt[];
  /** The sizes on either side. */
  readonly below: JudgedSize | null;
  readonly above: JudgedSize | null;
  readonly remarks: readonly Remark[];
  /** Key of the resistance basis, and where its resistance comes from. */
  readonly resistanceBasis: string;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/** The input with the fuse put in as a plain part. */
interface Plain extends SizeFeedInput {
  readonly outParts: readonly FeedPart[];
}

/** A size with everything worked out. */
interface Judged extends JudgedSize {
  /** The input that was judged: the chosen fuse's resistance stands in its path. */
  readonly input: Plain;
  readonly resolved: ResolvedSize;
  readonly heated: Heated;
  readonly solved: SolvePathResult | null;
  readonly usedTempC: number;
  readonly reachedTempC: number | null;
  readonly fuse: ChosenFuse | null;
  readonly farShortA: number | null;
  readonly at: readonly FeedAt[];
}

const FN = 'sizeFeed';

/**
 * The smallest size in stock that meets every limit of a feed: volts at the load with the copper hot, conductor
 * temperature, mechanical minimum, and a fuse that carries the load and still protects the wire.
 *
 * Use it to choose a wire. It counts the way back and the fixed parts, and says which rule decided: the one that
 * turned down the next smaller size. Inrush and stall are not judged here.
 *
 * $$V - I\Bigl(\sum_k R_k + r_A(T)\sum_j l_j\Bigr) \ge V_{\min}, \quad T(I) \le T_{\mathrm{ins}}, \quad
 * A \ge A_{\min}$$
 *
 * @param input supply, path, load, basis and stock, limits, heating, protection
 * @returns the size with all checks and margins, the sizes on either side, volts at other supplies, the fuse; or
 * `possible: false` with code `fixed-parts-take-all` (no wire can help) or `no-size-in-stock`, and the nearest size
 * @throws InputError when a field is missing or out of range; ConvergenceError when temperature and current do not
 * settle
 * @source circuit-theory; the sources of basis, heating rule, budget and fuse family, named in each check
 * @example sizeFeed({ supplyV: 13.8, outParts: [{ name: 'wire out', lengthM: 5.5 }], returnParts: [{ name: 'wire back', lengthM: 1 }], load: { kind: 'constant-current', currentA: 15 }, resistanceBasis: iso19642, limits: { dropV: 0.5 }, judgedAtV: [], heating: { by: heatingByTable, table: us33Cfr183Ampacity, insulationTempC: 105, ambientTempC: 40 }, leastAreaMm2: 0.5, protection: { kind: 'none', because: 'example' } }).size //=> '5 mm²'
 */
export function sizeFeed(input: SizeFeedInput): SizeFeedResult | NotPossible<JudgedSize> {
  needInput(FN, input);
  guard(input);
  const sizes = stockSizes(FN, input.resistanceBasis, input.stock);
  let below: Judged | null = null;
  for (let i = 0; i < sizes.length; i++) {
    const size = sizes[i] as ResolvedSize;
    // A size that plainly cannot do is judged in full only where it ends up beside the answer.
    if (i + 1 < sizes.length && fallsShort(input, size)) continue;
    const judged = judge(input, size);
    if (judged.ok && judged.solved !== null) {
      const before = sizes[i - 1];
      const next = sizes[i + 1];
      const under = below?.resolved === before ? below : before === undefined ? null : judge(input, before);
      return answer(judged, judged.solved, under, next === undefined ? null : judge(input, next));
    }
    below = judged;
  }
  return notPossible(below as Judged);
}

function guard(input: SizeFeedInput): void {
  const { supplyV, outParts, returnParts, load, limits, judgedAtV, heating, conductorTempC, leastAreaMm2 } = input;
  needAbove(FN, 'supplyV', supplyV);
  needList(FN, 'outParts', outParts);
  outParts.forEach((part, i) => {
    needObject(FN, `outParts[${i}]`, part);
  });
  const plain = withFuse(outParts, 0);
  needParts(FN, 'outParts', plain);
  needParts(FN, 'returnParts', returnParts);
  const toChoose = outParts.filter((part) => 'fuse' in part).length;
  if (toChoose > 1 || (toChoose === 1 && input.protection.kind !== 'fuse')) {
    throw new InputError(FN, 'outParts', 'range', toChoose, 'may hold one fuse to choose, where protection is a fuse');
  }
  if (!(wireLengthM(plain) + wireLengthM(returnParts) > 0)) {
    throw new InputError(FN, 'outParts', 'missing', outParts, 'or returnParts must hold some length of wire to size');
  }
  needLoad(FN, load);
  needObject(FN, 'limits', limits);
  const { budget, dropV, wireDropV, loadV } = limits;
  if (dropV !== undefined) needAbove(FN, 'limits.dropV', dropV);
  if (wireDropV !== undefined) needAbove(FN, 'limits.wireDropV', wireDropV);
  if (loadV !== undefined) needAbove(FN, 'limits.loadV', loadV);
  if (budget !== undefined) needAbove(FN, 'limits.budget.dropV', budget.dropV);
  if (budget === undefined && dropV === undefined && wireDropV === undefined && loadV === undefined) {
    throw new InputError(FN, 'limits', 'missing', undefined, 'must hold a budget, dropV, wireDropV or loadV');
  }
  needList(FN, 'judgedAtV', judgedAtV);
  judgedAtV.forEach((volts, i) => {
    needAbove(FN, `judgedAtV[${i}]`, volts);
  });
  needHeating(FN, heating);
  if (conductorTempC !== undefined) needConductorTempC(FN, 'conductorTempC', conductorTempC);
  needAtLeast(FN, 'leastAreaMm2', leastAreaMm2);
  needProtection(FN, input.protection);
}

/**
 * Everything about one size, with the resistance of the fuse that it leads to. A thicker fuse has less resistance;
 * where the choice would swing to and fro, the larger resistance stands: the safe side for the volts.
 */
function judge(input: SizeFeedInput, size: ResolvedSize): Judged {
  const heated = remembered(heat(input.heating, size));
  let fuseOhm = 0;
  for (;;) {
    const judged = judgeWith({ ...input, outParts: withFuse(input.outParts, fuseOhm) }, size, heated);
    const next = judged.fuse?.hotOhm ?? 0;
    if (next <= fuseOhm || !input.outParts.some((part) => 'fuse' in part)) return judged;
    fuseOhm = next;
  }
}

/** The same heating, each temperature worked out once: a size is judged at several voltages, often at one current. */
function remembered(heated: Heated): Heated {
  const known = new Map<number, number | null>();
  return {
    ...heated,
    tempC: (currentA) => {
      let tempC = known.get(currentA);
      if (tempC === undefined) {
        tempC = heated.tempC(currentA);
        known.set(currentA, tempC);
      }
      return tempC;
    },
  };
}

/**
 * Whether a size cannot do, seen without its heat: it is below the mechanical minimum, or loses too much with copper
 * no warmer than the air and no fuse in the way. More resistance never gives a load more volts.
 */
function fallsShort(input: SizeFeedInput, size: ResolvedSize): boolean {
  const { supplyV, limits, outParts, returnParts, load, leastAreaMm2, heating } = input;
  if (size.areaMm2 < leastAreaMm2) return true;
  const parts = withSize(
    [...withFuse(outParts, 0), ...returnParts],
    size,
    input.conductorTempC ?? heating.ambientTempC,
  );
  let ohm = 0;
  for (const part of parts) ohm += part.resistanceOhm;
  const point = settle(load, supplyV, ohm);
  if ('code' in point) return true;
  const lostV = point.currentA * ohm * (1 - 1e-9);
  const most = Math.min(limits.budget?.dropV ?? Infinity, limits.dropV ?? Infinity, supplyV - (limits.loadV ?? 0));
  return lostV > most;
}

function judgeWith(input: Plain, size: ResolvedSize, heated: Heated): Judged {
  const { supplyV, judgedAtV, heating, leastAreaMm2, protection } = input;
  const checks: Check[] = [];
  const at: FeedAt[] = [];
  let solved: SolvePathResult | null = null;
  let usedTempC = input.conductorTempC ?? heating.ambientTempC;
  let hottestA = 0;
  for (const volts of [supplyV, ...judgedAtV]) {
    const tempC = input.conductorTempC ?? settledTempC(input, size, heated, volts);
    const state = tempC === null ? null : solveAt(input, size, volts, tempC);
    if (state === null) {
      at.push({ supplyV: volts, loadV: null, dropV: null, currentA: null });
      continue;
    }
    at.push({ supplyV: volts, loadV: state.loadV, dropV: state.dropV, currentA: state.currentA });
    hottestA = Math.max(hottestA, state.rmsA);
    if (at.length === 1) {
      solved = state;
      usedTempC = tempC as number;
    }
  }
  voltageChecks(input, size, at, solved, usedTempC, checks);
  const reachedTempC = hottestA === 0 ? null : heated.tempC(hottestA);
  checks.push(
    makeCheck({
      name: 'conductor temperature',
      value: reachedTempC,
      limit: heating.insulationTempC,
      unit: '°C',
      sense: 'atMost',
      source: heated.source,
      sourceStatus: heated.status,
      okWithoutNumber: false,
      ...(reachedTempC === null
        ? { because: heated.because ?? 'beyond 400 °C, or the path cannot feed the load at all' }
        : {}),
    }),
    makeCheck({
      name: 'mechanical minimum',
      value: size.areaMm2,
      limit: leastAreaMm2,
      unit: 'mm²',
      sense: 'atLeast',
      source: 'given-by-caller',
      sourceStatus: 'derived',
    }),
  );
  let fuse: ChosenFuse | null = null;
  let farShortA: number | null = null;
  if (protection.kind === 'upstream') {
    checks.push(
      makeCheck({
        name: `what ${protection.name} may carry for good`,
        value: protection.mayCarryA,
        limit: heated.ampacityA,
        unit: 'A',
        sense: 'atMost',
        source: heated.source,
        sourceStatus: heated.status,
      }),
    );
  } else if (protection.kind === 'fuse') {
    const chosen = protect(input, size, heated, hottestA);
    fuse = chosen.fuse;
    farShortA = chosen.farShortA;
    checks.push(...chosen.checks);
  }
  const ok = checks.every((check) => check.ok);
  const { label, areaMm2 } = size;
  return {
    size: label,
    areaMm2,
    ok,
    checks,
    input,
    resolved: size,
    heated,
    solved,
    usedTempC,
    reachedTempC,
    fuse,
    farShortA,
    at,
  };
}

/** Copper temperature at which current and heat agree, or null where they run away or the load cannot be fed. */
function settledTempC(input: Plain, size: ResolvedSize, heated: Heated, volts: number): number | null {
  const { load, outParts, returnParts, heating } = input;
  // A size that bears nothing is refused by the heat check; its volts are judged at the class temperature.
  if (heated.ampacityA === 0) return heating.insulationTempC;
  const all = [...outParts, ...returnParts];
  const fixed = fixedOhm(all);
  const lengthM = wireLengthM(all);
  let tempC = heating.ambientTempC;
  for (let step = 0; step < 100; step++) {
    const hot = withSize([{ name: '', lengthM }], size, tempC)[0]?.resistanceOhm ?? 0;
    const point = settle(load, volts, fixed + hot);
    if ('code' in point) return null;
    const next = heated.tempC(point.currentA * Math.sqrt(point.dutyFraction));
    if (next === null) return null;
    if (Math.abs(next - tempC) <= 1e-9) return next;
    tempC = next;
  }
  throw new ConvergenceError(FN, 100, tempC, NaN);
}

function solveAt(input: Plain, size: ResolvedSize, supplyV: number, tempC: number): SolvePathResult | null {
  const solved = solvePath({
    supplyV,
    outParts: withSize(input.outParts, size, tempC),
    returnParts: withSize(input.returnParts, size, tempC),
    load: input.load,
  });
  return solved.possible ? solved : null;
}

function voltageChecks(
  input: Plain,
  size: ResolvedSize,
  at: readonly FeedAt[],
  solved: SolvePathResult | null,
  tempC: number,
  checks: Check[],
): void {
  const { limits } = input;
  const worst = worstDrop(at);
  const where = worst.supplyV === input.supplyV ? '' : ` at ${worst.supplyV} V`;
  const none = worst.dropV === null ? { because: `the path cannot feed the load at ${worst.supplyV} V` } : {};
  const given = { source: 'given-by-caller', sourceStatus: 'derived', unit: 'V', okWithoutNumber: false } as const;
  if (limits.budget !== undefined) {
    const { source, status: sourceStatus, dropV: limit } = limits.budget;
    checks.push(
      makeCheck({
        ...given,
        ...none,
        name: `voltage lost${where}`,
        value: worst.dropV,
        limit,
        sense: 'atMost',
        source,
        sourceStatus,
      }),
    );
  }
  if (limits.dropV !== undefined) {
    checks.push(
      makeCheck({
        ...given,
        ...none,
        name: `voltage lost out and back${where}`,
        value: worst.dropV,
        limit: limits.dropV,
        sense: 'atMost',
      }),
    );
  }
  if (limits.wireDropV !== undefined) {
    const ohm = withSize(
      [{ name: '', lengthM: wireLengthM([...input.outParts, ...input.returnParts]) }],
      size,
      tempC,
    )[0];
    const value = worst.currentA === null ? null : worst.currentA * (ohm?.resistanceOhm ?? 0);
    checks.push(
      makeCheck({
        ...given,
        ...none,
        name: `voltage lost in the wire${where}`,
        value,
        limit: limits.wireDropV,
        sense: 'atMost',
      }),
    );
  }
  if (limits.loadV !== undefined) {
    const because = solved === null ? { because: 'the path cannot feed the load' } : {};
    checks.push(
      makeCheck({
        ...given,
        ...because,
        name: 'volts at the load',
        value: solved?.loadV ?? null,
        limit: limits.loadV,
        sense: 'atLeast',
      }),
    );
  }
}

/** The state that loses most; one that cannot be fed before all others. */
function worstDrop(at: readonly FeedAt[]): FeedAt {
  let worst = at[0] as FeedAt;
  for (const state of at) {
    if (worst.dropV === null) break;
    if (state.dropV === null || state.dropV > worst.dropV) worst = state;
  }
  return worst;
}

/** The fuse for one size, its own resistance counted in the far-end short. */
function protect(
  input: Plain,
  size: ResolvedSize,
  heated: Heated,
  currentA: number,
): { fuse: ChosenFuse | null; farShortA: number | null; checks: Check[] } {
  const { protection, heating, outParts, returnParts } = input;
  if (protection.kind !== 'fuse') return { fuse: null, farShortA: null, checks: [] };
  const { by, family, continuousFraction, overloadRule, fuseTempC, shortSupplyV, clearWithinS, wireLimits } =
    protection;
  const { ambientTempC, insulationTempC: maxConductorTempC } = heating;
  const { areaMm2, metal } = size;
  const refuse = (because: string): Check =>
    makeCheck({
      name: 'a fuse that protects the wire',
      value: null,
      limit: null,
      unit: 'A',
      sense: 'atMost',
      source: family.source,
      sourceStatus: family.status,
      okWithoutNumber: false,
      because,
    });
  if (heated.ampacityA === 0 || currentA === 0) {
    return { fuse: null, farShortA: null, checks: [refuse(heated.because ?? 'the path cannot feed the load')] };
  }
  const hotTempC = Math.min(400, heating.insulationTempC);
  let pathOhm = protection.sourceResistanceOhm;
  for (const part of withSize([...outParts, ...returnParts], size, hotTempC)) pathOhm += part.resistanceOhm;
  const choose = (farShortA: number): ReturnType<typeof by> =>
    by({
      family,
      continuousA: currentA,
      continuousFraction,
      ambientTempC: fuseTempC,
      ampacityA: heated.ampacityA,
      overloadRule,
      farShortA,
      clearWithinS,
      ...(wireLimits === undefined
        ? {}
        : {
            wire: {
              areaMm2,
              ambientTempC,
              maxConductorTempC,
              ...wireLimits,
              // Tin counts as copper.
              ...(metal === 'aluminium' ? { metal } : {}),
            },
          }),
    });
  let farShortA = shortSupplyV / pathOhm;
  let chosen = choose(farShortA);
  // The fuse's own resistance lowers the short's current, unless the path lists the fuse already.
  const listed = outParts.some((part) => 'kind' in part && part.kind === 'fuse');
  if (chosen.possible && chosen.hotOhm !== null && !listed) {
    farShortA = shortSupplyV / (pathOhm + chosen.hotOhm);
    chosen = choose(farShortA);
  }
  if (chosen.possible) return { fuse: chosen, farShortA, checks: [...chosen.checks] };
  return { fuse: null, farShortA, checks: [...(chosen.nearest?.checks ?? []), refuse(chosen.because)] };
}

function publicSize(judged: Judged | null): JudgedSize | null {
  if (judged === null) return null;
  const { size, areaMm2, ok, checks } = judged;
  return { size, areaMm2, ok, checks };
}

/** The failed check that a size misses by most. */
function worstFailure(checks: readonly Check[]): string {
  let worst: Check | null = null;
  for (const check of checks) {
    if (check.ok) continue;
    if (worst === null || (check.marginFraction ?? -1) < (worst.marginFraction ?? -1)) worst = check;
  }
  return worst?.name ?? 'smallest size in stock';
}

function answer(judged: Judged, solved: SolvePathResult, below: Judged | null, above: Judged | null): SizeFeedResult {
  const { input } = judged;
  const { resistanceBasis, outParts, returnParts } = input;
  const fixedDropV = solved.currentA * fixedOhm([...outParts, ...returnParts]);
  const wireDropV = solved.dropV - fixedDropV;
  return {
    possible: true,
    size: judged.size,
    areaMm2: judged.areaMm2,
    decidedBy: below === null ? 'smallest size in stock' : worstFailure(below.checks),
    checks: judged.checks,
    solved,
    wireDropV,
    fixedDropV,
    conductorTempC: judged.usedTempC,
    reachedTempC: judged.reachedTempC ?? judged.usedTempC,
    ampacityA: judged.heated.ampacityA,
    fuse: judged.fuse,
    farShortA: judged.farShortA,
    at: judged.at,
    below: publicSize(below),
    above: publicSize(above),
    remarks: remarks(judged, wireDropV, fixedDropV),
    resistanceBasis: resistanceBasis.key,
    source: resistanceBasis.kind === 'geometric' ? 'nbs-hb-100' : resistanceBasis.source,
    sourceStatus: resistanceBasis.kind === 'geometric' ? 'derived' : resistanceBasis.status,
  };
}

function remarks(judged: Judged, wireDropV: number, fixedDropV: number): Remark[] {
  const { input } = judged;
  const list: Remark[] = [];
  if (fixedDropV > wireDropV) {
    list.push({
      code: 'fixed-parts-take-more',
      text: 'Fuse, relay, terminals and body take more volts than the wire: better joints help more than a thicker wire.',
    });
  }
  if (input.resistanceBasis.kind === 'geometric') {
    const worse = { ...judged.resolved, resistanceOhmPerM: judged.resolved.resistanceOhmPerM * 1.16 };
    const stillOk = judge(input, worse).ok;
    list.push({
      code: 'geometric-is-ideal',
      text: stillOk
        ? 'Ideal copper of this area was assumed. A standard allows stranded wire up to 16 % more resistance; the size still holds with that.'
        : 'Ideal copper of this area was assumed. A standard allows stranded wire up to 16 % more resistance, and then this size is too small: size by the table of the wire that you buy.',
    });
  }
  if (input.protection.kind === 'none') {
    list.push({ code: 'unprotected', text: `No fuse protects this wire: ${input.protection.because}.` });
  }
  const fromMemory = judged.checks.some((check) => check.sourceStatus === 'memory');
  const basisFromMemory = input.resistanceBasis.kind === 'table' && input.resistanceBasis.status === 'memory';
  if (fromMemory || basisFromMemory) {
    list.push({
      code: 'rests-on-memory',
      text: 'Part of this rests on tables remembered from a standard, not read: check them against the data of the wire and fuse in your hand.',
    });
  }
  return list;
}

function notPossible(largest: Judged): NotPossible<JudgedSize> {
  const { input } = largest;
  const nearest = publicSize(largest);
  const { limits, load, supplyV, outParts, returnParts } = input;
  const fixed = fixedOhm([...outParts, ...returnParts]);
  const point = settle(load, supplyV, fixed);
  const most = Math.min(limits.dropV ?? Infinity, limits.budget?.dropV ?? Infinity, supplyV - (limits.loadV ?? 0));
  const taken = 'code' in point ? null : point.currentA * fixed;
  if (taken === null || taken >= most) {
    return {
      possible: false,
      code: 'fixed-parts-take-all',
      because:
        taken === null
          ? 'the fixed parts alone keep the load from being fed'
          : `the fixed parts alone lose ${taken} V of the ${most} V allowed: no wire is thick enough`,
      nearest,
    };
  }
  return {
    possible: false,
    code: 'no-size-in-stock',
    because: `the largest size in stock, ${largest.size}, still fails: ${largest.checks
      .filter((check) => !check.ok)
      .map((check) => check.name)
      .join(', ')}`,
    nearest,
  };
}
