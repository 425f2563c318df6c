import type { TableHeader } from './type.js';

/** Lengths that one manual allows by bit rate; null where it names none. */
export interface CanLengthTable extends TableHeader {
  readonly kind: 'lengths';
  readonly rows: readonly (readonly [
    kbitPerS: number,
    trunkM: number | null,
    stubM: number | null,
    allStubsM: number | null,
  ])[];
}

/**
 * A stub as short as a share of the edge: its delay, taken so often (once: one way; twice: out and back), is to stay
 * within that share of the edge's time.
 */
export interface CanEdgeRule extends TableHeader {
  readonly kind: 'edge';
  readonly edgeShare: number;
  readonly delayFactor: 1 | 2;
}

/** What a line's lengths are judged by. */
export type CanLineRule = CanLengthTable | CanEdgeRule;

/** What terminators, wire and levels are judged by. */
export interface CanLevels extends TableHeader {
  readonly terminatorLeastOhm: number;
  readonly terminatorMostOhm: number;
  readonly wireMostOhmPerM: number;
  /** Least volts of a dominant driver, and least volts that every receiver takes for dominant. */
  readonly driveLeastV: number;
  readonly receiveV: number;
}

/** Between which loads a driver keeps its volts. */
export interface CanLoadWindow extends TableHeader {
  readonly loadLeastOhm: number;
  readonly loadMostOhm: number;
}

/** What one fault on the line costs: bits of the error, and the resend with or without its 3 bits of space. */
export interface CanErrorRule extends TableHeader {
  readonly errorBits: number;
  readonly resendInterframe: 'counted' | 'left-out';
}

/** Cable and terminators by length of the line, as printed. */
export interface CanCableTable extends TableHeader {
  readonly rows: readonly (readonly [
    fromM: number,
    toM: number,
    areaLeastMm2: number,
    areaMostMm2: number,
    terminatorLeastOhm: number,
    terminatorMostOhm: number,
    milliohmPerM: number,
  ])[];
}

/** CAN in two wires: terminators of 108 to 132 Ω, wire of 70 mΩ/m, 1.5 V driven and 0.9 V received. */
export const canLevels: CanLevels = {
  key: 'canLevels',
  source: 'iso-11898-2',
  status: 'published',
  place: 'terminators and wire as a fieldbus cabling manual quotes them (p. 22), levels as transceiver sheets do',
  terminatorLeastOhm: 108,
  terminatorMostOhm: 132,
  wireMostOhmPerM: 0.07,
  driveLeastV: 1.5,
  receiveV: 0.9,
};

/** Load between 50 and 65 Ω for a driver. */
export const canLoad50to65: CanLoadWindow = {
  key: 'canLoad50to65',
  source: 'iso-11898-2',
  status: 'memory',
  place: 'load of a driver, from memory',
  loadLeastOhm: 50,
  loadMostOhm: 65,
};

/** Cable and terminators for long lines. */
export const canCableByLength: CanCableTable = {
  key: 'canCableByLength',
  source: 'fieldbus-cable-manual',
  status: 'published',
  place: 'p. 22; resistances of the wire at most',
  rows: [
    [0, 40, 0.25, 0.34, 124, 124, 70],
    [40, 300, 0.34, 0.6, 127, 127, 60],
    [300, 600, 0.5, 0.6, 150, 300, 40],
    [600, 1000, 0.75, 0.8, 150, 300, 20],
  ],
};

/** Lengths, manual A: the line, and a stub of 0.3 m at the two highest rates. */
export const canLengthsA: CanLengthTable = {
  kind: 'lengths',
  key: 'canLengthsA',
  source: 'can-cabling-pages',
  status: 'published',
  place: 'manual A',
  rows: [
    [1000, 40, 0.3, null],
    [500, 100, 0.3, null],
    [100, 500, null, null],
    [50, 1000, null, null],
  ],
};

