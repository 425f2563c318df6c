import type {
  AdaptSenderDesign,
  CalibrationCell,
  LadderSenderResult,
  LevelCalibration,
  SaddleTankInput,
  SaddleTankResult,
  SloshFilter,
  SloshFilterInput,
  TankVolumeResult,
} from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

/** What each contact of a ladder sender means over the true level, and what a gauge for a smooth sender shows. */
export function ladderByLevel({ steps }: LadderSenderResult): ChartSpec {
  const stairs = (of: (step: LadderSenderResult['steps'][number]) => number): [number, number][] =>
    steps.flatMap((step): [number, number][] => [
      [step.fromFraction * 100, of(step)],
      [step.toFraction * 100, of(step)],
    ]);
  return {
    title: 'Level read over the true level',
    x: { label: 'True level', unit: '%', domain: [0, 100] },
    y: { label: 'Level read', unit: '%', domain: [0, 100] },
    series: [
      {
        name: 'read as steps',
        points: stairs((step) => step.bestFraction * 100),
        colour: 'copper',
        as: 'line',
        labelAt: Math.min(5, 2 * steps.length - 1),
      },
      {
        name: 'read as a smooth sender',
        points: stairs((step) => step.straightFraction * 100),
        colour: 'soft',
        as: 'line',
      },
      {
        name: '',
        points: [
          [0, 0],
          [100, 100],
        ],
        colour: 'text',
        as: 'line',
      },
    ],
  };
}

/** What the dial shows over the true level: as it is, with the resistors, and as it should. */
export function dialByLevel(design: AdaptSenderDesign): ChartSpec {
  const points = (curve: AdaptSenderDesign['curve']): [number, number][] =>
    curve.map(({ levelFraction, shownFraction }) => [levelFraction * 100, shownFraction * 100]);
  return {
    title: 'What the dial shows over the true level',
    x: { label: 'True level', unit: '%', domain: [0, 100] },
    y: { label: 'Shown', unit: '%', domain: [0, 100] },
    series: [
      { name: 'with the resistors', points: points(design.curve), colour: 'copper', as: 'line', labelAt: 4 },
      { name: 'with nothing', points: points(design.plain.curve), colour: 'soft', as: 'line', labelAt: 4 },
      {
        name: '',
        points: [
          [0, 0],
          [100, 100],
        ],
        colour: 'text',
        as: 'line',
      },
    ],
  };
}

type Strapping = SaddleTankInput['left']['strapping'];

/** The level at which a side holds so many litres. */
function levelFor(strapping: Strapping, volumeL: number): number {
  const i = Math.max(
    1,
    strapping.findIndex((row) => row.volumeL >= volumeL),
  );
  const [a, b] = [strapping[i - 1] as Strapping[number], strapping[i] as Strapping[number]];
  return a.levelFraction + ((b.levelFraction - a.levelFraction) * (volumeL - a.volumeL)) / (b.volumeL - a.volumeL);
}

const litresAt = (strapping: Strapping, level: number): number => {
  const i = Math.max(
    1,
    strapping.findIndex((row) => row.levelFraction >= level),
  );
  const [a, b] = [strapping[i - 1] as Strapping[number], strapping[i] as Strapping[number]];
  return a.volumeL + ((b.volumeL - a.volumeL) * (level - a.levelFraction)) / (b.levelFraction - a.levelFraction);
};

/**
 * Left × right: lines of equal litres, lines of equal reading, and the two ways to empty. Where a line of equal reading
 * crosses lines of litres, one reading stands for many amounts.
 */
