import { InputError } from '../error/index.js';
import { needAtLeast, needBetween, needFinite, needInput, needList } from '../error/guard.js';
import { solveLinear } from '../number/solve-linear.js';
import { ZERO_C_IN_K } from '../unit/index.js';
import { bundleConductivity } from './bundle-conductivity.js';
import type { Convection } from './nusselt-horizontal-cylinder.js';
import { pressureRatioAt } from './standard-pressure.js';
import { hottestSurfaceK, solveSurfaceK, surfaceWPerM } from './surface.js';
import {
  HOTTEST_C,
  insulationKPerWM,
  needWireInAir,
  type NoTemperature,
  type WireInAir,
  zeroOf,
} from './wire-in-air.js';

/** One wire in its place in a bundle. */
export interface WireInBundle extends Omit<WireInAir, 'ambientTempC' | 'altitudeM' | 'emissivity' | 'convection'> {
  /** Steady current in A, at least 0: the r.m.s. value where it changes fast. */
  readonly currentA: number;
  /** Place of the wire's middle, in mm from the middle of the bundle. */
  readonly xMm: number;
  readonly yMm: number;
}

export interface BundleTemperatureInput {
  /** The wires, in place. They may touch; they do not overlap, and all lie inside the bundle. */
  readonly wires: readonly WireInBundle[];
  /** Diameter of the circle around them all, in mm, to 1000. */
  readonly bundleDiameterMm: number;
  /** Temperature of the air and of what surrounds the bundle in °C, −60 to 200. */
  readonly ambientTempC: number;
  /** Altitude in m, −500 to 20 000; 0 is sea level. */
  readonly altitudeM: number;
  /** Emissivity of the surface, 0 to 1; 0.9 unless given, common practice for any plastic or rubber cover. */
  readonly emissivity?: number;
  /** Correlation of convection; Churchill and Chu unless given. */
  readonly convection?: Convection;
}

export interface BundleTemperatureResult {
  /** Temperature of each conductor in °C, in the order given; null where `reason` says why there is none. */
  readonly conductorTempsC: readonly number[] | null;
  /** Place in the list of the hottest wire, or null. */
  readonly hottestIndex: number | null;
  /** Its temperature in °C, or null. */
  readonly hottestTempC: number | null;
  /** Temperature of the bundle's surface in °C, or null. */
  readonly surfaceTempC: number | null;
  /** Heat given off by a metre of the bundle in W/m, or null. */
  readonly lossWPerM: number | null;
  /** Conductivity across the bundle used, in W/(m·K); null where one wire is the bundle. */
  readonly bundleConductivityWPerMK: number | null;
  /** Why there is no temperature: see `conductorTemperature`. */
  readonly reason: NoTemperature | null;
}

/**
 * Steady temperature of every wire of a bundle of different wires with different currents.
 *
 * Use it to find the hottest wire of a trunk. The bundle is a round rod of one conductivity in still air, warmed by
 * its wires where they lie; its surface has one temperature. A single wire in the middle gives `conductorTemperature`.
 *
 * $$T_i = T_s + \sum_j G_{ij}\,q_j,\qquad q_j = I_j^2 r_j\frac{T_0 + T_j}{T_0 + T_\mathrm{rated}},\qquad
 * \sum_j q_j = Q(T_s)$$
 *
 * $$G_{ij} = \frac{1}{2\pi k}\ln\frac{|R^2 - z_i\bar z_j|}{R\,|z_i - z_j|},\qquad
 * G_{ii} = R_{i} + \frac{1}{2\pi k}\ln\frac{R^2 - |z_i|^2}{R\,a_i}$$
 *
 * with places $z$ in the plane, wire radii $a$ and bundle radius $R$. $k$ is the least conductivity that insulation,
 * metal and still air can have together, so real bundles, whose wires touch, are cooler inside.
 *
 * @param input wires with places and currents, bundle diameter, ambient, altitude
 * @returns temperature of each wire, the hottest, surface temperature, heat; null with a reason without balance
 * @throws InputError when a field is missing or out of range, wires overlap or one sticks out of the bundle
 * @source heat-balance; hashin-shtrikman-1962 (conductivity, lower bound); churchill-chu-1975, uw-mhtl-8406 (surface)
 * @example bundleTemperature({ wires: [{ xMm: 0, yMm: 0, currentA: 15, resistanceOhmPerM: 0.0076, ratedTempC: 20, conductorDiameterMm: 2.1, outerDiameterMm: 3, insulationConductivityWPerMK: 0.17 }], bundleDiameterMm: 3, ambientTempC: 40, altitudeM: 0 }).hottestTempC //=> 51.7245
 */
