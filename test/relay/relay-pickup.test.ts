import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { relayPickup, type RelayPickupInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const relay: RelayPickupInput = {
  supplyV: 11,
  driverDropV: 0.3,
  wireResistanceOhm: 0.5,
  coilResistanceOhm: 90,
  ratedPickUpV: 7.2,
  ratedDropOutV: 1.6,
  ratedTempC: 20,
  coilTempC: 105,
};

describe('published', () => {
  const note = (place: string) => ({ source: 'automotive-relay-notes', place, status: 'published' }) as const;
  computed('320 Ω at 25 °C becomes 443.3 Ω at 125 °C', note('28 V aerospace relay'), () =>
    expectPrinted(
      relayPickup({ ...relay, coilResistanceOhm: 320, ratedTempC: 25, coilTempC: 125 }).coilHotOhm,
      '443.3',
    ),
  );
  computed('13.0 V at 25 °C becomes 18 V at 125 °C', note('28 V aerospace relay'), () =>
    expectPrinted(relayPickup({ ...relay, ratedPickUpV: 13, ratedTempC: 25, coilTempC: 125 }).pickUpV, '18'),
  );
  for (const [temp, print] of [
    [85, '19.7'],
    [100, '20.6'],
    [-25, '12.9'],
  ] as const) {
    computed(`16 V at 25 °C becomes ${print} V at ${temp} °C`, note('coefficient .003853 at 25 °C'), () =>
      expectPrinted(relayPickup({ ...relay, ratedPickUpV: 16, ratedTempC: 25, coilTempC: temp }).pickUpV, print),
    );
  }
  // The note prints 403.31 Ω from a chart factor of 1.39; its own exact form gives 401.75.
  computed('290 Ω at 25 °C at 125 °C, within the chart', note('maker note 102'), () =>
    expectWithin(
      relayPickup({ ...relay, coilResistanceOhm: 290, ratedTempC: 25, coilTempC: 125 }).coilHotOhm,
      403.31,
      0.005,
    ),
  );
  const case9 = {
    source: 'automotive-relay-notes',
    place: 'worked case: 7.2 V at 20 °C, coil at 105 °C',
    status: 'derived',
  } as const;
  computed('7.2 V at 20 °C becomes 9.61 V at 105 °C', case9, () =>
    expectPrinted(relayPickup(relay).pickUpV, '9.61', 1),
  );
  const auto = {
    source: 'automotive-relay-notes',
    place: '90 Ω, 6.5 V at 20 °C, at 85 °C',
    status: 'derived',
  } as const;
  const hot = relayPickup({ ...relay, ratedPickUpV: 6.5, coilTempC: 85 });
  computed('16 V at 25 °C becomes 19.699, 20.624 and 12.918 V', note('recomputed to the coefficient .003853'), () => {
    const at = (coilTempC: number): number =>
      relayPickup({ ...relay, ratedPickUpV: 16, ratedTempC: 25, coilTempC }).pickUpV;
    for (const [temp, volts] of [
      [85, 19.699],
      [100, 20.624],
      [-25, 12.918],
    ] as const)
      expectWithin(at(temp), volts, 7e-5);
  });
  computed('290 Ω at 25 °C becomes 401.75 Ω at 125 °C', note('maker note 102, its own exact form'), () =>
    expectPrinted(
      relayPickup({ ...relay, coilResistanceOhm: 290, ratedTempC: 25, coilTempC: 125 }).coilHotOhm,
      '401.75',
    ),
  );
  computed('gains about 4 % every 10 °C', note('maker note 102'), () =>
    expectPrinted(100 * (relayPickup({ ...relay, coilResistanceOhm: 1, coilTempC: 30 }).coilHotOhm - 1), '4'),
  );
  computed('the rise from 100 to 120 Ω is 50.9 K, by dT = (234.5 + T1)(R2/R1 − 1)', note('maker note 102'), () => {
    const tempC = 20 + (234.5 + 20) * (120 / 100 - 1);
    expectWithin(relayPickup({ ...relay, coilResistanceOhm: 100, coilTempC: tempC }).coilHotOhm, 120, 1e-12);
  });
  computed('133 mA at 12 V in 90 Ω', note('automotive power relay, component data'), () =>
    expectPrinted(
      relayPickup({ ...relay, supplyV: 12, driverDropV: 0, wireResistanceOhm: 0, coilTempC: 20 }).coilCurrentA * 1000,
      '133',
    ),
  );
  computed('90 Ω becomes 112.98 Ω', auto, () => expectPrinted(hot.coilHotOhm, '112.98', 1));
  computed('6.5 V becomes 8.16 V', auto, () => expectPrinted(hot.pickUpV, '8.16'));
});

describe('independent', () => {
  it('the coil that warms itself carries off just the heat that it makes', () => {
    fc.assert(
      fc.property(
        evenly(-40, 125),
        evenlyWithEnds(0, 32),
        evenlyWithEnds(0, 80),
        (ambientTempC, heatedByV, thermalResistanceKPerW) => {
          const { coilTempC: _, ...data } = relay;
          const { coilTempC, coilHotOhm, selfHeatingK } = relayPickup({
            ...data,
            ambientTempC,
            heatedByV,
            thermalResistanceKPerW,
          });
          const volts = Math.max(0, heatedByV - 0.3);
          expect(Math.abs(selfHeatingK! - (thermalResistanceKPerW * volts * volts) / coilHotOhm)).toBeLessThan(1e-9);
          expect(coilTempC).toBe(ambientTempC + selfHeatingK!);
        },
      ),
    );
  });
});

describe('laws', () => {
  const warmed = { ambientTempC: 60, heatedByV: 14.4, thermalResistanceKPerW: 40 };
  it('more volts before, hotter air and worse cooling never let it pick up lower', () => {
    const { coilTempC: _, ...data } = relay;
    fc.assert(
      fc.property(
        fc.constantFrom('ambientTempC' as const, 'heatedByV' as const, 'thermalResistanceKPerW' as const),
        fc.double({ min: 0.01, max: 10, noNaN: true }),
        (key, more) => {
          const a = relayPickup({ ...data, ...warmed });
          const b = relayPickup({ ...data, ...warmed, [key]: warmed[key] + more });
          expect(b.pickUpV).toBeGreaterThan(a.pickUpV);
          expect(b.leastSupplyV).toBeGreaterThan(a.leastSupplyV);
          expect(b.dropOutSupplyV).toBeGreaterThan(a.dropOutSupplyV);
        },
      ),
    );
  });
  it('a hotter coil never picks up lower, and the least supply is exactly enough', () => {
    fc.assert(
      fc.property(evenly(-40, 180), fc.double({ min: 0.1, max: 20, noNaN: true }), (coilTempC, more) => {
        const cool = relayPickup({ ...relay, coilTempC });
        const warm = relayPickup({ ...relay, coilTempC: coilTempC + more });
        expect(warm.pickUpV).toBeGreaterThan(cool.pickUpV);
        expect(warm.leastSupplyV).toBeGreaterThan(cool.leastSupplyV);
        const enough = relayPickup({ ...relay, coilTempC, supplyV: cool.leastSupplyV * (1 + 1e-12) });
        expect(enough.state).toBe('picks');
        expect(relayPickup({ ...relay, coilTempC, supplyV: cool.leastSupplyV * (1 - 1e-9) }).state).toBe('holds');
      }),
    );
  });
  it('two swapped inputs of one kind do not go unseen', () => swapsMatter(relayPickup, relay));
});

describe('edges', () => {
  it('tells picks, holds and drops apart', () => {
    expect(relayPickup({ ...relay, supplyV: 12 }).state).toBe('picks');
    expect(relayPickup({ ...relay, supplyV: 6 }).state).toBe('holds');
    expect(relayPickup({ ...relay, supplyV: 1 }).state).toBe('drops');
    expect(relayPickup({ ...relay, supplyV: 6 }).checks[0]).toMatchObject({ ok: false, sense: 'atLeast' });
  });
  it('judges the temperature of the coil where a limit is given', () => {
    const { coilTempC: _, ...data } = relay;
    const hot = relayPickup({
      ...data,
      ambientTempC: 125,
      heatedByV: 16,
      thermalResistanceKPerW: 40,
      mostCoilTempC: 155,
    });
    expect(hot.checks.map(({ name, ok }) => [name, ok])).toEqual([
      ['pull-in voltage at the hot coil', false],
      ['coil temperature', false],
    ]);
    expect(relayPickup({ ...relay, mostCoilTempC: 155 }).checks[1]!.ok).toBe(true);
    expect(relayPickup(relay).selfHeatingK).toBeNull();
  });
  it('wants the temperature of the coil, or all that warms it, and not both', () => {
    const { coilTempC: _, ...data } = relay;
    const warm = { ambientTempC: 60, heatedByV: 14, thermalResistanceKPerW: 40 };
    expectInputError(() => relayPickup(data), 'coilTempC', 'missing');
    expectInputError(() => relayPickup({ ...relay, ...warm }), 'coilTempC', 'oneOfFields');
    refusesNonsense(
      relayPickup,
      { ...data, ...warm, mostCoilTempC: 155 },
      {
        required: ['ambientTempC', 'heatedByV', 'thermalResistanceKPerW'],
        optional: ['mostCoilTempC'],
      },
    );
    expectInputError(
      () => relayPickup({ ...data, ...warm, thermalResistanceKPerW: 1001 }),
      'thermalResistanceKPerW',
      'atMost',
    );
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(relayPickup, relay, { required: Object.keys(relay) as (keyof RelayPickupInput)[] });
    expectInputError(() => relayPickup({ ...relay, driverDropV: 11.1 }), 'driverDropV', 'atMost');
    expectInputError(() => relayPickup({ ...relay, ratedDropOutV: 7.3 }), 'ratedDropOutV', 'atMost');
    expectInputError(() => relayPickup({ ...relay, coilTempC: 201 }), 'coilTempC', 'atMost');
    expectInputError(() => relayPickup({ ...relay, coilTempC: -61 }), 'coilTempC', 'atLeast');
    expectInputError(() => relayPickup({ ...relay, supplyV: 0 }), 'supplyV', 'above');
  });
});
