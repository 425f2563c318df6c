export { seriesCircuit, type SeriesCircuitInput } from './series-circuit.js';
export { type Attributes, drawing, element, escapeText, ink, label, number } from './svg.js';
export { symbol, type SymbolKind } from './symbol.js';
export { voltLadder, type VoltLadderInput } from './volt-ladder.js';
