import { ac4313CircularMils } from './ac-43-13-1b.js';
import type { AreaTable, BendRule, TwistTable } from './joint-type.js';
import { saeJ1128 } from './sae-j1128.js';

/** Stranded AWG conductors by their printed circular mils: the sizes of a splice by AC 43.13-1B. */
export const awgStrandedAreas: AreaTable = {
  key: 'awg-stranded-areas',
  source: 'ac-43-13-1b',
  status: 'published',
  place: 'table 11-9, page 11-23, circular mils',
  sizes: 'awg',
  prints: 'circular-mils',
  rows: ac4313CircularMils,
};

/** SAE sizes by their least circular mils. From memory. */
export const saeAreas: AreaTable = {
  key: 'sae-areas',
  source: 'sae-j1128',
  status: 'memory',
  place: 'least circular mils of SAE J1128 and J1127',
  sizes: 'sae',
  prints: 'circular-mils',
  rows: /* @__PURE__ */ (() => saeJ1128.rows)(),
};

/** Nominal areas of ISO 6722 / ISO 19642 sizes. */
export const metricAreas: AreaTable = {
  key: 'metric-areas',
  source: 'iso-19642',
  status: 'memory',
  place: 'nominal areas of ISO 6722-1 / ISO 19642',
  sizes: 'mm2',
  prints: 'mm2',
  rows: [
    ['0.13', 0.13],
    ['0.22', 0.22],
    ['0.35', 0.35],
    ['0.5', 0.5],
    ['0.75', 0.75],
    ['1', 1],
    ['1.25', 1.25],
    ['1.5', 1.5],
    ['2', 2],
    ['2.5', 2.5],
    ['3', 3],
    ['4', 4],
    ['5', 5],
    ['6', 6],
    ['8', 8],
    ['10', 10],
    ['12', 12],
    ['16', 16],
    ['20', 20],
    ['25', 25],
    ['30', 30],
    ['35', 35],
    ['40', 40],
    ['50', 50],
    ['60', 60],
    ['70', 70],
    ['95', 95],
    ['120', 120],
  ],
};

/** Single wire or cable in a harness: ten diameters. */
export const bendSingleWire: BendRule = {
  key: 'bend-single-wire',
  title: 'single wire or cable in a harness',
  source: 'army-tm-1-1500-204-23-4',
  status: 'published',
  place: 'bend radius of wires and cables; a smaller one is allowed at terminal strips',
  radiusFactor: 10,
  longTermFactor: null,
};

/** Wire held on both sides of the bend at a terminal strip: three diameters. From memory. */
export const bendAtTerminals: BendRule = {
  key: 'bend-at-terminals',
  title: 'wire supported at a terminal strip',
  source: 'ac-43-13-1b-dressing',
  status: 'memory',
  place: 'bend radius with suitable support, from memory',
  radiusFactor: 3,
  longTermFactor: null,
};

/** Cable of several conductors: six diameters for a while, ten for good. */
export const bendMultiConductor: BendRule = {
  key: 'bend-multi-conductor',
  title: 'cable of several conductors',
  source: 'nasa-std-8739-4',
  status: 'published',
  place: 'change 6, 7.3.21',
  radiusFactor: 6,
  longTermFactor: 10,
};

/** Polyimide-insulated wire: ten diameters for a while, fifteen for good. */
export const bendPolyimide: BendRule = {
  key: 'bend-polyimide',
  title: 'polyimide-insulated wire',
  source: 'nasa-std-8739-4',
  status: 'published',
  place: 'change 6, 7.3.21',
  radiusFactor: 10,
  longTermFactor: 15,
};

/** Thin-wall vehicle wire laid once: the larger end of 3 to 5 diameters. From memory. */
export const bendThinWall: BendRule = {
  key: 'bend-thin-wall',
  title: 'thin-wall vehicle wire, laid once',
  source: 'common-practice',
  status: 'memory',
  place: 'data sheets give 3 to 5 diameters; the larger is taken',
  radiusFactor: 5,
  longTermFactor: null,
};

/** H05V-K hook-up wire, fixed: four diameters. */
export const bendH05vk: BendRule = {
  key: 'bend-h05v-k',
  title: 'H05V-K hook-up wire, fixed',
  source: 'cable-bend-data',
  status: 'published',
  place: 'data sheet of H05V-K',
  radiusFactor: 4,
  longTermFactor: null,
};

/** Rubber welding cable, flexed: six diameters. */
export const bendWelding: BendRule = {
  key: 'bend-welding',
  title: 'rubber welding cable',
  source: 'cable-bend-data',
  status: 'published',
  place: 'data sheet of welding cable',
  radiusFactor: 6,
  longTermFactor: null,
};

/** Bundle with a coaxial cable: ten diameters of the coaxial cable. From memory. */
export const bendCoaxBundle: BendRule = {
  key: 'bend-coax-bundle',
  title: 'bundle with a coaxial cable, in diameters of that cable',
  source: 'ac-43-13-1b-dressing',
  status: 'memory',
  place: 'bend radius of bundles with coaxial cable, from memory',
  radiusFactor: 10,
  longTermFactor: null,
};

/** Twists a foot for pairs and triples of wires. From memory. */
export const aircraftTwist: TwistTable = {
  key: 'aircraft-twist',
  source: 'ac-43-13-1b-dressing',
  status: 'memory',
  place: 'recommended number of wire twists a foot, from memory',
  rows: [
    ['22', 10, 10],
    ['20', 10, 10],
    ['18', 9, 8.5],
    ['16', 8, 7],
    ['14', 7.5, 6.5],
    ['12', 7, 6],
    ['10', 6.5, 5.5],
    ['8', 6, 5],
    ['6', 5, 4],
    ['4', 4, 3],
  ],
};
