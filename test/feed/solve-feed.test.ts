import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  awgStranded,
  geometric,
  iso19642,
  type ResistanceBasis,
  saeJ1128,
  solveFeed,
  type SolveFeedInput,
  type SolveFeedResult,
  wireResistance,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const solved = (input: SolveFeedInput): SolveFeedResult => {
  const result = solveFeed(input);
  if (!result.possible) throw new Error(result.because);
  return result;
};

/** W1 of the worked cases: a pump, 15 A, 5.5 m out and 1.0 m back, fixed parts 18.4 mΩ. */
const pump = (
  areaMm2: number,
  conductorTempC: number,
  resistanceBasis: ResistanceBasis = geometric,
): SolveFeedInput => ({
  supplyV: 13.8,
  outParts: [
    { name: 'terminal', kind: 'terminal', resistanceOhm: 0.002 },
    { name: 'fuse', kind: 'fuse', resistanceOhm: 0.0034 },
    { name: 'terminal', kind: 'terminal', resistanceOhm: 0.002 },
    { name: 'relay', kind: 'relay', resistanceOhm: 0.005 },
    { name: 'wire out', lengthM: 5.5 },
    { name: 'terminal', kind: 'terminal', resistanceOhm: 0.002 },
  ],
  returnParts: [
    { name: 'terminal', kind: 'terminal', resistanceOhm: 0.002 },
    { name: 'wire back', lengthM: 1 },
    { name: 'body', kind: 'body', resistanceOhm: 0.002 },
  ],
  areaMm2,
  resistanceBasis,
  conductorTempC,
  load: { kind: 'constant-current', currentA: 15 },
});

describe('published', () => {
  // Acceptance values: arithmetic from 0.017241 Ω·mm²/m and 234.5 °C, stated to the digits shown.
  const w1 = {
    source: 'nbs-hb-100',
    place: 'worked case of a pump feed, 0.017241 Ω·mm²/m',
    status: 'derived',
  } as const;
  const at20 = solved(pump(2.5, 20));
  computed('wire of the pump feed, mΩ', w1, () => expectPrinted((at20.wireDropV / 15) * 1000, '44.83'));
  computed('fixed parts, mΩ', w1, () => expectPrinted((at20.fixedDropV / 15) * 1000, '18.4'));
  computed('all, mΩ', w1, () => expectPrinted(at20.pathResistanceOhm * 1000, '63.23'));
  for (const [area, temp, drop, load] of [
    [2.5, 20, '0.948', '12.852'],
    [2.5, 60, '1.054', '12.746'],
    [4, 20, '0.696', '13.104'],
    [6, 20, '0.556', '13.244'],
  ] as const) {
    computed(`${area} mm² at ${temp} °C: volts lost`, w1, () => expectPrinted(solved(pump(area, temp)).dropV, drop));
    computed(`${area} mm² at ${temp} °C: volts at the pump`, w1, () =>
      expectPrinted(solved(pump(area, temp)).loadV, load),
    );
  }

  // Four meanings of "12": 12 A, 6 m of loop, 20 °C. The SAE figure was cut, not rounded: one unit of its last digit.
  const loop = (size: object, resistanceBasis: ResistanceBasis): number =>
    solved({
      supplyV: 13.8,
      outParts: [{ name: 'out', lengthM: 3 }],
      returnParts: [{ name: 'back', lengthM: 3 }],
      ...size,
      resistanceBasis,
      conductorTempC: 20,
      load: { kind: 'constant-current', currentA: 12 },
    }).dropV;
  computed('solid AWG 12', { source: 'astm-b258', place: '5.211 mΩ/m', status: 'derived' }, () =>
    expectPrinted(loop({ awg: '12' }, geometric), '0.3752'),
  );
  computed(
    'tinned stranded AWG 12',
    { source: 'ac-43-13-1b', place: 'table 11-9, 2.02 Ω/kft', status: 'published' },
    () => expectPrinted(loop({ awg: '12' }, awgStranded), '0.4772'),
  );
  computed('SAE 12', { source: 'sae-j1128', place: '5833 circular mils', status: 'memory' }, () =>
    expectPrinted(loop({ saeGauge: '12' }, saeJ1128), '0.4199', 1),
  );
  computed('ISO 3 mm²', { source: 'iso-19642', place: '6.15 mΩ/m', status: 'memory' }, () =>
    expectPrinted(loop({ areaMm2: 3 }, iso19642), '0.4428'),
  );
});

describe('laws', () => {
  const areas = fc.constantFrom(0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25);
  it('loses more when hotter, when thinner and by a standard than by geometry', () => {
    fc.assert(
      fc.property(areas, evenly(-40, 150), fc.double({ min: 1, max: 50, noNaN: true }), (area, temp, rise) => {
        const drop = (a: number, t: number, basis: ResistanceBasis = geometric): number => {
          const result = solveFeed(pump(a, t, basis));
          return result.possible ? result.dropV : Infinity;
        };
        expect(drop(area, temp + rise)).toBeGreaterThan(drop(area, temp));
        expect(drop(area, temp)).toBeGreaterThan(drop(area * 1.2, temp));
        expect(drop(area, temp, iso19642)).toBeGreaterThan(drop(area, temp));
      }),
    );
  });
  it('is the path with the wire put in as a resistance', () => {
    const { resistanceOhmPerM } = wireResistance({
      areaMm2: 4,
      resistanceBasis: iso19642,
      lengthM: 1,
      conductorTempC: 77,
    });
    const result = solved(pump(4, 77, iso19642));
    expectWithin(result.wireDropV, 15 * 6.5 * resistanceOhmPerM, 1e-12);
    expect(result.wireLengthM).toBe(6.5);
  });
});

describe('edges', () => {
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(solveFeed, pump(2.5, 20), { required: ['supplyV', 'conductorTempC'] });
    expectInputError(
      () => solveFeed({ ...pump(2.5, 20), resistanceBasis: 'iso-19642' as never }),
      'resistanceBasis',
      'object',
    );
    expectInputError(() => solveFeed(pump(2.6, 20, iso19642)), 'areaMm2', 'inTable');
    expectInputError(
      () => solveFeed({ ...pump(2.5, 20), outParts: [{ name: 'x' } as never] }),
      'outParts[0].lengthM',
      'oneOfFields',
    );
    expectInputError(
      () => solveFeed({ ...pump(2.5, 20), outParts: [{ name: '', lengthM: 1 }] }),
      'outParts[0].name',
      'text',
    );
    expectInputError(() => solveFeed(pump(2.5, 401)), 'conductorTempC', 'atMost');
    expectInputError(() => solveFeed(pump(2.5, -101)), 'conductorTempC', 'atLeast');
  });
  it('names the slip of an area in m²', () => {
    expect(() => solveFeed(pump(0.0000025, 20))).toThrow(/is this in m²\?/);
  });
});
