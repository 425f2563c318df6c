import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { type DumpPulse, loadDump, loadDump12V, loadDump24V, type LoadDumpInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { type Citation, computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const alternator: Extract<DumpPulse, { readonly kind: 'alternator' }> = {
  kind: 'alternator',
  table: loadDump12V,
  ratedA: 100,
  rotorRpm: 6000,
  suppression: 'none',
  durationS: 0.2,
};
const given: Extract<DumpPulse, { readonly kind: 'given' }> = {
  kind: 'given',
  supplyV: 13.5,
  openPeakV: 90,
  sourceOhm: 2,
  durationS: 0.3,
};
const suppressor = { clampV: 28, dynamicOhm: 0.05, mostA: 60, mostJ: 200 };
const base: LoadDumpInput = {
  pulse: alternator,
  loads: [{ name: 'controller', resistanceOhm: null, standsV: 60 }],
  suppressor: null,
  standingV: 24,
};
const of = (change: Partial<typeof alternator>): ReturnType<typeof loadDump> =>
  loadDump({ ...base, pulse: { ...alternator, ...change } });

describe('published', () => {
  const rule: Citation = { source: 'iso-16750-2', place: 'resistance behind a load dump', status: 'derived' };
  computed('14 V, 100 A at 6000 rpm: 0.875 Ω', rule, () => expectPrinted(of({}).sourceOhm, '0.875'));
  computed('at 12 000 rpm twice that: 1.75 Ω', rule, () => expectPrinted(of({ rotorRpm: 12_000 }).sourceOhm, '1.75'));
  computed('28 V, 100 A at 6000 rpm: 1.75 Ω', rule, () => expectPrinted(of({ table: loadDump24V }).sourceOhm, '1.75'));
  const range: Citation = {
    source: 'iso-16750-2',
    place: 'test A; low volts with low resistance',
    status: 'published',
  };
  // By the rule 0.5 and 4 Ω are 100 A at 3429 and at 27 429 rpm; 1 and 8 Ω likewise at 28 V.
  computed('12 V at 0.5 Ω: 79 V', range, () => expectPrinted(of({ rotorRpm: 24_000 / 7 }).openPeakV, '79'));
  computed('12 V at 4 Ω: 101 V', range, () => expectPrinted(of({ rotorRpm: 192_000 / 7 }).openPeakV, '101'));
  computed('24 V at 1 Ω: 151 V', range, () =>
    expectPrinted(of({ table: loadDump24V, rotorRpm: 24_000 / 7 }).openPeakV, '151'),
  );
  computed('24 V at 8 Ω: 202 V', range, () =>
    expectPrinted(of({ table: loadDump24V, rotorRpm: 192_000 / 7 }).openPeakV, '202'),
  );
  it('suppressed in the alternator the table’s volts of test B hold: 35 and 58 V', () => {
    expectPrinted(of({ suppression: 'central' }).peakV, '35');
    expectPrinted(of({ suppression: 'central', table: loadDump24V }).peakV, '58');
  });
  // The older standard prints the pulse above the supply: 65 to 87 V and 123 to 174 V.
  const above: Citation = { source: 'iso-7637-1', place: 'pulse 5, volts above the supply', status: 'published' };
  for (const [table, rpm, print] of [
    [loadDump12V, 24_000 / 7, '65'],
    [loadDump12V, 192_000 / 7, '87'],
    [loadDump24V, 24_000 / 7, '123'],
    [loadDump24V, 192_000 / 7, '174'],
  ] as const) {
    computed(`${print} V above the supply`, above, () =>
      expectPrinted(of({ table, rotorRpm: rpm }).openPeakV - table.supplyV, print),
    );
  }
  // Levels I to IV behind 2 Ω, on 13.5 V: with a load of 2 Ω half of the peak is left.
  const levels: Citation = { source: 'iso-7637-1', place: 'pulse 5, levels I to IV, 2 Ω, 400 ms', status: 'published' };
  for (const [level, print] of [
    [26.5, '20.0'],
    [46.5, '30.0'],
    [66.5, '40.0'],
    [86.5, '50.0'],
  ] as const) {
    computed(`${level} V: half of it and of the supply at 2 Ω, ${print} V`, { ...levels, status: 'derived' }, () => {
      const pulse = { ...given, openPeakV: 13.5 + level, durationS: 0.4 };
      const loads = [{ name: 'lamps', resistanceOhm: 2, standsV: 60 }];
      expectPrinted(loadDump({ ...base, pulse, loads }).peakV, print);
    });
  }
  const note: Citation = { source: 'suppressor-energy', place: '1.4 · 15 V · 100 A · 1 ms', status: 'published' };
  computed('an exponential current, half gone after 1 ms: 2.1 J', note, () => {
    // Half of it is gone after log10(2) of the time to a tenth. The factor 1.4 is printed with two digits.
    const pulse = { ...given, supplyV: 15 - 1e-9, openPeakV: 115, sourceOhm: 1, durationS: 1e-3 / Math.log10(2) };
    const found = loadDump({ ...base, pulse, loads: [], suppressor: { ...suppressor, clampV: 15, dynamicOhm: 0 } });
    expectPrinted(found.suppressorA!, '100');
    expectPrinted(found.suppressorJ!, '2.1', 1);
  });
});

describe('independent', () => {
  it.each([
    [null, 0.05],
    [3, 0.05],
    [3, 0],
    [1.2, 0.2],
  ])(
    'loads of %s Ω, a suppressor of %s Ω: the energy, step by step in a circuit simulator',
    async (ohm, dynamicOhm) => {
      const found = loadDump({
        ...base,
        pulse: given,
        loads: [{ name: 'all', resistanceOhm: ohm, standsV: 60 }],
        suppressor: { ...suppressor, dynamicOhm },
      });
      const v = await simulate(
        [
          'b1 u 0 v=13.5+76.5*exp(-2.302585092994046*time/0.3)',
          'r1 u n 2',
          `rl n 0 ${ohm ?? 1e12}`,
          `bs n x i=max(v(n)-28,0)/${dynamicOhm === 0 ? 1e-6 : dynamicOhm}`,
          'vs x 0 0',
          'be 0 e i=v(n)*i(vs)\nce e 0 1 ic=0\nre e 0 1e12',
          '.tran 0.0005 0.4 0 0.0005 uic',
        ].join('\n'),
      );
      expectWithin(found.suppressorJ!, v['v(e)']!.at(-1)!, 2e-3);
      expectWithin(found.suppressorA!, Math.max(...v['i(vs)']!), 3e-3);
      expectWithin(found.clampedV, Math.max(...v['v(n)']!), 3e-3);
      const time = v['time']!;
      const last = v['i(vs)']!.findLastIndex((amps) => amps > 1e-6);
      expect(Math.abs(found.conductsS! - time[last]!)).toBeLessThan(1e-3);
    },
  );
  it('the energy, by Simpson’s rule', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 16, max: 60, noNaN: true }),
        evenlyWithEnds(0, 1),
        fc.double({ min: 0.3, max: 20, noNaN: true }),
        (clampV, dynamicOhm, ohm) => {
          const found = loadDump({
            ...base,
            pulse: given,
            loads: [{ name: 'all', resistanceOhm: ohm, standsV: 60 }],
            suppressor: { ...suppressor, clampV, dynamicOhm },
          });
          const share = ohm / (ohm + 2);
          const amps = (t: number): number =>
            Math.max((13.5 + 76.5 * 10 ** (-t / 0.3)) * share - clampV, 0) / (2 * share + dynamicOhm);
          const until = found.conductsS!;
          const n = 400;
          const watts = (t: number): number => amps(t) * (clampV + dynamicOhm * amps(t));
          let sum = 0;
          for (let i = 0; i <= n; i++) sum += (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) * watts((until * i) / n);
          expect(found.suppressorJ!).toBeCloseTo((sum * until) / n / 3, 6);
        },
      ),
    );
  });
});

