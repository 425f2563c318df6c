import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { centreOfMass, type PlacedMass } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted } from '../support/published.js';

const LB = 0.45359237;
const IN = 0.0254;
/** Pounds and inches to the core's units. */
const at = (pounds: number, inches: number): PlacedMass => ({ massKg: pounds * LB, alongM: inches * IN });
const inches = (...masses: readonly PlacedMass[]) => centreOfMass({ masses }).alongM / IN;

describe('published', () => {
  const phak = { source: 'faa-h-8083-25', place: 'weight and balance, weight shift', status: 'published' } as const;
  computed('8000 lb at 77.0 in, 100 lb from station 30 to 150: 78.5 in', phak, () =>
    expectPrinted(inches(at(8000, 77), at(-100, 30), at(100, 150)), '78.5', 0),
  );
  const school = (place: string) => ({ source: 'weight-shift-examples', place, status: 'published' }) as const;
  const shift = (total: number, mass: number, from: number, to: number) =>
    inches(at(total, 50), at(-mass, from), at(mass, to)) - 50;
  computed('2700 lb, 180 lb from 110 to 142: 2.13 in aft', school('2700 lb'), () =>
    expectPrinted(shift(2700, 180, 110, 142), '2.13'),
  );
  computed('2450 lb, 100 lb moved 50 in: 2.04 in', school('2450 lb'), () =>
    expectPrinted(shift(2450, 100, 0, 50), '2.04'),
  );
  computed('4000 lb, 100 lb from 55 to 145: 2.25 in aft', school('4000 lb'), () =>
    expectPrinted(shift(4000, 100, 55, 145), '2.25'),
  );
  computed('4000 lb at 80.0: new centre at 82.25', school('4000 lb'), () =>
    expectPrinted(inches(at(4000, 80), at(-100, 55), at(100, 145)), '82.25', 0),
  );
  const old = at(945, 78000.2 / 945);
  computed(
    '945 lb with 78 000.2 lb·in: centre at 82.53',
    school('PLT256'),
    () => expectPrinted(inches(old), '82.53', 1), // 82.5399, cut off
  );
  computed(
    '35 lb more at 43.8: centre at 81.15',
    school('PLT256'),
    () => expectPrinted(inches(old, at(35, 43.8)), '81.15', 1), // 81.1563, cut off
  );
  computed('and it moves 1.38 in forward', school('PLT256'), () =>
    expectPrinted(inches(old) - inches(old, at(35, 43.8)), '1.38'),
  );
  const before = at(2886, 101673.78 / 2886);
  const changes = [at(-30, 71), at(97, 71), at(20, 71), at(30, 94)];
  computed('2886 lb, four changes: 3003 lb', school('2886 lb'), () =>
    expectPrinted(centreOfMass({ masses: [before, ...changes] }).massKg / LB, '3003'),
  );
  computed('moment 110 670.78 lb·in', school('2886 lb'), () => {
    const { massKg, alongM } = centreOfMass({ masses: [before, ...changes] });
    expectPrinted((massKg / LB) * (alongM / IN), '110670.78');
  });
  computed('centre from 35.23', school('2886 lb'), () => expectPrinted(inches(before), '35.23'));
  computed('to 36.85', school('2886 lb'), () => expectPrinted(inches(before, ...changes), '36.85'));
  computed('1.62 in aft', school('2886 lb'), () => expectPrinted(inches(before, ...changes) - inches(before), '1.62'));

  const lever = (place: string) => ({ source: 'lever-problems', place, status: 'published' }) as const;
  computed('50 lb at 3 ft hold 150 lb at 1 ft', lever('lever, two arms'), () =>
    expectPrinted(inches(at(50, -36), at(150, 12)), '0', 1e-9),
  );
  computed('and 75 lb at 2 ft', lever('lever, two arms'), () =>
    expectPrinted(inches(at(50, -36), at(75, 24)), '0', 1e-9),
  );
  computed('100 and 60 lb at the ends of 33 ft: 12.375 ft from the 100 lb', lever('lever 4'), () =>
    expectPrinted(inches(at(100, 0), at(60, 33 * 12)) / 12, '12.375', 1e-6),
  );
  computed('75 lb at 2 ft hold 60 lb at 2.5 ft', lever('lever 2'), () =>
    expectPrinted(inches(at(75, -24), at(60, 30)), '0', 1e-9),
  );
  computed('a beam of 6 ft and 20 lb with 30 lb at one end: 1.2 ft from there', lever('beam with a load'), () =>
    expectPrinted(inches(at(20, 36), at(30, 0)) / 12, '1.2', 1e-6),
  );
});

const mass = fc.record({
  massKg: fc.double({ min: 0.1, max: 2000, noNaN: true }),
  alongM: evenly(-5, 10),
  acrossM: evenly(-2, 2),
});
const masses = fc.array(mass, { minLength: 1, maxLength: 6 });

describe('laws', () => {
  it('the centre lies among its masses and does not care for their order', () => {
    fc.assert(
      fc.property(masses, (list) => {
        const centre = centreOfMass({ masses: list });
        expect(centre.alongM).toBeGreaterThanOrEqual(Math.min(...list.map((m) => m.alongM)) - 1e-9);
        expect(centre.alongM).toBeLessThanOrEqual(Math.max(...list.map((m) => m.alongM)) + 1e-9);
        const back = centreOfMass({ masses: [...list].reverse() });
        expect(Math.abs(back.alongM - centre.alongM)).toBeLessThan(1e-9);
        expect(Math.abs(back.acrossM - centre.acrossM)).toBeLessThan(1e-9);
      }),
    );
  });
  it('a group counts as one mass at its centre', () => {
    fc.assert(
      fc.property(masses, mass, (list, more) => {
        const whole = centreOfMass({ masses: [...list, more] });
        const grouped = centreOfMass({ masses: [centreOfMass({ masses: list }), more] });
        expect(Math.abs(grouped.alongM - whole.alongM)).toBeLessThan(1e-9);
        expect(Math.abs(grouped.acrossM - whole.acrossM)).toBeLessThan(1e-9);
      }),
    );
  });
  it('along and across are not the same', () => {
    const one = centreOfMass({ masses: [{ massKg: 1, alongM: 2, acrossM: 3 }] });
    expect(one).toEqual({ massKg: 1, alongM: 2, acrossM: 3 });
  });
});

describe('edges', () => {
  it('refuses nonsense with the field that is at fault', () => {
    expectInputError(() => centreOfMass(undefined as never), 'input', 'object');
    expectInputError(() => centreOfMass({ masses: [] }), 'masses', 'list');
    expectInputError(() => centreOfMass({ masses: [null as never] }), 'masses[0]', 'object');
    for (const field of ['massKg', 'alongM', 'acrossM'] as const) {
      for (const value of [NaN, Infinity, 'abc']) {
        expectInputError(() => centreOfMass({ masses: [{ ...at(1, 1), [field]: value }] }), `masses[0].${field}`);
      }
    }
    expectInputError(() => centreOfMass({ masses: [at(1, 1), at(-1, 2)] }), 'masses', 'above');
  });
});
