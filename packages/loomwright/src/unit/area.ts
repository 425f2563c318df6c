import { needAtLeast } from '../error/guard.js';
import { MM_PER_INCH } from './constant.js';

/**
 * Circular mils to mm². A circular mil is the area of a circle one thousandth of an inch across.
 * @source nist-sp-811, appendix B.8
 * @example circularMilsToMm2(1000) //=> 0.506707
 */
export function circularMilsToMm2(circularMils: number): number {
  needAtLeast('circularMilsToMm2', 'circularMils', circularMils);
  return circularMils * ((Math.PI / 4) * (MM_PER_INCH / 1000) ** 2);
}

/** mm² to circular mils. @example mm2ToCircularMils(1) //=> 1973.525 */
export function mm2ToCircularMils(areaMm2: number): number {
  needAtLeast('mm2ToCircularMils', 'areaMm2', areaMm2);
  return areaMm2 / ((Math.PI / 4) * (MM_PER_INCH / 1000) ** 2);
}
