import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  ac4313Ampacity,
  bladeFuse,
  chooseFuse,
  criticalFeedBudget,
  type FeedPart,
  geometric,
  heatingByTable,
  iec60228Class5,
  iso19642,
  type Protection,
  saeJ1128,
  sizeFeed,
  type SizeFeedInput,
  type SizeFeedResult,
  solveFeed,
  us33Cfr183Ampacity,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const sized = (input: SizeFeedInput): SizeFeedResult => {
  const result = sizeFeed(input);
  if (!result.possible) throw new Error(result.because);
  return result;
};

const METRIC = [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50];
const fuse: Protection = {
  kind: 'fuse',
  by: chooseFuse,
  family: bladeFuse,
  continuousFraction: 0.75,
  overloadRule: 'iec-60364-4-43',
  fuseTempC: 20,
  shortSupplyV: 12,
  sourceResistanceOhm: 0.01,
  clearWithinS: 0.5,
};

/** A feed without a fuse to choose, so that `solveFeed` takes its parts too. */
type PlainFeed = SizeFeedInput & { readonly outParts: readonly FeedPart[] };

/** W1: a pump, 15 A, fixed parts 18.4 mΩ. */
const pump: PlainFeed = {
  supplyV: 13.8,
  outParts: [
    { name: 'fuse', kind: 'fuse', resistanceOhm: 0.0034 },
    { name: 'relay', kind: 'relay', resistanceOhm: 0.005 },
    { name: 'terminals', kind: 'terminal', resistanceOhm: 0.006 },
    { name: 'wire out', lengthM: 5.5 },
  ],
  returnParts: [
    { name: 'terminal', kind: 'terminal', resistanceOhm: 0.002 },
    { name: 'wire back', lengthM: 1 },
    { name: 'body', kind: 'body', resistanceOhm: 0.002 },
  ],
  load: { kind: 'constant-current', currentA: 15 },
  resistanceBasis: geometric,
  stock: METRIC,
  limits: { wireDropV: 0.5 },
  judgedAtV: [9, 14.4],
  heating: { by: heatingByTable, table: us33Cfr183Ampacity, insulationTempC: 105, ambientTempC: 20 },
  conductorTempC: 20,
  leastAreaMm2: 0.5,
  protection: { kind: 'none', because: 'the case asks for the wire alone' },
};

/** W2: a steering pump, 80 A, 3.0 m in all, copper at 60 °C, at most 0.30 V in the wire. */
const steering: PlainFeed = {
  ...pump,
  outParts: [{ name: 'out', lengthM: 1.5 }],
  returnParts: [{ name: 'back', lengthM: 1.5 }],
  load: { kind: 'constant-current', currentA: 80 },
  limits: { wireDropV: 0.3 },
  conductorTempC: 60,
};

