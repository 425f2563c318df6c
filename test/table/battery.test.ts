import { describe, expect, it } from 'vitest';
import {
  batteryLoadTest,
  crankingBci,
  crankingBudgetGuideline,
  crankingBudgetParts,
  crankingBudgetSides,
  crankingDin43539,
  crankingEn50342,
  crankingIec60095,
  crankingSaeJ537,
  loadTest190A,
  loadTestToMinus12,
  loadTestToMinus18,
  type LoadTestTable,
  openCircuitVoltage,
  type RestVoltsTable,
  restVoltsTenSteps,
  restVoltsThumb,
  restVoltsTrade,
  restVoltsWithDensity,
  type SourceStatus,
  starterBudget,
} from 'loomwright';
import { expectPrinted, transcribed } from '../support/published.js';

describe('published', () => {
  const ratings = [
    [crankingSaeJ537, 'sae-j537', -18, 30, 7.2],
    [crankingEn50342, 'en-50342-1', -18, 10, 7.5],
    [crankingIec60095, 'iec-60095-1', -18, 60, 8.4],
    [crankingDin43539, 'din-43539-2', -18, 30, 9],
    [crankingBci, 'bci-cranking', 0, 30, 7.2],
  ] as const;
  for (const [rule, source, testTempC, testS, leastV] of ratings) {
    const cite = { source, place: 'test point', status: 'published' } as const;
    transcribed(`${rule.title}: ${testTempC} °C, ${testS} s, ${leastV} V`, cite, () =>
      expect(rule).toMatchObject({ source, testTempC, testS, leastV }),
    );
  }

  const lists: readonly (readonly [RestVoltsTable, SourceStatus, readonly (readonly [number, string])[]])[] = [
    [
      restVoltsTenSteps,
      'published',
      [
        [100, '12.7'],
        [90, '12.6'],
        [80, '12.5'],
        [70, '12.4'],
        [60, '12.3'],
        [50, '12.2'],
        [40, '12.1'],
        [30, '12.0'],
        [20, '11.9'],
        [10, '11.8'],
        [0, '11.7'],
      ],
    ],
    [
      restVoltsWithDensity,
      'published',
      [
        [100, '12.66'],
        [75, '12.45'],
        [50, '12.3'],
        [25, '12.15'],
      ],
    ],
    [
      restVoltsThumb,
      'common-practice',
      [
        [100, '12.6'],
        [75, '12.4'],
        [50, '12.2'],
        [25, '12.0'],
        [0, '11.6'],
      ],
    ],
    [
      restVoltsTrade,
      'memory',
      [
        [100, '12.65'],
        [75, '12.45'],
        [50, '12.24'],
        [25, '12.06'],
        [0, '11.89'],
      ],
    ],
  ];
  for (const [list, status, rows] of lists) {
    for (const [percent, print] of rows) {
      const cite = { source: 'battery-rest-lists', place: list.key, status } as const;
      transcribed(`${list.title}, ${percent} %: ${print} V`, cite, () =>
        expectPrinted(openCircuitVoltage({ list, chargeFraction: percent / 100 }).openV, print, 1e-6),
      );
    }
    it(`${list.key} has no other rows`, () => expect(list.rows.length).toBe(rows.length));
  }
  const densities = [
    [restVoltsWithDensity, 100, 1.26, 1.28],
    [restVoltsWithDensity, 75, 1.23, 1.25],
    [restVoltsWithDensity, 50, 1.2, 1.22],
    [restVoltsWithDensity, 25, 1.17, 1.19],
    [restVoltsTrade, 100, 1.265, 1.265],
    [restVoltsTrade, 75, 1.225, 1.225],
    [restVoltsTrade, 50, 1.19, 1.19],
    [restVoltsTrade, 25, 1.155, 1.155],
    [restVoltsTrade, 0, 1.12, 1.12],
  ] as const;
  for (const [list, percent, low, high] of densities) {
    const status = list === restVoltsTrade ? 'memory' : 'published';
    const cite = { source: 'battery-rest-lists', place: `${list.key}, density`, status } as const;
    transcribed(`${percent} %: relative density ${low} to ${high}`, cite, () =>
      expect(list.densities).toContainEqual([percent, low, high]),
    );
  }

  const tests: readonly (readonly [LoadTestTable, readonly (readonly [number, string])[]])[] = [
    [
      loadTestToMinus18,
      [
        [20, '9.6'],
        [16, '9.5'],
        [10, '9.4'],
        [4, '9.3'],
        [-1, '9.1'],
        [-7, '8.9'],
        [-12, '8.7'],
        [-18, '8.5'],
      ],
    ],
    [
      loadTestToMinus12,
      [
        [20, '9.6'],
        [18, '9.5'],
        [10, '9.4'],
        [4, '9.3'],
        [-1, '9.1'],
        [-7, '8.9'],
        [-12, '8.7'],
      ],
    ],
    [
      loadTest190A,
      [
        [21, '9.6'],
        [10, '9.4'],
        [0, '9.1'],
        [-10, '8.8'],
        [-18, '8.0'],
      ],
    ],
  ];
  for (const [rule, rows] of tests) {
    for (const [batteryTempC, print] of rows) {
      const cite = { source: 'battery-load-test', place: rule.key, status: 'common-practice' } as const;
      transcribed(`${rule.title}, ${batteryTempC} °C: ${print} V`, cite, () => {
        expectPrinted(batteryLoadTest({ rule, ratedA: 600, batteryTempC }).leastV, print, 0);
        expect(batteryLoadTest({ rule, ratedA: 600, batteryTempC }).rowTempC).toBe(batteryTempC);
      });
    }
    it(`${rule.key} has no other rows, and asks for 15 s`, () => {
      expect(rule.rows.length).toBe(rows.length);
      expect(rule.testS).toBe(15);
    });
  }

  const limits = { source: 'service-drop-limits', place: 'while cranking', status: 'published' } as const;
  transcribed('connection 0.1 V, cable 0.2 V, contact 0.3 V, above 1.0 V a fault', limits, () =>
    expect(crankingBudgetParts).toMatchObject({ connectionV: 0.1, cableV: 0.2, contactV: 0.3, totalV: 1 }),
  );
  transcribed('positive side 0.5 V, ground side 0.3 V, total 0.8 V', limits, () =>
    expect(crankingBudgetSides).toMatchObject({ positiveV: 0.5, negativeV: 0.3, totalV: 0.8 }),
  );
  transcribed('cable 0.20 V, switch 0.30 V, + 0.6 V, − 0.3 V', { ...limits, status: 'common-practice' }, () =>
    expect(crankingBudgetGuideline).toMatchObject({ cableV: 0.2, contactV: 0.3, positiveV: 0.6, negativeV: 0.3 }),
  );
});

