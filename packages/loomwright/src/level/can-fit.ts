import { InputError } from '../error/index.js';
import { type IsotonicBlock, isotonicFit } from '../number/isotonic-fit.js';

/** Litres in the tank, and what the input then read. */
export interface LevelCan {
  /** All litres put in so far, at least 0, no less than in the entry before. Equal ones are repeats. */
  readonly totalL: number;
  readonly readingValue: number;
}

/** All readings at the same litres. Readings are turned so that they rise with the litres. */
export interface CanGroup {
  readonly totalL: number;
  readonly mean: number;
  readonly weight: number;
}

/** The readings grouped, with their noise and the rising fit. */
export interface CanFit {
  readonly groups: readonly CanGroup[];
  readonly blocks: readonly IsotonicBlock[];
  /** Standard deviation of one reading. */
  readonly sigma: number;
  /** Degrees of freedom of the estimate; null where the noise was given. */
  readonly degreesOfFreedom: number | null;
}

/** Readings at the same litres put together; the noise as given, or by how far repeats lie apart. */
export function fitCans(fn: string, cans: readonly LevelCan[], sign: 1 | -1, noiseValue: number | null): CanFit {
  const groups: { totalL: number; mean: number; weight: number }[] = [];
  let squares = 0;
  for (const { totalL, readingValue } of cans) {
    const reading = sign * readingValue;
    const last = groups.at(-1);
    if (last?.totalL !== totalL) {
      groups.push({ totalL, mean: reading, weight: 1 });
      continue;
    }
    const off = reading - last.mean;
    squares += (off * off * last.weight) / (last.weight + 1);
    last.weight++;
    last.mean += off / last.weight;
  }
  const degreesOfFreedom = noiseValue === null ? cans.length - groups.length : null;
  if (degreesOfFreedom === 0) {
    throw new InputError(fn, 'noiseValue', 'missing', null, 'is required where no reading is repeated');
  }
  const sigma = noiseValue ?? Math.sqrt(squares / (degreesOfFreedom as number));
  return { groups, blocks: apart(groups, blocksOf(groups)), sigma, degreesOfFreedom };
}

/** Blocks that differ by less than a thousand-millionth of the whole span are one. */
function apart(groups: readonly CanGroup[], blocks: readonly IsotonicBlock[]): readonly IsotonicBlock[] {
  const dust = 1e-9 * ((blocks.at(-1) as IsotonicBlock).value - (blocks[0] as IsotonicBlock).value);
  const out: IsotonicBlock[] = [];
  for (const block of blocks) {
    const before = out.at(-1);
    if (before === undefined || block.value - before.value > dust) {
      out.push(block);
      continue;
    }
    const [w, v] = [weightOf(groups, before), weightOf(groups, block)];
    const value = before.value + ((block.value - before.value) * v) / (w + v);
    out[out.length - 1] = { fromIndex: before.fromIndex, toIndex: block.toIndex, value };
  }
  return out;
}

function blocksOf(groups: readonly CanGroup[]): readonly IsotonicBlock[] {
  return isotonicFit({ fn: 'cans', values: groups.map(({ mean }) => mean), weights: groups.map((g) => g.weight) });
}

/** The weight of a block: how many readings it holds. */
export function weightOf(groups: readonly CanGroup[], { fromIndex, toIndex }: IsotonicBlock): number {
  let sum = 0;
  for (let i = fromIndex; i <= toIndex; i++) sum += (groups[i] as CanGroup).weight;
  return sum;
}

/** Whether a group lies further from the value of its block than noise tells: by more than `k` of its deviations. */
function isOff(groups: readonly CanGroup[], block: IsotonicBlock, i: number, limit: number, dust: number): boolean {
  const { mean, weight } = groups[i] as CanGroup;
  const share = Math.max(0, 1 / weight - 1 / weightOf(groups, block));
  return Math.abs(mean - block.value) > limit * Math.sqrt(share) + dust;
}

/** Stretches that go against the others by more than noise, and the cans whose leaving out would cure each. */
export interface Against {
  readonly fromL: number;
  readonly toL: number;
  /** Litres of the cans that may be at fault; none where no single one is. */
  readonly suspectsL: readonly number[];
}

/** Where the readings fall as litres go in, by more than noise tells. */
export function against({ groups, blocks, sigma }: CanFit, coverageFactor: number): readonly Against[] {
  const limit = coverageFactor * sigma;
  const dust = 1e-9 * ((blocks.at(-1) as IsotonicBlock).value - (blocks[0] as IsotonicBlock).value);
  const offIn = (list: readonly CanGroup[], block: IsotonicBlock): boolean => {
    for (let i = block.fromIndex; i <= block.toIndex; i++) if (isOff(list, block, i, limit, dust)) return true;
    return false;
  };
  return blocks.flatMap((block): readonly Against[] => {
    if (block.fromIndex === block.toIndex || !offIn(groups, block)) return [];
    const members = groups.slice(block.fromIndex, block.toIndex + 1);
    const suspectsL = members.flatMap(({ totalL }, i) => {
      // Blocks are apart from one another: what is left out of one changes no other but by merging with it.
      const rest = groups.filter((_, g) => g !== block.fromIndex + i);
      const touches = (each: IsotonicBlock): boolean =>
        each.fromIndex < block.toIndex && each.toIndex >= block.fromIndex;
      return blocksOf(rest).some((each) => touches(each) && offIn(rest, each)) ? [] : [totalL];
    });
    const [first, last] = [members[0] as CanGroup, members.at(-1) as CanGroup];
    return [{ fromL: first.totalL, toL: last.totalL, suspectsL }];
  });
}
