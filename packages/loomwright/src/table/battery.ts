import type { CrankingBudget, CrankingRating, LoadTestTable, RestVoltsTable } from './battery-type.js';

/** Cold-cranking amperes of SAE J537: 30 s at −18 °C, at least 7.2 V. */
export const crankingSaeJ537: CrankingRating = {
  key: 'cranking-sae-j537',
  title: 'SAE cold-cranking amperes',
  source: 'sae-j537',
  status: 'published',
  place: 'as service manuals print it: full battery, 0 °F, 1.2 V a cell after 30 s',
  testTempC: -18,
  testS: 30,
  leastV: 7.2,
};

/** Cold-cranking current of EN 50342-1: 10 s at −18 °C, at least 7.5 V. */
export const crankingEn50342: CrankingRating = {
  key: 'cranking-en-50342-1',
  title: 'EN cold-cranking current',
  source: 'en-50342-1',
  status: 'published',
  place: "as a battery maker's page prints it: 7.5 V after 10 s; then 6.0 V not before 90 s (C1) or 150 s (C2)",
  testTempC: -18,
  testS: 10,
  leastV: 7.5,
};

/** Cold-cranking current of IEC 60095-1: 60 s at −18 °C, at least 8.4 V. */
export const crankingIec60095: CrankingRating = {
  key: 'cranking-iec-60095-1',
  title: 'IEC cold-cranking current',
  source: 'iec-60095-1',
  status: 'published',
  place: "as a battery maker's page prints it: 8.4 V after 60 s",
  testTempC: -18,
  testS: 60,
  leastV: 8.4,
};

/** Cold-cranking current of DIN 43539-2: 30 s at −18 °C, at least 9.0 V. */
export const crankingDin43539: CrankingRating = {
  key: 'cranking-din-43539-2',
  title: 'DIN cold-cranking current',
  source: 'din-43539-2',
  status: 'published',
  place: "as a battery maker's page prints it: 9.0 V after 30 s, and 6 V not before 150 s",
  testTempC: -18,
  testS: 30,
  leastV: 9,
};

/** Cranking amperes (not cold) of the battery trade: 30 s at 0 °C, at least 7.2 V. */
export const crankingBci: CrankingRating = {
  key: 'cranking-bci',
  title: 'cranking amperes at 0 °C',
  source: 'bci-cranking',
  status: 'published',
  place: "a battery maker's glossary: 32 °F, 1.20 V a cell after 30 s",
  testTempC: 0,
  testS: 30,
  leastV: 7.2,
};

/** Volts at rest in steps of ten per cent. */
export const restVoltsTenSteps: RestVoltsTable = {
  key: 'rest-volts-ten-steps',
  title: 'steps of ten per cent',
  source: 'battery-rest-lists',
  status: 'published',
  place: 'list in steps of 10 %, 12 V',
  rows: [
    [100, 12.7],
    [90, 12.6],
    [80, 12.5],
    [70, 12.4],
    [60, 12.3],
    [50, 12.2],
    [40, 12.1],
    [30, 12],
    [20, 11.9],
    [10, 11.8],
    [0, 11.7],
  ],
};

/** Volts at rest in quarters, with the density of the acid beside them. */
export const restVoltsWithDensity: RestVoltsTable = {
  key: 'rest-volts-with-density',
  title: 'quarters, with the acid',
  source: 'battery-rest-lists',
  status: 'published',
  place: 'list in quarters down to 25 %, with ranges of relative density',
  rows: [
    [100, 12.66],
    [75, 12.45],
    [50, 12.3],
    [25, 12.15],
  ],
  densities: [
    [100, 1.26, 1.28],
    [75, 1.23, 1.25],
    [50, 1.2, 1.22],
    [25, 1.17, 1.19],
  ],
};

/** The rule of thumb for wet batteries: 0.2 V a quarter, 0.08 V each ten per cent. */
export const restVoltsThumb: RestVoltsTable = {
  key: 'rest-volts-thumb',
  title: 'rule of thumb, wet cells',
  source: 'battery-rest-lists',
  status: 'common-practice',
  place: 'rule of thumb: 12.6, 12.4, 12.2, 12.0 V by quarters and 11.6 V empty',
  rows: [
    [100, 12.6],
    [75, 12.4],
    [50, 12.2],
    [25, 12],
    [0, 11.6],
  ],
};

