export { groundFaultsCard, type GroundFaultsShown } from './ground-faults.js';
export {
  changesText,
  limitedText,
  namesText,
  networkText,
  relaysText,
  statesText,
  textOfNetwork,
  watchedText,
  type WiresOfText,
} from './lists.js';
export { solveNetworkCard, type SolveNetworkShown } from './solve-network.js';
export { sneakPathsCard, type SneakPathsShown } from './sneak-paths.js';
