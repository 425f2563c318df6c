/**
 * The trunk of *Sandpiper*, an invented beach-rescue light truck. Every figure here is invented.
 * Metres: `x` from the nose to the tail, `y` from the centre line, positive to the right-hand side of the vehicle.
 */

/** What a strand of the drawing carries. A heavy feed is one that a thumb-thick cable would serve. */
export type StrandKind = 'feed' | 'heavy' | 'signal' | 'bus';

/** The sign at the end of a branch, in the manner of IEC 60617. */
export type EndSign = 'motor' | 'lamp' | 'battery' | 'heater' | 'sensor' | 'unit';

/** The end of a branch: something fitted, with the strands that go to it. */
export interface TrunkEnd {
  readonly name: string;
  /** A second line below the name. */
  readonly detail?: string;
  readonly sign: EndSign;
  readonly x: number;
  readonly y: number;
  readonly strands: readonly StrandKind[];
}

export interface Trunk {
  readonly lengthM: number;
  readonly widthM: number;
  /** Where the strands begin. */
  readonly boxX: number;
  /** The spine runs along `y`, and from `jogX` on along `jogY`. */
  readonly spineY: number;
  readonly jogX: number;
  readonly jogY: number;
  readonly bulkheadX: number;
  readonly cabBackX: number;
  readonly axlesX: readonly number[];
  /** Served by branches at right angles to the spine or, where `y` is the spine's own, by its end. */
  readonly ends: readonly TrunkEnd[];
}

export const sandpiperTrunk: Trunk = {
  lengthM: 5.2,
  widthM: 1.9,
  boxX: 1.16,
  spineY: -0.26,
  jogX: 2.0,
  jogY: 0.32,
  bulkheadX: 1.42,
  cabBackX: 2.96,
  axlesX: [0.86, 4.12],
  ends: [
    { name: 'winch', detail: '4 kW', sign: 'motor', x: 0.06, y: -0.26, strands: ['heavy'] },
    { name: 'head lamps', sign: 'lamp', x: 0.3, y: -0.66, strands: ['feed', 'feed'] },
    { name: 'starter battery', sign: 'battery', x: 0.86, y: -0.62, strands: ['heavy'] },
    { name: 'radiator fan', detail: 'two speeds', sign: 'motor', x: 0.3, y: 0.2, strands: ['feed', 'feed'] },
    {
      name: 'injection',
      detail: 'four cylinders',
      sign: 'unit',
      x: 0.84,
      y: 0.28,
      strands: ['feed', 'signal', 'signal'],
    },
    { name: 'wipers', sign: 'motor', x: 1.58, y: -0.72, strands: ['feed'] },
    { name: 'heated screen', sign: 'heater', x: 1.58, y: 0.36, strands: ['feed'] },
    { name: 'display, switches', detail: 'on the bus', sign: 'unit', x: 2.4, y: -0.36, strands: ['bus'] },
    { name: 'radio', sign: 'unit', x: 2.84, y: -0.3, strands: ['feed'] },
    { name: 'service battery', sign: 'battery', x: 3.3, y: -0.44, strands: ['heavy'] },
    { name: 'fridge', sign: 'motor', x: 3.84, y: -0.56, strands: ['feed'] },
    { name: 'amber beacons', sign: 'lamp', x: 4.36, y: -0.5, strands: ['feed'] },
    { name: 'tail lamps', detail: 'and trailer socket', sign: 'lamp', x: 4.94, y: -0.62, strands: ['feed', 'feed'] },
    { name: 'search lights', sign: 'lamp', x: 2.56, y: 0.72, strands: ['feed', 'feed'] },
    { name: 'lift pump', detail: 'main tank', sign: 'motor', x: 3.04, y: 0.66, strands: ['feed'] },
    { name: 'level sender', detail: 'reed ladder', sign: 'sensor', x: 3.54, y: 0.7, strands: ['signal'] },
    { name: 'transfer pump', detail: 'second tank', sign: 'motor', x: 4.06, y: 0.66, strands: ['feed'] },
    { name: 'compressor', sign: 'motor', x: 4.6, y: 0.7, strands: ['feed'] },
    { name: 'tail-lift pump', sign: 'motor', x: 5.12, y: 0.32, strands: ['heavy'] },
  ],
};
