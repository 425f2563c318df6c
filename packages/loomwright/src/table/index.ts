export { ac4313Ampacity, ac4313CircularMils, awgStranded } from './ac-43-13-1b.js';
export { bladeFuse } from './blade-fuse.js';
export {
  aircraftContinuousBudget,
  aircraftIntermittentBudget,
  chargingBudget,
  criticalFeedBudget,
  generalFeedBudget,
  lampBudget,
  sensorGroundBudget,
  starterBudget,
} from './drop-budget.js';
export { geometric } from './geometric.js';
export { iec60228Class2, iec60228Class2Tinned, iec60228Class5, iec60228Class5Tinned } from './iec-60228.js';
export { iso19642 } from './iso-19642.js';
export { e12, e192, e24, e3, e48, e6, e96 } from './preferred.js';
export {
  necChapter9Table8Aluminium,
  necChapter9Table8Coated,
  necChapter9Table8Uncoated,
} from './nec-chapter-9-table-8.js';
export { saeJ1128 } from './sae-j1128.js';
export {
  iec60751,
  iec751of1983,
  platinumClassA,
  platinumClassAA,
  platinumClassB,
  platinumClassC,
} from './platinum.js';
export {
  ntc100k,
  ntc103jl1a,
  ntc10k3mcd1,
  ntc10k44031,
  ntc2252,
  ntc3k44005,
  ntcCoolant2500,
  ntcMaterial1,
  ntcMaterial1Inverse,
} from './thermistor.js';
export { thermocoupleJ, thermocoupleK, thermocoupleN, thermocoupleT } from './thermocouple.js';
export type {
  BetaCurve,
  CubicCurve,
  CurveHeader,
  InverseCubicCurve,
  OddFourTermCurve,
  PlatinumClass,
  PlatinumCurve,
  PointCurve,
  SteinhartHartCurve,
  ThermistorCurve,
  ThermocoupleType,
} from './temperature-type.js';
export type {
  AmpacityTable,
  ConductorTable,
  DropBudget,
  FuseFamily,
  FuseLimits,
  GeometricBasis,
  PreferredSeries,
  ResistanceBasis,
  SizeKind,
  TableHeader,
} from './type.js';
export { us33Cfr183Ampacity } from './us-33-cfr-183.js';
