import { type NotPossible, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput, needText } from '../error/guard.js';
import type { PathLimit } from '../load/index.js';
import { budgetChecks, needBudgets, ownChecks, tightestLimit } from './cranking-check.js';
import { ladderOf, lineOf } from './cranking-ladder.js';
import { type OhmicPart, ohmicParts } from './cranking-part.js';
import { judgeReading, needReadings } from './cranking-reading.js';
import { isMotor, lockedOhm, needStarter, settleStarter } from './cranking-starter.js';
import type {
  CrankingCircuit,
  CrankingCircuitInput,
  CrankingController,
  CrankingMoment,
  CrankingPartState,
} from './cranking-type.js';

const FN = 'crankingCircuit';

/**
 * Volts of a cranking circuit, part by part: battery, cables, joints, contact, starter, and back.
 *
 * Use it before a battery is moved, and with a meter when one cranks badly. A starter is a resistance, a measured
 * current, or a motor by its bench test, which asks for the current that gives the engine's torque at any volts: less
 * volts turn it more slowly, and do not lower the current. Volts at the controller are those between its own taps.
 *
 * $$V_\mathrm{starter} = V_\mathrm{open} - I\Bigl(R_\mathrm{battery} + \sum_k R_k\Bigr) \qquad
 * n_\mathrm{pm} = n_f\,\frac{V - I R_l}{V_f - I_f R_l} \qquad n_\mathrm{series} = n_\mathrm{pm}\,\frac{I_f}{I}$$
 *
 * with $R_l = V_l / I_l$ of the test held fast.
 *
 * @param input battery, parts out and back, starter, controller, limits, readings
 * @returns amperes, volts at posts, starter and controller, now and in the first moment, each part's share and limit, a
 * ladder of volts, the starter's line, bad parts, checks; or not possible, because a measured current would take all
 * volts
 * @throws InputError when a field is missing or out of range, or a name is not that of a part
 * @source circuit-theory; service-drop-limits (limits); a series motor's flux taken as proportional to its current
 * @example crankingCircuit({ openV: 12.6, batteryResistanceOhm: 0.009, outParts: [{ name: 'cable', role: 'cable', resistanceOhm: 0.001 }], returnParts: [{ name: 'strap', role: 'cable', resistanceOhm: 0.0005 }], starter: { kind: 'measured-current', currentA: 200 }, controller: null, budgets: [crankingBudgetSides], deviationV: 0.05 }).starterV //=> 10.5
 */
