import type { SourceStatus } from '../source/index.js';
import type { TableHeader } from './type.js';

/** Ohms of a kind of level sender at both ends of its travel. */
export interface SenderRange {
  /** Where it is found. */
  readonly name: string;
  readonly emptyOhm: number;
  readonly fullOhm: number;
  /** Tolerances, where they are printed. */
  readonly emptyToleranceOhm: number | null;
  readonly fullToleranceOhm: number | null;
  /** Other figures printed for the same kind: at empty, at full. */
  readonly alsoEmptyOhm?: number;
  readonly alsoFullOhm?: number;
  /** Whether the print says which end is which. */
  readonly direction: 'printed' | 'not-printed';
  readonly status: SourceStatus;
}

/** Kinds of level senders by their ohms. */
export interface SenderRangeTable extends TableHeader {
  readonly rows: readonly SenderRange[];
}

/** Common ohms of fuel senders, empty and full. No standard: the sender at hand decides, measured. */
export const senderRanges: SenderRangeTable = {
  key: 'sender-ranges',
  source: 'sender-range-pages',
  status: 'common-practice',
  place: 'pages of instrument makers, service texts of 1998 to 2006; three rows from memory',
  rows: [
    {
      name: 'American marine and street gauges',
      emptyOhm: 240,
      fullOhm: 33,
      emptyToleranceOhm: null,
      fullToleranceOhm: null,
      alsoFullOhm: 30,
      direction: 'printed',
      status: 'published',
    },
    {
      name: 'European marine gauges',
      emptyOhm: 0,
      fullOhm: 190,
      emptyToleranceOhm: 10,
      fullToleranceOhm: 10,
      alsoEmptyOhm: 10,
      alsoFullOhm: 180,
      direction: 'printed',
      status: 'published',
    },
    {
      name: 'older American cars',
      emptyOhm: 0,
      fullOhm: 90,
      emptyToleranceOhm: null,
      fullToleranceOhm: null,
      direction: 'printed',
      status: 'published',
    },
    {
      name: 'a Japanese car of 2006',
      emptyOhm: 110,
      fullOhm: 3,
      emptyToleranceOhm: 2.5,
      fullToleranceOhm: 0.8,
      direction: 'printed',
      status: 'published',
    },
    {
      name: 'a Japanese car built in America, 1998',
      emptyOhm: 112,
      fullOhm: 4,
      emptyToleranceOhm: 7,
      fullToleranceOhm: 2,
      direction: 'printed',
      status: 'published',
    },
    {
      name: 'a Japanese car, its meter read through two 820 Ω in parallel',
      emptyOhm: 410,
      fullOhm: 15,
      emptyToleranceOhm: null,
      fullToleranceOhm: null,
      direction: 'printed',
      status: 'published',
    },
    {
      name: 'range of an American body controller',
      emptyOhm: 0,
      fullOhm: 275,
      emptyToleranceOhm: null,
      fullToleranceOhm: null,
      direction: 'not-printed',
      status: 'published',
    },
    {
      name: 'American cars before 1987',
      emptyOhm: 73,
      fullOhm: 10,
      emptyToleranceOhm: null,
      fullToleranceOhm: null,
      direction: 'printed',
      status: 'memory',
    },
    {
      name: 'American cars before 1965',
      emptyOhm: 0,
      fullOhm: 30,
      emptyToleranceOhm: null,
      fullToleranceOhm: null,
      direction: 'printed',
      status: 'memory',
    },
    {
      name: 'American cars from 1987 on',
      emptyOhm: 16,
      fullOhm: 158,
      emptyToleranceOhm: null,
      fullToleranceOhm: null,
      direction: 'printed',
      status: 'memory',
    },
    {
      name: 'European gauge makers',
      emptyOhm: 10,
      fullOhm: 180,
      emptyToleranceOhm: null,
      fullToleranceOhm: null,
      direction: 'printed',
      status: 'published',
    },
  ],
};