/** Lengths, manual B: the line alone. It prints 20 m at 1 Mbit/s, and says that others have 40. */
export const canLengthsB: CanLengthTable = {
  kind: 'lengths',
  key: 'canLengthsB',
  source: 'can-cabling-pages',
  status: 'published',
  place: 'manual B',
  rows: [
    [1000, 20, null, null],
    [500, 100, null, null],
    [250, 250, null, null],
    [125, 500, null, null],
    [50, 1000, null, null],
    [20, 2500, null, null],
    [10, 5000, null, null],
  ],
};

/** Lengths, manual C: trunk, each drop, all drops. */
export const canLengthsC: CanLengthTable = {
  kind: 'lengths',
  key: 'canLengthsC',
  source: 'can-cabling-pages',
  status: 'published',
  place: 'manual C, trunk and drop lines',
  rows: [
    [1000, 20, 1, 5],
    [500, 100, 5, 25],
    [250, 250, 10, 50],
    [125, 500, 20, 100],
    [50, 1000, 50, 250],
  ],
};

/** Lengths, manual D of a maker of meters: each stub, all stubs, the line. */
export const canLengthsD: CanLengthTable = {
  kind: 'lengths',
  key: 'canLengthsD',
  source: 'can-cabling-pages',
  status: 'published',
  place: 'manual D, of a maker of meters',
  rows: [
    [1000, 40, 2, 10],
    [500, 110, 5, 25],
    [250, 280, 10, 50],
    [125, 620, 20, 100],
  ],
};

/** Lengths, manual of a gas-engine controller: the line, each stub, all stubs. */
export const canLengthsEngine: CanLengthTable = {
  kind: 'lengths',
  key: 'canLengthsEngine',
  source: 'can-cabling-pages',
  status: 'published',
  place: 'manual of a gas-engine controller',
  rows: [
    [1000, 25, 1.5, 7.5],
    [800, 50, 2.5, 12.5],
    [500, 100, 5.5, 27.5],
    [250, 250, 11, 55],
    [125, 500, 22, 110],
    [50, 1000, 55, 275],
  ],
};

/** Drop lines of a fieldbus on CAN: each below 6 m, and their sum by bit rate. */
export const canDropLines: CanLengthTable = {
  kind: 'lengths',
  key: 'canDropLines',
  source: 'fieldbus-cable-manual',
  status: 'published',
  place: 'second page, drop lines',
  rows: [
    [500, null, 6, 39],
    [250, null, 6, 78],
    [125, null, 6, 156],
  ],
};

/** A stub of 0.3 m at most at 1 Mbit/s. */
export const canDs102: CanLengthTable = {
  kind: 'lengths',
  key: 'canDs102',
  source: 'cia-ds-102',
  status: 'published',
  place: 'version 2.0',
  rows: [[1000, null, 0.3, null]],
};

/** One tenth of the edge, one way: what transceiver sheets tabulate. */
export const canEdgeTenth: CanEdgeRule = {
  kind: 'edge',
  key: 'canEdgeTenth',
  source: 'can-transceiver-sheets',
  status: 'published',
  place: 'stub length; the text says out and back, the lengths printed are those of one way',
  edgeShare: 0.1,
  delayFactor: 1,
};

/** One third of the critical length, which is the edge's time over the delay out and back. Up to 1.7 times as long. */
export const canEdgeThird: CanEdgeRule = {
  kind: 'edge',
  key: 'canEdgeThird',
  source: 'cia-301',
  status: 'published',
  place: 'critical length',
  edgeShare: 0.3333333333333333,
  delayFactor: 2,
};

/** A fault costs 29 bits and the longest frame again, without space. */
export const canError29: CanErrorRule = {
  key: 'canError29',
  source: 'broster-2002',
  status: 'published',
  place: 'error frame of 29 bits',
  errorBits: 29,
  resendInterframe: 'left-out',
};

/** A fault costs 31 bits and the longest frame again with its space. */
export const canError31: CanErrorRule = {
  key: 'canError31',
  source: 'davis-2007',
  status: 'memory',
  place: 'error recovery of 31 bits, from memory',
  errorBits: 31,
  resendInterframe: 'counted',
};
