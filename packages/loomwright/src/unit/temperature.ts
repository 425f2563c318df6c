import { needAtLeast } from '../error/guard.js';
import { ZERO_C_IN_K } from './constant.js';

/** Degrees Fahrenheit to degrees Celsius: an absolute temperature, not a difference. @example fahrenheitToC(185) //=> 85 */
export function fahrenheitToC(fahrenheit: number): number {
  needAtLeast('fahrenheitToC', 'fahrenheit', fahrenheit, -459.67, 'below absolute zero');
  return ((fahrenheit - 32) * 5) / 9;
}

/** Degrees Celsius to degrees Fahrenheit: an absolute temperature, not a difference. @example cToFahrenheit(105) //=> 221 */
export function cToFahrenheit(celsius: number): number {
  needAtLeast('cToFahrenheit', 'celsius', celsius, -ZERO_C_IN_K, 'below absolute zero');
  return (celsius * 9) / 5 + 32;
}

/** Degrees Celsius to kelvins. @example cToKelvin(20) //=> 293.15 */
export function cToKelvin(celsius: number): number {
  needAtLeast('cToKelvin', 'celsius', celsius, -ZERO_C_IN_K, 'below absolute zero');
  return celsius + ZERO_C_IN_K;
}

/** Kelvins to degrees Celsius. @example kelvinToC(300) //=> 26.85 */
export function kelvinToC(kelvin: number): number {
  needAtLeast('kelvinToC', 'kelvin', kelvin, 0, 'below absolute zero');
  return kelvin - ZERO_C_IN_K;
}
