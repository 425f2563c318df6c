import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { type CalibrationCell, lookUp, type LookUpInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted } from '../support/published.js';

const cells: readonly CalibrationCell[] = [
  { inValue: 0.5, outValue: -10 },
  { inValue: 1, outValue: 20 },
  { inValue: 3, outValue: 25 },
  { inValue: 4.5, outValue: 7 },
];

describe('published', () => {
  // 4 to 20 mA into 250 Ω: volts by per cent of the range, as printed.
  const loop: readonly (readonly [percent: string, volts: number])[] = [
    ['0', 1.0],
    ['10', 1.4],
    ['20', 1.8],
    ['25', 2.0],
    ['30', 2.2],
    ['40', 2.6],
    ['50', 3.0],
    ['60', 3.4],
    ['70', 3.8],
    ['75', 4.0],
    ['80', 4.2],
    ['90', 4.6],
    ['100', 5.0],
  ];
  for (const [percent, volts] of loop) {
    const cite = {
      source: 'lessons-electric-circuits',
      place: 'DC, current signal systems',
      status: 'published',
    } as const;
    computed(`${volts} V of 1 to 5 V are ${percent} %`, cite, () => {
      const ends = [
        { inValue: 1, outValue: 0 },
        { inValue: 5, outValue: 100 },
      ];
      const { outValue } = lookUp({ cells: ends, inValue: volts, outside: 'throw' });
      expectPrinted(outValue!, percent, 1e-6);
    });
  }
});

describe('independent', () => {
  it('agrees with weights worked out for each piece in turn', () => {
    for (let i = 0; i <= 400; i++) {
      const inValue = 0.5 + i / 100;
      const k = cells.findIndex((cell, n) => n > 0 && inValue <= cell.inValue);
      const [p, q] = [cells[k - 1]!, cells[k]!];
      const w = (q.inValue - inValue) / (q.inValue - p.inValue);
      expect(lookUp({ cells, inValue, outside: 'throw' }).outValue).toBeCloseTo(
        w * p.outValue + (1 - w) * q.outValue,
        12,
      );
    }
  });
});

describe('laws', () => {
  const tables = fc
    .array(fc.tuple(fc.double({ min: 0.001, max: 9, noNaN: true }), evenly(-99, 99)), {
      minLength: 2,
      maxLength: 20,
    })
    .map((steps) => {
      let x = -20;
      return steps.map(([dx, outValue]): CalibrationCell => ({ inValue: (x += dx), outValue }));
    });
  it('is exact at every cell, in each way', () => {
    fc.assert(
      fc.property(tables, fc.constantFrom('clamp', 'throw', 'fault'), (table, outside) => {
        table.forEach(({ inValue, outValue }, i) => {
          const found = lookUp({ cells: table, inValue, outside });
          expect(found).toMatchObject({ cellIndex: i, side: 'inside' });
          // Nought and minus nought are one value.
          expect(found.outValue! + 0).toBe(outValue + 0);
        });
      }),
    );
  });
  it('never leaves the range of its two cells', () => {
    fc.assert(
      fc.property(tables, evenly(0, 1), (table, share) => {
        const inValue = table[0]!.inValue + (table.at(-1)!.inValue - table[0]!.inValue) * share;
        const { outValue, cellIndex } = lookUp({ cells: table, inValue, outside: 'clamp' });
        const pair = [table[cellIndex]!.outValue, table[Math.min(cellIndex + 1, table.length - 1)]!.outValue];
        expect(outValue).toBeGreaterThanOrEqual(Math.min(...pair) - 1e-9);
        expect(outValue).toBeLessThanOrEqual(Math.max(...pair) + 1e-9);
      }),
    );
  });
  it('the slope is that of the value', () => {
    const at = (inValue: number) => lookUp({ cells, inValue, outside: 'throw' });
    for (const x of [0.7, 2, 4]) {
      expect((at(x + 0.001).outValue! - at(x - 0.001).outValue!) / 0.002).toBeCloseTo(at(x).slope!, 6);
    }
  });
});

describe('edges', () => {
  const input: LookUpInput = { cells, inValue: 2, outside: 'fault' };
  it('outside: the end, a refusal or a fault, on both sides', () => {
    const at = (inValue: number, outside: LookUpInput['outside']) => lookUp({ cells, inValue, outside });
    expect(at(0.499, 'clamp')).toEqual({ outValue: -10, side: 'below', fault: null, cellIndex: 0, slope: 0 });
    expect(at(4.501, 'clamp')).toEqual({ outValue: 7, side: 'above', fault: null, cellIndex: 3, slope: 0 });
    expect(at(0.499, 'fault')).toEqual({
      outValue: null,
      side: 'below',
      fault: 'below-table',
      cellIndex: 0,
      slope: null,
    });
    expect(at(99, 'fault')).toMatchObject({ outValue: null, fault: 'above-table' });
    expectInputError(() => at(0.499, 'throw'), 'inValue', 'range');
    expect(() => at(5, 'throw')).toThrow('lookUp: inValue must lie from 0.5 to 4.5, got 5');
    expect(at(0.5, 'throw').outValue).toBe(-10);
    expect(at(4.5, 'throw').outValue).toBe(7);
  });
  it('refuses nonsense', () => {
    refusesNonsense(lookUp, input, { required: ['inValue'] });
    expectInputError(() => lookUp({ ...input, outside: 'wrap' as never }), 'outside', 'oneOf');
    expectInputError(() => lookUp({ ...input, cells: cells.slice(0, 1) }), 'cells', 'list');
    expectInputError(() => lookUp({ ...input, cells: [...cells].reverse() }), 'cells[1].inValue', 'order');
    expectInputError(
      () => lookUp({ ...input, cells: [cells[0]!, { inValue: 'x' as never, outValue: 1 }] }),
      'cells[1].inValue',
    );
    expectInputError(
      () => lookUp({ ...input, cells: [cells[0]!, { inValue: 2, outValue: '1' as never }] }),
      'cells[1].outValue',
    );
  });
  it('what comes in and what is shown swapped is another table', () => {
    const pair = [
      { inValue: 1, outValue: 2 },
      { inValue: 2, outValue: 5 },
    ];
    const swapped = pair.map(({ inValue, outValue }) => ({ inValue: outValue, outValue: inValue }));
    const at = { inValue: 2, outside: 'clamp' } as const;
    expect(lookUp({ cells: pair, ...at }).outValue).not.toBe(lookUp({ cells: swapped, ...at }).outValue);
  });
});
