export * from './constant.js';
export { circularMilsToMm2, mm2ToCircularMils } from './area.js';
export { feetToM, inchesToMm, milesToKm, mmToInches, mToFeet } from './length.js';
export { imperialGallonsToL, poundsToKg, psiToKpa, usGallonsToL } from './mechanical.js';
export { cToFahrenheit, cToKelvin, fahrenheitToC, kelvinToC } from './temperature.js';
