import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needInteger } from '../error/guard.js';

export interface ToothFrequencyInput {
  /** Places around the wheel, those of missing teeth counted too; blades of a turbine; at least 1. */
  readonly teeth: number;
  /** Teeth missing one after the other, at least 0 and below `teeth`; 0 unless given. */
  readonly missingTeeth?: number;
  /** Turns of the wheel in one turn of the shaft whose speed is meant: 1 on a crank, 0.5 on a cam; above 0. */
  readonly turnRatio: number;
  /** Speed of the shaft in rpm, above 0; or the road speed; or the frequency. One only. */
  readonly speedRpm?: number;
  /** Road speed in km/h, above 0, with the rolling circumference of the tyre in m. */
  readonly speedKmh?: number;
  readonly circumferenceM?: number;
  /** Frequency of the teeth in Hz, above 0, as the input sees it between teeth that are there. */
  readonly frequencyHz?: number;
  /** Teeth for one pulse of a sensor that divides, such as a turbine's; 1 unless given. */
  readonly teethPerPulseCount?: number;
  /** Width of a tooth as a fraction of the pitch, above 0 and below 1. */
  readonly toothFraction?: number;
  /** Highest and lowest frequency that the input can follow in Hz, above 0. */
  readonly inputMostHz?: number;
  readonly inputLeastHz?: number;
}

export interface ToothFrequencyResult {
  /** Frequency at the input in Hz between teeth that are there: the highest that it must follow. */
  readonly frequencyHz: number;
  /** Pulses in one second, on the mean of a turn. */
  readonly meanHz: number;
  /** Time from pulse to pulse, and the longest, across the missing teeth, in s. */
  readonly periodS: number;
  readonly longestPeriodS: number;
  /** Pulses in one turn of the wheel. */
  readonly turnPulses: number;
  /** Angle from tooth to tooth, of the wheel and of the shaft whose speed is meant, in degrees. */
  readonly wheelPitchDeg: number;
  readonly shaftPitchDeg: number;
  /** Speed of the shaft in rpm, and of the road in km/h where a circumference is given. */
  readonly speedRpm: number;
  readonly speedKmh: number | null;
  /** Width of a tooth and of a gap as time, in s; null without `toothFraction`. */
  readonly toothS: number | null;
  readonly slotS: number | null;
  /** Shaft speed in rpm at which the input reaches its limits; null where no limit is given. */
  readonly mostRpm: number | null;
  readonly leastRpm: number | null;
  readonly checks: readonly Check[];
  readonly decidedBy: string | null;
}

/**
 * Frequency of a toothed wheel, a turbine's blades or a wheel ring, from its speed, or the speed from it.
 *
 * A wheel of 60 teeth has as many Hz as rpm. Missing teeth do not lower the frequency that the input must follow:
 * they lengthen one interval, which at cranking speed may look like standstill.
 *
 * $$f = \frac{n\,z\,i}{60} \qquad n = \frac{v}{3.6\,U}\,60$$
 *
 * @param input teeth, shaft, speed or frequency, limits of the input
 * @returns frequency in Hz, intervals in s, pulses and angles, speeds at the input's limits, checks
 * @throws InputError when a field is missing or out of range, or not exactly one speed is given
 * @source speed-sensor-notes (f = rpm × teeth ÷ 60)
 * @example toothFrequency({ teeth: 60, missingTeeth: 2, turnRatio: 1, speedRpm: 6000 }).frequencyHz //=> 6000
 */
