// Exact definitions (NIST SP 811, appendix B); everything else in this room is derived from them in one chain.

/** Metres in one international foot (exact, 1959 agreement). */
export const M_PER_FOOT = 0.3048;
/** Millimetres in one inch (exact). */
export const MM_PER_INCH = 25.4;
/** Metres in one statute mile (exact). */
export const M_PER_MILE = 1609.344;
/** Kelvins between 0 K and 0 °C (exact). */
export const ZERO_C_IN_K = 273.15;
/** Kilograms in one avoirdupois pound (exact). */
export const KG_PER_POUND = 0.45359237;
/** Standard acceleration of gravity in m/s² (exact, by convention). */
export const STANDARD_GRAVITY = 9.80665;
/** Litres in one US gallon (exact: 231 in³). */
export const L_PER_US_GALLON = 3.785411784;
/** Litres in one imperial gallon (exact). */
export const L_PER_IMPERIAL_GALLON = 4.54609;
/** Kilopascals in one pound-force a square inch, from the exact pound, gravity and inch. */
export const KPA_PER_PSI: number = /* @__PURE__ */ (() => ((0.45359237 * 9.80665) / (25.4 * 25.4)) * 1000)();
/** Stefan–Boltzmann constant in W/(m²·K⁴), CODATA 2018 (exact from the SI constants, to the digits shown). */
export const STEFAN_BOLTZMANN = 5.670374419e-8;
