import { describe, expect, it } from 'vitest';
import { heatSection, ruleRange } from '@loomwright/worked/draw';
import { bundleTemperatureCard, exampleValues, inputOf, wiresInPlace } from '@loomwright/worked/card';
import { work } from '@loomwright/worked/work';
import { expectInputError } from '../support/edge.js';

const format = (v: number): string => `${v.toFixed(1)} C`;
const section = (width: number): string =>
  heatSection({
    wires: [
      { xMm: -1.5, yMm: 0, outerDiameterMm: 3, conductorDiameterMm: 2, tempC: 71.2 },
      { xMm: 1.5, yMm: 0, outerDiameterMm: 3, conductorDiameterMm: 2, tempC: 80.4 },
    ],
    bundleDiameterMm: 6,
    surfaceTempC: 65,
    ambientTempC: 40,
    width,
    format,
  });

describe('heatSection', () => {
  it('writes each temperature rounded up and names the hottest, the surface and the air', () => {
    for (const width of [320, 640]) {
      const svg = section(width);
      for (const text of ['>72<', '>81<', 'hottest wire 80.4 C', 'surface 65.0 C', 'air 40.0 C'])
        expect(svg).toContain(text);
      expect(svg).toMatch(/role="img" aria-label="Bundle cut across, by temperature\. 2 wires/);
      expect(svg).not.toMatch(/NaN|undefined/);
    }
  });
  it('colours the hotter wire more deeply', () => {
    const opacity = [...section(640).matchAll(/fill-opacity="([\d.]+)"/g)].map((match) => Number(match[1]));
    expect(opacity).toHaveLength(2);
    expect(opacity[1]!).toBeGreaterThan(opacity[0]!);
  });
  it('stays whole where all wires have one temperature', () => {
    const cold = heatSection({
      wires: [{ xMm: 0, yMm: 0, outerDiameterMm: 3, conductorDiameterMm: 2, tempC: 40 }],
      bundleDiameterMm: 3,
      surfaceTempC: 40,
      ambientTempC: 40,
      width: 640,
      format,
    });
    expect(cold).not.toMatch(/NaN|Infinity/);
  });
});

describe('ruleRange', () => {
  const draw = (width: number): string =>
    ruleRange({
      title: 'By every rule',
      rows: [
        { name: 'one <rule>', factor: 0.5, chosen: true },
        { name: 'another', factor: 0.8, chosen: false },
        { name: 'a third', factor: null, because: 'beyond its table', chosen: false },
      ],
      width,
      format: (v) => v.toFixed(3),
    });
  it('has a line for every rule, and says why one has no number', () => {
    for (const width of [320, 640]) {
      const svg = draw(width);
      for (const text of ['one &#60;rule&#62;', 'another', '0.500', '0.800', 'beyond its table'])
        expect(svg).toContain(text);
      expect(svg).toContain(
        'aria-label="By every rule. one &#60;rule&#62; 0.500; another 0.800; a third beyond its table"',
      );
    }
  });
  it('draws no range where fewer than two rules have a number', () => {
    const svg = ruleRange({
      title: 't',
      rows: [{ name: 'a', factor: 0.4, chosen: true }],
      width: 640,
      format: String,
    });
    expect(svg).not.toContain('<rect');
  });
});

describe('wires as text', () => {
  it('reads counts, sizes and currents, however they are spaced', () => {
    const { wires } = wiresInPlace('2x1.5 mm2 @ 6A;1 × 4 mm² at 12.5 A;');
    expect(wires).toHaveLength(3);
    expect(wires.map(({ currentA }) => currentA).sort((a, b) => a - b)).toEqual([6, 6, 12.5]);
    expect(wires[0]).toMatchObject({ outerDiameterMm: 3.7, conductorDiameterMm: 2.8, resistanceOhmPerM: 0.00471 });
  });
  it('refuses what it cannot read, at its field', () => {
    for (const text of [
      '',
      '3 mm² at 5 A',
      '3 × 2.5',
      '0 × 2.5 mm² at 1 A',
      '99 × 1 mm² at 1 A',
      '2 × 2.6 mm² at 1 A',
    ]) {
      expectInputError(() => wiresInPlace(text), 'wires');
    }
  });
  it('gives the calculator the diameter that the drawing has', () => {
    const values = exampleValues(bundleTemperatureCard);
    const diameter = work(bundleTemperatureCard, values).results.find(
      ({ field }) => field.name === 'bundleDiameterMm',
    )!;
    expect(diameter.value).toBe(inputOf(bundleTemperatureCard, values).bundleDiameterMm);
  });
});
