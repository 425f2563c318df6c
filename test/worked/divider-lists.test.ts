// Lists that the cards of dividers and buttons read.
import { describe, expect, it } from 'vitest';
import { branchList, cards, exampleValues, inputOf, nameList, ohmList } from '@loomwright/worked/card';
import { work } from '@loomwright/worked/work';
import { expectInputError } from '../support/edge.js';

describe('laws', () => {
  it('reads resistances as they stand on parts and in notes', () => {
    expect(ohmList('f', 'r', '110, 360; 1.3k, 2k7\n4R7, 1M, 0, 33 Ω, 10 k, 1M5, 0.5ohm')).toEqual([
      110, 360, 1300, 2700, 4.7, 1e6, 0, 33, 10000, 1.5e6, 0.5,
    ]);
  });
  it('reads paths to a node, with a true minus too', () => {
    expect(branchList('f', 'b', '12 V / 4k7; \u22124 / 1, 0V/2.2k')).toEqual([
      { emfV: 12, resistanceOhm: 4700 },
      { emfV: -4, resistanceOhm: 1 },
      { emfV: 0, resistanceOhm: 2200 },
    ]);
  });
  it('reads names', () => {
    expect(nameList(' up, down ;set,')).toEqual(['up', 'down', 'set']);
  });
});

describe('edges', () => {
  it('names the entry that it cannot read', () => {
    expectInputError(() => ohmList('f', 'buttonOhm', '110, abc'), 'buttonOhm', 'text');
    expectInputError(() => ohmList('f', 'buttonOhm', '1,3k, 2k7k'), 'buttonOhm', 'text');
    expectInputError(() => branchList('f', 'branches', '12'), 'branches', 'text');
    expectInputError(() => branchList('f', 'branches', '12 / x'), 'branches', 'text');
    expect(() => ohmList('f', 'buttonOhm', 'abc')).toThrow(
      "f: buttonOhm must read like 110, 1.3k or 2k7, got 'abc': entries are parted by commas",
    );
  });
  it('gives buttons without a name a number', () => {
    const card = cards['checkSwitchLadder']!;
    const input = inputOf(card, { ...exampleValues(card), names: 'up, down' }) as { readonly names: readonly string[] };
    expect(input.names).toEqual(['up', 'down', 'button 3', 'button 4', 'button 5']);
  });
  it('takes the speed that is said to be known, and no other', () => {
    const card = cards['toothFrequency']!;
    const at = (given: string) => work(card, { ...exampleValues(card), given, speedKmh: 90, frequencyHz: 1234 }).output;
    expect(at('rpm')).toMatchObject({ speedRpm: 6000 });
    expect(at('frequency')).toMatchObject({ frequencyHz: 1234 });
    expect((at('road') as { readonly speedKmh: number }).speedKmh).toBeCloseTo(90, 9);
    const tyre = cards['pulsesPerDistance']!;
    const known = (given: string) => work(tyre, { ...exampleValues(tyre), given, circumferenceM: 2 }).output;
    expect(known('measured')).toMatchObject({ circumferenceM: 2, diameterMm: null });
    expect((known('tyre') as { readonly diameterMm: number }).diameterMm).toBeCloseTo(631.9, 9);
  });
});
