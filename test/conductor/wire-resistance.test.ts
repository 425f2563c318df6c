import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  AWG_SIZES,
  awgStranded,
  awgToAreaMm2,
  feetToM,
  geometric,
  iec60228Class2,
  iec60228Class5,
  iso19642,
  necChapter9Table8Aluminium,
  resistivity,
  saeJ1128,
  wireResistance,
  type WireResistanceInput,
} from 'loomwright';
import { conductorTables, sizeIn } from '../support/conductor-tables.js';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';
import { circular31, circular31Rows } from './circular-31.js';

const nec: Citation = {
  source: 'nec-chapter-9-table-8',
  place: '2011, solid uncoated copper at 75 °C',
  status: 'published',
};
const hb100: Citation = { source: 'nbs-hb-100', place: 'page tables, from memory', status: 'memory' };
const worked: Citation = { source: 'circuit-theory', place: 'worked case', status: 'derived' };
const iso: Citation = { source: 'iso-19642', place: 'maximum at 20 °C, from memory', status: 'memory' };

describe('published', () => {
  // The Circular's resistivity is 0.15328/8.89 = 0.0172418, 5e-5 more than 0.017241: two prints are just past the half.
  const constant: Partial<Record<string, number>> = { '10': 0.6, '16': 0.52 };
  for (const [awg, , , print] of circular31Rows) {
    computed(`solid No. ${awg}, ${print} ohm per 1000 ft`, circular31, () => {
      const { resistanceOhm } = wireResistance({
        awg,
        resistanceBasis: geometric,
        lengthM: feetToM(1000),
        conductorTempC: 20,
      });
      expectPrinted(resistanceOhm, print, constant[awg]);
    });
  }

  for (const [awg, print] of [
    ['18', '7.77'],
    ['16', '4.89'],
    ['14', '3.07'],
    ['12', '1.93'],
    ['10', '1.21'],
    ['8', '0.764'],
  ] as const) {
    computed(`solid No. ${awg} at 75 °C, ${print} ohm per 1000 ft`, nec, () => {
      const { resistanceOhm } = wireResistance({
        awg,
        resistanceBasis: geometric,
        lengthM: feetToM(1000),
        conductorTempC: 75,
      });
      // No. 18 is 7.7647 and No. 16 is 4.8833: the code prints both a hair more, on the safe side.
      expectPrinted(resistanceOhm, print, awg === '18' || awg === '16' ? 0.7 : 0.5);
    });
  }

  // The Handbook recomputed the Circular with diameters rounded to 0.1 mil and three figures: 0.6 % is its own spread.
  for (const [awg, print] of [
    ['12', '1.59'],
    ['14', '2.52'],
    ['20', '10.1'],
    ['28', '65.3'],
  ] as const) {
    computed(`solid No. ${awg}, ${print} ohm per 1000 ft within 0.65 %`, hb100, () => {
      const { resistanceOhm } = wireResistance({
        awg,
        resistanceBasis: geometric,
        lengthM: feetToM(1000),
        conductorTempC: 20,
      });
      expectWithin(resistanceOhm, Number(print), 0.0065);
    });
  }

  const milliohm = (
    size: { areaMm2: number },
    basis: WireResistanceInput['resistanceBasis'],
    lengthM: number,
    t = 20,
  ): number => 1000 * wireResistance({ ...size, resistanceBasis: basis, lengthM, conductorTempC: t }).resistanceOhm;
  computed('6.5 m of 2.5 mm² geometric copper, 44.83 mΩ', worked, () =>
    expectPrinted(milliohm({ areaMm2: 2.5 }, geometric, 6.5), '44.83'),
  );
  computed('0.3 m of 25 mm² strap, 0.207 mΩ', worked, () =>
    expectPrinted(milliohm({ areaMm2: 25 }, geometric, 0.3), '0.207'),
  );
  computed('2 m of 25 mm² class 5, 1.56 mΩ', worked, () =>
    expectPrinted(milliohm({ areaMm2: 25 }, iec60228Class5, 2), '1.56'),
  );
  computed('0.5 mm² at 85 °C by the standard’s maximum, 6 m are 279.5 mΩ', iso, () =>
    // 37.1 mΩ/m, hot; the battery, fuse, holder and return of the case are another 20 mΩ.
    expectPrinted(milliohm({ areaMm2: 0.5 }, iso19642, 6, 85) + 20, '299.5'),
  );
});

