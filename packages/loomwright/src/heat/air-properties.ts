import { needBetween, needInput } from '../error/guard.js';
import { ZERO_C_IN_K } from '../unit/index.js';
import { standardPressure } from './standard-pressure.js';

export interface AirPropertiesInput {
  /** Temperature of the air film in °C: the mean of surface and surroundings. −73.15 to 226.85 (200 to 500 K). */
  readonly filmTempC: number;
  /** Altitude in m, −500 to 20 000; 0 is sea level. */
  readonly altitudeM: number;
}

export interface AirPropertiesResult {
  /** Density in kg/m³. */
  readonly densityKgPerM3: number;
  /** Dynamic viscosity in Pa·s. */
  readonly viscosityPaS: number;
  /** Kinematic viscosity in m²/s. */
  readonly kinematicViscosityM2PerS: number;
  /** Thermal conductivity in W/(m·K). */
  readonly conductivityWPerMK: number;
  /** Specific heat at constant pressure in J/(kg·K). */
  readonly specificHeatJPerKgK: number;
  /** Thermal diffusivity in m²/s. */
  readonly diffusivityM2PerS: number;
  /** Prandtl number. */
  readonly prandtl: number;
  /** Expansion coefficient in 1/K, of an ideal gas. */
  readonly expansionPerK: number;
}

/** Lowest and highest film temperature in K that the fits are used for. */
export const FILM_MIN_K = 200;
export const FILM_MAX_K = 500;

/**
 * Properties of dry air in the film around a warm wire.
 *
 * The fits are made for 200 to 400 K, within 0.15 % of the tables that they were made from. We use them to 500 K:
 * against the older tables they stay within 0.3 % to 450 K and 0.6 % at 500 K. Newer tables have up to 3.5 % more
 * conductivity there. Only the density depends on altitude; it follows the pressure of the standard atmosphere.
 *
 * $$\rho = \frac{p}{p_0}\left(\frac{351.99}{T} + \frac{344.84}{T^2}\right),\quad
 * \mu = \frac{1.4592 \cdot 10^{-6}\,T^{1.5}}{109.10 + T},\quad
 * k = \frac{2.3340 \cdot 10^{-3}\,T^{1.5}}{164.54 + T}$$
 *
 * $$c_p = 1030.5 - 0.19975\,T + 3.9734 \cdot 10^{-4}\,T^2,\quad \mathrm{Pr} = c_p\mu/k,\quad \beta = 1/T$$
 *
 * @param input film temperature and altitude
 * @returns density, viscosities, conductivity, specific heat, diffusivity, Prandtl number, expansion coefficient
 * @throws InputError when a field is missing or out of range
 * @source uw-mhtl-8406 (air at one atmosphere); us-standard-atmosphere (pressure)
 * @example airProperties({ filmTempC: 40, altitudeM: 0 }).conductivityWPerMK //=> 0.0270759
 */
export function airProperties(input: AirPropertiesInput): AirPropertiesResult {
  needInput('airProperties', input);
  const { filmTempC, altitudeM } = input;
  needBetween('airProperties', 'filmTempC', filmTempC, FILM_MIN_K - ZERO_C_IN_K, FILM_MAX_K - ZERO_C_IN_K);
  const { pressureRatio } = standardPressure({ altitudeM });
  const t = filmTempC + ZERO_C_IN_K;
  const density = pressureRatio * (351.99 / t + 344.84 / (t * t));
  const viscosity = (1.4592e-6 * t * Math.sqrt(t)) / (109.1 + t);
  const conductivity = (2.334e-3 * t * Math.sqrt(t)) / (164.54 + t);
  const specificHeat = 1030.5 - 0.19975 * t + 3.9734e-4 * t * t;
  return {
    densityKgPerM3: density,
    viscosityPaS: viscosity,
    kinematicViscosityM2PerS: viscosity / density,
    conductivityWPerMK: conductivity,
    specificHeatJPerKgK: specificHeat,
    diffusivityM2PerS: conductivity / (density * specificHeat),
    prandtl: (specificHeat * viscosity) / conductivity,
    expansionPerK: 1 / t,
  };
}
