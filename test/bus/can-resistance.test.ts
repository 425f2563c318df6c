import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { canLevels, canLoad50to65, canResistance, type CanPlug, type CanResistanceInput } from 'loomwright';
import { solveLinear } from 'loomwright/number';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin, transcribed } from '../support/published.js';

const plug = (name: string, positionM: number, terminatorOhm: number | null, carriesLine = false): CanPlug => ({
  name,
  positionM,
  terminatorOhm,
  inputOhm: null,
  carriesLine,
});
const base: CanResistanceInput = {
  plugs: [plug('front', 0, 120), plug('middle', 2, null), plug('back', 5, 120)],
  resistanceOhmPerM: 0,
  measureAt: 'middle',
  levels: canLevels,
  load: canLoad50to65,
};

describe('published', () => {
  const iso = { source: 'iso-11898-2', place: '120 Ω at each end, 60 Ω for a driver', status: 'published' } as const;
  computed('two terminators', iso, () => expectPrinted(canResistance(base).readingOhm!, '60'));
  const many = { ...iso, place: 'one to four terminators of 120 Ω', status: 'derived' } as const;
  ['120', '60', '40', '30'].forEach((print, i) =>
    computed(`${i + 1} terminators`, many, () => {
      const plugs = Array.from({ length: i + 1 }, (_, k) => plug(`p${k}`, k, 120));
      expectPrinted(canResistance({ ...base, plugs, measureAt: 'p0' }).readingOhm!, print);
    }),
  );
  it('one plug reads as its own terminator: split in two of 60 Ω, 120', () =>
    expectPrinted(canResistance({ ...base, plugs: [plug('middle', 0, 60 + 60)] }).readingOhm!, '120'));
  const manual = { ...iso, place: 'terminators of 108 to 132 Ω, wire of 70 mΩ/m' } as const;
  transcribed('terminators', manual, () =>
    expect([canLevels.terminatorLeastOhm, canLevels.terminatorMostOhm, canLevels.wireMostOhmPerM]).toEqual([
      108, 132, 0.07,
    ]),
  );
  const levels = { ...iso, place: 'dominant at least 1.5 V driven, 0.9 V received' } as const;
  transcribed('levels', levels, () => expect([canLevels.driveLeastV, canLevels.receiveV]).toEqual([1.5, 0.9]));
});

/** The same line as a dense system of node equations: volts at every plug with 1 A into the meter's place. */
function dense(plugs: readonly CanPlug[], resistanceOhmPerM: number, at: number): Float64Array | null {
  const n = plugs.length;
  const matrix = new Float64Array(n * n);
  const add = (i: number, j: number, g: number): void => {
    matrix[i * n + j] = matrix[i * n + j]! + g;
  };
  plugs.forEach(({ positionM, terminatorOhm, inputOhm }, i) => {
    if (terminatorOhm !== null) add(i, i, 1 / terminatorOhm);
    if (inputOhm !== null) add(i, i, 1 / inputOhm);
    if (i + 1 === n) return;
    const g = 1 / (2 * resistanceOhmPerM * (plugs[i + 1]!.positionM - positionM));
    add(i, i, g);
    add(i + 1, i + 1, g);
    add(i, i + 1, -g);
    add(i + 1, i, -g);
  });
  const side = new Float64Array(n);
  side[at] = 1;
  const solved = solveLinear({ matrix, sides: [side] });
  return solved === null ? null : solved[0]!;
}

