import {
  type NotPossible,
  type SwitchingBand,
  switchingBand,
  type SwitchingBandInput,
  type SwitchingBandResult,
  type SwitchProcess,
  type SwitchSensor,
  type SwitchStage,
  thermistorInput,
} from 'loomwright';
import { curveFields, curveOf } from '../temperature/curve-fields.js';
import { defineCard, type Field, type Uses, type Values } from '../type.js';
import { cellList } from './cell-list.js';

/** The fields of one speed. The fast one may be left out. */
function stageFields(fast: boolean, on: number, groundV: number, withValue: number): Field[] {
  const own = (name: string): string => (fast ? `fast${name.replace(/^./, (c) => c.toUpperCase())}` : name);
  const who = (words: string): string => (fast ? `Fast: ${words}` : words.replace(/^./, (c) => c.toUpperCase()));
  const index = fast ? '2' : '1';
  const some = fast ? ({ optional: true } as const) : {};
  return [
    {
      kind: 'number',
      name: own('onValue'),
      label: who('goes on at'),
      symbol: `x_{on${index}}`,
      example: on,
      ...some,
      ...(fast ? { help: 'Leave it empty where there is one speed.' } : {}),
    },
    {
      kind: 'number',
      name: own('offValue'),
      label: who('goes off at'),
      symbol: `x_{\\mathrm{off}${index}}`,
      example: null,
      optional: true,
      help: 'Leave it empty to have it worked out.',
    },
    {
      kind: 'number',
      name: own('groundShiftV'),
      label: who('lifts the sensor’s ground by'),
      symbol: `V_{g${index}}`,
      min: -2.5,
      example: groundV,
      unit: 'mV',
      ...some,
    },
    {
      kind: 'number',
      name: own('supplyShiftV'),
      label: who('moves its supply by'),
      symbol: `V_{s${index}}`,
      min: -2.5,
      example: 0,
      unit: 'mV',
      ...some,
    },
    {
      kind: 'number',
      name: own('directShiftValue'),
      label: who('moves the sensor directly by'),
      symbol: `d_${index}`,
      example: 0,
      ...some,
    },
    {
      kind: 'number',
      name: own('withValue'),
      label: who('with it running it would settle at'),
      symbol: `x_${index}`,
      example: withValue,
      optional: true,
    },
  ];
}

function sensorOf(uses: Uses): SwitchSensor {
  if (uses['sensor'] === 'thermistor') {
    const side = uses['side'] as 'sensor-to-ground' | 'sensor-to-supply';
    return { kind: 'thermistor', by: thermistorInput, curve: curveOf(uses), side, pullOhm: uses['pullOhm'] as number };
  }
  const output = uses['sensor'] as 'ratiometric' | 'absolute';
  return { kind: 'points', cells: cellList('switchingBand', 'cells', uses['cells'] as string), output };
}

function processOf(uses: Uses, withoutValue: unknown, withValue: unknown): SwitchProcess | null {
  const { timeConstantS } = uses;
  const given = [withoutValue, withValue, timeConstantS];
  if (given.some((value) => typeof value !== 'number')) return null;
  return {
    kind: 'first-order',
    withoutValue: withoutValue as number,
    withValue: withValue as number,
    timeConstantS: timeConstantS as number,
  };
}

function stageOf(uses: Uses, fast: boolean): SwitchStage {
  const of = (name: string): unknown => uses[fast ? `fast${name.replace(/^./, (c) => c.toUpperCase())}` : name];
  const offValue = of('offValue') as number | undefined;
  return {
    onValue: of('onValue') as number,
    ...(offValue === undefined ? {} : { offValue }),
    groundShiftV: (of('groundShiftV') as number | undefined) ?? 0,
    supplyShiftV: (of('supplyShiftV') as number | undefined) ?? 0,
    directShiftValue: (of('directShiftValue') as number | undefined) ?? 0,
    process: processOf(uses, fast ? uses['withValue'] : uses['withoutValue'], of('withValue')),
  };
}

const LIMITS = ['highestValue', 'lowestValue', 'leastOnTimeS', 'leastOffTimeS', 'mostCyclesPerH'] as const;

