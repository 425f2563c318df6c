import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { type Load, solvePath, type SolvePathInput, type SolvePathResult } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const solved = (input: SolvePathInput): SolvePathResult => {
  const result = solvePath(input);
  if (!result.possible) throw new Error(result.because);
  return result;
};
const path = (load: Load, ...ohms: number[]): SolvePathInput => ({
  supplyV: 12,
  outParts: ohms.map((resistanceOhm, i) => ({ name: `part ${i + 1}`, resistanceOhm })),
  returnParts: [{ name: 'back', resistanceOhm: 0.01 }],
  load,
});

describe('published', () => {
  const cite = {
    source: 'nec-chapter-9-table-8',
    place: 'two-wire, 100 ft, No. 16 at 4.99 Ω/kft, 4 A on 24 V',
    status: 'published',
  } as const;
  const result = solved({
    supplyV: 24,
    outParts: [{ name: 'out', resistanceOhm: 0.499 }],
    returnParts: [{ name: 'back', resistanceOhm: 0.499 }],
    load: { kind: 'constant-current', currentA: 4 },
  });
  computed('drop of a two-wire circuit', cite, () => expectPrinted(result.dropV, '3.99'));
  // The source takes the percentage of the rounded 4.0 V: 16.67; of 3.99 V it is 16.63.
  computed('the same as a share of 24 V', cite, () => expectPrinted(result.dropFraction * 100, '16.7', 0.7));
});

describe('independent', { timeout: 60_000 }, () => {
  /** One path for the simulator: resistors in series, the load as a source or resistor. */
  const netlist = (supplyV: number, out: readonly number[], back: readonly number[], load: string): string => {
    const lines = [`V1 n0 0 ${supplyV}`];
    out.forEach((r, i) => lines.push(`Ro${i} n${i} n${i + 1} ${r}`));
    back.forEach((r, i) => lines.push(`Rb${i} m${i} ${i === back.length - 1 ? '0' : `m${i + 1}`} ${r}`));
    return `${lines.join('\n')}\n${load}\n.options reltol=1e-9 abstol=1e-12 vntol=1e-9\n.op`;
  };

  it('agrees with a circuit simulator on 240 random paths of four kinds of load, to 1e-6', async () => {
    const ohm = fc.double({ min: 1e-4, max: 0.2, noNaN: true });
    const cases = fc.sample(
      fc.record({
        supplyV: fc.double({ min: 8, max: 30, noNaN: true }),
        out: fc.array(ohm, { minLength: 1, maxLength: 6 }),
        back: fc.array(ohm, { minLength: 1, maxLength: 3 }),
        size: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
      }),
      { numRuns: 60, seed: 20260101 },
    );
    let compared = 0;
    for (const { supplyV, out, back, size } of cases) {
      const series = [...out, ...back].reduce((a, b) => a + b, 0);
      const most = supplyV / series;
      const windingOhm = 0.3;
      const ratedA = Math.min(8, most / 4) * size;
      const emfV = 12 - ratedA * windingOhm;
      const loads: [Load, string][] = [
        [{ kind: 'constant-current', currentA: most * size }, `I1 n${out.length} m0 ${most * size}`],
        [{ kind: 'resistance', resistanceOhm: size * 3 }, `RL n${out.length} m0 ${size * 3}`],
        [
          { kind: 'constant-power', powerW: (size * supplyV ** 2) / (4.2 * series) },
          `B1 n${out.length} m0 I=${(size * supplyV ** 2) / (4.2 * series)}/V(n${out.length},m0)\n.nodeset v(n${out.length})=${supplyV}`,
        ],
        [
          {
            kind: 'motor',
            windingResistanceOhm: windingOhm,
            speedConstantRpmPerV: 300,
            ratedCurrentA: ratedA,
            ratedV: 12,
            torque: 'speed-squared',
          },
          `RW n${out.length} e ${windingOhm}\nB1 e m0 I=${ratedA / emfV ** 2}*V(e,m0)*abs(V(e,m0))\n.nodeset v(e)=${supplyV}`,
        ],
      ];
      for (const [load, element] of loads) {
        const ours = solved({
          supplyV,
          outParts: out.map((resistanceOhm, i) => ({ name: `o${i}`, resistanceOhm })),
          returnParts: back.map((resistanceOhm, i) => ({ name: `b${i}`, resistanceOhm })),
          load,
        });
        const theirs = await simulate(netlist(supplyV, out, back, element));
        expectWithin(ours.currentA, -(theirs['i(v1)']?.[0] ?? NaN), 1e-6);
        ours.parts.forEach((part, i) => {
          const node =
            part.side === 'out' ? `v(n${i + 1})` : i === ours.parts.length - 1 ? null : `v(m${i - out.length + 1})`;
          if (node !== null) expect(Math.abs(part.afterV - (theirs[node]?.[0] ?? NaN))).toBeLessThan(1e-6 * supplyV);
        });
        compared++;
      }
    }
    expect(compared).toBe(240);
  });

  it('solves a constant power as the quadratic formula does', () => {
    const { currentA, otherCurrentA } = solved(path({ kind: 'constant-power', powerW: 100 }, 0.1, 0.09));
    for (const i of [currentA, otherCurrentA as number]) expectWithin(i * (12 - 0.2 * i), 100, 1e-12);
    expect(currentA).toBeLessThan(otherCurrentA as number);
  });
});

