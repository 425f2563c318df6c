import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput } from '../error/guard.js';
import { findRoot } from '../number/find-root.js';

export interface LampInrushInput {
  /** Voltage at the start of the path in V, above 0. */
  readonly supplyV: number;
  /** Resistance of the whole path in Ω, out and back with battery, fuse and contacts; at least 0. */
  readonly loopResistanceOhm: number;
  /** Power in W at the rated voltage, above 0: of all lamps that are switched together. */
  readonly ratedPowerW: number;
  /** Voltage in V of that power, above 0. */
  readonly ratedV: number;
  /** Resistance of the filament hot over cold (20 °C), 2 to 25. Sources differ: 10, 12, 10 to 15, 12 to 18. */
  readonly hotOverColdRatio: number;
  /** Temperature of the filament before, in °C, −60 to 200. */
  readonly ambientTempC: number;
  /**
   * Time in s in which the current of the lamp by itself, from 20 °C at rated volts, falls to within 10 % of its
   * steady value; above 0. About 0.1 s for a headlamp, a few hundredths for a small lamp.
   */
  readonly warmUpS: number;
}

export interface LampInrushResult {
  /** First current in A, its ratio to the steady one, and the steady one. */
  readonly peakA: number;
  readonly inrushRatio: number;
  readonly steadyA: number;
  /** Resistance of the cold filament in Ω. */
  readonly coldResistanceOhm: number;
  /** Time in s until the current has fallen to twice the steady one, and to within 10 % of it. */
  readonly doubleS: number;
  readonly settledS: number;
  /** R.m.s. and mean current in A over `settledS`, and its I²t in A²s: for the fuse. */
  readonly rmsA: number;
  readonly meanA: number;
  readonly i2tA2s: number;
  /** Volts left at the lamp at the first moment. */
  readonly firstLampV: number;
  /** Temperature of the filament at the end, in °C. */
  readonly filamentTempC: number;
  /** The current over time: moments in s and amperes. */
  readonly timesS: readonly number[];
  readonly currentsA: readonly number[];
}

/** Resistance of tungsten goes with this power of its absolute temperature (from memory). */
const POWER = 1.2;
const PIECES = 120;

/**
 * The surge of a filament lamp as it is switched on: a cold filament has a tenth of its resistance.
 *
 * Use it for a fuse, a relay contact or a channel that must start a lamp. Resistance of the path limits the surge:
 * six times the steady current instead of twelve is usual at the end of a thin wire.
 *
 * $$C \frac{dT}{dt} = I^2 R(T) - P_r \frac{T^4 - T_a^4}{T_h^4 - T_a^4} \qquad
 * I = \frac{V}{R_\mathrm{loop} + R(T)} \qquad R(T) = R_h \Bigl(\frac{T}{T_h}\Bigr)^{1.2}$$
 *
 * Time follows from temperature by one integral, so that no steps in time are taken. $C$ is held constant, and set so
 * that the lamp by itself warms up in the time given.
 *
 * @param input supply, path, lamp, ratio of its resistances, warm-up time
 * @returns peak, ratio, time, r.m.s., mean and I²t of the surge, the curve
 * @throws InputError when a field is missing or out of range; ConvergenceError when the end temperature is not found
 * @source tungsten-filament (powers 1.2 and 4, from memory); lamp-rerating; circuit-theory
 * @example lampInrush({ supplyV: 13.5, loopResistanceOhm: 0.1, ratedPowerW: 55, ratedV: 12, hotOverColdRatio: 12, ambientTempC: 20, warmUpS: 0.1 }).peakA //=> 42.4286
 */
