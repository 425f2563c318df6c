import type { AdaptSenderDesign, LadderSenderResult } from 'loomwright';
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
      { name: 'with the resistors', points: points(design.curve), colour: 'copper', as: 'line', labelAt: 6 },
      { name: 'with nothing', points: points(design.plain.curve), colour: 'soft', as: 'line', labelAt: 1 },
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
