import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needInteger } from '../error/guard.js';

export interface ReluctorAmplitudeInput {
  /** One measurement: peak volts of the open coil, above 0, at a speed of the wheel and a gap. */
  readonly measuredV: number;
  readonly measuredRpm: number;
  readonly measuredGapMm: number;
  /** Gap that is asked about in mm, above 0. Neither gap may pass one tooth pitch: nothing is left to read there. */
  readonly gapMm: number;
  /** Teeth of the wheel, missing ones counted, and its diameter over the teeth in mm, above 0. */
  readonly teeth: number;
  readonly wheelDiameterMm: number;
  /** Lowest and highest speed of the wheel that is to be read, in rpm; the lowest above 0. */
  readonly lowestRpm: number;
  readonly highestRpm: number;
  /** Resistance of the coil in Ω and its inductance in H, at least 0. */
  readonly coilOhm: number;
  readonly coilH: number;
  /** Resistance of the input in Ω, above 0. */
  readonly inputOhm: number;
  /** Peak volts that the input needs, and that it stands, above 0. */
  readonly inputLeastV: number;
  readonly inputMostV: number;
}

export interface ReluctorAmplitudeResult {
  /** Peak volts at the input at the lowest and at the highest speed. */
  readonly lowestSpeedV: number;
  readonly highestSpeedV: number;
  /** Open-coil volts at the highest speed: what an open input must stand. */
  readonly openHighestSpeedV: number;
  /** Amplitude at the gap over that at the measured gap. */
  readonly gapFactor: number;
  /** Amplitude lost by one tenth of a millimetre more gap, as a fraction. */
  readonly lossPerTenthMmFraction: number;
  /** Tooth pitch in mm, and the frequency at the highest speed in Hz. */
  readonly pitchMm: number;
  readonly highestHz: number;
  /** Lowest wheel speed in rpm at which the input sees enough; null where it never does. */
  readonly readableRpm: number | null;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * Amplitude of a variable-reluctance sensor over speed and gap, from one measurement.
 *
 * The volts rise with the speed and fall steeply with the gap: the field of a row of teeth dies away by e in
 * pitch ÷ 2π. A rough guide, good to a factor of about two: saturation, tooth shape and eccentric wheels are left
 * out. Measure at cranking speed before relying on it.
 *
 * $$V = V_0\,\frac{n}{n_0}\,e^{-2\pi (g - g_0)/\tau}\,\frac{R_\mathrm{in}}{\sqrt{(R_\mathrm{in} + R_c)^2 + (\omega L)^2}}$$
 *
 * @param input measurement, gap, wheel, speeds, coil, input
 * @returns peak volts at both speeds, gap factor, lowest readable speed in rpm, checks
 * @throws InputError when a field is missing or out of range
 * @source common-practice (volts in proportion to speed, exponential fall with gap)
 * @example reluctorAmplitude({ measuredV: 2, measuredRpm: 200, measuredGapMm: 0.8, gapMm: 1, teeth: 36, wheelDiameterMm: 160, lowestRpm: 150, highestRpm: 7000, coilOhm: 900, coilH: 0.4, inputOhm: 10000, inputLeastV: 0.4, inputMostV: 120 }).gapFactor //=> 0.913931
 */
export function reluctorAmplitude(input: ReluctorAmplitudeInput): ReluctorAmplitudeResult {
  guard(input);
  const { measuredV, measuredRpm, measuredGapMm, gapMm, teeth, wheelDiameterMm, lowestRpm, highestRpm } = input;
  const { coilOhm, coilH, inputOhm, inputLeastV, inputMostV } = input;
  const pitchMm = (Math.PI * wheelDiameterMm) / teeth;
  const gapFactor = Math.exp((-2 * Math.PI * (gapMm - measuredGapMm)) / pitchMm);
  const openVPerRpm = (measuredV / measuredRpm) * gapFactor;
  const reactanceOhmPerRpm = 2 * Math.PI * (teeth / 60) * coilH;
  const loadedV = (rpm: number): number =>
    (openVPerRpm * rpm * inputOhm) / Math.hypot(inputOhm + coilOhm, reactanceOhmPerRpm * rpm);
  // Where the loaded volts equal the threshold: a quadratic in rpm without a linear term.
  const room = (openVPerRpm * inputOhm) ** 2 - (inputLeastV * reactanceOhmPerRpm) ** 2;
  const readableRpm = room > 0 ? (inputLeastV * (inputOhm + coilOhm)) / Math.sqrt(room) : null;
  const lowestSpeedV = loadedV(lowestRpm);
  const highestSpeedV = loadedV(highestRpm);
  const rough = { unit: 'V', source: 'common-practice', sourceStatus: 'common-practice' } as const;
  const checks: readonly Check[] = [
    makeCheck({
      ...rough,
      name: 'peak at the lowest speed',
      value: lowestSpeedV,
      limit: inputLeastV,
      sense: 'atLeast',
    }),
    makeCheck({
      ...rough,
      name: 'peak at the highest speed',
      value: highestSpeedV,
      limit: inputMostV,
      sense: 'atMost',
    }),
  ];
  return {
    lowestSpeedV,
    highestSpeedV,
    openHighestSpeedV: openVPerRpm * highestRpm,
    gapFactor,
    lossPerTenthMmFraction: 1 - Math.exp((-2 * Math.PI * 0.1) / pitchMm),
    pitchMm,
    highestHz: (teeth * highestRpm) / 60,
    readableRpm,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

function guard(input: ReluctorAmplitudeInput): void {
  const fn = 'reluctorAmplitude';
  needInput(fn, input);
  needMoreThan(fn, 'measuredV', input.measuredV);
  needMoreThan(fn, 'measuredRpm', input.measuredRpm);
  needMoreThan(fn, 'measuredGapMm', input.measuredGapMm);
  needMoreThan(fn, 'gapMm', input.gapMm);
  needInteger(fn, 'teeth', input.teeth, 1);
  needMoreThan(fn, 'wheelDiameterMm', input.wheelDiameterMm);
  const pitchMm = (Math.PI * input.wheelDiameterMm) / input.teeth;
  needBetween(fn, 'measuredGapMm', input.measuredGapMm, 0, pitchMm, 'further than one tooth pitch');
  needBetween(fn, 'gapMm', input.gapMm, 0, pitchMm, 'further than one tooth pitch');
  needMoreThan(fn, 'lowestRpm', input.lowestRpm);
  needNoLessThan(fn, 'highestRpm', input.highestRpm, input.lowestRpm);
  needNoLessThan(fn, 'coilOhm', input.coilOhm);
  needNoLessThan(fn, 'coilH', input.coilH);
  needMoreThan(fn, 'inputOhm', input.inputOhm);
  needMoreThan(fn, 'inputLeastV', input.inputLeastV);
  needMoreThan(fn, 'inputMostV', input.inputMostV, input.inputLeastV);
}
