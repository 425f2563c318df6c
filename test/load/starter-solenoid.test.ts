import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { starterSolenoid, type StarterSolenoidInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const starter: StarterSolenoidInput = {
  supplyV: 12.2,
  crankingV: 9.6,
  wireResistanceOhm: 0.03,
  pullInResistanceOhm: 0.25,
  holdInResistanceOhm: 0.9,
  motorResistanceOhm: 0.01,
  ratedPullInV: 7.5,
  ratedHoldV: 2.5,
  ratedTempC: 20,
  coldTempC: -20,
  hotTempC: 110,
};

describe('published', () => {
  const service = { source: 'vehicle-service-data', place: 'starter solenoid at 10 V', status: 'published' } as const;
  // Hold-in 10 to 20 A and both windings 60 to 85 A at 10 V: 10 V / 15 A = 0.67 Ω, and 0.2 Ω beside it.
  const bench = starterSolenoid({
    ...starter,
    supplyV: 10,
    crankingV: 10,
    wireResistanceOhm: 0,
    motorResistanceOhm: 0,
    pullInResistanceOhm: 0.2,
    holdInResistanceOhm: 0.667,
    coldTempC: 20,
    hotTempC: 20,
  });
  computed('the staying winding takes 10 to 20 A', service, () => {
    expectPrinted(bench.cold.holdA, '15.0');
    expect(bench.cold.holdA).toBeGreaterThanOrEqual(10);
    expect(bench.cold.holdA).toBeLessThanOrEqual(20);
  });
  computed('both windings take 60 to 85 A', service, () => {
    expect(bench.cold.pullInA).toBeGreaterThanOrEqual(60);
    expect(bench.cold.pullInA).toBeLessThanOrEqual(85);
  });
  computed('the current falls as it warms', service, () => {
    const { cold, hot } = starterSolenoid(starter);
    expect(hot.holdA).toBeLessThan(cold.holdA);
    expect(hot.pullInA).toBeLessThan(cold.pullInA);
  });
  const copper = { source: 'automotive-relay-notes', place: 'volts with (234.5 + T)', status: 'published' } as const;
  computed('a coil that holds with 13.0 V at 25 °C needs 18 V at 125 °C', copper, () =>
    expectPrinted(starterSolenoid({ ...starter, ratedHoldV: 13, ratedTempC: 25, hotTempC: 125 }).hot.neededHoldV, '18'),
  );
});

describe('independent', { timeout: 60_000 }, () => {
  it('agrees with a circuit simulator: pulling in, and holding with both ends of one winding on the battery', async () => {
    const ratio = (234.5 + 110) / 254.5;
    const net = [
      'V1 b 0 12.2',
      'R1 b s 0.03',
      `Rp s m ${0.25 * ratio}`,
      'Rm m 0 0.01',
      `Rh s 0 ${0.9 * ratio}`,
      'V2 c 0 9.6',
      'R2 c t 0.03',
      `Rh2 t 0 ${0.9 * ratio}`,
      '.op',
    ].join('\n');
    const theirs = await simulate(net);
    const { hot } = starterSolenoid(starter);
    expectWithin(hot.pullInA, -theirs['i(v1)']![0]!, 1e-6);
    expectWithin(hot.pullInV, theirs['v(s)']![0]!, 1e-6);
    expectWithin(hot.holdA, -theirs['i(v2)']![0]!, 1e-6);
    expectWithin(hot.holdV, theirs['v(t)']![0]!, 1e-6);
  });
});

describe('laws', () => {
  const ohm = evenlyWithEnds(0, 0.3);
  it('a hotter coil never picks up lower, and more wire never asks for less battery', () => {
    fc.assert(
      fc.property(ohm, ohm, evenly(-40, 150), (wire, more, hotTempC) => {
        const a = starterSolenoid({ ...starter, wireResistanceOhm: wire, coldTempC: -40, hotTempC });
        const b = starterSolenoid({ ...starter, wireResistanceOhm: wire + more, coldTempC: -40, hotTempC });
        expect(a.hot.neededPullInV).toBeGreaterThanOrEqual(a.cold.neededPullInV);
        expect(a.hot.neededHoldV).toBeGreaterThanOrEqual(a.cold.neededHoldV);
        expect(b.hot.leastSupplyV).toBeGreaterThanOrEqual(a.hot.leastSupplyV);
        expect(b.cold.leastCrankingV).toBeGreaterThanOrEqual(a.cold.leastCrankingV);
        expect(b.hot.pullInV).toBeLessThanOrEqual(a.hot.pullInV);
      }),
    );
  });
  it('just enough battery is just enough', () => {
    const { hot } = starterSolenoid(starter);
    const at = (supplyV: number): string => starterSolenoid({ ...starter, supplyV }).hot.state;
    expect(at(hot.leastSupplyV * (1 + 1e-12))).toBe('cranks');
    expect(at(hot.leastSupplyV * (1 - 1e-9))).toBe('stays-out');
  });
  it('two swapped inputs of one kind do not go unseen', () => swapsMatter(starterSolenoid, starter));
});

describe('edges', () => {
  it('tells cranking, chattering and staying out apart', () => {
    expect(starterSolenoid(starter).state).toBe('cranks');
    const chatters = starterSolenoid({ ...starter, crankingV: 3.4 });
    expect(chatters).toMatchObject({ state: 'chatters', decidedBy: 'battery to hold while cranking, hot' });
    const out = starterSolenoid({ ...starter, wireResistanceOhm: 0.12 });
    expect(out).toMatchObject({ state: 'stays-out', decidedBy: 'battery to pull in, hot' });
    expect(out.cold.state).toBe('cranks');
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(starterSolenoid, starter, { required: Object.keys(starter) as (keyof StarterSolenoidInput)[] });
    expectInputError(() => starterSolenoid({ ...starter, crankingV: 12.3 }), 'crankingV', 'atMost');
    expectInputError(() => starterSolenoid({ ...starter, hotTempC: -30 }), 'hotTempC', 'atLeast');
    expectInputError(() => starterSolenoid({ ...starter, pullInResistanceOhm: 0 }), 'pullInResistanceOhm', 'above');
  });
});
