import type { WireInAir } from './wire-in-air.js';

/** What of a wire its company feels. */
export type BundledWire = Pick<WireInAir, 'conductorDiameterMm' | 'outerDiameterMm' | 'insulationConductivityWPerMK'>;

/**
 * Conductivity across a bundle in W/(m·K), the least that its parts allow: wires in still air, without contact
 * (Hashin and Shtrikman's lower bound in two dimensions). A wire counts as a rod of the conductivity
 * k (1 + f)/(1 − f), with f the share of its section inside the insulation, whose metal conducts without resistance.
 *
 * $$\frac{k - k_a}{k + k_a} = \sum_i \varphi_i \frac{k_i - k_a}{k_i + k_a}$$
 *
 * Pressed wires conduct better; so a bundle is cooler inside than by this, not hotter.
 */
export function bundleConductivity(wires: readonly BundledWire[], bundleDiameterMm: number, ambientK: number): number {
  const air = (2.334e-3 * ambientK * Math.sqrt(ambientK)) / (164.54 + ambientK);
  let sum = 0;
  for (const { conductorDiameterMm, outerDiameterMm, insulationConductivityWPerMK } of wires) {
    const f = (conductorDiameterMm / outerDiameterMm) ** 2;
    const phi = (outerDiameterMm / bundleDiameterMm) ** 2;
    // (k − kₐ)/(k + kₐ), which is 1 for bare metal.
    const k = insulationConductivityWPerMK as number;
    sum += phi * (f < 1 ? (k * (1 + f) - air * (1 - f)) / (k * (1 + f) + air * (1 - f)) : 1);
  }
  return (air * (1 + sum)) / (1 - sum);
}
