import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { coilsOnDriver, type CoilsOnDriverInput, relayPickup } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const coil = {
  name: 'low speed',
  coilResistanceOhm: 90,
  ratedPickUpV: 7.2,
  ratedDropOutV: 1.6,
  ratedTempC: 20,
  coilTempC: 85,
  wireResistanceOhm: 0.4,
  inductanceH: 0.3,
};
const pair: CoilsOnDriverInput = {
  supplyV: 11,
  driverDropV: 0.7,
  sharedResistanceOhm: 1.5,
  driverMostA: 0.25,
  coils: [coil, { ...coil, name: 'high speed', coilResistanceOhm: 75, wireResistanceOhm: 0.9 }],
};

describe('published', () => {
  const cite = {
    source: 'automotive-relay-notes',
    place: 'automotive power relay: 90 Ω, 133 mA at 12 V',
    status: 'published',
  } as const;
  const plain = { ...pair, supplyV: 12, driverDropV: 0, sharedResistanceOhm: 0 };
  const cold = { ...coil, coilTempC: 20, wireResistanceOhm: 0 };
  computed('one coil takes 133 mA', cite, () =>
    expectPrinted(coilsOnDriver({ ...plain, coils: [cold] }).currentA * 1000, '133'),
  );
  computed('three take .400 A', { ...cite, status: 'derived' }, () =>
    expectPrinted(
      coilsOnDriver({ ...plain, coils: [cold, { ...cold, name: 'b' }, { ...cold, name: 'c' }] }).currentA,
      '.400',
    ),
  );
});

describe('independent', { timeout: 60_000 }, () => {
  it('agrees with a circuit simulator', async () => {
    const hot = (234.5 + 85) / 254.5;
    const theirs = await simulate(
      `V1 s 0 10.3\nR1 s n 1.5\nRa n a 0.4\nRb a 0 ${90 * hot}\nRc n c 0.9\nRd c 0 ${75 * hot}\n.op`,
    );
    const ours = coilsOnDriver(pair);
    expectWithin(ours.currentA, -theirs['i(v1)']![0]!, 1e-6);
    expectWithin(ours.coils[0]!.coilV, theirs['v(a)']![0]!, 1e-6);
    expectWithin(ours.coils[1]!.coilV, theirs['v(c)']![0]!, 1e-6);
  });
  it('is a relay by itself where there is one', () => {
    const { name: _, inductanceH: __, ...data } = coil;
    const alone = relayPickup({ ...data, supplyV: 11, driverDropV: 0.7, wireResistanceOhm: 0.4 + 1.5 });
    const ours = coilsOnDriver({ ...pair, coils: [coil] });
    expectWithin(ours.coils[0]!.coilV, alone.coilV, 1e-12);
    expect(ours.coils[0]!.state).toBe(alone.state);
    expectWithin(ours.energyJ, 0.5 * 0.3 * alone.coilCurrentA ** 2, 1e-12);
  });
});

describe('laws', () => {
  it('one coil more never gives another more volts, and a hotter coil never picks up lower', () => {
    fc.assert(
      fc.property(
        evenlyWithEnds(0, 20),
        fc.double({ min: 20, max: 500, noNaN: true }),
        evenly(-40, 180),
        (sharedResistanceOhm, ohm, coilTempC) => {
          const base = { ...pair, sharedResistanceOhm };
          const a = coilsOnDriver({ ...base, coils: [coil] });
          const b = coilsOnDriver({ ...base, coils: [coil, { ...coil, name: 'b', coilResistanceOhm: ohm }] });
          expect(b.coils[0]!.coilV).toBeLessThanOrEqual(a.coils[0]!.coilV);
          expect(b.currentA).toBeGreaterThan(a.currentA);
          const warm = coilsOnDriver({ ...base, coils: [{ ...coil, coilTempC }] }).coils[0]!;
          const warmer = coilsOnDriver({ ...base, coils: [{ ...coil, coilTempC: coilTempC + 10 }] }).coils[0]!;
          expect(warmer.pickUpV).toBeGreaterThan(warm.pickUpV);
        },
      ),
    );
  });
  it('two swapped inputs of one kind do not go unseen', () => swapsMatter(coilsOnDriver, pair));
});

describe('edges', () => {
  it('judges the driver, each coil, and the energy where a limit is given', () => {
    const { checks, decidedBy } = coilsOnDriver({ ...pair, driverMostA: 0.1, driverMostJ: 0.001 });
    expect(checks.map(({ name, ok }) => [name, ok])).toEqual([
      ['current of the driver', false],
      ['low speed pulls in', true],
      ['high speed pulls in', true],
      ['energy at switching off', false],
    ]);
    expect(decidedBy).toBe('energy at switching off');
    const states = (supplyV: number): string[] => coilsOnDriver({ ...pair, supplyV }).coils.map(({ state }) => state);
    expect(states(6)).toEqual(['holds', 'holds']);
    expect(states(1.5)).toEqual(['drops', 'drops']);
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(coilsOnDriver, pair, {
      required: ['supplyV', 'driverDropV', 'sharedResistanceOhm', 'driverMostA'],
      optional: ['driverMostJ'],
    });
    expectInputError(() => coilsOnDriver({ ...pair, coils: [] }), 'coils', 'list');
    const bad = (field: string, value: unknown): void =>
      expectInputError(() => coilsOnDriver({ ...pair, coils: [{ ...coil, [field]: value }] }), `coils[0].${field}`);
    for (const field of [
      'coilResistanceOhm',
      'ratedPickUpV',
      'ratedDropOutV',
      'ratedTempC',
      'coilTempC',
      'wireResistanceOhm',
      'inductanceH',
    ])
      for (const value of [NaN, -1000, 'x']) bad(field, value);
    bad('name', '');
  });
});
