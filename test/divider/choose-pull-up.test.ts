import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { choosePullUp, type ChoosePullUpInput, e12, e24, e96, type PullUpChoice } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const sender: ChoosePullUpInput = {
  supplyV: 5,
  lowestSensorOhm: 10,
  highestSensorOhm: 350,
  sensorMostA: 0.02,
  sensorMostW: null,
  pullUpMostW: 0.25,
  faultV: 14.4,
  series: e12,
  toleranceFraction: 0.05,
  fullScaleCount: 1023,
  wantedSpanCount: 200,
};

const chosen = (input: ChoosePullUpInput): PullUpChoice => {
  const result = choosePullUp(input);
  if (!result.possible) throw new Error(result.because);
  return result;
};

describe('published', () => {
  const w5 = {
    source: 'circuit-theory',
    place: 'worked case: pull-up for a sender of 350 to 10 Ω',
    status: 'derived',
  } as const;
  const choice = chosen(sender);
  computed('the value of E12 at 20 mA', w5, () => {
    expect(choice.pullUpOhm).toBe(270);
  });
  const list: readonly (readonly [string, number, string])[] = [
    ['widest span at, Ω', choice.widestOhm, '59.16'],
    ['empty, V', choice.highestPinV, '2.8226'],
    ['full, V', choice.lowestPinV, '0.1786'],
    ['current, mA', choice.sensorA * 1000, '17.86'],
    ['heat of the sender, mW', choice.sensorW * 1000, '23.1'],
    ['heat of the pull-up, mW', choice.pullUpW * 1000, '86.1'],
    ['heat of the pull-up with the wire shorted, mW', choice.pullUpShortW * 1000, '92.6'],
    ['wire shorted to 14.4 V, A', choice.faultA!, '1.44'],
    ['wire shorted to 14.4 V, W', choice.faultW!, '20.7'],
  ];
  for (const [name, value, print] of list) {
    computed(name, w5, () => {
      expectPrinted(value, print);
    });
  }
  const levels = ['2.823', '2.696', '2.554', '2.394', '2.211', '2.000', '1.755', '1.466', '1.121', '0.701', '0.179'];
  levels.forEach((print, i) => {
    computed(`volts at level ${i * 10} %`, w5, () => {
      expectPrinted(choice.curve[i]!.pinV, print);
    });
  });
  computed('a straight line reads at half', w5, () => {
    expectPrinted(choice.curve[5]!.straightFraction, '0.311');
  });
  // The other pull-ups of the case, each as the only value that its limits leave.
  const only = (ohm: number, over: Partial<ChoosePullUpInput> = {}): PullUpChoice =>
    chosen({ ...sender, toleranceFraction: 0, wantedSpanCount: 0, sensorMostA: 5 / (ohm + 10), series: e96, ...over });
  const ten = only(10000);
  computed('10 kΩ: empty, V', w5, () => {
    expectPrinted(ten.highestPinV, '0.1691');
  });
  computed('10 kΩ: full, V', w5, () => {
    expectPrinted(ten.lowestPinV, '0.0050');
  });
  computed('10 kΩ: counts', w5, () => {
    expectPrinted(ten.spanCount, '33.6');
  });
  // No part has 59.16 Ω; the nearest of E96 is 59.0 and the span is flat there.
  const widest = chosen({ ...sender, sensorMostA: null, pullUpMostW: 10, toleranceFraction: 0, series: e96 });
  computed('widest span, V', w5, () => {
    expectPrinted(widest.spanV, '3.554');
  });
  computed('its current, mA', w5, () => {
    expectPrinted(widest.sensorA * 1000, '72.3', 2);
  });
  computed('least pull-up at 20 mA, Ω', w5, () => {
    expect(chosen({ ...sender, series: e24, toleranceFraction: 0 }).pullUpOhm).toBe(240);
  });
});

