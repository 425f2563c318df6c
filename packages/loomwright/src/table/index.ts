export { ac4313Ampacity, ac4313CircularMils, awgStranded } from './ac-43-13-1b.js';
export { geometric } from './geometric.js';
export { iec60228Class2, iec60228Class2Tinned, iec60228Class5, iec60228Class5Tinned } from './iec-60228.js';
export { iso19642 } from './iso-19642.js';
export { saeJ1128 } from './sae-j1128.js';
export type { AmpacityTable, ConductorTable, GeometricBasis, ResistanceBasis, SizeKind, TableHeader } from './type.js';
export { us33Cfr183Ampacity } from './us-33-cfr-183.js';
