import { needFinite } from '../error/guard.js';
import { KG_PER_POUND, KPA_PER_PSI, L_PER_IMPERIAL_GALLON, L_PER_US_GALLON } from './constant.js';

/** Pounds (avoirdupois) to kilograms. @example poundsToKg(10) //=> 4.5359237 */
export function poundsToKg(pounds: number): number {
  needFinite('poundsToKg', 'pounds', pounds);
  return pounds * KG_PER_POUND;
}

/** Pounds-force a square inch to kilopascals. @example psiToKpa(58) //=> 399.896 */
export function psiToKpa(psi: number): number {
  needFinite('psiToKpa', 'psi', psi);
  return psi * KPA_PER_PSI;
}

/** US gallons to litres (231 in³ exactly). @example usGallonsToL(10) //=> 37.85411784 */
export function usGallonsToL(gallons: number): number {
  needFinite('usGallonsToL', 'gallons', gallons);
  return gallons * L_PER_US_GALLON;
}

/** Imperial gallons to litres (4.54609 L exactly). @example imperialGallonsToL(10) //=> 45.4609 */
export function imperialGallonsToL(gallons: number): number {
  needFinite('imperialGallonsToL', 'gallons', gallons);
  return gallons * L_PER_IMPERIAL_GALLON;
}
