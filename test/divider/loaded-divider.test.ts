import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { loadedDivider, type LoadedDividerInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const bare = { inV: 13.8, sourceOhm: 0, upperOhm: 18000, lowerOhm: 10000, inputOhm: null } as const;

describe('published', () => {
  const w7 = { source: 'circuit-theory', place: 'worked case: 12 V signal on a 5 V pin', status: 'derived' } as const;
  computed('18k/10k at 13.8 V', w7, () => {
    expectPrinted(loadedDivider(bare).outV, '4.929');
  });
  const surge = loadedDivider({ ...bare, inV: 30, clampV: 5.6 });
  computed('30 V, nothing clamped', w7, () => {
    expectPrinted(surge.outV, '10.71');
  });
  computed('30 V into a clamp at 5.6 V, mA', w7, () => {
    expectPrinted(surge.clampA * 1000, '0.796');
  });
  computed('source resistance, kΩ', w7, () => {
    expectPrinted(surge.nodeOhm / 1000, '6.43');
  });
  const pulled = loadedDivider({ ...bare, pullUpOhm: 1000, pullUpV: 5 });
  computed('with a pull-up of 1 kΩ to 5 V', w7, () => {
    expectPrinted(pulled.outV, '4.990');
  });
  computed('and warns of it', w7, () => {
    expect(pulled.checks.find((check) => check.name === 'shift by the pull of the input')?.ok).toBe(false);
    expect(pulled.decidedBy).toBe('shift by the pull of the input');
  });
  const over = loadedDivider({ ...bare, inV: 14.4, fullScaleV: 5 });
  computed('14.4 V is over a 5 V scale', w7, () => {
    expect(over.checks[0]).toMatchObject({ ok: false, limit: 5 });
  });

  // Pedal track at 80 %: 4.000 V behind 320 Ω into a pull-down of 100 kΩ.
  const w14 = {
    source: 'circuit-theory',
    place: 'worked case: one sensor, a second listener',
    status: 'derived',
  } as const;
  const pedal = { inV: 4, sourceOhm: 320, upperOhm: 0, lowerOhm: null, inputOhm: null } as const;
  computed('4 V behind 320 Ω on 100 kΩ', w14, () => {
    expectPrinted(loadedDivider({ ...pedal, pullDownOhm: 100000 }).outV, '3.9872');
  });
  computed('and a listener of 12.2 kΩ', w14, () => {
    expectPrinted(loadedDivider({ ...pedal, pullDownOhm: 100000, inputOhm: 12200 }).outV, '3.8856');
  });
});

describe('independent', () => {
  it('agrees with a circuit simulator, whole and with one thing lost', async () => {
    const input: LoadedDividerInput = {
      inV: 14.1,
      sourceOhm: 470,
      upperOhm: 22000,
      lowerOhm: 8200,
      inputOhm: 510000,
      pullUpOhm: 47000,
      pullUpV: 3.3,
      pullDownOhm: 100000,
    };
    const net = (n: string, signal: boolean, ground: boolean): string[] => [
      `vin${n} a${n} 0 14.1`,
      signal ? `rs${n} a${n} b${n} 470` : `rs${n} a${n} b${n} 1e15`,
      `ru${n} b${n} p${n} 22000`,
      `rl${n} p${n} 0 ${ground ? 8200 : 1e15}`,
      `ri${n} p${n} 0 510000`,
      `vp${n} q${n} 0 3.3`,
      `rp${n} q${n} p${n} 47000`,
      `rd${n} p${n} 0 100000`,
    ];
    const v = await simulate(
      [...net('x', true, true), ...net('y', false, true), ...net('z', true, false), '.op'].join('\n'),
    );
    const result = loadedDivider(input);
    expectWithin(result.outV, v['v(px)']![0]!, 1e-9);
    // The simulator leaks a little from every node (gmin), which an open wire shows.
    expectWithin(result.openWireV!, v['v(py)']![0]!, 1e-6);
    expectWithin(result.groundLostV, v['v(pz)']![0]!, 1e-6);
    expectWithin(result.signalA, -v['i(vinx)']![0]!, 1e-9);
  });
});

const ohm = fc.double({ min: 10, max: 1e6, noNaN: true });

describe('laws', () => {
  it('a load never raises the pin', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 60, noNaN: true }),
        ohm,
        ohm,
        ohm,
        ohm,
        (inV, upperOhm, lowerOhm, inputOhm, sourceOhm) => {
          const open = loadedDivider({ inV, sourceOhm: 0, upperOhm, lowerOhm, inputOhm: null });
          const loaded = loadedDivider({ inV, sourceOhm, upperOhm, lowerOhm, inputOhm, pullDownOhm: 1e5 });
          expect(loaded.outV).toBeLessThanOrEqual(open.outV * (1 + 1e-12));
          expect(loaded.shiftV).toBeLessThanOrEqual(1e-12);
          expectWithin(open.outV, open.idealV, 1e-12);
        },
      ),
    );
  });
  it('the protection takes what brings the node to its volts, and no more', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 60, noNaN: true }), ohm, ohm, (inV, upperOhm, lowerOhm) => {
        const { clampA, outV, pinV } = loadedDivider({
          inV,
          sourceOhm: 0,
          upperOhm,
          lowerOhm,
          inputOhm: null,
          clampV: 5.6,
        });
        expectWithin(clampA + pinV / lowerOhm, (inV - pinV) / upperOhm, 1e-9);
        expect(clampA > 0).toBe(outV > 5.6);
      }),
    );
  });
  it('loses nothing and mistakes nothing', () => {
    swapsMatter(loadedDivider, {
      inV: 12,
      sourceOhm: 100,
      upperOhm: 18000,
      lowerOhm: 10000,
      inputOhm: 90000,
      pullUpOhm: 47000,
      pullUpV: 5,
      fullScaleV: 4.5,
      allowedErrorV: 0.2,
    });
  });
});

