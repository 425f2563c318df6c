import { type LevelPoint, rowAbove, volumeAt } from './strapping.js';

/** One side of the tank with its float. */
export interface SaddleLobe {
  /** Strapping table of this side alone, from its float's lowest place, 0, to its highest, 1. */
  readonly strapping: readonly LevelPoint[];
  /** Ω of its sender with this side empty and full, at least 0, straight in between; not the same. */
  readonly emptyOhm: number;
  readonly fullOhm: number;
  /** The float's place when the fuel stands at the saddle, above 0 and at most 1. */
  readonly saddleFraction: number;
}

/** Ω of a side's sender. */
export function lobeOhm({ emptyOhm, fullOhm }: SaddleLobe, levelFraction: number): number {
  return emptyOhm + (fullOhm - emptyOhm) * levelFraction;
}

/** Ω of both senders on one wire. */
export function pairOhm(wiring: 'series' | 'parallel', left: number, right: number): number {
  return wiring === 'series' ? left + right : (left * right) / (left + right);
}

/**
 * The least and the most litres of all splits between the sides that give one resistance. Between rows of the tables
 * the litres turn at one known place at most, so the rows, the ends and these places hold both.
 */
export function litresFor(
  wiring: 'series' | 'parallel',
  left: SaddleLobe,
  right: SaddleLobe,
  ohm: number,
): { readonly leastL: number; readonly mostL: number } {
  const levelOf = (lobe: SaddleLobe, own: number): number => (own - lobe.emptyOhm) / (lobe.fullOhm - lobe.emptyOhm);
  const partner = (own: number): number => (wiring === 'series' ? ohm - own : (ohm * own) / (own - ohm));
  const tried: number[] = left.strapping.map((point) => point.levelFraction);
  for (const { levelFraction } of right.strapping) tried.push(levelOf(left, partner(lobeOhm(right, levelFraction))));
  if (wiring === 'parallel') {
    const weight = (lobe: SaddleLobe, i: number): number => {
      const [a, b] = [lobe.strapping[i - 1] as LevelPoint, lobe.strapping[i] as LevelPoint];
      const perLevel = (b.volumeL - a.volumeL) / (b.levelFraction - a.levelFraction);
      return Math.sqrt(perLevel / Math.abs(lobe.fullOhm - lobe.emptyOhm));
    };
    // Between two neighbours of these places both sides stay between the same rows.
    const cuts = tried.filter((level) => level >= 0 && level <= 1).sort((a, b) => a - b);
    for (let n = 1; n < cuts.length; n++) {
      const l = ((cuts[n - 1] as number) + (cuts[n] as number)) / 2;
      const r = levelOf(right, partner(lobeOhm(left, l)));
      if (!(r >= 0 && r <= 1)) continue;
      const [i, k] = [rowAbove(left.strapping, l), rowAbove(right.strapping, r)];
      tried.push(levelOf(left, ohm * (1 + weight(right, k) / weight(left, i))));
    }
  }
  let leastL = Infinity;
  let mostL = -Infinity;
  const near = (level: number): boolean => level >= -1e-9 && level <= 1 + 1e-9;
  const clamp = (level: number): number => Math.min(1, Math.max(0, level));
  for (const l of tried) {
    if (!near(l)) continue;
    const r = levelOf(right, partner(lobeOhm(left, clamp(l))));
    if (!near(r)) continue;
    const volumeL = volumeAt(left.strapping, clamp(l)) + volumeAt(right.strapping, clamp(r));
    leastL = Math.min(leastL, volumeL);
    mostL = Math.max(mostL, volumeL);
  }
  return { leastL, mostL };
}
