import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needEarthly, needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needConductorTempC, needInput, needList, needObject, needOneOf, needText } from '../error/guard.js';

/** A piece of cable, a joint or a contact between the points that the regulator watches and the battery's posts. */
export interface SensePart {
  readonly name: string;
  /** `positive`: between the watched point and the positive post. `negative`: between the regulator's ground and the other. */
  readonly side: 'positive' | 'negative';
  /** Resistance in Ω, at least 0, as warm as it gets. */
  readonly resistanceOhm: number;
  /** Current in A, at least 0. */
  readonly currentA: number;
  /** `charging`: the way that charging current takes. `discharging`: the other way, as where the battery feeds loads. */
  readonly flow: 'charging' | 'discharging';
}

export interface SenseErrorInput {
  /** Volts that the regulator holds at the points that it watches, above 0, and the temperature for which that is said. */
  readonly setV: number;
  readonly setTempC: number;
  /** How the set-point changes with the regulator's temperature, in V/K: about −0.01 for 12 V, 0 for none. */
  readonly setVPerK: number;
  /** Temperature of the regulator in °C. */
  readonly regulatorTempC: number;
  /** Everything between the watched points and the battery. Empty where it watches at the posts. */
  readonly parts: readonly SensePart[];
  /** Least and most charging volts of the battery at `limitsTempC`, above 0. */
  readonly leastV: number;
  readonly mostV: number;
  readonly limitsTempC: number;
  /** How these change with the battery's temperature, in V/K. */
  readonly limitsVPerK: number;
  /** Temperature of the battery in °C. */
  readonly batteryTempC: number;
}

/** A part with what it takes. */
export interface SolvedSensePart extends SensePart {
  /** Volts that the battery loses by it; below 0 where it gains. */
  readonly lossV: number;
}

