import {
  choosePullUp,
  type ChoosePullUpInput,
  type DesignDividerInput,
  type DividerDesign,
  type LedDesign,
  type LedResistorInput,
  type PullUpChoice,
} from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

type Points = [number, number][];

/** Volts at the pin over the signal: as marked, and between the corners of the tolerance. */
export function pinBySignal(input: DesignDividerInput, design: DividerDesign, label: string): ChartSpec {
  const { surgeV, fullScaleV, highestInV } = input;
  const at = Array.from({ length: 13 }, (_, i) => (surgeV * i) / 12);
  return {
    title: 'Volts at the pin by the signal, nothing clamped',
    x: { label: 'Signal', unit: 'V' },
    y: { label: 'Pin', unit: 'V' },
    series: [
      { name: '', points: at.map((v): [number, number] => [v, v * design.outFraction]), colour: 'text', as: 'line' },
    ],
    bands: [
      {
        name: '',
        points: at.map((v) => [v, v * design.lowOutFraction, v * design.highOutFraction]),
        colour: 'verdigris',
      },
    ],
    limits: [
      { axis: 'y', value: fullScaleV, name: 'full scale', fails: 'above' },
      { axis: 'x', value: highestInV, name: 'to be survived, not read', fails: 'above' },
    ],
    chosen: { x: highestInV, y: design.outAtHighestV, label },
  };
}

/** Counts between the ends of the sensor, over the pull-up, with the values that its limits allow. */
export function spanByPullUp(input: ChoosePullUpInput, choice: PullUpChoice): ChartSpec {
  const { lowestSensorOhm: low, highestSensorOhm: high, fullScaleCount, supplyV, sensorMostA } = input;
  const span = (ohm: number): number => (high / (high + ohm) - low / (low + ohm)) * fullScaleCount;
  const from = choice.widestOhm > 0 ? choice.widestOhm / 10 : high / 30;
  const points = Array.from({ length: 33 }, (_, i): [number, number] => {
    const ohm = from * 1000 ** (i / 32);
    return [ohm, span(ohm)];
  });
  const leastOhm = sensorMostA === null ? null : supplyV / sensorMostA - low;
  return {
    title: 'Counts between the ends of the sensor, by the pull-up',
    x: { label: 'Pull-up', unit: 'Ω', log: true },
    y: { label: 'Span', unit: 'counts' },
    series: [{ name: '', points, colour: 'text', as: 'line' }],
    limits: [
      ...(leastOhm === null || !(leastOhm > from)
        ? []
        : [{ axis: 'x', value: leastOhm, name: 'too much current', fails: 'below' } as const]),
      { axis: 'y', value: input.wantedSpanCount, name: 'wanted', fails: 'below' },
    ],
    chosen: { x: choice.pullUpOhm, y: choice.spanCount, label: `${choice.pullUpOhm} Ω` },
  };
}

/** Volts at the pin over the travel of a sender that is straight in ohms, and what a straight line would show. */
export function pinByTravel(choice: PullUpChoice): ChartSpec {
  const volts = choice.curve.map(({ travelFraction, pinV }): [number, number] => [travelFraction * 100, pinV]);
  const straight: Points = [
    [0, choice.highestPinV],
    [100, choice.lowestPinV],
  ];
  return {
    title: 'Volts at the pin over the travel of the sensor',
    x: { label: 'Travel', unit: '%' },
    y: { label: 'Pin', unit: 'V' },
    series: [
      { name: 'the sensor', points: volts, colour: 'copper', labelAt: 4 },
      { name: 'a straight line through its ends', points: straight, colour: 'soft', as: 'line', labelAt: 0 },
    ],
  };
}

/** How many counts each pull-up of a few leaves: a table of the page. */
export function pullUpTable(input: ChoosePullUpInput, ohms: readonly number[]): readonly PullUpChoice[] {
  return ohms.flatMap((ohm) => {
    const only = { ...input.series, values: [ohm / 10 ** Math.floor(Math.log10(ohm) - 1)] };
    const result = choosePullUp({
      ...input,
      series: only,
      sensorMostA: input.supplyV / (ohm + input.lowestSensorOhm),
      sensorMostW: null,
      pullUpMostW: 1e6,
      toleranceFraction: 0,
      wantedSpanCount: 0,
    });
    return result.possible ? [result] : [];
  });
}

/** Current of an LED over the supply, between the corners of its resistor. */
export function ledBySupply(input: LedResistorInput, design: LedDesign, label: string): ChartSpec {
  const { ledV, seriesCount, lowestSupplyV, highestSupplyV, mostA, leastA, toleranceFraction: t } = input;
  const from = seriesCount * ledV;
  const at = Array.from({ length: 13 }, (_, i) => from + ((highestSupplyV * 1.1 - from) * i) / 12);
  const milli = (v: number, ohm: number): number => ((v - from) / ohm) * 1000;
  return {
    title: 'Current of the LED by the supply',
    x: { label: 'Supply', unit: 'V' },
    y: { label: 'LED', unit: 'mA' },
    series: [
      {
        name: '',
        points: at.map((v): [number, number] => [v, milli(v, design.resistorOhm)]),
        colour: 'text',
        as: 'line',
      },
    ],
    bands: [
      {
        name: '',
        points: at.map((v) => [v, milli(v, design.resistorOhm * (1 + t)), milli(v, design.resistorOhm * (1 - t))]),
        colour: 'verdigris',
      },
    ],
    limits: [
      { axis: 'y', value: mostA * 1000, name: 'LED bears', fails: 'above' },
      ...(leastA > 0 ? [{ axis: 'y', value: leastA * 1000, name: 'bright enough', fails: 'below' } as const] : []),
      { axis: 'x', value: lowestSupplyV, name: 'lowest', fails: 'below' },
    ],
    chosen: { x: highestSupplyV, y: design.currentA * 1000, label },
  };
}
