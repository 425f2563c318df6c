import { describe, expect, it } from 'vitest';
import {
  calibrateLevelCard,
  canList,
  evenStrapping,
  exampleValues,
  inputOf,
  litreList,
  sloshFilterCard,
} from '@loomwright/worked/card';
import { expectInputError } from '../support/edge.js';

const cans = (text: string) => canList('calibrateLevel', 'cans', text);

describe('cans as people write them', () => {
  it('litres and reading, parted by a colon, a blank or an equals sign', () => {
    const expected = [
      { totalL: 0, readingValue: 2.497 },
      { totalL: 5.5, readingValue: -0.25 },
      { totalL: 10, readingValue: 1023 },
    ];
    expect(cans('0:2.497; 5.5:-0.25; 10:1023')).toEqual(expected);
    expect(cans('0 L 2.497\n5.5 L = −0.25\n10 l: 1023;')).toEqual(expected);
    expect(cans(' .5 : 1e3 ')).toEqual([{ totalL: 0.5, readingValue: 1000 }]);
  });
  it('what cannot be read is named with what one looks like', () => {
    for (const text of ['5', '5:', ':2', '5:2.4 V', '5,5:2', 'five:2', '-5:2', '5:2:3', '5 Ω 2']) {
      expectInputError(() => cans(`0:1; ${text}`), 'cans', 'text');
    }
    expect(() => cans('5 litres 2')).toThrow("got '5 litres 2'");
  });
  it('the example of the card reads as thirteen cans, and what is left empty becomes null', () => {
    const input = inputOf(calibrateLevelCard, { ...exampleValues(calibrateLevelCard), noiseValue: null });
    expect(input.cans.length).toBe(13);
    expect([input.noiseValue, input.wantedErrorL]).toEqual([null, null]);
  });
});

describe('litres at equal steps', () => {
  it('are read with their unit or without', () => {
    expect(litreList('saddleTank', 'left.strapping', '0, 8; 20.5 L')).toEqual([0, 8, 20.5]);
    expect(evenStrapping('saddleTank', 'left.strapping', '0, 8, 20').map(({ levelFraction }) => levelFraction)).toEqual(
      [0, 0.5, 1],
    );
    expectInputError(() => litreList('saddleTank', 'left.strapping', '0, eight'), 'left.strapping', 'text');
  });
});

describe('kinds of filter', () => {
  it('are those that are ticked, in their order', () => {
    const ticked = { ...exampleValues(sloshFilterCard), firstOrder: false, movingAverage: true, movingMedian: true };
    expect(inputOf(sloshFilterCard, ticked).kinds).toEqual(['moving-average', 'moving-median']);
    expect(inputOf(sloshFilterCard, ticked)).not.toHaveProperty('movingMedian');
  });
});
