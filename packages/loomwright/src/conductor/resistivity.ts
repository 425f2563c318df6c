import { needBetween, needInput, needOneOf, needConductorTempC } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import { ALUMINIUM_20, COPPER_20, METALS, type Metal, resistanceRatio } from './metal.js';

/** How resistance is carried from 20 °C to another temperature. */
export type TemperatureForm = 'inferred-zero' | 'linear' | 'simplified-0.004';

export interface ResistivityInput {
  /** Conductor temperature in °C, −100 to 400 (solid metal, form still straight). */
  readonly conductorTempC: number;
  /** Metal; annealed copper unless given. */
  readonly metal?: Metal;
  /**
   * Diameter of one strand in mm, 0.0762 to 11.684 (0.0030 to 0.460 in); required for tinned copper, whose coat
   * weighs more on thin strands. Of no effect on the others.
   */
  readonly strandDiameterMm?: number;
  /** Temperature form; the inferred-zero form unless given. */
  readonly form?: TemperatureForm;
}

export interface ResistivityResult {
  /** Resistivity at the conductor's temperature in Ω·mm²/m. */
  readonly resistivityOhmMm2PerM: number;
  /** The same at 20 °C. */
  readonly resistivity20OhmMm2PerM: number;
  /** Ratio of the two. */
  readonly temperatureFactor: number;
  /** Where the value at 20 °C comes from. */
  readonly source: SourceKey;
  /** How far that can be trusted. */
  readonly sourceStatus: SourceStatus;
}

/**
 * Resistivity of a conductor metal at a temperature.
 *
 * Use it to see what heat does to a wire. For the resistance of a real wire use `wireResistance`, which knows what
 * a standard allows a stranded conductor to have.
 *
 * $$\rho(T) = \rho_{20}\,\frac{T_0 + T}{T_0 + 20}$$
 *
 * with $T_0$ = 234.5 °C for copper and 228 °C for aluminium. The linear form $\rho_{20}(1+\alpha_{20}(T-20))$ with
 * 0.00393 /K (copper) or 0.00403 /K (aluminium), and the simplified one with 0.004 /K, are there because some
 * sources print values by them; they differ by up to 0.4 % at 90 °C. Tinned copper has the temperature form of
 * copper and the least conductivity that its standard allows, hence the most resistivity.
 *
 * @param input temperature, metal, form
 * @returns resistivity in Ω·mm²/m at the temperature and at 20 °C, their ratio, and where it comes from
 * @throws InputError when a field is missing, out of range or not a known word
 * Valid from −100 to 400 °C, where the metal's resistance is close to a straight line; outside it throws.
 * @source nbs-hb-100, section 1.1 (0.15328 Ω·g/m² and 8.89 g/cm³); iec-60889 (aluminium, from memory);
 * astm-b33 (tin coat, conductivity by strand, from memory); iec-60228 (simplified form)
 * @example resistivity({ conductorTempC: 85 }).resistivityOhmMm2PerM //=> 0.021644
 */
export function resistivity(input: ResistivityInput): ResistivityResult {
  needInput('resistivity', input);
  const { conductorTempC, metal = 'copper', strandDiameterMm, form = 'inferred-zero' } = input;
  needConductorTempC('resistivity', 'conductorTempC', conductorTempC);
  needOneOf('resistivity', 'metal', metal, METALS);
  needOneOf('resistivity', 'form', form, ['inferred-zero', 'linear', 'simplified-0.004']);
  const tinned = metal === 'tinned-copper';
  const aluminium = metal === 'aluminium';
  if (tinned || strandDiameterMm !== undefined) {
    needBetween('resistivity', 'strandDiameterMm', strandDiameterMm as number, 0.0762, 11.684);
  }
  const rho20 = aluminium ? ALUMINIUM_20 : COPPER_20 / (tinned ? tinnedIacs(strandDiameterMm as number) : 1);
  const alpha = form === 'simplified-0.004' ? 0.004 : aluminium ? 0.00403 : 0.00393;
  const temperatureFactor =
    form === 'inferred-zero' ? resistanceRatio(metal, 20, conductorTempC) : 1 + alpha * (conductorTempC - 20);
  return {
    resistivityOhmMm2PerM: rho20 * temperatureFactor,
    resistivity20OhmMm2PerM: rho20,
    temperatureFactor,
    source: tinned ? 'astm-b33' : aluminium ? 'iec-60889' : 'nbs-hb-100',
    sourceStatus: tinned || aluminium ? 'memory' : 'published',
  };
}

/** Least conductivity of a tinned strand, as a fraction of copper's (ASTM B33, from memory). */
function tinnedIacs(d: number): number {
  // 0.0111, 0.0201, 0.103 and 0.290 in: each step belongs to the thinner, poorer strand.
  return d <= 0.28194 ? 0.9315 : d <= 0.51054 ? 0.9416 : d <= 2.6162 ? 0.9616 : d <= 7.366 ? 0.9716 : 0.9766;
}