function inputOf(uses: Uses): SwitchingBandInput {
  const number = (name: string): number => uses[name] as number;
  const limits = LIMITS.flatMap((name) => (uses[name] === undefined ? [] : [[name, number(name)] as const]));
  return {
    sensor: sensorOf(uses),
    supplyV: number('supplyV'),
    referenceV: (uses['referenceV'] as number | undefined) ?? null,
    converterBits: Number(uses['converterBits']),
    acts: uses['acts'] as 'lowers' | 'raises',
    noiseV: number('noiseV'),
    delayS: number('delayS'),
    marginFraction: number('marginFraction'),
    first: stageOf(uses, false),
    ...(uses['fastOnValue'] === undefined ? {} : { second: stageOf(uses, true) }),
    ...Object.fromEntries(limits),
  };
}

const bandOf = (output: SwitchingBandResult): SwitchingBand | null =>
  output.possible ? output : (output satisfies NotPossible<SwitchingBand>).nearest;

/** Only a share of the supply, read against that supply, jumps by the formula shown. */
const isShare = (values: Values): boolean =>
  typeof values['referenceV'] !== 'number' &&
  values['sensor'] !== 'absolute' &&
  (values['sensor'] === 'ratiometric' || values['side'] === 'sensor-to-ground') &&
  Number(values['supplyShiftV']) === 0 &&
  Number(values['directShiftValue']) === 0;

