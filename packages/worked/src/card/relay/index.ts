export { coilsOnDriverCard, relayMapCard, relayPickupCard } from './coil.js';
export { checkRelayCard, coilSuppressionCard, contactShareCard } from './contact.js';
