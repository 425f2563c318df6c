import { describe, expect, it } from 'vitest';
import {
  canCableByLength,
  canDropLines,
  canDs102,
  canEdgeTenth,
  canEdgeThird,
  type CanLengthTable,
  canLengthsA,
  canLengthsB,
  canLengthsC,
  canLengthsD,
  canLengthsEngine,
  canTopology,
  type CanTopologyInput,
} from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin, transcribed } from '../support/published.js';

const base: CanTopologyInput = {
  bitRateBitPerS: 500_000,
  trunkM: 6,
  terminatorPlacesM: [0, 6],
  stubs: [
    { name: 'display', positionM: 2, lengthM: 0.25 },
    { name: 'switches', positionM: 4, lengthM: 0.2 },
  ],
  rule: canLengthsA,
  edgeS: null,
  waveSpeedFraction: null,
};

describe('published', () => {
  const sheet = {
    source: 'can-transceiver-sheets',
    place: 'stub length by rise time, 0.78 c',
    status: 'published',
  } as const;
  const edges = [
    [3, '0.07'],
    [4, '0.1'],
    [10, '0.23'],
    [25, '0.6'],
    [100, '2.34'],
    [120, '2.8'],
  ] as const;
  for (const [ns, print] of edges) {
    computed(`an edge of ${ns} ns`, sheet, () => {
      const found = canTopology({ ...base, rule: canEdgeTenth, edgeS: ns * 1e-9, waveSpeedFraction: 0.78 });
      // The sheet rounds 0.0936 to 0.1 and 0.585 to 0.6.
      expectPrinted(found.mostStubM!, print);
    });
  }
  const cia = { source: 'cia-301', place: '50 ns at 5 ns/m: critical length 5 m', status: 'published' } as const;
  computed('a third of it is 1.67 m', cia, () => {
    const waveSpeedFraction = 2e8 / 299_792_458;
    const found = canTopology({ ...base, rule: canEdgeThird, edgeS: 50e-9, waveSpeedFraction });
    expectPrinted(found.mostStubM!, '1.67');
    expectPrinted(3 * found.mostStubM!, '5');
  });

  const manuals = { source: 'can-cabling-pages', place: 'lengths by bit rate', status: 'published' } as const;
  const printed: readonly (readonly [CanLengthTable, readonly (readonly (number | null)[])[]])[] = [
    [
      canLengthsA,
      [
        [1000, 40, 0.3, null],
        [500, 100, 0.3, null],
        [100, 500, null, null],
        [50, 1000, null, null],
      ],
    ],
    [
      canLengthsB,
      [
        [1000, 20],
        [500, 100],
        [250, 250],
        [125, 500],
        [50, 1000],
        [20, 2500],
        [10, 5000],
      ].map((row) => [...row, null, null]),
    ],
    [
      canLengthsC,
      [
        [1000, 20, 1, 5],
        [500, 100, 5, 25],
        [250, 250, 10, 50],
        [125, 500, 20, 100],
        [50, 1000, 50, 250],
      ],
    ],
    [
      canLengthsD,
      [
        [1000, 40, 2, 10],
        [500, 110, 5, 25],
        [250, 280, 10, 50],
        [125, 620, 20, 100],
      ],
    ],
    [
      canLengthsEngine,
      [
        [1000, 25, 1.5, 7.5],
        [800, 50, 2.5, 12.5],
        [500, 100, 5.5, 27.5],
        [250, 250, 11, 55],
        [125, 500, 22, 110],
        [50, 1000, 55, 275],
      ],
    ],
  ];
  for (const [table, rows] of printed) {
    for (const [i, row] of rows.entries()) {
      transcribed(`${table.key}, ${row[0]} kbit/s`, manuals, () => expect(table.rows[i]).toEqual(row));
      it(`${table.key} judges ${row[0]} kbit/s by that row`, () => {
        const found = canTopology({ ...base, rule: table, bitRateBitPerS: 1000 * row[0]! });
        expect([found.rowKbitPerS, found.mostTrunkM, found.mostStubM, found.mostStubSumM]).toEqual(row);
      });
    }
    it(`${table.key} has no more rows`, () => expect(table.rows).toHaveLength(rows.length));
  }
  const field = { source: 'fieldbus-cable-manual', place: 'drop lines', status: 'published' } as const;
  for (const [rate, sum] of [
    [500, 39],
    [250, 78],
    [125, 156],
  ] as const) {
    transcribed(`drop lines at ${rate} kbit/s`, field, () => {
      const found = canTopology({ ...base, rule: canDropLines, bitRateBitPerS: 1000 * rate });
      expect([found.mostStubM, found.mostStubSumM]).toEqual([6, sum]);
    });
  }
  const cable = { ...field, place: 'cable and terminators by length' } as const;
  for (const row of [
    [0, 40, 0.25, 0.34, 124, 124, 70],
    [40, 300, 0.34, 0.6, 127, 127, 60],
    [300, 600, 0.5, 0.6, 150, 300, 40],
    [600, 1000, 0.75, 0.8, 150, 300, 20],
  ]) {
    transcribed(`${row[0]} to ${row[1]} m`, cable, () => expect(canCableByLength.rows).toContainEqual(row));
  }
  const ds = { source: 'cia-ds-102', place: 'version 2.0, stub at 1 Mbit/s', status: 'published' } as const;
  transcribed('0.3 m', ds, () => {
    expectPrinted(canTopology({ ...base, rule: canDs102, bitRateBitPerS: 1e6 }).mostStubM!, '0.3');
  });
});

describe('independent', () => {
  it('a stub at its limit has a delay of a tenth of the edge', () => {
    const found = canTopology({ ...base, rule: canEdgeTenth, edgeS: 40e-9, waveSpeedFraction: 0.66 });
    expectWithin(found.mostStubM! / (0.66 * 299_792_458), 4e-9, 1e-12);
  });
});

