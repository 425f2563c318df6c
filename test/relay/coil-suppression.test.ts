import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { coilSuppression, type CoilSuppressionInput, type Suppressor } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const cube: CoilSuppressionInput = {
  supplyV: 12,
  coilResistanceOhm: 120,
  inductanceH: 0.3,
  releaseA: 0.02,
  mechanicalS: 0.0015,
  driverMostV: 60,
  suppressor: { kind: 'resistor', resistanceOhm: 680 },
};
const diode: Suppressor = { kind: 'diode', forwardV: 0.8 };

describe('published', () => {
  const bench = {
    source: 'automotive-relay-notes',
    place: 'bench test: 120 Ω coil, 680 Ω across, 12 V',
    status: 'published',
  } as const;
  computed('a peak of 65 V, to 5 %', bench, () => expectWithin(coilSuppression(cube).peakCoilV!, 65, 0.05));

  // Release times of a 55 Ω coil at 13.5 V, from memory. One inductance and one current at which it lets go, taken
  // from the row of 100 Ω and that of the diode, must give all the other rows of resistors.
  const memory = (place: string) => ({ source: 'automotive-relay-notes', place, status: 'memory' }) as const;
  const maker: CoilSuppressionInput = {
    ...cube,
    supplyV: 13.5,
    coilResistanceOhm: 55,
    inductanceH: 0.194,
    releaseA: 0.01,
  };
  const release = (suppressor: Suppressor): number => 1000 * coilSuppression({ ...maker, suppressor }).releaseS;
  for (const [ohm, ms] of [
    [680, 2.3],
    [470, 2.8],
    [330, 3.2],
    [220, 3.7],
    [82, 6.1],
  ] as const) {
    computed(`${ohm} Ω across it: ${ms} ms, to 5 %`, memory('release times of a 55 Ω coil'), () =>
      expectWithin(release({ kind: 'resistor', resistanceOhm: ohm }), ms, 0.05),
    );
  }
  computed(
    'a diode is slower than every resistor, and a zener diode far quicker',
    memory('order of release times'),
    () => {
      const slow = release({ kind: 'diode', forwardV: 0.8 });
      expect(slow).toBeGreaterThan(release({ kind: 'resistor', resistanceOhm: 82 }));
      expect(release({ kind: 'diode-zener', forwardV: 0.8, zenerV: 24 })).toBeLessThan(slow / 3);
      expect(release({ kind: 'none' })).toBe(1.5);
    },
  );
  const slows = {
    source: 'automotive-relay-notes',
    place: 'a diode alone slows release 5 to 10 times',
    status: 'published',
  } as const;
  computed('a diode alone slows release 5 to 10 times', slows, () => {
    const times = release(diode) / release({ kind: 'none' });
    expect(times).toBeGreaterThan(5);
    expect(times).toBeLessThan(10);
  });
  const bare = {
    source: 'automotive-relay-notes',
    place: '1000 to 1500 V from a 12 V relay without suppression',
    status: 'published',
  } as const;
  computed('without any: 1000 to 1500 V at some 2 nF', bare, () => {
    for (const [nF, low, high] of [[1.5, 1000, 1500]] as const) {
      const { peakDriverV } = coilSuppression({ ...cube, suppressor: { kind: 'none', strayCapacitanceF: nF * 1e-9 } });
      expect(peakDriverV!).toBeGreaterThan(low);
      expect(peakDriverV!).toBeLessThan(high);
    }
  });
});

describe('independent', { timeout: 60_000 }, () => {
  const elements: readonly (readonly [string, Suppressor, string])[] = [
    ['nothing but 2 nF', { kind: 'none', strayCapacitanceF: 2e-9 }, 'C1 d 0 2n'],
    ['a diode of 0.8 V', diode, 'Vf k s 0.8\nD1 d k di'],
    ['680 Ω', { kind: 'resistor', resistanceOhm: 680 }, 'Rs d s 680'],
    ['a zener diode of 24 V', { kind: 'diode-zener', forwardV: 0.8, zenerV: 24 }, 'Vf k s 24.8\nD1 d k di'],
    ['a TVS of 40 V at the coil', { kind: 'tvs', clampV: 40, place: 'coil' }, 'Vf k s 40\nD1 d k di'],
    ['a TVS of 40 V at the driver', { kind: 'tvs', clampV: 40, place: 'driver' }, 'Vf k 0 40\nD1 d k di'],
  ];
  it.each(elements)('agrees with a circuit simulator to 1 %%: %s', async (_, suppressor, element) => {
    const ours = coilSuppression({ ...cube, suppressor });
    const end = Math.max(3 * ours.decayS, 5e-5);
    const net = [
      'V1 s 0 12',
      'L1 s m 0.3 ic=0.1',
      'R1 m d 120',
      // The switch opens at the start: the coil's current is there, and nothing else.
      element,
      'Rleak d 0 1e9',
      '.model di d is=1e-9 n=0.1',
      '.options reltol=1e-5 method=gear',
      ...(suppressor.kind === 'none' ? ['.ic v(d)=0'] : []),
      `.tran ${end / 5000} ${end} 0 ${end / 5000} uic`,
    ].join('\n');
    const theirs = await simulate(net);
    const t = theirs['time']!;
    // A row of resistors draws through the supply in a ring of its own: the coil's own current is that of L1.
    const i = Object.entries(theirs).find(([name]) => /l1/.test(name))![1];
    const k = i.findIndex((x, j) => j > 0 && x <= 0.02);
    const at = t[k - 1]! + ((t[k]! - t[k - 1]!) * (i[k - 1]! - 0.02)) / (i[k - 1]! - i[k]!);
    expectWithin(ours.decayS, at, 0.01);
    expectWithin(ours.peakDriverV!, Math.max(...theirs['v(d)']!.slice(1)), 0.01);
    if (suppressor.kind !== 'none' && suppressor.kind !== 'resistor') {
      let joule = 0;
      const across = suppressor.kind === 'tvs' ? 40 : suppressor.kind === 'diode' ? 0.8 : 24.8;
      const [n, wide] = [t.length, await simulate(net.replace(/\.tran.*/, '.tran 1e-5 0.05 0 1e-5 uic'))];
      expect(n).toBeGreaterThan(100);
      const [tw, iw] = [wide['time']!, Object.entries(wide).find(([name]) => /l1/.test(name))![1]];
      for (let j = 1; j < tw.length; j++)
        joule += across * (tw[j]! - tw[j - 1]!) * Math.max(0, (iw[j]! + iw[j - 1]!) / 2);
      expectWithin(ours.suppressorJ, joule, 0.01);
    }
  });
  it('shares the energy of the coil between winding and resistor as their resistances', () => {
    const { energyJ, suppressorJ } = coilSuppression(cube);
    expectWithin(energyJ, 0.5 * 0.3 * 0.01, 1e-12);
    expectWithin(suppressorJ, (energyJ * 680) / 800, 1e-12);
  });
});

