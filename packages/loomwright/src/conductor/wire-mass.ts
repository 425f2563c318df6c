import { needBetween, needInput, needOneOf } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import { needAreaMm2, needLengthM } from './area.js';
import { METALS, type Metal } from './metal.js';

export interface WireMassInput {
  /** Conductor area in mm², 0.001 to 1e6. */
  readonly areaMm2: number;
  /** Length in m, 0 to 1e6. */
  readonly lengthM: number;
  /** Metal; annealed copper unless given. Tin is counted as copper. */
  readonly metal?: Metal;
  /** Length of a strand over length of the wire, 1 (solid) to 1.1; 1 unless given. */
  readonly layFactor?: number;
}

export interface WireMassResult {
  /** Mass of the conductor in kg. */
  readonly massKg: number;
  /** Mass of one metre in kg/m. */
  readonly massKgPerM: number;
  /** Where the density comes from. */
  readonly source: SourceKey;
  /** How far that can be trusted. */
  readonly sourceStatus: SourceStatus;
}

/**
 * Mass of a bare conductor. Insulation is not counted, nor the tin.
 *
 * $$m = \gamma\,A\,l\,k_{\mathrm{lay}}$$
 *
 * with $\gamma$ = 8.89 g/cm³ for copper and 2.703 g/cm³ for aluminium at 20 °C.
 *
 * @param input area, length, metal, lay factor
 * @returns mass in kg and in kg/m, and where the density comes from
 * @throws InputError when a field is missing, out of range or not a known word
 * Valid from 0.001 mm² to 1 m² and to 1000 km; outside it throws: an area below is nearly always one in m².
 * @source nbs-hb-100, section 1.1 (copper); iec-60889 (aluminium, from memory)
 * @example wireMass({ areaMm2: 25, lengthM: 4 }).massKg //=> 0.889
 */
export function wireMass(input: WireMassInput): WireMassResult {
  needInput('wireMass', input);
  const { areaMm2, lengthM, metal = 'copper', layFactor = 1 } = input;
  needAreaMm2('wireMass', areaMm2);
  needLengthM('wireMass', lengthM);
  needOneOf('wireMass', 'metal', metal, METALS);
  needBetween('wireMass', 'layFactor', layFactor, 1, 1.1);
  const aluminium = metal === 'aluminium';
  const massKgPerM = ((aluminium ? 2.703 : 8.89) * areaMm2 * layFactor) / 1000;
  return {
    massKg: massKgPerM * lengthM,
    massKgPerM,
    source: aluminium ? 'iec-60889' : 'nbs-hb-100',
    sourceStatus: aluminium ? 'memory' : 'published',
  };
}
