export { axleBalance, type AxleBalanceInput } from './axle-balance.js';
export { bundleSection, type BundleSectionInput } from './bundle-section.js';
export { cutPlan, type CutPlanInput } from './cut-plan.js';
export { heatSection, type HeatSectionInput, type SectionWire } from './heat-section.js';
export { type RangeRow, ruleRange, type RuleRangeInput } from './rule-range.js';
export { seriesCircuit, type SeriesCircuitInput } from './series-circuit.js';
export { type Attributes, drawing, element, escapeText, ink, label, number } from './svg.js';
export { symbol, type SymbolKind } from './symbol.js';
export { voltLadder, type VoltLadderInput } from './volt-ladder.js';
