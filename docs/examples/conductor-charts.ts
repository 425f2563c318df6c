import {
  awgStranded,
  type ConductorTable,
  geometric,
  iec60228Class5,
  iso19642,
  nearestSizes,
  type ResistanceBasis,
  resistivity,
  saeJ1128,
  wireResistance,
} from 'loomwright';
import { formatNumber } from '@loomwright/worked/quantity';
import type { ChartSeries, ChartSpec } from '@loomwright/worked/plot';

/** Area in mm² and resistance in Ω/m at 20 °C of every size of a table, from 0.3 to 120 mm². */
function sizesOf(table: ConductorTable): { areaMm2: number; resistanceOhmPerM: number }[] {
  return table.rows
    .map(([size]) => {
      const named =
        table.sizes === 'mm2' ? { areaMm2: Number(size) } : table.sizes === 'awg' ? { awg: size } : { saeGauge: size };
      return wireResistance({ ...named, resistanceBasis: table, lengthM: 1, conductorTempC: 20 });
    })
    .filter(({ areaMm2 }) => areaMm2 >= 0.3 && areaMm2 <= 121);
}

const TABLES: readonly { table: ConductorTable; name: string; colour: ChartSeries['colour']; labelAt: number }[] = [
  { table: iec60228Class5, name: 'IEC 60228 class 5', colour: 'verdigris', labelAt: 3 },
  { table: iso19642, name: 'ISO 19642', colour: 'copper', labelAt: 13 },
  { table: awgStranded, name: 'AC 43.13-1B, AWG', colour: 'blue', labelAt: 6 },
];

function ideal(areaMm2: number): number {
  return wireResistance({ areaMm2, resistanceBasis: geometric, lengthM: 1, conductorTempC: 20 }).resistanceOhmPerM;
}

/** Resistance by area: each table's sizes as dots on the line of ideal copper. */
export function resistanceByArea(): ChartSpec {
  const line = [0.3, 2, 120].map((areaMm2): [number, number] => [areaMm2, ideal(areaMm2) * 1000]);
  return {
    title: 'Resistance of a metre by area, copper at 20 °C',
    x: { label: 'Area', unit: 'mm²', log: true },
    y: { label: 'Resistance a metre', unit: 'mΩ/m', log: true },
    series: [
      { name: 'ideal copper', points: line, colour: 'soft', as: 'line', labelAt: 1, labelSide: 'left' },
      ...TABLES.map(({ table, name, colour, labelAt }): ChartSeries => ({
        name,
        points: sizesOf(table).map(({ areaMm2, resistanceOhmPerM }) => [areaMm2, resistanceOhmPerM * 1000]),
        colour,
        as: 'dots',
        labelAt,
        labelSide: 'above',
      })),
    ],
  };
}

/** The same over ideal copper of that area, where the tables part. */
export function overIdealCopper(): ChartSpec {
  return {
    title: 'How much more resistance than ideal copper of that area a table allows',
    x: { label: 'Area', unit: 'mm²', log: true },
    y: { label: 'More than ideal copper', unit: '%', domain: [0, 18] },
    series: TABLES.slice(0, 2).map(({ table, name, colour }, i): ChartSeries => ({
      name,
      points: sizesOf(table).map(({ areaMm2, resistanceOhmPerM }) => [
        areaMm2,
        (resistanceOhmPerM / ideal(areaMm2) - 1) * 100,
      ]),
      colour,
      as: 'dots',
      labelAt: i === 0 ? 5 : 13,
      labelSide: i === 0 ? 'above' : 'below',
    })),
  };
}

/** Resistivity over temperature by each form, against 20 °C. */
export function factorByTemperature(conductorTempC: number): ChartSpec {
  const temperatures = Array.from({ length: 25 }, (_, i) => -40 + 10 * i);
  const line = (form: 'inferred-zero' | 'simplified-0.004', metal: 'copper' | 'aluminium'): [number, number][] =>
    temperatures.map((t) => [t, resistivity({ conductorTempC: t, metal, form }).temperatureFactor]);
  const factor = resistivity({ conductorTempC }).temperatureFactor;
  return {
    title: 'Resistance against that at 20 °C',
    x: { label: 'Temperature of the metal', unit: '°C' },
    y: { label: 'Times that at 20 °C', unit: '' },
    series: [
      { name: 'copper', points: line('inferred-zero', 'copper'), colour: 'text', as: 'line', labelAt: 16 },
      { name: '0.004 a kelvin', points: line('simplified-0.004', 'copper'), colour: 'verdigris', as: 'line' },
    ],
    ...(conductorTempC >= -40 && conductorTempC <= 200
      ? {
          chosen: {
            x: conductorTempC,
            y: factor,
            label: `${formatNumber(factor, { digits: 4, round: 'up' })} at ${Math.round(conductorTempC)} °C`,
          },
        }
      : {}),
  };
}

/** One reading of a number. */
export interface Meaning {
  readonly meaning: string;
  readonly size: string;
  readonly areaMm2: number;
  /** At 20 °C. */
  readonly resistanceOhmPerM: number;
  /** Volts lost out and back. */
  readonly dropV: number;
}

/** What one number means as a gauge and as an area: four wires, or fewer where a list lacks the size. */
export function meaningsOf(number: string, currentA: number, loopM: number): Meaning[] {
  const all: readonly [string, ResistanceBasis, object][] = [
    ['AWG, solid', geometric, { awg: number }],
    ['AWG, stranded (AC 43.13-1B)', awgStranded, { awg: number }],
    ['SAE (J1128, from memory)', saeJ1128, { saeGauge: number }],
    ['mm² (ISO 19642, from memory)', iso19642, { areaMm2: Number(number) }],
  ];
  return all.flatMap(([meaning, resistanceBasis, named]) => {
    if (resistanceBasis.kind === 'table' && !resistanceBasis.rows.some(([size]) => size === number)) return [];
    const { size, areaMm2, resistanceOhmPerM } = wireResistance({
      ...named,
      resistanceBasis,
      lengthM: 1,
      conductorTempC: 20,
    });
    return [{ meaning, size, areaMm2, resistanceOhmPerM, dropV: currentA * loopM * resistanceOhmPerM }];
  });
}

/** The size of a metric list that has at least the copper of a gauge. */
export function metricFor(areaMm2: number): string {
  return nearestSizes({ areaMm2, table: iso19642 }).atLeast?.label ?? 'none';
}
