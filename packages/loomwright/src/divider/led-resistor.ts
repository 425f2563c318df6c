import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput, needInteger } from '../error/guard.js';
import type { PreferredSeries } from '../table/index.js';
import { figure } from './figure.js';
import { needTolerance } from './guard.js';
import { needSeries, preferredAbove, preferredBelow } from '../table/preferred-value.js';

export interface LedResistorInput {
  /** Least and most volts of the supply, above 0. */
  readonly lowestSupplyV: number;
  readonly highestSupplyV: number;
  /** Volts of one LED at its current, above 0. */
  readonly ledV: number;
  /** LEDs one after the other in a string, each string with one resistor; at least 1. */
  readonly seriesCount: number;
  /** Strings side by side, at least 1. */
  readonly stringCount: number;
  /** Current wanted in a string at the highest supply, in A, above 0. */
  readonly wantedA: number;
  /** Most current of the LED in A, at least the wanted one. */
  readonly mostA: number;
  /** Least current in A at which it is bright enough, at least 0. Judged at the lowest supply. */
  readonly leastA: number;
  /** Most heat that the resistor may make in W, above 0: its rating after derating. */
  readonly resistorMostW: number;
  /** The series that is in the drawer. */
  readonly series: PreferredSeries;
  /** Tolerance of the resistors as a fraction, 0 to below 1. */
  readonly toleranceFraction: number;
  /** Current that the output lets through when it is off, in A, above 0; and volts at which one LED is still dark. */
  readonly leakageA?: number;
  readonly darkV?: number;
  /** Least current in A that the output or flasher must see to take the lamp as present, above 0. */
  readonly leastLoadA?: number;
}

/** A resistor across the whole lamp. */
export interface LedBleeder {
  readonly resistanceOhm: number;
  /** Its current and heat at the highest supply. */
  readonly currentA: number;
  readonly powerW: number;
}

