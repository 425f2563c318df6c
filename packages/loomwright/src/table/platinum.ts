import type { PlatinumClass, PlatinumCurve } from './temperature-type.js';

/** The platinum curve in force (ITS-90): 138.51 Ω at 100 °C for 100 Ω at 0 °C. */
export const iec60751: PlatinumCurve = {
  key: 'iec-60751',
  source: 'iec-60751',
  status: 'published',
  place: 'equation and coefficients',
  a: 3.9083e-3,
  b: -5.775e-7,
  c: -4.183e-12,
  lowTempC: -200,
  highTempC: 850,
};

/** The older platinum curve (IPTS-68): 138.50 Ω at 100 °C. Only to read old tables. */
export const iec751of1983: PlatinumCurve = {
  key: 'iec-751-1983',
  source: 'iec-751-1983',
  status: 'published',
  place: 'equation and coefficients',
  a: 3.90802e-3,
  b: -5.802e-7,
  c: -4.2735e-12,
  lowTempC: -200,
  highTempC: 850,
};

/** Class AA: ±(0.1 + 0.0017 |t|) K. */
export const platinumClassAA: PlatinumClass = {
  key: 'AA',
  source: 'iec-60751',
  status: 'published',
  place: 'edition of 2008; temperature ranges from memory',
  fixedK: 0.1,
  shareFraction: 0.0017,
  wireWoundRangeC: [-50, 250],
  filmRangeC: [0, 150],
};

/** Class A: ±(0.15 + 0.002 |t|) K. */
export const platinumClassA: PlatinumClass = {
  key: 'A',
  source: 'iec-60751',
  status: 'published',
  place: 'editions of 1995 and 2008; temperature ranges from memory',
  fixedK: 0.15,
  shareFraction: 0.002,
  wireWoundRangeC: [-100, 450],
  filmRangeC: [-30, 300],
};

/** Class B: ±(0.3 + 0.005 |t|) K. */
export const platinumClassB: PlatinumClass = {
  key: 'B',
  source: 'iec-60751',
  status: 'published',
  place: 'editions of 1995 and 2008; temperature ranges from memory',
  fixedK: 0.3,
  shareFraction: 0.005,
  wireWoundRangeC: [-196, 600],
  filmRangeC: [-50, 500],
};

/** Class C: ±(0.6 + 0.01 |t|) K. */
export const platinumClassC: PlatinumClass = {
  key: 'C',
  source: 'iec-60751',
  status: 'published',
  place: 'edition of 2008; temperature ranges from memory',
  fixedK: 0.6,
  shareFraction: 0.01,
  wireWoundRangeC: [-196, 600],
  filmRangeC: [-50, 600],
};
