import { needFinite } from '../error/guard.js';
import { M_PER_FOOT, M_PER_MILE, MM_PER_INCH } from './constant.js';

/** Feet to metres (1 ft = 0.3048 m exactly). @example feetToM(14) //=> 4.2672 */
export function feetToM(feet: number): number {
  needFinite('feetToM', 'feet', feet);
  return feet * M_PER_FOOT;
}

/** Metres to feet (1 ft = 0.3048 m exactly). @example mToFeet(3.048) //=> 10 */
export function mToFeet(metres: number): number {
  needFinite('mToFeet', 'metres', metres);
  return metres / M_PER_FOOT;
}

/** Inches to millimetres (1 in = 25.4 mm exactly). @example inchesToMm(7) //=> 177.8 */
export function inchesToMm(inches: number): number {
  needFinite('inchesToMm', 'inches', inches);
  return inches * MM_PER_INCH;
}

/** Millimetres to inches (1 in = 25.4 mm exactly). @example mmToInches(50.8) //=> 2 */
export function mmToInches(millimetres: number): number {
  needFinite('mmToInches', 'millimetres', millimetres);
  return millimetres / MM_PER_INCH;
}

/** Statute miles to kilometres (1 mi = 1609.344 m exactly). @example milesToKm(60) //=> 96.56064 */
export function milesToKm(miles: number): number {
  needFinite('milesToKm', 'miles', miles);
  return (miles * M_PER_MILE) / 1000;
}
