import type { DualTrackResult, PedalFault, PedalReading } from 'loomwright';
import type { ChartBand, ChartSeries, ChartSpec } from '@loomwright/worked/plot';

const percent = (fraction: number): number => Number((100 * fraction).toPrecision(10));

const TRAVEL = { label: 'Travel', unit: '%', domain: [0, 100] } as const;

function line(
  readings: readonly PedalReading[],
  of: (reading: PedalReading) => number | null,
  look: Omit<ChartSeries, 'points' | 'as'>,
): ChartSeries {
  const points = readings.flatMap((reading): [number, number][] => {
    const value = of(reading);
    return value === null ? [] : [[percent(reading.travelFraction), value]];
  });
  return { ...look, points, as: 'line' };
}

/** Both inputs over the travel, and where the second must lie for what the first reads; healthy, or with a fault. */
export function tracksOverTravel(result: DualTrackResult, fault: PedalFault | null, title: string): ChartSpec {
  const { healthy } = result;
  const readings = fault?.readings ?? healthy;
  const banded = readings.filter(({ lowestSecondV }) => lowestSecondV !== null);
  const ghosts =
    fault === null
      ? []
      : [
          line(healthy, ({ firstV }) => firstV, { name: '', colour: 'soft', dash: '2 3' }),
          line(healthy, ({ secondV }) => secondV, { name: '', colour: 'soft', dash: '2 3' }),
        ];
  const falls = (healthy[0]?.secondV ?? 0) > (healthy.at(-1)?.secondV ?? 0);
  const series = [
    ...ghosts,
    line(readings, ({ firstV }) => firstV, { name: 'first', colour: 'copper', dash: '' }),
    line(readings, ({ secondV }) => secondV, {
      name: 'second',
      colour: 'verdigris',
      dash: '6 3',
      labelAt: falls ? 3 : 17,
      labelSide: falls ? 'left' : 'below',
    }),
  ];
  const bands: readonly ChartBand[] =
    banded.length < 2
      ? []
      : [
          {
            name: '',
            colour: 'verdigris',
            points: banded.map(({ travelFraction, lowestSecondV, highestSecondV }): [number, number, number] => [
              percent(travelFraction),
              lowestSecondV as number,
              highestSecondV as number,
            ]),
          },
        ];
  const volts = [
    ...series.flatMap(({ points }) => points.map(([, v]) => v)),
    ...bands.flatMap((b) => b.points.flatMap(([, low, high]) => [low, high])),
  ];
  return {
    title,
    x: TRAVEL,
    y: { label: 'At the input', unit: 'V', domain: [Math.min(0, ...volts), Math.max(...volts) * 1.06] },
    series,
    bands,
  };
}

/** Travel that the throttle follows over the travel that there is; where nothing sees the fault is shaded. */
export function shownOverTravel(fault: PedalFault, title: string): ChartSpec {
  const whole: ChartSeries = {
    name: 'as it should be',
    points: [
      [0, 0],
      [100, 100],
    ],
    colour: 'soft',
    as: 'line',
    dash: '2 3',
  };
  return {
    title,
    x: TRAVEL,
    y: { label: 'Shown', unit: '%', domain: [0, 106] },
    series: [
      { ...whole, name: '' },
      line(fault.readings, ({ shownFraction }) => percent(shownFraction), {
        name: fault.floats ? 'shown at most' : 'shown',
        colour: 'copper',
        dash: '',
      }),
    ],
    bands: fault.unseen.map(({ fromFraction, toFraction }) => ({
      name: '',
      colour: 'red',
      points: [
        [percent(fromFraction), 0, 106],
        [percent((fromFraction + toFraction) / 2), 0, 106],
        [percent(toFraction), 0, 106],
      ],
    })),
  };
}
