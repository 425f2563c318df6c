import { InputError } from 'loomwright';
import type { LoomPlan } from '../loom/plan-type.js';
import { SPREAD_BASIS } from '../loom/spread.js';
import type { Diagnosis, ExplainedReading, MeterReading, Suspect, SupplyOff } from './diagnosis-type.js';
import { sentencesOf } from './diagnosis-words.js';
import { type Cause, Fit } from './fit.js';
import { furtherReading, type Single } from './further.js';
import { METER_BASIS } from './meter.js';
import { MeterNet } from './net.js';
import { MeterPoints } from './points.js';
import { prepare, type Prepared } from './prepare.js';

/** Misfit by which causes count as told apart: two sigmas. */
const TOLD = 4;
/** Least volts that a battery must be off to be named. */
const SUPPLY_V = 0.15;
const APART_OHM = 10_000;
const SEEN_OHM = 0.05;

/**
 * Which joint or part is bad, from readings of a meter on a planned vehicle.
 *
 * Use it on what `planLoom` answered and on volts, millivolts, amperes and ohms as they were read; two or three readings
 * in one state tell much, posts of the battery first. Each state is solved as one network. For every part the resistance
 * is found that, added to it, explains all readings best; so is another current for every load, and the volts of the
 * batteries are free until their posts are read. Causes are ranked by misfit. What lies within two sigmas of the best is
 * not told apart, and the reading that would part it is named. It looks for one cause at a time: two bad joints at once
 * are `not one cause`, and mending the one that helps most shows the other.
 *
 * $$\chi^2(x) = (d - \Delta r(x))^\mathsf{T}\,C^{-1}\,(d - \Delta r(x)) \qquad C = M + \sum_p \sigma_p^2\,J_p J_p^\mathsf{T}$$
 *
 * with $d$ what was read less what the plan expects, $\Delta r(x)$ what $x$ more ohms do to the readings, and $C$ the
 * error of the meter and what healthy parts, loads and batteries may have (`basis`). An open circuit is 10 MΩ. A load
 * that cannot be fed any more as the file describes it counts as the resistance that it was.
 *
 * @param plan what `planLoom` answered
 * @param readings 1 to 1000 readings
 * @returns the verdict with its sentences, suspects with ohms and watts, the next reading to take, each reading as it is
 * explained
 * @throws InputError when a reading is not whole, out of range, or names a state, point, part or circuit that the plan
 * does not have (the nearest are named)
 * @source circuit-theory (node equations; least squares); spreads and meter common-practice
 */
export function diagnose(plan: LoomPlan, readings: readonly MeterReading[]): Diagnosis {
  if (typeof plan !== 'object' || plan === null || !Array.isArray((plan as Partial<LoomPlan>).circuits)) {
    throw new InputError(
      'diagnose',
      'plan',
      plan === undefined ? 'missing' : 'object',
      plan,
      'must be what planLoom answered',
    );
  }
  const net = new MeterNet(plan);
  const points = new MeterPoints(net);
  const all = prepare(net, points, readings);
  const touching = all.filter(({ apart, value }) => apart && value < APART_OHM);
  const judged = all.filter(({ apart }) => !apart);
  const { fit, turned } = withProbesRight(net, judged);
  return answer({ net, points, fit, turned, touching });
}

interface Found {
  readonly net: MeterNet;
  readonly points: MeterPoints;
  readonly fit: Fit;
  readonly turned: readonly number[];
  readonly touching: readonly Prepared[];
}

/** Turns the sign of readings whose probes were changed over, where that explains them far better than any cause does. */
function withProbesRight(net: MeterNet, readings: readonly Prepared[]): { fit: Fit; turned: readonly number[] } {
  const fit = new Fit(net, readings);
  const against = readings.filter(
    ({ unit, value, meterSigma }, i) =>
      unit === 'V' &&
      value * fit.expected(i) < 0 &&
      Math.abs(value) > 3 * meterSigma &&
      Math.abs(fit.expected(i)) > 3 * meterSigma,
  );
  if (against.length === 0) return { fit, turned: [] };
  const turned = new Fit(
    net,
    readings.map((one) => (against.includes(one) ? { ...one, value: -one.value } : one)),
  );
  const least = (of: Fit): number => Math.min(of.healthyMisfit(), of.causes()[0]?.misfit ?? Infinity);
  return least(turned) + 9 < least(fit)
    ? { fit: turned, turned: against.map(({ index }) => index) }
    : { fit, turned: [] };
}

/** A misfit that so many free readings may well have. */
function isGood(misfit: number, freeCount: number): boolean {
  const free = Math.max(0, freeCount);
  return misfit <= free + 3 * Math.sqrt(2 * free) + 6;
}

