import { checkChannel, type CheckChannelInput } from 'loomwright';
import type { ChartSeries, ChartSpec } from '@loomwright/worked/plot';

type Point = [x: number, y: number];

/** The next of 1, 2, 5 in its decade, downwards or upwards. */
function round125(value: number, up: boolean): number {
  const decade = 10 ** Math.floor(Math.log10(value));
  const steps = [1, 2, 5, 10].map((step) => step * decade);
  return (up ? steps.find((step) => step >= value * (1 - 1e-9)) : steps.findLast((step) => step <= value)) as number;
}

/** When an output trips at a steady current, beside how long its wire bears it. */
export function tripAndWire(input: CheckChannelInput): ChartSpec {
  const at = (currentA: number): ReturnType<typeof checkChannel> =>
    checkChannel({
      ...input,
      parallel: null,
      channel: { ...input.channel, currentLimitA: null },
      load: { ...input.load, stallA: currentA },
    });
  const { trip } = input.channel;
  const from = trip.kind === 'i2t' ? trip.carryA : trip.kind === 'threshold' ? trip.tripA : (trip.points[0]?.[0] ?? 1);
  const most = round125(Math.max(from, input.load.stallA ?? 0, input.ampacityA) * 3, true);
  const least = round125(Math.min(from, input.ampacityA, input.load.runA), false);
  const currents = Array.from({ length: 60 }, (_, i) => least * (most / least) ** (i / 59));
  const bottom = 0.001;
  const top = 1000;
  const line = (time: (currentA: number) => number | null): Point[] =>
    currents.flatMap((currentA) => {
      const timeS = time(currentA);
      return timeS === null || timeS < bottom || timeS > top ? [] : [[currentA, timeS] as Point];
    });
  const wire = line((currentA) => at(currentA).stallBearsS);
  const trips = line((currentA) => at(currentA).stallTripsAfterS);
  const steps = input.load.startSteps.filter(({ currentA }) => currentA > input.load.runA);
  const startS = steps.reduce((sum, { durationS }) => sum + durationS, 0);
  const peakA = Math.max(input.load.runA, ...steps.map(({ currentA }) => currentA));
  const load: Point[] = [
    [peakA, bottom],
    [peakA, Math.max(bottom, startS)],
    [input.load.runA, Math.max(bottom, startS)],
    [input.load.runA, top],
  ];
  return {
    title: 'When the output trips, and what the wire bears',
    x: { label: 'Current', unit: 'A', log: true, domain: [least, most] },
    y: { label: 'Time', unit: 's', log: true, domain: [bottom, top] },
    series: [
      {
        name: 'trips',
        points: trips,
        colour: 'copper',
        as: 'line',
        dash: '',
        labelAt: Math.floor(trips.length / 4),
        labelSide: 'above',
      },
      {
        name: 'wire',
        points: wire,
        colour: 'red',
        as: 'line',
        dash: '8 3 2 3',
        labelAt: Math.floor(wire.length / 8),
        labelSide: 'above',
      },
      { name: 'load', points: load, colour: 'verdigris', as: 'line', dash: '6 3', labelAt: 2 },
    ].filter(({ points }) => points.length > 0) as ChartSeries[],
  };
}
