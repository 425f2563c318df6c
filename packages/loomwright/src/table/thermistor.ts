import type {
  CubicCurve,
  InverseCubicCurve,
  OddFourTermCurve,
  PointCurve,
  SteinhartHartCurve,
} from './temperature-type.js';

/** The 2252 Ω (at 25 °C) precision curve, as printed. */
export const ntc2252: PointCurve = {
  kind: 'points',
  key: 'ntc-2252',
  source: 'ntc-2252-table',
  status: 'published',
  place: 'rows every 5 °C from −60 to 150 °C with the coarser rows beyond; three to five digits',
  lowTempC: -80,
  highTempC: 250,
  // prettier-ignore
  rows: [
    [-80, 1660000], [-60, 316500], [-55, 217100], [-50, 151000], [-45, 106300], [-40, 75790], [-35, 54660],
    [-30, 39860], [-25, 29380], [-20, 21870], [-15, 16430], [-10, 12460], [-5, 9534], [0, 7355], [5, 5719],
    [10, 4482], [15, 3539], [20, 2814], [25, 2252], [30, 1815], [35, 1471], [40, 1200], [45, 983.8], [50, 811.3],
    [55, 672.5], [60, 560.3], [65, 469.0], [70, 394.5], [75, 333.1], [80, 282.7], [85, 240.9], [90, 206.1],
    [95, 177.1], [100, 152.8], [105, 132.3], [110, 115.0], [115, 100.2], [120, 87.7], [125, 77.0], [130, 67.8],
    [135, 59.8], [140, 53.0], [145, 47.0], [150, 41.8], [175, 24.2], [200, 14.9], [250, 6.4],
  ],
};

/** A 10 kΩ (at 25 °C) precision curve, series 44031, as printed. */
export const ntc10k44031: PointCurve = {
  kind: 'points',
  key: 'ntc-10k-44031',
  source: 'ntc-44031-table',
  status: 'published',
  place: 'rows every 5 °C from −55 to 150 °C; four digits, printed in kΩ',
  lowTempC: -55,
  highTempC: 150,
  // prettier-ignore
  rows: [
    [-55, 607800], [-50, 441300], [-45, 323700], [-40, 239800], [-35, 179200], [-30, 135200], [-25, 102900],
    [-20, 78910], [-15, 61020], [-10, 47540], [-5, 37310], [0, 29490], [5, 23460], [10, 18790], [15, 15130],
    [20, 12260], [25, 10000], [30, 8194], [35, 6752], [40, 5592], [45, 4655], [50, 3893], [55, 3270], [60, 2760],
    [65, 2339], [70, 1990], [75, 1700], [80, 1458], [85, 1255], [90, 1084], [95, 939.3], [100, 816.8], [105, 712.6],
    [110, 623.5], [115, 547.3], [120, 481.8], [125, 425.3], [130, 376.4], [135, 334.0], [140, 297.2], [145, 265.1],
    [150, 237.0],
  ],
};

/** A coolant sensor of 2.5 kΩ at 20 °C, as used by many vehicle makers. From memory: check yours in two pots of water. */
export const ntcCoolant2500: PointCurve = {
  kind: 'points',
  key: 'ntc-coolant-2500',
  source: 'ntc-coolant-2500',
  status: 'memory',
  place: 'from memory, −40 to 130 °C',
  lowTempC: -40,
  highTempC: 130,
  // prettier-ignore
  rows: [
    [-40, 45313], [-30, 26114], [-20, 15462], [-10, 9397], [0, 5896], [10, 3792], [20, 2500], [30, 1707], [40, 1175],
    [50, 834], [60, 596], [70, 436], [80, 323], [90, 243], [100, 187], [110, 144], [120, 113], [130, 89],
  ],
};

/** 10 kΩ thermistor 10K3MCD1: Steinhart–Hart coefficients. */
export const ntc10k3mcd1: SteinhartHartCurve = {
  kind: 'steinhart-hart',
  key: 'ntc-10k3mcd1',
  source: 'ntc-10k3mcd1-manual',
  status: 'published',
  place: 'coefficients of the probe; its appendix C repeats its table to 0.01 °C',
  a: 1.129241e-3,
  b: 2.341077e-4,
  c: 8.775468e-8,
};

/** 100 kΩ thermistor of a sister probe: Steinhart–Hart coefficients. */
export const ntc100k: SteinhartHartCurve = {
  kind: 'steinhart-hart',
  key: 'ntc-100k',
  source: 'ntc-10k3mcd1-manual',
  status: 'published',
  place: 'coefficients of the sister probe with 100 kΩ at 25 °C',
  a: 8.271111e-4,
  b: 2.08802e-4,
  c: 8.0592e-8,
};

/** 3 kΩ thermistor, series 44005. Its coefficients were made with 273.2 K for 0 °C. */
export const ntc3k44005: SteinhartHartCurve = {
  kind: 'steinhart-hart',
  key: 'ntc-3k-44005',
  source: 'ntc-44005-manual',
  status: 'published',
  place: 'page 33, fitted over −50 to 150 °C; printed with an offset of 273.2',
  zeroCInK: 273.2,
  lowTempC: -50,
  highTempC: 150,
  a: 1.4051e-3,
  b: 2.369e-4,
  c: 1.019e-7,
};

/** 10 kΩ thermistor 103JL1A: four odd terms. Printed with 273.2 K for 0 °C; 273.15 repeats its own table. */
export const ntc103jl1a: OddFourTermCurve = {
  kind: 'odd-four-term',
  key: 'ntc-103jl1a',
  source: 'ntc-103jl1a-manual',
  status: 'published',
  place: 'equation 7 with table 16; the printed offset 273.2 is 0.05 K away from its own table, 273.15 is taken',
  lowTempC: -30,
  highTempC: 250,
  a: 1.12766979300187e-3,
  b: 2.34444184128213e-4,
  c: 8.47692130592308e-8,
  d: 1.17512193579615e-11,
};

/** Material type 1, temperature from ratio, with 10 kΩ at 25 °C: put another `refOhm` for another part. */
export const ntcMaterial1: CubicCurve = {
  kind: 'cubic',
  key: 'ntc-material-1',
  source: 'ntc-material-1',
  status: 'published',
  place: 'ratio 0.01644 to 33.36',
  lowTempC: -40,
  highTempC: 155,
  refOhm: 10000,
  a: 3.3539438e-3,
  b: 2.5646095e-4,
  c: 2.5158166e-6,
  d: 1.0503069e-7,
};

/** Material type 1, ratio from temperature: the companion of `ntcMaterial1`, fitted apart from it. */
export const ntcMaterial1Inverse: InverseCubicCurve = {
  kind: 'inverse-cubic',
  key: 'ntc-material-1-inverse',
  source: 'ntc-material-1',
  status: 'published',
  place: '−40 to 155 °C; the print scrambles its columns, this order repeats its ratio table',
  lowTempC: -40,
  highTempC: 155,
  refOhm: 10000,
  a: -14.195756,
  b: 4407.4785,
  c: -5165.873,
  d: -14017368,
};
