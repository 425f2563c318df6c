import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { lampInrush, type LampInrushInput, relayMakerInrush, relayModuleInrush } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const head: LampInrushInput = {
  supplyV: 13.5,
  loopResistanceOhm: 0.1,
  ratedPowerW: 55,
  ratedV: 12,
  hotOverColdRatio: 12,
  ambientTempC: 20,
  warmUpS: 0.1,
};

describe('published', () => {
  const mil = { source: 'mil-r-5757', place: 'lamp load test', status: 'published' } as const;
  const stiff = { ...head, supplyV: 12, loopResistanceOhm: 0 };
  computed('make 12 times rated, where nothing but the filament limits', mil, () =>
    expectPrinted(lampInrush(stiff).inrushRatio, '12', 0.5),
  );
  for (const [table, low, high] of [
    [relayModuleInrush, 10, 15],
    [relayMakerInrush, 10, 15],
  ] as const) {
    const cite = { source: table.source, place: 'incandescent lamps 10 to 15 times', status: 'published' } as const;
    for (const ratio of [low, high]) {
      computed(`${table.key}: first current ${ratio} times`, cite, () =>
        expectWithin(lampInrush({ ...stiff, hotOverColdRatio: ratio }).peakA, (ratio * 55) / 12, 1e-9),
      );
    }
  }
  const practice = {
    source: 'common-practice',
    place: 'headlamp 10 to 15 times, 100 ms',
    status: 'common-practice',
  } as const;
  computed('a headlamp has settled in about 100 ms', practice, () => {
    const { settledS, inrushRatio } = lampInrush({ ...stiff, hotOverColdRatio: 14 });
    expectWithin(settledS, 0.1, 1e-6);
    expect(inrushRatio).toBeGreaterThanOrEqual(10);
    expect(inrushRatio).toBeLessThanOrEqual(15);
  });
  const rerating = { source: 'lamp-rerating', place: 'current with (V/Vd)^0.55', status: 'published' } as const;
  for (const volts of [10, 11, 13, 14]) {
    computed(`steady current at ${volts} V follows the rerating table to 0.5 %`, rerating, () =>
      expectWithin(lampInrush({ ...stiff, supplyV: volts }).steadyA, (55 / 12) * (volts / 12) ** 0.55, 0.005),
    );
  }
});

describe('independent', { timeout: 60_000 }, () => {
  /** Filament as a resistance that follows the voltage of a capacitor, which is its temperature. */
  const netlist = (x: LampInrushInput, heatJPerK: number, endS: number): string => {
    const hot = x.ratedV ** 2 / x.ratedPowerW;
    const hotK = 293.15 * x.hotOverColdRatio ** (1 / 1.2);
    const aroundK = 273.15 + x.ambientTempC;
    const start = hot * (aroundK / hotK) ** 1.2;
    return [
      `V1 s 0 ${x.supplyV}`,
      `R1 s a ${Math.max(x.loopResistanceOhm, 1e-9)}`,
      `B1 a 0 I=V(a)/(${hot}*pow(V(t)/${hotK},1.2))`,
      `C1 t 0 ${heatJPerK} ic=${aroundK}`,
      `B2 0 t I=V(a)*V(a)/(${hot}*pow(V(t)/${hotK},1.2))-${x.ratedPowerW}*(pow(V(t),4)-${aroundK ** 4})/${hotK ** 4 - 293.15 ** 4}`,
      `.ic v(t)=${aroundK} v(a)=${(x.supplyV * start) / (start + x.loopResistanceOhm)}`,
      `.options reltol=1e-6`,
      `.tran ${endS / 2000} ${endS} 0 ${endS / 4000} uic`,
    ].join('\n');
  };
  const firstBelow = (times: number[], amps: number[], limit: number): number => {
    const k = amps.findIndex((i) => i <= limit);
    const [t0, t1, i0, i1] = [times[k - 1]!, times[k]!, amps[k - 1]!, amps[k]!];
    return t0 + ((t1 - t0) * (i0 - limit)) / (i0 - i1);
  };

  it.each([
    ['a headlamp behind 0.1 Ω', head],
    [
      'two stop lamps in the cold behind thin wire',
      { ...head, ratedPowerW: 42, loopResistanceOhm: 0.35, ambientTempC: -20, warmUpS: 0.05 },
    ],
    [
      'a hot small lamp at high volts',
      { ...head, ratedPowerW: 5, supplyV: 14.8, hotOverColdRatio: 9, ambientTempC: 80, warmUpS: 0.02 },
    ],
  ] as const)('agrees with a circuit simulator to 1 %%: %s', async (_, lamp) => {
    const alone = { ...lamp, supplyV: lamp.ratedV, loopResistanceOhm: 0, ambientTempC: 20 };
    const trial = await simulate(netlist(alone, 1e-3, 2));
    const amps = (r: Record<string, number[]>): number[] => r['i(v1)']!.map((i) => -i);
    const unit = firstBelow(trial['time']!, amps(trial), (1.1 * lamp.ratedPowerW) / lamp.ratedV);
    const heat = (1e-3 * lamp.warmUpS) / unit;
    const end = 4 * lamp.warmUpS;
    const theirs = await simulate(netlist(lamp, heat, end));
    const ours = lampInrush(lamp);
    const [t, i] = [theirs['time']!, amps(theirs)];
    expectWithin(ours.peakA, Math.max(...i), 0.01);
    expectWithin(ours.steadyA, i.at(-1)!, 0.01);
    expectWithin(ours.doubleS, firstBelow(t, i, 2 * ours.steadyA), 0.01);
    expectWithin(ours.settledS, firstBelow(t, i, 1.1 * ours.steadyA), 0.01);
    let i2t = 0;
    let charge = 0;
    for (let k = 1; t[k]! <= ours.settledS; k++) {
      const dt = t[k]! - t[k - 1]!;
      i2t += (dt * (i[k]! ** 2 + i[k - 1]! ** 2)) / 2;
      charge += (dt * (i[k]! + i[k - 1]!)) / 2;
    }
    expectWithin(ours.i2tA2s, i2t, 0.01);
    expectWithin(ours.meanA, charge / ours.settledS, 0.01);
    expectWithin(ours.rmsA, Math.sqrt(i2t / ours.settledS), 0.01);
  });
});

