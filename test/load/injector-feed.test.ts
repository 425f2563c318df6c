import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { injectorFeed, type InjectorFeedInput, type InjectorFeedResult } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const four: InjectorFeedInput = {
  supplyV: 14,
  driverDropV: 0.5,
  feedResistanceOhm: 0.05,
  injectorCount: 4,
  injectorResistanceOhm: 12,
  inductanceH: 0.012,
  onS: 0.008,
  engineRpm: 6000,
  firing: 'sequential',
  openingA: 0.6,
};
const solved = (input: InjectorFeedInput): InjectorFeedResult => {
  const result = injectorFeed(input);
  if (!result.possible) throw new Error(result.because);
  return result;
};

describe('published', () => {
  const service = { source: 'vehicle-service-data', place: 'injectors of high resistance', status: 'derived' } as const;
  for (const [volts, ohm, amps] of [
    [12, 12, '1.00'],
    [12, 16, '.75'],
    [13.8, 12, '1.15'],
  ] as const) {
    computed(`${volts} V on ${ohm} Ω: ${amps} A`, service, () =>
      expectPrinted(
        solved({
          ...four,
          supplyV: volts,
          driverDropV: 0,
          feedResistanceOhm: 0,
          injectorResistanceOhm: ohm,
          onS: 0.015,
          engineRpm: 600,
        }).injectorA,
        amps,
      ),
    );
  }
  const practice = {
    source: 'common-practice',
    place: 'L/R rise of about 1 ms; no inrush',
    status: 'common-practice',
  } as const;
  computed('rises with a time constant of about 1 ms', practice, () => {
    expectWithin(solved(four).timeConstantS, 0.001, 0.05);
    expect(solved(four).injectorA).toBeLessThanOrEqual(13.5 / 12);
  });
  const low = {
    source: 'vehicle-service-data',
    place: 'low resistance: peak 4 A, hold 1 A',
    status: 'published',
  } as const;
  computed('a peak and hold driver turns back at its peak and holds a quarter', low, () => {
    const held = solved({ ...four, injectorResistanceOhm: 2, inductanceH: 0.003, peakHold: { peakA: 4, holdA: 1 } });
    expect(held.injectorA).toBe(4);
    expect(held.peakTimeS!).toBeLessThan(0.0025);
    expect(held.meanA).toBeLessThan(1.8 * held.overlapCount);
    expect(held.meanA).toBeGreaterThan(held.overlapCount);
  });
});

describe('independent', { timeout: 60_000 }, () => {
  it.each([
    ['one after another', four],
    ['all together', { ...four, firing: 'together-each-turn' as const, onS: 0.006 }],
    ['long overlap behind a poor feed', { ...four, onS: 0.017, feedResistanceOhm: 0.8 }],
  ] as const)('agrees with a circuit simulator to 1 %%: %s', async (_, input) => {
    const ours = solved(input);
    const cycle = (input.firing === 'together-each-turn' ? 60 : 120) / input.engineRpm;
    const step = input.firing === 'sequential' ? cycle / input.injectorCount : 0;
    const lines = [`V1 s 0 ${input.supplyV}`, `R1 s f ${input.feedResistanceOhm}`, `Vd d 0 ${input.driverDropV}`];
    lines.push('Vk k 0 20000', '.model sw sw vt=0.5 vh=0.1 ron=1e-3 roff=1e8', '.model di d is=1e-12 n=0.05');
    for (let k = 0; k < input.injectorCount; k++) {
      lines.push(`Vc${k} c${k} 0 PULSE(0 1 ${k * step} 1e-7 1e-7 ${input.onS} ${cycle})`);
      lines.push(`L${k} f m${k} ${input.inductanceH} ic=0`, `Rl${k} m${k} n${k} ${input.injectorResistanceOhm}`);
      lines.push(`S${k} n${k} d c${k} 0 sw`, `D${k} n${k} k di`);
    }
    lines.push(
      '.options reltol=1e-4 method=gear',
      `.tran ${cycle / 2000} ${4 * cycle} ${2 * cycle} ${cycle / 2000} uic`,
    );
    const theirs = await simulate(lines.join('\n'));
    const t = theirs['time']!;
    const i = theirs['i(v1)']!.map((x) => -x);
    let charge = 0;
    let squares = 0;
    for (let k = 1; k < t.length; k++) {
      const dt = t[k]! - t[k - 1]!;
      charge += (dt * (i[k]! + i[k - 1]!)) / 2;
      squares += (dt * (i[k]! ** 2 + i[k - 1]! ** 2)) / 2;
    }
    const span = t.at(-1)! - t[0]!;
    expectWithin(ours.peakA, Math.max(...i), 0.01);
    expectWithin(ours.meanA, charge / span, 0.01);
    expectWithin(ours.rmsA, Math.sqrt(squares / span), 0.01);
  });

  it('agrees with the sum of shifted peak and hold pulses, taken point by point', () => {
    const input = {
      ...four,
      injectorResistanceOhm: 2,
      inductanceH: 0.003,
      onS: 0.012,
      feedResistanceOhm: 0,
      peakHold: { peakA: 4, holdA: 1 },
    };
    const ours = solved(input);
    const one = (age: number): number => {
      const rising = (13.5 / 2) * (1 - Math.exp((-age * 2) / 0.003));
      return age >= 0.012 ? 0 : age < ours.peakTimeS! ? rising : 1;
    };
    const n = 50000;
    let mean = 0;
    let square = 0;
    for (let j = 0; j < n; j++) {
      let sum = 0;
      for (let k = 0; k < 4; k++) sum += one(((j + 0.5) / n + k) * 0.005);
      mean += sum / n;
      square += (sum * sum) / n;
    }
    expectWithin(ours.meanA, mean, 1e-3);
    expectWithin(ours.rmsA, Math.sqrt(square), 1e-3);
  });
});