describe('laws', () => {
  it('more load left on, or a lower clamp, never raises the peak', () => {
    const peak = (resistanceOhm: number | null, clampV: number | null): number =>
      loadDump({
        ...base,
        loads: [{ name: 'all', resistanceOhm, standsV: 60 }],
        suppressor: clampV === null ? null : { ...suppressor, clampV },
      }).clampedV;
    const falling = [peak(null, null), peak(10, null), peak(1, null), peak(1, 36), peak(1, 28)];
    expect([...falling].sort((a, b) => b - a)).toEqual(falling);
    expect(falling[0]).toBeGreaterThan(2 * falling[4]!);
  });
  it('loads side by side do as one of their resistance', () => {
    const two = [4, 4].map((resistanceOhm, i) => ({ name: `lamp ${i}`, resistanceOhm, standsV: 60 }));
    expect(loadDump({ ...base, loads: two }).loadsOhm).toBeCloseTo(2, 12);
    expect(loadDump({ ...base, loads: two }).peakV).toBeCloseTo(
      loadDump({ ...base, loads: [{ name: 'one', resistanceOhm: 2, standsV: 60 }] }).peakV,
      12,
    );
  });
  it('energy grows with the length of the pulse, current does not', () => {
    const at = (durationS: number): ReturnType<typeof loadDump> =>
      loadDump({ ...base, pulse: { ...alternator, durationS }, suppressor });
    expectWithin(at(0.4).suppressorJ!, 2 * at(0.2).suppressorJ!, 1e-12);
    expect(at(0.4).suppressorA).toBe(at(0.2).suppressorA);
  });
  it('swapping two inputs of a kind is seen', () => {
    swapsMatter((pulse: typeof given) => loadDump({ ...base, pulse, suppressor }), given);
    swapsMatter((part: typeof suppressor) => loadDump({ ...base, suppressor: part }), suppressor);
  });
});