describe('laws', () => {
  it('the sides of the tester set add up to its total, which the budget of a starter cable repeats', () => {
    const { positiveV, negativeV, totalV } = crankingBudgetSides;
    expect(positiveV! + negativeV!).toBeCloseTo(totalV!, 12);
    expect(starterBudget.dropV).toBe(totalV);
  });
  it('where two lists print the same charge they differ by at most 0.15 V down to a quarter, and by 0.29 V empty', () => {
    const all = [restVoltsTenSteps, restVoltsWithDensity, restVoltsThumb, restVoltsTrade];
    const spread = (percent: number): number => {
      const volts = all.flatMap(({ rows }) => rows.filter(([p]) => p === percent).map(([, v]) => v));
      return Math.max(...volts) - Math.min(...volts);
    };
    expect(spread(25)).toBeCloseTo(0.15, 9);
    for (const percent of [50, 75, 100]) expect(spread(percent)).toBeLessThanOrEqual(0.1 + 1e-9);
    expect(spread(0)).toBeCloseTo(0.29, 9);
  });
  it('every list falls, row by row', () => {
    for (const { rows } of [restVoltsTenSteps, restVoltsWithDensity, restVoltsThumb, restVoltsTrade]) {
      for (let i = 1; i < rows.length; i++) {
        expect(rows[i]![0]).toBeLessThan(rows[i - 1]![0]);
        expect(rows[i]![1]).toBeLessThan(rows[i - 1]![1]);
      }
    }
    for (const { rows } of [loadTestToMinus18, loadTestToMinus12, loadTest190A]) {
      for (let i = 1; i < rows.length; i++) {
        expect(rows[i]![0]).toBeLessThan(rows[i - 1]![0]);
        expect(rows[i]![1]).toBeLessThan(rows[i - 1]![1]);
      }
    }
  });
});
