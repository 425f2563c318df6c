import { InputError } from '../error/index.js';

/** What `isotonicFit` needs. */
export interface IsotonicFitInput {
  /** Name of the caller, for the error. */
  readonly fn: string;
  /** The values in order, at least one. */
  readonly values: readonly number[];
  /** How much each counts, above 0; 1 unless given. */
  readonly weights?: readonly number[];
}

/** Neighbours that share one fitted value. */
export interface IsotonicBlock {
  readonly fromIndex: number;
  readonly toIndex: number;
  readonly value: number;
}

/**
 * The rising steps that lie nearest to values that should rise: isotonic regression by pooling adjacent violators.
 *
 * Where a value lies no higher than the one before it, both are replaced by their weighted mean, until none does. What
 * is measured of a thing that only rises can then not dip. For one that only falls, negate.
 *
 * $$\min_{f_1 \le \dots \le f_n} \sum_i w_i\,(y_i - f_i)^2$$
 *
 * @param input caller, values, weights
 * @returns blocks in order, each with its value strictly above that of the block before
 * @throws InputError when a value or a weight is not finite, a weight is not above 0, or the lists differ in length
 * @source ayer-1955 (pooling adjacent violators)
 * @example isotonicFit({ fn: 't', values: [1, 3, 2, 4] }).map(({ value }) => value) //=> [1, 2.5, 4]
 */
export function isotonicFit(input: IsotonicFitInput): readonly IsotonicBlock[] {
  const { fn, values, weights } = input;
  if (values.length === 0 || (weights !== undefined && weights.length !== values.length)) {
    throw new InputError(fn, 'values', 'list', values, 'must be at least 1, each with its weight');
  }
  const blocks: { fromIndex: number; toIndex: number; value: number; weight: number }[] = [];
  values.forEach((value, i) => {
    const weight = weights?.[i] ?? 1;
    if (!Number.isFinite(value) || !(weight > 0 && weight < Infinity)) {
      throw new InputError(fn, `values[${i}]`, 'finite', value, 'must be a finite number with a weight above 0');
    }
    let block = { fromIndex: i, toIndex: i, value, weight };
    for (let before = blocks.at(-1); before !== undefined && before.value >= block.value; before = blocks.at(-1)) {
      blocks.pop();
      const sum = before.weight + block.weight;
      const mean = before.value + (block.value - before.value) * (block.weight / sum);
      block = { fromIndex: before.fromIndex, toIndex: i, value: mean, weight: sum };
    }
    blocks.push(block);
  });
  return blocks.map(({ fromIndex, toIndex, value }) => ({ fromIndex, toIndex, value }));
}
