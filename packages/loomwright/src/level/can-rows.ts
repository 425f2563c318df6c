import type { IsotonicBlock } from '../number/isotonic-fit.js';
import type { CalibrateLevelInput } from './calibrate-level.js';
import type { JoinedCurve } from './can-curve.js';
import { type CanFit, weightOf } from './can-fit.js';
import type { DeadZone } from './can-zones.js';

/** One can against the fit and the table. */
export interface CanRow {
  readonly totalL: number;
  readonly readingValue: number;
  /** The reading that the fit has there, and the reading less that. */
  readonly fittedValue: number;
  readonly offValue: number;
  /** What the gauge shows for the reading, and by how much that is too high. */
  readonly shownL: number;
  readonly errorL: number;
  /** Standard uncertainty of the litres by the cans, and by the noise behind the fitted reading. */
  readonly canL: number;
  readonly curveL: number;
  /** Half-width of the band: the coverage factor times both together. */
  readonly bandL: number;
  /** Litres that the noise of one reading is worth here, one deviation. */
  readonly readingL: number;
  /** Whether it lies in a stretch at an end where the reading does not move. */
  readonly dead: boolean;
}

interface Rows {
  readonly input: CalibrateLevelInput;
  readonly fit: CanFit;
  readonly joined: JoinedCurve;
  readonly zones: readonly DeadZone[];
  readonly sign: 1 | -1;
  readonly shownOf: (readingValue: number) => number;
}

/** Every can, in the order given. */
export function canRows({ input, fit, joined, zones, sign, shownOf }: Rows): readonly CanRow[] {
  const { cans, canToleranceFraction, canErrors, coverageFactor, noughtAtL } = input;
  const { groups, blocks, sigma } = fit;
  let squares = 0;
  const canL = groups.map(({ totalL }, i) => {
    const poured = totalL - (groups[i - 1]?.totalL ?? 0);
    squares += poured * poured;
    return (canToleranceFraction * (canErrors === 'same-can' ? totalL : Math.sqrt(squares))) / Math.sqrt(3);
  });
  return cans.map(({ totalL, readingValue }) => {
    const g = groups.findIndex((group) => group.totalL === totalL);
    const block = blocks.find(({ toIndex }) => toIndex >= g) as IsotonicBlock;
    const zone = zones.find(({ where, fromL, toL }) => where !== 'middle' && totalL >= fromL && totalL <= toL);
    const steep = joined.steepAt(block.value);
    const shownL = shownOf(readingValue);
    const curveL =
      zone === undefined ? (sigma * steep) / Math.sqrt(weightOf(groups, block)) : zone.hiddenL / Math.sqrt(12);
    const fittedValue = sign * block.value + 0;
    return {
      totalL,
      readingValue,
      fittedValue,
      offValue: readingValue - fittedValue,
      shownL,
      errorL: shownL - Math.max(0, totalL - noughtAtL),
      canL: canL[g] as number,
      curveL,
      bandL: coverageFactor * Math.hypot(canL[g] as number, curveL),
      readingL: sigma * steep,
      dead: zone !== undefined,
    };
  });
}
