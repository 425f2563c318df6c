import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { cutLength, twistPitch, aircraftTwist, type CutLengthInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { expectWithin, transcribed, expectPrinted } from '../support/published.js';

const wire: CutLengthInput = { routeLengthM: 3.2, slackFraction: 0.05, stripMm: 12, repairLoopM: 0.15 };
const twist = { pitchMm: 30, helixDiameterMm: 2.4 };

describe('published', () => {
  // From memory: the table of twists could not be read again.
  const cite = { source: 'ac-43-13-1b-dressing', place: 'table of twists a foot', status: 'memory' } as const;
  for (const [awg, two, three] of [
    ['22', '10', '10'],
    ['20', '10', '10'],
    ['18', '9', '8.5'],
    ['16', '8', '7'],
    ['14', '7.5', '6.5'],
    ['12', '7', '6'],
    ['10', '6.5', '5.5'],
    ['8', '6', '5'],
    ['6', '5', '4'],
    ['4', '4', '3'],
  ] as const) {
    transcribed(`${awg} AWG: ${two} and ${three} twists a foot`, cite, () => {
      const pitch = (wireCount: number) =>
        twistPitch({ table: aircraftTwist, awg, wireCount, outerDiameterMm: 2 }).pitchMm;
      expectPrinted(304.8 / pitch(2), two, 1e-9);
      expectPrinted(304.8 / pitch(3), three, 1e-9);
    });
  }
});

describe('independent', () => {
  it('the twist is the length of a helix, summed in small straight pieces', () => {
    const turns = 4;
    const parts = 200_000;
    let length = 0;
    for (let i = 0; i < parts; i++) {
      const at = (k: number) => {
        const angle = (2 * Math.PI * turns * k) / parts;
        return [1.2 * Math.cos(angle), 1.2 * Math.sin(angle), (30 * turns * k) / parts] as const;
      };
      const [a, b] = [at(i), at(i + 1)];
      length += Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
    }
    expectWithin(cutLength({ ...wire, twist }).twistFactor, length / (30 * turns), 1e-7);
  });
  it('adds up by hand: 3.2 m, 5 %, a loop of 0.15 m, 12 mm of strip', () => {
    expectWithin(cutLength(wire).cutLengthM, 3.2 * 1.05 + 0.15 + 0.012, 1e-12);
    expect(cutLength({ ...wire, cutStepMm: 10 }).cutLengthM).toBe(3.53);
    expect(cutLength({ ...wire, cutStepMm: 50 }).cutLengthM).toBe(3.55);
  });
});

describe('laws', () => {
  const positive = fc.double({ min: 0.001, max: 50, noNaN: true });
  it('rounds up only, by less than a step', () => {
    fc.assert(
      fc.property(positive, fc.double({ min: 0.5, max: 500, noNaN: true }), (routeLengthM, cutStepMm) => {
        const { cutLengthM, exactLengthM } = cutLength({ ...wire, routeLengthM, cutStepMm });
        expect(cutLengthM).toBeGreaterThanOrEqual(exactLengthM * (1 - 1e-9));
        expect(cutLengthM - exactLengthM).toBeLessThan(cutStepMm / 1000 + 1e-9);
      }),
    );
  });
  it('every part adds, and a straight wire is the limit of a long pitch', () => {
    fc.assert(
      fc.property(positive, fc.double({ min: 1, max: 1000, noNaN: true }), (more, pitchMm) => {
        const twisted: CutLengthInput = { ...wire, twist: { pitchMm, helixDiameterMm: 2 } };
        const { cutLengthM } = cutLength(twisted);
        expect(cutLengthM).toBeGreaterThanOrEqual(cutLength(wire).cutLengthM);
        expect(cutLength({ ...twisted, routeLengthM: wire.routeLengthM + more }).cutLengthM).toBeGreaterThan(
          cutLengthM,
        );
        expect(cutLength({ ...twisted, repairLoopM: 0.15 + more }).cutLengthM).toBeGreaterThan(cutLengthM);
        expect(cutLength({ ...twisted, stripMm: 12 + more }).cutLengthM).toBeGreaterThan(cutLengthM);
        expect(
          cutLength({ ...twisted, twist: { pitchMm: pitchMm + more, helixDiameterMm: 2 } }).cutLengthM,
        ).toBeLessThan(cutLengthM);
      }),
    );
    const straight = cutLength({ ...wire, twist: { pitchMm: 1e9, helixDiameterMm: 2 } });
    expectWithin(straight.cutLengthM, cutLength(wire).cutLengthM, 1e-12);
    expectWithin(straight.slackM + straight.twistM + wire.routeLengthM + 0.15 + 0.012, straight.cutLengthM, 1e-12);
  });
  it('route and loop are of one kind, and one takes slack', () => swapsMatter(cutLength, { ...wire, cutStepMm: 7 }));
});

describe('edges', () => {
  it('a length that is a whole number of steps stays', () => {
    expect(
      cutLength({ routeLengthM: 1.1, slackFraction: 0, stripMm: 0, repairLoopM: 0, cutStepMm: 100 }).cutLengthM,
    ).toBe(1.1);
    expect(cutLength({ routeLengthM: 0, slackFraction: 0, stripMm: 0, repairLoopM: 0 }).cutLengthM).toBe(0);
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(cutLength, wire, {
      required: ['routeLengthM', 'slackFraction', 'stripMm', 'repairLoopM'],
      optional: ['cutStepMm'],
    });
    expectInputError(() => cutLength({ ...wire, routeLengthM: -0.1 }), 'routeLengthM', 'atLeast');
    expectInputError(() => cutLength({ ...wire, cutStepMm: 0 }), 'cutStepMm', 'above');
    expectInputError(() => cutLength({ ...wire, twist: null as never }), 'twist', 'object');
    expectInputError(() => cutLength({ ...wire, twist: { ...twist, pitchMm: 0 } }), 'twist.pitchMm', 'above');
    expectInputError(() => cutLength({ ...wire, twist: { pitchMm: 30 } as never }), 'twist.helixDiameterMm', 'missing');
    expect(() => cutLength({ ...wire, slackFraction: 5 })).toThrow(
      'cutLength: slackFraction must be at most 1, got 5: is this in per cent?',
    );
  });
});
