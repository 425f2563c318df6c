import type { DropBudget } from './type.js';

// Voltage-drop budgets by class of circuit. A budget is judged with the wire hot.

/** 3 % of 12 V: panel feeds, navigation lights, bilge blowers, electronics (industry recommendation for small craft). */
export const criticalFeedBudget: DropBudget = {
  key: 'critical-feed-3-percent',
  circuits: 'feeds that matter: pumps, navigation lights, electronics',
  source: 'us-33-cfr-183',
  status: 'common-practice',
  dropV: 0.36,
  place: '3 % of 12 V, the recommendation that the small-craft trade prints beside the regulation; ISO 10133 likewise',
};

/** 10 % of 12 V: general lighting and what does not matter much. */
export const generalFeedBudget: DropBudget = {
  key: 'general-feed-10-percent',
  circuits: 'general lighting, loads that do not matter much',
  source: 'us-33-cfr-183',
  status: 'common-practice',
  dropV: 1.2,
  place: '10 % of 12 V, printed beside the 3 % recommendation',
};

/** 0.5 V from bus to equipment ground on a 14 V system, continuous (AC 43.13-1B table 11-6, from memory). */
export const aircraftContinuousBudget: DropBudget = {
  key: 'ac-43-13-1b-14-v-continuous',
  circuits: 'any load that runs continuously on a 14 V system',
  source: 'ac-43-13-1b',
  status: 'memory',
  dropV: 0.5,
  place: 'table 11-6, 14 V, continuous operation; the 0.5 V column also appears in tables 11-7 and 11-8',
};

/** 1 V from bus to equipment ground on a 14 V system, intermittent (AC 43.13-1B table 11-6, from memory). */
export const aircraftIntermittentBudget: DropBudget = {
  key: 'ac-43-13-1b-14-v-intermittent',
  circuits: 'a load that runs for short times on a 14 V system',
  source: 'ac-43-13-1b',
  status: 'memory',
  dropV: 1,
  place: 'table 11-6, 14 V, intermittent operation',
};

/** 0.8 V while cranking: 0.5 V on the positive side and 0.3 V on the ground side (tester manual). */
export const starterBudget: DropBudget = {
  key: 'starter-0-8-v',
  circuits: 'starter, while cranking',
  source: 'service-drop-limits',
  status: 'published',
  dropV: 0.8,
  place: 'positive side 0.5 V, ground side 0.3 V, total 0.8 V while cranking',
};

/** 0.7 V on a charging circuit: 0.5 V positive, 0.2 V negative. */
export const chargingBudget: DropBudget = {
  key: 'charging-0-7-v',
  circuits: 'alternator to battery and back, at full output',
  source: 'service-drop-limits',
  status: 'common-practice',
  dropV: 0.7,
  place: 'positive side 0.5 V, negative side 0.2 V, from a secondary encyclopedia',
};

/** 0.5 V for lamps: at 96 % of its volts a filament lamp gives about 87 % of its light. */
export const lampBudget: DropBudget = {
  key: 'lamp-0-5-v',
  circuits: 'filament lamps',
  source: 'common-practice',
  status: 'common-practice',
  dropV: 0.5,
  place: 'rule of thumb',
};

/** 10 mV between a sensor's ground and the controller's. */
export const sensorGroundBudget: DropBudget = {
  key: 'sensor-ground-10-mv',
  circuits: "a sensor's ground against the controller's",
  source: 'common-practice',
  status: 'common-practice',
  dropV: 0.01,
  place: 'rule of thumb: two counts of a 10-bit reading of 5 V',
};