export function saddleMap(input: SaddleTankInput, result: SaddleTankResult): ChartSpec {
  const { left, right, wiring, fixedOhm, inputOhm } = input;
  // An input that loads counts as a bias of fewer volts and ohms.
  const share = inputOhm === null ? 1 : inputOhm / (inputOhm + input.biasOhm);
  const [biasV, biasOhm] = [input.biasV * share, input.biasOhm * share];
  const grid = Array.from({ length: 41 }, (_, i) => i / 40);
  const within = (points: readonly (readonly [number, number])[]): [number, number][] =>
    points.filter(([, y]) => y >= -1e-9 && y <= 1 + 1e-9).map(([x, y]) => [x * 100, y * 100]);
  const litres = [1, 2, 3].map((k) => (result.totalL * k) / 4);
  const mostRightL = (right.strapping.at(-1) as Strapping[number]).volumeL;
  const equalLitres = litres.map((volumeL) =>
    within(
      grid.flatMap((l): [number, number][] => {
        const rest = volumeL - litresAt(left.strapping, l);
        return rest < 0 || rest > mostRightL ? [] : [[l, levelFor(right.strapping, rest)]];
      }),
    ),
  );
  const readings =
    wiring === 'two-inputs' ? [] : [12, 24].map((i) => result.path[i]?.pinV[0]).filter((v) => v !== undefined);
  const equalReadings = readings.map((v) => {
    const ohm = (v * biasOhm) / (biasV - v) - fixedOhm;
    return within(
      grid.flatMap((l): [number, number][] => {
        const own = left.emptyOhm + (left.fullOhm - left.emptyOhm) * l;
        if (wiring === 'parallel' && own <= ohm) return [];
        const other = wiring === 'series' ? ohm - own : (ohm * own) / (own - ohm);
        return [[l, (other - right.emptyOhm) / (right.fullOhm - right.emptyOhm)]];
      }),
    );
  });
  const way = (points: SaddleTankResult['path']): [number, number][] =>
    points.map((point) => [point.leftFraction * 100, point.rightFraction * 100]);
  return {
    title: 'Left float by right float',
    x: { label: 'Left float', unit: '%', domain: [0, 100] },
    y: { label: 'Right float', unit: '%', domain: [0, 100] },
    series: [
      {
        name: 'on the way to empty',
        points: way(result.path),
        colour: 'copper',
        as: 'line',
        labelAt: Math.max(
          1,
          result.path.findIndex(({ leftFraction }) => leftFraction < 0.62),
        ),
      },
      { name: 'transfer dead', points: way(result.lostPath), colour: 'red', as: 'line', dash: '2 3', labelAt: 20 },
      ...equalLitres.map((points, i) => ({
        name: `${Math.round((litres[i] as number) * 10) / 10} L`,
        points,
        colour: 'soft' as const,
        as: 'line' as const,
        dash: '6 3',
        labelAt: Math.floor(points.length * (i === 0 ? 0.75 : 0.3)),
        labelSide: 'above' as const,
      })),
      ...equalReadings.map((points, i) => ({
        name: `${(readings[i] as number).toFixed(2)} V`,
        points,
        colour: 'verdigris' as const,
        as: 'line' as const,
        dash: '',
        labelAt: Math.floor(points.length / 2),
      })),
    ].filter(({ points }) => points.length > 1),
  };
}

/** Litres over the volts of the one wire on the way to empty, with the range that each reading may mean. */
export function litresByVolts({ path }: SaddleTankResult): ChartSpec {
  const rows = [...path].sort((a, b) => (a.pinV[0] as number) - (b.pinV[0] as number));
  return {
    title: 'Litres by the reading of the one wire',
    x: { label: 'Pin', unit: 'V' },
    y: { label: 'In the tank', unit: 'L' },
    series: [
      {
        name: 'on the way to empty',
        points: rows.map((row) => [row.pinV[0] as number, row.volumeL]),
        colour: 'copper',
        as: 'line',
        labelAt: 2,
      },
    ],
    bands: [
      { name: '', points: rows.map((row) => [row.pinV[0] as number, row.leastL, row.mostL]), colour: 'verdigris' },
    ],
  };
}

/** Litres over the level, with a straight line through the ends to show how far a tank is from one. */
export function litresByLevel({ strapping, volumeL, totalL }: TankVolumeResult, levelMm: number): ChartSpec {
  const highest = strapping.at(-1)?.levelMm ?? 0;
  return {
    title: 'Litres by the level',
    x: { label: 'Level', unit: 'mm' },
    y: { label: 'In the tank', unit: 'L' },
    series: [
      { name: '', points: strapping.map((row) => [row.levelMm, row.volumeL]), colour: 'text', as: 'line' },
      {
        name: 'as if its walls were straight',
        points: [
          [0, 0],
          [0.6 * highest, 0.6 * totalL],
          [highest, totalL],
        ],
        colour: 'soft',
        as: 'line',
        labelAt: 1,
      },
    ],
    chosen: { x: levelMm, y: volumeL, label: `${Math.floor(volumeL * 10) / 10} L` },
  };
}

