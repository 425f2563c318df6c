import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { awgStrandedAreas, metricAreas, saeAreas, spliceArea, type SpliceAreaInput, type SpliceWire } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const MIL = 0.0254;
const solve = (wires: readonly SpliceWire[], areaTable = awgStrandedAreas) => {
  const answer = spliceArea({ wires, areaTable });
  if (!answer.possible) throw new Error(answer.because);
  return answer;
};

describe('published', () => {
  // Strands as AS22759 makes them; AC 43.13-1B prints what they add up to. Their diameters are the AWG's to 0.1 mil.
  const ac = { source: 'ac-43-13-1b', place: 'table 11-9, page 11-23, circular mils', status: 'published' } as const;
  for (const [awg, strandCount, mil, print] of [
    ['24', 19, 5.0, '475'],
    ['22', 19, 6.3, '755'],
    ['20', 19, 8.0, '1216'],
    ['18', 19, 10.0, '1900'],
    ['16', 19, 11.3, '2426'],
    ['14', 19, 14.2, '3831'],
    ['12', 37, 12.6, '5874'],
    ['10', 37, 15.9, '9354'],
    ['8', 133, 11.3, '16983'],
    ['6', 133, 14.2, '26818'],
    ['4', 133, 17.9, '42615'],
    ['2', 665, 10.0, '66500'],
    ['1', 817, 10.0, '81700'],
    ['1/0', 1045, 10.0, '104500'],
    ['2/0', 1330, 10.0, '133000'],
    ['3/0', 1665, 10.0, '166500'],
    ['4/0', 2109, 10.0, '210900'],
  ] as const) {
    computed(`${strandCount} strands of ${mil} mil are ${print} circular mils, ${awg} AWG`, ac, () => {
      const { circularMils, size } = solve([{ strandCount, strandDiameterMm: mil * MIL, count: 1 }]);
      // No. 22 adds up to 754.11, which is printed as 755.
      expectPrinted(circularMils, print, awg === '22' ? 1 : 0.5);
      expect(size).toBe(awg);
    });
  }
  const nasa = { source: 'nasa-std-8739-4', place: '19.11, sum of circular mils', status: 'published' } as const;
  computed('two 18 and one 20 add up to 5016 and count as 12', nasa, () => {
    const { circularMils, size } = solve([
      { size: '18', count: 2 },
      { size: '20', count: 1 },
    ]);
    expectPrinted(circularMils, '5016');
    expect(size).toBe('12');
  });
  computed('three 22 add up to 2265 and count as 16', nasa, () => {
    const { circularMils, size } = solve([{ size: '22', count: 3 }]);
    expectPrinted(circularMils, '2265');
    expect(size).toBe('16');
  });
});

const someWires = fc.array(
  fc.record({ size: fc.constantFrom('24', '22', '20', '18', '16', '14', '12'), count: fc.integer({ min: 1, max: 4 }) }),
  { minLength: 1, maxLength: 4 },
);

describe('laws', () => {
  it('the size is never below the sum, and the next smaller one always is', () => {
    fc.assert(
      fc.property(someWires, (wires) => {
        const { areaMm2, sizeAreaMm2 } = solve(wires);
        // Half a circular mil is the rounding of the print.
        expect(sizeAreaMm2).toBeGreaterThanOrEqual(areaMm2 - (0.5 * Math.PI * MIL * MIL) / 4 - 1e-12);
        for (const [, mils] of awgStrandedAreas.rows) {
          const other = (mils * Math.PI * MIL * MIL) / 4;
          if (other < sizeAreaMm2 * (1 - 1e-9)) expect(other).toBeLessThan(areaMm2);
        }
      }),
    );
  });
  it('walks each table: every size, a hair below and a hair above', () => {
    for (const areaTable of [awgStrandedAreas, saeAreas, metricAreas]) {
      const rows = [...areaTable.rows].sort((a, b) => a[1] - b[1]);
      rows.forEach(([size, printed], i) => {
        const areaMm2 = areaTable.prints === 'mm2' ? printed : (printed * Math.PI * MIL * MIL) / 4;
        expect(solve([{ size, count: 1 }], areaTable).size).toBe(size);
        expect(solve([{ areaMm2: areaMm2 * (1 - 1e-6), count: 1 }], areaTable).size).toBe(size);
        const hair = areaTable.prints === 'mm2' ? areaMm2 * 1e-6 : (0.51 * Math.PI * MIL * MIL) / 4;
        const above = spliceArea({ wires: [{ areaMm2: areaMm2 + hair, count: 1 }], areaTable });
        if (i + 1 < rows.length) expect(above).toMatchObject({ possible: true, size: rows[i + 1]![0] });
        else expect(above).toMatchObject({ possible: false, code: 'beyond-table', nearest: { size } });
      });
    }
  });
  it('adding a wire never gives a smaller size, and the order does not matter', () => {
    fc.assert(
      fc.property(someWires, (wires) => {
        const one = solve(wires);
        expect(solve([...wires, { size: '20', count: 1 }]).sizeAreaMm2).toBeGreaterThanOrEqual(one.sizeAreaMm2);
        expectWithin(solve([...wires].reverse()).areaMm2, one.areaMm2, 1e-12);
      }),
    );
  });
  it('two wires of half a size are that size', () => {
    expect(solve([{ size: '1.25', count: 2 }], metricAreas).size).toBe('2.5');
    expect(solve([{ size: '0.75', count: 2 }], metricAreas).size).toBe('1.5');
    expect(solve([{ size: '0.5', count: 6 }], metricAreas).size).toBe('3');
  });
});

describe('edges', () => {
  it('refuses nonsense with the field that is at fault', () => {
    const good: SpliceAreaInput = { wires: [{ size: '18', count: 1 }], areaTable: awgStrandedAreas };
    const of = (wire: unknown) => () => spliceArea({ ...good, wires: [wire as SpliceWire] });
    expectInputError(() => spliceArea(undefined as never), 'input', 'object');
    expectInputError(() => spliceArea({ wires: good.wires } as never), 'areaTable', 'missing');
    expectInputError(() => spliceArea({ ...good, areaTable: {} as never }), 'areaTable', 'object');
    expectInputError(() => spliceArea({ ...good, wires: [] }), 'wires', 'list');
    expectInputError(of(null), 'wires[0]', 'object');
    expectInputError(of({ size: '17', count: 1 }), 'wires[0].size', 'inTable');
    expectInputError(of({ size: '18', count: 0 }), 'wires[0].count', 'atLeast');
    expectInputError(of({ size: '18', count: 1.5 }), 'wires[0].count', 'integer');
    expectInputError(of({ size: '18' }), 'wires[0].count', 'missing');
    for (const value of [0, -1, NaN, Infinity, 'abc']) {
      expectInputError(of({ areaMm2: value, count: 1 }), 'areaMm2');
      expectInputError(of({ strandCount: 7, strandDiameterMm: value, count: 1 }), 'wires[0].strandDiameterMm');
    }
    expectInputError(of({ strandCount: 0.5, strandDiameterMm: 0.2, count: 1 }), 'wires[0].strandCount');
    expect(of({ size: '17', count: 1 })).toThrow(
      "spliceArea: wires[0].size must be a size of awg-stranded-areas, got '17'",
    );
  });
});