export interface LedDesign {
  readonly possible: true;
  readonly resistorOhm: number;
  /** The resistance that would give just the wanted current, and its heat. */
  readonly exactOhm: number;
  readonly exactW: number;
  /** Current of a string at the highest and at the lowest supply, resistor as marked. */
  readonly currentA: number;
  readonly lowestCurrentA: number;
  /** The same at the worse ends of the tolerance. */
  readonly worstHighA: number;
  readonly worstLowA: number;
  /** Heat of one resistor at the highest supply, as marked and at the worse end of the tolerance. */
  readonly resistorW: number;
  readonly worstResistorW: number;
  /** Current of the whole lamp at the highest supply, bleeder included. */
  readonly totalA: number;
  /** Resistor across the lamp against leakage and for the least load; null where none is needed. */
  readonly bleeder: LedBleeder | null;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

export type LedResistorResult = LedDesign | NotPossible<LedDesign>;

/**
 * The resistor for an LED, or strings of them, from the lowest to the highest supply; with a bleeder across the
 * lamp where an output leaks when off, or must see a current to take the lamp as present.
 *
 * The nearest preferred value is taken as long as the LED's own limit is kept at the highest supply and the low end
 * of the tolerance; else the next above.
 *
 * $$R = \frac{V_\mathrm{high} - n V_\mathrm{LED}}{I} \qquad P = I^2 R$$
 *
 * @param input supply, LEDs, limits, series
 * @returns resistor, currents, heat, bleeder, checks; or not possible, because, with the nearest design
 * @throws InputError when a field is missing or out of range
 * @source lessons-electric-circuits, volume III, chapter 3 (resistor and heat); iec-60063; circuit-theory (bleeder)
 * @example ledResistor({ lowestSupplyV: 11, highestSupplyV: 14.4, ledV: 2, seriesCount: 1, stringCount: 1, wantedA: 0.015, mostA: 0.02, leastA: 0.005, resistorMostW: 0.25, series: e24, toleranceFraction: 0.05 }).resistorOhm //=> 820
 */
export function ledResistor(input: LedResistorInput): LedResistorResult {
  guard(input);
  const { lowestSupplyV, ledV, seriesCount } = input;
  if (seriesCount * ledV >= lowestSupplyV) {
    const most = Math.ceil(lowestSupplyV / ledV) - 1;
    const shorter = most < 1 ? null : judge({ ...input, seriesCount: most });
    return {
      possible: false,
      code: 'string-too-long',
      because: `${seriesCount} LEDs need ${figure(seriesCount * ledV)} V and the supply falls to ${figure(lowestSupplyV)} V: at most ${most} in a string`,
      nearest: shorter,
    };
  }
  const design = judge(input);
  const failed = design.checks.find((check) => !check.ok);
  if (failed === undefined) return design;
  return {
    possible: false,
    code: failed.name === DIM ? 'too-dim' : failed.name === HEAT ? 'resistor-too-hot' : 'current-too-high',
    because: `${failed.name}: ${figure(failed.value)} ${failed.unit}, limit ${figure(failed.limit)}`,
    nearest: design,
  };
}

const DIM = 'current at the lowest supply';
const HEAT = 'heat of the resistor';

function guard(input: LedResistorInput): void {
  const fn = 'ledResistor';
  needInput(fn, input);
  needMoreThan(fn, 'lowestSupplyV', input.lowestSupplyV);
  needNoLessThan(fn, 'highestSupplyV', input.highestSupplyV, input.lowestSupplyV);
  needMoreThan(fn, 'ledV', input.ledV);
  needInteger(fn, 'seriesCount', input.seriesCount, 1);
  needInteger(fn, 'stringCount', input.stringCount, 1);
  needMoreThan(fn, 'wantedA', input.wantedA);
  needNoLessThan(fn, 'mostA', input.mostA, input.wantedA, input.mostA > 0 ? 'the limit is below what is wanted' : '');
  needNoLessThan(fn, 'leastA', input.leastA);
  needMoreThan(fn, 'resistorMostW', input.resistorMostW);
  needSeries(fn, input.series);
  needTolerance(fn, 'toleranceFraction', input.toleranceFraction);
  if (input.leakageA !== undefined) {
    needMoreThan(fn, 'leakageA', input.leakageA);
    needMoreThan(fn, 'darkV', input.darkV as number, 0, 'the volts at which one LED is still dark');
  } else if (input.darkV !== undefined) needMoreThan(fn, 'darkV', input.darkV);
  if (input.leastLoadA !== undefined) needMoreThan(fn, 'leastLoadA', input.leastLoadA);
}

function judge(input: LedResistorInput): LedDesign {
  const { lowestSupplyV, highestSupplyV, ledV, seriesCount, stringCount, wantedA, mostA, toleranceFraction: t } = input;
  const high = highestSupplyV - seriesCount * ledV;
  const low = lowestSupplyV - seriesCount * ledV;
  const exactOhm = high / wantedA;
  const below = preferredBelow(input.series, exactOhm);
  const above = preferredAbove(input.series, exactOhm);
  const belowIsNearer = exactOhm - below <= above - exactOhm;
  const safe = (ohm: number): boolean => high / (ohm * (1 - t)) <= mostA;
  let resistorOhm =
    belowIsNearer && safe(below) ? below : preferredAbove(input.series, Math.max(exactOhm, high / (mostA * (1 - t))));
  if (!safe(resistorOhm)) resistorOhm = preferredAbove(input.series, resistorOhm * (1 + 1e-6));
  const worstHighA = high / (resistorOhm * (1 - t));
  const worstLowA = low / (resistorOhm * (1 + t));
  const worstResistorW = worstHighA * high;
  const bleeder = bleederOf(input, worstLowA * stringCount);
  const given = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks: Check[] = [
    makeCheck({
      ...given,
      name: 'current at the highest supply',
      value: worstHighA,
      limit: mostA,
      unit: 'A',
      sense: 'atMost',
    }),
    makeCheck({ ...given, name: DIM, value: worstLowA, limit: input.leastA, unit: 'A', sense: 'atLeast' }),
    makeCheck({ ...given, name: HEAT, value: worstResistorW, limit: input.resistorMostW, unit: 'W', sense: 'atMost' }),
  ];
  if (input.leakageA !== undefined && bleeder !== null) {
    checks.push(
      makeCheck({
        ...given,
        name: 'volts across the lamp, output off',
        value: input.leakageA * bleeder.resistanceOhm * (1 + t),
        limit: seriesCount * (input.darkV as number),
        unit: 'V',
        sense: 'atMost',
      }),
    );
  }
  if (input.leastLoadA !== undefined) {
    const value = worstLowA * stringCount + (bleeder === null ? 0 : lowestSupplyV / (bleeder.resistanceOhm * (1 + t)));
    checks.push(
      makeCheck({
        ...given,
        name: 'current that the output sees',
        value,
        limit: input.leastLoadA,
        unit: 'A',
        sense: 'atLeast',
      }),
    );
  }
  const currentA = high / resistorOhm;
  return {
    possible: true,
    resistorOhm,
    exactOhm,
    exactW: wantedA * high,
    currentA,
    lowestCurrentA: low / resistorOhm,
    worstHighA,
    worstLowA,
    resistorW: currentA * high,
    worstResistorW,
    totalA: currentA * stringCount + (bleeder?.currentA ?? 0),
    bleeder,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

/** The largest preferred resistor across the lamp that keeps it dark when off and the load seen when on. */
function bleederOf(input: LedResistorInput, lampLowA: number): LedBleeder | null {
  const { leakageA, darkV, leastLoadA, lowestSupplyV, highestSupplyV, seriesCount, series, toleranceFraction } = input;
  const forDark = leakageA === undefined ? Infinity : (seriesCount * (darkV as number)) / leakageA;
  const missingA = leastLoadA === undefined ? 0 : leastLoadA - lampLowA;
  const forLoad = missingA > 0 ? lowestSupplyV / missingA : Infinity;
  const mostOhm = Math.min(forDark, forLoad) / (1 + toleranceFraction);
  if (mostOhm === Infinity) return null;
  // A value that equals the limit to the last bits must not pass it: take the next below then.
  const listed = preferredBelow(series, mostOhm);
  const resistanceOhm = listed <= mostOhm ? listed : preferredBelow(series, mostOhm * (1 - 1e-8));
  return {
    resistanceOhm,
    currentA: highestSupplyV / resistanceOhm,
    powerW: (highestSupplyV * highestSupplyV) / (resistanceOhm * (1 - toleranceFraction)),
  };
}