describe('published', () => {
  const derived = (place: string) => ({ source: 'nbs-hb-100', place, status: 'derived' }) as const;
  const w1 = derived('worked case of a pump feed');
  computed('wire alone within 0.5 V: the area needed', w1, () => {
    const { wireDropV, areaMm2 } = sized(pump);
    expectPrinted((areaMm2 * wireDropV) / 0.5, '3.36');
  });
  computed('wire alone within 0.5 V: 4 mm²', w1, () => expect(sized(pump).size).toBe('4 mm²'));
  const total = sized({ ...pump, limits: { dropV: 0.5 } });
  computed('fixed parts take 0.276 V', w1, () => expectPrinted(total.fixedDropV, '0.276'));
  computed('all within 0.5 V: the area needed', w1, () =>
    expectPrinted((total.areaMm2 * total.wireDropV) / (0.5 - total.fixedDropV), '7.50'),
  );
  computed('all within 0.5 V: 10 mm²', w1, () => expect(total.size).toBe('10 mm²'));

  const w2 = derived('worked case of an 80 A steering pump');
  const g = sized(steering);
  computed('steering pump by geometry: 16 mm²', w2, () => expect(g.size).toBe('16 mm²'));
  computed('its drop', w2, () => expectPrinted(g.wireDropV, '0.299'));
  computed('the area needed', w2, () => expectPrinted((g.areaMm2 * g.wireDropV) / 0.3, '15.96'));
  const drop = (areaMm2: number, resistanceBasis: typeof geometric | typeof iso19642): number => {
    const result = solveFeed({ ...steering, areaMm2, resistanceBasis, conductorTempC: 60 });
    return result.possible ? result.dropV : NaN;
  };
  computed('10 mm² by geometry', w2, () => expectPrinted(drop(10, geometric), '0.479'));
  computed('25 mm² by geometry', w2, () => expectPrinted(drop(25, geometric), '0.192'));
  computed('16 mm² by IEC 60228 class 5', { source: 'iec-60228', place: '1.21 Ω/km', status: 'published' }, () =>
    expectPrinted(drop(16, iec60228Class5), '0.336'),
  );
  const iso = (place: string) => ({ source: 'iso-19642', place, status: 'memory' }) as const;
  for (const [area, print] of [
    [10, '0.5055'],
    [16, '0.3222'],
    [20, '0.2652'],
    [25, '0.2064'],
  ] as const) {
    // 25 mm² stands at 0.20635, a half: the case rounds it up.
    computed(`${area} mm² by ISO 6722`, iso('maximum resistance'), () =>
      expectPrinted(drop(area, iso19642), print, 0.6),
    );
  }
  computed('by ISO 6722 the answer is 25 mm² where 20 is not stocked', iso('maximum resistance'), () =>
    expect(sized({ ...steering, resistanceBasis: iso19642 }).size).toBe('25 mm²'),
  );
  computed('and 20 mm² where it is', iso('maximum resistance'), () =>
    expect(sized({ ...steering, resistanceBasis: iso19642, stock: [...METRIC, 20] }).size).toBe('20 mm²'),
  );
  computed('by IEC 60228 class 5 it is 25 mm²', { source: 'iec-60228', place: 'class 5', status: 'published' }, () =>
    expect(sized({ ...steering, resistanceBasis: iec60228Class5 }).size).toBe('25 mm²'),
  );
  computed('relay and four joints add 0.464 V and take more than the wire', w2, () => {
    const result = sized({
      ...steering,
      outParts: [
        { name: 'relay', kind: 'relay', resistanceOhm: 0.005 },
        { name: 'joints', kind: 'terminal', resistanceOhm: 0.0008 },
        ...steering.outParts,
      ],
    });
    expectPrinted(result.fixedDropV, '0.464');
    expect(result.remarks.map((remark) => remark.code)).toContain('fixed-parts-take-more');
  });
});

describe('independent', () => {
  it('is what a walk over the stock with solveFeed gives, for volts alone', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 0.2, max: 12, noNaN: true }),
        fc.double({ min: 0.05, max: 1.5, noNaN: true }),
        (currentA, lengthM, dropV) => {
          const input: PlainFeed = {
            ...pump,
            outParts: [{ name: 'out', lengthM }],
            returnParts: [],
            load: { kind: 'constant-current', currentA },
            limits: { dropV },
            heating: { ...pump.heating, insulationTempC: 200, ambientTempC: -60 },
            resistanceBasis: iso19642,
            leastAreaMm2: 0,
          };
          const result = sizeFeed(input);
          const walk = METRIC.find((areaMm2) => {
            const at = solveFeed({ ...input, areaMm2, conductorTempC: 20 });
            return at.possible && at.dropV <= dropV;
          });
          // The table of currents ends at 18 AWG below and may refuse a current: then the size found is larger.
          if (result.possible && walk !== undefined) expect(result.areaMm2).toBeGreaterThanOrEqual(walk);
          if (walk === undefined) expect(result.possible).toBe(false);
        },
      ),
    );
  });
});

