import type { Metal } from '../conductor/index.js';
import { METALS } from '../conductor/metal.js';
import { InputError } from '../error/index.js';
import { needAbove, needBetween, needConductorTempC, needOneOf } from '../error/guard.js';
import { CONVECTIONS, type Convection } from './nusselt-horizontal-cylinder.js';
import { needAltitudeM } from './standard-pressure.js';

/** A single insulated or bare wire, level, in still air. */
export interface WireInAir {
  /** Resistance of one metre in Ω/m at `ratedTempC`, above 0: the most that the wire's standard allows. */
  readonly resistanceOhmPerM: number;
  /** Temperature in °C for which that resistance is stated; 20 in nearly all tables. */
  readonly ratedTempC: number;
  /** Metal; annealed copper unless given. */
  readonly metal?: Metal;
  /** Diameter over the strands in mm, above 0 to 300. */
  readonly conductorDiameterMm: number;
  /** Diameter over the insulation in mm, at least that of the conductor (equal: bare), to 300. */
  readonly outerDiameterMm: number;
  /** Thermal conductivity of the insulation in W/(m·K), 0.01 to 10; required unless bare. PVC about 0.17. */
  readonly insulationConductivityWPerMK?: number;
  /** Temperature of the air and of what surrounds the wire in °C, −60 to 200. */
  readonly ambientTempC: number;
  /** Altitude in m, −500 to 20 000; 0 is sea level. */
  readonly altitudeM: number;
  /** Emissivity of the surface, 0 to 1; 0.9 unless given, common practice for any plastic or rubber cover. */
  readonly emissivity?: number;
  /** Correlation of convection; Churchill and Chu unless given. */
  readonly convection?: Convection;
}

/** Throws unless the wire is whole. `at` is the path to it inside a larger input, such as 'wire.'. */
export function needWireInAir(fn: string, wire: WireInAir, at = ''): void {
  const { resistanceOhmPerM: r, ratedTempC: t, conductorDiameterMm: d, outerDiameterMm: o } = wire;
  const { insulationConductivityWPerMK: k, ambientTempC: a, altitudeM: h, emissivity: e } = wire;
  // A whole wire passes by plain comparisons: this stands in front of a solver of a microsecond.
  if (
    typeof r === 'number' &&
    r > 0 &&
    r < 1e6 &&
    typeof t === 'number' &&
    t >= -100 &&
    t <= 400 &&
    typeof d === 'number' &&
    d > 0 &&
    typeof o === 'number' &&
    o >= d &&
    o <= 300 &&
    (k === undefined ? o === d : typeof k === 'number' && k >= 0.01 && k <= 10) &&
    typeof a === 'number' &&
    a >= -60 &&
    a <= 200 &&
    typeof h === 'number' &&
    h >= -500 &&
    h <= 20000 &&
    (e === undefined || (typeof e === 'number' && e >= 0 && e <= 1)) &&
    wire.metal === undefined &&
    (wire.convection === undefined || wire.convection === 'churchill-chu')
  ) {
    return;
  }
  needWireInWords(fn, wire, at);
}

/** The same, field by field, to name what is wrong. */
function needWireInWords(fn: string, wire: WireInAir, at: string): void {
  const { conductorDiameterMm, outerDiameterMm, insulationConductivityWPerMK, metal, emissivity, convection } = wire;
  needAbove(fn, `${at}resistanceOhmPerM`, wire.resistanceOhmPerM);
  needConductorTempC(fn, `${at}ratedTempC`, wire.ratedTempC);
  if (metal !== undefined) needOneOf(fn, `${at}metal`, metal, METALS);
  needAbove(fn, `${at}conductorDiameterMm`, conductorDiameterMm);
  needBetween(fn, `${at}outerDiameterMm`, outerDiameterMm, conductorDiameterMm, 300);
  if (insulationConductivityWPerMK !== undefined || outerDiameterMm > conductorDiameterMm) {
    needBetween(fn, `${at}insulationConductivityWPerMK`, insulationConductivityWPerMK as number, 0.01, 10);
  }
  needBetween(fn, `${at}ambientTempC`, wire.ambientTempC, -60, 200);
  needAltitudeM(fn, wire.altitudeM, `${at}altitudeM`);
  if (emissivity !== undefined) needBetween(fn, `${at}emissivity`, emissivity, 0, 1);
  if (convection !== undefined) needOneOf(fn, `${at}convection`, convection, CONVECTIONS);
}

/** Thermal resistance of the insulation of one metre, in K·m/W; 0 for a bare wire. */
export function insulationKPerWM(
  wire: Pick<WireInAir, 'conductorDiameterMm' | 'outerDiameterMm' | 'insulationConductivityWPerMK'>,
): number {
  const { conductorDiameterMm, outerDiameterMm, insulationConductivityWPerMK } = wire;
  return outerDiameterMm > conductorDiameterMm
    ? Math.log(outerDiameterMm / conductorDiameterMm) / (2 * Math.PI * (insulationConductivityWPerMK as number))
    : 0;
}

/** Inferred zero-resistance temperature of the wire's metal, in °C below zero. */
export function zeroOf(metal: Metal | undefined): number {
  return metal === 'aluminium' ? 228 : 234.5;
}

/** A current that no steady temperature answers to, in the words of a result. */
export type NoTemperature = 'beyond-air-data' | 'runs-away';

/** Highest conductor temperature in °C for which a metal's resistance is taken as straight. */
export const HOTTEST_C = 400;

/** A limit on the conductor must lie where resistance and air film are known. */
export function needMaxConductorTempC(fn: string, maxConductorTempC: number, ambientTempC: number, at = ''): void {
  needConductorTempC(fn, `${at}maxConductorTempC`, maxConductorTempC);
  if (maxConductorTempC + ambientTempC > 453) {
    throw new InputError(
      fn,
      `${at}maxConductorTempC`,
      'range',
      maxConductorTempC,
      `must be at most ${453 - ambientTempC} in air of ${ambientTempC} °C`,
      'the properties of air are known to a film of 227 °C',
    );
  }
}
