import { needAbove, needBetween } from '../error/guard.js';

/**
 * An area of wire: 0.001 mm², a fifth of No. 40, to a square metre. What is smaller is nearly always an area in m².
 */
export function needAreaMm2(fn: string, areaMm2: number): void {
  needAbove(fn, 'areaMm2', areaMm2);
  needBetween(fn, 'areaMm2', areaMm2, 1e-3, 1e6, areaMm2 < 1 ? 'is this in m²?' : '');
}

/** A length of wire: 0 to 1000 km, so that no result runs out of numbers. */
export function needLengthM(fn: string, lengthM: number): void {
  needBetween(fn, 'lengthM', lengthM, 0, 1e6);
}
