import { describe, expect, it } from 'vitest';
import { aircraftTwist, cutLength, twistPitch, type TwistPitchInput } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const pair: TwistPitchInput = { table: aircraftTwist, awg: '20', wireCount: 2, outerDiameterMm: 1.3 };

describe('published', () => {
  // From memory: the table of twists could not be read again.
  const cite = { source: 'ac-43-13-1b-dressing', place: 'table of twists a foot', status: 'memory' } as const;
  computed('10 twists a foot are one in 1.2 in', cite, () => expectPrinted(twistPitch(pair).pitchMm / 25.4, '1.2'));
  computed('three wires of 4 AWG: 3 twists a foot are one in 4 in', cite, () =>
    expectPrinted(twistPitch({ ...pair, awg: '4', wireCount: 3 }).pitchMm / 25.4, '4.0'),
  );
});

describe('independent', () => {
  it('gives the helix that cutLength wants, with the same factor', () => {
    for (const wireCount of [2, 3]) {
      const { pitchMm, helixDiameterMm, twistFactor } = twistPitch({ ...pair, wireCount });
      const cut = cutLength({
        routeLengthM: 1,
        slackFraction: 0,
        stripMm: 0,
        repairLoopM: 0,
        twist: { pitchMm, helixDiameterMm },
      });
      expectWithin(cut.twistFactor, twistFactor, 1e-14);
    }
  });
  it('three wires that touch have their middles at the corners of a triangle of their diameter', () => {
    const { helixDiameterMm } = twistPitch({ ...pair, wireCount: 3 });
    const corner = (k: number) => [Math.cos((2 * Math.PI * k) / 3), Math.sin((2 * Math.PI * k) / 3)] as const;
    const [a, b] = [corner(0), corner(1)];
    expectWithin((helixDiameterMm / 2) * Math.hypot(a[0] - b[0], a[1] - b[1]), 1.3, 1e-12);
  });
});

describe('laws', () => {
  it('thicker wires are twisted less often and lengthened more', () => {
    const factors = aircraftTwist.rows.map(([awg]) => twistPitch({ ...pair, awg }).pitchMm);
    expect([...factors].sort((a, b) => a - b)).toEqual(factors);
    expect(twistPitch({ ...pair, outerDiameterMm: 2.6 }).twistFactor).toBeGreaterThan(twistPitch(pair).twistFactor);
  });
});

describe('edges', () => {
  it('refuses nonsense with the field that is at fault', () => {
    expectInputError(() => twistPitch(undefined as never), 'input', 'object');
    expectInputError(() => twistPitch({ ...pair, table: undefined as never }), 'table', 'missing');
    expectInputError(() => twistPitch({ ...pair, awg: '21' }), 'awg', 'inTable');
    expectInputError(() => twistPitch({ ...pair, awg: undefined as never }), 'awg', 'missing');
    expectInputError(() => twistPitch({ ...pair, wireCount: 4 }), 'wireCount', 'oneOf');
    for (const value of [0, -1, NaN, Infinity, 'abc', undefined]) {
      expectInputError(() => twistPitch({ ...pair, outerDiameterMm: value as number }), 'outerDiameterMm');
    }
  });
});
