import type { GeometricBasis } from './type.js';

/** Resistance from area and resistivity alone. Real stranded wire may be 6 to 16 % worse: never a default. */
export const geometric: GeometricBasis = { kind: 'geometric', key: 'geometric' };
