import { describe, it } from 'vitest';
import {
  adcReading,
  checkSwitchLadder,
  choosePullUp,
  designDivider,
  designSwitchLadder,
  divider,
  e12,
  ledResistor,
  loadedDivider,
  nearestPreferred,
  switchInput,
  thevenin,
  toleranceStack,
} from 'loomwright';
import { neverRunsOut } from '../support/extremes.js';

const ladder = {
  supplyV: 5,
  pullOhm: 1000,
  pullTo: 'supply',
  toleranceFraction: 0.05,
  pullToleranceFraction: 0.05,
  wireOhm: 1,
  contactMostOhm: 10,
  leakOhm: 1e5,
  idleOhm: 1e4,
  guardV: 0.1,
  tellShort: true,
  tellOpen: true,
} as const;

describe('edges', () => {
  it('no function runs out of numbers', () => {
    neverRunsOut(divider, { inV: 12, upperOhm: 18000, lowerOhm: 10000 });
    neverRunsOut(loadedDivider, {
      inV: 12,
      sourceOhm: 1,
      upperOhm: 18000,
      lowerOhm: 10000,
      inputOhm: 1e6,
      pullUpOhm: 1000,
      pullUpV: 5,
      pullDownOhm: 1e5,
      fullScaleV: 5,
      clampV: 5.6,
      allowedErrorV: 0.1,
    });
    neverRunsOut(
      (input: { emfV: number; resistanceOhm: number; loadOhm: number; injectedA: number }) => {
        const { loadOhm, injectedA, ...branch } = input;
        return thevenin({ branches: [branch, { emfV: 5, resistanceOhm: 1e12 }], loadOhm, injectedA });
      },
      { emfV: 12, resistanceOhm: 10, loadOhm: 5, injectedA: 0 },
    );
    neverRunsOut(nearestPreferred, { value: 100, series: e12 });
    neverRunsOut(adcReading, {
      pinV: 1,
      referenceV: 5,
      bits: 10,
      divisor: '2^n',
      reference: 'absolute',
      referenceToleranceFraction: 0.02,
    });
    neverRunsOut(switchInput, {
      pullOhm: 1000,
      pullToleranceFraction: 0.05,
      pullV: 12,
      switchedV: 0,
      inputOhm: 1e5,
      wireOhm: 1,
      contactMostOhm: 50,
      leakOhm: 20000,
      lowV: 1.5,
      highV: 3.5,
      leastWettingA: 0.01,
    });
    neverRunsOut(checkSwitchLadder, { ...ladder, form: 'separate', buttonOhm: [100, 500] });
    neverRunsOut(checkSwitchLadder, { ...ladder, form: 'chain', buttonOhm: [100, 500] });
  });
  it('nor does a design, and every search ends', () => {
    neverRunsOut(
      designDivider,
      {
        lowestInV: 8,
        highestInV: 16,
        surgeV: 30,
        fullScaleV: 5,
        inputOhm: 1e5,
        leastSourceOhm: 1000,
        mostSourceOhm: 10000,
        resistorMostW: 0.125,
        clampV: 5.6,
        clampMostA: 0.002,
        mostUnusedFraction: 0.3,
        series: e12,
        toleranceFraction: 0.01,
      },
      60,
    );
    neverRunsOut(
      choosePullUp,
      {
        supplyV: 5,
        lowestSensorOhm: 10,
        highestSensorOhm: 350,
        sensorMostA: 0.02,
        sensorMostW: 0.1,
        pullUpMostW: 0.25,
        faultV: 14.4,
        series: e12,
        toleranceFraction: 0.05,
        fullScaleCount: 1023,
        wantedSpanCount: 200,
      },
      60,
    );
    neverRunsOut(
      ledResistor,
      {
        lowestSupplyV: 11,
        highestSupplyV: 14.4,
        ledV: 2,
        seriesCount: 1,
        stringCount: 1,
        wantedA: 0.015,
        mostA: 0.02,
        leastA: 0.005,
        resistorMostW: 0.25,
        series: e12,
        toleranceFraction: 0.05,
        leakageA: 0.0005,
        darkV: 1.4,
        leastLoadA: 0.1,
      },
      60,
    );
    for (const form of ['separate', 'chain'] as const) {
      neverRunsOut(designSwitchLadder, { ...ladder, form, buttonCount: 3, series: e12, mostOhm: 1e5 }, 30);
    }
  }, 60_000);
  it('nor does a stack of tolerances', () => {
    neverRunsOut(
      (input: { value: number; halfWidthValue: number; seed: number }) => {
        const { seed, ...part } = input;
        const parts = [
          { name: 'a', ...part },
          { name: 'b', value: 2, toleranceFraction: 0.1 },
        ];
        return toleranceStack({ quantity: ([a, b]) => a! / b!, parts, seed, runs: 1000 });
      },
      { value: 1, halfWidthValue: 0.1, seed: 1 },
      60,
    );
  });
});
