import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { connectorLoading, loadingFactor, type LoadingFactorInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectPrinted, transcribed } from '../support/published.js';

const GAUGES = ['28', '26', '24', '22', '20', '18'] as const;
const PRINT = [
  [1, ['.384', '.450', '.536', '.647', '.795', '1']],
  [26, ['.237', '.278', '.342', '.400', '.491', '.618']],
  [50, ['.164', '.193', '.229', '.277', '.341', '.428']],
  [76, ['.132', '.155', '.184', '.222', '.273', '.344']],
  [100, ['.114', '.134', '.159', '.192', '.236', '.297']],
] as const;
const plug: LoadingFactorInput = { table: connectorLoading, awg: '20', contactCount: 100, loadedCount: 50 };
const factor = (awg: string, loadedCount: number) => loadingFactor({ ...plug, awg, loadedCount }).factor;

describe('published', () => {
  const cite = { source: 'connector-loading-factors', place: 'table of loading factors', status: 'published' } as const;
  for (const [loaded, prints] of PRINT) {
    prints.forEach((print, i) => {
      const awg = GAUGES[i]!;
      // The cell that the trend of its column calls a misprint: we use less.
      if (awg === '24' && loaded === 26) {
        transcribed('24 AWG at 26 %, .342 as printed', cite, () => {
          expectPrinted(connectorLoading.rows[0]![3]!, print, 0);
          expectPrinted(factor(awg, loaded), '.331', 0);
        });
        return;
      }
      transcribed(`${awg} AWG, ${loaded === 1 ? 'alone' : `${loaded} %`}`, cite, () =>
        expectPrinted(factor(awg, loaded), print, 0),
      );
    });
  }
  // Each factor is that of the gauge alone times that of the share with 18 AWG: the table against itself.
  for (const [loaded, prints] of PRINT.slice(1)) {
    prints.slice(0, 5).forEach((print, i) => {
      const awg = GAUGES[i]!;
      if (awg === '24' && loaded === 26) return;
      computed(`${awg} AWG at ${loaded} % is the product of its two causes`, cite, () =>
        expectPrinted(factor(awg, 1) * factor('18', loaded), print, 1.5),
      );
    });
  }
});

describe('laws', () => {
  it('more neighbours or a thinner wire never raise it, and no pick rounds to the unsafe side', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }), (a, b) => {
        const contactCount = Math.max(a, b);
        const loadedCount = Math.min(a, b);
        for (const [i, awg] of GAUGES.entries()) {
          const of = (gauge: string, loaded: number) =>
            loadingFactor({ table: connectorLoading, awg: gauge, contactCount, loadedCount: loaded });
          const { factor: found, rowLoadedFraction } = of(awg, loadedCount);
          if (loadedCount < contactCount) expect(of(awg, loadedCount + 1).factor).toBeLessThanOrEqual(found);
          if (i > 0) expect(of(GAUGES[i - 1]!, loadedCount).factor).toBeLessThan(found);
          if (loadedCount > 1) expect(rowLoadedFraction!).toBeGreaterThanOrEqual(loadedCount / contactCount - 1e-9);
        }
      }),
    );
  });
  it('a gauge between two columns takes the thinner, and one above them the thickest', () => {
    expect(loadingFactor({ ...plug, awg: '19' }).columnAwg).toBe('20');
    expect(loadingFactor({ ...plug, awg: '27' }).columnAwg).toBe('28');
    expect(loadingFactor({ ...plug, awg: '12' }).columnAwg).toBe('18');
    expect(loadingFactor({ ...plug, awg: '1/0' }).columnAwg).toBe('18');
  });
});

describe('edges', () => {
  it('between two rows takes the fuller one', () => {
    expect(factor('18', 26)).toBe(0.618);
    expect(factor('18', 27)).toBe(0.428);
    expect(factor('18', 2)).toBe(0.618);
    expect(loadingFactor({ ...plug, contactCount: 1, loadedCount: 1 }).factor).toBe(0.795);
    expect(loadingFactor({ ...plug, contactCount: 2, loadedCount: 2 }).factor).toBe(0.236);
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(loadingFactor, plug, { required: ['contactCount', 'loadedCount'] });
    expectInputError(() => loadingFactor({ ...plug, table: undefined as never }), 'table', 'missing');
    expectInputError(() => loadingFactor({ ...plug, table: 3 as never }), 'table', 'object');
    expectInputError(() => loadingFactor({ ...plug, awg: '30' }), 'awg', 'inTable');
    expectInputError(() => loadingFactor({ ...plug, awg: undefined as never }), 'awg', 'missing');
    expectInputError(() => loadingFactor({ ...plug, loadedCount: 101 }), 'loadedCount', 'atMost');
    expectInputError(() => loadingFactor({ ...plug, loadedCount: 0 }), 'loadedCount', 'atLeast');
    expectInputError(() => loadingFactor({ ...plug, contactCount: 2.5 }), 'contactCount', 'integer');
  });
});