function answer({ net, points, fit, turned, touching }: Found): Diagnosis {
  const healthy = fit.healthyMisfit();
  let used = fit;
  let causes = fit.causes();
  const least = 9 + 2 * Math.log(Math.max(1, causes.length));
  const count = fit.readings.length;
  const gain = healthy - (causes[0]?.misfit ?? healthy);
  const alone = fit.withoutOne(null);
  let verdict: Diagnosis['verdict'];
  let contradicting: readonly number[] = [];
  if (touching.length > 0) verdict = 'short';
  else if (
    count >= 3 &&
    healthy - alone.misfit >= least &&
    isGood(alone.misfit, count - 1) &&
    alone.misfit + TOLD < (causes[0]?.misfit ?? Infinity)
  ) {
    verdict = 'reading';
    contradicting = [fit.readings[alone.index]?.index ?? 0];
    used = fit;
  } else if (gain < least) {
    verdict = isGood(healthy, count) ? 'nothing found' : 'not one cause';
  } else if (isGood(causes[0]?.misfit ?? 0, count - 1)) verdict = 'part';
  else {
    const beside = fit.withoutOne(causes[0] ?? null);
    verdict = 'not one cause';
    if (count >= 4 && isGood(beside.misfit, count - 2)) {
      const rest = fit.readings.filter((_, i) => i !== beside.index);
      const again = new Fit(net, rest);
      const found = again.causes();
      if (again.healthyMisfit() - (found[0]?.misfit ?? Infinity) >= least) {
        verdict = 'part';
        contradicting = [fit.readings[beside.index]?.index ?? 0];
        used = again;
        causes = found;
      }
    }
  }
  const best = verdict === 'part' || verdict === 'not one cause' ? (causes[0] ?? null) : null;
  const supply = supplyOf(used, verdict === 'part' ? best : null);
  if (verdict === 'nothing found' && supply.length > 0) verdict = 'supply';
  const tied = verdict === 'part' ? causes.filter(({ misfit }) => misfit < (best?.misfit ?? 0) + TOLD) : [];
  const rest = best === null ? [] : causes.filter((one) => !tied.includes(one)).slice(0, 3);
  const singles = (list: readonly Cause[]): Single[] =>
    list.flatMap((cause) => cause.members.map((member) => ({ cause, member })));
  const suspectOf = (one: Single): Suspect => suspect(used, one, best?.misfit ?? 0);
  const suspects = singles(tied).map(suspectOf);
  const explained = used.explained(verdict === 'part' ? best : null);
  const left = best === null || verdict !== 'part' ? used.healthyMisfit() : best.misfit;
  const awaySigma = Math.sqrt(Math.max(0, used.healthyMisfit() - (causes[0]?.misfit ?? Infinity)));
  const diagnosis: Omit<Diagnosis, 'sentences'> = {
    verdict,
    awaySigma,
    confidence: verdict === 'part' ? (awaySigma >= 7 ? 'strong' : awaySigma >= 5 ? 'fair' : 'weak') : 'none',
    suspects,
    others: singles(rest).slice(0, 5).map(suspectOf),
    further: verdict === 'part' ? furtherReading(used, points, singles(tied)) : null,
    supply,
    readings: used.readings.map((one, i) => readingOf(used, one, i, explained[i] as number)),
    changedOver: turned,
    contradicting,
    misfitFactor: left / Math.max(1, used.readings.length - (verdict === 'part' ? 1 : 0)),
    seenCount: used.seenCount(SEEN_OHM, least),
    partCount: net.parts.length,
    basis: [...SPREAD_BASIS, METER_BASIS],
  };
  return {
    ...diagnosis,
    sentences: sentencesOf(
      diagnosis,
      touching.map(({ name, value }) => ({ name, value })),
    ),
  };
}

function readingOf(fit: Fit, one: Prepared, i: number, explainedValue: number): ExplainedReading {
  const { index, name, unit, value, open, meterSigma } = one;
  return {
    index,
    name,
    unit,
    value: open ? null : value,
    expectedValue: fit.expected(i),
    explainedValue,
    offSigma: fit.off(i) / fit.sigma(i),
    leftSigma: (value - explainedValue) / meterSigma,
  };
}

function supplyOf(fit: Fit, cause: Cause | null): SupplyOff[] {
  const { plan, network } = fit.net;
  return fit
    .supply(cause)
    .filter(({ offV, sigmaV }) => Math.abs(offV) > SUPPLY_V && Math.abs(offV) > 3 * sigmaV)
    .map(({ battery, state, offV, sigmaV }) => {
      const plannedV =
        plan.states.find(({ name }) => name === state)?.batteries.find(({ name }) => name === battery)?.supplyV ??
        network.givenV(state, battery);
      const read = fit.readings.some((one) => one.state === state && one.posts === battery);
      return { battery, state, plannedV, foundV: plannedV + offV, sigmaV, read };
    });
}

function suspect(fit: Fit, { cause, member }: Single, bestMisfit: number): Suspect {
  const { net } = fit;
  const most = fit.states
    .map((state) => ({ state, amps: Math.abs(fit.solved(cause, cause.at, state).branchA[cause.branch] as number) }))
    .sort((a, b) => b.amps - a.amps)[0];
  const state = most?.state ?? null;
  const plannedA = state === null ? 0 : Math.abs(net.healthy(state).branchA[cause.branch] as number);
  const behindSigma = Math.sqrt(Math.max(0, cause.misfit - bestMisfit));
  const common = { currentA: cause.open ? 0 : (most?.amps ?? 0), plannedA, state, behindSigma };
  if (cause.kind === 'load') {
    const circuit = net.drafts[net.network.wiring.loads[member]?.draft ?? -1]?.name ?? '';
    const none = { extraOhm: null, lowOhm: null, highOhm: null, open: false, powerW: null };
    return { kind: 'load', name: circuit, of: 'load', circuit, ...none, ...common };
  }
  const { name, kind, circuit, ohm } = net.parts[member] as (typeof net.parts)[number];
  const [lowOhm, highOhm] = fit.rangeOf(cause);
  return {
    kind: 'part',
    name,
    of: kind,
    circuit,
    extraOhm: cause.open ? null : cause.at,
    lowOhm,
    highOhm,
    open: cause.open,
    powerW: cause.open ? null : common.currentA ** 2 * (ohm + cause.at),
    ...common,
  };
}
