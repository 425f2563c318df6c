import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { coilCharge, type CoilChargeInput, type CoilChargeResult } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const six: CoilChargeInput = {
  supplyV: 14,
  driverDropV: 0.9,
  feedResistanceOhm: 0,
  coilCount: 6,
  coilResistanceOhm: 0.6,
  inductanceH: 0.003,
  engineRpm: 8400,
  firing: 'each-second-turn',
  wantedA: 7.5,
};
const solved = (input: CoilChargeInput): CoilChargeResult => {
  const result = coilCharge(input);
  if (!result.possible) throw new Error(result.because);
  return result;
};
const dwelling = (input: CoilChargeInput, dwellS: number): CoilChargeInput => {
  const { wantedA: _, ...rest } = input;
  return { ...rest, dwellS };
};

describe('published', () => {
  const cite = {
    source: 'circuit-theory',
    place: 'worked case: six coils of 3.0 mH and 0.60 Ω on one feed at 8400 rpm',
    status: 'derived',
  } as const;
  computed('420 events in a second', cite, () => expectPrinted(solved(six).sparksPerS, '420'));
  computed('2.381 ms apart', cite, () => expectPrinted(solved(six).spacingS * 1000, '2.381'));
  computed('84.4 mJ at 7.5 A', cite, () => expectPrinted(solved(six).energyJ * 1000, '84.4'));
  for (const [supplyV, dwell, overlap, mean, rms, peak] of [
    [14, '2.104', '0.884', '3.546', '4.285', '7.50'],
    [12, '2.599', '1.092', '4.447', '4.873', '8.29'],
    [10, '3.411', '1.433', '5.979', '6.354', '10.32'],
  ] as const) {
    const at = solved({ ...six, supplyV });
    computed(`${supplyV} V: dwell ${dwell} ms`, cite, () => expectPrinted(at.dwellS * 1000, dwell));
    computed(`${supplyV} V: overlap ${overlap}`, cite, () => expectPrinted(at.overlapCount, overlap));
    computed(`${supplyV} V: mean ${mean} A`, cite, () => expectPrinted(at.meanA, mean));
    computed(`${supplyV} V: r.m.s. ${rms} A`, cite, () => expectPrinted(at.rmsA, rms));
    computed(`${supplyV} V: peak in the feed ${peak} A`, cite, () => expectPrinted(at.peakA, peak));
  }
  const left = solved(dwelling({ ...six, supplyV: 10 }, 0.002104));
  computed('dwell left at 2.104 ms with 10 V: 5.21 A', cite, () => expectPrinted(left.coilPeakA, '5.21'));
  computed('dwell left at 2.104 ms with 10 V: 40.7 mJ', cite, () => expectPrinted(left.energyJ * 1000, '40.7'));
  const practice = {
    source: 'common-practice',
    place: 'coils charge to 6 to 10 A in 2 to 4 ms at 14 V; average 0.5 peak × dwell × frequency',
    status: 'common-practice',
  } as const;
  computed('charges within the usual time', practice, () => {
    const { dwellS, coilPeakA } = solved(six);
    expect(dwellS).toBeGreaterThan(0.002);
    expect(dwellS).toBeLessThan(0.004);
    expect(coilPeakA).toBeGreaterThan(6);
    expect(coilPeakA).toBeLessThan(10);
  });
  computed('has about half the peak times dwell times frequency as mean', practice, () => {
    const { meanA, dwellS, coilPeakA, sparksPerS } = solved(six);
    // A straight rise; the winding's resistance bends it upwards by a few per cent.
    expectWithin(meanA, 0.5 * coilPeakA * dwellS * sparksPerS, 0.1);
  });
});

describe('independent', { timeout: 60_000 }, () => {
  /** Coils with switches to a common driver voltage; what is left of a current goes into a clamp within microseconds. */
  const netlist = (x: CoilChargeInput, dwellS: number, cycles: number): string => {
    const spacing = 120 / x.engineRpm / x.coilCount;
    const cycle = spacing * x.coilCount;
    const lines = [`V1 s 0 ${x.supplyV}`, `R1 s f ${x.feedResistanceOhm}`, `Vd d 0 ${x.driverDropV}`, 'Vk k 0 20000'];
    lines.push('.model sw sw vt=0.5 vh=0.1 ron=1e-4 roff=1e7', '.model di d is=1e-12 n=0.05');
    for (let k = 0; k < x.coilCount; k++) {
      lines.push(`Vc${k} c${k} 0 PULSE(0 1 ${k * spacing} 1e-7 1e-7 ${dwellS} ${cycle})`);
      lines.push(`L${k} f m${k} ${x.inductanceH} ic=0`, `Rl${k} m${k} n${k} ${x.coilResistanceOhm}`);
      lines.push(`S${k} n${k} d c${k} 0 sw`, `D${k} n${k} k di`);
    }
    const end = cycles * cycle;
    lines.push(
      '.options reltol=1e-4 method=gear',
      `.tran ${cycle / 2000} ${end} ${end - 2 * cycle} ${cycle / 2000} uic`,
    );
    return lines.join('\n');
  };
  it.each([
    [
      'four coils behind 50 mΩ that overlap',
      { ...six, coilCount: 4, engineRpm: 9000, supplyV: 11, feedResistanceOhm: 0.05 },
      0.0042,
    ],
    ['three coils that do not', { ...six, coilCount: 3, engineRpm: 5000, feedResistanceOhm: 0.1 }, 0.002],
  ] as const)('agrees with a circuit simulator to 1 %%: %s', async (_, coils, dwellS) => {
    const ours = solved(dwelling(coils, dwellS));
    const theirs = await simulate(netlist(coils, dwellS, 5));
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
    const coil = Object.entries(theirs).find(([name]) => /l0/.test(name))?.[1];
    if (coil !== undefined) expectWithin(ours.coilPeakA, Math.max(...coil), 0.01);
  });

  it('agrees with the sum of shifted charging curves, taken point by point', () => {
    for (const dwellS of [0.0005, 0.0021, 0.0034, 0.0095]) {
      const ours = solved(dwelling(six, dwellS));
      const spacing = 2.380952380952381e-3;
      const one = (age: number): number => (age < dwellS ? (13.1 / 0.6) * (1 - Math.exp((-age * 0.6) / 0.003)) : 0);
      const n = 20000;
      let mean = 0;
      let square = 0;
      let top = 0;
      for (let j = 0; j < n; j++) {
        let sum = 0;
        for (let k = 0; k < 6; k++) sum += one(((j + 0.5) / n + k) * spacing);
        mean += sum / n;
        square += (sum * sum) / n;
        top = Math.max(top, sum);
      }
      expectWithin(ours.meanA, mean, 1e-4);
      expectWithin(ours.rmsA, Math.sqrt(square), 1e-4);
      expectWithin(ours.peakA, top, 1e-3);
    }
  });
});

