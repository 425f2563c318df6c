import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { ladderSender, type LadderSenderInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const seven: LadderSenderInput = {
  supplyV: 5,
  pullUpOhm: 240,
  pullToleranceFraction: 0,
  inputOhm: null,
  wireOhm: 0,
  stepOhm: [240, 200, 165, 132, 98, 64, 33],
  stepLevelFraction: [0, 1 / 6, 2 / 6, 3 / 6, 4 / 6, 5 / 6, 1],
  toleranceFraction: 0,
  overlapFraction: 0,
  idleOhm: null,
  strapping: [
    { levelFraction: 0, volumeL: 0 },
    { levelFraction: 1, volumeL: 60 },
  ],
  guardV: 0.05,
  sensorMostA: null,
  faultV: 14.4,
};
const real: LadderSenderInput = {
  ...seven,
  pullToleranceFraction: 0.01,
  inputOhm: 47000,
  wireOhm: 1.5,
  toleranceFraction: 0.02,
  overlapFraction: 0.02,
  idleOhm: 260,
  sensorMostA: 0.02,
};
const fault = (input: LadderSenderInput, kind: string, partIndex: number | null) =>
  ladderSender(input).faults.find((each) => each.kind === kind && each.partIndex === partIndex)!;

describe('published', () => {
  const w13 = {
    source: 'circuit-theory',
    place: 'worked case: ladder sender of seven taps, 240 to 33 Ω',
    status: 'derived',
  } as const;
  const result = ladderSender(seven);
  ['2.5000', '2.2727', '2.0370', '1.7742', '1.4497', '1.0526', '0.6044'].forEach((print, i) => {
    computed(`step ${i + 1}, V`, w13, () => {
      expectPrinted(result.steps[i]!.pinV, print);
    });
  });
  ['2.3864', '2.1549', '1.9056', '1.6119', '1.2512', '0.8285'].forEach((print, i) => {
    computed(`threshold ${i + 1}, V`, w13, () => {
      expectPrinted(result.thresholdV[i]!, print);
    });
  });
  ['0', '.1932', '.3623', '.5217', '.6860', '.8502', '1'].forEach((print, i) => {
    computed(`step ${i + 1} read as if continuous`, w13, () => {
      expectPrinted(result.steps[i]!.straightFraction, print);
    });
  });
  computed('worst error read as if continuous', w13, () => {
    expectPrinted(result.straightWorstErrorFraction, '0.1123');
  });
  [1, 2, 3, 4, 5].forEach((k) => {
    computed(`step ${k + 1} is best at ${k}/6`, w13, () => {
      expectWithin(result.steps[k]!.bestFraction, k / 6, 1e-12);
      expectPrinted(result.steps[k]!.uncertaintyFraction, '0.0833');
    });
  });
  computed('the first step is best at 1/24', w13, () => {
    expectWithin(result.steps[0]!.bestFraction, 1 / 24, 1e-12);
    expectPrinted(result.steps[0]!.uncertaintyFraction, '0.0417');
  });
  computed('the last step is best at 23/24', w13, () => {
    expectWithin(result.steps[6]!.bestFraction, 23 / 24, 1e-12);
    expectPrinted(result.steps[6]!.uncertaintyFraction, '0.0417');
  });
  const hand = { source: 'circuit-theory', place: 'by hand', status: 'derived' } as const;
  // Two contacts closed over a tenth: of both the one of fewer ohms is read, so a border lies half of that lower where
  // ohms fall, and higher where they rise.
  for (const [stepOhm, borders] of [
    [
      [240, 132, 33],
      ['0.20', '0.70'],
    ],
    [
      [33, 132, 240],
      ['0.30', '0.80'],
    ],
  ] as const) {
    computed(`overlap of 0.1, ${stepOhm.join(', ')} Ω: borders at ${borders.join(' and ')}`, hand, () => {
      const { steps } = ladderSender({ ...seven, stepOhm, stepLevelFraction: [0, 0.5, 1], overlapFraction: 0.1 });
      borders.forEach((print, i) => {
        expectPrinted(steps[i]!.toFraction, print);
        expectPrinted(steps[i + 1]!.fromFraction, print);
      });
    });
  }
  computed('an input of 10 kΩ: a break reads 4.8828 V, the empty tank 2.4704 V, told from half-way', hand, () => {
    expectPrinted(ladderSender({ ...seven, inputOhm: 10_000 }).openThresholdV, '3.6766');
  });
});

describe('independent', () => {
  it('a circuit simulator gives the same volts with an input that draws, two contacts closed, and the chain broken', async () => {
    const v = await simulate(
      [
        // The chain from ground: 33, 31, 34, 34, 33, 35, 40 Ω; contacts tie the pin to a tap.
        ...['a', 'b', 'c'].flatMap((n, k) => [
          `v${n} s${n} 0 5`,
          `rp${n} s${n} p${n} 240`,
          `ri${n} p${n} 0 47000`,
          ...[33, 31, 34, 34, 33, 35, 40].map((ohm, i) =>
            k === 2 && i === 2 ? '' : `r${n}${i} ${i === 0 ? '0' : `${n}${i}`} ${n}${i + 1} ${ohm}`,
          ),
          ...(k === 0 ? [`vc${n} p${n} ${n}4 0`] : []),
          ...(k === 1 ? [`vc${n} p${n} ${n}4 0`, `vd${n} p${n} ${n}2 0`] : []),
          ...(k === 2 ? [`vc${n} p${n} ${n}5 0`] : []),
        ]),
        '.op',
      ]
        .filter((line) => line !== '')
        .join('\n'),
    );
    const { steps } = ladderSender({ ...seven, inputOhm: 47000 });
    expectWithin(steps[3]!.pinV, v['v(pa)']![0]!, 1e-8);
    const stuck = fault({ ...seven, inputOhm: 47000 }, 'contact-stuck', 5).readings[3]!;
    expect(stuck).toMatchObject({ senderOhm: 64, readIndex: 5 });
    expectWithin(steps[5]!.pinV, v['v(pb)']![0]!, 1e-8);
    // The third resistor of the chain open: every tap beyond it hangs in the air.
    const open = fault({ ...seven, inputOhm: 47000 }, 'resistor-open', 2);
    expect(open.readings.map((reading) => reading.code)).toEqual([
      'open',
      'open',
      'open',
      'open',
      'open',
      'step',
      'step',
    ]);
    expectWithin((5 * 47000) / 47240, v['v(pc)']![0]!, 1e-8);
  });
  it('holds every sender of real parts within its worst cases, and reads the right step', () => {
    const { steps, thresholdV } = ladderSender(real);
    const corner = fc.constantFrom(0, 1);
    fc.assert(
      fc.property(corner, corner, corner, evenly(0, 1), (a, b, c, level) => {
        // Of the contacts that are closed at this level the one of fewest ohms is read: each reaches half the overlap
        // beyond the middle between itself and the next.
        const closed = real.stepLevelFraction.flatMap((middle, i) => {
          const before = i === 0 ? -1 : (middle + real.stepLevelFraction[i - 1]!) / 2 - 0.01;
          const after = i === 6 ? 2 : (middle + real.stepLevelFraction[i + 1]!) / 2 + 0.01;
          return level >= before && level <= after ? [i] : [];
        });
        const k = Math.max(...closed);
        const seen = real.stepOhm[k]! * (0.98 + 0.04 * a) + 1.5 * b;
        const down = 1 / (1 / seen + (c === 0 ? 1 / 47000 : 1 / 47000));
        const v = (5 * down) / (down + 240 * (0.99 + 0.02 * c));
        expect(v).toBeGreaterThanOrEqual(steps[k]!.lowV - 1e-12);
        expect(v).toBeLessThanOrEqual(steps[k]!.highV + 1e-12);
        expect(thresholdV.filter((t) => v < t).length).toBe(k);
        expect(Math.abs(level - steps[k]!.bestFraction)).toBeLessThanOrEqual(steps[k]!.uncertaintyFraction + 1e-12);
        expect(Math.abs(60 * level - steps[k]!.bestL)).toBeLessThanOrEqual(steps[k]!.uncertaintyL + 1e-9);
      }),
    );
  });
});

describe('laws', () => {
  it('steps cover the whole tank once, in level and in litres', () => {
    const strapping = [
      { levelFraction: 0, volumeL: 0 },
      { levelFraction: 0.3, volumeL: 30 },
      { levelFraction: 1, volumeL: 60 },
    ];
    const { steps } = ladderSender({ ...real, strapping });
    expect(steps[0]!.fromFraction).toBe(0);
    expect(steps.at(-1)!.toL).toBe(60);
    steps.slice(1).forEach((step, i) => {
      expect(step.fromFraction).toBe(steps[i]!.toFraction);
      expect(step.fromL).toBe(steps[i]!.toL);
    });
  });
  it('a sender that rises with the level is the mirror image', () => {
    const falling = ladderSender(real);
    const rising = ladderSender({ ...real, stepOhm: [...real.stepOhm].reverse() });
    expectWithin(rising.smallestGapV, falling.smallestGapV, 1e-12);
    falling.steps.forEach((step, i) => {
      const other = rising.steps[6 - i]!;
      expectWithin(other.pinV, step.pinV, 1e-12);
      expectWithin(1 - other.bestFraction, step.bestFraction, 1e-12);
      expectWithin(other.straightErrorFraction, step.straightErrorFraction, 1e-9);
    });
    expect(rising.faults.map((each) => each.seen).filter((seen) => seen === 'never').length).toBe(
      falling.faults.map((each) => each.seen).filter((seen) => seen === 'never').length,
    );
  });
  it('wider parts, a longer wire and a worse pull-up only close the gaps', () => {
    const gap = (over: Partial<LadderSenderInput>): number => ladderSender({ ...real, ...over }).smallestGapV;
    for (const worse of [{ toleranceFraction: 0.03 }, { pullToleranceFraction: 0.03 }, { wireOhm: 5 }]) {
      expect(gap(worse)).toBeLessThan(gap({}));
    }
  });
  it('more contacts leave less unknown', () => {
    const many = (n: number): number =>
      ladderSender({
        ...seven,
        stepOhm: Array.from({ length: n }, (_, i) => 240 - (207 * i) / (n - 1)),
        stepLevelFraction: Array.from({ length: n }, (_, i) => i / (n - 1)),
      }).worstUncertaintyL;
    expectWithin(many(7), 60 / 12, 1e-9);
    expectWithin(many(13), 60 / 24, 1e-9);
  });
  it('does not mistake one input for another', () => {
    swapsMatter(ladderSender, { ...real, idleOhm: 300, guardV: 0.06 });
  });
});

describe('faults', () => {
  it('a dead contact reads as a broken wire where nothing else is connected, and as empty where the chain is', () => {
    expect(fault(seven, 'contact-dead', 3)).toMatchObject({ seen: 'sometimes', mostOverL: 0, mostUnderL: 0 });
    const hidden = fault({ ...seven, idleOhm: 240 }, 'contact-dead', 3);
    expect(hidden.seen).toBe('never');
    expect(hidden.readings[3]).toEqual({ senderOhm: 240, readIndex: 0, code: 'step' });
    // It stands at 35 L at most, and 2.5 L are shown.
    expectWithin(hidden.mostUnderL, 32.5, 1e-12);
  });
  it('a contact that sticks near full shows fuel that is not there', () => {
    const stuck = fault(seven, 'contact-stuck', 6);
    expect(stuck.seen).toBe('never');
    expect(stuck.readings.every((reading) => reading.readIndex === 6)).toBe(true);
    expectWithin(stuck.mostOverL, 57.5, 1e-12);
    expect(fault(seven, 'contact-stuck', 0).seen).toBe('harmless');
  });
  it('a shorted resistor shifts every tap beyond it', () => {
    const shorted = fault(seven, 'resistor-shorted', 1);
    expect(shorted.readings.map((reading) => reading.senderOhm)).toEqual([209, 169, 134, 101, 67, 33, 33]);
    expect(shorted.readings.map((reading) => reading.readIndex)).toEqual([1, 2, 3, 4, 5, 6, 6]);
    expect(shorted.seen).toBe('never');
  });
  it('a wire that is broken, shorted or on the battery is told at every level', () => {
    for (const kind of ['wire-open', 'wire-to-ground', 'wire-to-battery']) {
      expect(fault(real, kind, null).seen).toBe('always');
    }
    const result = ladderSender(real);
    expectWithin(result.faultA!, 14.4 / 33, 1e-12);
    expectWithin(result.faultW!, 14.4 ** 2 / 33, 1e-12);
  });
  it('has no number for the battery on a sender of 0 Ω, and a short then looks like its end', () => {
    const result = ladderSender({ ...seven, stepOhm: [180, 90, 0], stepLevelFraction: [0, 0.5, 1] });
    expect(result.faultA).toBeNull();
    expect(result.faultW).toBeNull();
    expect(result.decidedBy).toBe('gap to a wire shorted to ground');
    expect(result.checks.find((check) => check.name === 'gap to a wire shorted to ground')?.ok).toBe(false);
  });
});

describe('edges', () => {
  it('refuses nonsense', () => {
    refusesNonsense(ladderSender, real, {
      required: [
        'supplyV',
        'pullUpOhm',
        'pullToleranceFraction',
        'wireOhm',
        'toleranceFraction',
        'overlapFraction',
        'guardV',
        'faultV',
      ],
      optional: ['inputOhm', 'idleOhm', 'sensorMostA'],
    });
    expectInputError(() => ladderSender({ ...real, stepOhm: [240] }), 'stepOhm', 'list');
    expectInputError(() => ladderSender({ ...real, stepOhm: [240, 200, 200, 1, 2, 3, 4] }), 'stepOhm[2]', 'order');
    expectInputError(() => ladderSender({ ...real, stepOhm: [1, 2, 3, 4, 3, 6, 7] }), 'stepOhm[4]', 'order');
    expectInputError(() => ladderSender({ ...real, stepLevelFraction: [0, 1] }), 'stepLevelFraction', 'list');
    expectInputError(
      () => ladderSender({ ...real, stepLevelFraction: [...real.stepLevelFraction, 1] }),
      'stepLevelFraction',
      'list',
    );
    expectInputError(
      () => ladderSender({ ...real, stepLevelFraction: [0, 0.2, 0.1, 0.3, 0.5, 0.6, 1] }),
      'stepLevelFraction[2]',
      'order',
    );
    expectInputError(() => ladderSender({ ...real, overlapFraction: 0.17 }), 'overlapFraction', 'below');
    const many = Array.from({ length: 101 }, (_, i) => 300 - i);
    expectInputError(() => ladderSender({ ...real, stepOhm: many }), 'stepOhm.length', 'atMost');
    expectInputError(() => ladderSender({ ...real, faultV: 4 }), 'faultV', 'atLeast');
    const rows = (...rest: readonly (readonly [number, number])[]) =>
      rest.map(([levelFraction, volumeL]) => ({ levelFraction, volumeL }));
    const bad = (strapping: LadderSenderInput['strapping'], field: string) => {
      expectInputError(() => ladderSender({ ...real, strapping }), field);
    };
    bad(rows([0.1, 0], [1, 60]), 'strapping[0].levelFraction');
    bad(rows([0, 0], [0.9, 60]), 'strapping[1].levelFraction');
    bad(rows([0, 0], [0, 30], [1, 60]), 'strapping[1].levelFraction');
    bad(rows([0, 5], [1, 5]), 'strapping[1].volumeL');
    bad(rows([0, NaN], [1, 5]), 'strapping[0].volumeL');
    bad(rows([0, 0]), 'strapping');
  });
  it('never runs out of numbers', () => {
    neverRunsOut(ladderSender, { ...real, stepOhm: [240, 132, 33], stepLevelFraction: [0, 0.5, 1] });
  });
});
