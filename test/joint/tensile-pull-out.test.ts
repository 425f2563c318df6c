import { describe, expect, it } from 'vitest';
import {
  as7928PullOut,
  awgToAreaMm2,
  crimpPullOut,
  tensilePullOut,
  ul486aPullOut,
  type TensilePullOutInput,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { expectPrinted, expectWithin } from '../support/published.js';

const wire: TensilePullOutInput = { areaMm2: 0.519, tensileNPerMm2: 230, shareFraction: 0.6 };

describe('independent', () => {
  it('20 AWG of annealed copper, worked by hand: 71.6 N', () => {
    expectPrinted(tensilePullOut(wire).pullOutN, '71.6');
    expectPrinted(tensilePullOut(wire).pullOutN / 4.4482, '16');
  });
  it('60 % of the wire lies between what UL 486A and AS7928 ask, from 20 to 16 AWG', () => {
    for (const size of ['20', '18', '16']) {
      const { pullOutN } = tensilePullOut({ ...wire, areaMm2: awgToAreaMm2(size) });
      expect(pullOutN, size).toBeGreaterThan(crimpPullOut({ table: ul486aPullOut, size }).pullOutN);
      expect(pullOutN, size).toBeLessThan(crimpPullOut({ table: as7928PullOut, size }).pullOutN);
    }
  });
});

describe('laws', () => {
  it('is in step with area, strength and share', () => {
    const { pullOutN, wireBreaksN } = tensilePullOut(wire);
    expectWithin(tensilePullOut({ ...wire, areaMm2: 1.038 }).pullOutN, 2 * pullOutN, 1e-12);
    expectWithin(tensilePullOut({ ...wire, tensileNPerMm2: 460 }).pullOutN, 2 * pullOutN, 1e-12);
    expectWithin(tensilePullOut({ ...wire, shareFraction: 1 }).pullOutN, wireBreaksN, 1e-12);
  });
  // The ends of both names are mm²: force is the product of the two.
  it('two swapped inputs of one kind do not go unseen', () =>
    swapsMatter(tensilePullOut, wire, [['areaMm2', 'tensileNPerMm2']]));
});

describe('edges', () => {
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(tensilePullOut, wire, { required: ['areaMm2', 'tensileNPerMm2', 'shareFraction'] });
    expectInputError(() => tensilePullOut({ ...wire, shareFraction: 60 }), 'shareFraction', 'atMost');
    expectInputError(() => tensilePullOut({ ...wire, tensileNPerMm2: 0 }), 'tensileNPerMm2', 'above');
    expectInputError(() => tensilePullOut({ ...wire, areaMm2: 0 }), 'areaMm2', 'above');
  });
});
