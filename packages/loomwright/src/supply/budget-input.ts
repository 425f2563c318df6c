import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needInteger, needList, needObject, needOwnName, needText } from '../error/guard.js';
import { type Alternator, needAlternator } from './alternator.js';
import { endCharge, type RestEnd } from './rest-end.js';

/** Something that draws, in one state or several. */
export interface BudgetLoad {
  readonly name: string;
  /** Current in A while it is on, above 0: this, or its power. */
  readonly currentA?: number;
  /** Power in W while it is on, above 0; at the volts of the alternator's curve. */
  readonly powerW?: number;
  /** Whole number from 1, the most important; null for what must stay on. */
  readonly priority: number | null;
  /** Share of the time that it is on, 0 to 1, by the name of the state. A state left out: off. */
  readonly dutyByState: Readonly<Record<string, number>>;
}

/** A way in which the vehicle is used. */
export interface BudgetState {
  readonly name: string;
  /** Engine speed in rpm, at least 0; 0 with the engine off. */
  readonly engineRpm: number;
  /** Share of the curve that is left, above 0 and at most 1: 1 as cold as the curve was taken, 0.7 to 0.9 hot. */
  readonly outputFactor: number;
  /** How long it must last in h; left out where it only has to balance. */
  readonly wantedTimeH?: number;
}

/** The battery behind it. */
export interface BudgetBattery {
  /** Rated charge in Ah, and the hours that it is for; above 0. */
  readonly ratedChargeAh: number;
  readonly ratedTimeH: number;
  /** Exponent of Peukert's law, 1 to 2; 1 for plain ampere-hours. */
  readonly peukertExponent: number;
  /** Charge at the start as a fraction, and what is to be left. */
  readonly startChargeFraction: number;
  readonly end: RestEnd;
  /** Most that it takes while it is charged, in A, above 0. */
  readonly acceptanceA: number;
  /** Charge kept over charge put in, above 0 and at most 1: about 0.85 for lead. */
  readonly chargeEfficiency: number;
}

export interface EnergyBudgetInput {
  readonly alternator: Alternator;
  readonly states: readonly BudgetState[];
  readonly loads: readonly BudgetLoad[];
  readonly battery: BudgetBattery;
}

/** Guards the input and returns the charge that is to be left. */
export function needBudget(fn: string, input: EnergyBudgetInput): number {
  needInput(fn, input);
  const { states, loads, battery } = input;
  needAlternator(fn, input.alternator);
  needList(fn, 'states', states, 1);
  const stateNames = new Set<string>();
  const names = states.map((state, i) => {
    const at = `states[${i}]`;
    needObject(fn, at, state);
    needOwnName(fn, `${at}.name`, state.name, stateNames);
    needNoLessThan(fn, `${at}.engineRpm`, state.engineRpm);
    needMoreThan(fn, `${at}.outputFactor`, state.outputFactor);
    needBetween(fn, `${at}.outputFactor`, state.outputFactor, 0, 1, 'a share of the curve');
    if (state.wantedTimeH !== undefined) needMoreThan(fn, `${at}.wantedTimeH`, state.wantedTimeH);
    return state.name;
  });
  needList(fn, 'loads', loads);
  const loadNames = new Set<string>();
  loads.forEach((load, i) => {
    needBudgetLoad(fn, `loads[${i}]`, load, names);
    needOwnName(fn, `loads[${i}].name`, load.name, loadNames);
  });
  needObject(fn, 'battery', battery);
  needMoreThan(fn, 'battery.ratedChargeAh', battery.ratedChargeAh);
  needMoreThan(fn, 'battery.ratedTimeH', battery.ratedTimeH);
  needBetween(fn, 'battery.peukertExponent', battery.peukertExponent, 1, 2);
  needBetween(fn, 'battery.startChargeFraction', battery.startChargeFraction, 0, 1, '80 % is 0.8');
  needMoreThan(fn, 'battery.acceptanceA', battery.acceptanceA);
  needMoreThan(fn, 'battery.chargeEfficiency', battery.chargeEfficiency);
  needBetween(fn, 'battery.chargeEfficiency', battery.chargeEfficiency, 0, 1);
  return endCharge(fn, battery.end, battery.startChargeFraction, 'battery.');
}

function needBudgetLoad(fn: string, at: string, load: BudgetLoad, states: readonly string[]): void {
  needObject(fn, at, load);
  const { name, currentA, powerW, priority, dutyByState } = load;
  needText(fn, `${at}.name`, name);
  if ((currentA === undefined) === (powerW === undefined)) {
    const field = currentA === undefined ? `${at}.currentA` : `${at}.powerW`;
    throw new InputError(fn, field, 'oneOfFields', powerW, 'must be given alone: either currentA or powerW');
  }
  if (currentA !== undefined) needMoreThan(fn, `${at}.currentA`, currentA);
  if (powerW !== undefined) needMoreThan(fn, `${at}.powerW`, powerW);
  if (priority !== null) needInteger(fn, `${at}.priority`, priority, 1);
  needObject(fn, `${at}.dutyByState`, dutyByState);
  for (const [state, duty] of Object.entries(dutyByState)) {
    if (!states.includes(state)) {
      throw new InputError(fn, `${at}.dutyByState`, 'oneOf', state, `must name one of ${states.join(', ')}`);
    }
    needBetween(fn, `${at}.dutyByState.${state}`, duty, 0, 1, '50 % is 0.5');
  }
}