export const switchingBandCard = defineCard({
  name: 'switchingBand',
  area: 'calibration',
  question: 'When should the fan switch?',
  page: 'fans-and-warnings',
  fields: [
    {
      kind: 'choice',
      name: 'acts',
      label: 'The load',
      choices: [
        { value: 'lowers', label: 'brings down what is measured: a fan' },
        { value: 'raises', label: 'brings it up: a heater, a pump' },
      ],
      example: 'lowers',
    },
    {
      kind: 'choice',
      name: 'sensor',
      label: 'Sensor',
      choices: [
        { value: 'thermistor', label: 'thermistor with a pull resistor' },
        { value: 'ratiometric', label: 'points, a share of its supply' },
        { value: 'absolute', label: 'points, volts of its own' },
      ],
      example: 'thermistor',
    },
    ...curveFields,
    {
      kind: 'choice',
      name: 'side',
      label: 'The thermistor goes to',
      choices: [
        { value: 'sensor-to-ground', label: 'ground, with a pull-up' },
        { value: 'sensor-to-supply', label: 'the supply, with a pull-down' },
      ],
      example: 'sensor-to-ground',
    },
    { kind: 'number', name: 'pullOhm', label: 'Pull resistor', above: 0, example: 1000, unit: 'kΩ' },
    {
      kind: 'text',
      name: 'cells',
      label: 'Or points: volts and what is measured',
      example: '0.5 0; 4.5 150',
      help: 'Used where the sensor is given by points; parted by semicolons.',
    },
    { kind: 'number', name: 'supplyV', label: 'Supply of the sensor', above: 0, example: 5 },
    {
      kind: 'number',
      name: 'referenceV',
      above: 0,
      optional: true,
      example: null,
      label: 'Reference of the converter',
      help: 'Empty where that is the sensor’s own supply.',
    },
    {
      kind: 'choice',
      name: 'converterBits',
      label: 'Converter',
      choices: ['8', '10', '12', '14', '16'].map((value) => ({ value, label: `${value} bits` })),
      example: '10',
    },
    { kind: 'number', name: 'noiseV', min: 0, example: 0.004, unit: 'mV' },
    { kind: 'number', name: 'delayS', label: 'Filter and debounce take', min: 0, example: 1 },
    {
      kind: 'number',
      name: 'marginFraction',
      label: 'Room over the least band',
      symbol: 'm',
      min: 0,
      example: 1,
      unit: '%',
    },
    {
      kind: 'number',
      name: 'withoutValue',
      label: 'With nothing running it would settle at',
      symbol: 'x_0',
      example: 120,
      optional: true,
    },
    { kind: 'number', name: 'timeConstantS', above: 0, example: 240, optional: true },
    ...stageFields(false, 90, 0.03, 75),
    ...stageFields(true, 100, 0.055, 60),
    { kind: 'number', name: 'highestValue', example: null, optional: true },
    { kind: 'number', name: 'lowestValue', example: null, optional: true },
    { kind: 'number', name: 'leastOnTimeS', above: 0, example: 10, optional: true },
    { kind: 'number', name: 'leastOffTimeS', above: 0, example: null, optional: true },
    { kind: 'number', name: 'mostCyclesPerH', above: 0, example: null, optional: true },
  ],
  results: [
    { name: 'heldOffValue', round: 'nearest', digits: 4, primary: true },
    { name: 'heldOnValue', round: 'nearest', digits: 4 },
    { name: 'leastBandValue', round: 'up', digits: 3 },
    { name: 'leastBandV', round: 'up', digits: 4, unit: 'mV' },
    { name: 'onV', round: 'nearest', digits: 4 },
    { name: 'offV', round: 'nearest', digits: 4 },
    { name: 'onCount', round: 'nearest', digits: 6, trim: true },
    { name: 'offCount', round: 'nearest', digits: 6, trim: true },
    { name: 'cyclesPerH', round: 'up', digits: 3 },
    { name: 'onTimeS', round: 'down', digits: 3 },
    { name: 'offTimeS', round: 'down', digits: 3 },
    { name: 'fastHeldOnValue', round: 'nearest', digits: 4 },
    { name: 'fastHeldOffValue', round: 'nearest', digits: 4 },
    { name: 'gapValue', round: 'down', digits: 3 },
  ],
  steps: [
    {
      result: 'jumpV',
      text: 'The reading jumps as it goes on',
      formula: 'groundShiftV * (1 - onV / supplyV)',
      source: 'circuit-theory',
      when: isShare,
    },
    {
      result: 'stepV',
      text: 'A count of the converter',
      formula: 'supplyV / stepCount',
      source: 'circuit-theory',
      when: (values) => typeof values['referenceV'] !== 'number',
    },
    {
      result: 'talkV',
      text: 'What the load says to its own sensor',
      how: 'the jump at the moment that asks for more, just after on or just after off; nothing where it helps',
      source: 'circuit-theory',
    },
    {
      result: 'processV',
      text: 'What it moves by while the controller filters',
      how: 'the way of the temperature in the delay, through the sensor’s curve',
      source: 'circuit-theory',
    },
    {
      result: 'leastBandV',
      text: 'The least band',
      formula: 'talkV + processV + 2 * noiseV + stepV',
      source: 'circuit-theory',
    },
    {
      result: 'leastBandValue',
      text: 'The same in what is measured',
      how: 'along the sensor’s curve, from where it goes on',
      source: 'circuit-theory',
    },
    {
      result: 'onCount',
      text: 'On, in counts',
      how: 'the whole count at which it goes on a little earlier',
      source: 'circuit-theory',
    },
    {
      result: 'offCount',
      text: 'Off, in counts',
      how: 'the least band with its room, in whole counts, the next one further',
      source: 'circuit-theory',
    },
    {
      result: 'cyclesPerH',
      text: 'Starts an hour',
      formula: '1 / (onTimeS + offTimeS)',
      source: 'circuit-theory',
      when: (values) =>
        ['withoutValue', 'withValue', 'timeConstantS'].every((name) => typeof values[name] === 'number'),
    },
  ],
  sources: ['circuit-theory'],
  cautions: ['local-code', 'fan-starts', 'scald'],
  run: switchingBand,
  input: inputOf,
  identifiers: { thermistorInput },
  scope: (values, output) => {
    const band = bandOf(output);
    const stepCount = 2 ** Number(values['converterBits']);
    if (band === null) return { stepCount };
    const { first, second } = band;
    const part = (name: string): number => first.parts.find((one) => one.name === name)?.partV ?? 0;
    return {
      stepCount,
      heldOnValue: first.onValue,
      heldOffValue: first.offValue,
      leastBandValue: first.leastBandValue,
      leastBandV: first.leastBandV,
      onV: first.onV,
      offV: first.offV,
      onCount: first.onCount,
      offCount: first.offCount,
      jumpV: first.jumpV,
      stepV: part('converter'),
      talkV: part('talk-back'),
      processV: part('process'),
      cyclesPerH: first.cyclesPerH,
      onTimeS: first.onTimeS,
      offTimeS: first.offTimeS,
      fastHeldOnValue: second?.onValue ?? null,
      fastHeldOffValue: second?.offValue ?? null,
      gapValue: band.gapValue,
    };
  },
});