describe('independent', () => {
  it('is resistivity times length over area', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 200, noNaN: true }),
        fc.double({ min: 0.01, max: 1000, noNaN: true }),
        evenly(-100, 400),
        (areaMm2, lengthM, conductorTempC) => {
          const { resistanceOhm } = wireResistance({ areaMm2, resistanceBasis: geometric, lengthM, conductorTempC });
          const { resistivityOhmMm2PerM } = resistivity({ conductorTempC });
          expectWithin(resistanceOhm, (resistivityOhmMm2PerM * lengthM) / areaMm2, 1e-13);
        },
      ),
    );
  });
  it('converts each printed unit', () => {
    const at20 = { lengthM: 1, conductorTempC: 20 };
    expectWithin(wireResistance({ areaMm2: 1, resistanceBasis: iec60228Class5, ...at20 }).resistanceOhm, 0.0195, 1e-14);
    expectWithin(wireResistance({ awg: '12', resistanceBasis: awgStranded, ...at20 }).resistanceOhm, 6.627297e-3, 1e-7);
    // 5833 circular mils are 2.95562 mm².
    expectWithin(
      wireResistance({ saeGauge: '12', resistanceBasis: saeJ1128, ...at20 }).resistanceOhm,
      5.83329e-3,
      1e-5,
    );
  });
  it('carries aluminium from its own 75 °C by its own line', () => {
    const { resistanceOhmPerM } = wireResistance({
      awg: '2',
      resistanceBasis: necChapter9Table8Aluminium,
      lengthM: 1,
      conductorTempC: 20,
    });
    expectWithin(resistanceOhmPerM, ((0.319 / 304.8) * (228 + 20)) / (228 + 75), 1e-12);
  });
});

describe('laws', () => {
  const anySize = fc
    .constantFrom(...conductorTables)
    .chain((table) => fc.tuple(fc.constant(table), fc.constantFrom(...table.rows.map(([size]) => size))));
  it('grows with temperature and in proportion to length, for every size of every table', () => {
    fc.assert(
      fc.property(
        anySize,
        fc.double({ min: 0.001, max: 1e5, noNaN: true }),
        evenly(-100, 399),
        ([table, size], lengthM, conductorTempC) => {
          const input = { ...sizeIn(table, size), resistanceBasis: table, lengthM, conductorTempC };
          const { resistanceOhm, resistanceOhmPerM } = wireResistance(input);
          expectWithin(resistanceOhm, resistanceOhmPerM * lengthM, 1e-14);
          expectWithin(wireResistance({ ...input, lengthM: 3 * lengthM }).resistanceOhm, 3 * resistanceOhm, 1e-14);
          expect(wireResistance({ ...input, conductorTempC: conductorTempC + 1 }).resistanceOhm).toBeGreaterThan(
            resistanceOhm,
          );
        },
      ),
    );
  });
  it('halves with twice the area, by geometry', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 1e4, noNaN: true }), (areaMm2) => {
        const of = (area: number): number =>
          wireResistance({ areaMm2: area, resistanceBasis: geometric, lengthM: 1, conductorTempC: 60 }).resistanceOhm;
        expectWithin(2 * of(2 * areaMm2), of(areaMm2), 1e-14);
      }),
    );
  });
  it('a gauge and its area are one wire, by geometry', () => {
    for (const awg of AWG_SIZES) {
      const rest = { resistanceBasis: geometric, lengthM: 7, conductorTempC: 50 };
      expectWithin(
        wireResistance({ awg, ...rest }).resistanceOhm,
        wireResistance({ areaMm2: awgToAreaMm2(awg), ...rest }).resistanceOhm,
        1e-14,
      );
    }
  });
  it('swapped inputs are seen', () =>
    swapsMatter(wireResistance, { areaMm2: 1, resistanceBasis: geometric, lengthM: 4, conductorTempC: 60 }));
});

