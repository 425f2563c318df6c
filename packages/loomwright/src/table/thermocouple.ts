import type { ThermocoupleType } from './temperature-type.js';

/** Type K (nickel–chromium against nickel–aluminium), −270 to 1372 °C. */
export const thermocoupleK: ThermocoupleType = {
  letter: 'K',
  key: 'thermocouple-k',
  source: 'nist-monograph-175',
  status: 'published',
  place: 'type K, reference function and approximate inverse',
  pieces: [
    {
      fromTempC: -270,
      toTempC: 0,
      coefficients: [
        0, 0.39450128025e-1, 0.23622373598e-4, -0.32858906784e-6, -0.49904828777e-8, -0.67509059173e-10,
        -0.57410327428e-12, -0.31088872894e-14, -0.10451609365e-16, -0.19889266878e-19, -0.16322697486e-22,
      ],
    },
    {
      fromTempC: 0,
      toTempC: 1372,
      coefficients: [
        -0.17600413686e-1, 0.38921204975e-1, 0.18558770032e-4, -0.99457592874e-7, 0.31840945719e-9, -0.56072844889e-12,
        0.56075059059e-15, -0.32020720003e-18, 0.97151147152e-22, -0.12104721275e-25,
      ],
      bell: [0.1185976, -0.1183432e-3, 0.1269686e3],
    },
  ],
  inverse: [
    {
      fromMv: -5.891,
      toMv: 0,
      coefficients: [
        0, 2.5173462e1, -1.1662878, -1.0833638, -8.977354e-1, -3.7342377e-1, -8.6632643e-2, -1.0450598e-2,
        -5.1920577e-4,
      ],
      errorLowK: -0.02,
      errorHighK: 0.04,
    },
    {
      fromMv: 0,
      toMv: 20.644,
      coefficients: [
        0, 2.508355e1, 7.860106e-2, -2.503131e-1, 8.31527e-2, -1.228034e-2, 9.804036e-4, -4.41303e-5, 1.057734e-6,
        -1.052755e-8,
      ],
      errorLowK: -0.05,
      errorHighK: 0.04,
    },
    {
      fromMv: 20.644,
      toMv: 54.886,
      coefficients: [-1.318058e2, 4.830222e1, -1.646031, 5.464731e-2, -9.650715e-4, 8.802193e-6, -3.11081e-8],
      errorLowK: -0.05,
      errorHighK: 0.06,
    },
  ],
  classes: [
    {
      key: '1',
      source: 'iec-60584-1',
      status: 'published',
      place: 'tolerances, as printed in component data',
      fixedK: 1.5,
      shareFraction: 0.004,
      rangeC: [-40, 1000],
    },
    {
      key: '2',
      source: 'iec-60584-1',
      status: 'published',
      place: 'tolerances, as printed in component data',
      fixedK: 2.5,
      shareFraction: 0.0075,
      rangeC: [-40, 1200],
    },
  ],
};

/** Type J (iron against copper–nickel), −210 to 1200 °C. */
export const thermocoupleJ: ThermocoupleType = {
  letter: 'J',
  key: 'thermocouple-j',
  source: 'nist-monograph-175',
  status: 'published',
  place: 'type J, reference function and approximate inverse',
  pieces: [
    {
      fromTempC: -210,
      toTempC: 760,
      coefficients: [
        0, 0.50381187815e-1, 0.3047583693e-4, -0.8568106572e-7, 0.13228195295e-9, -0.17052958337e-12, 0.20948090697e-15,
        -0.12538395336e-18, 0.15631725697e-22,
      ],
    },
    {
      fromTempC: 760,
      toTempC: 1200,
      coefficients: [
        0.29645625681e3, -0.14976127786e1, 0.31787103924e-2, -0.31847686701e-5, 0.15720819004e-8, -0.30691369056e-12,
      ],
    },
  ],
  inverse: [
    {
      fromMv: -8.095,
      toMv: 0,
      coefficients: [
        0, 1.9528268e1, -1.2286185, -1.0752178, -5.9086933e-1, -1.7256713e-1, -2.8131513e-2, -2.396337e-3,
        -8.3823321e-5,
      ],
      errorLowK: -0.05,
      errorHighK: 0.03,
    },
    {
      fromMv: 0,
      toMv: 42.919,
      coefficients: [0, 1.978425e1, -2.001204e-1, 1.036969e-2, -2.549687e-4, 3.585153e-6, -5.344285e-8, 5.09989e-10],
      errorLowK: -0.04,
      errorHighK: 0.04,
    },
    {
      fromMv: 42.919,
      toMv: 69.553,
      coefficients: [-3.11358187e3, 3.00543684e2, -9.9477323, 1.7027663e-1, -1.43033468e-3, 4.73886084e-6],
      errorLowK: -0.04,
      errorHighK: 0.03,
    },
  ],
  classes: [
    {
      key: '1',
      source: 'iec-60584-1',
      status: 'memory',
      place: 'tolerances, from memory',
      fixedK: 1.5,
      shareFraction: 0.004,
      rangeC: [-40, 750],
    },
    {
      key: '2',
      source: 'iec-60584-1',
      status: 'memory',
      place: 'tolerances, from memory',
      fixedK: 2.5,
      shareFraction: 0.0075,
      rangeC: [-40, 750],
    },
  ],
};