describe('laws', () => {
  const lamps = fc.record({
    supplyV: fc.double({ min: 9, max: 16, noNaN: true }),
    loopResistanceOhm: evenlyWithEnds(0, 1),
    ratedPowerW: fc.double({ min: 2, max: 200, noNaN: true }),
    ratedV: fc.double({ min: 11, max: 14, noNaN: true }),
    hotOverColdRatio: fc.double({ min: 5, max: 18, noNaN: true }),
    ambientTempC: evenly(-40, 100),
    warmUpS: fc.double({ min: 0.005, max: 0.3, noNaN: true }),
  });
  it('more loop resistance never raises inrush, and no surge is less than what runs', () => {
    fc.assert(
      fc.property(lamps, fc.double({ min: 1e-4, max: 0.5, noNaN: true }), (lamp, more) => {
        const a = lampInrush(lamp);
        const b = lampInrush({ ...lamp, loopResistanceOhm: lamp.loopResistanceOhm + more });
        expect(b.peakA).toBeLessThan(a.peakA);
        expect(b.inrushRatio).toBeLessThan(a.inrushRatio);
        expect(b.steadyA).toBeLessThan(a.steadyA);
        for (const x of [a, b]) {
          expect(x.peakA).toBeGreaterThanOrEqual(x.rmsA);
          expect(x.rmsA).toBeGreaterThanOrEqual(x.meanA * (1 - 1e-12));
          expect(x.meanA).toBeGreaterThanOrEqual(x.steadyA);
          expect(x.doubleS).toBeLessThanOrEqual(x.settledS);
        }
      }),
    );
  });
  it('twice the warm-up time is twice of every time and of I²t', () => {
    const a = lampInrush(head);
    const b = lampInrush({ ...head, warmUpS: 0.2 });
    for (const key of ['doubleS', 'settledS', 'i2tA2s'] as const) expectWithin(b[key], 2 * a[key], 1e-9);
    expectWithin(b.rmsA, a.rmsA, 1e-9);
  });
  it('two lamps are one of twice the power behind half the resistance, twice over', () => {
    const one = lampInrush({ ...head, loopResistanceOhm: 0.2 });
    const two = lampInrush({ ...head, ratedPowerW: 110, loopResistanceOhm: 0.1 });
    expectWithin(two.peakA, 2 * one.peakA, 1e-9);
    expectWithin(two.i2tA2s, 4 * one.i2tA2s, 1e-6);
  });
  it('its curve only falls, from the peak to a tenth above the end', () => {
    const { timesS, currentsA, peakA, steadyA, settledS } = lampInrush(head);
    expect(currentsA[0]).toBe(peakA);
    expectWithin(currentsA.at(-1)!, 1.1 * steadyA, 1e-6);
    expect(timesS.at(-1)).toBe(settledS);
    for (let k = 1; k < timesS.length; k++) {
      expect(timesS[k]!).toBeGreaterThan(timesS[k - 1]!);
      expect(currentsA[k]!).toBeLessThan(currentsA[k - 1]!);
    }
  });
  it('two swapped inputs of one kind do not go unseen', () => swapsMatter(lampInrush, head));
});

describe('edges', () => {
  it('has no surge to speak of where the path rules', () => {
    const { settledS, i2tA2s, rmsA, peakA, doubleS } = lampInrush({ ...head, loopResistanceOhm: 1000 });
    expect({ settledS, i2tA2s, doubleS }).toEqual({ settledS: 0, i2tA2s: 0, doubleS: 0 });
    expect(rmsA).toBe(peakA);
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(lampInrush, head, { required: Object.keys(head) as (keyof LampInrushInput)[] });
    expectInputError(() => lampInrush({ ...head, hotOverColdRatio: 1.9 }), 'hotOverColdRatio', 'atLeast');
    expectInputError(() => lampInrush({ ...head, hotOverColdRatio: 25.1 }), 'hotOverColdRatio', 'atMost');
    expectInputError(() => lampInrush({ ...head, loopResistanceOhm: -0.01 }), 'loopResistanceOhm', 'atLeast');
    expectInputError(() => lampInrush({ ...head, warmUpS: 0 }), 'warmUpS', 'above');
    expectInputError(() => lampInrush({ ...head, ambientTempC: 201 }), 'ambientTempC', 'atMost');
  });
});