describe('edges', () => {
  const good: WireResistanceInput = { areaMm2: 2.5, resistanceBasis: iec60228Class5, lengthM: 8, conductorTempC: 70 };
  it('no length has no resistance; −100 and 400 °C are the ends', () => {
    expect(wireResistance({ ...good, lengthM: 0 }).resistanceOhm).toBe(0);
    expect(wireResistance({ ...good, conductorTempC: -100 }).resistanceOhm).toBeGreaterThan(0);
    expect(wireResistance({ ...good, conductorTempC: 400 }).resistanceOhm).toBeGreaterThan(0);
    expectInputError(() => wireResistance({ ...good, conductorTempC: -101 }), 'conductorTempC', 'atLeast');
    expectInputError(() => wireResistance({ ...good, conductorTempC: 401 }), 'conductorTempC', 'atMost');
    expectInputError(() => wireResistance({ ...good, lengthM: -0.001 }), 'lengthM', 'atLeast');
    expectInputError(() => wireResistance({ ...good, lengthM: 1e6 + 1 }), 'lengthM', 'atMost');
    const longest = { areaMm2: 0.001, resistanceBasis: geometric, lengthM: 1e6, conductorTempC: 400 };
    expect(Number.isFinite(wireResistance(longest).resistanceOhm)).toBe(true);
  });
  it('refuses nonsense', () => {
    refusesNonsense(wireResistance, good, { required: ['areaMm2', 'lengthM', 'conductorTempC'] });
    expectInputError(() => wireResistance({ ...good, areaMm2: 0 }), 'areaMm2', 'above');
    expectInputError(() => wireResistance({ ...good, areaMm2: 2.5e-6 }), 'areaMm2', 'atLeast');
    expectInputError(() => wireResistance({ ...good, areaMm2: null as never }), 'areaMm2', 'missing');
  });
  it('wants a basis, and never takes one by itself', () => {
    expectInputError(
      () => wireResistance({ ...good, resistanceBasis: undefined as never }),
      'resistanceBasis',
      'missing',
    );
    expectInputError(() => wireResistance({ ...good, resistanceBasis: null as never }), 'resistanceBasis', 'missing');
    for (const basis of ['iso-19642', 3, {}, []]) {
      expectInputError(() => wireResistance({ ...good, resistanceBasis: basis as never }), 'resistanceBasis', 'object');
    }
  });
  it('wants one size, in the words of the basis', () => {
    expectInputError(() => wireResistance({ ...good, awg: '14' }), 'areaMm2', 'oneOfFields');
    const { areaMm2: _, ...bare } = good;
    expectInputError(() => wireResistance(bare), 'areaMm2', 'oneOfFields');
    expectInputError(() => wireResistance({ ...bare, awg: '14' }), 'areaMm2', 'missing');
    expectInputError(() => wireResistance({ ...bare, saeGauge: '14' }), 'areaMm2', 'missing');
    expectInputError(() => wireResistance({ ...good, resistanceBasis: awgStranded }), 'awg', 'missing');
    expectInputError(() => wireResistance({ ...bare, awg: '12', resistanceBasis: saeJ1128 }), 'saeGauge', 'missing');
    expectInputError(
      () => wireResistance({ ...bare, saeGauge: '12', resistanceBasis: geometric }),
      'saeGauge',
      'inTable',
    );
  });
  it('names the sizes when one is not in the table, one step off either end', () => {
    expectInputError(() => wireResistance({ ...good, areaMm2: 2.4 }), 'areaMm2', 'inTable');
    expectInputError(() => wireResistance({ ...good, areaMm2: 185 }), 'areaMm2', 'inTable');
    expectInputError(() => wireResistance({ ...good, areaMm2: 0.13 }), 'areaMm2', 'inTable');
    const { areaMm2: _, ...bare } = good;
    for (const awg of ['26', '9', '3']) {
      expectInputError(() => wireResistance({ ...bare, awg, resistanceBasis: awgStranded }), 'awg', 'inTable');
    }
    expect(() => wireResistance({ ...bare, saeGauge: '20', resistanceBasis: saeJ1128 })).toThrow(
      "wireResistance: saeGauge must be a size of sae-j1128 (18 16 14 12 10 8 6 4 2 1 1/0 2/0 3/0 4/0), got '20'",
    );
  });
  it('says where the resistance comes from', () => {
    const { areaMm2: _, ...bare } = good;
    expect(wireResistance(good)).toMatchObject({
      areaMm2: 2.5,
      size: '2.5 mm²',
      resistanceBasis: 'iec-60228-class-5',
      source: 'iec-60228',
      sourceStatus: 'published',
    });
    expect(wireResistance({ ...good, resistanceBasis: iso19642 })).toMatchObject({ sourceStatus: 'memory' });
    expect(wireResistance({ ...good, resistanceBasis: geometric })).toMatchObject({
      resistanceBasis: 'geometric',
      source: 'nbs-hb-100',
      sourceStatus: 'derived',
    });
    expect(wireResistance({ ...bare, saeGauge: '2', resistanceBasis: saeJ1128 }).size).toBe('SAE 2');
    expect(wireResistance({ ...bare, awg: '2', resistanceBasis: awgStranded }).size).toBe('AWG 2');
    expect(wireResistance({ ...good, areaMm2: 1.5, resistanceBasis: iec60228Class2 }).resistanceOhmPerM).toBeCloseTo(
      (0.0121 * 304.5) / 254.5,
      12,
    );
  });
});

describe('regression', () => {
  const rest = { lengthM: 1, conductorTempC: 20 };
  it('finds 00 as 2/0, in a table as by geometry', () => {
    for (const resistanceBasis of [geometric, awgStranded]) {
      expect(wireResistance({ awg: '00', resistanceBasis, ...rest })).toEqual(
        wireResistance({ awg: '2/0', resistanceBasis, ...rest }),
      );
    }
    expect(wireResistance({ saeGauge: '0', resistanceBasis: saeJ1128, ...rest }).size).toBe('SAE 1/0');
  });
  it('reports a wrong gauge in the name of the function that was called', () => {
    expect(() => wireResistance({ awg: '41', resistanceBasis: geometric, ...rest })).toThrow(
      "wireResistance: awg must be from '4/0' to '40', got '41'",
    );
    expectInputError(() => wireResistance({ awg: 12 as never, resistanceBasis: awgStranded, ...rest }), 'awg', 'text');
  });
  it('gives the area that AC 43.13-1B prints: No. 18 has 1900 circular mils, not the 1624 of a solid wire', () => {
    expectWithin(wireResistance({ awg: '18', resistanceBasis: awgStranded, ...rest }).areaMm2, 0.962743, 1e-5);
  });
  it('never a resistance of 0 or less in deep cold', () => {
    expectInputError(
      () => wireResistance({ areaMm2: 1, resistanceBasis: geometric, lengthM: 1, conductorTempC: -234.5 }),
      'conductorTempC',
      'atLeast',
    );
  });
});
