import { type FuseFamily, protectionCurves, type ProtectionCurvesInput } from 'loomwright';
import { defineCard } from '../type.js';
import { bladeChoices, ratingChoices, wireFields, wireOf } from './fields.js';

export const protectionCurvesCard = defineCard({
  name: 'protectionCurves',
  area: 'protection',
  question: 'How do load, fuse, wire and short lie in one picture?',
  page: 'fuses',
  fields: [
    { kind: 'choice', name: 'family', choices: bladeChoices, example: 'blade-fuse' },
    { kind: 'choice', name: 'ratingA', choices: ratingChoices, example: '20' },
    { kind: 'number', name: 'runA', above: 0, example: 9 },
    { kind: 'number', name: 'peakA', min: 0, example: 42, label: 'Peak at the start' },
    { kind: 'number', name: 'pulseS', above: 0, example: 0.06, unit: 'ms' },
    { kind: 'number', name: 'ampacityA', above: 0, example: 22 },
    ...wireFields({ areaMm2: 1.5, ambientTempC: 50, maxConductorTempC: 105, overloadTempC: 130, shortTempC: 250 }),
    { kind: 'number', name: 'farShortA', above: 0, example: 96 },
  ],
  results: [
    { name: 'wireAtShortS', round: 'down', primary: true },
    { name: 'fuseAtShortS', round: 'up' },
  ],
  steps: [
    {
      result: 'fuseAtShortS',
      text: 'By when the fuse has opened on the short at the far end',
      how: 'between two printed points, straight on logarithmic scales',
      source: 'iso-8820-3',
    },
    {
      result: 'wireAtShortS',
      text: 'How long the wire bears that short',
      how: 'all heat kept in the copper, from its class to what it bears for seconds',
      source: 'iec-60949',
    },
  ],
  sources: ['iso-8820-3', 'iec-60949'],
  cautions: ['local-code'],
  run: protectionCurves,
  input: (uses): ProtectionCurvesInput => {
    const n = (name: string): number => uses[name] as number;
    return {
      fuses: [{ name: `${n('ratingA')} A`, family: uses['family'] as FuseFamily, ratingA: n('ratingA') }],
      wires: [{ name: `${n('areaMm2')} mm²`, ampacityA: n('ampacityA'), wire: wireOf(uses) }],
      loads: [{ name: 'load', startSteps: [{ currentA: n('peakA'), durationS: n('pulseS') }], runA: n('runA') }],
      lines: [{ name: 'short at the far end', currentA: n('farShortA') }],
    };
  },
  scope: (_values, { wires, fuses, lines }) => {
    const at = lines[0]?.currentA ?? 0;
    return {
      wireAtShortS: onLine(wires[0]?.points ?? [], at),
      fuseAtShortS: onLine(fuses[0]?.longest ?? [], at),
    };
  },
});

/** The time of a line at a current, straight on logarithmic scales; null outside it. */
function onLine(points: readonly { readonly currentA: number; readonly timeS: number }[], at: number): number | null {
  const i = points.findIndex(({ currentA }) => currentA >= at);
  const b = points[i];
  if (b === undefined) return null;
  if (b.currentA === at) return b.timeS;
  const a = points[i - 1];
  if (a === undefined) return null;
  return a.timeS * (b.timeS / a.timeS) ** (Math.log(at / a.currentA) / Math.log(b.currentA / a.currentA));
}
