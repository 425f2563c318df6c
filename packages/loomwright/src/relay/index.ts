export { relayPickup, type RelayPickupInput, type RelayPickupResult } from './relay-pickup.js';
