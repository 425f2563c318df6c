import { ConvergenceError } from '../error/index.js';
import { findRoot } from '../number/index.js';
import { STANDARD_GRAVITY, STEFAN_BOLTZMANN } from '../unit/index.js';
import { FILM_MAX_K } from './air-properties.js';
import { morgan } from './nusselt-horizontal-cylinder.js';

// The heat that the surface of a wire or a bundle gives off. Plain numbers in and out: these run in every loop.

/** Rayleigh number of a cylinder in air; the fits of `airProperties`, gathered so that no root is taken. */
export function rayleighOf(surfaceK: number, ambientK: number, diameterM: number, pressureRatio: number): number {
  const t = 0.5 * (surfaceK + ambientK);
  const density = pressureRatio * (351.99 / t + 344.84 / (t * t));
  const specificHeat = 1030.5 - t * (0.19975 - 3.9734e-4 * t);
  // ν α = μ k / (ρ² c_p), and μ k has T³ in it.
  const viscosityConductivity = (1.4592e-6 * 2.334e-3 * t * t * t) / ((109.1 + t) * (164.54 + t));
  const cube = diameterM * diameterM * diameterM;
  return (
    (STANDARD_GRAVITY * Math.abs(surfaceK - ambientK) * cube * density * density * specificHeat) /
    (t * viscosityConductivity)
  );
}

/** Mean Nusselt number of a cylinder in air, from its Rayleigh number and the film temperature in K. */
export function nusseltOf(rayleigh: number, filmK: number, byMorgan: boolean): number {
  if (byMorgan) return morgan(rayleigh);
  const sum = 0.6 + prandtlFactor(filmK) * Math.cbrt(Math.sqrt(rayleigh));
  return sum * sum;
}

/**
 * 0.387 / [1 + (0.559/Pr)^(9/16)]^(8/27) for air at a film temperature in K: a Chebyshev fit over 200 to 500 K, within
 * 3·10⁻¹⁰ of Churchill and Chu's formula with the fits of `airProperties`. A test compares them. It saves seven roots.
 */
function prandtlFactor(filmK: number): number {
  const u = (filmK - 350) / 150;
  const high =
    2.361377632784e-5 +
    u * (-7.553960335965e-6 + u * (2.27130029e-6 + u * (-6.939744896e-7 + u * (2.783665362e-7 - u * 8.549067394e-8))));
  return 0.3211778067784 + u * (-5.887730408955e-4 + u * (4.902208382251e-4 + u * (-8.417344011064e-5 + u * high)));
}

/** Heat given to the air by convection, in W a metre; negative where the surface is the colder. */
export function convectionWPerM(nusselt: number, surfaceK: number, ambientK: number): number {
  const t = 0.5 * (surfaceK + ambientK);
  return (Math.PI * nusselt * (surfaceK - ambientK) * 2.334e-3 * t * Math.sqrt(t)) / (164.54 + t);
}

/** Heat given to surroundings at the temperature of the air by radiation, in W a metre. */
export function radiationWPerM(surfaceK: number, ambientK: number, diameterM: number, emissivity: number): number {
  const s2 = surfaceK * surfaceK;
  const a2 = ambientK * ambientK;
  return (
    Math.PI * diameterM * emissivity * STEFAN_BOLTZMANN * (s2 + a2) * (surfaceK + ambientK) * (surfaceK - ambientK)
  );
}

/** Both ways out, in W a metre. */
export function surfaceWPerM(
  surfaceK: number,
  ambientK: number,
  diameterM: number,
  emissivity: number,
  pressureRatio: number,
  byMorgan: boolean,
): number {
  const rayleigh = rayleighOf(surfaceK, ambientK, diameterM, pressureRatio);
  const nusselt = nusseltOf(rayleigh, 0.5 * (surfaceK + ambientK), byMorgan);
  return convectionWPerM(nusselt, surfaceK, ambientK) + radiationWPerM(surfaceK, ambientK, diameterM, emissivity);
}

/** Hottest surface in K whose film the air fits cover. */
export function hottestSurfaceK(ambientK: number): number {
  return 2 * FILM_MAX_K - ambientK;
}

/**
 * The surface temperature in K at which a·Q(Tₛ) + b·Tₛ + c = 0, with Q the heat given off; NaN where it lies above
 * `maxK`. The left side must be negative at the ambient temperature and pass zero once. Found to 10⁻⁶ K: by secant
 * steps kept in a bracket, or by bracketing alone for Morgan's formula, which has jumps.
 */
export function solveSurfaceK(
  fn: string,
  a: number,
  b: number,
  c: number,
  guessK: number,
  maxK: number,
  ambientK: number,
  diameterM: number,
  emissivity: number,
  pressureRatio: number,
  byMorgan: boolean,
): number {
  if (byMorgan) {
    const f = (x: number): number =>
      a * surfaceWPerM(x, ambientK, diameterM, emissivity, pressureRatio, true) + b * x + c;
    return f(maxK) < 0 ? NaN : findRoot({ fn, f, low: ambientK, high: maxK, tolerance: 1e-7 });
  }
  let low = ambientK;
  let high = maxK;
  let x0 = guessK < maxK ? guessK : maxK;
  let q = surfaceWPerM(x0, ambientK, diameterM, emissivity, pressureRatio, false);
  let f0 = a * q + b * x0 + c;
  if (f0 === 0) return x0;
  if (f0 > 0) high = x0;
  else if (x0 === maxK) return NaN;
  else low = x0;
  // First step: the conductance found, taken as constant.
  const slope = (a * q) / (x0 - ambientK) + b;
  let x1 = slope > 0 ? ambientK - (b * ambientK + c) / slope : high;
  for (let step = 0; step < 80; step++) {
    if (!(x1 > low) || (step > 8 && (step & 1) === 1)) x1 = 0.5 * (low + high);
    else if (!(x1 < high)) x1 = high === maxK ? maxK : 0.5 * (low + high);
    q = surfaceWPerM(x1, ambientK, diameterM, emissivity, pressureRatio, false);
    const f1 = a * q + b * x1 + c;
    if (f1 > 0) high = x1;
    else if (x1 === maxK) return f1 === 0 ? x1 : NaN;
    else low = x1;
    if (f1 === 0 || high - low < 1e-8) return x1;
    const move = (f1 * (x1 - x0)) / (f1 - f0);
    // A secant step leaves about an eighth of move · last move / rise.
    if (Math.abs(move * (x1 - x0)) < 1e-7 * (x1 - ambientK)) return x1 - move;
    x0 = x1;
    f0 = f1;
    x1 -= move;
  }
  throw new ConvergenceError(fn, 80, x1, f0);
}
