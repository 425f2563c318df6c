import type { Source } from './type.js';

/** Sources on thermistors, platinum resistors, thermocouples, and on fitting and interpolating their curves. */
export const temperatureSources = {
  'steinhart-hart-1968': {
    title: 'Steinhart, J. S. and Hart, S. R., Calibration curves for thermistors, Deep-Sea Research 15, 497–503',
    publisher: 'Pergamon',
    edition: '1968',
    status: 'published',
    note: 'The equation and its closed inverse as printed in an encyclopedia; the paper itself was not read.',
  },
  'ntc-beta-equation': {
    title: 'The Beta equation of NTC thermistors, as in the notes of their makers',
    publisher: 'component makers',
    status: 'published',
  },
  'ntc-2252-table': {
    title: 'Resistance table of the 2252 Ω precision thermistor (series 44004), −80 to 250 °C',
    publisher: 'component makers, as carried in an instrument library',
    status: 'published',
  },
  'ntc-44031-table': {
    title: 'Resistance table of a 10 kΩ precision thermistor (series 44031), −55 to 150 °C',
    publisher: 'component makers, as carried in an instrument library',
    status: 'published',
  },
  'ntc-10k3mcd1-manual': {
    title: 'Manual of an air and soil temperature probe with a 10 kΩ thermistor (10K3MCD1), appendix C',
    publisher: 'instrument maker',
    status: 'published',
    note: 'Its coefficients are printed in the manual and in the answers of the maker.',
  },
  'ntc-44005-manual': {
    title: 'Manual of a vibrating-wire piezometer with a 3 kΩ thermistor (series 44005)',
    publisher: 'instrument maker',
    status: 'published',
    note: 'Converts with 273.2, which shifts every result by 0.05 K.',
  },
  'ntc-103jl1a-manual': {
    title: 'Manual of a ground temperature instrument with a 10 kΩ thermistor (103JL1A), equation 7 and table 16',
    publisher: 'instrument maker',
    status: 'published',
    note: 'Converts with 273.2. The equation leaves its own table by a third of a kelvin at 150 °C and above.',
  },
  'ntc-material-1': {
    title: 'Thermistor material type 1, ratio table, four-coefficient equations and Beta a span, AAS-913-318C',
    publisher: 'component maker',
    edition: 'revision C, 2014',
    status: 'published',
  },
  'ntc-kernel-tables': {
    title: 'Compensation tables of the hwmon driver for NTC thermistors',
    publisher: 'Linux kernel',
    status: 'published',
    note: 'Transcribed from component data. One of them is a curve of constant Beta, not a measured one.',
  },
  'ntc-5k-chiller-manual': {
    title: 'Control manual of a chiller, table 42B: 5 kΩ thermistor with its divider voltage',
    publisher: 'machine maker',
    status: 'published',
    note: 'The row at −15 °C prints 38476 Ω, where its neighbours imply 36476.',
  },
  'ntc-coolant-service-data': {
    title: 'Coolant and oil temperature sensors in vehicle service data',
    publisher: 'service literature',
    status: 'published',
    note: 'Ranges of several makers; two model years disagree at −20 °C.',
  },
  'ntc-coolant-2500': {
    title: 'Coolant sensor of 2.5 kΩ at 20 °C, used by many vehicle makers',
    publisher: 'component makers',
    status: 'memory',
    note: 'From memory.',
  },
  'iec-60751': {
    title: 'IEC 60751, industrial platinum resistance thermometers',
    publisher: 'IEC',
    edition: '2008 / 2022',
    status: 'published',
    note: 'Equation, coefficients and tolerance classes as printed in component data; temperature ranges of the classes from memory.',
  },
  'iec-751-1983': {
    title: 'IEC 751, the older platinum curve on IPTS-68',
    publisher: 'IEC',
    edition: '1983',
    status: 'published',
    note: 'Superseded, but still in circulation: 0.01 K away from the newer curve at 100 °C, 0.7 K at 850 °C.',
  },
  'nist-monograph-175': {
    title: 'NIST Monograph 175 / SRD 60, thermocouple reference functions and tables on the ITS-90',
    publisher: 'US National Institute of Standards and Technology',
    edition: '1993',
    status: 'published',
    note: 'Public domain. Coefficients and tables of types J, K, N and T read in copies that agree.',
  },
  'iec-60584-1': {
    title: 'IEC 60584-1, thermocouples, EMF specifications and tolerances',
    publisher: 'IEC',
    edition: '2013',
    status: 'published',
    note: 'Tolerances of type K as printed in component data; those of the other types from memory.',
  },
  'nist-strd': {
    title: 'Statistical reference datasets, linear regression: Longley, Filip, Pontius, Wampler',
    publisher: 'US National Institute of Standards and Technology',
    status: 'published',
    note: 'Certified values as carried in the tests of a numerical library; the Wampler sets from memory.',
  },
  'fritsch-butland-1984': {
    title: 'Fritsch, F. N. and Butland, J., A method for constructing local monotone piecewise cubic interpolants',
    publisher: 'SIAM J. Sci. Stat. Comput. 5, 300–304',
    edition: '1984',
    status: 'published',
    note: 'Values from the quick checks of the SLATEC library.',
  },
  'fritsch-carlson-1980': {
    title: 'Fritsch, F. N. and Carlson, R. E., Monotone piecewise cubic interpolation',
    publisher: 'SIAM J. Numer. Anal. 17, 238–246',
    edition: '1980',
    status: 'memory',
  },
} as const satisfies Record<string, Source>;
