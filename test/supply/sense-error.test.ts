import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { senseError, type SenseErrorInput, type SensePart } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const cable: SensePart = {
  name: 'charge cable',
  side: 'positive',
  resistanceOhm: 0.004,
  currentA: 60,
  flow: 'charging',
};
const strap: SensePart = { ...cable, name: 'engine strap', side: 'negative', resistanceOhm: 0.001 };
const base: SenseErrorInput = {
  setV: 14.4,
  setTempC: 25,
  setVPerK: -0.01,
  regulatorTempC: 60,
  parts: [cable, strap],
  leastV: 13.9,
  mostV: 14.7,
  limitsTempC: 24,
  limitsVPerK: -0.02,
  batteryTempC: 30,
};
const lost = (resistanceOhm: number, currentA: number): number =>
  -senseError({ ...base, parts: [{ ...cable, resistanceOhm, currentA }] }).errorV;

describe('published', () => {
  const budget = {
    source: 'service-drop-limits',
    place: 'charging circuit, +0.5 and −0.2 V',
    status: 'common-practice',
  } as const;
  computed('both sides at their limit: 0.7 V', budget, () => {
    const parts = [
      { ...cable, resistanceOhm: 0.5 / 60 },
      { ...strap, resistanceOhm: 0.2 / 60 },
    ];
    expectPrinted(-senseError({ ...base, parts }).errorV, '0.7');
  });
  it('a slope drawn through 16 V at −17 °C and 13.5 V at 40 °C gives the second back', () => {
    const line = { ...base, setV: 16, setTempC: -17, setVPerK: (13.5 - 16) / 57, parts: [] };
    expectPrinted(senseError({ ...line, regulatorTempC: 40 }).heldV, '13.5');
  });
  const slope = { source: 'regulator-limits', place: 'about −10 mV/K of the whole battery', status: 'memory' } as const;
  computed('14.7 V at 25 °C is 13.8 V at 115 °C', slope, () => {
    expectPrinted(senseError({ ...base, setV: 14.7, regulatorTempC: 115, parts: [] }).heldV, '13.8');
  });
  const iec = { source: 'iec-60228', place: 'class 5 plain, table of maximum resistance', status: 'derived' } as const;
  computed('25 mm², 2 m, 200 A: 0.312 V', iec, () => expectPrinted(lost(0.78e-3 * 2, 200), '0.312'));
  computed('2.5 mm², 4 m, 15 A, 20 °C: 0.4788 V', iec, () => expectPrinted(lost(7.98e-3 * 4, 15), '0.4788'));
  computed('the same at 70 °C: 0.5729 V', iec, () => expectPrinted(lost(7.98e-3 * 4 * 1.19646, 15), '0.5729'));
  computed('0.5 mm², 10 m, 5 A: 1.950 V', iec, () => expectPrinted(lost(39e-3 * 10, 5), '1.950'));
  const body = { source: 'circuit-theory', place: 'strap of 25 mm² and 0.3 m, 0.207 mΩ', status: 'derived' } as const;
  computed('a strap at 100 A: 20.7 mV', body, () => {
    const parts = [{ ...strap, resistanceOhm: (0.017241 / 25) * 0.3, currentA: 100 }];
    expectPrinted(1000 * senseError({ ...base, parts }).negativeLossV, '20.7');
  });
});

describe('independent', () => {
  it('an alternator under a loop of regulation in a circuit simulator', async () => {
    // The alternator follows what makes the watched node equal the reference, through an amplifier of a million.
    const v = await simulate(
      [
        'vref ref 0 14.05',
        'e1 a 0 ref s 1e9',
        'r0 a s 2m',
        'r1 s n 3m',
        'i1 n 0 20',
        'r2 n p 4m',
        'ib p q 60',
        'r3 q 0 1m',
        '.op',
      ].join('\n'),
    );
    const parts: readonly SensePart[] = [
      { ...cable, name: 'to the box', resistanceOhm: 0.003, currentA: 80 },
      { ...cable, name: 'on to the battery', resistanceOhm: 0.004, currentA: 60 },
      strap,
    ];
    expectWithin(senseError({ ...base, parts }).batteryV, v['v(p)']![0]! - v['v(q)']![0]!, 1e-6);
  });
  it('a watched wire that also feeds lamps from the battery', async () => {
    // Battery at p; 10 A flow out of it over 30 mΩ to the watched node, so the battery stands above what is watched.
    const v = await simulate(['vref ref 0 14.05', 'e1 p 0 ref s 1e9', 'r1 p s 30m', 'i1 s 0 10', '.op'].join('\n'));
    const parts: readonly SensePart[] = [
      { name: 'ignition feed', side: 'positive', resistanceOhm: 0.03, currentA: 10, flow: 'discharging' },
    ];
    expectWithin(senseError({ ...base, parts }).batteryV, v['v(p)']![0]!, 1e-6);
  });
});

