import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  awgToAreaMm2,
  awgToDiameterMm,
  fusingCurrent,
  type FusingCurrentInput,
  inchesToMm,
  shortCircuitWithstand,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const onderdonk = (awg: string, durationS: number, startTempC = 25): number =>
  fusingCurrent({ rule: 'onderdonk', areaMm2: awgToAreaMm2(awg), durationS, startTempC }).currentA;
const preece = (diameterMm: number, metal: NonNullable<FusingCurrentInput['metal']> = 'copper'): number =>
  fusingCurrent({ rule: 'preece', diameterMm, metal }).currentA;

describe('published', () => {
  computed(
    '16 AWG, 5 s, 25 °C: 168.9 A (a web example has 178 by 234 − Ta)',
    { source: 'onderdonk-1928', place: 'worked example, sign corrected', status: 'derived' },
    () => expectWithin(onderdonk('16', 5), 168.9, 1e-3),
  );
  for (const [awg, ...prints] of [
    ['20', '1494', '472.6', '149.4', '66.8'],
    ['18', '2376', '751.4', '237.6', '106.3'],
    ['16', '3779', '1195', '377.9', '169.0'],
    ['14', '6008', '1900', '600.8', '268.7'],
    ['12', '9553', '3021', '955.3', '427.2'],
    ['10', '15190', '4804', '1519', '679.3'],
  ] as const) {
    prints.forEach((print, i) => {
      const time = [0.01, 0.1, 1, 5][i]!;
      computed(
        `AWG ${awg} in ${time} s`,
        { source: 'onderdonk-1928', place: 'worked out apart at 25 °C', status: 'derived' },
        () => expectWithin(onderdonk(awg, time), Number(print), 6e-4),
      );
    });
  }
  for (const [awg, print, handbook] of [
    ['30', '10.3', '10.2'],
    ['28', '14.6', undefined],
    ['26', '20.6', '20.5'],
    ['24', '29.2', undefined],
    ['22', '41.3', '41.2'],
    ['20', '58.5', '58.4'],
    ['18', '82.9', undefined],
    ['16', '117.4', '117'],
    ['14', '166.2', '166'],
    ['12', '235.3', '235'],
    ['10', '333.2', '333'],
  ] as const) {
    computed(
      `AWG ${awg}, copper`,
      { source: 'preece-1888', place: '10 244 d^1.5, worked out apart', status: 'derived' },
      () => expectPrinted(preece(awgToDiameterMm(awg)), print, 0.6),
    );
    if (handbook !== undefined) {
      computed(
        `AWG ${awg}, handbook table`,
        { source: 'preece-1888', place: "electrical engineers' handbook table", status: 'memory' },
        () =>
          // The handbook works with diameters cut to a tenth of a mil.
          expectWithin(preece(awgToDiameterMm(awg)), Number(handbook), 0.01),
      );
    }
  }
  computed('a wire of 0.0524 in: 123 A', { source: 'preece-1888', place: 'worked example', status: 'published' }, () =>
    expectPrinted(preece(inchesToMm(0.0524)), '123'),
  );
  for (const [metal, print] of [
    ['copper', '10244'],
    ['aluminium', '7585'],
    ['german-silver', '5230'],
    ['iron', '3148'],
    ['tin', '1642'],
    ['lead', '1379'],
  ] as const) {
    computed(
      `one inch of ${metal}`,
      { source: 'preece-1888', place: 'coefficients', status: metal === 'copper' ? 'published' : 'memory' },
      () => expectPrinted(preece(25.4, metal), print),
    );
  }
  computed(
    'the ICEA form is 1 % below in current',
    { source: 'icea-p-32-382', place: '0.0297 for 1/33', status: 'published' },
    () => {
      const icea = fusingCurrent({ rule: 'icea-p-32-382', areaMm2: 2, durationS: 0.5, startTempC: 40 }).currentA;
      const other = fusingCurrent({ rule: 'onderdonk', areaMm2: 2, durationS: 0.5, startTempC: 40 }).currentA;
      expectPrinted(icea / other, '0.99');
    },
  );
});

describe('independent', () => {
  it('Onderdonk is k √(S²/t) to melting: 288.7 at 25 °C and 283.7 at 40 °C, 0.2 % from the IEC form', () => {
    for (const [start, k] of [
      [25, '288.7'],
      [40, '283.7'],
    ] as const) {
      const one = fusingCurrent({ rule: 'onderdonk', areaMm2: 1, durationS: 1, startTempC: start }).currentA;
      expectPrinted(one, k, 0.6);
      expectWithin(one, shortCircuitWithstand({ startTempC: start, limitTempC: 1083 }).oneSecondAPerMm2, 3e-3);
    }
  });
});

describe('laws', () => {
  it('scales with area and with the inverse root of time; with the diameter to 3/2', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 50, noNaN: true }),
        fc.double({ min: 1.1, max: 4, noNaN: true }),
        (a, f) => {
          const at = (areaMm2: number, durationS: number): number =>
            fusingCurrent({ rule: 'onderdonk', areaMm2, durationS, startTempC: 25 }).currentA;
          expectWithin(at(a * f, 1), f * at(a, 1), 1e-12);
          expectWithin(at(a, f), at(a, 1) / Math.sqrt(f), 1e-12);
          expectWithin(preece(a * f), f ** 1.5 * preece(a), 1e-12);
          expect(fusingCurrent({ rule: 'onderdonk', areaMm2: a, durationS: 1, startTempC: 85 }).currentA).toBeLessThan(
            at(a, 1),
          );
        },
      ),
    );
  });
});

describe('edges', () => {
  const input = { rule: 'onderdonk', areaMm2: 1, durationS: 1, startTempC: 25 } as const;
  it('refuses nonsense, and each rule asks for its own fields', () => {
    refusesNonsense(fusingCurrent, input, { required: ['areaMm2', 'durationS', 'startTempC'] });
    refusesNonsense(fusingCurrent, { rule: 'preece', diameterMm: 1 }, { required: ['diameterMm'] });
    expectInputError(() => fusingCurrent({ ...input, durationS: 10.1 }), 'durationS', 'atMost');
    expectInputError(() => fusingCurrent({ ...input, durationS: 0 }), 'durationS', 'above');
    expectInputError(() => fusingCurrent({ ...input, rule: 'x' as never }), 'rule', 'oneOf');
    expectInputError(() => fusingCurrent({ rule: 'preece', diameterMm: 1, metal: 'gold' as never }), 'metal', 'oneOf');
  });
  it('names rule, source and status', () => {
    expect(fusingCurrent(input)).toMatchObject({
      rule: 'onderdonk',
      source: 'onderdonk-1928',
      sourceStatus: 'published',
    });
    expect(fusingCurrent({ rule: 'preece', diameterMm: 1, metal: 'tin' })).toMatchObject({ sourceStatus: 'memory' });
  });
});