export function lampInrush(input: LampInrushInput): LampInrushResult {
  const fn = 'lampInrush';
  needInput(fn, input);
  const { supplyV, loopResistanceOhm, ratedPowerW, ratedV, hotOverColdRatio, ambientTempC, warmUpS } = input;
  needMoreThan(fn, 'supplyV', supplyV);
  needNoLessThan(fn, 'loopResistanceOhm', loopResistanceOhm);
  needMoreThan(fn, 'ratedPowerW', ratedPowerW);
  needMoreThan(fn, 'ratedV', ratedV);
  needBetween(fn, 'hotOverColdRatio', hotOverColdRatio, 2, 25);
  needBetween(fn, 'ambientTempC', ambientTempC, -60, 200);
  needMoreThan(fn, 'warmUpS', warmUpS);

  const hotOhm = (ratedV * ratedV) / ratedPowerW;
  const roomK = 293.15;
  const hotK = roomK * hotOverColdRatio ** (1 / POWER);
  const startK = 273.15 + ambientTempC;
  const ohmAt = (tempK: number): number => hotOhm * (tempK / hotK) ** POWER;
  const kelvinAt = (ohm: number): number => hotK * (ohm / hotOhm) ** (1 / POWER);
  const lostW = (tempK: number, aroundK: number): number =>
    (ratedPowerW * (tempK ** 4 - aroundK ** 4)) / (hotK ** 4 - roomK ** 4);

  // Time to warm up by itself for a heat capacity of 1 gives the capacity that takes the time given.
  const alone = (tempK: number): number => 1 / ((ratedV * ratedV) / ohmAt(tempK) - lostW(tempK, roomK));
  const unit = simpson(alone, roomK, kelvinAt(hotOhm / 1.1), 400);
  const heatJPerK = warmUpS / unit;

  const ampere = (tempK: number): number => supplyV / (loopResistanceOhm + ohmAt(tempK));
  const gain = (tempK: number): number => ampere(tempK) ** 2 * ohmAt(tempK) - lostW(tempK, startK);
  // Gain over loss falls all the way, so there is one end; above it the loss rules.
  const scale = (tempK: number): number => gain(tempK) / ratedPowerW;
  const above = startK + hotK * Math.max(1, supplyV / ratedV);
  const endK = findRoot({ fn, f: scale, low: startK, high: above, tolerance: 1e-9 * above });
  const steadyA = ampere(endK);
  const peakA = ampere(startK);

  const kelvinOf = (currentA: number): number => kelvinAt(Math.max(0, supplyV / currentA - loopResistanceOhm));
  const settledK = Math.max(startK, kelvinOf(1.1 * steadyA));
  const doubleK = Math.min(settledK, Math.max(startK, kelvinOf(2 * steadyA)));
  const timesS: number[] = [0];
  const currentsA: number[] = [peakA];
  let timeS = 0;
  let charge = 0;
  let i2tA2s = 0;
  let doubleS = 0;
  let fromK = startK;
  const stretch = (toK: number): void => {
    const part = (f: (tempK: number) => number): number => simpson((k) => (heatJPerK * f(k)) / gain(k), fromK, toK, 4);
    timeS += part(() => 1);
    charge += part(ampere);
    i2tA2s += part((k) => ampere(k) ** 2);
    fromK = toK;
    timesS.push(timeS);
    currentsA.push(ampere(toK));
  };
  for (const [low, high] of [
    [startK, doubleK],
    [doubleK, settledK],
  ] as const) {
    if (high > low) for (let k = 1; k <= PIECES; k++) stretch(low + ((high - low) * k) / PIECES);
    if (high === doubleK) doubleS = timeS;
  }
  const flat = timeS === 0;
  return {
    peakA,
    inrushRatio: peakA / steadyA,
    steadyA,
    coldResistanceOhm: ohmAt(startK),
    doubleS,
    settledS: timeS,
    rmsA: flat ? peakA : Math.sqrt(i2tA2s / timeS),
    meanA: flat ? peakA : charge / timeS,
    i2tA2s,
    firstLampV: peakA * ohmAt(startK),
    filamentTempC: endK - 273.15,
    timesS,
    currentsA,
  };
}

/** Simpson's rule in so many pairs of steps. */
function simpson(f: (x: number) => number, low: number, high: number, pairs: number): number {
  const h = (high - low) / (2 * pairs);
  if (h === 0) return 0;
  let sum = f(low) + f(high);
  for (let k = 1; k < 2 * pairs; k++) sum += (k % 2 === 1 ? 4 : 2) * f(low + k * h);
  return (sum * h) / 3;
}