describe('laws', () => {
  const coils = fc.record({
    supplyV: fc.double({ min: 9, max: 15, noNaN: true }),
    driverDropV: evenlyWithEnds(0, 2),
    feedResistanceOhm: fc.constantFrom(0, 0.02, 0.2),
    coilCount: fc.integer({ min: 1, max: 8 }),
    coilResistanceOhm: fc.double({ min: 0.3, max: 1, noNaN: true }),
    inductanceH: fc.double({ min: 0.001, max: 0.006, noNaN: true }),
    engineRpm: fc.double({ min: 300, max: 9000, noNaN: true }),
    firing: fc.constantFrom('each-second-turn' as const, 'each-turn' as const),
    wantedA: fc.double({ min: 2, max: 8, noNaN: true }),
  });
  it('reaches the wanted current, and less volts never need less dwell', () => {
    fc.assert(
      fc.property(coils, fc.double({ min: 0.01, max: 3, noNaN: true }), (input, less) => {
        const a = coilCharge(input);
        const b = coilCharge({ ...input, supplyV: input.supplyV - less });
        if (!a.possible) {
          expect(b.possible).toBe(false);
          return;
        }
        expectWithin(a.coilPeakA, input.wantedA, 1e-8);
        expect(a.peakA).toBeGreaterThanOrEqual(a.coilPeakA * (1 - 1e-9));
        expect(a.rmsA).toBeLessThanOrEqual(a.peakA);
        expect(a.meanA).toBeLessThanOrEqual(a.rmsA * (1 + 1e-12));
        if (b.possible) expect(b.dwellS).toBeGreaterThan(a.dwellS);
      }),
    );
  });
  it('a shared resistance of next to nothing is none', () => {
    const a = solved(six);
    const b = solved({ ...six, feedResistanceOhm: 1e-9 });
    for (const key of ['dwellS', 'meanA', 'rmsA', 'peakA'] as const) expectWithin(b[key], a[key], 1e-6);
  });
  it('a dwell that was found gives back the current that was wanted', () => {
    const { dwellS } = solved({ ...six, feedResistanceOhm: 0.05, supplyV: 11 });
    expectWithin(solved(dwelling({ ...six, feedResistanceOhm: 0.05, supplyV: 11 }, dwellS)).coilPeakA, 7.5, 1e-8);
  });
  it('two swapped inputs of one kind do not go unseen', () => swapsMatter(coilCharge, six));
});

describe('edges', () => {
  it('says when the volts do not suffice, and when the time does not', () => {
    expect(coilCharge({ ...six, supplyV: 5 })).toMatchObject({ possible: false, code: 'never-reached' });
    expectWithin(
      (coilCharge({ ...six, supplyV: 5 }) as { nearest: { currentA: number } }).nearest.currentA,
      4.1 / 0.6,
      1e-12,
    );
    expect(coilCharge({ ...six, engineRpm: 60000 })).toMatchObject({ possible: false, code: 'no-time' });
    expect(coilCharge({ ...six, engineRpm: 60000, feedResistanceOhm: 0.01 })).toMatchObject({ code: 'no-time' });
    expect(coilCharge(dwelling(six, 120 / 8400))).toMatchObject({ possible: false, code: 'no-time' });
  });
  it('judges energy and burning time where they are given', () => {
    const { checks, decidedBy } = solved({
      ...dwelling({ ...six, supplyV: 10 }, 0.002104),
      leastEnergyJ: 0.06,
      burnS: 0.002,
    });
    expect(checks.map(({ name, ok }) => [name, ok])).toEqual([
      ['energy of a spark', false],
      ['time for the spark to burn', true],
    ]);
    expect(decidedBy).toBe('energy of a spark');
    expect(solved(six).decidedBy).toBeNull();
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(coilCharge, six, {
      required: [
        'supplyV',
        'driverDropV',
        'feedResistanceOhm',
        'coilCount',
        'coilResistanceOhm',
        'inductanceH',
        'engineRpm',
        'wantedA',
      ],
      optional: ['leastEnergyJ', 'burnS'],
    });
    expectInputError(() => coilCharge({ ...six, dwellS: 0.002 }), 'wantedA', 'oneOfFields');
    expectInputError(() => coilCharge({ ...six, coilCount: 2.5 }), 'coilCount', 'integer');
    expectInputError(() => coilCharge({ ...six, coilCount: 25 }), 'coilCount', 'atMost');
    expectInputError(() => coilCharge({ ...six, driverDropV: 14.1 }), 'driverDropV', 'atMost');
    expectInputError(() => coilCharge({ ...six, firing: 'never' as 'each-turn' }), 'firing', 'oneOf');
  });
});
