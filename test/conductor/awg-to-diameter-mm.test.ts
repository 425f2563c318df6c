import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { AWG_SIZES, awgToDiameterMm, mm2ToCircularMils, mmToInches } from 'loomwright';
import { expectInputError } from '../support/edge.js';
import { computed, expectPrinted, expectWithin, type Citation } from '../support/published.js';
import { circular31, circular31Rows } from './circular-31.js';

const astm: Citation = { source: 'astm-b258', place: 'defining sizes', status: 'published' };
const ac: Citation = { source: 'ac-43-13-1b', place: 'table 11-9, circular mils', status: 'published' };

describe('published', () => {
  computed('No. 0000 is 0.4600 in', astm, () => expectPrinted(mmToInches(awgToDiameterMm('4/0')), '0.4600'));
  computed('No. 36 is 0.0050 in', astm, () => expectPrinted(mmToInches(awgToDiameterMm('36')), '0.0050'));
  computed('the ratio of neighbours is 1.1229322', astm, () =>
    expectPrinted(awgToDiameterMm('11') / awgToDiameterMm('12'), '1.1229322'),
  );

  // The Circular chained its diameters by rounded ratios: four of its prints are off by up to one unit of their last digit.
  const chained: Partial<Record<string, number>> = { '3/0': 0.9, '1/0': 1.1, '10': 0.8, '30': 0.6 };
  for (const [awg, inches] of circular31Rows) {
    computed(`diameter of No. ${awg}, ${inches} in`, circular31, () =>
      expectPrinted(mmToInches(awgToDiameterMm(awg)), inches, chained[awg]),
    );
  }

  // The circular mils of a stranded wire are those of its strands: number of strands and their AWG number, their
  // diameter to 0.1 mil. From 2/0 up the number of strands is from memory.
  const strands: readonly (readonly [size: string, count: number, awg: string, print: string])[] = [
    ['24', 19, '36', '475'],
    ['22', 19, '34', '755'],
    ['20', 19, '32', '1216'],
    ['18', 19, '30', '1900'],
    ['16', 19, '29', '2426'],
    ['14', 19, '27', '3831'],
    ['12', 37, '28', '5874'],
    ['10', 37, '26', '9354'],
    ['8', 133, '29', '16983'],
    ['6', 133, '27', '26818'],
    ['4', 133, '25', '42615'],
    ['2', 665, '30', '66500'],
    ['1', 817, '30', '81700'],
    ['1/0', 1045, '30', '104500'],
    ['2/0', 1330, '30', '133000'],
    ['3/0', 1665, '30', '166500'],
    ['4/0', 2109, '30', '210900'],
  ];
  for (const [size, count, awg, print] of strands) {
    computed(`circular mils of stranded No. ${size}, ${count} of No. ${awg}`, ac, () => {
      const mils = Math.round(mmToInches(awgToDiameterMm(awg)) * 10_000) / 10;
      // No. 22 was printed from the unrounded strand: 1 unit off.
      expectPrinted(count * mils * mils, print, size === '22' ? 1 : 0.5);
    });
  }
});

describe('independent', () => {
  it('has 38 equal ratios between No. 0000 and No. 36, so that six sizes are nearly a factor of two', () => {
    let mm = 0.46 * 25.4;
    for (const awg of AWG_SIZES) {
      expectWithin(awgToDiameterMm(awg), mm, 1e-12);
      mm /= Math.exp(Math.log(92) / 39);
    }
    expect(AWG_SIZES).toHaveLength(44);
    expect(awgToDiameterMm('6') / awgToDiameterMm('12')).toBeCloseTo(2.005, 3);
  });
});

describe('laws', () => {
  it('falls with the number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 42 }), (i) => {
        expect(awgToDiameterMm(AWG_SIZES[i]!)).toBeGreaterThan(awgToDiameterMm(AWG_SIZES[i + 1]!));
      }),
    );
  });
  it('reads both ways of writing the noughts', () => {
    expect([1, 2, 3, 4].map((n) => awgToDiameterMm('0'.repeat(n)))).toEqual(
      [1, 2, 3, 4].map((n) => awgToDiameterMm(`${n}/0`)),
    );
  });
  it('has the circular mils of its diameter', () => {
    expectWithin(mm2ToCircularMils((Math.PI / 4) * awgToDiameterMm('10') ** 2), 10383, 1e-5);
  });
});

describe('edges', () => {
  it('ends at 4/0 and 40', () => {
    for (const awg of ['5/0', '0/0', '00000', '41', '-1', '1.5', '', ' 12', 'AWG 12', '12 AWG', '1e1', '007']) {
      expectInputError(() => awgToDiameterMm(awg), 'awg', 'inTable');
    }
  });
  it('takes a text only', () => {
    for (const awg of [12, NaN, {}, []]) expectInputError(() => awgToDiameterMm(awg as never), 'awg', 'text');
    for (const awg of [undefined, null]) expectInputError(() => awgToDiameterMm(awg as never), 'awg', 'missing');
    expect(() => awgToDiameterMm(12 as never)).toThrow(
      "awgToDiameterMm: awg must be a text such as '18' or '4/0', got 12",
    );
    expect(() => awgToDiameterMm('41')).toThrow("awgToDiameterMm: awg must be from '4/0' to '40', got '41'");
  });
});