describe('laws', () => {
  it('less volts never open an injector sooner, and the three currents keep their order', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 9, max: 15, noNaN: true }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        evenlyWithEnds(0, 1),
        fc.double({ min: 0.001, max: 0.019, noNaN: true }),
        fc.constantFrom('sequential' as const, 'together-each-second-turn' as const),
        (supplyV, less, feedResistanceOhm, onS, firing) => {
          const a = solved({ ...four, supplyV, feedResistanceOhm, onS, firing, openingA: 0.3 });
          const b = solved({ ...four, supplyV: supplyV - less, feedResistanceOhm, onS, firing, openingA: 0.3 });
          if (a.openingDelayS !== null && b.openingDelayS !== null) {
            expect(b.openingDelayS).toBeGreaterThan(a.openingDelayS);
          }
          for (const x of [a, b]) {
            expect(x.meanA).toBeLessThanOrEqual(x.rmsA * (1 + 1e-12));
            expect(x.rmsA).toBeLessThanOrEqual(x.peakA * (1 + 1e-12));
          }
        },
      ),
    );
  });
  it('all together draw four times what one does behind four times the feed', () => {
    const all = solved({ ...four, firing: 'together-each-second-turn' });
    const one = solved({ ...four, injectorCount: 1, feedResistanceOhm: 0.2 });
    for (const key of ['peakA', 'rmsA', 'meanA'] as const) expectWithin(all[key], 4 * one[key], 1e-9);
    expectWithin(all.injectorA, one.injectorA, 1e-9);
  });
  it('two swapped inputs of one kind do not go unseen', () => swapsMatter(injectorFeed, four));
});

describe('edges', () => {
  it('says when an injector would never close', () => {
    expect(injectorFeed({ ...four, onS: 0.02 })).toMatchObject({
      possible: false,
      code: 'always-open',
      nearest: { onS: 0.02 },
    });
  });
  it('has no delay where the needle does not lift, and says so in a check', () => {
    const weak = solved({ ...four, supplyV: 7, openingA: 0.8 });
    expect(weak).toMatchObject({ openingDelayS: null, decidedBy: 'current that lifts the needle' });
    expect(weak.checks[0]!.ok).toBe(false);
    const { openingA: _, ...bare } = four;
    expect(solved(bare)).toMatchObject({ openingDelayS: null, checks: [], decidedBy: null });
  });
  it('does not turn back where the peak is not reached', () => {
    const weak = solved({ ...four, peakHold: { peakA: 4, holdA: 1 } });
    expect(weak.peakTimeS).toBeNull();
    expectWithin(weak.meanA, solved(four).meanA, 1e-9);
  });
  it('refuses nonsense with the field that is at fault', () => {
    const numbers = Object.keys(four).filter((key) => key !== 'firing' && key !== 'openingA');
    refusesNonsense(injectorFeed, four, { required: numbers as (keyof InjectorFeedInput)[], optional: ['openingA'] });
    expectInputError(() => injectorFeed({ ...four, firing: 'x' as 'sequential' }), 'firing', 'oneOf');
    expectInputError(() => injectorFeed({ ...four, peakHold: { peakA: 1, holdA: 2 } }), 'peakHold.holdA', 'atMost');
    expectInputError(() => injectorFeed({ ...four, injectorCount: 0 }), 'injectorCount', 'atLeast');
  });
});