describe('laws', () => {
  const anyLoad: fc.Arbitrary<Load> = fc.oneof(
    fc.double({ min: 0.01, max: 30, noNaN: true }).map((currentA): Load => ({ kind: 'constant-current', currentA })),
    fc
      .double({ min: 0.1, max: 100, noNaN: true })
      .map((resistanceOhm): Load => ({ kind: 'resistance', resistanceOhm })),
    fc.double({ min: 0.1, max: 200, noNaN: true }).map((powerW): Load => ({ kind: 'constant-power', powerW })),
    fc.constantFrom<Load>(
      {
        kind: 'motor',
        windingResistanceOhm: 0.4,
        speedConstantRpmPerV: 350,
        ratedCurrentA: 6,
        ratedV: 13.5,
        torque: 'constant',
      },
      {
        kind: 'motor',
        windingResistanceOhm: 0.2,
        speedConstantRpmPerV: 250,
        ratedCurrentA: 14,
        ratedV: 13,
        torque: 'speed-squared',
      },
    ),
  );
  const ohms = fc.array(evenlyWithEnds(0, 0.3), { maxLength: 5 });

  it('loses nothing: drops add up, powers add up, shares add to one', () => {
    fc.assert(
      fc.property(anyLoad, ohms, (load, list) => {
        const result = solvePath(path(load, ...list));
        if (!result.possible) return;
        const sum = result.parts.reduce((a, part) => a + part.dropV, 0);
        expectWithin(sum, result.dropV, 1e-9);
        expectWithin(result.loadPowerW + result.lossW, 12 * result.currentA, 1e-9);
        expectWithin(
          result.parts.reduce((a, part) => a + part.dropFraction, 0),
          1,
          1e-9,
        );
        expect(Math.abs((result.parts.at(-1)?.afterV ?? NaN) - 0)).toBeLessThan(1e-9);
      }),
    );
  });

  it('never gives the load more volts through more resistance', () => {
    fc.assert(
      fc.property(anyLoad, ohms, fc.double({ min: 1e-6, max: 0.5, noNaN: true }), (load, list, more) => {
        const before = solvePath(path(load, ...list));
        const after = solvePath(path(load, ...list, more));
        if (before.possible && after.possible) expect(after.loadV).toBeLessThanOrEqual(before.loadV + 1e-12);
        if (!before.possible) expect(after.possible).toBe(false);
      }),
    );
  });

  it('a motor at its rated voltage with no path draws its rated current', () => {
    for (const torque of ['constant', 'speed-squared'] as const) {
      const result = solved({
        supplyV: 13,
        outParts: [],
        returnParts: [],
        load: {
          kind: 'motor',
          windingResistanceOhm: 0.25,
          speedConstantRpmPerV: 200,
          ratedCurrentA: 12,
          ratedV: 13,
          torque,
        },
      });
      expectWithin(result.currentA, 12, 1e-12);
      expectWithin(result.speedRpm as number, 2000, 1e-12);
    }
  });
});

describe('edges', () => {
  it('says that a path cannot feed its load, and what it could', () => {
    expect(solvePath(path({ kind: 'constant-current', currentA: 60 }, 0.19))).toMatchObject({
      possible: false,
      code: 'no-volts-left',
      nearest: { currentA: 60 },
    });
    const power = solvePath(path({ kind: 'constant-power', powerW: 180.001 }, 0.19));
    expect(power).toMatchObject({ possible: false, code: 'power-beyond-line' });
    expect(solvePath(path({ kind: 'constant-power', powerW: 179.999 }, 0.19)).possible).toBe(true);
  });
  it('a constant power through no resistance has one solution', () => {
    expect(
      solved({ supplyV: 12, outParts: [], returnParts: [], load: { kind: 'constant-power', powerW: 24 } }),
    ).toMatchObject({
      currentA: 2,
      otherCurrentA: null,
      loadV: 12,
    });
  });
  it('a constant-torque motor stalls where the path leaves too little', () => {
    const result = solved(
      path(
        {
          kind: 'motor',
          windingResistanceOhm: 0.5,
          speedConstantRpmPerV: 300,
          ratedCurrentA: 10,
          ratedV: 12,
          torque: 'constant',
        },
        0.8,
      ),
    );
    expect(result).toMatchObject({ stalled: true, speedRpm: 0 });
    expectWithin(result.currentA, 12 / 1.31, 1e-12);
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(solvePath, path({ kind: 'resistance', resistanceOhm: 3 }, 0.1), { required: ['supplyV'] });
    expectInputError(
      () => solvePath({ ...path({ kind: 'resistance', resistanceOhm: 3 }, -1) }),
      'outParts[0].resistanceOhm',
      'atLeast',
    );
    expectInputError(
      () => solvePath({ ...path({ kind: 'resistance', resistanceOhm: 0 }) }),
      'load.resistanceOhm',
      'above',
    );
    expectInputError(
      () => solvePath({ ...path({ kind: 'arc' as 'resistance', resistanceOhm: 1 }) }),
      'load.kind',
      'oneOf',
    );
    expectInputError(
      () => solvePath({ ...path({ kind: 'resistance', resistanceOhm: 1 }), load: undefined as never }),
      'load',
      'missing',
    );
    expectInputError(
      () => solvePath({ ...path({ kind: 'resistance', resistanceOhm: 1 }), outParts: 'x' as never }),
      'outParts',
      'list',
    );
    expectInputError(
      () =>
        solvePath(
          path({
            kind: 'motor',
            windingResistanceOhm: 1,
            speedConstantRpmPerV: 1,
            ratedCurrentA: 12,
            ratedV: 12,
            torque: 'constant',
          }),
        ),
      'load.ratedCurrentA',
      'below',
    );
  });
});
