import {
  ac4313Ampacity,
  ampacity,
  awgStranded,
  awgToAreaMm2,
  circularMilsToMm2,
  conductorTemperature,
  feetToM,
  insulatedWire,
  iso19642ThinWall,
  shortCircuitWithstand,
  timeToTemperature,
  us33Cfr183Ampacity,
  type ConductorTemperatureInput,
  type TimeToTemperatureInput,
} from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

/** Points from one current to another, evenly on a logarithmic scale. */
function spread(from: number, to: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => from * (to / from) ** (i / (count - 1)));
}

/** The temperature of one wire over its current, in still air and in air 30 K warmer. */
export function temperatureByCurrent(input: ConductorTemperatureInput, label: string): ChartSpec {
  const at = (currentA: number, warmerK = 0): number | null =>
    conductorTemperature({ ...input, currentA, ambientTempC: input.ambientTempC + warmerK }).conductorTempC;
  const most = Math.max(input.currentA * 1.6, 1);
  const line = (warmerK: number): [number, number][] =>
    Array.from({ length: 25 }, (_, i) => (most * i) / 24).flatMap((currentA) => {
      const tempC = input.ambientTempC + warmerK <= 200 ? at(currentA, warmerK) : null;
      return tempC === null || tempC > 300 ? [] : [[currentA, tempC] as [number, number]];
    });
  const here = at(input.currentA);
  return {
    title: 'Temperature of the copper by current',
    x: { label: 'Current', unit: 'A' },
    y: { label: 'Copper', unit: '°C' },
    series: [
      { name: 'in this air', points: line(0), colour: 'text', as: 'line' },
      { name: '30 K warmer', points: line(30), colour: 'blue', as: 'line', labelAt: 6 },
    ],
    ...(here === null ? {} : { chosen: { x: input.currentA, y: here, label } }),
  };
}

const GAUGES = ['18', '16', '14', '12', '10', '8', '6', '4', '2', '1/0', '2/0', '4/0'];
/** Walls in mm of boat cable, round figures of ours. */
const WALLS = [0.8, 0.8, 0.8, 0.9, 1, 1.2, 1.5, 1.6, 1.6, 1.8, 1.8, 2];

/** What two tables print beside what the balance gives for the same copper, 105 °C insulation. */
export function tablesAndBalance(): ChartSpec {
  const column = (table: typeof us33Cfr183Ampacity): [number, number][] =>
    GAUGES.flatMap((gauge) => {
      const row = table.rows.find(([size]) => size === gauge);
      const amperes = row?.[table.classesC.indexOf(105) + 1];
      return typeof amperes === 'number' ? [[awgToAreaMm2(gauge), amperes] as [number, number]] : [];
    });
  const balance = GAUGES.map((gauge, i): [number, number] => {
    const ohmPerKft = awgStranded.rows.find(([size]) => size === gauge)?.[1] as number;
    const circularMils = ac4313Ampacity.circularMils?.find(([size]) => size === gauge)?.[1] as number;
    const conductorDiameterMm = Math.sqrt((4 * circularMilsToMm2(circularMils)) / 0.75 / Math.PI);
    const { currentA } = ampacity({
      maxConductorTempC: 105,
      resistanceOhmPerM: ohmPerKft / feetToM(1000),
      ratedTempC: 20,
      conductorDiameterMm,
      outerDiameterMm: conductorDiameterMm + 2 * (WALLS[i] as number),
      insulationConductivityWPerMK: 0.17,
      ambientTempC: 30,
      altitudeM: 0,
    });
    return [awgToAreaMm2(gauge), currentA];
  });
  return {
    title: 'Three answers to one question: amperes of copper under 105 °C insulation',
    x: { label: 'AWG area', unit: 'mm²', log: true },
    y: { label: 'Current', unit: 'A', log: true },
    series: [
      { name: 'heat balance, alone at 30 °C', points: balance, colour: 'text', as: 'line' },
      {
        name: '33 CFR 183, alone at 30 °C',
        points: column(us33Cfr183Ampacity),
        colour: 'verdigris',
        as: 'dots',
        labelAt: 0,
      },
      {
        name: 'AC 43.13-1B, bundle at 70 °C and 60 000 ft',
        points: column(ac4313Ampacity),
        colour: 'blue',
        as: 'dots',
        labelAt: 3,
      },
    ],
  };
}

/** Sizes of thin-wall cable with what the calculators ask for. */
export function thinWallSizes(sizes: readonly string[]): readonly {
  size: string;
  resistanceOhmPerM: number;
  conductorDiameterMm: number;
  outerDiameterMm: number;
}[] {
  return sizes.map((size) => {
    const wire = insulatedWire({ wireTable: iso19642ThinWall, size });
    return {
      size,
      resistanceOhmPerM: wire.resistanceOhmPerM as number,
      conductorDiameterMm: wire.conductorDiameterMm as number,
      outerDiameterMm: wire.outerDiameterMm,
    };
  });
}

/** Time to a limit over current, with and without heat leaving the copper. */
export function timeByCurrent(input: TimeToTemperatureInput, label: string): ChartSpec {
  const currentA = input.currentA as number;
  const whole: [number, number][] = [];
  const kept: [number, number][] = [];
  for (const each of spread(Math.max(currentA / 4, 0.1), currentA * 20, 40)) {
    const { timeS, adiabaticTimeS } = timeToTemperature({ ...input, currentA: each });
    if (timeS !== null && timeS > 0) whole.push([each, timeS]);
    if (adiabaticTimeS !== null && adiabaticTimeS > 0) kept.push([each, adiabaticTimeS]);
  }
  const here = timeToTemperature(input).timeS;
  return {
    title: `Time to ${Math.round(input.limitTempC)} °C by current`,
    x: { label: 'Current', unit: 'A', log: true },
    y: { label: 'Time', unit: 's', log: true },
    series: [
      { name: 'all heat kept in the copper', points: kept, colour: 'verdigris', as: 'line' },
      {
        name: 'with insulation and air',
        points: whole,
        colour: 'text',
        as: 'line',
        dash: '',
        labelAt: Math.min(12, whole.length - 1),
      },
    ],
    ...(here === null || here === 0 ? {} : { chosen: { x: currentA, y: here, label } }),
  };
}

/** Let-through that copper bears by area, for two insulations, and the fault at hand. */
export function letThroughByArea(fault: { readonly areaMm2: number; readonly i2tA2s: number } | null): ChartSpec {
  const areas = spread(0.35, 50, 12);
  const line = (startTempC: number, limitTempC: number): [number, number][] =>
    areas.map((areaMm2) => [
      areaMm2,
      shortCircuitWithstand({ startTempC, limitTempC, areaMm2 }).withstandI2tA2s as number,
    ]);
  return {
    title: 'Let-through that copper bears, by area',
    x: { label: 'Area', unit: 'mm²', log: true },
    y: { label: 'Let-through', unit: 'A²s', log: true },
    series: [
      { name: 'PVC, 70 to 160 °C', points: line(70, 160), colour: 'text', as: 'line', labelAt: 6 },
      { name: 'cross-linked, 90 to 250 °C', points: line(90, 250), colour: 'verdigris', as: 'line' },
    ],
    ...(fault === null ? {} : { chosen: { x: fault.areaMm2, y: fault.i2tA2s, label: 'this fault' } }),
  };
}