describe('laws', () => {
  const tables = [iso19642, iec60228Class5, saeJ1128] as const;
  it('never rounds to the unsafe side: the answer meets every limit and the size below does not', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...tables),
        fc.double({ min: 0.2, max: 100, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.constantFrom(fuse, pump.protection),
        fc.constantFrom(20, 50, 85),
        (resistanceBasis, currentA, lengthM, protection, ambientTempC) => {
          const { stock: _, conductorTempC: __, ...rest } = pump;
          const result = sizeFeed({
            ...rest,
            outParts: [{ name: 'out', lengthM }],
            resistanceBasis,
            load: { kind: 'constant-current', currentA },
            limits: { budget: criticalFeedBudget },
            heating: { ...pump.heating, ambientTempC },
            protection,
          });
          if (!result.possible) return;
          expect(result.checks.every((check) => check.ok && (check.marginFraction ?? 0) >= 0)).toBe(true);
          if (result.below !== null) {
            expect(result.below.ok).toBe(false);
            expect(result.below.checks.some((check) => check.name === result.decidedBy && !check.ok)).toBe(true);
          }
          expect(result.reachedTempC).toBeLessThanOrEqual(105);
        },
      ),
      { numRuns: 300 },
    );
  });
  it('never asks for less wire when the run is longer, the current larger or the air hotter', () => {
    const area = (lengthM: number, currentA: number, ambientTempC: number): number => {
      const { conductorTempC: _, ...rest } = pump;
      const result = sizeFeed({
        ...rest,
        outParts: [{ name: 'out', lengthM }],
        load: { kind: 'constant-current', currentA },
        limits: { dropV: 0.5 },
        heating: { ...pump.heating, ambientTempC },
      });
      return result.possible ? result.areaMm2 : Infinity;
    };
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 8, noNaN: true }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        fc.integer({ min: -20, max: 90 }),
        (lengthM, currentA, ambient) => {
          const base = area(lengthM, currentA, ambient);
          expect(area(lengthM * 1.3, currentA, ambient)).toBeGreaterThanOrEqual(base);
          expect(area(lengthM, currentA * 1.3, ambient)).toBeGreaterThanOrEqual(base);
          expect(area(lengthM, currentA, ambient + 10)).toBeGreaterThanOrEqual(base);
        },
      ),
    );
  });
  it('settles temperature and current for a load whose current depends on them', () => {
    const { conductorTempC: _, ...rest } = pump;
    const result = sized({ ...rest, load: { kind: 'constant-power', powerW: 150 }, limits: { dropV: 0.6 } });
    const again = solveFeed({
      ...rest,
      areaMm2: result.areaMm2,
      conductorTempC: result.conductorTempC,
      load: { kind: 'constant-power', powerW: 150 },
    });
    expectWithin(again.possible ? again.currentA : NaN, result.solved.currentA, 1e-12);
    const share = result.solved.currentA / result.ampacityA;
    expectWithin(result.conductorTempC, 20 + 85 * share * share, 1e-9);
  });
});

