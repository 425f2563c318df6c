import { describe, expect, it } from 'vitest';
import {
  bladeFuse,
  checkFuse,
  type FusedWire,
  fuseOpeningTime,
  protectionCurves,
  type ProtectionCurvesInput,
} from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectWithin, transcribed } from '../support/published.js';

const wire: FusedWire = { areaMm2: 1.5, ambientTempC: 40, maxConductorTempC: 70, overloadTempC: 90, shortTempC: 160 };
const base: ProtectionCurvesInput = {
  fuses: [{ name: 'F1', family: bladeFuse, ratingA: 40 }],
  wires: [{ name: '1.5 mm²', ampacityA: 18, wire }],
  loads: [
    {
      name: 'fan',
      startSteps: [
        { currentA: 60, durationS: 0.05 },
        { currentA: 30, durationS: 0.4 },
        { currentA: 60, durationS: 0.02 },
      ],
      runA: 12,
    },
  ],
  lines: [{ name: 'far-end short', currentA: 90 }],
};

describe('published', () => {
  const cite = { source: 'iso-8820-3', place: 'type C, 35 and 40 A', status: 'published' } as const;
  const result = protectionCurves(base);
  for (const [currentA, longestS] of [
    [54, 600],
    [64, 50],
    [80, 5],
    [140, 0.5],
    [240, 0.15],
  ] as const) {
    transcribed(`40 A: ${longestS} s at ${currentA} A`, cite, () =>
      expect(result.fuses[0]!.longest.some((p) => Math.abs(p.currentA - currentA) < 1e-9 && p.timeS === longestS)).toBe(
        true,
      ),
    );
  }
  computed('1.5 mm² bears 172.5 A for a second', { source: 'iec-60949', place: 'k = 115', status: 'derived' }, () => {
    const lone = protectionCurves({ ...base, lines: [{ name: 'x', currentA: 172.5 }], fuses: base.fuses });
    for (const { currentA, timeS } of lone.wires[0]!.points.filter((p) => p.timeS < 5)) {
      expectWithin(currentA * Math.sqrt(timeS), 172.5, 1e-3);
    }
  });
});

describe('laws', () => {
  it('every drawn line falls: less time at more current, for wires and both edges of a band', () => {
    const { wires, fuses } = protectionCurves(base);
    for (const points of [wires[0]!.points, fuses[0]!.shortest, fuses[0]!.longest]) {
      expect(points.length).toBeGreaterThan(3);
      for (let i = 1; i < points.length; i++) {
        expect(points[i]!.currentA).toBeGreaterThanOrEqual(points[i - 1]!.currentA);
        expect(points[i]!.timeS).toBeLessThanOrEqual(points[i - 1]!.timeS * (1 + 1e-12));
      }
    }
  });
  it('the band is that of fuseOpeningTime, and the line of the wire that of checkFuse', () => {
    const { fuses, wires } = protectionCurves(base);
    for (const { currentA, timeS } of fuses[0]!.longest) {
      expect(fuseOpeningTime({ family: bladeFuse, ratingA: 40, currentA }).longestS).toBe(timeS);
    }
    const { letThrough } = checkFuse({
      family: bladeFuse,
      ratingA: 40,
      continuousA: 12,
      continuousFraction: 0.75,
      ambientTempC: 20,
      ampacityA: 18,
      overloadRule: 'strict',
      farShortA: 90,
      clearWithinS: 1,
      wire,
    });
    // On the log-log picture the wire's line at each judged current.
    for (const row of letThrough) {
      const i = wires[0]!.points.findIndex(({ currentA }) => currentA >= row.currentA * (1 - 1e-12));
      const [a, b] = [wires[0]!.points[Math.max(0, i - 1)]!, wires[0]!.points[i]!];
      const share = a === b ? 1 : Math.log(row.currentA / a.currentA) / Math.log(b.currentA / a.currentA);
      expectWithin(a.timeS * (b.timeS / a.timeS) ** share, row.bearsS as number, 1e-6);
    }
  });
});

describe('edges', () => {
  it('a load is drawn by how long it draws at least each current', () => {
    const { loads, mostS } = protectionCurves(base);
    const points = loads[0]!.points.map(({ currentA, timeS }) => [currentA, Number(timeS.toFixed(9))]);
    expect(points).toEqual([
      [60, 0.07],
      [30, 0.47],
      [12, mostS],
    ]);
  });
  it('gives the ends of both axes', () => {
    expect(protectionCurves(base)).toMatchObject({ leastA: 12, mostA: 240, leastS: 0.07, mostS: 360000 });
    const bare = protectionCurves({ ...base, wires: [], loads: [], lines: [] });
    expect(bare).toMatchObject({ leastA: 40, mostA: 240, leastS: 0.08 });
  });
  it('a wire that bears all that is drawn has no line', () =>
    expect(protectionCurves({ ...base, wires: [{ name: 'thick', ampacityA: 500, wire }] }).wires[0]!.points).toEqual(
      [],
    ));
  it('refuses nonsense', () => {
    expectInputError(() => protectionCurves({ ...base, fuses: [] }), 'fuses', 'list');
    expectInputError(
      () => protectionCurves({ ...base, fuses: [{ name: '', family: bladeFuse, ratingA: 40 }] }),
      'fuses[0].name',
      'text',
    );
    expectInputError(
      () => protectionCurves({ ...base, fuses: [{ name: 'F', family: bladeFuse, ratingA: 41 }] }),
      'fuses[0].ratingA',
      'inTable',
    );
    expectInputError(
      () => protectionCurves({ ...base, lines: [{ name: 'x', currentA: NaN }] }),
      'lines[0].currentA',
      'finite',
    );
    expectInputError(
      () => protectionCurves({ ...base, wires: [{ name: 'w', ampacityA: 1, wire: { ...wire, areaMm2: 0 } }] }),
      'wires[0].wire.areaMm2',
      'above',
    );
    expectInputError(() => protectionCurves({ ...base, pointCount: 1 }), 'pointCount', 'atLeast');
    expectInputError(() => protectionCurves({ ...base, loads: undefined as never }), 'loads', 'missing');
    for (const value of [undefined, null, 3, 'abc', []]) {
      expectInputError(() => protectionCurves(value as never), 'input', 'object');
    }
  });
});
