import { describe, expect, it } from 'vitest';
import { changeList, massList, sizeList, wireList } from '@loomwright/worked/card';
import { expectInputError } from '../support/edge.js';

describe('lists as people write them', () => {
  it('wires: how many of which diameter', () => {
    const seven = { outerDiameterMm: 2.4, count: 7 };
    for (const text of ['7 × 2.4', '7x2.4 mm', '7 * 2.4mm;', ' 7 X 2.40 '])
      expect(wireList('f', text)).toEqual([seven]);
    expect(wireList('f', '2.4; 3 × .5 in\n2 × 0.1"')).toEqual([
      { outerDiameterMm: 2.4, count: 1 },
      { outerDiameterMm: 12.7, count: 3 },
      { outerDiameterMm: 2.54, count: 2 },
    ]);
    for (const text of ['7 × 2,4', 'seven', '7 × 2.4 cm', '1.5 × 2.4', '7 × 1e999', '7 × 0', '0 × 2', '7 × -2']) {
      expectInputError(() => wireList('f', text), 'wires', 'text');
    }
    expect(() => wireList('bundleDiameter', '7 by 2.4')).toThrow(
      "bundleDiameter: wires must read like 7 × 2.4 mm, got '7 by 2.4': entries are parted by semicolons",
    );
  });
  it('an empty list is asked for an entry', () => {
    expectInputError(() => wireList('f', ' ; '), 'wires', 'missing');
    expectInputError(() => sizeList('f', ''), 'wires', 'missing');
    expectInputError(() => massList('f', ''), 'masses', 'missing');
  });
  it('sizes: how many of which', () => {
    expect(sizeList('f', '2 × 18; 1/0; 3x2.5')).toEqual([
      { size: '18', count: 2 },
      { size: '1/0', count: 1 },
      { size: '2.5', count: 3 },
    ]);
    expectInputError(() => sizeList('f', '2 × AWG'), 'wires', 'text');
  });
  it('masses at places', () => {
    expect(massList('f', '18 kg at 0; -4.5kg at −1.1 m')).toEqual([
      { massKg: 18, alongM: 0 },
      { massKg: -4.5, alongM: -1.1 },
    ]);
    expectInputError(() => massList('f', '18 kg'), 'masses', 'text');
    expectInputError(() => massList('f', '18 at 3'), 'masses', 'text');
  });
  it('changes: from alone is removed, to alone is added, both is moved', () => {
    const text = 'spare wheel 22 kg from 3.1 / 0; winch 38 kg to −0.7/0; battery 20 kg from -0.4 / 0.5 to 2.9 / -.4';
    expect(changeList('f', text)).toEqual([
      { kind: 'removed', name: 'spare wheel', massKg: 22, from: { behindFrontAxleM: 3.1, rightOfCentreM: 0 } },
      { kind: 'added', name: 'winch', massKg: 38, to: { behindFrontAxleM: -0.7, rightOfCentreM: 0 } },
      {
        kind: 'moved',
        name: 'battery',
        massKg: 20,
        from: { behindFrontAxleM: -0.4, rightOfCentreM: 0.5 },
        to: { behindFrontAxleM: 2.9, rightOfCentreM: -0.4 },
      },
    ]);
    for (const bad of ['battery 20 kg', '20 kg to 1 / 0', 'battery from 1 / 0', 'battery 20 kg to 1']) {
      expectInputError(() => changeList('f', bad), 'changes', 'text');
    }
    expect(changeList('f', '')).toEqual([]);
  });
});
