import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { divider, thevenin, type TheveninBranch, type TheveninInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const at = (emfV: number, resistanceOhm: number): TheveninBranch => ({ emfV, resistanceOhm });

describe('published', () => {
  const lec = (place: string) =>
    ({ source: 'lessons-electric-circuits', place: `volume I, chapter 10, ${place}`, status: 'published' }) as const;
  const two = lec('28 V behind 4 Ω and 7 V behind 1 Ω');
  const branches = [at(28, 4), at(7, 1)];
  const open = thevenin({ branches });
  const loaded = thevenin({ branches, loadOhm: 2 });
  const withLoad = thevenin({ branches: [...branches, at(0, 2)] });
  computed('open volts', two, () => {
    expectPrinted(open.emfV, '11.2');
  });
  computed('source resistance', two, () => {
    expectPrinted(open.sourceOhm, '0.8');
  });
  computed('current of the Norton source', two, () => {
    expectPrinted(open.shortA, '14');
  });
  computed('volts of a 2 Ω load', two, () => {
    expectPrinted(loaded.nodeV, '8');
  });
  computed('current of a 2 Ω load', two, () => {
    expectPrinted(loaded.loadA, '4');
  });
  computed('all in parallel, mΩ', two, () => {
    expectPrinted(withLoad.sourceOhm * 1000, '571.43');
  });
  computed('drop on the 4 Ω', two, () => {
    expectPrinted(loaded.branchA[0]! * 4, '20');
  });
  computed('drop on the 2 Ω', two, () => {
    expectPrinted(loaded.loadA * 2, '8');
  });
  computed('drop on the 1 Ω, from the node back', two, () => {
    expectPrinted(-loaded.branchA[1]!, '1');
  });
  computed('the load that takes the most power', lec('maximum power'), () => {
    const power = (loadOhm: number): number => thevenin({ branches, loadOhm }).loadW;
    expect(power(0.8)).toBeGreaterThan(power(0.5));
    expect(power(0.8)).toBeGreaterThan(power(1.1));
    expectWithin(power(0.8), open.mostLoadW, 1e-12);
  });

  /** A bridge: two dividers from one supply, joined by a resistor. */
  const bridge = (inV: number, a: readonly [number, number], b: readonly [number, number], joinOhm: number) => {
    const one = divider({ inV, upperOhm: a[0], lowerOhm: a[1] });
    const other = divider({ inV, upperOhm: b[0], lowerOhm: b[1] });
    const node = (p: typeof one, q: typeof one): number =>
      thevenin({ branches: [at(p.outV, p.sourceOhm), at(q.outV, q.sourceOhm + joinOhm)] }).emfV;
    return { v2: node(one, other), v3: node(other, one) };
  };
  const first = bridge(24, [150, 300], [50, 250], 100);
  const one = lec('unbalanced bridge, SPICE listing');
  computed('node 2 of the 24 V bridge', one, () => {
    expectPrinted(first.v2, '17.66');
  });
  computed('node 3 of the 24 V bridge', one, () => {
    expectPrinted(first.v3, '19.31');
  });
  computed('supply to node 2', one, () => {
    expectPrinted(24 - first.v2, '6.345');
  });
  computed('supply to node 3', one, () => {
    expectPrinted(24 - first.v3, '4.690');
  });
  computed('node 3 to node 2', one, () => {
    expectPrinted(first.v3 - first.v2, '1.655');
  });
  const second = bridge(10, [12, 18], [18, 12], 6);
  const other = lec('unbalanced bridge at 10 V');
  computed('node 2 of the 10 V bridge', other, () => {
    expectPrinted(second.v2, '5.294');
  });
  computed('node 3 of the 10 V bridge', other, () => {
    expectPrinted(second.v3, '4.706');
  });
  computed('node 2 to node 3', other, () => {
    expectPrinted(second.v2 - second.v3, '0.5882');
  });

  const nodal = lec('node voltages with 10 V and −4 V');
  const left = thevenin({ branches: [at(10, 2), at(0, 4)] });
  const right = thevenin({ branches: [at(-4, 1), at(0, 5)] });
  computed('left node', nodal, () => {
    expectPrinted(
      thevenin({ branches: [at(left.emfV, left.sourceOhm), at(right.emfV, right.sourceOhm + 2.5)] }).emfV,
      '3.809524',
    );
  });
  computed('right node', nodal, () => {
    expectPrinted(
      thevenin({ branches: [at(left.emfV, left.sourceOhm + 2.5), at(right.emfV, right.sourceOhm)] }).emfV,
      '-1.547619',
    );
  });
  const rc = lec('20 V through 2 k and 3 k on 500 Ω (chapter 16)');
  const pair = thevenin({ branches: [at(20, 5000), at(0, 500)] });
  computed('open volts across the 500 Ω', rc, () => {
    expectPrinted(pair.emfV, '1.8182');
  });
  computed('resistance across the 500 Ω', rc, () => {
    expectPrinted(pair.sourceOhm, '454.545');
  });

  const tutorial = { source: 'circuit-tutorials', place: 'tutorial 8, answer 1', status: 'published' } as const;
  const loop = thevenin({ branches: [at(12, 6), at(0, 4)], loadOhm: 0.8 });
  computed('12 V, 1 and 5 and 4 Ω: open volts', tutorial, () => {
    expectPrinted(loop.emfV, '4.8');
  });
  computed('its resistance', tutorial, () => {
    expectPrinted(loop.sourceOhm, '2.4');
  });
  computed('current in 0.8 Ω', tutorial, () => {
    expectPrinted(loop.loadA, '1.5');
  });

  // Loaded dividers: the answers' exact resistors are put in, and the volts and the heat of the answer come out.
  const el = (place: string) => ({ source: 'divider-assignment', place, status: 'published' }) as const;
  const q2 = thevenin({ branches: [at(386, 1300), at(0, 2031)], injectedA: -0.032 });
  computed('210 V at 32 mA', el('question 2'), () => {
    expectPrinted(q2.nodeV, '210');
  });
  computed('heat of its bleeder, W', el('question 2'), () => {
    expectPrinted(q2.nodeV * -q2.branchA[1]!, '21.7');
  });
  const q3 = thevenin({ branches: [at(275, 1320)], injectedA: -0.125 });
  computed('110 V at 0.125 A', el('question 3'), () => {
    expectPrinted(q3.nodeV, '110');
  });
  computed('heat of its series resistor, W', el('question 3'), () => {
    expectPrinted(q3.branchA[0]! ** 2 * 1320, '20.6');
  });
  const q4low = thevenin({ branches: [at(28, 174.8), at(0, 108.7)], injectedA: -0.011 });
  const q4high = thevenin({ branches: [at(55, 204.5), at(10, 174.8)], injectedA: -0.029 });
  computed('10 V at 11 mA', el('question 4'), () => {
    expectPrinted(q4low.nodeV, '10');
  });
  computed('28 V at 29 mA', el('question 4'), () => {
    expectPrinted(q4high.nodeV, '28');
  });
  computed('current of its bleeder, mA', el('question 4'), () => {
    expectPrinted(-q4low.branchA[1]! * 1000, '92');
  });
  computed('heat of its bleeder, W', el('question 4'), () => {
    expectPrinted(q4low.branchA[1]! ** 2 * 108.7, '0.92');
  });
  computed('heat of its middle resistor, W', el('question 4'), () => {
    expectPrinted(q4low.branchA[0]! ** 2 * 174.8, '1.85');
  });
  computed('heat of its series resistor, W', el('question 4'), () => {
    expectPrinted(q4high.branchA[0]! ** 2 * 204.5, '3.56');
  });
  const q5 = thevenin({ branches: [at(525, 854.7), at(0, 20238)], injectedA: -0.096 });
  computed('425 V at 96 mA', el('question 5'), () => {
    expectPrinted(q5.nodeV, '425');
  });
  computed('current of its bleeder, mA', el('question 5'), () => {
    expectPrinted(-q5.branchA[1]! * 1000, '21');
  });
  computed('heat of its bleeder, W', el('question 5'), () => {
    expectPrinted(q5.branchA[1]! ** 2 * 20238, '8.9');
  });
  computed('heat of its series resistor, W', el('question 5'), () => {
    expectPrinted(q5.branchA[0]! ** 2 * 854.7, '11.7');
  });
});

describe('independent', () => {
  it('agrees with a circuit simulator on five branches, a leak and a load', async () => {
    const branches = [at(12.4, 33), at(5, 1000), at(0, 470), at(-3.3, 220), at(14.4, 10000)];
    const result = thevenin({ branches, injectedA: 0.002, loadOhm: 680 });
    const lines = branches.flatMap(({ emfV, resistanceOhm }, i) => [
      `v${i} s${i} 0 ${emfV}`,
      `r${i} s${i} n ${resistanceOhm}`,
    ]);
    const v = await simulate([...lines, 'ileak 0 n 0.002', 'rl n 0 680', '.op'].join('\n'));
    expectWithin(result.nodeV, v['v(n)']![0]!, 1e-9);
    result.branchA.forEach((current, i) => {
      expectWithin(current, -v[`i(v${i})`]![0]!, 1e-9);
    });
  });
});

describe('laws', () => {
  const branch = fc.record({
    emfV: evenly(-50, 50),
    resistanceOhm: fc.double({ min: 0.1, max: 1e6, noNaN: true }),
  });
  it('keeps the currents into the node in balance', () => {
    fc.assert(
      fc.property(
        fc.array(branch, { minLength: 1, maxLength: 6 }),
        fc.double({ min: 0.1, max: 1e6, noNaN: true }),
        (branches, loadOhm) => {
          const { branchA, loadA, emfV } = thevenin({ branches, loadOhm });
          const scale = branchA.reduce((sum, i) => sum + Math.abs(i), 1e-9);
          expect(Math.abs(branchA.reduce((sum, i) => sum + i, 0) - loadA) / scale).toBeLessThan(1e-9);
          expect(emfV).toBeLessThanOrEqual(Math.max(...branches.map((b) => b.emfV)) + 1e-9);
        },
      ),
    );
  });
  it('is unmoved by the order of its branches, and splitting one in two halves', () => {
    const branches = [at(12, 10), at(5, 20), at(0, 30)];
    const turned = thevenin({ branches: [...branches].reverse() });
    expectWithin(turned.emfV, thevenin({ branches }).emfV, 1e-14);
    const split = thevenin({ branches: [at(12, 20), at(12, 20), at(5, 20), at(0, 30)] });
    expectWithin(split.emfV, turned.emfV, 1e-14);
  });
});

describe('edges', () => {
  it('takes a short as a load', () => {
    expect(thevenin({ branches: [at(12, 6)], loadOhm: 0 })).toMatchObject({ nodeV: 0, loadA: 2, loadW: 0 });
  });
  it('names the branch at fault', () => {
    expectInputError(() => thevenin({ branches: [at(1, 1), at(1, 0)] }), 'branches[1].resistanceOhm', 'above');
    expectInputError(() => thevenin({ branches: [at(NaN, 1)] }), 'branches[0].emfV', 'finite');
    expectInputError(() => thevenin({ branches: [] }), 'branches', 'list');
    refusesNonsense<TheveninInput>(thevenin, { branches: [at(1, 1)] }, { optional: ['injectedA', 'loadOhm'] });
  });
});