describe('edges', () => {
  it('nothing on and no suppressor: the whole peak at what is left', () => {
    const found = loadDump(base);
    expect(found).toMatchObject({ loadsOhm: null, suppressorA: null, suppressorJ: null, conductsS: null });
    expect(found.peakV).toBe(found.openPeakV);
    expect(found.clampedV).toBe(found.openPeakV);
    expect(found.decidedBy).toBe('volts at controller');
    expect(found.checks[0]!.ok).toBe(false);
  });
  it('loads that pull the peak below the supply leave the supply', () => {
    const loads = [{ name: 'winch', resistanceOhm: 0.05, standsV: 20 }];
    expect(loadDump({ ...base, loads }).peakV).toBe(14);
  });
  it('a suppressor above the peak, or above that of the alternator, takes nothing', () => {
    const high = loadDump({ ...base, suppressor: { ...suppressor, clampV: 120 } });
    expect(high).toMatchObject({ suppressorA: 0, suppressorJ: 0, conductsS: 0 });
    expect(high.clampedV).toBe(high.peakV);
    const central = { ...alternator, suppression: 'central' as const };
    const above = loadDump({ ...base, pulse: central, suppressor: { ...suppressor, clampV: 36 } });
    expect(above).toMatchObject({ suppressorJ: 0, clampedV: 35 });
    const below = loadDump({ ...base, pulse: central, suppressor });
    expect(below.suppressorJ).toBeGreaterThan(0);
    expect(below.clampedV).toBeLessThanOrEqual(35);
  });
  it('a resistance beyond the range of the standard says so', () => {
    expect(of({}).inRange).toBe(true);
    expect(of({ ratedA: 400, rotorRpm: 3000 })).toMatchObject({ inRange: false, openPeakV: 79 });
    expect(of({ ratedA: 20, rotorRpm: 18_000 })).toMatchObject({ inRange: false, openPeakV: 101 });
    expect(loadDump({ ...base, pulse: given }).inRange).toBeNull();
  });
  it('a suppressor that conducts at volts that may stand is refused by its check', () => {
    const check = (clampV: number): boolean =>
      loadDump({ ...base, suppressor: { ...suppressor, clampV } }).checks.find(({ name }) =>
        name.startsWith('suppressor is'),
      )!.ok;
    expect(check(24)).toBe(true);
    expect(check(23.9)).toBe(false);
  });
  it('refuses nonsense', () => {
    refusesNonsense(loadDump, base, { required: ['standingV'] });
    const bad =
      (change: object): (() => unknown) =>
      () =>
        loadDump({ ...base, ...change });
    expectInputError(bad({ pulse: undefined }), 'pulse', 'missing');
    expectInputError(bad({ pulse: { ...alternator, kind: 'odd' } }), 'pulse.kind', 'oneOf');
    expectInputError(bad({ pulse: { ...alternator, table: undefined } }), 'pulse.table', 'missing');
    expectInputError(bad({ pulse: { ...alternator, table: {} } }), 'pulse.table', 'object');
    expectInputError(bad({ pulse: { ...alternator, table: { openPeaksV: [79, 101] } } }), 'pulse.table', 'object');
    expectInputError(bad({ pulse: { ...alternator, ratedA: 0 } }), 'pulse.ratedA', 'above');
    expectInputError(bad({ pulse: { ...alternator, rotorRpm: 30_001 } }), 'pulse.rotorRpm', 'atMost');
    expectInputError(bad({ pulse: { ...alternator, suppression: 'some' } }), 'pulse.suppression', 'oneOf');
    expectInputError(bad({ pulse: { ...alternator, durationS: NaN } }), 'pulse.durationS', 'finite');
    expectInputError(bad({ pulse: { ...given, openPeakV: 13.5 } }), 'pulse.openPeakV', 'above');
    expectInputError(bad({ pulse: { ...given, sourceOhm: 0 } }), 'pulse.sourceOhm', 'above');
    expectInputError(bad({ loads: undefined }), 'loads', 'missing');
    expectInputError(bad({ loads: [{ name: '', resistanceOhm: 1, standsV: 1 }] }), 'loads[0].name', 'text');
    expectInputError(bad({ loads: [{ name: 'a', resistanceOhm: 0, standsV: 1 }] }), 'loads[0].resistanceOhm', 'above');
    expectInputError(bad({ loads: [{ name: 'a', resistanceOhm: 1, standsV: 0 }] }), 'loads[0].standsV', 'above');
    expectInputError(bad({ suppressor: undefined }), 'suppressor', 'missing');
    expectInputError(bad({ suppressor: { ...suppressor, clampV: 14 } }), 'suppressor.clampV', 'above');
    expectInputError(bad({ suppressor: { ...suppressor, dynamicOhm: -1 } }), 'suppressor.dynamicOhm', 'atLeast');
    expectInputError(bad({ suppressor: { ...suppressor, mostJ: 0 } }), 'suppressor.mostJ', 'above');
    expect(bad({ pulse: { ...alternator, table: undefined } })).toThrow(
      'loadDump: pulse.table must be a table of load dumps, got nothing: import one, such as loadDump12V',
    );
  });
  it('never runs out of numbers', () => {
    neverRunsOut((pulse: typeof given) => loadDump({ ...base, pulse, suppressor }), given);
    neverRunsOut((part: typeof suppressor) => loadDump({ ...base, suppressor: part }), suppressor);
  });
});
