import { InputError } from '../error/index.js';
import { needAbove, needInput, needOneOf, needConductorTempC } from '../error/guard.js';
import { ALUMINIUM_20, COPPER_20, METALS, type Metal, resistanceRatio } from './metal.js';

/** How resistance is carried from 20 °C to another temperature. */
export type TemperatureForm = 'inferred-zero' | 'linear' | 'simplified-0.004';

export interface ResistivityInput {
  /** Conductor temperature in °C, −100 to 400 (solid metal, form still straight). */
  readonly conductorTempC: number;
  /** Metal; annealed copper unless given. */
  readonly metal?: Metal;
  /** Diameter of one strand in mm, 0.05 to 7.4; required for tinned copper, whose coat weighs more on thin strands. */
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
 * sources print values by them; they differ by up to 0.4 % at 90 °C.
 *
 * @param input temperature, metal, form
 * @returns resistivity in Ω·mm²/m at the temperature and at 20 °C, and their ratio
 * @throws InputError when a field is missing, out of range or not a known word
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
  const rho20 = resistivity20(metal, strandDiameterMm);
  const alpha = form === 'simplified-0.004' ? 0.004 : metal === 'aluminium' ? 0.00403 : 0.00393;
  const temperatureFactor =
    form === 'inferred-zero' ? resistanceRatio(metal, 20, conductorTempC) : 1 + alpha * (conductorTempC - 20);
  return {
    resistivityOhmMm2PerM: rho20 * temperatureFactor,
    resistivity20OhmMm2PerM: rho20,
    temperatureFactor,
  };
}

/** Resistivity at 20 °C; for tinned copper by the strand's diameter (ASTM B33, minimum conductivity, from memory). */
function resistivity20(metal: Metal, strandDiameterMm: number | undefined): number {
  if (metal === 'copper') return COPPER_20;
  if (metal === 'aluminium') return ALUMINIUM_20;
  needAbove('resistivity', 'strandDiameterMm', strandDiameterMm as number, 0, 'tin weighs more on thin strands');
  const d = strandDiameterMm as number;
  if (d < 0.05 || d > 7.4) {
    throw new InputError('resistivity', 'strandDiameterMm', 'range', d, 'must lie from 0.05 to 7.4');
  }
  // 0.0111, 0.0201, 0.103 and 0.290 in are the steps of the standard.
  const iacs = d < 0.28194 ? 0.9315 : d < 0.51054 ? 0.9416 : d < 2.6162 ? 0.9616 : d < 7.366 ? 0.9716 : 0.9766;
  return COPPER_20 / iacs;
}
