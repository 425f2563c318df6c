import { InputError } from '../error/index.js';
import { needFinite, needTempC } from '../error/guard.js';
import { cToFahrenheit, fahrenheitToC, ZERO_C_IN_K } from '../unit/index.js';

/** One reading: a resistance, and its temperature in one unit at least. Give two units to have them compared. */
export interface ThermistorPoint {
  /** Temperature in °C. */
  readonly tempC?: number;
  /** The same in °F, as the source prints it. */
  readonly tempF?: number;
  /** The same in K, as the source prints it. */
  readonly tempK?: number;
  /** Resistance there, in Ω, above 0. */
  readonly resistanceOhm: number;
  /** Standard uncertainty of the temperature, in K, above 0. */
  readonly uncertaintyK?: number;
}

/** What makes a curve or its points doubtful. */
export interface CurveWarning {
  /** A stable word for the kind of doubt. */
  readonly code:
    | 'c-negative'
    | 'points-too-close'
    | 'kelvin-offset'
    | 'celsius-fahrenheit-disagree'
    | 'celsius-kelvin-disagree'
    | 'not-falling'
    | 'suspicious-point';
  /** The doubt in a sentence. */
  readonly message: string;
  /** Which point of the input it is about, where it is about one. */
  readonly pointIndex?: number;
}

/** The temperature of a point in °C, and the doubt where its units disagree. °C counts before °F before K. */
export function kelvinWarning(
  fn: string,
  field: string,
  point: ThermistorPoint,
): { tempC: number; warning: CurveWarning | null } {
  const { tempC, tempF, tempK } = point;
  if (tempC === undefined && tempF === undefined && tempK === undefined) {
    throw new InputError(fn, `${field}.tempC`, 'missing', undefined, 'is required (or tempF, or tempK)');
  }
  if (tempF !== undefined) needFinite(fn, `${field}.tempF`, tempF);
  if (tempK !== undefined) needFinite(fn, `${field}.tempK`, tempK);
  const celsius = tempC ?? (tempF === undefined ? (tempK as number) - ZERO_C_IN_K : fahrenheitToC(tempF));
  needTempC(fn, `${field}.tempC`, celsius);
  const pointIndex = Number(/\d+/.exec(field)?.[0] ?? 0);
  // A print in whole °F is within 0.5 °F of its °C, and the °C may be rounded by half a degree (0.9 °F) too.
  if (tempC !== undefined && tempF !== undefined && Math.abs(cToFahrenheit(tempC) - tempF) > 1.4) {
    const message = `${tempC} °C is ${cToFahrenheit(tempC).toFixed(1)} °F, not ${tempF} °F`;
    return { tempC: celsius, warning: { code: 'celsius-fahrenheit-disagree', message, pointIndex } };
  }
  if (tempK !== undefined && (tempC !== undefined || tempF !== undefined)) {
    const offset = tempK - celsius;
    if (Math.abs(offset - 273.2) < 0.011) {
      const message = 'these kelvins were made with 273.2: with 273.15 every temperature moves by 0.05 K';
      return { tempC: celsius, warning: { code: 'kelvin-offset', message, pointIndex } };
    }
    if (Math.abs(offset - ZERO_C_IN_K) > 0.5) {
      const message = `${celsius} °C is ${(celsius + ZERO_C_IN_K).toFixed(2)} K, not ${tempK} K`;
      return { tempC: celsius, warning: { code: 'celsius-kelvin-disagree', message, pointIndex } };
    }
  }
  return { tempC: celsius, warning: null };
}

/** Doubts about the points as a set; `points` from cold to hot, `given` as they came. */
export function togetherWarnings(
  points: readonly { readonly tempC: number; readonly resistanceOhm: number }[],
  given: readonly ThermistorPoint[],
): CurveWarning[] {
  const warnings: CurveWarning[] = [];
  const kelvins = given.flatMap(({ tempC, tempF, tempK }) =>
    tempC === undefined && tempF === undefined && tempK !== undefined ? [tempK] : [],
  );
  if (kelvins.length >= 3 && kelvins.every((k) => Math.abs(k - 273.2 - Math.round(k - 273.2)) < 1e-6)) {
    const message = 'whole degrees plus 273.2: with 273.15 every temperature moves by 0.05 K';
    warnings.push({ code: 'kelvin-offset', message });
  }
  let closest = Infinity;
  for (let i = 1; i < points.length; i++) {
    const [cold, hot] = [points[i - 1], points[i]] as [(typeof points)[number], (typeof points)[number]];
    closest = Math.min(closest, hot.tempC - cold.tempC);
    if (hot.tempC > cold.tempC && hot.resistanceOhm >= cold.resistanceOhm) {
      const message = `the resistance does not fall from ${cold.tempC} °C to ${hot.tempC} °C`;
      warnings.push({ code: 'not-falling', message });
    }
  }
  const span = (points[points.length - 1] as { tempC: number }).tempC - (points[0] as { tempC: number }).tempC;
  // Common practice: a reading error grows about as the square of what is outside over what is inside the points.
  if (span < 30 || (points.length === 3 && closest < 10)) {
    const message =
      span < 30
        ? `the points span ${span.toFixed(1)} K: take at least 30 K, better all of the range that matters`
        : `two points are ${closest.toFixed(1)} K apart: take at least 10 K, or more points`;
    warnings.push({ code: 'points-too-close', message });
  }
  return warnings;
}
