import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { shortCircuitWithstand, type ShortCircuitMetal, type ShortCircuitWithstandInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const k = (startTempC: number, limitTempC: number, metal: ShortCircuitMetal = 'copper'): number =>
  shortCircuitWithstand({ startTempC, limitTempC, metal }).oneSecondAPerMm2;
const pvc = { startTempC: 70, limitTempC: 160 } as const;
const xlpe = { startTempC: 90, limitTempC: 250 } as const;

describe('published', () => {
  for (const [insulation, start, limit, copper, aluminium, status] of [
    ['PVC to 300 mm²', 70, 160, '115', '76', 'published'],
    ['PVC above 300 mm²', 70, 140, '103', '68', 'memory'],
    ['cross-linked', 90, 250, '143', '94', 'published'],
    ['rubber of 60 °C', 60, 200, '141', '93', 'memory'],
    ['rubber of 85 °C', 85, 220, '134', '89', 'memory'],
    ['PVC, separate protective conductor', 30, 160, '143', '95', 'memory'],
    ['cross-linked, separate protective conductor', 30, 250, '176', '116', 'memory'],
    ['rubber of 85 °C, separate protective conductor', 30, 220, '166', '110', 'memory'],
  ] as const) {
    const cite = { source: 'iec-60364-4-43', place: 'table 43A; IEC 60364-5-54 table A.54.2', status } as const;
    computed(`k of copper, ${insulation}`, cite, () => expectPrinted(k(start, limit), copper));
    // The table has 94 for 94.5 (cross-linked).
    computed(`k of aluminium, ${insulation}`, cite, () => expectPrinted(k(start, limit, 'aluminium'), aluminium, 0.51));
  }
  for (const [name, start, limit, copper, aluminium] of [
    ['PVC to 300 mm²', 70, 160, '115.0', '76.0'],
    ['PVC above 300 mm²', 70, 140, '102.8', '68.0'],
    ['cross-linked', 90, 250, '143.1', '94.5'],
    ['rubber of 60 °C', 60, 200, '140.9', '93.2'],
    ['rubber of 85 °C', 85, 220, '134.2', '88.6'],
    ['PVC, separate', 30, 160, '142.9', '94.5'],
    ['cross-linked, separate', 30, 250, '175.8', '116.2'],
    ['85 to 200 °C', 85, 200, '125.3', '82.8'],
    ['105 to 250 °C', 105, 250, '134.8', '89.0'],
  ] as const) {
    computed(
      `k to a tenth, ${name}`,
      { source: 'iec-60949', place: 'clause 3 worked out apart', status: 'derived' },
      () => {
        expectPrinted(k(start, limit), copper, 0.6);
        expectPrinted(k(start, limit, 'aluminium'), aluminium, 0.6);
      },
    );
  }
  computed(
    '12 000 A for 0.02 s, k 143: 11.9 mm²',
    { source: 'iec-60364-4-43', place: 'worked example in a secondary text', status: 'published' },
    () => expectPrinted(shortCircuitWithstand({ ...xlpe, currentA: 12000, durationS: 0.02 }).leastAreaMm2!, '11.9'),
  );
  for (const [name, input, print] of [
    ['2000 A for 0.02 s, cross-linked', { ...xlpe, currentA: 2000, durationS: 0.02 }, '1.98'],
    ['2000 A for 0.02 s, PVC', { ...pvc, currentA: 2000, durationS: 0.02 }, '2.46'],
    ['3000 A for 0.4 s, PVC', { ...pvc, currentA: 3000, durationS: 0.4 }, '16.50'],
    ['3200 A and a tenth for 0.1 s, PVC', { ...pvc, currentA: 3520, durationS: 0.1 }, '9.68'],
  ] as const) {
    computed(`${name}: least area`, { source: 'iec-60949', place: 'S = I √t / k', status: 'derived' }, () =>
      expectPrinted(shortCircuitWithstand(input).leastAreaMm2!, print),
    );
  }
  computed('1.5 mm² PVC for 1 s: 172.5 A', { source: 'iec-60949', place: 'I = k S', status: 'derived' }, () =>
    expectPrinted(shortCircuitWithstand({ ...pvc, areaMm2: 1.5, durationS: 1 }).mostCurrentA!, '172.5'),
  );
  for (const [areaMm2, print] of [
    [2.5, 82656],
    [0.5, 3306],
    [1.5, 29756],
  ] as const) {
    computed(
      `${areaMm2} mm² PVC bears ${print} A²s`,
      { source: 'iec-60949', place: '(115 S)²', status: 'derived' },
      () =>
        // The print takes k as 115; the unrounded one is 115.004.
        expectWithin(shortCircuitWithstand({ ...pvc, areaMm2 }).withstandI2tA2s!, print, 2e-4),
    );
  }
  // A 40 A blade fuse by its longest times: 600/50/5/0.5/0.15 s at 135/160/200/350/600 %.
  for (const [i2tA2s, area] of [
    [204800, '3.94'],
    [32000, '1.556'],
    [9800, '0.861'],
    [8640, '0.808'],
  ] as const) {
    computed(
      `let-through ${i2tA2s} A²s: least area`,
      { source: 'iso-8820-3', place: 'longest times of a 40 A blade fuse, k 115', status: 'derived' },
      () => expectPrinted(shortCircuitWithstand({ ...pvc, i2tA2s }).leastAreaMm2!, area, 0.6),
    );
  }
  for (const [areaMm2, percent, i2tA2s, ok] of [
    [0.5, 600, 8640, false],
    [1.5, 600, 8640, true],
    [1.5, 350, 9800, true],
    [1.5, 200, 32000, false],
  ] as const) {
    computed(
      `${areaMm2} mm² behind a 40 A blade fuse at ${percent} %`,
      { source: 'iso-8820-3', place: 'longest times, k 115', status: 'derived' },
      () => expect(shortCircuitWithstand({ ...pvc, areaMm2, i2tA2s }).withstands).toBe(ok),
    );
  }
  computed(
    'from 25 °C to melting: k 288.1',
    { source: 'iec-60949', place: 'K 226 from 25 to 1083 °C', status: 'derived' },
    () => expectPrinted(k(25, 1083), '288.1'),
  );
  computed(
    'from 40 °C to melting: k 283.0',
    { source: 'iec-60949', place: 'K 226 from 40 to 1083 °C', status: 'derived' },
    () => expectPrinted(k(40, 1083), '283.0', 0.6),
  );
});

describe('independent', () => {
  it('adds up the heat in small steps', () => {
    // dT = I² ρ(T)/(S² c) dt with K² = c (β + 20)/ρ20.
    const areaMm2 = 4;
    let tempC = 70;
    let i2t = 0;
    const step = 50;
    while (tempC < 160) {
      const half = tempC + (0.5 * step * (234.5 + tempC)) / (226 * areaMm2) ** 2;
      tempC += (step * (234.5 + half)) / (226 * areaMm2) ** 2;
      i2t += step;
    }
    expectWithin(shortCircuitWithstand({ ...pvc, areaMm2 }).withstandI2tA2s!, i2t, 1e-3);
  });
});

describe('laws', () => {
  const area = fc.double({ min: 0.1, max: 150, noNaN: true });
  const current = fc.double({ min: 10, max: 1e5, noNaN: true });
  it('what it says from one side it says from the other', () => {
    fc.assert(
      fc.property(area, current, (areaMm2, currentA) => {
        const { longestTimeS, withstandI2tA2s } = shortCircuitWithstand({ ...pvc, areaMm2, currentA });
        const back = shortCircuitWithstand({ ...pvc, currentA, durationS: longestTimeS! });
        expectWithin(back.leastAreaMm2!, areaMm2, 1e-12);
        const most = shortCircuitWithstand({ ...pvc, areaMm2, durationS: longestTimeS! });
        expectWithin(most.mostCurrentA!, currentA, 1e-12);
        const end = shortCircuitWithstand({ ...pvc, areaMm2, i2tA2s: withstandI2tA2s! });
        expectWithin(end.endTempC!, 160, 1e-9);
        expect(end.withstands).toBe(true);
      }),
    );
  });
  it('a larger area never bears less, a hotter start never more', () => {
    fc.assert(
      fc.property(area, fc.double({ min: 1, max: 2, noNaN: true }), (areaMm2, f) => {
        const here = shortCircuitWithstand({ ...pvc, areaMm2 }).withstandI2tA2s!;
        expect(shortCircuitWithstand({ ...pvc, areaMm2: areaMm2 * f }).withstandI2tA2s!).toBeGreaterThanOrEqual(here);
        expect(shortCircuitWithstand({ ...pvc, startTempC: 85, areaMm2 }).withstandI2tA2s!).toBeLessThan(here);
      }),
    );
  });
  it('swapped temperatures are refused', () =>
    swapsMatter(shortCircuitWithstand, { ...pvc, areaMm2: 4, currentA: 900 }));
});

describe('edges', () => {
  it('gives null for what was not asked', () => {
    expect(shortCircuitWithstand(pvc)).toMatchObject({
      withstandI2tA2s: null,
      leastAreaMm2: null,
      longestTimeS: null,
      mostCurrentA: null,
      endTempC: null,
      withstands: null,
    });
  });
  it('has no end temperature where the wire melts', () => {
    expect(shortCircuitWithstand({ ...pvc, areaMm2: 0.5, i2tA2s: 50000 })).toMatchObject({
      endTempC: null,
      withstands: false,
    });
  });
  it('refuses nonsense', () => {
    const input: ShortCircuitWithstandInput = { ...pvc, areaMm2: 4, currentA: 900, durationS: 0.1 };
    refusesNonsense(shortCircuitWithstand, input, {
      required: ['startTempC', 'limitTempC'],
      optional: ['areaMm2', 'currentA', 'durationS'],
    });
    refusesNonsense(shortCircuitWithstand, { ...pvc, i2tA2s: 900 }, { optional: ['i2tA2s'] });
    expectInputError(() => shortCircuitWithstand({ ...input, i2tA2s: 5 }), 'i2tA2s', 'oneOfFields');
    expectInputError(() => shortCircuitWithstand({ ...pvc, limitTempC: 70 }), 'limitTempC', 'order');
    expectInputError(() => shortCircuitWithstand({ ...pvc, metal: 'gold' as never }), 'metal', 'oneOf');
    expect(() => shortCircuitWithstand({ ...pvc, limitTempC: 700, metal: 'aluminium' })).toThrow(
      'shortCircuitWithstand: limitTempC must be at most 658, got 700: aluminium melts there',
    );
  });
});
