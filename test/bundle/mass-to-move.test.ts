import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { centreOfMass, massToMove, type MassToMoveInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted } from '../support/published.js';

const LB = 0.45359237;
const IN = 0.0254;
const pounds = (total: number, shift: number, from: number, to: number): number => {
  const answer = massToMove({ totalMassKg: total * LB, shiftM: shift * IN, fromM: from * IN, toM: to * IN });
  if (!answer.possible) throw new Error(answer.because);
  return answer.massKg / LB;
};
const truck: MassToMoveInput = { totalMassKg: 1800, shiftM: -0.02, fromM: 3, toM: 0.5 };

describe('published', () => {
  const phak = { source: 'faa-h-8083-25', place: 'weight shift, limit exceeded', status: 'published' } as const;
  computed('7800 lb at 81.5, limit 80.5, from station 150 to 30: 65 lb', phak, () =>
    expectPrinted(pounds(7800, 80.5 - 81.5, 150, 30), '65'),
  );
  const school = { source: 'weight-shift-examples', place: '3200 lb', status: 'published' } as const;
  computed('3200 lb, 1.5 in forward, from 167 to 142: 192 lb', school, () =>
    expectPrinted(pounds(3200, -1.5, 167, 142), '192'),
  );
});

describe('laws', () => {
  it('moving that mass shifts the centre by what was asked', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 5000, noNaN: true }),
        evenly(-0.5, 0.5),
        evenly(-1, 4),
        fc.double({ min: 0.6, max: 5, noNaN: true }),
        (totalMassKg, shiftM, fromM, reachM) => {
          const toM = fromM + (shiftM < 0 ? -reachM : reachM);
          const answer = massToMove({ totalMassKg, shiftM, fromM, toM });
          expect(answer.possible).toBe(true);
          const massKg = answer.possible ? answer.massKg : NaN;
          const centre = centreOfMass({
            masses: [
              { massKg: totalMassKg, alongM: 1 },
              { massKg: -massKg, alongM: fromM },
              { massKg, alongM: toM },
            ],
          });
          expect(Math.abs(centre.alongM - 1 - shiftM)).toBeLessThan(1e-9);
        },
      ),
    );
  });
  it('from and to do not go unseen when swapped', () => swapsMatter(massToMove, truck));
});

describe('edges', () => {
  it('says why it cannot be', () => {
    expect(massToMove({ ...truck, shiftM: 0.02 })).toMatchObject({ possible: false, code: 'wrong-way', nearest: null });
    expect(massToMove({ ...truck, shiftM: -2.6 })).toMatchObject({
      possible: false,
      code: 'more-than-the-whole',
      nearest: { massKg: 1800 },
    });
    expect(massToMove({ ...truck, shiftM: 0 })).toMatchObject({ possible: true });
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(massToMove, truck, { required: ['totalMassKg', 'shiftM', 'fromM', 'toM'] });
    expectInputError(() => massToMove({ ...truck, totalMassKg: 0 }), 'totalMassKg', 'above');
    expectInputError(() => massToMove({ ...truck, toM: 3 }), 'toM', 'range');
  });
});
