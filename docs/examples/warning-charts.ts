import type { SwitchingBand, SwitchStageResult, WarningLimits } from 'loomwright';
import type { ChartBand, ChartSeries, ChartSpec } from '@loomwright/worked/plot';

/** Words for the parts of a band, short enough to stand in a narrow chart. */
const PART = { 'talk-back': 'own jump', process: 'delay', noise: 'noise', converter: 'count' } as const;

/** From the threshold on to the threshold off: what the band is made of, one step beside the other. */
export function bandSteps(stage: SwitchStageResult, title: string): ChartSpec {
  const { onValue, offValue, parts, leastBandValue, bandValue } = stage;
  const sum = parts.reduce((total, { partValue }) => total + partValue, 0);
  // Parts are told by the slope where the load goes on; along the curve they are a little longer or shorter.
  const scale = leastBandValue / sum;
  const way = Math.sign(onValue - offValue);
  const steps = [
    ...parts.map(({ name, partValue }) => ({ name: PART[name] as string, size: partValue * scale })),
    { name: 'room', size: Math.max(0, Math.abs(bandValue) - leastBandValue) },
  ];
  let at = onValue;
  const bands = steps.map(({ name, size }, i): ChartBand => {
    const from = at;
    at -= way * size;
    const [low, high] = [Math.min(from, at), Math.max(from, at)];
    const points = [i + 0.1, i + 0.5, i + 0.9].map((x): [number, number, number] => [x, low, high]);
    return { name, points, colour: name === 'room' ? 'verdigris' : name === 'own jump' ? 'copper' : 'blue' };
  });
  const across = (name: string, value: number, colour: ChartSeries['colour']): ChartSeries => {
    const points: [number, number][] = [
      [0, value],
      [steps.length, value],
    ];
    return { name, points, colour, as: 'line' };
  };
  const edge = Math.abs(onValue - offValue) * 0.12;
  const [bottom, top] = [Math.min(onValue, offValue) - edge, Math.max(onValue, offValue) + edge * 1.6];
  return {
    title,
    x: { label: 'What takes it', unit: '', domain: [0, steps.length], ticks: [] },
    y: { label: 'Reading', unit: '', domain: [bottom, top] },
    series: [across('on', onValue, 'copper'), across('off', offValue, 'verdigris')],
    bands,
  };
}

/** Two rounds of the load: what is there, and what the controller reads; null where there are no rounds. */
export function switchingRounds(
  { first }: SwitchingBand,
  goals: { readonly withoutValue: number; readonly withValue: number; readonly timeConstantS: number },
): ChartSpec | null {
  const { onTimeS, offTimeS, onValue, offValue, jumpValue } = first;
  if (onTimeS === null || offTimeS === null) return null;
  const { withoutValue, withValue, timeConstantS } = goals;
  // The range that is really gone through follows from the two times alone.
  const [a, b] = [Math.exp(-onTimeS / timeConstantS), Math.exp(-offTimeS / timeConstantS)];
  const top = (withoutValue * (1 - b) + b * withValue * (1 - a)) / (1 - a * b);
  const bottom = withValue + (top - withValue) * a;
  const there: [number, number][] = [];
  const read: [number, number][] = [];
  let start = 0;
  for (let round = 0; round < 2; round++) {
    for (const [lasts, from, goal, jump] of [
      [offTimeS, bottom, withoutValue, 0],
      [onTimeS, top, withValue, jumpValue],
    ] as const) {
      for (let i = 0; i <= 12; i++) {
        const t = (lasts * i) / 12;
        const value = goal + (from - goal) * Math.exp(-t / timeConstantS);
        there.push([start + t, value]);
        read.push([start + t, value + jump]);
      }
      start += lasts;
    }
  }
  const across = (name: string, value: number): ChartSeries => ({
    name,
    points: [
      [0, value],
      [start, value],
    ],
    colour: 'soft',
    as: 'line',
    dash: '5 3',
    labelAt: 0,
    labelSide: 'above',
  });
  return {
    title: 'Two rounds of the load',
    x: { label: 'Time', unit: 's' },
    y: { label: 'Value', unit: '' },
    series: [
      across('on', onValue),
      across('off', offValue),
      {
        name: 'really there',
        points: there,
        colour: 'verdigris',
        as: 'line',
        dash: '',
        labelAt: 18,
        labelSide: 'above',
      },
      { name: 'read', points: read, colour: 'copper', as: 'line', dash: '', labelAt: 20, labelSide: 'left' },
    ],
  };
}

/** Healthy, warned at and harm over the other quantity, and the room that is left for the warning. */
export function warningByOther(table: WarningLimits): ChartSpec {
  const line = (of: (row: WarningLimits['rows'][number]) => number): [number, number][] =>
    table.rows.map((row) => [row.inValue, of(row)]);
  const middle = Math.floor(table.rows.length / 2);
  return {
    title: 'Healthy, warned at, harm',
    x: { label: 'The other quantity', unit: '' },
    y: { label: 'Value', unit: '' },
    series: [
      {
        name: 'healthy at worst',
        points: line((row) => row.healthyValue),
        colour: 'verdigris',
        as: 'line',
        dash: '',
        labelAt: table.rows.length - 1,
        labelSide: 'above',
      },
      {
        name: 'warned at',
        points: table.cells.map(({ inValue, outValue }): [number, number] => [inValue, outValue]),
        colour: 'copper',
        as: 'both',
        dash: '',
      },
      { name: 'harm', points: line((row) => row.harmValue), colour: 'red', as: 'line', dash: '6 3', labelAt: middle },
    ],
    bands: [
      {
        name: '',
        points: table.rows.map(({ inValue, calmValue, lateValue }): [number, number, number] => [
          inValue,
          Math.min(calmValue, lateValue),
          Math.max(calmValue, lateValue),
        ]),
        colour: 'blue',
      },
    ],
  };
}
