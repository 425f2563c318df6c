import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { adcReading, checkSwitchLadder, type CheckSwitchLadderInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const clean = {
  supplyV: 5,
  pullOhm: 1000,
  pullTo: 'supply',
  toleranceFraction: 0,
  pullToleranceFraction: 0,
  wireOhm: 0,
  contactMostOhm: 0,
  leakOhm: null,
  idleOhm: null,
  guardV: 0,
  tellShort: false,
  tellOpen: false,
} as const;
const chain: CheckSwitchLadderInput = { ...clean, form: 'chain', buttonOhm: [0, ...Array<number>(9).fill(1000)] };
const absolute: CheckSwitchLadderInput = {
  ...clean,
  form: 'separate',
  buttonOhm: [110, 360, 750, 1300, 2700],
  toleranceFraction: 0.05,
  pullToleranceFraction: 0.05,
};

describe('published', () => {
  const notes = (place: string) => ({ source: 'switch-ladder-notes', place, status: 'published' }) as const;
  const exact = checkSwitchLadder(chain);
  const volts = ['0.0', '2.5', '3.33', '3.75', '4.0', '4.17', '4.29', '4.38', '4.44', '4.5'];
  volts.forEach((print, i) => {
    computed(`chain of 1 kΩ, button ${i + 1}, V`, notes('2018, ladder'), () => {
      expectPrinted(exact.states[i]!.pinV, print);
    });
  });
  // The notes halve rounded counts, so one count of difference is theirs.
  const five = checkSwitchLadder({ ...chain, buttonOhm: [0, 1000, 1000, 1000, 1000] });
  ['256', '598', '726', '794', '921'].forEach((print, i) => {
    computed(`threshold ${i + 1} of five buttons, counts`, notes('2018, thresholds'), () => {
      const { exactCount } = adcReading({
        pinV: five.gaps[i]!.thresholdV,
        referenceV: 5,
        bits: 10,
        divisor: '2^n',
        reference: 'ratiometric',
      });
      expectPrinted(exactCount, print, 1);
    });
  });
  const down = checkSwitchLadder({
    ...clean,
    pullTo: 'ground',
    pullOhm: 20000,
    form: 'separate',
    buttonOhm: [0, 5000, 20000, 50000],
  });
  ['5.0', '4.0', '2.5', '1.43'].forEach((print, i) => {
    computed(`to the supply, pull-down of 20 kΩ, button ${i + 1}, V`, notes('2010, pull-down'), () => {
      expectPrinted(down.states.find((state) => state.name === `button ${i + 1}`)!.pinV, print);
    });
  });
  const even = { source: 'circuit-theory', place: 'even steps: R = Rp k ÷ (m − k)', status: 'derived' } as const;
  const evenOnes = checkSwitchLadder({ ...clean, form: 'chain', buttonOhm: [0, 250, 416.67, 833.33, 2500] });
  ['0', '1.000', '2.000', '3.000', '4.000'].forEach((print, i) => {
    computed(`even chain, button ${i + 1}, V`, even, () => {
      expectPrinted(evenOnes.states[i]!.pinV, print);
    });
  });

  const w8 = (place: string) =>
    ({ source: 'circuit-theory', place: `worked case: buttons, ${place}`, status: 'derived' }) as const;
  const five5 = checkSwitchLadder({ ...chain, toleranceFraction: 0.05, pullToleranceFraction: 0.05 });
  ['2375', '595', '211', '76', '17', '-12', '-27', '-35', '-39'].forEach((print, i) => {
    computed(`chain with 5 % parts, gap ${i + 1}, mV`, w8('chain of 1 kΩ'), () => {
      expectPrinted(five5.gaps[i]!.gapV * 1000, print);
    });
  });
  ['0', '2.500', '3.333', '3.750', '4.000', '4.167', '4.286', '4.375', '4.444', '4.500'].forEach((print, i) => {
    computed(`chain, button ${i + 1}, V`, w8('chain of 1 kΩ'), () => {
      expectPrinted(five5.states[i]!.pinV, print);
    });
  });
  computed('buttons with no guard', w8('chain of 1 kΩ'), () => {
    expect(five5.distinctCount).toBe(6);
  });
  computed('buttons with a guard of 100 mV', w8('chain of 1 kΩ'), () => {
    expect(
      checkSwitchLadder({ ...chain, toleranceFraction: 0.05, pullToleranceFraction: 0.05, guardV: 0.1 }).distinctCount,
    ).toBe(4);
  });
  const separate = checkSwitchLadder(absolute);
  ['0.495', '1.324', '2.143', '2.826', '3.649', '5.0'].forEach((print, i) => {
    computed(`separate, state ${i + 1}, V`, w8('separate resistors'), () => {
      // The case cuts 0.4955 V off after three digits.
      expectPrinted(separate.states[i]!.pinV, print, i === 0 ? 0.6 : 0.5);
    });
  });
  ['686', '598', '436', '600', '1255'].forEach((print, i) => {
    computed(`separate, gap ${i + 1}, mV`, w8('separate resistors'), () => {
      expectPrinted(separate.gaps[i]!.gapV * 1000, print);
    });
  });
  ['0.885', '1.722', '2.484', '3.248', '4.373'].forEach((print, i) => {
    computed(`separate, threshold ${i + 1}, V`, w8('separate resistors'), () => {
      expectPrinted(separate.gaps[i]!.thresholdV, print);
    });
  });
});

describe('independent', () => {
  it('a circuit simulator gives the same volts for single and double presses, with a far-end resistor', async () => {
    const ladder: CheckSwitchLadderInput = {
      ...absolute,
      idleOhm: 10000,
      toleranceFraction: 0,
      pullToleranceFraction: 0,
      wireOhm: 0,
    };
    const result = checkSwitchLadder(ladder);
    const net = (n: string, ohms: readonly number[]): string[] => [
      `v${n} s${n} 0 5`,
      `rp${n} s${n} p${n} 1000`,
      `ri${n} p${n} 0 10000`,
      ...ohms.map((ohm, i) => `r${n}${i} p${n} 0 ${ohm}`),
    ];
    const v = await simulate([...net('a', [750]), ...net('b', [360, 1300]), ...net('c', []), '.op'].join('\n'));
    expectWithin(result.states.find((state) => state.name === 'button 3')!.pinV, v['v(pa)']![0]!, 1e-9);
    const both = result.pairs.find((pair) => pair.first === 'button 2' && pair.second === 'button 4')!;
    expectWithin(both.lowV, v['v(pb)']![0]!, 1e-9);
    expectWithin(both.highV, v['v(pb)']![0]!, 1e-9);
    expectWithin(result.states.at(-1)!.pinV, v['v(pc)']![0]!, 1e-9);
  });
  it('holds every build of real parts within its worst cases', () => {
    const input: CheckSwitchLadderInput = {
      ...absolute,
      wireOhm: 3,
      contactMostOhm: 40,
      leakOhm: 50000,
      idleOhm: 8200,
    };
    const { states } = checkSwitchLadder(input);
    const corner = fc.constantFrom(0, 1);
    fc.assert(
      fc.property(
        corner,
        corner,
        corner,
        corner,
        corner,
        corner,
        fc.integer({ min: 0, max: 5 }),
        (a, b, c, d, e, f, k) => {
          const t = (x: number): number => 0.95 + 0.1 * x;
          const pull = 1000 * t(a);
          const idle = 8200 * t(b);
          const leak = c === 0 ? 50000 : Infinity;
          const pressed = k === 5 ? Infinity : [110, 360, 750, 1300, 2700][k]! * t(d) + 40 * e;
          const seen = 1 / (1 / idle + 1 / leak + 1 / pressed) + 3 * f;
          const v = (5 * seen) / (seen + pull);
          expect(v).toBeGreaterThanOrEqual(states[k]!.lowV - 1e-12);
          expect(v).toBeLessThanOrEqual(states[k]!.highV + 1e-12);
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('laws', () => {
  it('pulled to ground it is the mirror image', () => {
    const up = checkSwitchLadder({ ...absolute, wireOhm: 2, contactMostOhm: 20 });
    const down = checkSwitchLadder({ ...absolute, wireOhm: 2, contactMostOhm: 20, pullTo: 'ground' });
    expectWithin(up.smallestGapV, down.smallestGapV, 1e-12);
    up.states.forEach((state, i) => {
      const mirrored = down.states[down.states.length - 1 - i]!;
      expect(mirrored.name).toBe(state.name);
      expectWithin(5 - mirrored.highV, state.lowV, 1e-12);
    });
  });
  it('wider parts, longer wires, dirtier contacts and damp only close the gaps', () => {
    const base = { ...absolute, wireOhm: 1, contactMostOhm: 5, leakOhm: 1e6 };
    const at = (over: Partial<CheckSwitchLadderInput>): number => checkSwitchLadder({ ...base, ...over }).smallestGapV;
    for (const worse of [
      { toleranceFraction: 0.06 },
      { pullToleranceFraction: 0.06 },
      { wireOhm: 9 },
      { contactMostOhm: 50 },
      { leakOhm: 1e4 },
    ]) {
      expect(at(worse)).toBeLessThan(at({}));
    }
  });
  it('in a chain the button nearer to the pin wins; separate ones may look like a third', () => {
    const { pairs } = checkSwitchLadder({ ...chain, buttonOhm: [0, 1000, 1000], contactMostOhm: 10 });
    expect(pairs.map((pair) => pair.readsAs)).toEqual([['button 1'], ['button 1'], ['button 2']]);
    const two = checkSwitchLadder(absolute).pairs.find(
      (pair) => pair.first === 'button 3' && pair.second === 'button 4',
    );
    expect(two?.readsAs).toContain('button 2');
  });
  it('does not mistake one input for another', () => {
    swapsMatter(checkSwitchLadder, {
      ...absolute,
      wireOhm: 2,
      contactMostOhm: 33,
      leakOhm: 90000,
      idleOhm: 8000,
      pullToleranceFraction: 0.01,
    });
  });
});

describe('edges', () => {
  it('a shorted wire is not told from a first button of 0 Ω', () => {
    const result = checkSwitchLadder({ ...chain, tellShort: true, guardV: 0.05 });
    expect(result.shortGapV).toBe(0);
    expect(result.checks.find((check) => check.name.startsWith('gap between a shorted wire'))?.ok).toBe(false);
    expect(checkSwitchLadder({ ...absolute, tellShort: true, guardV: 0.05 }).checks.at(-1)?.ok).toBe(true);
  });
  it('a broken wire is told only with a far-end resistor', () => {
    const none = checkSwitchLadder({ ...absolute, tellOpen: true, guardV: 0.1 });
    expect(none.openGapV).toBe(0);
    expect(none.checks.at(-1)).toMatchObject({
      ok: false,
      value: null,
      because: 'without a far-end resistor both read the same',
    });
    expect(none.distinctCount).toBe(0);
    const fitted = checkSwitchLadder({ ...absolute, tellOpen: true, guardV: 0.1, idleOhm: 10000 });
    expect(fitted.checks.at(-1)).toMatchObject({ ok: true });
    expect(fitted.openV).toBe(5);
  });
  it('keeps the names it is given', () => {
    const named = checkSwitchLadder({ ...absolute, guardV: 0.1, names: ['up', 'down', 'set', 'back', 'menu'] });
    expect(named.states.map((state) => state.name)).toEqual(['up', 'down', 'set', 'back', 'menu', 'none']);
    expect(named.decidedBy).toBe('gap between set and back');
  });
  it('refuses nonsense', () => {
    refusesNonsense(checkSwitchLadder, absolute, {
      required: [
        'supplyV',
        'pullOhm',
        'toleranceFraction',
        'pullToleranceFraction',
        'wireOhm',
        'contactMostOhm',
        'guardV',
      ],
      optional: ['leakOhm', 'idleOhm'],
    });
    expectInputError(() => checkSwitchLadder({ ...absolute, buttonOhm: [100, 100] }), 'buttonOhm[1]', 'order');
    expectInputError(() => checkSwitchLadder({ ...chain, buttonOhm: [0, 0] }), 'buttonOhm[1]', 'order');
    expectInputError(() => checkSwitchLadder({ ...absolute, buttonOhm: [] }), 'buttonOhm', 'list');
    expectInputError(() => checkSwitchLadder({ ...absolute, names: ['one'] }), 'names', 'list');
    expectInputError(() => checkSwitchLadder({ ...absolute, form: 'star' as never }), 'form', 'oneOf');
    expectInputError(() => checkSwitchLadder({ ...absolute, pullTo: undefined as never }), 'pullTo', 'missing');
  });
});
