// Grounds, loads and sensors as the card reads them, and the matrix that is drawn of the answer.
import { describe, expect, it } from 'vitest';
import { offsetLoadsText, offsetSensorsText, piecesText } from '@loomwright/worked/card';
import { heatMatrix } from '@loomwright/worked/draw';
import { sensorGroundBudget } from 'loomwright';
import { expectInputError } from '../support/edge.js';

describe('lists', () => {
  it('pieces and loads, with a true minus', () => {
    expect(piecesText('f', 'p', 'strap: engine > post, 0.5 mΩ; old strap: a b > post, 2 ohm')).toEqual([
      { name: 'strap', from: 'engine', to: 'post', resistanceOhm: 0.0005 },
      { name: 'old strap', from: 'a b', to: 'post', resistanceOhm: 2 },
    ]);
    expect(offsetLoadsText('f', 'l', 'fan: nose, 22 A\nalternator: engine, \u221290A')).toEqual([
      { name: 'fan', returnsAt: 'nose', currentA: 22 },
      { name: 'alternator', returnsAt: 'engine', currentA: -90 },
    ]);
  });
  it('sensors: slope or points, and what they are judged by', () => {
    const [slope, points, bare] = offsetSensorsText(
      'f',
      's',
      'oil: engine > dash, body, ratiometric, 2 V, 2.5 bar/V, ground budget, 0.1 bar; air: nose > dash, wire, pull-up, 2.5 V, points 1=45 4.2=-15 °C, 1.5 °C; x: a > b, wire, absolute, 1 V, 20 mV',
    );
    expect(slope).toEqual({
      name: 'oil',
      groundAt: 'engine',
      controllerAt: 'dash',
      groundedBy: 'body',
      reads: 'ratiometric',
      inputV: 2,
      scale: { kind: 'slope', valuePerV: 2.5 },
      unit: 'bar',
      budget: sensorGroundBudget,
      permittedValue: 0.1,
    });
    expect(points!.scale).toEqual({
      kind: 'points',
      cells: [
        { inValue: 1, outValue: 45 },
        { inValue: 4.2, outValue: -15 },
      ],
    });
    expect(points).toMatchObject({ unit: '°C', permittedValue: 1.5 });
    expect(bare).toMatchObject({ permittedMv: 20 });
  });
  it('names what it cannot read', () => {
    expectInputError(() => piecesText('f', 'p', 'strap: engine, 0.5 mΩ'), 'p', 'text');
    expectInputError(() => offsetLoadsText('f', 'l', 'fan: nose, 22'), 'l', 'text');
    for (const bad of [
      'oil: engine > dash, ratiometric, 2 V',
      'oil: engine > dash, body, ratiometric, two, 10 mV',
      'oil: engine > dash, body, ratiometric, 2 V, 10 bar',
      'oil: engine > dash, body, ratiometric, 2 V, points 1=2 3 °C',
    ])
      expectInputError(() => offsetSensorsText('f', 's', bad), 's', 'text');
  });
});

describe('heatMatrix', () => {
  const columns = ['coolant temperature', 'oil', 'air', 'level', 'boost', 'height'].map((name) => ({
    name,
    unit: 'mV',
  }));
  const cells = ['fan', 'all'].map((_, r) =>
    columns.map((__, c) => ({ text: `${r}${c}`, shareFraction: c === 1 ? 2 : 0.5 })),
  );
  it.each([320, 680])('at %i px: a field a pair, too much marked in words and by a mark, all within', (width) => {
    const svg = heatMatrix({ title: 'Pairs', rows: ['fan', 'all'], lastApart: true, columns, cells, width });
    expect(svg.match(/<rect/g)).toHaveLength(12);
    expect(svg.match(/>✕ [01]1</g)).toHaveLength(2);
    expect(svg).toContain('oil 01 mV, too much');
    for (const [, x, w] of svg.matchAll(/<rect x="([-\d.]+)" y="[-\d.]+" width="([\d.]+)"/g))
      expect(Number(x) + Number(w)).toBeLessThanOrEqual(width);
    if (width === 680) expect(svg).toContain('>coolant<');
  });
});
