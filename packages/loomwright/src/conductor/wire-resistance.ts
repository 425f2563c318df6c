import { needInput, needConductorTempC } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { ResistanceBasis } from '../table/index.js';
import { needLengthM } from './area.js';
import { resistanceRatio } from './metal.js';
import { type SizeInput, resolveSize } from './size.js';

export interface WireResistanceInput extends SizeInput {
  /** Which resistance the size has: a table, or `geometric`. */
  readonly resistanceBasis: ResistanceBasis;
  /** Length of wire in m, along the current: for a two-wire circuit out plus back. 0 to 1e6. */
  readonly lengthM: number;
  /** Conductor temperature in °C, −100 to 400: that of the copper in use, not of the room. */
  readonly conductorTempC: number;
}

export interface WireResistanceResult {
  /** Resistance of the length at the temperature, in Ω. */
  readonly resistanceOhm: number;
  /** Resistance of one metre at the temperature, in Ω/m. */
  readonly resistanceOhmPerM: number;
  /** Area in mm²: as printed where the table prints one, else the nominal or the AWG number's. */
  readonly areaMm2: number;
  /** The size as the trade writes it. */
  readonly size: string;
  /** Key of the basis. */
  readonly resistanceBasis: string;
  /** Where the resistance comes from. */
  readonly source: SourceKey;
  /** How far that can be trusted. */
  readonly sourceStatus: SourceStatus;
}

/**
 * Resistance of a length of wire at a temperature, by a named basis.
 *
 * A standard's table gives the most that a wire of the size may have; `geometric` gives what ideal copper of that
 * area would have, which no stranded wire reaches. For sizing take the table of the wire that you buy. The size is
 * named as the table names it: an AWG number is not looked up in a table of mm², nor an SAE number in one of AWG.
 *
 * $$R = r_{\mathrm{basis}}\,l\,\frac{T_0 + T}{T_0 + T_{\mathrm{basis}}}$$
 *
 * @param input size, basis, length, temperature
 * @returns Ω for the length, Ω/m, area in mm², and where the resistance comes from
 * @throws InputError when a field is missing or out of range, or the size is not in the basis
 * Valid from −100 to 400 °C; outside it throws, as it does for a size that the table does not have.
 * @source the basis' own; nbs-hb-100, section 1.1 (copper by area; temperature by the inferred-zero form)
 * @example wireResistance({ areaMm2: 2.5, resistanceBasis: iec60228Class5, lengthM: 8, conductorTempC: 70 }).resistanceOhm //=> 0.0763822
 */
export function wireResistance(input: WireResistanceInput): WireResistanceResult {
  needInput('wireResistance', input);
  const { resistanceBasis, lengthM, conductorTempC } = input;
  const size = resolveSize('wireResistance', input, resistanceBasis);
  needLengthM('wireResistance', lengthM);
  needConductorTempC('wireResistance', 'conductorTempC', conductorTempC);
  const resistanceOhmPerM = size.resistanceOhmPerM * resistanceRatio(size.metal, size.ratedTempC, conductorTempC);
  return {
    resistanceOhm: resistanceOhmPerM * lengthM,
    resistanceOhmPerM,
    areaMm2: size.areaMm2,
    size: size.label,
    resistanceBasis: resistanceBasis.key,
    source: resistanceBasis.kind === 'geometric' ? 'nbs-hb-100' : resistanceBasis.source,
    sourceStatus: resistanceBasis.kind === 'geometric' ? 'derived' : resistanceBasis.status,
  };
}
