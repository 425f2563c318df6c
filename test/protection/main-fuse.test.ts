import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boltInFuseSf51, fuseOpeningTime, mainFuse, type MainFuseInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectWithin, type Citation } from '../support/published.js';

const base: MainFuseInput = {
  cable: 'charge',
  family: boltInFuseSf51,
  continuousA: 90,
  continuousFraction: 0.75,
  ambientTempC: 60,
  ambientFactor: 0.9,
  ampacityA: 280,
  overloadRule: 'iec-60364-4-43',
  farShortA: 1200,
  clearWithinS: 1,
  crankSteps: [],
  wire: { areaMm2: 50, ambientTempC: 60, maxConductorTempC: 125, overloadTempC: 150, shortTempC: 250 },
  prospectiveA: 1500,
  interruptA: 2000,
  unfusedLengthM: 0.15,
  sheathed: false,
};
const starter: MainFuseInput = {
  ...base,
  cable: 'starter',
  continuousA: 40,
  crankSteps: [
    { currentA: 600, durationS: 0.1 },
    { currentA: 180, durationS: 10 },
  ],
};

describe('published', () => {
  const code: Citation = { source: 'us-33-cfr-183', place: '183.455 (b): 7 in and 40 in', status: 'published' };
  const limitOf = (input: MainFuseInput): number => {
    const result = mainFuse(input);
    const checks = result.possible ? result.checks : result.nearest!.checks;
    return checks.find(({ name }) => name.startsWith('cable before the fuse'))?.limit as number;
  };
  computed('a bare stretch of at most 7 in', code, () => expect(limitOf(base)).toBeCloseTo(0.1778, 12));
  computed('a sheathed one of at most 40 in', code, () =>
    expect(limitOf({ ...base, sheathed: true })).toBeCloseTo(1.016, 12),
  );
  computed(
    'an alternator of 90 A at 0.9 asks for 133 A: 150 A',
    { source: 'fuse-selection-guides', place: '75 %', status: 'derived' },
    () => expect(mainFuse(base)).toMatchObject({ possible: true, ratingA: 150 }),
  );
  const crank: Citation = { source: 'iso-8820-5', place: '600 %: 0.1 s; 135 %: 120 s', status: 'memory' };
  const shareOf = (crankSteps: MainFuseInput['crankSteps']): number => {
    const result = mainFuse({ ...starter, ambientFactor: 1, continuousA: 75, crankSteps });
    return (result.possible ? result.crankShare : result.nearest!.crankShare) as number;
  };
  computed('600 A for 0.05 s is half of what a 100 A fuse is sure to outlast', crank, () =>
    expect(shareOf([{ currentA: 600, durationS: 0.05 }])).toBeCloseTo(0.5, 12),
  );
  computed('135 A for 12 s is a tenth', crank, () =>
    expect(shareOf([{ currentA: 135, durationS: 12 }])).toBeCloseTo(0.1, 12),
  );
  computed('both add up to 0.6', crank, () =>
    expect(
      shareOf([
        { currentA: 600, durationS: 0.05 },
        { currentA: 135, durationS: 12 },
      ]),
    ).toBeCloseTo(0.6, 12),
  );
});

describe('independent', () => {
  it('the cranking uses up the shortest opening as fuseOpeningTime gives it, the rating taken down by the heat', () => {
    const result = mainFuse(starter);
    if (!result.possible) throw new Error(result.because);
    let used = 0;
    for (const { currentA, durationS } of starter.crankSteps) {
      const { shortestS } = fuseOpeningTime({
        family: boltInFuseSf51,
        ratingA: result.ratingA,
        currentA: currentA / 0.9,
      });
      used += durationS / (shortestS as number);
    }
    expectWithin(result.crankShare as number, used, 1e-12);
  });
});

describe('laws', () => {
  it('longer cranking never leads to a smaller fuse, and no fuse is given that fails a check', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 50, max: 900, noNaN: true }),
        fc.double({ min: 0.05, max: 10, noNaN: true }),
        fc.double({ min: 1, max: 4, noNaN: true }),
        (currentA, durationS, k) => {
          const short = mainFuse({ ...starter, ampacityA: 400, crankSteps: [{ currentA, durationS }] });
          const long = mainFuse({ ...starter, ampacityA: 400, crankSteps: [{ currentA, durationS: durationS * k }] });
          if (short.possible) expect(short.checks.every(({ ok }) => ok)).toBe(true);
          if (short.possible && long.possible) expect(long.ratingA).toBeGreaterThanOrEqual(short.ratingA);
        },
      ),
    );
  });
});

describe('edges', () => {
  it('a starter cable that no fuse protects says what must then hold', () => {
    const heavy = [{ currentA: 900, durationS: 2 }];
    const result = mainFuse({ ...starter, crankSteps: heavy });
    expect(result).toMatchObject({ possible: false, code: 'unprotected' });
    expect(result.mustHold.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['isolator', 'no-chafe', 'inspected']),
    );
    expect(result.mustHold.some(({ source }) => source === 'us-33-cfr-183')).toBe(true);
    expect(result.possible ? '' : result.because).toContain('500 A');
    const beyond = mainFuse({ ...starter, crankSteps: [{ currentA: 4000, durationS: 0.01 }] });
    expect(beyond.possible ? 0 : beyond.nearest!.crankShare).toBeNull();
  });
  it('a charge cable is fused at the battery, and must not open under charge', () => {
    expect(mainFuse(base).mustHold.map(({ code }) => code)).toEqual([
      'short-and-guarded',
      'fuse-at-battery',
      'load-dump',
    ]);
    expect(mainFuse({ ...base, cable: 'feed' }).mustHold.map(({ code }) => code)).toEqual(['short-and-guarded']);
  });
  it('a stretch before the fuse that is too long is turned down', () => {
    const long = mainFuse({ ...base, unfusedLengthM: 0.18 });
    expect(long).toMatchObject({ possible: false });
    expect(mainFuse({ ...base, unfusedLengthM: 0.18, sheathed: true })).toMatchObject({ possible: true });
  });
  it('refuses nonsense', () => {
    refusesNonsense(mainFuse, base, {
      required: [
        'continuousA',
        'ambientTempC',
        'ampacityA',
        'farShortA',
        'clearWithinS',
        'prospectiveA',
        'unfusedLengthM',
      ],
    });
    expectInputError(() => mainFuse({ ...base, cable: 'rope' as never }), 'cable', 'oneOf');
    expectInputError(() => mainFuse({ ...starter, crankSteps: [] }), 'crankSteps', 'list');
    expectInputError(() => mainFuse({ ...base, sheathed: undefined as never }), 'sheathed', 'missing');
    expectInputError(() => mainFuse({ ...base, wire: undefined as never }), 'wire', 'missing');
    const { ambientFactor: _, ...rest } = base;
    expectInputError(() => mainFuse(rest), 'ambientFactor', 'missing');
    expectInputError(
      () => mainFuse({ ...base, crankSteps: [{ currentA: -1, durationS: 1 }] }),
      'crankSteps[0].currentA',
      'atLeast',
    );
  });
});
