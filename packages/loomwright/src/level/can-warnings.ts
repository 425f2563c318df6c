import { short } from '../number/short.js';
import type { Against, CanFit, LevelCan } from './can-fit.js';
import type { DeadZone } from './can-zones.js';

/** What a reader of the table should know. */
export interface LevelWarning {
  readonly code:
    | 'can-off'
    | 'not-monotone'
    | 'repeat-off'
    | 'few-cans'
    | 'no-empty-reading'
    | 'dead-bottom'
    | 'dead-middle'
    | 'dead-top'
    | 'unusable-shown'
    | 'noise-above-error';
  readonly message: string;
  /** Litres that it concerns. */
  readonly fromL: number;
  readonly toL: number;
}

interface Told {
  readonly cans: readonly LevelCan[];
  readonly fit: CanFit;
  readonly zones: readonly DeadZone[];
  readonly against: readonly Against[];
  readonly coverageFactor: number;
  readonly mostGapL: number;
  readonly noughtAtL: number;
  readonly unusableL: number;
  readonly wantedErrorL: number | null;
  readonly noiseMostL: number;
  readonly sign: 1 | -1;
}

/** Every warning, in the order of their kinds. */
export function warningsOf(told: Told): readonly LevelWarning[] {
  const { fit, zones, mostGapL, noughtAtL, unusableL, wantedErrorL, noiseMostL } = told;
  const out: LevelWarning[] = [];
  const add = (code: LevelWarning['code'], fromL: number, toL: number, message: string): void => {
    out.push({ code, message, fromL, toL });
  };
  for (const { fromL, toL, suspectsL } of told.against) {
    const stretch = `from ${short(fromL)} to ${short(toL)} L`;
    if (suspectsL.length === 0) {
      add(
        'not-monotone',
        fromL,
        toL,
        `the readings ${stretch} go to and fro by more than noise: no single can is at fault`,
      );
    }
    for (const atL of suspectsL) {
      const others = suspectsL.filter((each) => each !== atL).map(short);
      const or = others.length === 0 ? '' : `, or that at ${others.join(' or ')} L does`;
      add('can-off', atL, atL, `the reading at ${short(atL)} L goes against the others by more than noise${or}`);
    }
  }
  for (const { totalL, readingValue } of repeatsOff(told)) {
    add(
      'repeat-off',
      totalL,
      totalL,
      `${short(readingValue)} at ${short(totalL)} L lies off its repeats by more than noise`,
    );
  }
  const { groups } = fit;
  const firstL = groups[0]?.totalL ?? 0;
  if (firstL > 0) {
    add('no-empty-reading', 0, firstL, `nothing was read below ${short(firstL)} L: read the empty tank too`);
  }
  groups.slice(1).forEach(({ totalL }, i) => {
    const beforeL = groups[i]?.totalL ?? 0;
    if (totalL - beforeL > mostGapL * (1 + 1e-9)) {
      add('few-cans', beforeL, totalL, `no can between ${short(beforeL)} and ${short(totalL)} L`);
    }
  });
  for (const { where, fromL, toL, turnL } of zones) {
    const low = where === 'top' ? turnL : fromL;
    const high = where === 'bottom' ? turnL : toL;
    const message = `the reading does not move from ${short(low)} to ${short(high)} L: what lies between is hidden`;
    add(`dead-${where}`, low, high, message);
  }
  if (unusableL > noughtAtL) {
    const message = `the pump draws air while up to ${short(unusableL - noughtAtL)} L are shown`;
    add('unusable-shown', noughtAtL, unusableL, message);
  }
  if (wantedErrorL !== null && noiseMostL > wantedErrorL) {
    const message = `the noise of one reading alone is worth ${short(noiseMostL)} L: more readings a can, or a filter`;
    add('noise-above-error', firstL, groups.at(-1)?.totalL ?? 0, message);
  }
  return out;
}

/** Single readings that lie off the mean of their repeats by more than noise. */
function repeatsOff({ cans, fit, coverageFactor, sign }: Told): readonly LevelCan[] {
  if (fit.degreesOfFreedom !== null) return [];
  return cans.filter(({ totalL, readingValue }) => {
    const group = fit.groups.find((each) => each.totalL === totalL);
    if (group === undefined || group.weight < 2) return false;
    const off = Math.abs(sign * readingValue - group.mean);
    return off > coverageFactor * fit.sigma * Math.sqrt(1 - 1 / group.weight) + 1e-9 * Math.abs(group.mean);
  });
}
