import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { curveCurrent, speedFor } from './alternator.js';
import {
  type BudgetBattery,
  type BudgetLoad,
  type BudgetState,
  type EnergyBudgetInput,
  needBudget,
} from './budget-input.js';
import { runTime } from './run-time.js';

export type { Alternator, AlternatorPoint } from './alternator.js';
export type { BudgetBattery, BudgetLoad, BudgetState, EnergyBudgetInput } from './budget-input.js';

/** A load in one state. */
export interface SolvedBudgetLoad {
  readonly name: string;
  /** Current in A while it is on, share of the time, and mean. */
  readonly currentA: number;
  readonly dutyFraction: number;
  readonly meanA: number;
  /** False where it has to be shed for the state to balance. */
  readonly kept: boolean;
}

/** A state with its balance. */
export interface SolvedBudgetState {
  readonly name: string;
  readonly rotorRpm: number;
  /** What the alternator can give in A. */
  readonly outputA: number;
  /** What all loads take on average, and all that are used, at once. The first empties the battery. */
  readonly meanA: number;
  readonly mostA: number;
  /** Output less mean: above 0 it charges, below 0 it drains. And output less all at once: the battery fills that in. */
  readonly balanceA: number;
  readonly mostBalanceA: number;
  /** Engine speed in rpm from which the means balance; null where the curve never gives them. */
  readonly balanceEngineRpm: number | null;
  /** Hours until the battery has what is to be left, with all loads switched on together; null where it is not drained. */
  readonly lastsTimeH: number | null;
  /** Amperes that go into the battery, and hours to put back what may be drawn; null where nothing is left over. */
  readonly rechargeA: number | null;
  readonly rechargeTimeH: number | null;
  readonly loads: readonly SolvedBudgetLoad[];
  /** What to shed, least important first, and the balance without it. Empty where the state balances. */
  readonly shed: readonly string[];
  readonly shedBalanceA: number;
  /** False where it does not balance with everything shed that may be. */
  readonly shedEnough: boolean;
}