export function toothFrequency(input: ToothFrequencyInput): ToothFrequencyResult {
  const fn = 'toothFrequency';
  needInput(fn, input);
  const { teeth, missingTeeth = 0, turnRatio, teethPerPulseCount = 1, circumferenceM, toothFraction } = input;
  needInteger(fn, 'teeth', teeth, 1);
  needInteger(fn, 'missingTeeth', missingTeeth);
  if (missingTeeth >= teeth) throw new InputError(fn, 'missingTeeth', 'below', missingTeeth, 'must be below teeth');
  needMoreThan(fn, 'turnRatio', turnRatio);
  needInteger(fn, 'teethPerPulseCount', teethPerPulseCount, 1);
  if (missingTeeth > 0 && teethPerPulseCount > 1) {
    throw new InputError(fn, 'teethPerPulseCount', 'range', teethPerPulseCount, 'must be 1 where teeth are missing');
  }
  if (circumferenceM !== undefined) needMoreThan(fn, 'circumferenceM', circumferenceM);
  if (toothFraction !== undefined) needBetween(fn, 'toothFraction', toothFraction, 0.001, 0.999);
  if (input.inputMostHz !== undefined) needMoreThan(fn, 'inputMostHz', input.inputMostHz);
  if (input.inputLeastHz !== undefined) needMoreThan(fn, 'inputLeastHz', input.inputLeastHz);
  const hzPerRpm = (teeth * turnRatio) / (60 * teethPerPulseCount);
  const speedRpm = speedOf(fn, input, hzPerRpm);
  const frequencyHz = speedRpm * hzPerRpm;
  const periodS = 1 / frequencyHz;
  const turnPulses = (teeth - missingTeeth) / teethPerPulseCount;
  const longestPeriodS = periodS * (missingTeeth + 1);
  const pitchS = periodS / teethPerPulseCount;
  const checks = checksOf(input, frequencyHz, longestPeriodS);
  return {
    frequencyHz,
    meanHz: (frequencyHz * (teeth - missingTeeth)) / teeth,
    periodS,
    longestPeriodS,
    turnPulses,
    wheelPitchDeg: 360 / teeth,
    shaftPitchDeg: 360 / (teeth * turnRatio),
    speedRpm,
    speedKmh: circumferenceM === undefined ? null : (speedRpm / 60) * circumferenceM * 3.6,
    toothS: toothFraction === undefined ? null : pitchS * toothFraction,
    slotS: toothFraction === undefined ? null : pitchS * (1 - toothFraction),
    mostRpm: input.inputMostHz === undefined ? null : input.inputMostHz / hzPerRpm,
    leastRpm: input.inputLeastHz === undefined ? null : (input.inputLeastHz * (missingTeeth + 1)) / hzPerRpm,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? null,
  };
}

/** Shaft speed in rpm from the one of three that is given. */
function speedOf(fn: string, input: ToothFrequencyInput, hzPerRpm: number): number {
  const { speedRpm, speedKmh, circumferenceM, frequencyHz } = input;
  const given = [speedRpm, speedKmh, frequencyHz].filter((speed) => speed !== undefined).length;
  if (given !== 1) {
    const value = given === 0 ? undefined : given;
    throw new InputError(fn, 'speedRpm', 'oneOfFields', value, 'or speedKmh or frequencyHz must be given, one only');
  }
  if (speedRpm !== undefined) {
    needMoreThan(fn, 'speedRpm', speedRpm);
    return speedRpm;
  }
  if (frequencyHz !== undefined) {
    needMoreThan(fn, 'frequencyHz', frequencyHz);
    return frequencyHz / hzPerRpm;
  }
  needMoreThan(fn, 'speedKmh', speedKmh as number);
  needMoreThan(fn, 'circumferenceM', circumferenceM as number, 0, 'a road speed needs the tyre');
  return ((speedKmh as number) / 3.6 / (circumferenceM as number)) * 60;
}

function checksOf(input: ToothFrequencyInput, frequencyHz: number, longestPeriodS: number): readonly Check[] {
  needNoLessThan('toothFrequency', 'frequencyHz', frequencyHz);
  const given = { unit: 'Hz', source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks: Check[] = [];
  if (input.inputMostHz !== undefined) {
    const name = 'frequency that the input can follow';
    checks.push(makeCheck({ ...given, name, value: frequencyHz, limit: input.inputMostHz, sense: 'atMost' }));
  }
  if (input.inputLeastHz !== undefined) {
    const name = 'slowest interval, across the missing teeth';
    checks.push(makeCheck({ ...given, name, value: 1 / longestPeriodS, limit: input.inputLeastHz, sense: 'atLeast' }));
  }
  return checks;
}
