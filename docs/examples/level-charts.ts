import type { LadderSenderResult } from 'loomwright';
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
