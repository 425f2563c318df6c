import type { Terms } from './type.js';

/** Names of bare conductors: metals, gauges, sizes. */
export const conductorTerms = {
  resistivityOhmMm2PerM: { label: 'Resistivity', symbol: '\\rho' },
  temperatureFactor: { label: 'Against 20 °C', symbol: 'k_T' },
  temperatureCoefficientPerK: { label: 'Temperature coefficient at 20 °C', symbol: '\\alpha_{20}' },
  zeroTempC: { label: 'Degrees below zero where resistance would vanish', symbol: 'T_0' },
  strandDiameterMm: { label: 'Diameter of one strand', symbol: 'd_s' },
  form: { label: 'Temperature form', symbol: '\\mathrm{form}' },
  ratedOhmPerM: { label: 'Resistance a metre, as its table says', symbol: 'r_\\mathrm{rated}' },
  resistanceBasis: { label: 'Table of resistance', symbol: '\\mathrm{basis}' },
  densityGPerCm3: { label: 'Density of the metal', symbol: '\\gamma' },
  gaugeNumber: { label: 'Number of the gauge, 0 for 1/0, −3 for 4/0', symbol: 'n' },
  gaugeAreaMm2: { label: 'Area of that gauge', symbol: 'A_n' },
  atLeastAreaMm2: { label: 'Its area', symbol: 'A_\\mathrm{up}' },
  belowAreaMm2: { label: 'Area of the size below', symbol: 'A_\\mathrm{down}' },
  fuseResistanceOhm: { label: 'Fuse, hot', symbol: 'R_\\mathrm{fuse}' },
  relayResistanceOhm: { label: 'Relay contact', symbol: 'R_\\mathrm{relay}' },
  jointCount: { label: 'Terminals in the way out', symbol: 'N' },
  jointResistanceOhm: { label: 'Each terminal', symbol: 'R_\\mathrm{joint}' },
  bodyResistanceOhm: { label: 'Ground stud and body', symbol: 'R_\\mathrm{body}' },
  loadKind: { label: 'The load is of', symbol: '\\mathrm{load}' },
  loadResistanceOhm: { label: 'Resistance of the load', symbol: 'R_\\mathrm{load}' },
} as const satisfies Terms;
