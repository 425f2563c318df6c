export type {
  Network,
  NetworkBranch,
  NetworkDiode,
  NetworkLoad,
  NetworkSource,
  NetworkSwitch,
  SettleNetworkInput,
} from './element.js';
export { groundFaults, type GroundFaultsInput, type GroundFaultsResult } from './ground-faults.js';
export { groundFaultsEach, type GroundFaultsEachInput, type GroundFaultsEachResult } from './ground-faults-each.js';
export type {
  CutLoad,
  GroundFaultCase,
  LimitedBranch,
  LimitedCurrent,
  WatchedGround,
  WatchedShift,
} from './ground-faults-judge.js';
export {
  prepareGroundFaults,
  type PreparedGroundFaults,
  type PrepareGroundFaultsInput,
  type WatchedPoint,
} from './ground-faults-prepare.js';
export {
  sneakPaths,
  type SneakPath,
  type SneakPathsInput,
  type SneakPathsResult,
  type SneakState,
} from './sneak-paths.js';
export type { SneakCase, SneakLoad, SneakNode, SneakRelayState } from './sneak-paths-case.js';
export type { SneakChange } from './sneak-paths-change.js';
export type { SneakContact, SneakRelay } from './sneak-paths-relay.js';
export type {
  DiodeState,
  LoadState,
  NetworkIsland,
  NodeState,
  PowerBalance,
  SolvedBranch,
  SolveNetworkResult,
  SourceState,
  SwitchState,
} from './network-result.js';
export { settleNetwork } from './settle-network.js';
export type { SettledNetwork } from './settled.js';
export { solveNetwork } from './solve-network.js';