/** What a gauge shows over the reading: the curve through the cans, the table's straight lines, and the cans. */
export function cansAndCells(found: LevelCalibration, unit: string, noughtAtL: number): ChartSpec {
  const shown = (volumeL: number): number => Math.max(0, volumeL - noughtAtL);
  return {
    title: 'Litres shown by the reading: cans, curve and table',
    x: { label: 'Reading', unit },
    y: { label: 'Shown', unit: 'L' },
    series: [
      {
        name: 'table',
        points: found.cells.map((cell): [number, number] => [cell.readingValue, cell.shownL]),
        colour: 'copper',
        as: 'both',
        labelAt: Math.floor(found.cells.length / 2),
        labelSide: found.cells[0] !== undefined && found.cells[0].shownL > 0 ? 'above' : 'below',
      },
      {
        name: '',
        points: found.curve.map((point): [number, number] => [point.readingValue, shown(point.volumeL)]),
        colour: 'soft',
        as: 'line',
      },
      {
        name: '',
        points: found.cans.map((can): [number, number] => [can.readingValue, shown(can.totalL)]),
        colour: 'text',
        as: 'dots',
      },
    ],
  };
}

/** What is shown at each can less what is there: a bar each, over the band of the litres. */
export function canBars({ cans }: LevelCalibration): ChartSpec {
  const most = Math.max(...cans.map(({ errorL, bandL }) => Math.max(Math.abs(errorL), bandL))) * 1.1 || 1;
  return {
    title: 'Shown less what was put in, and the band of the litres',
    x: { label: 'Put in', unit: 'L' },
    y: { label: 'Off by', unit: 'L', domain: [-most, most] },
    bands: [
      {
        name: '',
        colour: 'verdigris',
        points: cans.map(({ totalL, bandL }): [number, number, number] => [totalL, -bandL, bandL]),
      },
    ],
    series: [
      {
        name: '',
        points: cans.map(({ totalL, errorL }): [number, number] => [totalL, errorL]),
        colour: 'copper',
        as: 'dots',
      },
      {
        name: '',
        points: cans.flatMap(({ totalL, errorL }): [number, number][] => [
          [totalL, 0],
          [totalL, errorL],
          [totalL, 0],
        ]),
        colour: 'copper',
        as: 'line',
        dash: '',
      },
    ],
  };
}

/** The cells of a gauge as those of any table, so that they can be copied the same way. */
export const levelCells = ({ cells }: LevelCalibration): readonly CalibrationCell[] =>
  cells.map(({ readingValue, shownL }) => ({ inValue: readingValue, outValue: shownL }));

/** A tank that sways at its longest period and is then filled: as it is read, and as the gauge shows it. */
export function swayAndFilling(input: SloshFilterInput, found: SloshFilter): ChartSpec {
  const { sloshL, longPeriodS, sampleS, refuelL } = input;
  const { newFraction, sampleCount, kind } = found;
  const filledS = 4 * longPeriodS;
  const count = Math.min(6000, Math.ceil((filledS + Math.max(1.3 * found.settleS, 4 * longPeriodS)) / sampleS));
  const read = Array.from({ length: count + 1 }, (_, i): number => {
    const t = i * sampleS;
    return sloshL * Math.sin((2 * Math.PI * t) / longPeriodS) + (t >= filledS ? refuelL : 0);
  });
  const before = Array<number>(sampleCount ?? 0).fill(0);
  let held = 0;
  const shown = read.map((value, i): number => {
    if (sampleCount === null) return (held += (newFraction ?? 1) * (value - held));
    const window = [...before, ...read].slice(i + 1, i + 1 + sampleCount);
    if (kind === 'moving-average') return window.reduce((a, b) => a + b, 0) / sampleCount;
    return window.sort((a, b) => a - b)[(sampleCount - 1) / 2] ?? 0;
  });
  const step = Math.max(1, Math.floor(count / 400));
  const points = (values: readonly number[]): [number, number][] =>
    values.flatMap((value, i): [number, number][] => (i % step === 0 ? [[i * sampleS, value]] : []));
  return {
    title: 'A sway, and then a filling',
    x: { label: 'Time', unit: 's' },
    y: { label: 'More than at first', unit: 'L' },
    series: [
      { name: '', points: points(read), colour: 'soft', as: 'line', dash: '' },
      {
        name: 'gauge',
        points: points(shown),
        colour: 'copper',
        as: 'line',
        dash: '',
        // On the way up, where the sway does not reach.
        labelAt: Math.min(Math.floor(count / step), Math.ceil((filledS + 0.2 * found.settleS) / sampleS / step)),
      },
    ],
  };
}
