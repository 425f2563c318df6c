import type { ContactRatioTable } from './load-type.js';

/** Switches on 12 V d.c.: nominal rating wanted over the load's current. */
export const ac4313Switch12V: ContactRatioTable = {
  key: 'ac-43-13-1b-switch-12-v',
  source: 'ac-43-13-1b',
  status: 'published',
  place: 'table 11-4, page 11-17, 12 V d.c.',
  use: 'rating',
  rows: [
    ['lamp', 5, 5],
    ['inductive', 2, 2],
    ['resistive', 1, 1],
    ['motor', 2, 2],
  ],
};

/** Switches on 28 V d.c.: nominal rating wanted over the load's current. */
export const ac4313Switch28V: ContactRatioTable = {
  key: 'ac-43-13-1b-switch-28-v',
  source: 'ac-43-13-1b',
  status: 'published',
  place: 'table 11-4, page 11-17, 28 V d.c.',
  use: 'rating',
  rows: [
    ['lamp', 8, 8],
    ['inductive', 4, 4],
    ['resistive', 2, 2],
    ['motor', 3, 3],
  ],
};

/** A switch maker's rule: multiply the load and compare it with the resistive rating. */
export const switchMakerRating: ContactRatioTable = {
  key: 'switch-maker-rating',
  source: 'switch-maker-guides',
  status: 'published',
  place: 'selection rule: lamp 10 times, motor 6 times the steady current',
  use: 'rating',
  rows: [
    ['resistive', 1, 1],
    ['lamp', 10, 10],
    ['motor', 6, 6],
  ],
};

/** Relay makers: a lamp rating is usually a fifth of the resistive one. */
export const relayMakerRating: ContactRatioTable = {
  key: 'relay-maker-rating',
  source: 'automotive-relay-notes',
  status: 'published',
  place: 'answers to usual questions: lamp rating 20 % of the resistive rating',
  use: 'rating',
  rows: [
    ['resistive', 1, 1],
    ['lamp', 5, 5],
  ],
};

/** A military switch: 7 A resistive, 4 A inductive at 28 V d.c. */
export const milPrf22885Rating: ContactRatioTable = {
  key: 'mil-prf-22885-rating',
  source: 'mil-prf-22885',
  status: 'published',
  place: 'sheet 71C, table III: 7 A resistive and 4 A inductive at 28 V d.c.',
  use: 'rating',
  rows: [
    ['resistive', 1, 1],
    ['inductive', 1.75, 1.75],
  ],
};

/** First current over running current, by a manual of relay modules. */
export const relayModuleInrush: ContactRatioTable = {
  key: 'relay-module-inrush',
  source: 'relay-module-manual',
  status: 'published',
  place: 'table of inrush by kind of load',
  use: 'inrush',
  rows: [
    ['resistive', 1, 1],
    ['solenoid', 10, 20],
    ['motor', 5, 10],
    ['lamp', 10, 15],
    ['mercury-lamp', 3, 3],
    ['sodium-lamp', 1, 3],
    ['capacitor', 20, 40],
    ['transformer', 5, 15],
  ],
};

/** First current over running current, by a relay maker. */
export const relayMakerInrush: ContactRatioTable = {
  key: 'relay-maker-inrush',
  source: 'automotive-relay-notes',
  status: 'published',
  place: 'answers to usual questions: motor 6 times, tungsten lamp 10 to 15 times',
  use: 'inrush',
  rows: [
    ['resistive', 1, 1],
    ['motor', 6, 6],
    ['lamp', 10, 15],
  ],
};

/** The lamp load of a military relay test: twelve times the rated current for 15 to 20 ms at closing. */
export const milR5757Lamp: ContactRatioTable = {
  key: 'mil-r-5757-lamp',
  source: 'mil-r-5757',
  status: 'published',
  place: 'lamp load test: make 12 times rated for 0.015 to 0.020 s, break 1 times',
  use: 'inrush',
  rows: [
    ['resistive', 1, 1],
    ['lamp', 12, 12],
  ],
};
