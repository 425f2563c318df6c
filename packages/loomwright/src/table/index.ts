export { ac4313Ampacity, ac4313CircularMils, awgStranded } from './ac-43-13-1b.js';
export {
  crankingBci,
  crankingBudgetGuideline,
  crankingBudgetParts,
  crankingBudgetSides,
  crankingDin43539,
  crankingEn50342,
  crankingIec60095,
  crankingSaeJ537,
  loadTest190A,
  loadTestToMinus12,
  loadTestToMinus18,
  restVoltsTenSteps,
  restVoltsThumb,
  restVoltsTrade,
  restVoltsWithDensity,
} from './battery.js';
export type { CrankingBudget, CrankingRating, LoadTestTable, RestVoltsTable } from './battery-type.js';
export { bladeFuse } from './blade-fuse.js';
export { boltInFuseSf30, boltInFuseSf51 } from './bolt-in-fuse.js';
export { fusePulses, type FusePulseTable } from './fuse-pulses.js';
export { largeBladeFuse } from './large-blade-fuse.js';
export { loadDump12V, loadDump24V, type LoadDumpTable } from './load-dump.js';
export { miniFuse } from './mini-fuse.js';
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
export { peukertExponents, type PeukertTable } from './peukert-exponents.js';
export { e12, e192, e24, e3, e48, e6, e96 } from './preferred.js';
export {
  necChapter9Table8Aluminium,
  necChapter9Table8Coated,
  necChapter9Table8Uncoated,
} from './nec-chapter-9-table-8.js';
export { saeJ1128 } from './sae-j1128.js';
export { iec60751, iec751of1983, platinumClassA, platinumClassAA, platinumClassB, platinumClassC } from './platinum.js';
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
  ThermocoupleClass,
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
export { type SenderRange, type SenderRangeTable, senderRanges } from './sender-range.js';
export { us33Cfr183Ampacity } from './us-33-cfr-183.js';
export { type BundleCurves, milW5088Bundle } from './mil-w-5088.js';
export {
  aircraftTwist,
  awgStrandedAreas,
  bendAtTerminals,
  bendCoaxBundle,
  bendH05vk,
  bendMultiConductor,
  bendPolyimide,
  bendSingleWire,
  bendThinWall,
  bendWelding,
  metricAreas,
  saeAreas,
} from './dressing.js';
export {
  as22759Alloy,
  as22759Silver,
  as22759Slash16,
  as22759Slash32,
  as22759Slash33,
  as22759Slash34,
  as22759Slash43,
  as22759Slash44,
  as22759Tin,
} from './insulated-as22759.js';
export { flexibleBatteryPvc, h01n2d, weldingCable, weldingCableConductor } from './insulated-battery.js';
export {
  doubleInsulatedSheet,
  hookUpFluoropolymer,
  hookUpMetric,
  standardWallSheet,
  thinWallSheet,
} from './insulated-data-sheets.js';
export { iso19642ThickWall, iso19642ThinWall, iso19642UltraThinWall } from './insulated-iso-19642.js';
export { gxlSheet, saeGpt, saeGxl, saeHdt, saeSgt, saeSgx, saeSxl, saeTxl } from './insulated-sae.js';
export type { InsulatedWireRow, InsulatedWireTable } from './insulated-type.js';
export type {
  AreaTable,
  BendRule,
  ContactDerating,
  LoadingTable,
  Plating,
  PullOutTable,
  Terminal,
  TerminalTable,
  TwistTable,
} from './joint-type.js';
export { as7928PullOut, iec60352PullOut, ul486aPullOut } from './pull-out.js';
export { bladeTerminals, connectorLoading, roundContacts } from './terminal.js';
export {
  ac4313Switch12V,
  ac4313Switch28V,
  milPrf22885Rating,
  milR5757Lamp,
  relayMakerInrush,
  relayMakerRating,
  relayModuleInrush,
  switchMakerRating,
} from './contact-ratio.js';
export { filamentLamp, halogenLamp, unR37Lamps } from './lamp.js';
export type {
  ContactLoad,
  ContactRatioTable,
  LampLaw,
  LampRow,
  LampTable,
  PowerListTable,
  VehicleLoadRow,
  VehicleLoadTable,
} from './load-type.js';
export { inrushLoads, textbookLoads, vehicleLoads } from './vehicle-load.js';
export {
  canCableByLength,
  type CanCableTable,
  canDropLines,
  canDs102,
  type CanEdgeRule,
  canEdgeTenth,
  canEdgeThird,
  canError29,
  canError31,
  type CanErrorRule,
  canLengthsA,
  canLengthsB,
  canLengthsC,
  canLengthsD,
  canLengthsEngine,
  type CanLengthTable,
  canLevels,
  type CanLevels,
  type CanLineRule,
  canLoad50to65,
  type CanLoadWindow,
} from './can.js';
