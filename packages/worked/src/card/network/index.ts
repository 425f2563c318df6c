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
} from './lists.js';
export { sneakPathsCard, type SneakPathsShown } from './sneak-paths.js';
