export { axleBalance, type AxleBalanceInput } from './axle-balance.js';
export { bundleSection, type BundleSectionInput } from './bundle-section.js';
export { canTrunk, type CanTrunkInput } from './can-trunk.js';
export { crankingLadder, type CrankingLadderInput } from './cranking-ladder.js';
export { cutPlan, type CutPlanInput } from './cut-plan.js';
export { type HeatCell, heatMatrix, type HeatMatrixInput } from './heat-matrix.js';
export {
  groundAmps,
  groundLine,
  type GroundLineInput,
  groundPoint,
  type GroundShade,
  groundShade,
  groundShades,
  groundVolts,
} from './ground-parts.js';
export { heatSection, type HeatSectionInput, type SectionWire } from './heat-section.js';
export { isolatorCircuit, type IsolatorCircuitInput } from './isolator-circuit.js';
export { pinCircuit, type PinCircuitInput, type PinPart } from './pin-circuit.js';
export { type BarPin, pinBars, type PinBarsInput } from './pin-bars.js';
export { type RangeRow, ruleRange, type RuleRangeInput } from './rule-range.js';
export { seriesCircuit, type SeriesCircuitInput } from './series-circuit.js';
export { stateBars, type StateBarsInput } from './state-bars.js';
export { splitCircuit, type SplitCircuitInput } from './split-circuit.js';
export { type Attributes, drawing, element, escapeText, ink, label, number } from './svg.js';
export { symbol, type SymbolKind } from './symbol.js';
export { warningCircuit, type WarningCircuitInput } from './warning-circuit.js';
export { voltLadder, type VoltLadderInput } from './volt-ladder.js';
export { voltWindows, type VoltState, type VoltWindowsInput } from './volt-windows.js';