/** Type T (copper against copper–nickel), −270 to 400 °C. */
export const thermocoupleT: ThermocoupleType = {
  letter: 'T',
  key: 'thermocouple-t',
  source: 'nist-monograph-175',
  status: 'published',
  place: 'type T, reference function and approximate inverse',
  pieces: [
    {
      fromTempC: -270,
      toTempC: 0,
      coefficients: [
        0, 0.38748106364e-1, 0.44194434347e-4, 0.11844323105e-6, 0.20032973554e-7, 0.90138019559e-9, 0.22651156593e-10,
        0.36071154205e-12, 0.38493939883e-14, 0.28213521925e-16, 0.14251594779e-18, 0.48768662286e-21, 0.1079553927e-23,
        0.13945027062e-26, 0.79795153927e-30,
      ],
    },
    {
      fromTempC: 0,
      toTempC: 400,
      coefficients: [
        0, 0.38748106364e-1, 0.3329222788e-4, 0.20618243404e-6, -0.21882256846e-8, 0.10996880928e-10,
        -0.30815758772e-13, 0.4547913529e-16, -0.27512901673e-19,
      ],
    },
  ],
  inverse: [
    {
      fromMv: -5.603,
      toMv: 0,
      coefficients: [
        0, 2.5949192e1, -2.1316967e-1, 7.9018692e-1, 4.2527777e-1, 1.3304473e-1, 2.0241446e-2, 1.2668171e-3,
      ],
      errorLowK: -0.02,
      errorHighK: 0.04,
    },
    {
      fromMv: 0,
      toMv: 20.872,
      coefficients: [0, 2.5928e1, -7.602961e-1, 4.637791e-2, -2.165394e-3, 6.048144e-5, -7.293422e-7],
      errorLowK: -0.03,
      errorHighK: 0.03,
    },
  ],
  classes: [
    {
      key: '1',
      source: 'iec-60584-1',
      status: 'memory',
      place: 'tolerances, from memory',
      fixedK: 0.5,
      shareFraction: 0.004,
      rangeC: [-40, 350],
    },
    {
      key: '2',
      source: 'iec-60584-1',
      status: 'memory',
      place: 'tolerances, from memory',
      fixedK: 1,
      shareFraction: 0.0075,
      rangeC: [-40, 350],
    },
  ],
};

/** Type N (nickel–chromium–silicon against nickel–silicon), −270 to 1300 °C. */
export const thermocoupleN: ThermocoupleType = {
  letter: 'N',
  key: 'thermocouple-n',
  source: 'nist-monograph-175',
  status: 'published',
  place: 'type N, reference function and approximate inverse',
  pieces: [
    {
      fromTempC: -270,
      toTempC: 0,
      coefficients: [
        0, 0.26159105962e-1, 0.10957484228e-4, -0.93841111554e-7, -0.46412039759e-10, -0.26303357716e-11,
        -0.22653438003e-13, -0.76089300791e-16, -0.93419667835e-19,
      ],
    },
    {
      fromTempC: 0,
      toTempC: 1300,
      coefficients: [
        0, 0.25929394601e-1, 0.1571014188e-4, 0.43825627237e-7, -0.25261169794e-9, 0.64311819339e-12,
        -0.10063471519e-14, 0.99745338992e-18, -0.60863245607e-21, 0.20849229339e-24, -0.30682196151e-28,
      ],
    },
  ],
  inverse: [
    {
      fromMv: -3.99,
      toMv: 0,
      coefficients: [
        0, 3.8436847e1, 1.1010485, 5.2229312, 7.2060525, 5.8488586, 2.7754916, 7.7075166e-1, 1.1582665e-1, 7.3138868e-3,
      ],
      errorLowK: -0.02,
      errorHighK: 0.03,
    },
    {
      fromMv: 0,
      toMv: 20.613,
      coefficients: [0, 3.86896e1, -1.08267, 4.70205e-2, -2.12169e-6, -1.17272e-4, 5.3928e-6, -7.98156e-8],
      errorLowK: -0.02,
      errorHighK: 0.03,
    },
    {
      fromMv: 20.613,
      toMv: 47.513,
      coefficients: [1.972485e1, 3.300943e1, -3.915159e-1, 9.855391e-3, -1.274371e-4, 7.767022e-7],
      errorLowK: -0.04,
      errorHighK: 0.02,
    },
  ],
  classes: [
    {
      key: '1',
      source: 'iec-60584-1',
      status: 'memory',
      place: 'tolerances, from memory',
      fixedK: 1.5,
      shareFraction: 0.004,
      rangeC: [-40, 1000],
    },
    {
      key: '2',
      source: 'iec-60584-1',
      status: 'memory',
      place: 'tolerances, from memory',
      fixedK: 2.5,
      shareFraction: 0.0075,
      rangeC: [-40, 1200],
    },
  ],
};
