import type { LimitedBranch, Network, NetworkBranch, NetworkLoad, WatchedGround } from 'loomwright';

// The grounds of Sandpiper, an invented truck: every figure is invented.

const wire = (name: string, from: string, to: string, milliohm: number): NetworkBranch => ({
  name,
  from,
  to,
  resistanceOhm: milliohm / 1000,
});
const heater = (name: string, to: string, resistanceOhm: number): NetworkLoad => ({
  name,
  from: 'plus',
  to,
  load: { kind: 'resistance', resistanceOhm },
});

/** What was laid to carry current back. */
export const straps: readonly NetworkBranch[] = [
  wire('battery to frame', 'battery post', 'frame front', 0.45),
  wire('battery to engine', 'battery post', 'engine', 0.5),
  wire('engine to frame', 'engine', 'frame front', 0.7),
  wire('nose stud', 'nose', 'frame front', 1.1),
  wire('bulkhead stud', 'bulkhead', 'frame front', 0.9),
  wire('dash stud', 'dash', 'bulkhead', 1.6),
  wire('frame, front to rear', 'frame front', 'frame rear', 0.6),
  wire('tail stud', 'tail', 'frame rear', 0.9),
  wire('roof strap', 'roof', 'dash', 6),
];

/** What was not, and would carry it all the same. */
export const strays: readonly NetworkBranch[] = [
  wire('throttle cable', 'engine', 'bulkhead', 22),
  wire('sensor shield', 'engine', 'dash', 60),
  wire('tank sender ground', 'frame rear', 'dash', 55),
  wire('aerial lead', 'roof', 'bulkhead', 45),
];

/** Loads that can be switched on; the two controllers are always on. */
export const loads: readonly NetworkLoad[] = [
  heater('starter', 'engine', 0.045),
  heater('radiator fan', 'nose', 0.55),
  heater('search lights', 'roof', 1.1),
  heater('heated screen', 'dash', 0.7),
  heater('tail lift', 'tail', 0.09),
];
const always: readonly NetworkLoad[] = [heater('engine controller', 'bulkhead', 4), heater('dash display', 'dash', 12)];

/** Each sensor is grounded where it sits, and read against the ground of its controller. */
export const sensors: readonly WatchedGround[] = [
  { name: 'coolant sensor', node: 'engine', against: 'bulkhead', permittedMv: 20 },
  { name: 'oil pressure', node: 'engine', against: 'dash', permittedMv: 20 },
  { name: 'outside air', node: 'nose', against: 'dash', permittedMv: 50 },
  { name: 'fuel level', node: 'frame rear', against: 'dash', permittedMv: 50 },
  { name: 'lift position', node: 'tail', against: 'dash', permittedMv: 50 },
];

export const limits: readonly LimitedBranch[] = [
  { branch: 'throttle cable', limitA: 1 },
  { branch: 'sensor shield', limitA: 0.5 },
  { branch: 'tank sender ground', limitA: 0.5 },
  { branch: 'aerial lead', limitA: 2 },
];

/** Sandpiper with these loads on and these straps off. */
export function sandpiper(on: readonly string[], lost: readonly string[]): Network {
  return {
    reference: 'battery post',
    branches: [...straps, ...strays].filter(({ name }) => !lost.includes(name)),
    sources: [{ name: 'battery', from: 'battery post', to: 'plus', voltageV: 12.6, resistanceOhm: 0.006 }],
    loads: [...always, ...loads.filter(({ name }) => on.includes(name))],
    // A strap that is off is an open switch: what hung on it alone is still there, and cut off.
    switches: straps.filter(({ name }) => lost.includes(name)).map((strap) => ({ ...strap, closed: false })),
  };
}
