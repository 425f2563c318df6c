export {
  balanceShift,
  type BalanceShiftInput,
  type BalanceShiftResult,
  type CornerLoads,
  type CornerRule,
  type LoadShift,
  type MassChange,
  type VehicleLoads,
  type VehiclePlace,
} from './balance-shift.js';
export type { BoundReason } from './bound.js';
export { bundleDiameter, type BundleDiameterInput, type BundleDiameterResult } from './bundle-diameter.js';
export { centreOfMass, type CentreOfMassInput, type CentreOfMassResult, type PlacedMass } from './centre-of-mass.js';
export { cutLength, type CutLengthInput, type CutLengthResult, type Twist } from './cut-length.js';
export { insulatedWire, type InsulatedWireInput, type InsulatedWireResult } from './insulated-wire.js';
export { insulatedWireMass, type InsulatedWireMassInput, type InsulatedWireMassResult } from './insulated-wire-mass.js';
export { massToMove, type MassToMove, type MassToMoveInput } from './mass-to-move.js';
export type { BundleDiameterRule } from './measure.js';
export { packBundle, type PackBundleInput, type PackBundleResult, type PackedWire } from './pack-bundle.js';
export { type FillRule, type Sleeve, sleeveFill, type SleeveFillInput, type SleeveFillResult } from './sleeve-fill.js';
export { twistPitch, type TwistPitchInput, type TwistPitchResult } from './twist-pitch.js';
export type { BundleWire } from './wires.js';
