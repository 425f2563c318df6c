import { describe, it } from 'vitest';
import {
  currentLoop,
  openCollectorEdge,
  pulsesPerDistance,
  rcFilter,
  rcStep,
  reluctorAmplitude,
  toothFrequency,
  twoWireSensor,
} from 'loomwright';
import { neverRunsOut } from '../support/extremes.js';

describe('edges', () => {
  it('no function runs out of numbers', () => {
    const wheel = { teeth: 36, missingTeeth: 1, turnRatio: 1, toothFraction: 0.4, inputMostHz: 5000, inputLeastHz: 5 };
    neverRunsOut(toothFrequency, { ...wheel, speedRpm: 3000, circumferenceM: 2 });
    neverRunsOut(toothFrequency, { ...wheel, speedKmh: 100, circumferenceM: 2 });
    neverRunsOut(toothFrequency, { ...wheel, frequencyHz: 500 });
    neverRunsOut(pulsesPerDistance, { circumferenceM: 2, turnPulses: 48, turnRatio: 1, setPulsesPerKm: 5000 });
    neverRunsOut(rcFilter, {
      resistanceOhm: 1000,
      sourceOhm: 10,
      capacitanceF: 1e-7,
      loadOhm: 1e5,
      frequencyHz: 100,
      inV: 5,
    });
    neverRunsOut(rcStep, { startV: 0, endV: 5, resistanceOhm: 1000, capacitanceF: 1e-7, timeS: 1e-4, thresholdV: 3 });
    neverRunsOut(openCollectorEdge, {
      supplyV: 5,
      pullUpOhm: 4700,
      capacitanceF: 1e-8,
      inputOhm: 1e5,
      saturationV: 0.4,
      sinkMostA: 0.02,
      highV: 3.5,
      lowV: 1,
      frequencyHz: 2000,
      offFraction: 0.5,
      mostRiseFraction: 0.3,
    });
    neverRunsOut(reluctorAmplitude, {
      measuredV: 2,
      measuredRpm: 200,
      measuredGapMm: 0.8,
      gapMm: 1,
      teeth: 36,
      wheelDiameterMm: 160,
      lowestRpm: 150,
      highestRpm: 7000,
      coilOhm: 900,
      coilH: 0.4,
      inputOhm: 10000,
      inputLeastV: 0.4,
      inputMostV: 120,
    });
    neverRunsOut(twoWireSensor, {
      lowestSupplyV: 9,
      loadOhm: 100,
      loadToleranceFraction: 0.01,
      lowLeastA: 0.0059,
      lowMostA: 0.0084,
      highLeastA: 0.0118,
      highMostA: 0.0168,
      sensorLeastV: 4.5,
      wireOhm: 1,
      guardV: 0.1,
    });
    neverRunsOut(currentLoop, {
      valueFraction: 0.5,
      lowA: 0.004,
      highA: 0.02,
      loadOhm: 250,
      lowestSupplyV: 18,
      wireOhm: 5,
      sensorLeastV: 8,
    });
  });
});
