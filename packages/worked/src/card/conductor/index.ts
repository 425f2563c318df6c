export { areaMm2ToAwgCard, awgToAreaMm2Card, awgToDiameterMmCard } from './gauge.js';
export { nearestSizesCard } from './nearest-sizes.js';
export { resistivityCard } from './resistivity.js';
export { wireMassCard } from './wire-mass.js';
export { wireResistanceCard } from './wire-resistance.js';
