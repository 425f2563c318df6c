/** One row of a strapping table: what the tank holds when the level stands there. */
export interface LevelPoint {
  /** Level as a share of the way from empty to full, 0 to 1. */
  readonly levelFraction: number;
  /** Litres in the tank at that level. */
  readonly volumeL: number;
}

/** Which row is the first at or above a level; the second one at the least. */
export function rowAbove(points: readonly LevelPoint[], levelFraction: number): number {
  return Math.max(
    1,
    points.findIndex((point) => point.levelFraction >= levelFraction),
  );
}

/** Litres at a level: a straight line between the rows of the table. */
export function volumeAt(points: readonly LevelPoint[], levelFraction: number): number {
  const i = rowAbove(points, levelFraction);
  const a = points[i - 1] as LevelPoint;
  const b = points[i] as LevelPoint;
  const share = (levelFraction - a.levelFraction) / (b.levelFraction - a.levelFraction);
  return a.volumeL + (b.volumeL - a.volumeL) * share;
}