describe('laws', () => {
  it('the needed set-point puts the battery into the middle', () => {
    fc.assert(
      fc.property(evenlyWithEnds(0, 0.02), evenlyWithEnds(0, 200), (ohm, amps) => {
        const input = { ...base, parts: [{ ...cable, resistanceOhm: ohm, currentA: amps }, strap] };
        const { neededSetV, wantedV } = senseError(input);
        if (neededSetV <= 0) return;
        const mended = senseError({ ...input, setV: neededSetV });
        expect(mended.batteryV).toBeCloseTo(wantedV, 9);
        expect(mended.verdict).toBe('right');
      }),
    );
  });
  it('the two ways of flow are opposite; parts add up', () => {
    const out = senseError({ ...base, parts: [cable] });
    const back = senseError({ ...base, parts: [{ ...cable, flow: 'discharging' }] });
    expectWithin(out.errorV, -back.errorV, 1e-12);
    const both = senseError(base);
    expectWithin(both.errorV, -(both.positiveLossV + both.negativeLossV), 1e-12);
    expectWithin(both.offV, both.batteryV - both.wantedV, 1e-12);
  });
  it('watched at the posts it is off by the temperatures alone', () => {
    const found = senseError({ ...base, parts: [] });
    expect(found.errorV).toBe(0);
    expectWithin(found.temperatureErrorV, -0.3, 1e-12);
  });
  it('swapping two inputs of a kind is seen', () => swapsMatter(senseError, base));
});

describe('edges', () => {
  it('says what it is and what would cure it', () => {
    const bad = { ...cable, resistanceOhm: 0.01 };
    expect(senseError({ ...base, parts: [bad] })).toMatchObject({ verdict: 'undercharged', cure: 'sense-at-battery' });
    expect(senseError({ ...base, parts: [{ ...bad, flow: 'discharging', currentA: 100 }] })).toMatchObject({
      verdict: 'overcharged',
      cure: 'sense-at-battery',
    });
    expect(senseError({ ...base, setV: 15.5, parts: [] })).toMatchObject({ verdict: 'overcharged', cure: 'set-point' });
    expect(senseError({ ...base, parts: [] })).toMatchObject({ verdict: 'right', cure: 'none' });
  });
  it('exactly a limit is met', () => {
    const flat = { ...base, setVPerK: 0, limitsVPerK: 0, parts: [] };
    expect(senseError({ ...flat, setV: 13.9 }).verdict).toBe('right');
    expect(senseError({ ...flat, setV: 14.7 }).verdict).toBe('right');
    expect(senseError({ ...flat, setV: 14.700001 }).verdict).toBe('overcharged');
  });
  it('refuses nonsense', () => {
    refusesNonsense(senseError, base, {
      required: [
        ...(['setV', 'setTempC', 'setVPerK', 'regulatorTempC', 'leastV', 'mostV'] as const),
        ...(['limitsTempC', 'limitsVPerK', 'batteryTempC'] as const),
      ],
    });
    expectInputError(() => senseError({ ...base, mostV: 13.9 }), 'mostV', 'above');
    expectInputError(() => senseError({ ...base, setVPerK: -10 }), 'setVPerK', 'range');
    expectInputError(() => senseError({ ...base, parts: undefined as never }), 'parts', 'missing');
    const part =
      (change: object): (() => unknown) =>
      () =>
        senseError({ ...base, parts: [{ ...cable, ...change }] });
    expectInputError(part({ name: '' }), 'parts[0].name', 'text');
    expectInputError(part({ side: 'top' }), 'parts[0].side', 'oneOf');
    expectInputError(part({ flow: undefined }), 'parts[0].flow', 'missing');
    expectInputError(part({ resistanceOhm: -1 }), 'parts[0].resistanceOhm', 'atLeast');
    expectInputError(part({ currentA: NaN }), 'parts[0].currentA', 'finite');
    expect(() => senseError({ ...base, setVPerK: -10 })).toThrow(
      'senseError: setVPerK must be from -1 to 1, got -10: is this in mV? −10 mV/K is −0.01',
    );
  });
  it('never runs out of numbers', () => neverRunsOut(senseError, base));
});
