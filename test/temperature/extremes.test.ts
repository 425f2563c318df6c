import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import * as core from 'loomwright';

const curve = core.ntc10k3mcd1;
const side = 'sensor-to-ground';
const points = [0, 25, 50, 75, 100].map((tempC) => ({
  tempC,
  resistanceOhm: core.thermistorResistance({ curve, tempC }).resistanceOhm,
  uncertaintyK: 0.3,
}));
const fit = core.fitSteinhartHart({ points });
const given = { curve, side, supplyV: 5, pullOhm: 2490 } as const;

/** Every function of the room with numbers to be replaced, one or all of them. */
const cases: Readonly<Record<string, readonly [run: (input: never) => unknown, input: object]>> = {
  betaFromPoints: [core.betaFromPoints, { coldTempC: 0, coldOhm: 5900, hotTempC: 100, hotOhm: 186 }],
  findPullUp: [core.findPullUp, { side, supplyV: 5, knownOhm: 2200, inputV: 2.3, meterToleranceV: 0.01 }],
  fitUncertainty: [
    core.fitUncertainty,
    { fit, resistanceOhm: 5000, resistanceUncertaintyFraction: 0.01, coverageFactor: 2 },
  ],
  thermistorInput: [core.thermistorInput, { ...given, inputV: 2, inputOhm: 1e5, adcSteps: 1024, dissipationMwPerK: 1, extrapolate: true }], // prettier-ignore
  thermistorInputHot: [core.thermistorInput, { ...given, tempC: 20, inputOhm: 1e5, extrapolate: true }],
  thermistorSelfHeating: [core.thermistorSelfHeating, { ...given, ambientTempC: 20, dissipationMwPerK: 1 }],
  thermistorErrorBudget: [
    core.thermistorErrorBudget,
    {
      ...{ ...given, tempsC: [20], pullToleranceFraction: 0.01, sensorToleranceK: 0.2, adcSteps: 1024 },
      ...{ adcErrorCounts: 2, reference: 'absolute', supplyToleranceFraction: 0.02, dissipationMwPerK: 2 },
    },
  ],
  thermistorResistance: [core.thermistorResistance, { curve, tempC: 25 }],
  thermistorResistancePoints: [core.thermistorResistance, { curve: core.ntc2252, tempC: 25, extrapolate: true }],
  thermistorTemperature: [core.thermistorTemperature, { curve, resistanceOhm: 2500 }],
  thermistorTemperaturePoints: [core.thermistorTemperature, { curve: core.ntc2252, resistanceOhm: 2500, extrapolate: true }], // prettier-ignore
  thermistorTemperatureInverse: [core.thermistorTemperature, { curve: core.ntcMaterial1Inverse, resistanceOhm: 2500, extrapolate: true }], // prettier-ignore
  rtdResistance: [core.rtdResistance, { curve: core.iec60751, nominalOhm: 100, tempC: 20 }],
  rtdTemperature: [core.rtdTemperature, { curve: core.iec60751, nominalOhm: 100, resistanceOhm: 110 }],
  rtdTolerance: [core.rtdTolerance, { curve: core.iec60751, nominalOhm: 100, tempC: 20, toleranceClass: core.platinumClassA, element: 'film' }], // prettier-ignore
  thermocoupleTolerance: [
    core.thermocoupleTolerance,
    { thermocouple: core.thermocoupleK, hotTempC: 300, toleranceClass: '1' },
  ],
  thermocoupleVoltage: [core.thermocoupleVoltage, { thermocouple: core.thermocoupleK, hotTempC: 300, coldTempC: 20 }],
  thermocoupleTemperature: [
    core.thermocoupleTemperature,
    { thermocouple: core.thermocoupleN, emfMv: 12, coldTempC: 20 },
  ],
};
const letters = (['a', 'b', 'c', 'd', 'refOhm', 'betaK', 'refTempC'] as const).map((name) => name);

/** Paths to numbers that are neither finite nor null. */
function notFinite(value: unknown, at = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${at} is ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => notFinite(part, `${at}.${key}`));
}

function outcome(run: () => unknown): string[] {
  try {
    return notFinite(run());
  } catch (error) {
    const { code } = error as { code?: string };
    return code === 'LOOMWRIGHT_INPUT' ? [] : [String(error)];
  }
}

const extreme = fc.oneof(
  fc.constantFrom(0, -0, 5e-324, 1e-300, 1e-12, 1e-6, 1e-3, 1, 1e3, 1e6, 1e12, 1e100, 1e308, Number.MAX_VALUE),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.double({ min: -1000, max: 1000, noNaN: true }),
);

describe('laws', () => {
  it.each(Object.entries(cases))(
    '%s gives finite numbers or an InputError, whatever the size of its input',
    (_, [run, input]) => {
      const names = Object.entries(input).flatMap(([name, value]) => (typeof value === 'number' ? [name] : []));
      fc.assert(
        fc.property(
          fc.array(fc.tuple(fc.constantFrom(...names), extreme, fc.constantFrom(1, -1)), {
            minLength: 1,
            maxLength: 3,
          }),
          (changes) => {
            const changed = Object.fromEntries(changes.map(([name, value, sign]) => [name, sign * value]));
            expect(
              outcome(() => run({ ...input, ...changed } as never)),
              JSON.stringify(changed),
            ).toEqual([]);
          },
        ),
      );
    },
  );
  it('does so for any curve', () => {
    const curves = [curve, core.ntc103jl1a, core.ntcMaterial1, core.ntcMaterial1Inverse, { kind: 'beta', refOhm: 1e4, refTempC: 25, betaK: 3500 }]; // prettier-ignore
    fc.assert(
      fc.property(
        fc.constantFrom(...curves),
        fc.array(fc.tuple(fc.constantFrom(...letters), extreme, fc.constantFrom(1, -1)), {
          minLength: 1,
          maxLength: 4,
        }),
        fc.double({ min: -3, max: 9, noNaN: true }),
        (start, changes, decade) => {
          const changed = Object.fromEntries(changes.filter(([name]) => name in start).map(([name, v, sign]) => [name, sign * v])); // prettier-ignore
          const other = { ...start, ...changed } as core.ThermistorCurve;
          const resistanceOhm = 10 ** decade;
          expect(outcome(() => core.thermistorTemperature({ curve: other, resistanceOhm, extrapolate: true }))).toEqual(
            [],
          );
          expect(outcome(() => core.thermistorResistance({ curve: other, tempC: 40, extrapolate: true }))).toEqual([]);
          const array = new Float64Array([resistanceOhm]);
          expect(outcome(() => core.thermistorTemperatureEach({ curve: other, resistanceOhm: array, extrapolate: true }))).toEqual([]); // prettier-ignore
          expect(outcome(() => core.thermistorTable({ curve: other, lowestOhm: 100, highestOhm: 1e5, maxErrorK: 0.1 }))).toEqual([]); // prettier-ignore
        },
      ),
      { numRuns: 300 },
    );
  });
  it('fits any points, or says why not', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ tempC: fc.oneof(extreme, fc.integer({ min: -40, max: 150 })), resistanceOhm: extreme }), {
          minLength: 3,
          maxLength: 7,
        }),
        (list) => {
          expect(outcome(() => core.fitSteinhartHart({ points: list }))).toEqual([]);
        },
      ),
      { numRuns: 300 },
    );
  });
});