export function crankingCircuit(input: CrankingCircuitInput): CrankingCircuit | NotPossible<PathLimit> {
  const parts = guard(input);
  const { openV, batteryResistanceOhm, starter } = input;
  const pathOhm = parts.reduce((sum, part) => sum + part.resistanceOhm, 0);
  const point = settleStarter(starter, openV, batteryResistanceOhm + pathOhm);
  if ('code' in point) {
    return { possible: false, code: point.code, because: point.because, nearest: { currentA: point.mostA } };
  }
  const now = momentOf(input, parts, point.currentA);
  const firstA = isMotor(starter) ? openV / (batteryResistanceOhm + pathOhm + lockedOhm(starter)) : null;
  const firstMoment = firstA === null ? null : momentOf(input, parts, firstA);
  const states = statesOf(input, parts, point.currentA);
  const lost = (side: 'out' | 'return'): number =>
    states.reduce((sum, part) => (part.side === side ? sum + part.dropV : sum), 0);
  const [positiveDropV, negativeDropV] = [lost('out'), lost('return')];
  const gearRatio = isMotor(starter) ? starter.gearRatio : undefined;
  const engineRpm = point.speedRpm === null || gearRatio === undefined ? null : point.speedRpm / gearRatio;
  const checks = [
    ...budgetChecks(input.budgets, { parts: states, positiveV: positiveDropV, negativeV: negativeDropV }),
    ...ownChecks(input, now, firstMoment, engineRpm),
  ];
  return {
    possible: true,
    ...now,
    firstMoment,
    batteryDropV: openV - now.postV,
    positiveDropV,
    negativeDropV,
    dropV: positiveDropV + negativeDropV,
    speedRpm: point.speedRpm,
    engineRpm,
    stalled: point.stalled,
    starterPowerW: now.starterV * now.currentA,
    parts: states,
    ladder: ladderOf(now, states),
    line: firstA === null ? [] : lineOf(input, batteryResistanceOhm + pathOhm, firstA),
    badParts: states
      .filter(({ verdict }) => verdict === 'bad')
      .sort((a, b) => (b.extraOhm as number) - (a.extraOhm as number))
      .map(({ name }) => name),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

function guard(input: CrankingCircuitInput): OhmicPart[] {
  needInput(FN, input);
  const { openV, batteryResistanceOhm, controller, readings, readingA, leastEngineRpm, starter } = input;
  needMoreThan(FN, 'openV', openV);
  needNoLessThan(FN, 'batteryResistanceOhm', batteryResistanceOhm);
  const names = new Set(['battery']);
  const parts = [
    ...ohmicParts(FN, 'out', input.outParts, names),
    ...ohmicParts(FN, 'return', input.returnParts, names),
  ];
  needStarter(FN, starter);
  needBudgets(FN, input.budgets);
  needMoreThan(FN, 'deviationV', input.deviationV);
  if (readings !== undefined) needReadings(FN, readings, [...names]);
  if (readingA !== undefined) needMoreThan(FN, 'readingA', readingA);
  if (leastEngineRpm !== undefined) {
    needMoreThan(FN, 'leastEngineRpm', leastEngineRpm);
    if (!isMotor(starter) || starter.gearRatio === undefined) {
      throw new InputError(FN, 'starter.gearRatio', 'missing', undefined, 'is required by leastEngineRpm');
    }
  }
  if (controller !== null) needController(controller, parts);
  return parts;
}

function needController(controller: CrankingController, parts: readonly OhmicPart[]): void {
  if (typeof controller !== 'object') {
    const rule = controller === undefined ? 'missing' : 'object';
    throw new InputError(FN, 'controller', rule, controller, 'must be a controller, or null');
  }
  needMoreThan(FN, 'controller.leastV', controller.leastV);
  if (controller.firstLeastV !== null) needMoreThan(FN, 'controller.firstLeastV', controller.firstLeastV);
  for (const [field, side] of [
    ['outAfter', 'out'],
    ['groundBefore', 'return'],
  ] as const) {
    const name = controller[field];
    if (name === null) continue;
    needText(FN, `controller.${field}`, name);
    const names = parts.filter((part) => part.side === side).map((part) => part.name);
    if (!names.includes(name)) {
      throw new InputError(FN, `controller.${field}`, 'inTable', name, `must be null or one of ${names.join(', ')}`);
    }
  }
}

/** Volts where they matter, at a current. */
function momentOf(input: CrankingCircuitInput, parts: readonly OhmicPart[], currentA: number): CrankingMoment {
  const { openV, batteryResistanceOhm, controller } = input;
  const postV = openV - currentA * batteryResistanceOhm;
  const sum = (list: readonly OhmicPart[]): number => list.reduce((ohm, part) => ohm + part.resistanceOhm, 0);
  const at = (name: string | null): number => parts.findIndex((part) => part.name === name);
  const firstBack = parts.findIndex((part) => part.side === 'return');
  let controllerV: number | null = null;
  if (controller !== null) {
    const { outAfter, groundBefore } = controller;
    const before = sum(parts.slice(0, at(outAfter) + 1));
    const behind = groundBefore === null ? 0 : sum(parts.slice(Math.max(firstBack, at(groundBefore))));
    controllerV = postV - currentA * (before + behind);
  }
  return { currentA, postV, starterV: postV - currentA * sum(parts), controllerV };
}

function statesOf(input: CrankingCircuitInput, parts: readonly OhmicPart[], currentA: number): CrankingPartState[] {
  const { batteryResistanceOhm, budgets, deviationV, readings = [], readingA = currentA } = input;
  const inside = { name: 'battery', role: 'battery', side: 'battery', resistanceOhm: batteryResistanceOhm } as const;
  const all = [inside, ...parts];
  const totalOhm = all.reduce((ohm, part) => ohm + part.resistanceOhm, 0);
  return all.map(({ name, role, side, resistanceOhm }) => {
    const limit = tightestLimit(budgets, role);
    return {
      name,
      role,
      side,
      resistanceOhm,
      dropV: currentA * resistanceOhm,
      dropFraction: totalOhm > 0 ? resistanceOhm / totalOhm : 0,
      lossW: currentA * currentA * resistanceOhm,
      limitV: limit?.limitV ?? null,
      limitOhm: limit === null ? null : limit.limitV / currentA,
      budget: limit?.budget.key ?? null,
      ...judgeReading(name, resistanceOhm, readingA, deviationV, readings),
    };
  });
}