export interface SenseErrorResult {
  /** What the regulator holds at its temperature. */
  readonly heldV: number;
  /** Volts at the battery's posts. */
  readonly batteryV: number;
  /** Battery less held, and of that what each side of the path does. */
  readonly errorV: number;
  readonly positiveLossV: number;
  readonly negativeLossV: number;
  /** Part of what the battery is off by that comes from the regulator being warmer or colder than it. */
  readonly temperatureErrorV: number;
  /** Limits at the battery's temperature, and their middle. */
  readonly leastBatteryV: number;
  readonly mostBatteryV: number;
  readonly wantedV: number;
  /** Battery less wanted. */
  readonly offV: number;
  /** Set-point, at `setTempC`, that would bring the battery to the middle with these losses. */
  readonly neededSetV: number;
  readonly parts: readonly SolvedSensePart[];
  readonly verdict: 'right' | 'undercharged' | 'overcharged';
  /** `none`: it is right. `sense-at-battery`: watched at the posts it would be. `set-point`: not even then. */
  readonly cure: 'none' | 'sense-at-battery' | 'set-point';
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * What a battery is charged with when the regulator watches somewhere else.
 *
 * A regulator holds the volts where it looks. What is lost on from there the battery does not get; and where the watched
 * wire also feeds loads from the battery, the regulator makes up for their drop and overcharges it.
 *
 * $$V_B = V_S + c\,(T_R - T_0) - \sum \pm I_k R_k$$
 *
 * @param input set-point with its temperature, path from the watched points to the posts with currents, limits
 * @returns volts held, at the battery and wanted, what each part does, verdict, cure, checks
 * @throws InputError when a field is missing or out of range, or the limits are the wrong way round
 * Valid while the alternator can give what is asked for; where it cannot, nothing is held.
 * @source circuit-theory; regulator-limits (usual volts and their change with temperature)
 * @example senseError({ setV: 14.4, setTempC: 25, setVPerK: 0, regulatorTempC: 25, parts: [{ name: 'charge cable', side: 'positive', resistanceOhm: 0.005, currentA: 60, flow: 'charging' }], leastV: 13.8, mostV: 14.7, limitsTempC: 25, limitsVPerK: 0, batteryTempC: 25 }).batteryV //=> 14.1
 */
export function senseError(input: SenseErrorInput): SenseErrorResult {
  guard(input);
  const { setV, setTempC, setVPerK, regulatorTempC, batteryTempC, limitsVPerK, limitsTempC } = input;
  const heldV = setV + setVPerK * (regulatorTempC - setTempC);
  const parts = input.parts.map((part): SolvedSensePart => {
    const lossV = part.currentA * part.resistanceOhm;
    return { ...part, lossV: part.flow === 'charging' || lossV === 0 ? lossV : -lossV };
  });
  const lossOf = (side: SensePart['side']): number =>
    parts.reduce((sum, part) => sum + (part.side === side ? part.lossV : 0), 0);
  const positiveLossV = lossOf('positive');
  const negativeLossV = lossOf('negative');
  const batteryV = heldV - positiveLossV - negativeLossV;
  const shift = limitsVPerK * (batteryTempC - limitsTempC);
  const leastBatteryV = input.leastV + shift;
  const mostBatteryV = input.mostV + shift;
  const wantedV = (leastBatteryV + mostBatteryV) / 2;
  const within = (volts: number): boolean => volts >= leastBatteryV && volts <= mostBatteryV;
  const given = { value: batteryV, unit: 'V', source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks = [
    makeCheck({ ...given, name: 'battery is charged enough', limit: leastBatteryV, sense: 'atLeast' }),
    makeCheck({ ...given, name: 'battery is not overcharged', limit: mostBatteryV, sense: 'atMost' }),
  ];
  return {
    heldV,
    batteryV,
    errorV: batteryV - heldV,
    positiveLossV,
    negativeLossV,
    temperatureErrorV: setVPerK * (regulatorTempC - batteryTempC),
    leastBatteryV,
    mostBatteryV,
    wantedV,
    offV: batteryV - wantedV,
    neededSetV: setV + wantedV - batteryV,
    parts,
    verdict: within(batteryV) ? 'right' : batteryV < leastBatteryV ? 'undercharged' : 'overcharged',
    cure: within(batteryV) ? 'none' : within(heldV) ? 'sense-at-battery' : 'set-point',
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

function guard(input: SenseErrorInput): void {
  const fn = 'senseError';
  needInput(fn, input);
  needMoreThan(fn, 'setV', input.setV);
  needEarthly(fn, 'setVPerK', input.setVPerK);
  needEarthly(fn, 'limitsVPerK', input.limitsVPerK);
  needConductorTempC(fn, 'setTempC', input.setTempC);
  needConductorTempC(fn, 'regulatorTempC', input.regulatorTempC);
  needConductorTempC(fn, 'limitsTempC', input.limitsTempC);
  needConductorTempC(fn, 'batteryTempC', input.batteryTempC);
  for (const field of ['setVPerK', 'limitsVPerK'] as const) {
    if (Math.abs(input[field]) <= 1) continue;
    throw new InputError(fn, field, 'range', input[field], 'must be from -1 to 1', 'is this in mV? −10 mV/K is −0.01');
  }
  needMoreThan(fn, 'leastV', input.leastV);
  needMoreThan(fn, 'mostV', input.mostV, input.leastV);
  needList(fn, 'parts', input.parts);
  input.parts.forEach((part, i) => {
    const at = `parts[${i}]`;
    needObject(fn, at, part);
    needText(fn, `${at}.name`, part.name);
    needOneOf(fn, `${at}.side`, part.side, ['positive', 'negative']);
    needNoLessThan(fn, `${at}.resistanceOhm`, part.resistanceOhm);
    needNoLessThan(fn, `${at}.currentA`, part.currentA);
    needOneOf(fn, `${at}.flow`, part.flow, ['charging', 'discharging']);
  });
}