describe('laws', () => {
  it('what holds the peak down holds the current up', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 200, noNaN: true }),
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        (clampV, more) => {
          const at = (volts: number, place: 'coil' | 'driver') =>
            coilSuppression({
              ...cube,
              suppressor: { kind: 'tvs', clampV: volts + (place === 'driver' ? 12 : 0), place },
            });
          for (const place of ['coil', 'driver'] as const) {
            const a = at(clampV, place);
            const b = at(clampV + more, place);
            expect(b.peakDriverV!).toBeGreaterThan(a.peakDriverV!);
            expect(b.decayS).toBeLessThan(a.decayS);
            expect(a.suppressorJ).toBeGreaterThan(0);
          }
          // At the driver the supply feeds the clamp too.
          expect(at(clampV, 'driver').suppressorJ).toBeGreaterThan(at(clampV, 'coil').suppressorJ);
          expect(at(clampV, 'coil').suppressorJ).toBeLessThan(at(clampV, 'coil').energyJ);
        },
      ),
    );
  });
  it('a lesser resistor gives a lower peak and a later release', () => {
    const at = (resistanceOhm: number) => coilSuppression({ ...cube, suppressor: { kind: 'resistor', resistanceOhm } });
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 2000, noNaN: true }),
        fc.double({ min: 1, max: 500, noNaN: true }),
        (ohm, more) => {
          expect(at(ohm).peakDriverV!).toBeLessThan(at(ohm + more).peakDriverV!);
          expect(at(ohm).releaseS).toBeGreaterThan(at(ohm + more).releaseS);
          expect(at(ohm).standingW).toBeGreaterThan(at(ohm + more).standingW);
        },
      ),
    );
  });
  it('a diode without volts is the slowest there is, and the limit of small clamps', () => {
    const none = coilSuppression({ ...cube, suppressor: { kind: 'diode', forwardV: 0 } });
    const small = coilSuppression({ ...cube, suppressor: { kind: 'tvs', clampV: 1e-6, place: 'coil' } });
    expectWithin(small.decayS, none.decayS, 1e-5);
    expect(none.suppressorJ).toBe(0);
  });
  it('two swapped inputs of one kind do not go unseen', () =>
    swapsMatter(coilSuppression, { ...cube, releaseA: 0.03 }));
});

describe('edges', () => {
  it('has no number for the peak of a coil with nothing across it, and does not pass it', () => {
    const bare = coilSuppression({ ...cube, suppressor: { kind: 'none' } });
    expect(bare).toMatchObject({
      peakCoilV: null,
      peakDriverV: null,
      reason: 'only-stray-capacitance-limits-it',
      decayS: 0,
      releaseS: 0.0015,
    });
    expect(bare.checks[0]).toMatchObject({ ok: false, value: null, marginFraction: null });
  });
  it('does not ring where the capacitance is so large that it is damped', () => {
    const slow = coilSuppression({ ...cube, suppressor: { kind: 'none', strayCapacitanceF: 1e-3 } });
    expect(slow.peakCoilV).toBe(0);
    expect(slow.decayS).toBeGreaterThan(0.1);
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(coilSuppression, cube, {
      required: ['supplyV', 'coilResistanceOhm', 'inductanceH', 'releaseA', 'mechanicalS', 'driverMostV'],
    });
    const bad = (suppressor: unknown, field: string): void =>
      expectInputError(() => coilSuppression({ ...cube, suppressor: suppressor as Suppressor }), field);
    bad(undefined, 'suppressor');
    bad({ kind: 'varistor' }, 'suppressor.kind');
    bad({ kind: 'diode' }, 'suppressor.forwardV');
    bad({ kind: 'diode-zener', forwardV: 0.7, zenerV: -1 }, 'suppressor.zenerV');
    bad({ kind: 'resistor', resistanceOhm: 0 }, 'suppressor.resistanceOhm');
    bad({ kind: 'tvs', clampV: 12, place: 'driver' }, 'suppressor.clampV');
    bad({ kind: 'tvs', clampV: 30, place: 'fuse' }, 'suppressor.place');
    bad({ kind: 'none', strayCapacitanceF: 0 }, 'suppressor.strayCapacitanceF');
    expectInputError(() => coilSuppression({ ...cube, releaseA: 0.11 }), 'releaseA', 'atMost');
  });
});
