import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { relayMap, type RelayMapInput, relayPickup } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted } from '../support/published.js';

const relay: RelayMapInput = {
  driverDropV: 0.3,
  wireResistanceOhm: 0.5,
  coilResistanceOhm: 90,
  ratedPickUpV: 7.2,
  ratedDropOutV: 1.6,
  ratedTempC: 20,
  suppliesV: [1, 2, 4, 6, 7, 8, 9, 10, 11, 12],
  coilTempsC: [-40, 0, 20, 60, 105, 150],
};

describe('published', () => {
  const cite = { source: 'automotive-relay-notes', place: '16 V at 25 °C', status: 'published' } as const;
  const map = relayMap({
    ...relay,
    driverDropV: 0,
    wireResistanceOhm: 0,
    ratedPickUpV: 16,
    ratedTempC: 25,
    coilTempsC: [-25, 85, 100],
  });
  for (const [row, print] of [
    [0, '12.9'],
    [1, '19.7'],
    [2, '20.6'],
  ] as const) {
    computed(`least supply ${print} V at ${map.rows[row]!.coilTempC} °C`, cite, () =>
      expectPrinted(map.rows[row]!.leastSupplyV, print),
    );
  }
});

describe('independent', () => {
  it('says at each point what the relay by itself says', () => {
    for (const { coilTempC, leastSupplyV, dropOutSupplyV, states } of relayMap(relay).rows) {
      const { suppliesV, coilTempsC: _, ...data } = relay;
      suppliesV.forEach((supplyV, i) => {
        const alone = relayPickup({ ...data, supplyV, coilTempC });
        expect(alone).toMatchObject({ state: states[i], leastSupplyV, dropOutSupplyV });
      });
    }
  });
});

describe('laws', () => {
  it('states never improve with heat nor with less supply', () => {
    const rank = { drops: 0, holds: 1, picks: 2 };
    fc.assert(
      fc.property(evenlyWithEnds(0, 30), evenlyWithEnds(0, 2), (ohm, drop) => {
        const { rows } = relayMap({ ...relay, wireResistanceOhm: ohm, driverDropV: drop });
        rows.forEach(({ states }, r) => {
          states.forEach((state, i) => {
            if (i > 0) expect(rank[state]).toBeGreaterThanOrEqual(rank[states[i - 1]!]);
            if (r > 0) expect(rank[state]).toBeLessThanOrEqual(rank[rows[r - 1]!.states[i]!]);
          });
        });
      }),
    );
  });
  it('two swapped inputs of one kind do not go unseen', () => swapsMatter(relayMap, relay));
});

describe('edges', () => {
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(relayMap, relay, {
      required: [
        'driverDropV',
        'wireResistanceOhm',
        'coilResistanceOhm',
        'ratedPickUpV',
        'ratedDropOutV',
        'ratedTempC',
      ],
    });
    expectInputError(() => relayMap({ ...relay, suppliesV: [] }), 'suppliesV', 'list');
    expectInputError(() => relayMap({ ...relay, suppliesV: [12, -1] }), 'suppliesV[1]', 'atLeast');
    expectInputError(() => relayMap({ ...relay, coilTempsC: [20, 201] }), 'coilTempsC[1]', 'atMost');
    expectInputError(() => relayMap({ ...relay, coilTempsC: 'x' as never }), 'coilTempsC', 'list');
  });
});