describe('independent', () => {
  it('readings and far volts are those of the node equations', () => {
    const ohm = fc.option(fc.double({ min: 50, max: 5000, noNaN: true }), { nil: null });
    const one = fc.record({ gap: fc.double({ min: 0.1, max: 20, noNaN: true }), terminatorOhm: ohm, inputOhm: ohm });
    fc.assert(
      fc.property(
        fc.array(one, { minLength: 2, maxLength: 8 }),
        fc.double({ min: 0.01, max: 0.2, noNaN: true }),
        (list, r) => {
          let positionM = 0;
          const plugs = list.map(({ gap, ...rest }, i) => {
            positionM += gap;
            return { ...rest, name: `p${i}`, positionM, carriesLine: false };
          });
          if (!plugs.some((p) => p.terminatorOhm !== null || p.inputOhm !== null)) return;
          const found = canResistance({ ...base, plugs, resistanceOhmPerM: r, measureAt: 'p0' });
          let least = 1;
          found.atPlugs.forEach(({ readingOhm }, i) => {
            const volts = dense(plugs, r, i)!;
            expectWithin(readingOhm!, volts[i]!, 1e-9);
            // What the others see of a driver there.
            volts.forEach((v) => {
              least = Math.min(least, v / volts[i]!);
            });
          });
          expectWithin(found.farFraction, least, 1e-9);
        },
      ),
    );
  });
  it('the far end of a line with two terminators gets a divider', () => {
    const { farFraction } = canResistance({ ...base, resistanceOhmPerM: 0.07 });
    expectWithin(farFraction, 120 / (120 + 2 * 0.07 * 5), 1e-12);
  });
});

describe('laws', () => {
  it('a plug without terminator changes nothing, one with it does', () => {
    const { pulled } = canResistance(base);
    expect(pulled.map(({ readingOhm }) => readingOhm)).toEqual([120, 60, 120]);
  });
  it('a plug that carries the line leaves one side', () => {
    const plugs = [plug('front', 0, 120), plug('middle', 2, null, true), plug('back', 5, 120)];
    const at = (measureAt: string) => canResistance({ ...base, plugs, measureAt }).pulled[1]!.readingOhm;
    expect(at('front')).toBe(120);
    expect(at('back')).toBe(120);
  });
  it('order of the plugs does not matter', () => {
    const turned = canResistance({ ...base, plugs: [...base.plugs].reverse() });
    expect(turned.readingOhm).toBe(canResistance(base).readingOhm);
  });
});

describe('edges', () => {
  it('an open line has no reading and fails', () => {
    const found = canResistance({ ...base, plugs: [plug('middle', 0, null)] });
    expect(found.readingOhm).toBeNull();
    expect(found.checks.slice(0, 2).every(({ ok }) => !ok)).toBe(true);
  });
  it('three terminators are too much for a driver', () => {
    const plugs = [...base.plugs, plug('display', 3, 120)];
    expect(canResistance({ ...base, plugs }).decidedBy).toBe('load of a driver, least');
  });
  it('a thousand plugs are read and pulled in a moment, and more are refused', () => {
    const list = (count: number) =>
      Array.from({ length: count }, (_, i) => plug(`p${i}`, i / 10, i % 999 === 0 ? 120 : null));
    const found = canResistance({ ...base, plugs: list(1000), measureAt: 'p0' });
    expect(found.readingOhm).toBe(60);
    expect(found.pulled.filter(({ readingOhm }) => readingOhm === 120)).toHaveLength(2);
    expectInputError(() => canResistance({ ...base, plugs: list(1001), measureAt: 'p0' }), 'plugs', 'range');
  });
  it('refuses nonsense by its place', () => {
    const bad = (change: Partial<CanPlug>) => () =>
      canResistance({ ...base, plugs: [{ ...plug('middle', 0, 120), ...change }] });
    expectInputError(bad({ terminatorOhm: 0 }), 'plugs[0].terminatorOhm');
    expectInputError(bad({ inputOhm: -1 }), 'plugs[0].inputOhm');
    expectInputError(bad({ positionM: NaN }), 'plugs[0].positionM');
    expectInputError(bad({ carriesLine: 'no' as unknown as boolean }), 'plugs[0].carriesLine');
    expectInputError(() => canResistance({ ...base, measureAt: 'nowhere' }), 'measureAt');
    expectInputError(() => canResistance({ ...base, plugs: [] }), 'plugs');
    expectInputError(() => canResistance({ ...base, plugs: [plug('a', 0, 1), plug('a', 1, 1)] }), 'plugs[1].name');
    expectInputError(() => canResistance({ ...base, resistanceOhmPerM: -1 }), 'resistanceOhmPerM');
    expectInputError(() => canResistance({ ...base, levels: null as never }), 'levels');
  });
});
