export { areaMm2ToAwg, AWG_SIZES, awgToAreaMm2, awgToDiameterMm } from './gauge.js';
export type { Metal } from './metal.js';
export { nearestSizes, type NearestSizesInput, type NearestSizesResult } from './nearest-sizes.js';
export { resistivity, type ResistivityInput, type ResistivityResult, type TemperatureForm } from './resistivity.js';
export type { ResolvedSize, SizeInput } from './size.js';
export { wireMass, type WireMassInput, type WireMassResult } from './wire-mass.js';
export { wireResistance, type WireResistanceInput, type WireResistanceResult } from './wire-resistance.js';