describe('independent', () => {
  it('no value of the series does better within the limits', () => {
    for (const series of [e12, e24]) {
      for (const sensorMostA of [0.002, 0.01, 0.02, 0.05, null]) {
        const choice = chosen({ ...sender, series, sensorMostA, wantedSpanCount: 1 });
        const decades = [0, 1, 2, 3, 4];
        const all = decades.flatMap((decade) => series.values.map((v) => Number(`${v}e${decade - 1}`)));
        const spans = all.map((ohm) => {
          const ends = [ohm * 0.95, ohm * 1.05];
          const counts = ends.map((p) => (350 / (350 + p) - 10 / (10 + p)) * 1023);
          const ok = (sensorMostA === null || 5 / (10 + ends[0]!) <= sensorMostA) && 25 / ends[0]! <= 0.25;
          return ok ? Math.min(...counts) : -1;
        });
        expectWithin(choice.leastSpanCount, Math.max(...spans), 1e-12);
        expect(choice.pullUpOhm).toBe(all[spans.indexOf(Math.max(...spans))]);
      }
    }
  });
});

describe('laws', () => {
  it('keeps every limit at both ends of the tolerance', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 1.2, max: 100, noNaN: true }),
        fc.double({ min: 0.001, max: 0.1, noNaN: true }),
        evenlyWithEnds(0, 0.1),
        (lowestSensorOhm, times, sensorMostA, toleranceFraction) => {
          const highestSensorOhm = lowestSensorOhm * times;
          const input = {
            ...sender,
            lowestSensorOhm,
            highestSensorOhm,
            sensorMostA,
            toleranceFraction,
            wantedSpanCount: 0,
          };
          const choice = chosen(input);
          expect(choice.checks.every((check) => check.ok)).toBe(true);
          expect(5 / (lowestSensorOhm + choice.pullUpOhm * (1 - toleranceFraction))).toBeLessThanOrEqual(sensorMostA);
          for (const { sensorOhm } of choice.curve) {
            const heat = (5 / (sensorOhm + choice.pullUpOhm)) ** 2 * sensorOhm;
            expect(heat).toBeLessThanOrEqual(choice.sensorW * (1 + 1e-12));
          }
          expect(choice.spanV).toBeLessThanOrEqual(
            5 * (1 - 2 / (1 + Math.sqrt(times))) * (1 + 1e-9), // the span at the geometric mean
          );
        },
      ),
      { numRuns: 40 },
    );
  });
  it('does not mistake one input for another', () => {
    swapsMatter(choosePullUp, { ...sender, sensorMostW: 0.5 });
  });
});

describe('edges', () => {
  it('says what is nearest when the span cannot be had', () => {
    const result = choosePullUp({ ...sender, wantedSpanCount: 600 });
    expect(result).toMatchObject({ possible: false, code: 'span-too-small', nearest: { pullUpOhm: 270 } });
    expect(result.possible ? '' : result.because).toMatch(/^no value within the limits gives 600 counts/);
  });
  it('a limit on the sensor’s heat counts too', () => {
    const cool = chosen({ ...sender, sensorMostW: 0.005, wantedSpanCount: 0 });
    expect(cool.pullUpOhm).toBeGreaterThan(270);
    expect(cool.checks.find((check) => check.name === 'heat of the sensor')?.ok).toBe(true);
  });
  it('a sensor that goes to 0 Ω has no current in a fault that could be told', () => {
    const wiper = chosen({ ...sender, lowestSensorOhm: 0, wantedSpanCount: 0 });
    expect(wiper).toMatchObject({ faultA: null, faultW: null, lowestPinV: 0 });
  });
  it('refuses nonsense', () => {
    refusesNonsense(choosePullUp, sender, {
      required: [
        'supplyV',
        'lowestSensorOhm',
        'highestSensorOhm',
        'pullUpMostW',
        'faultV',
        'toleranceFraction',
        'fullScaleCount',
        'wantedSpanCount',
      ],
      optional: ['sensorMostA', 'sensorMostW'],
    });
    expectInputError(() => choosePullUp({ ...sender, highestSensorOhm: 10 }), 'highestSensorOhm', 'above');
    expectInputError(() => choosePullUp({ ...sender, faultV: 4 }), 'faultV', 'atLeast');
    expectInputError(() => choosePullUp({ ...sender, toleranceFraction: 5 }), 'toleranceFraction', 'below');
    expectInputError(() => choosePullUp({ ...sender, series: [] as never }), 'series', 'object');
  });
});

describe('regression', () => {
  it('a sensor of next to no resistance is a short, not a number beyond all bounds', () => {
    const short = chosen({ ...sender, lowestSensorOhm: 1e-300, wantedSpanCount: 0 });
    expect(short).toMatchObject({ faultA: null, faultW: null });
  });
});
