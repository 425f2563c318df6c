import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { openCollectorEdge, type OpenCollectorEdgeInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const hall: OpenCollectorEdgeInput = {
  supplyV: 5,
  pullUpOhm: 4700,
  capacitanceF: 1e-8,
  inputOhm: null,
  saturationV: 0.4,
  sinkMostA: 0.02,
  highV: 3.5,
  lowV: 1,
  frequencyHz: 2000,
  offFraction: 0.5,
  mostRiseFraction: 0.3,
};

describe('independent', () => {
  it('rises as a circuit simulator does', async () => {
    const input = { ...hall, inputOhm: 22000, supplyV: 8, saturationV: 0.6 };
    const { riseS, offV } = openCollectorEdge(input);
    // The transistor's level before the edge is that of a source whose divider gives 0.6 V.
    const before = (0.6 * (22000 + 4700)) / 22000;
    const v = await simulate(
      [`v1 s 0 PULSE(${before} 8 1u 1n 1n 1 2)`, 'rp s p 4700', 'ri p 0 22000', 'c1 p 0 10n', '.tran 0.2u 400u'].join(
        '\n',
      ),
    );
    const time = v['time']!;
    const line = v['v(p)']!;
    const k = line.findIndex((volts) => volts >= 3.5);
    const share = (3.5 - line[k - 1]!) / (line[k]! - line[k - 1]!);
    const crossed = time[k - 1]! + share * (time[k]! - time[k - 1]!);
    expectWithin(riseS!, crossed - 1e-6, 2e-3);
    expectWithin(offV, line.at(-1)!, 1e-3);
  });
});

describe('laws', () => {
  it('is slower with more capacitance or a weaker pull-up, and just fits at its highest frequency', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 1e5, noNaN: true }),
        fc.double({ min: 1e-11, max: 1e-7, noNaN: true }),
        (pullUpOhm, capacitanceF) => {
          const one = openCollectorEdge({ ...hall, pullUpOhm, capacitanceF });
          expect(openCollectorEdge({ ...hall, pullUpOhm, capacitanceF: capacitanceF * 2 }).riseS!).toBeGreaterThan(
            one.riseS!,
          );
          expect(openCollectorEdge({ ...hall, pullUpOhm: pullUpOhm * 2, capacitanceF }).riseS!).toBeGreaterThan(
            one.riseS!,
          );
          const at = openCollectorEdge({ ...hall, pullUpOhm, capacitanceF, frequencyHz: one.mostHz! });
          expectWithin(at.riseS!, 0.3 * at.offS, 1e-9);
        },
      ),
    );
  });
  it('does not mistake one input for another', () => {
    swapsMatter(openCollectorEdge, { ...hall, inputOhm: 90000 });
  });
});

describe('edges', () => {
  it('says when the line never reads high', () => {
    const dragged = openCollectorEdge({ ...hall, inputOhm: 8000 });
    expect(dragged).toMatchObject({ riseS: null, mostHz: null });
    expect(dragged.checks.filter((check) => !check.ok).map((check) => check.name)).toEqual([
      'line high',
      'rise within the pulse',
    ]);
    expect(dragged.checks.at(-1)?.because).toBe('the line never reaches the volts that read as high');
  });
  it('judges each limit', () => {
    const failing = (over: Partial<OpenCollectorEdgeInput>): readonly string[] =>
      openCollectorEdge({ ...hall, ...over })
        .checks.filter((check) => !check.ok)
        .map((check) => check.name);
    expect(failing({})).toEqual([]);
    expect(failing({ frequencyHz: 20000 })).toEqual(['rise within the pulse']);
    expect(failing({ pullUpOhm: 220 })).toEqual(['current of the transistor']);
    expect(failing({ saturationV: 1.1 })).toEqual(['line low']);
  });
  it('refuses nonsense', () => {
    refusesNonsense(openCollectorEdge, hall, {
      required: [
        'supplyV',
        'pullUpOhm',
        'capacitanceF',
        'saturationV',
        'sinkMostA',
        'highV',
        'lowV',
        'frequencyHz',
        'offFraction',
        'mostRiseFraction',
      ],
      optional: ['inputOhm'],
    });
    expectInputError(() => openCollectorEdge({ ...hall, saturationV: 6 }), 'saturationV', 'atMost');
    expectInputError(() => openCollectorEdge({ ...hall, highV: 1 }), 'highV', 'above');
    expectInputError(() => openCollectorEdge({ ...hall, mostRiseFraction: 1.5 }), 'mostRiseFraction', 'atMost');
  });
});