export function bundleTemperature(input: BundleTemperatureInput): BundleTemperatureResult {
  needInput('bundleTemperature', input);
  const { wires, bundleDiameterMm, ambientTempC, altitudeM, emissivity = 0.9, convection } = input;
  needBundle(input);
  const n = wires.length;
  const ambientK = ambientTempC + ZERO_C_IN_K;
  const alone = n === 1 && (wires[0] as WireInBundle).outerDiameterMm >= bundleDiameterMm;
  const k = alone ? null : bundleConductivity(wires, bundleDiameterMm, ambientK);
  const found = { bundleConductivityWPerMK: k };

  // Heat of wire j is s_j (T0_j + T_j): so T = u Ts + v, with (1 − G S) u = 1 and (1 − G S) v = G S T0.
  const s = new Float64Array(n);
  const zero = new Float64Array(n);
  wires.forEach((wire, j) => {
    zero[j] = zeroOf(wire.metal);
    s[j] = (wire.currentA * wire.currentA * wire.resistanceOhmPerM) / (zero[j] + wire.ratedTempC);
  });
  const matrix = new Float64Array(n * n);
  const ones = new Float64Array(n).fill(1);
  const side = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const gs = riseKPerWM(wires, i, j, bundleDiameterMm / 2, k) * (s[j] as number);
      matrix[i * n + j] = (i === j ? 1 : 0) - gs;
      side[i] = (side[i] as number) + gs * (zero[j] as number);
    }
  }
  const solved = solveLinear({ matrix, sides: [ones, side] });
  const [u, v] = solved ?? [];
  // Where every balance has an end, each wire warms at least as much as the surface does.
  if (u === undefined || v === undefined || u.some((each) => !(each >= 1 - 1e-9))) return none('runs-away', found);
  let slope = 0;
  let level = 0;
  for (let j = 0; j < n; j++) {
    slope += (s[j] as number) * (u[j] as number);
    level += (s[j] as number) * ((v[j] as number) + (zero[j] as number));
  }
  let surfaceK = ambientK;
  const diameterM = bundleDiameterMm / 1000;
  const pressureRatio = pressureRatioAt(altitudeM);
  const byMorgan = convection === 'morgan';
  if (level > 0) {
    const guess = (level + slope * ambientTempC) / (Math.PI * (9 * diameterM + 0.02));
    surfaceK = solveSurfaceK(
      'bundleTemperature',
      1,
      -slope,
      slope * ZERO_C_IN_K - level,
      ambientK + Math.max(guess, 1e-9),
      hottestSurfaceK(ambientK),
      ambientK,
      diameterM,
      emissivity,
      pressureRatio,
      byMorgan,
    );
    if (surfaceK !== surfaceK) return none('beyond-air-data', found);
  }
  const surfaceTempC = level > 0 ? surfaceK - ZERO_C_IN_K : ambientTempC;
  const conductorTempsC = wires.map((_, i) => (u[i] as number) * surfaceTempC + (v[i] as number));
  let hottest = 0;
  for (let i = 1; i < n; i++) if ((conductorTempsC[i] as number) > (conductorTempsC[hottest] as number)) hottest = i;
  const hottestTempC = conductorTempsC[hottest] as number;
  if (hottestTempC > HOTTEST_C) return none('beyond-air-data', found);
  const lossWPerM = surfaceWPerM(surfaceK, ambientK, diameterM, emissivity, pressureRatio, byMorgan);
  return { conductorTempsC, hottestIndex: hottest, hottestTempC, surfaceTempC, lossWPerM, ...found, reason: null };
}