describe('laws', () => {
  it('a bit rate between two rows takes the stricter one', () => {
    expect(canTopology({ ...base, bitRateBitPerS: 300_000 }).rowKbitPerS).toBe(500);
  });
  it('a line laid right is met', () => expect(canTopology(base).ok).toBe(true));
  it('a stub one step too long is not', () => {
    const stubs = [{ name: 'display', positionM: 2, lengthM: 0.301 }];
    expect(canTopology({ ...base, stubs })).toMatchObject({ ok: false, decidedBy: 'stub of display' });
    expect(canTopology({ ...base, stubs: [{ name: 'display', positionM: 2, lengthM: 0.3 }] }).ok).toBe(true);
  });
  it('all stubs together count', () => {
    const stubs = Array.from({ length: 6 }, (_, i) => ({ name: `s${i}`, positionM: i, lengthM: 0.9 }));
    const found = canTopology({ ...base, stubs, rule: canLengthsC, bitRateBitPerS: 1e6 });
    expectWithin(found.stubSumM, 5.4, 1e-12);
    expect(found.decidedBy).toBe('all stubs together');
  });
});

describe('edges', () => {
  it('terminators: a third, one alone, one in the middle', () => {
    for (const terminatorPlacesM of [[0, 6, 3], [0], [0, 3], [0, 0], []]) {
      expect(canTopology({ ...base, terminatorPlacesM })).toMatchObject({ ok: false, endsTerminated: false });
    }
  });
  it('a star is named, with its branches', () => {
    const at = (positionM: number, n: number) =>
      Array.from({ length: n }, (_, i) => ({ name: `s${i}`, positionM, lengthM: 0.2 }));
    expect(canTopology({ ...base, stubs: at(3, 3) }).stars).toMatchObject([{ positionM: 3, branchCount: 5 }]);
    expect(canTopology({ ...base, stubs: at(3, 1) }).stars).toEqual([]);
    expect(canTopology({ ...base, stubs: at(0, 2) }).stars).toMatchObject([{ positionM: 0, branchCount: 3 }]);
    expect(canTopology({ ...base, stubs: at(0, 1) }).stars).toEqual([]);
    const joint = canTopology({ ...base, trunkM: 0, terminatorPlacesM: [0, 0], stubs: at(0, 4) });
    expect(joint.stars).toMatchObject([{ branchCount: 4 }]);
    expect(joint.ok).toBe(false);
  });
  it('two branches from one joint are a line through it', () => {
    const joint = (lengths: readonly number[], rule: CanTopologyInput['rule'] = canLengthsA) =>
      canTopology({
        ...base,
        rule,
        trunkM: 0,
        terminatorPlacesM: [0, 0],
        stubs: lengths.map((lengthM, i) => ({ name: `s${i}`, positionM: 0, lengthM })),
      });
    // Short enough for stubs (0.3 m by this list): terminators in the joint are at their ends.
    expect(joint([0.3, 0.3])).toMatchObject({ ok: true, lineM: 0.6, stars: [], endsTerminated: true });
    expect(joint([0.3, 0.301])).toMatchObject({ ok: false, endsTerminated: false });
    // A list without a length for stubs: nothing lets 40 m pass for one, and the line is as long as both.
    expect(joint([40, 40], canLengthsB)).toMatchObject({ ok: false, lineM: 80, endsTerminated: false, stars: [] });
    const long = joint([60, 60], canLengthsB);
    expect(long.checks.find(({ name }) => name === 'line through the joint')).toMatchObject({
      value: 120,
      limit: 100,
      ok: false,
    });
    expect(joint([40], canLengthsB)).toMatchObject({ ok: false, lineM: 40, endsTerminated: false });
    expect(joint([0.2, 0.2, 0.2])).toMatchObject({ ok: false, lineM: null, stars: [{ branchCount: 3 }] });
    expect(joint([]).lineM).toBeNull();
    expect(canTopology(base).lineM).toBeNull();
    // The same line, entered as what it is.
    expect(canTopology({ ...base, rule: canLengthsB, trunkM: 80, terminatorPlacesM: [0, 80], stubs: [] }).ok).toBe(
      true,
    );
  });
  it('refuses nonsense by its place', () => {
    expectInputError(() => canTopology({ ...base, bitRateBitPerS: 2e6 }), 'bitRateBitPerS', 'atMost');
    expectInputError(() => canTopology({ ...base, trunkM: -1 }), 'trunkM');
    expectInputError(() => canTopology({ ...base, terminatorPlacesM: [7] }), 'terminatorPlacesM[0]');
    expectInputError(
      () => canTopology({ ...base, stubs: [{ name: 'a', positionM: 9, lengthM: 1 }] }),
      'stubs[0].positionM',
    );
    expectInputError(
      () => canTopology({ ...base, stubs: [{ name: 'a', positionM: 1, lengthM: NaN }] }),
      'stubs[0].lengthM',
    );
    expectInputError(() => canTopology({ ...base, rule: canEdgeTenth }), 'edgeS');
    expectInputError(() => canTopology({ ...base, rule: null as never }), 'rule');
    expectInputError(() => canTopology({ ...base, rule: {} as never }), 'rule.kind', 'missing');
    expectInputError(() => canTopology({ ...base, rule: { kind: 'lengths' } as never }), 'rule.rows', 'missing');
    const edge = { kind: 'edge', edgeShare: NaN } as never;
    const asked = { edgeS: 40e-9, waveSpeedFraction: 0.66 };
    expectInputError(() => canTopology({ ...base, ...asked, rule: edge }), 'rule.edgeShare', 'finite');
  });
});
