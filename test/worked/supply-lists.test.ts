// Five-volt pins and their devices as the card reads them, and the bars that are drawn of the answer.
import { describe, expect, it } from 'vitest';
import { limiterText, supplyDevicesText, supplyPinsText } from '@loomwright/worked/card';
import { pinBars } from '@loomwright/worked/draw';
import { expectInputError } from '../support/edge.js';

describe('lists', () => {
  it('pins with what they do beyond their limit', () => {
    expect(
      supplyPinsText(
        'f',
        'p',
        'A: 60 mA, holds 120 mA, blocks; B 2: .06A, folds 120 mA to 40 mA, back 0.6 V; C: 1 A, rail, back 0 V',
      ),
    ).toEqual([
      { name: 'A', limitA: 0.06, limiter: { kind: 'constant', mostA: 0.12 }, backDropV: null },
      { name: 'B 2', limitA: 0.06, limiter: { kind: 'foldback', kneeA: 0.12, shortA: 0.04 }, backDropV: 0.6 },
      { name: 'C', limitA: 1, limiter: null, backDropV: 0 },
    ]);
    expect(limiterText('f', 'l', ' trips 300 mA ')).toEqual({ kind: 'off', tripA: 0.3 });
  });
  it('devices with what is known of them', () => {
    const [track, boost, pull, light] = supplyDevicesText(
      'f',
      'd',
      'pedal 1: A, track 2 kΩ, 20 %, one of pedal, gives 18 %; boost: B 2, 12 mA from 4.5 V, 10 %, gives 2.2 V, stands 6.5 V, cold 1.1 hot 0.95; coolant: C, pull-up 2.49 kΩ over 60 Ω, 1 %; light: C, LED 150 Ω at 2 V, 5 %, fixed',
    );
    expect(track).toEqual({
      name: 'pedal 1',
      pin: 'A',
      draw: { kind: 'resistance', resistanceOhm: 2000 },
      toleranceFraction: 0.2,
      trackOf: 'pedal',
      output: { kind: 'share', outFraction: 0.18 },
      standsV: null,
    });
    expect(boost).toMatchObject({
      draw: { kind: 'current', currentA: 0.012, worksFromV: 4.5 },
      output: { kind: 'volts', outV: 2.2 },
      standsV: 6.5,
      coldFactor: 1.1,
      hotFactor: 0.95,
    });
    expect(pull!.draw).toEqual({ kind: 'pull-up', pullOhm: 2490, leastSensorOhm: 60 });
    expect(light).toMatchObject({ draw: { kind: 'led', resistanceOhm: 150, forwardV: 2 }, fixed: true });
  });
  it('names what it cannot read', () => {
    for (const bad of ['A: 60 mA', 'A: 60 mA, hopes, blocks', 'A: 60 mA, rail, back', 'A: 60, rail, blocks'])
      expectInputError(() => supplyPinsText('f', 'p', bad), 'p', 'text');
    for (const bad of ['x: A, track 2 kΩ', 'x: A, magic, 5 %', 'x: A, track 2 kΩ, 5 %, sings'])
      expectInputError(() => supplyDevicesText('f', 'd', bad), 'd', 'text');
    expectInputError(() => limiterText('f', 'l', '300 mA'), 'l', 'text');
  });
});

describe('pinBars', () => {
  const pins = [
    {
      name: 'VREF1',
      limitA: 0.06,
      usableA: 0.054,
      parts: [
        { name: 'boost', currentA: 0.05 },
        { name: 'a thin one', currentA: 0.001 },
        { name: 'another thin one', currentA: 0.02, moved: true },
      ],
    },
    { name: 'VREF2', limitA: 0.03, usableA: 0.03, parts: [{ name: 'pedal', currentA: 0.02 }] },
  ];
  const draw = (width: number): string =>
    pinBars({
      title: 'Pins',
      groups: [{ name: 'As it is', pins }],
      width,
      format: (a) => `${Math.round(a * 1000)} mA`,
    });
  it.each([320, 680])('at %i px: bars as wide as their currents, over and left told in words', (width) => {
    const svg = draw(width);
    const widths = [...svg.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)"/g)];
    expect(widths).toHaveLength(4);
    for (const [, x, w] of widths) expect(Number(x) + Number(w)).toBeLessThanOrEqual(width);
    expect((Number(widths[0]![2]) + 1.5) / (Number(widths[3]![2]) + 1.5)).toBeCloseTo(2.5, 1);
    expect(svg).toContain('✕ 17 mA over the fine mark');
    expect(svg).toContain('✓ 10 mA left');
    expect(svg).toContain('narrow: a thin one');
    expect(svg).toContain('→ another thin one');
  });
});
