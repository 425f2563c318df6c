import {
  rcFilter,
  type RcFilterInput,
  reluctorAmplitude,
  type ReluctorAmplitudeInput,
  type ToothFrequencyResult,
} from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

/** Frequency over the speed of the shaft, with what the input follows. */
export function frequencyBySpeed(
  output: ToothFrequencyResult,
  limits: { readonly inputMostHz?: number; readonly inputLeastHz?: number },
  label: string,
): ChartSpec {
  const hzPerRpm = output.frequencyHz / output.speedRpm;
  const gap = output.longestPeriodS / output.periodS;
  const from = output.speedRpm / 300;
  const at = Array.from({ length: 9 }, (_, i) => from * 9000 ** (i / 8));
  return {
    title: 'Frequency by the speed of the shaft',
    x: { label: 'Shaft', unit: 'rpm', log: true },
    y: { label: 'Frequency', unit: 'Hz', log: true },
    series: [
      {
        name: 'between teeth',
        points: at.map((n): [number, number] => [n, n * hzPerRpm]),
        colour: 'text',
        as: 'line',
        labelAt: 2,
      },
      ...(gap > 1
        ? [
            {
              name: 'across the gap',
              points: at.map((n): [number, number] => [n, (n * hzPerRpm) / gap]),
              colour: 'blue' as const,
              as: 'line' as const,
              labelAt: 5,
            },
          ]
        : []),
    ],
    limits: [
      ...(limits.inputMostHz === undefined
        ? []
        : [{ axis: 'y', value: limits.inputMostHz, name: 'input limit', fails: 'above' } as const]),
      ...(limits.inputLeastHz === undefined
        ? []
        : [{ axis: 'y', value: limits.inputLeastHz, name: 'standstill', fails: 'below' } as const]),
    ],
    chosen: { x: output.speedRpm, y: output.frequencyHz, label },
  };
}

/** Peak volts of a magnetic pick-up over the wheel's speed, at the gap and half a millimetre further off. */
export function peakBySpeed(input: ReluctorAmplitudeInput, label: string): ChartSpec {
  const from = input.lowestRpm / 3;
  const at = Array.from({ length: 17 }, (_, i) => from * ((input.highestRpm * 1.2) / from) ** (i / 16));
  const peak = (gapMm: number): [number, number][] =>
    at.map((rpm) => [rpm, reluctorAmplitude({ ...input, gapMm, lowestRpm: rpm, highestRpm: rpm }).lowestSpeedV]);
  const pitchMm = (Math.PI * input.wheelDiameterMm) / input.teeth;
  const further = Math.min(input.gapMm + 0.5, pitchMm);
  return {
    title: 'Peak volts at the input by the speed of the wheel, common practice',
    x: { label: 'Wheel', unit: 'rpm', log: true },
    y: { label: 'Peak', unit: 'V', log: true },
    series: [
      { name: 'at this gap', points: peak(input.gapMm), colour: 'text', as: 'line' },
      { name: '0.5 mm further off', points: peak(further), colour: 'blue', as: 'line', labelAt: 5 },
    ],
    limits: [
      { axis: 'y', value: input.inputLeastV, name: 'not seen', fails: 'below' },
      { axis: 'y', value: input.inputMostV, name: 'too much', fails: 'above' },
    ],
    chosen: { x: input.lowestRpm, y: reluctorAmplitude(input).lowestSpeedV, label },
  };
}

/** Share that a filter leaves, over the frequency. */
export function shareByFrequency(input: RcFilterInput, label: string): ChartSpec {
  const { cornerHz } = rcFilter(input);
  const at = Array.from({ length: 33 }, (_, i) => (cornerHz / 100) * 10 ** (i / 8));
  const share = (frequencyHz: number): number => (rcFilter({ ...input, frequencyHz }).outFraction ?? 0) * 100;
  return {
    title: 'Share that is left, by the frequency',
    x: { label: 'Frequency', unit: 'Hz', log: true },
    y: { label: 'Left', unit: '%', log: true },
    series: [{ name: '', points: at.map((f): [number, number] => [f, share(f)]), colour: 'text', as: 'line' }],
    chosen: { x: cornerHz, y: share(cornerHz), label },
  };
}