describe('edges', () => {
  it('says that no wire can help where the fixed parts take all', () => {
    const result = sizeFeed({ ...pump, limits: { dropV: 0.27 } });
    expect(result).toMatchObject({ possible: false, code: 'fixed-parts-take-all', nearest: { size: '50 mm²' } });
  });
  it('says which limits the largest size still fails', () => {
    const result = sizeFeed({ ...pump, stock: [1, 1.5] });
    expect(result).toMatchObject({ possible: false, code: 'no-size-in-stock', nearest: { size: '1.5 mm²' } });
    expect((result as { because: string }).because).toContain('voltage lost in the wire');
  });
  it('judges a constant power at the lowest supply', () => {
    const result = sized({
      ...pump,
      load: { kind: 'constant-power', powerW: 150 },
      limits: { dropV: 0.7 },
      stock: METRIC,
    });
    expect(result.decidedBy).toBe('voltage lost out and back at 9 V');
    expect(result.at.map((state) => state.supplyV)).toEqual([13.8, 9, 14.4]);
  });
  it('refuses a wire that the table of currents does not reach down to', () => {
    const result = sizeFeed({ ...pump, stock: [0.5], limits: { dropV: 5 } });
    expect(result.possible).toBe(false);
    const checks = result.possible ? [] : (result.nearest?.checks ?? []);
    const check = checks.find((c) => c.name === 'conductor temperature');
    expect(check).toMatchObject({
      ok: false,
      value: null,
      because: 'us-33-cfr-183-425 does not reach down to 0.5 mm²',
    });
  });
  it('gives a fuse that protects the wire, and says so when an unfused wire is asked for', () => {
    const result = sized({ ...pump, protection: fuse });
    expect(result.fuse?.ratingA).toBe(20);
    expect(result.fuse?.checks.every((check) => check.ok)).toBe(true);
    expect(sized(pump).remarks.map((remark) => remark.code)).toContain('unprotected');
    expect(result.remarks.map((remark) => remark.code)).toContain('rests-on-memory');
  });
  it('holds the wire against the longest time of the fuse where its limits are given', () => {
    // Two metres at 3 A: volts ask for little, and a 0.75 mm² wire carries it. What a blade fuse lets through does not
    // fit the thinnest wires: the size may only rise.
    const short: SizeFeedInput = {
      ...pump,
      outParts: [{ name: 'out', lengthM: 2 }],
      returnParts: [],
      load: { kind: 'constant-current', currentA: 12 },
      limits: { dropV: 2 },
      leastAreaMm2: 0,
    };
    const without = sized({ ...short, protection: fuse });
    const within = sized({ ...short, protection: { ...fuse, wireLimits: { overloadTempC: 105, shortTempC: 160 } } });
    expect(within.areaMm2).toBeGreaterThanOrEqual(without.areaMm2);
    const names = (result: SizeFeedResult): string[] => result.fuse?.checks.map(({ name }) => name) ?? [];
    expect(names(within).length).toBeGreaterThan(names(without).length);
    expect(within.checks.every(({ ok }) => ok)).toBe(true);
  });
  it('holds the wire against a device upstream', () => {
    const result = sized({ ...pump, protection: { kind: 'upstream', name: 'the 40 A main fuse', mayCarryA: 54 } });
    expect(result.ampacityA).toBeGreaterThanOrEqual(54);
    expect(result.decidedBy).toBe('what the 40 A main fuse may carry for good');
  });
  it('warns when ideal copper decided and a real wire may not hold', () => {
    const remark = sized(steering).remarks.find(({ code }) => code === 'geometric-is-ideal');
    expect(remark?.text).toContain('too small');
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(sizeFeed, pump, { required: ['supplyV', 'leastAreaMm2'], optional: ['conductorTempC'] });
    expectInputError(() => sizeFeed({ ...pump, limits: {} }), 'limits', 'missing');
    expectInputError(() => sizeFeed({ ...pump, limits: { dropV: -1 } }), 'limits.dropV', 'above');
    expectInputError(() => sizeFeed({ ...pump, stock: [] }), 'stock', 'list');
    expectInputError(() => sizeFeed({ ...pump, stock: undefined as never }), 'stock', 'missing');
    expectInputError(() => sizeFeed({ ...pump, judgedAtV: [0] }), 'judgedAtV[0]', 'above');
    expectInputError(() => sizeFeed({ ...pump, protection: undefined as never }), 'protection', 'missing');
    expectInputError(
      () => sizeFeed({ ...pump, protection: { kind: 'none', because: '' } }),
      'protection.because',
      'text',
    );
    expectInputError(() => sizeFeed({ ...pump, heating: undefined as never }), 'heating', 'missing');
    expectInputError(() => sizeFeed({ ...pump, outParts: [], returnParts: [] }), 'outParts', 'missing');
    expectInputError(
      () => sizeFeed({ ...pump, protection: { ...fuse, continuousFraction: 1.1 } }),
      'continuousFraction',
      'atMost',
    );
    expectInputError(
      () => sizeFeed({ ...pump, heating: { ...pump.heating, table: ac4313Ampacity, insulationTempC: 90 } }),
      'insulationTempC',
      'inTable',
    );
  });
});
