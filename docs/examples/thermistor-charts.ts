import {
  betaFromPoints,
  fitUncertainty,
  rtdTolerance,
  thermistorResistance,
  thermistorTemperature,
  thermocoupleVoltage,
  type FittedPoint,
  type FitSteinhartHartResult,
  type PlatinumClass,
  type PlatinumCurve,
  type ThermistorCurve,
  type ThermistorErrorBudgetResult,
  type ThermocoupleType,
} from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

/** Evenly spaced numbers from one to another. */
export function between(low: number, high: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));
}

/** Resistance of a curve over a range, with the readings that it was made from. */
export function curveAndReadings(
  curve: ThermistorCurve,
  points: readonly Pick<FittedPoint, 'tempC' | 'resistanceOhm'>[],
): ChartSpec {
  const temps = points.map(({ tempC }) => tempC);
  const [low, high] = [Math.min(...temps), Math.max(...temps)];
  const beyond = Math.max(5, (high - low) * 0.15);
  const line = between(low - beyond, high + beyond, 41).flatMap((tempC): [number, number][] => {
    try {
      return [[tempC, thermistorResistance({ curve, tempC, extrapolate: true }).resistanceOhm]];
    } catch {
      return []; // a curve with c below 0 turns; where it does, nothing is drawn
    }
  });
  return {
    title: 'Resistance by temperature',
    x: { label: 'Temperature', unit: '°C' },
    y: { label: 'Resistance', unit: 'Ω', log: true },
    series: [
      { name: 'curve', points: line, colour: 'text', as: 'line', labelAt: 6 },
      {
        name: '',
        points: points.map(({ tempC, resistanceOhm }) => [tempC, resistanceOhm]),
        colour: 'copper',
        as: 'dots',
      },
    ],
  };
}

/** What each reading is off the curve, with the band within which the curve itself is known where it is. */
export function residuals(
  fit: Pick<FitSteinhartHartResult, 'curve' | 'points' | 'covariance'>,
  coverageFactor: number | null,
): ChartSpec {
  const { points, curve, covariance } = fit;
  const dots = points.map(({ tempC, residualK }): [number, number] => [tempC, -residualK]);
  const temps = points.map(({ tempC }) => tempC);
  const [low, high] = [Math.min(...temps), Math.max(...temps)];
  const band =
    covariance === null || coverageFactor === null
      ? []
      : between(low, high, 31).map((tempC): [number, number, number] => {
          const { resistanceOhm } = thermistorResistance({ curve, tempC, extrapolate: true });
          const { bandK } = fitUncertainty({ fit, resistanceOhm, resistanceUncertaintyFraction: 0, coverageFactor });
          return [tempC, -bandK, bandK];
        });
  return {
    title: band.length === 0 ? 'Readings less the curve' : 'Readings less the curve, and the band of the curve',
    x: { label: 'Temperature', unit: '°C' },
    y: { label: 'Reading less curve', unit: 'K' },
    series: [{ name: '', points: dots, colour: 'copper', as: 'dots' }],
    ...(band.length === 0 ? {} : { bands: [{ name: '', points: band, colour: 'verdigris' as const }] }),
  };
}

/** What one Beta makes of a sensor that follows a better curve, over a range. */
export function betaAgainstCurve(curve: ThermistorCurve, coldTempC: number, hotTempC: number): ChartSpec {
  const ohm = (tempC: number): number => thermistorResistance({ curve, tempC, extrapolate: true }).resistanceOhm;
  const { curve: beta } = betaFromPoints({ coldTempC, coldOhm: ohm(coldTempC), hotTempC, hotOhm: ohm(hotTempC) });
  const off = between(coldTempC - 30, hotTempC + 20, 51).map((tempC): [number, number] => [
    tempC,
    thermistorTemperature({ curve: beta, resistanceOhm: ohm(tempC), extrapolate: true }).tempC - tempC,
  ]);
  return {
    title: `One Beta from ${coldTempC} and ${hotTempC} °C against the sensor`,
    x: { label: 'Temperature', unit: '°C' },
    y: { label: 'Reads too hot by', unit: 'K' },
    series: [{ name: 'Beta', points: off, colour: 'copper', as: 'line', labelAt: 8 }],
  };
}

/** The band within which a reading may be off over the range, and what makes it up. */
export function budget({ rows }: ThermistorErrorBudgetResult): ChartSpec {
  const known = rows.filter(({ code }) => code === null);
  const part = (name: 'pullK' | 'sensorK' | 'adcK'): [number, number][] =>
    known.map((row) => [row.tempC, row[name] as number]);
  return {
    title: 'How far the reading may be off',
    x: { label: 'Temperature', unit: '°C' },
    y: { label: 'Off by', unit: 'K' },
    bands: [
      {
        name: '',
        points: known.map((row) => [row.tempC, row.worstLowK as number, row.worstHighK as number]),
        colour: 'copper',
      },
    ],
    series: [
      { name: 'fixed resistor', points: part('pullK'), colour: 'text', as: 'line', labelAt: 1 },
      { name: 'sensor', points: part('sensorK'), colour: 'verdigris', as: 'line', labelAt: 3 },
      { name: 'converter', points: part('adcK'), colour: 'blue', as: 'line', labelAt: 5 },
    ],
  };
}

/** Tolerance of platinum classes over temperature, in K. */
export function classBands(curve: PlatinumCurve, classes: readonly PlatinumClass[]): ChartSpec {
  return {
    title: 'Tolerance of platinum resistors (wire-wound)',
    x: { label: 'Temperature', unit: '°C' },
    y: { label: 'Off by at most', unit: 'K' },
    series: classes.map((toleranceClass, i) => ({
      name: `class ${toleranceClass.key}`,
      points: between(toleranceClass.wireWoundRangeC[0], toleranceClass.wireWoundRangeC[1], 21).map(
        (tempC): [number, number] => [
          tempC,
          rtdTolerance({ curve, nominalOhm: 100, tempC, toleranceClass, element: 'wire-wound' }).toleranceK,
        ],
      ),
      colour: (['verdigris', 'blue', 'copper', 'text'] as const)[i] ?? 'text',
      as: 'line' as const,
    })),
  };
}

/** Microvolts a kelvin of thermocouple types over temperature. */
export function sensitivities(types: readonly ThermocoupleType[]): ChartSpec {
  return {
    title: 'Sensitivity of thermocouples',
    x: { label: 'Measuring junction', unit: '°C' },
    y: { label: 'Sensitivity', unit: 'µV/K' },
    series: types.map((thermocouple, i) => ({
      name: thermocouple.letter,
      points: between(-200, thermocouple.pieces[thermocouple.pieces.length - 1]?.toTempC ?? 400, 33).map(
        (hotTempC): [number, number] => [
          hotTempC,
          1000 * thermocoupleVoltage({ thermocouple, hotTempC, coldTempC: 0 }).slopeMvPerK,
        ],
      ),
      colour: (['copper', 'verdigris', 'blue', 'text'] as const)[i] ?? 'text',
      as: 'line' as const,
    })),
  };
}