export interface EnergyBudgetResult {
  readonly states: readonly SolvedBudgetState[];
  /** The curve at the speeds of the marks of ISO 8854, 1500 and 6000 rpm of the rotor; null outside the curve. */
  readonly lowMarkA: number | null;
  readonly ratedMarkA: number | null;
  /** Charge that is to be left, as a fraction. */
  readonly endChargeFraction: number;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

const LOW_MARK_RPM = 1500;
const RATED_MARK_RPM = 6000;
/** Sums of currents are told apart down to this share. */
const ROUNDING = 1e-12;

/**
 * Whether an alternator feeds everything that is on, state by state; and where it does not, how long the battery
 * fills in, and what to shed.
 *
 * Use it with the alternator's own curve and the engine's own idle: the headline amperes hold for 6000 rpm of the rotor
 * and a cold machine. Means are balanced here; the peak of a load is a matter of its wire, fuse and the battery.
 *
 * $$n_r = i\,n \qquad I_b = f\,I(n_r) - \sum I\,d \qquad
 * \frac1t = \frac1{q_1 - q_2}\,\frac{-I_b}{\sum d_s I_s} \sum \frac{d_s}{t(I_s)}$$
 *
 * Hours go by the currents $I_s > 0$ that the battery gives for shares $d_s$ of the time while loads are on together,
 * since Peukert's law on the mean of a switched load promises too much. Pauses give nothing back.
 *
 * Shed is what does not fit when loads are kept in order of importance. No smaller part of it would do.
 *
 * @param input alternator with its curve, states with speed and share of the curve, loads with duty, battery
 * @returns each state with output, mean, peak, balance, hours, what to shed; the curve at the rating marks; checks
 * @throws InputError when a field is missing or out of range, or a speed lies beyond the curve
 * Valid for currents that do not change with the volts; a drained battery's last hour is shorter than counted.
 * @source circuit-theory; peukert-law (hours); iso-8854 (speeds of the rating marks, from memory)
 * @example energyBudget({ alternator: { points: [{ rotorRpm: 1500, currentA: 35 }, { rotorRpm: 6000, currentA: 80 }], curveV: 13.5, pulleyRatio: 2.5 }, states: [{ name: 'idle', engineRpm: 800, outputFactor: 1 }], loads: [{ name: 'fan', currentA: 30, priority: 1, dutyByState: { idle: 0.5 } }], battery: { ratedChargeAh: 60, ratedTimeH: 20, peukertExponent: 1.2, startChargeFraction: 1, end: { kind: 'charge', chargeFraction: 0.5 }, acceptanceA: 20, chargeEfficiency: 0.85 } }).states[0].balanceA //=> 25
 */
export function energyBudget(input: EnergyBudgetInput): EnergyBudgetResult {
  const endChargeFraction = needBudget('energyBudget', input);
  const { alternator, states } = input;
  const solved = states.map((state, i) => solveState(input, state, i, endChargeFraction));
  const checks = solved.flatMap((state, i) => checksOf(input, states[i] as BudgetState, state));
  return {
    states: solved,
    lowMarkA: curveCurrent(alternator.points, LOW_MARK_RPM),
    ratedMarkA: curveCurrent(alternator.points, RATED_MARK_RPM),
    endChargeFraction,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

function solveState(input: EnergyBudgetInput, state: BudgetState, i: number, end: number): SolvedBudgetState {
  const { alternator, battery } = input;
  const rotorRpm = alternator.pulleyRatio * state.engineRpm;
  const curveA = curveCurrent(alternator.points, rotorRpm);
  if (curveA === null) {
    const must = `must keep the rotor within the curve (it turns at ${Number(rotorRpm.toPrecision(6))} rpm)`;
    throw new InputError('energyBudget', `states[${i}].engineRpm`, 'range', state.engineRpm, must);
  }
  const outputA = state.outputFactor * curveA;
  const loads = input.loads.map((load) => inState(load, state.name, alternator.curveV));
  const kept = keepInOrder(input.loads, loads, outputA);
  const total = (of: (load: LoadInState) => number): number => loads.reduce((sum, load) => sum + of(load), 0);
  const meanA = total((load) => load.meanA);
  const mostA = total((load) => (load.dutyFraction > 0 ? load.currentA : 0));
  const balanceA = outputA - meanA;
  const shed = input.loads
    .map((load, k) => ({ load, k }))
    .filter(({ k }) => kept[k] === false)
    .sort((a, b) => (b.load.priority as number) - (a.load.priority as number))
    .map(({ load }) => load.name);
  const shedBalanceA = outputA - total((load) => (shed.includes(load.name) ? 0 : load.meanA));
  const rechargeA = balanceA > 0 ? Math.min(balanceA, battery.acceptanceA) : null;
  const usableAh = (battery.startChargeFraction - end) * battery.ratedChargeAh;
  const neededRpm = speedFor(alternator.points, meanA / state.outputFactor);
  return {
    name: state.name,
    rotorRpm,
    outputA,
    meanA,
    mostA,
    balanceA,
    mostBalanceA: outputA - mostA,
    balanceEngineRpm: neededRpm === null ? null : neededRpm / alternator.pulleyRatio,
    lastsTimeH: balanceA < 0 ? hoursAt(battery, end, -balanceA, outputA, loads) : null,
    rechargeA,
    rechargeTimeH: rechargeA === null ? null : usableAh / (battery.chargeEfficiency * rechargeA),
    loads: loads.map((load, k) => ({ ...load, kept: kept[k] !== false })),
    shed,
    shedBalanceA,
    shedEnough: shedBalanceA >= -outputA * ROUNDING,
  };
}

type LoadInState = Omit<SolvedBudgetLoad, 'kept'>;

function inState(load: BudgetLoad, state: string, curveV: number): LoadInState {
  const currentA = load.currentA ?? (load.powerW as number) / curveV;
  const dutyFraction = Object.hasOwn(load.dutyByState, state) ? (load.dutyByState[state] as number) : 0;
  return { name: load.name, currentA, dutyFraction, meanA: currentA * dutyFraction };
}

/** Which loads stay on when they are kept in order of importance, the larger of two alike last. */
function keepInOrder(
  loads: readonly BudgetLoad[],
  solved: readonly { readonly meanA: number }[],
  outputA: number,
): readonly boolean[] {
  const meanOf = (k: number): number => (solved[k] as { readonly meanA: number }).meanA;
  const order = loads
    .map((_, k) => k)
    .sort((a, b) => (loads[a]?.priority ?? 0) - (loads[b]?.priority ?? 0) || meanOf(a) - meanOf(b) || a - b);
  const kept: boolean[] = loads.map(() => true);
  let takenA = 0;
  for (const k of order) {
    const stays = loads[k]?.priority === null || meanOf(k) === 0 || takenA + meanOf(k) <= outputA * (1 + ROUNDING);
    kept[k] = stays;
    if (stays) takenA += meanOf(k);
  }
  return kept;
}

/**
 * Hours at a mean shortage. Peukert's law is not for means: each ampere-hour counts at the current at which it flows,
 * with all loads switched on together, since no other timing of the same shares takes more from a parked battery. What
 * the alternator puts back in between is taken off in ampere-hours.
 */
function hoursAt(
  battery: BudgetBattery,
  endChargeFraction: number,
  shortA: number,
  outputA: number,
  loads: readonly LoadInState[],
): number | null {
  // A shortage too small to be told from none: the battery never notices.
  if (shortA < 1e-9 * battery.ratedChargeAh) return null;
  const longestFirst = [...loads].sort((a, b) => b.dutyFraction - a.dutyFraction);
  let currentA = -outputA;
  let drawnA = 0;
  let takenPerH = 0;
  longestFirst.forEach((load, k) => {
    currentA += load.currentA;
    const share = load.dutyFraction - (longestFirst[k + 1]?.dutyFraction ?? 0);
    if (share === 0 || currentA < 1e-9 * battery.ratedChargeAh) return;
    drawnA += share * currentA;
    takenPerH += share / fullTimeH(battery, currentA);
  });
  const { startChargeFraction } = battery;
  return (startChargeFraction - endChargeFraction) / (takenPerH * (shortA / drawnA));
}

/** Hours from full to empty at a current. */
function fullTimeH({ ratedChargeAh, ratedTimeH, peukertExponent }: BudgetBattery, currentA: number): number {
  const result = runTime({
    form: 'referenced',
    ratedChargeAh,
    ratedTimeH,
    peukertExponent,
    startChargeFraction: 1,
    endChargeFraction: 0,
    currentA,
    belowRate: 'rated-charge',
  });
  return (result.possible ? result.fullTimeH : null) as number;
}

function checksOf({ alternator }: EnergyBudgetInput, state: BudgetState, found: SolvedBudgetState): Check[] {
  const given = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const { name, wantedTimeH } = state;
  const { mostRotorRpm } = alternator;
  const checks: Check[] = [];
  if (wantedTimeH !== undefined) {
    checks.push(
      makeCheck({
        ...given,
        name: `${name}: lasts`,
        value: found.lastsTimeH,
        limit: wantedTimeH,
        unit: 'h',
        sense: 'atLeast',
        okWithoutNumber: true,
        ...(found.lastsTimeH === null ? { because: 'the battery is not drained' } : {}),
      }),
    );
  } else if (state.engineRpm > 0) {
    checks.push(
      makeCheck({
        name: `${name}: mean current`,
        value: found.meanA,
        limit: found.outputA,
        unit: 'A',
        sense: 'atMost',
        source: 'circuit-theory',
        sourceStatus: 'derived',
      }),
    );
  }
  if (mostRotorRpm !== undefined) {
    checks.push(
      makeCheck({
        ...given,
        name: `${name}: speed of the rotor`,
        value: found.rotorRpm,
        limit: mostRotorRpm,
        unit: 'rpm',
        sense: 'atMost',
      }),
    );
  }
  return checks;
}
