import type { LoadDumpInput, LoadDumpResult } from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

/** The pulse over its time: with nothing connected, at the loads, and with the suppressor. */
export function dumpOverTime({ pulse, loads, suppressor }: LoadDumpInput, found: LoadDumpResult): ChartSpec {
  const supplyV = pulse.kind === 'given' ? pulse.supplyV : pulse.table.supplyV;
  const share = found.loadsOhm === null ? 1 : found.loadsOhm / (found.loadsOhm + found.sourceOhm);
  const ownV = pulse.kind === 'alternator' && pulse.suppression === 'central' ? pulse.table.suppressedV : Infinity;
  const open = (s: number): number => supplyV + (found.openPeakV - supplyV) * 10 ** (-s / pulse.durationS);
  const atLoads = (s: number): number => Math.min(Math.max(open(s) * share, supplyV), ownV);
  const behind = found.sourceOhm * share;
  const clamped = (s: number): number => {
    if (suppressor === null || atLoads(s) <= suppressor.clampV) return atLoads(s);
    const amps = (open(s) * share - suppressor.clampV) / (behind + suppressor.dynamicOhm);
    return Math.min(atLoads(s), suppressor.clampV + suppressor.dynamicOhm * amps);
  };
  const line = (of: (s: number) => number): [number, number][] =>
    Array.from({ length: 41 }, (_, i) => (1.5 * pulse.durationS * i) / 40).map((s) => [1000 * s, of(s)]);
  const [weakest] = [...loads].sort((a, b) => a.standsV - b.standsV);
  return {
    title: 'The pulse over its time',
    x: { label: 'Time', unit: 'ms' },
    y: { label: 'Volts', unit: 'V' },
    series: [
      { name: 'nothing connected', points: line(open), colour: 'soft', as: 'line', labelAt: 6, labelSide: 'above' },
      { name: 'at the loads', points: line(atLoads), colour: 'text', as: 'line', labelAt: 2, labelSide: 'above' },
      ...(suppressor === null
        ? []
        : [
            {
              name: 'with the suppressor',
              points: line(clamped),
              colour: 'copper' as const,
              as: 'line' as const,
              labelAt: 0,
            },
          ]),
    ],
    limits:
      weakest === undefined
        ? []
        : [{ axis: 'y', value: weakest.standsV, name: `${weakest.name} stands`, fails: 'above' }],
  };
}
