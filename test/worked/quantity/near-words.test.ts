import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { nearWords } from '@loomwright/worked/quantity';

const words = [
  'supply',
  'outLength',
  'returnLength',
  'current',
  'ambient',
  'iso-19642',
  'iec-60228-class-5',
  'geometric',
];

describe('independent', () => {
  const slips: readonly (readonly [typed: string, meant: string])[] = [
    ['suply', 'supply'],
    ['supplly', 'supply'],
    ['supplu', 'supply'],
    ['supplyt', 'supply'],
    ['uspply', 'supply'],
    ['SUPPLY', 'supply'],
    ['outlength', 'outLength'],
    ['outLenght', 'outLength'],
    ['curent', 'current'],
    ['iso-19624', 'iso-19642'],
    ['iso19642', 'iso-19642'],
    ['iec-60228', 'iec-60228-class-5'],
    ['iec-60228-class5', 'iec-60228-class-5'],
    ['geometrie', 'geometric'],
  ];
  for (const [typed, meant] of slips)
    it(`${typed} may mean ${meant}`, () => expect(nearWords(typed, words)[0]).toBe(meant));
});

describe('laws', () => {
  it('finds a word again after one letter was changed, left out, doubled or swapped', () => {
    fc.assert(
      fc.property(fc.constantFrom(...words), fc.nat(30), fc.constantFrom(0, 1, 2, 3), (word, place, kind) => {
        const i = place % (word.length - 1);
        const slip = [
          `${word.slice(0, i)}q${word.slice(i + 1)}`,
          word.slice(0, i) + word.slice(i + 1),
          word.slice(0, i) + word.charAt(i) + word.slice(i),
          word.slice(0, i) + word.charAt(i + 1) + word.charAt(i) + word.slice(i + 2),
        ][kind] as string;
        expect(nearWords(slip, words)).toContain(word);
      }),
    );
  });
  it('gives at most three known words, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string(), (typed) => {
        const near = nearWords(typed, words);
        expect(near.length).toBeLessThanOrEqual(3);
        for (const word of near) expect(words).toContain(word);
      }),
    );
  });
});

describe('edges', () => {
  it('says nothing where nothing is near', () => {
    for (const typed of ['', 'zzzzzzzz', 'x', '😀', '9'.repeat(1e5)]) expect(nearWords(typed, words)).toEqual([]);
    expect(nearWords('supply', [])).toEqual([]);
  });
});
