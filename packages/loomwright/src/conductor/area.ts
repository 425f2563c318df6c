import { needAbove, needAtLeast } from '../error/guard.js';

/** An area of wire: at least 0.001 mm², a fifth of No. 40. What is smaller is nearly always an area in m². */
export function needAreaMm2(fn: string, areaMm2: number): void {
  needAbove(fn, 'areaMm2', areaMm2);
  needAtLeast(fn, 'areaMm2', areaMm2, 1e-3, 'is this in m²?');
}
