export { checkRelay, type CheckRelayInput, type CheckRelayResult } from './check-relay.js';
export type { Coil } from './coil.js';
export {
  coilSuppression,
  type CoilSuppressionInput,
  type CoilSuppressionResult,
  type Suppressor,
} from './coil-suppression.js';
export {
  coilsOnDriver,
  type CoilsOnDriverInput,
  type CoilsOnDriverResult,
  type DrivenCoil,
  type DrivenCoilState,
} from './coils-on-driver.js';
export {
  contactShare,
  type ContactPart,
  type ContactShareInput,
  type ContactShareResult,
  type ParallelContact,
} from './contact-share.js';
export { relayMap, type RelayMapInput, type RelayMapResult, type RelayMapRow } from './relay-map.js';
export { relayPickup, type RelayPickupInput, type RelayPickupResult } from './relay-pickup.js';
