export type { ConstantCurrentLoad, ConstantPowerLoad, Load, MotorLoad, ResistanceLoad } from './load.js';
export {
  type PartKind,
  type PathLimit,
  type PathPart,
  solvePath,
  type SolvedPart,
  type SolvePathInput,
  type SolvePathResult,
} from './solve-path.js';
