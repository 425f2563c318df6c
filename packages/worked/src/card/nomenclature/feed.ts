import type { Terms } from './type.js';

/** Names of conductors, paths and feeds. */
export const feedTerms = {
  supplyV: { label: 'Supply', symbol: 'V' },
  currentA: { label: 'Current', symbol: 'I' },
  outLengthM: { label: 'Wire to the load', symbol: 'l_\\mathrm{out}' },
  returnLengthM: { label: 'Wire back', symbol: 'l_\\mathrm{return}' },
  lengthM: { label: 'Length', symbol: 'l' },
  areaMm2: { label: 'Conductor area', symbol: 'A' },
  diameterMm: { label: 'Conductor diameter', symbol: 'd' },
  resistanceOhmPerM: { label: 'Resistance a metre', symbol: 'r' },
  resistanceOhm: { label: 'Resistance', symbol: 'R' },
  ratedTempC: { label: 'Temperature of that value', symbol: 'T_\\mathrm{rated}' },
  conductorTempC: { label: 'Conductor temperature', symbol: 'T' },
  ambientTempC: { label: 'Ambient temperature', symbol: 'T_\\mathrm{amb}' },
  insulationTempC: { label: 'Insulation class', symbol: 'T_\\mathrm{ins}' },
  dropV: { label: 'Voltage lost', symbol: 'U' },
  dropFraction: { label: 'Share of the supply lost', symbol: 'u' },
  loadV: { label: 'Volts at the load', symbol: 'V_\\mathrm{load}' },
  lossW: { label: 'Heat in the wire', symbol: 'P_\\mathrm{loss}' },
  powerW: { label: 'Power', symbol: 'P' },
  massKg: { label: 'Mass', symbol: 'm' },
  massKgPerM: { label: 'Mass a metre', symbol: "m'" },
} as const satisfies Terms;