/** Volts at rest as the battery trade's council gives them, with densities, at 26.7 °C. From memory. */
export const restVoltsTrade: RestVoltsTable = {
  key: 'rest-volts-trade',
  title: "trade council's list",
  source: 'battery-rest-lists',
  status: 'memory',
  place: 'list of the battery trade in quarters, 26.7 °C, from memory',
  rows: [
    [100, 12.65],
    [75, 12.45],
    [50, 12.24],
    [25, 12.06],
    [0, 11.89],
  ],
  densities: [
    [100, 1.265, 1.265],
    [75, 1.225, 1.225],
    [50, 1.19, 1.19],
    [25, 1.155, 1.155],
    [0, 1.12, 1.12],
  ],
};

/** Load test at half the rating, down to −18 °C. */
export const loadTestToMinus18: LoadTestTable = {
  key: 'load-test-to-minus-18',
  title: 'half the rating, to −18 °C',
  source: 'battery-load-test',
  status: 'common-practice',
  place: 'service manuals of 2007 and 2009: half the rating for 15 s',
  loadFraction: 0.5,
  loadA: null,
  testS: 15,
  rows: [
    [20, 9.6],
    [16, 9.5],
    [10, 9.4],
    [4, 9.3],
    [-1, 9.1],
    [-7, 8.9],
    [-12, 8.7],
    [-18, 8.5],
  ],
};

/** Load test at half the rating, down to −12 °C. */
export const loadTestToMinus12: LoadTestTable = {
  key: 'load-test-to-minus-12',
  title: 'half the rating, to −12 °C',
  source: 'battery-load-test',
  status: 'common-practice',
  place: 'a service manual of 2004: half the rating for 15 s',
  loadFraction: 0.5,
  loadA: null,
  testS: 15,
  rows: [
    [20, 9.6],
    [18, 9.5],
    [10, 9.4],
    [4, 9.3],
    [-1, 9.1],
    [-7, 8.9],
    [-12, 8.7],
  ],
};

/** Load test at 190 A whatever the battery. */
export const loadTest190A: LoadTestTable = {
  key: 'load-test-190-a',
  title: '190 A, to −18 °C',
  source: 'battery-load-test',
  status: 'common-practice',
  place: 'a service manual of 2005: 190 A for 15 s; its 8.0 V at −18 °C is half a volt below what others print',
  loadFraction: null,
  loadA: 190,
  testS: 15,
  rows: [
    [21, 9.6],
    [10, 9.4],
    [0, 9.1],
    [-10, 8.8],
    [-18, 8],
  ],
};

/** What a service manual quotes as a recommendation of SAE: connection, cable and contact each, and 1 V in all. */
export const crankingBudgetParts: CrankingBudget = {
  key: 'cranking-budget-parts',
  title: 'each part',
  source: 'service-drop-limits',
  status: 'published',
  place:
    'quoted as an SAE recommendation: high-current connection 0.1 V, cable 0.2 V, contact 0.3 V; above 1.0 V a fault',
  connectionV: 0.1,
  cableV: 0.2,
  contactV: 0.3,
  positiveV: null,
  negativeV: null,
  totalV: 1,
};

/** What a tester's manual asks for while cranking: 0.5 V on the positive side, 0.3 V on the ground side. */
export const crankingBudgetSides: CrankingBudget = {
  key: 'cranking-budget-sides',
  title: 'each side',
  source: 'service-drop-limits',
  status: 'published',
  place: 'tester manual: starter positive side 0.5 V, ground side 0.3 V, total 0.8 V while cranking',
  connectionV: null,
  cableV: null,
  contactV: null,
  positiveV: 0.5,
  negativeV: 0.3,
  totalV: 0.8,
};

/** A guideline of a secondary encyclopedia: weak. Its 0.00 V for a connection is no limit that a joint could meet. */
export const crankingBudgetGuideline: CrankingBudget = {
  key: 'cranking-budget-guideline',
  title: 'guideline',
  source: 'service-drop-limits',
  status: 'common-practice',
  place:
    'secondary encyclopedia: cable 0.20 V, switch 0.30 V, starter + 0.6 V, − 0.3 V; its 0.00 V for a connection left out',
  connectionV: null,
  cableV: 0.2,
  contactV: 0.3,
  positiveV: 0.6,
  negativeV: 0.3,
  totalV: null,
};
