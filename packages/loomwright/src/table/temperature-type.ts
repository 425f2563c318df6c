import type { TableHeader } from './type.js';

/** What any thermistor curve may say about itself; a curve of the caller's own need say nothing. */
export interface CurveHeader extends Partial<TableHeader> {
  /** Lowest temperature in °C that the curve is meant for. Below it a call throws unless it says `extrapolate`. */
  readonly lowTempC?: number;
  /** Highest temperature in °C that the curve is meant for. */
  readonly highTempC?: number;
}

/** 1/T = a + b ln R + c (ln R)³, T in kelvins, R in Ω. */
export interface SteinhartHartCurve extends CurveHeader {
  readonly kind: 'steinhart-hart';
  readonly a: number;
  readonly b: number;
  readonly c: number;
  /** Kelvins at 0 °C that the coefficients were made with; 273.15 unless given. Some manuals used 273.2. */
  readonly zeroCInK?: number;
}

/** R = R₀ exp(β (1/T − 1/T₀)). */
export interface BetaCurve extends CurveHeader {
  readonly kind: 'beta';
  readonly refOhm: number;
  readonly refTempC: number;
  readonly betaK: number;
}

/** 1/T = a + b ln R + c (ln R)³ + d (ln R)⁵, T in kelvins, R in Ω. */
export interface OddFourTermCurve extends CurveHeader {
  readonly kind: 'odd-four-term';
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  /** Kelvins at 0 °C that the coefficients were made with; 273.15 unless given. */
  readonly zeroCInK?: number;
}

/** 1/T = a + b ln r + c (ln r)² + d (ln r)³ with r = R/R_ref, T in kelvins. */
export interface CubicCurve extends CurveHeader {
  readonly kind: 'cubic';
  readonly refOhm: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

/** ln r = a + b/T + c/T² + d/T³ with r = R/R_ref, T in kelvins. */
export interface InverseCubicCurve extends CurveHeader {
  readonly kind: 'inverse-cubic';
  readonly refOhm: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

/** Printed pairs of temperature and resistance, from cold to hot, joined by a monotone cubic in ln R and 1/T. */
export interface PointCurve extends CurveHeader {
  readonly kind: 'points';
  readonly rows: readonly (readonly [tempC: number, resistanceOhm: number])[];
}

/** How the resistance of a thermistor goes with temperature: always falling. */
export type ThermistorCurve =
  SteinhartHartCurve | BetaCurve | OddFourTermCurve | CubicCurve | InverseCubicCurve | PointCurve;

/** The curve of a platinum resistor: R/R₀ = 1 + a t + b t² + c (t − 100) t³, the last term below 0 °C only. */
export interface PlatinumCurve extends TableHeader {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly lowTempC: number;
  readonly highTempC: number;
}

/** A tolerance class: ±(fixed + share × |t|), and where it holds. */
export interface PlatinumClass extends TableHeader {
  readonly fixedK: number;
  readonly shareFraction: number;
  /** Range in °C of wire-wound resistors in the class. */
  readonly wireWoundRangeC: readonly [low: number, high: number];
  /** Range in °C of film resistors in the class. */
  readonly filmRangeC: readonly [low: number, high: number];
}

/** A thermocouple type: its reference function in pieces, and the printed approximate inverse. mV and °C. */
export interface ThermocoupleType extends TableHeader {
  /** The letter. */
  readonly letter: string;
  /** E = Σ cᵢ tⁱ, and where `bell` is given + a₀ exp(a₁ (t − a₂)²). Pieces from cold to hot. */
  readonly pieces: readonly {
    readonly fromTempC: number;
    readonly toTempC: number;
    readonly coefficients: readonly number[];
    readonly bell?: readonly [a0: number, a1: number, a2: number];
  }[];
  /** t = Σ dᵢ Eⁱ with the printed bounds of its error in K. Pieces from low to high voltage. */
  readonly inverse: readonly {
    readonly fromMv: number;
    readonly toMv: number;
    readonly coefficients: readonly number[];
    readonly errorLowK: number;
    readonly errorHighK: number;
  }[];
  /** Tolerance classes of new wire: the larger of a fixed error and a share of |t|. */
  readonly classes: readonly ThermocoupleClass[];
}

/** A tolerance class of a thermocouple: ± the larger of `fixedK` and `shareFraction` × |t|, over a range. */
export interface ThermocoupleClass extends TableHeader {
  readonly key: '1' | '2';
  readonly fixedK: number;
  readonly shareFraction: number;
  readonly rangeC: readonly [low: number, high: number];
}
