// What the card of `sizeFeed` makes of fields that may stay empty.
import { describe, expect, it } from 'vitest';
import { exampleValues, inputOf, sizeFeedCard } from '@loomwright/worked/card';
import { work } from '@loomwright/worked/work';
import { expectInputError } from '../support/edge.js';

const example = exampleValues(sizeFeedCard);
const { overloadTempC: _, faultTempC: __, ...empty } = example;

describe('the card of sizeFeed', () => {
  it('holds the wire against the times of the fuse where both temperatures are given', () => {
    const { protection } = inputOf(sizeFeedCard, example);
    expect(protection).toMatchObject({ wireLimits: { overloadTempC: 130, shortTempC: 160 } });
    expect(work(sizeFeedCard, example).checks.map(({ name }) => name)).toContain('let-through until the fuse opens');
  });
  it('does not judge it where both are empty, and says so', () => {
    const { output, checks } = work(sizeFeedCard, empty);
    if (!output.possible) throw new Error('not sized');
    expect(checks.map(({ name }) => name)).not.toContain('let-through until the fuse opens');
    expect(output.fuse?.notJudged).toContain('the wire against the longest opening');
  });
  it('asks for the other where one is given', () => {
    expectInputError(() => inputOf(sizeFeedCard, { ...empty, overloadTempC: 130 }), 'faultTempC', 'missing');
    expectInputError(() => inputOf(sizeFeedCard, { ...empty, faultTempC: 160 }), 'overloadTempC', 'missing');
  });
});
