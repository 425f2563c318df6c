import type { LoadingTable, TerminalTable } from './joint-type.js';

/**
 * Blade and pin families of vehicles by nominal width. Of each printed range the low current and the aged contact
 * resistance are taken. From memory; the maker's sheet decides.
 */
export const bladeTerminals: TerminalTable = {
  key: 'blade-terminals',
  source: 'blade-terminal-practice',
  status: 'memory',
  place:
    'wire range and current from memory, contact resistance from memory with low confidence; one loaded pair in free air',
  rows: [
    {
      name: '0.5 mm',
      areaLeastMm2: 0.13,
      areaMostMm2: 0.35,
      ratedCurrentA: 3,
      derating: {
        kind: 'points',
        points: [
          [25, 3],
          [85, 2],
        ],
      },
      contactOhm: 0.02,
      source: 'blade-terminal-practice',
      status: 'memory',
      note: 'usually 3 to 5 A at 25 °C and 2 to 3 A at 85 °C; contact 10 mΩ new',
    },
    {
      name: '0.64 mm',
      areaLeastMm2: 0.22,
      areaMostMm2: 0.75,
      ratedCurrentA: 6,
      derating: {
        kind: 'points',
        points: [
          [25, 6],
          [85, 4],
        ],
      },
      contactOhm: 0.02,
      source: 'blade-terminal-practice',
      status: 'memory',
      note: 'usually 6 to 8 A at 25 °C and 4 to 5 A at 85 °C; contact 8 mΩ new',
    },
    {
      name: '1.2 mm',
      areaLeastMm2: 0.35,
      areaMostMm2: 1,
      ratedCurrentA: 12,
      derating: {
        kind: 'points',
        points: [
          [25, 12],
          [85, 8],
        ],
      },
      contactOhm: 0.01,
      source: 'blade-terminal-practice',
      status: 'memory',
      note: 'usually 12 to 14 A at 25 °C and 8 to 10 A at 85 °C; contact 5 mΩ new',
    },
    {
      name: '1.5 mm',
      areaLeastMm2: 0.5,
      areaMostMm2: 1.5,
      ratedCurrentA: 14,
      derating: {
        kind: 'points',
        points: [
          [25, 14],
          [85, 10],
        ],
      },
      contactOhm: 0.01,
      source: 'blade-terminal-practice',
      status: 'memory',
      note: 'usually 14 to 20 A at 25 °C and 10 to 14 A at 85 °C; contact 5 mΩ new',
    },
    {
      name: '2.8 mm',
      areaLeastMm2: 0.5,
      areaMostMm2: 2.5,
      ratedCurrentA: 25,
      derating: {
        kind: 'points',
        points: [
          [25, 25],
          [85, 18],
        ],
      },
      contactOhm: 0.005,
      source: 'blade-terminal-practice',
      status: 'memory',
      note: 'usually 25 to 32 A at 25 °C and 18 to 22 A at 85 °C; contact 2.5 mΩ new',
    },
    {
      name: '4.8 mm',
      areaLeastMm2: 1,
      areaMostMm2: 4,
      ratedCurrentA: 35,
      derating: {
        kind: 'points',
        points: [
          [25, 35],
          [85, 24],
        ],
      },
      contactOhm: 0.003,
      source: 'blade-terminal-practice',
      status: 'memory',
      note: 'usually 35 to 42 A at 25 °C and 24 to 30 A at 85 °C; contact 1.5 mΩ new; low confidence',
    },
    {
      name: '6.3 mm',
      areaLeastMm2: 1,
      areaMostMm2: 6,
      ratedCurrentA: 45,
      derating: {
        kind: 'points',
        points: [
          [25, 45],
          [85, 30],
        ],
      },
      contactOhm: 0.0015,
      source: 'blade-terminal-practice',
      status: 'memory',
      note: 'usually 45 to 55 A at 25 °C and 30 to 38 A at 85 °C; contact 0.75 mΩ new',
    },
    {
      name: '9.5 mm',
      areaLeastMm2: 4,
      areaMostMm2: 10,
      ratedCurrentA: 70,
      derating: {
        kind: 'points',
        points: [
          [25, 70],
          [85, 50],
        ],
      },
      contactOhm: 0.001,
      source: 'blade-terminal-practice',
      status: 'memory',
      note: 'usually 70 to 90 A at 25 °C and 50 to 60 A at 85 °C; contact 0.5 mΩ new',
    },
  ],
};

/**
 * Round contacts of sealed connectors by size. Wire ranges are AWG numbers given as areas, rounded inwards. How they
 * derate is not printed: give `derating` from the maker's sheet. From memory; the seal range of size 16 was read.
 */
export const roundContacts: TerminalTable = {
  key: 'round-contacts',
  source: 'round-contact-data',
  status: 'memory',
  place: 'wire range, current and 60 mV limit from memory; contact resistance derived from the limit',
  rows: [
    {
      name: 'size 20',
      areaLeastMm2: 0.326,
      areaMostMm2: 1.308,
      ratedCurrentA: 7.5,
      contactOhm: 0.008,
      source: 'round-contact-data',
      status: 'memory',
      note: '22 to 16 AWG; at most 60 mV at rated current',
    },
    {
      name: 'size 16',
      areaLeastMm2: 0.518,
      areaMostMm2: 2.08,
      insulationLeastMm: 2.18,
      insulationMostMm: 3.67,
      ratedCurrentA: 13,
      contactOhm: 0.0046,
      source: 'round-contact-data',
      status: 'memory',
      note: '20 to 14 AWG; at most 60 mV at rated current; standard seal, as printed for 14 to 18 AWG',
    },
    {
      name: 'size 12',
      areaLeastMm2: 2.081,
      areaMostMm2: 5.261,
      ratedCurrentA: 25,
      contactOhm: 0.0024,
      source: 'round-contact-data',
      status: 'memory',
      note: '14 to 10 AWG; at most 60 mV at rated current',
    },
    {
      name: 'size 8',
      areaLeastMm2: 5.262,
      areaMostMm2: 8.365,
      ratedCurrentA: 60,
      contactOhm: 0.001,
      source: 'round-contact-data',
      status: 'memory',
      note: '10 to 8 AWG; at most 60 mV at rated current',
    },
    {
      name: 'size 4',
      areaLeastMm2: 13.302,
      areaMostMm2: 21.15,
      ratedCurrentA: 100,
      contactOhm: 0.0006,
      source: 'round-contact-data',
      status: 'memory',
      note: '6 to 4 AWG; at most 60 mV at rated current',
    },
  ],
};

/** Loading factors of a connector specification: times the rating of a single contact on 18 AWG. As printed. */
export const connectorLoading: LoadingTable = {
  key: 'connector-loading',
  source: 'connector-loading-factors',
  status: 'published',
  place:
    'factors for 28 to 18 AWG at maximum ambient; .342 for 24 AWG at 26 % looks like a misprint; .331, by the trend, is used',
  gauges: ['28', '26', '24', '22', '20', '18'],
  singleFactors: [0.384, 0.45, 0.536, 0.647, 0.795, 1],
  rows: [
    [26, 0.237, 0.278, 0.342, 0.4, 0.491, 0.618],
    [50, 0.164, 0.193, 0.229, 0.277, 0.341, 0.428],
    [76, 0.132, 0.155, 0.184, 0.222, 0.273, 0.344],
    [100, 0.114, 0.134, 0.159, 0.192, 0.236, 0.297],
  ],
  errata: [[26, '24', 0.331]],
};