/** Rise of wire i over the surface for 1 W/m in wire j: the field of a line of heat in a rod with a cold surface. */
function riseKPerWM(wires: readonly WireInBundle[], i: number, j: number, radiusMm: number, k: number | null): number {
  const a = wires[i] as WireInBundle;
  const b = wires[j] as WireInBundle;
  const r2 = radiusMm * radiusMm;
  if (i === j) {
    if (k === null) return insulationKPerWM(a);
    const free = (r2 - a.xMm * a.xMm - a.yMm * a.yMm) / (radiusMm * (a.outerDiameterMm / 2));
    return insulationKPerWM(a) + Math.log(Math.max(1, free)) / (2 * Math.PI * k);
  }
  const dot = a.xMm * b.xMm + a.yMm * b.yMm;
  const cross = a.xMm * b.yMm - a.yMm * b.xMm;
  const away = Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);
  return Math.log(Math.hypot(r2 - dot, cross) / (radiusMm * away)) / (2 * Math.PI * (k as number));
}

/** Throws unless the wires are whole and lie in the bundle without overlap. */
function needBundle(input: BundleTemperatureInput): void {
  const fn = 'bundleTemperature';
  const { wires, bundleDiameterMm, ambientTempC, altitudeM, emissivity, convection } = input;
  needList(fn, 'wires', wires, 1);
  needBetween(fn, 'bundleDiameterMm', bundleDiameterMm, 0, 1000);
  const air = {
    ambientTempC,
    altitudeM,
    ...(emissivity === undefined ? {} : { emissivity }),
    ...(convection === undefined ? {} : { convection }),
  };
  // The air of the bundle is named without the path of a wire.
  needWireInAir(fn, { resistanceOhmPerM: 1, ratedTempC: 20, conductorDiameterMm: 1, outerDiameterMm: 1, ...air });
  wires.forEach((wire, i) => {
    const at = `wires[${i}]`;
    if (typeof wire !== 'object' || wire === null) throw new InputError(fn, at, 'object', wire, 'must be an object');
    needWireInAir(fn, { ...wire, ambientTempC: 20, altitudeM: 0 }, `${at}.`);
    needAtLeast(fn, `${at}.currentA`, wire.currentA);
    needFinite(fn, `${at}.xMm`, wire.xMm);
    needFinite(fn, `${at}.yMm`, wire.yMm);
    const reach = Math.hypot(wire.xMm, wire.yMm) + wire.outerDiameterMm / 2;
    if (reach > (bundleDiameterMm / 2) * (1 + 1e-6)) {
      throw new InputError(fn, `${at}.xMm`, 'range', wire.xMm, 'must leave the wire inside the bundle');
    }
    for (let j = 0; j < i; j++) {
      const other = wires[j] as WireInBundle;
      const away = Math.hypot(wire.xMm - other.xMm, wire.yMm - other.yMm);
      if (away < ((wire.outerDiameterMm + other.outerDiameterMm) / 2) * (1 - 1e-6)) {
        throw new InputError(fn, `${at}.xMm`, 'range', wire.xMm, `must not overlap wires[${j}]`);
      }
    }
  });
}

/** The answer where there is none. */
function none(reason: NoTemperature, found: { bundleConductivityWPerMK: number | null }): BundleTemperatureResult {
  const nothing = {
    conductorTempsC: null,
    hottestIndex: null,
    hottestTempC: null,
    surfaceTempC: null,
    lossWPerM: null,
  };
  return { ...nothing, ...found, reason };
}