describe('edges', () => {
  it('a pin that nothing holds floats when the wire is off', () => {
    expect(loadedDivider({ ...bare, lowerOhm: null }).openWireV).toBeNull();
    expect(loadedDivider(bare).openWireV).toBe(0);
  });
  it('with its ground lost the pin sees the whole signal', () => {
    const lost = loadedDivider({ ...bare, inV: 30, clampV: 5.6 });
    expectWithin(lost.groundLostV, 30, 1e-12);
    expectWithin(lost.groundLostClampA, 24.4 / 18000, 1e-12);
  });
  it('gives no verdict where no limit is asked for and nothing pulls', () => {
    expect(loadedDivider(bare)).toMatchObject({ checks: [], decidedBy: null });
  });
  it('judges every limit given', () => {
    const { checks } = loadedDivider({
      ...bare,
      inputOhm: 100000,
      pullDownOhm: 1e6,
      fullScaleV: 5,
      allowedErrorV: 0.5,
    });
    expect(checks.map((check) => check.ok)).toEqual([true, true, true]);
    expect(checks.map((check) => check.source)).toEqual(Array(3).fill('given-by-caller'));
  });
  it('refuses nonsense', () => {
    refusesNonsense<LoadedDividerInput>(
      loadedDivider,
      { ...bare, pullUpOhm: 1000, pullUpV: 5 },
      {
        required: ['inV', 'sourceOhm', 'upperOhm'],
        optional: [
          'lowerOhm',
          'inputOhm',
          'pullUpOhm',
          'pullUpV',
          'pullDownOhm',
          'fullScaleV',
          'clampV',
          'allowedErrorV',
        ],
      },
    );
    expectInputError(() => loadedDivider({ ...bare, pullUpOhm: 1000 }), 'pullUpV', 'missing');
    expectInputError(() => loadedDivider({ ...bare, pullUpV: 5 }), 'pullUpOhm', 'missing');
    expectInputError(() => loadedDivider({ ...bare, upperOhm: 0 }), 'upperOhm', 'above');
  });
});
