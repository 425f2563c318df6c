import { type SharedDevice, sharedSensor, type SharedSensorInput, type SharedSensorKind } from 'loomwright';
import { defineCard, type Field, type Uses, type Values } from '../type.js';
import { cellList } from './cell-list.js';

/** The fields of one device. */
function deviceFields(
  who: 'first' | 'second',
  title: string,
  example: Omit<SharedDevice, 'cells'>,
  table: string,
): Field[] {
  const { name, seriesOhm, pullUpOhm, pullDownOhm, railV, clampDropV } = example;
  const n = who === 'first' ? 1 : 2;
  const own = who === 'first' ? 'First' : 'Second';
  return [
    { kind: 'text', name: `${who}Name`, label: title, example: name },
    {
      kind: 'number',
      name: `${who}SeriesOhm`,
      label: `${own}: in series with the pin`,
      symbol: `R_{s${n}}`,
      min: 0,
      example: seriesOhm,
    },
    {
      kind: 'number',
      name: `${who}PullUpOhm`,
      label: `${own}: pull-up`,
      symbol: `R_{u${n}}`,
      above: 0,
      optional: true,
      example: pullUpOhm,
      unit: 'kΩ',
    },
    {
      kind: 'number',
      name: `${who}PullDownOhm`,
      label: `${own}: pull-down`,
      symbol: `R_{d${n}}`,
      above: 0,
      optional: true,
      example: pullDownOhm,
      unit: 'kΩ',
    },
    { kind: 'number', name: `${who}RailV`, label: `${own}: rail`, symbol: `V_{r${n}}`, above: 0, example: railV },
    {
      kind: 'number',
      name: `${who}ClampDropV`,
      label: `${own}: diode drops`,
      symbol: `V_{d${n}}`,
      above: 0,
      optional: true,
      example: clampDropV,
    },
    {
      kind: 'text',
      name: `${who}Cells`,
      label: `${own}: volts at the pin and what it shows`,
      example: table,
      help: 'May be left empty.',
    },
  ];
}

const orNull = (value: unknown): number | null => (value as number | undefined) ?? null;

function sensorOf(uses: Uses): SharedSensorKind {
  const supplyV = uses['supplyV'] as number;
  const resistanceOhm = uses['sensorOhm'] as number;
  switch (uses['sensor']) {
    case 'resistor':
      return { kind: 'resistor', resistanceOhm };
    case 'active':
      return {
        kind: 'active',
        outV: supplyV,
        sourceOhm: resistanceOhm,
        deadClampDropV: orNull(uses['deadClampDropV']),
      };
    case 'open-collector-on':
      return { kind: 'open-collector-on', onV: 0, onOhm: resistanceOhm };
    case 'open-collector-off':
      return { kind: 'open-collector-off', leakA: uses['leakA'] as number };
    case 'current':
      return { kind: 'current', currentA: uses['sensorA'] as number, mostV: supplyV };
    default:
      return {
        kind: 'potentiometer',
        supplyV,
        resistanceOhm,
        wiperFraction: uses['wiperFraction'] as number,
        deadSupplyOhm: orNull(uses['deadSupplyOhm']),
      };
  }
}

function deviceOf(who: 'first' | 'second', uses: Uses): SharedDevice {
  const number = (name: string): number | null => orNull(uses[`${who}${name}`]);
  const text = String(uses[`${who}Cells`] ?? '').trim();
  const device: SharedDevice = {
    name: uses[`${who}Name`] as string,
    seriesOhm: number('SeriesOhm') as number,
    pullUpOhm: number('PullUpOhm'),
    pullDownOhm: number('PullDownOhm'),
    railV: number('RailV') as number,
    clampDropV: number('ClampDropV'),
  };
  return text === '' ? device : { ...device, cells: cellList('sharedSensor', `${who}.cells`, text) };
}

const isPotentiometer = (values: Values): boolean => values['sensor'] === 'potentiometer';

export const sharedSensorCard = defineCard({
  name: 'sharedSensor',
  area: 'calibration',
  question: 'What do two devices show that share one sensor?',
  page: 'one-sensor-two-devices',
  fields: [
    {
      kind: 'choice',
      name: 'sensor',
      label: 'Sensor',
      choices: [
        { value: 'potentiometer', label: 'potentiometer' },
        { value: 'resistor', label: 'resistance to ground: thermistor, level' },
        { value: 'active', label: 'volts through its own resistance' },
        { value: 'open-collector-on', label: 'transistor to ground, on' },
        { value: 'open-collector-off', label: 'transistor to ground, off' },
        { value: 'current', label: 'two wires, a current' },
      ],
      example: 'potentiometer',
    },
    {
      kind: 'choice',
      name: 'fedBy',
      label: 'The sensor is fed by',
      choices: [
        { value: 'first', label: 'the first device' },
        { value: 'second', label: 'the second device' },
        { value: 'own', label: 'a supply that is always there, or it needs none' },
      ],
      example: 'first',
      help: 'Without power, that device takes the sensor with it.',
    },
    {
      kind: 'number',
      name: 'supplyV',
      above: 0,
      example: 5,
      label: 'Its volts',
      help: 'Supply of a potentiometer, volts that an output drives, most volts that a two-wire sensor can drive into.',
    },
    { kind: 'number', name: 'sensorOhm', above: 0, example: 2000, unit: 'kΩ' },
    { kind: 'number', name: 'wiperFraction', min: 0, max: 1, example: 0.8, unit: '%' },
    {
      kind: 'number',
      name: 'sensorA',
      label: 'Its current',
      example: 0.004,
      unit: 'mA',
      help: 'Of a two-wire sensor.',
    },
    { kind: 'number', name: 'leakA', example: 1e-6, unit: 'µA', help: 'Through a transistor that is off.' },
    {
      kind: 'number',
      name: 'deadSupplyOhm',
      min: 0,
      optional: true,
      example: 0,
      help: 'Of a potentiometer. 0 for a rail that sits at ground; empty for one that is open then.',
    },
    {
      kind: 'number',
      name: 'deadClampDropV',
      optional: true,
      example: null,
      help: 'Of an output that drives volts. Empty for one that is open without its supply.',
    },
    ...deviceFields(
      'first',
      'First device',
      { name: 'owner', seriesOhm: 0, pullUpOhm: null, pullDownOhm: 100_000, railV: 5, clampDropV: null },
      '0.5 0; 4.5 100',
    ),
    ...deviceFields(
      'second',
      'Second device',
      { name: 'listener', seriesOhm: 2200, pullUpOhm: null, pullDownOhm: 10_000, railV: 5, clampDropV: 0.6 },
      '0.41 0; 3.69 100',
    ),
    { kind: 'number', name: 'allowedErrorV', above: 0, example: 0.02, unit: 'mV' },
  ],
  results: [
    { name: 'firstAloneV', round: 'nearest', digits: 5, primary: true },
    { name: 'bothNodeV', round: 'nearest', digits: 5 },
    { name: 'firstNodeV', round: 'nearest', digits: 5 },
    { name: 'secondNodeV', round: 'nearest', digits: 5 },
    { name: 'deadSecondA', round: 'up', digits: 4 },
    { name: 'deadFirstA', round: 'up', digits: 4 },
  ],
  steps: [
    {
      result: 'wiperV',
      text: 'Wiper with nothing on it',
      formula: 'supplyV * wiperFraction',
      source: 'circuit-theory',
      when: isPotentiometer,
    },
    {
      result: 'wiperOhm',
      text: 'What it stands behind',
      formula: 'sensorOhm * wiperFraction * (1 - wiperFraction)',
      source: 'circuit-theory',
      when: isPotentiometer,
    },
    {
      result: 'bothNodeV',
      text: 'The wire with both powered',
      how: 'sensor and devices each as volts behind a resistance; a diode conducts where its pin would stand above it',
      source: 'circuit-theory',
    },
    {
      result: 'firstNodeV',
      text: 'The wire with the second without power',
      how: 'the same, its rail at ground',
      source: 'circuit-theory',
    },
    {
      result: 'secondNodeV',
      text: 'The wire with the first without power',
      how: 'the same, and the sensor without its supply where the first feeds it',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory'],
  cautions: ['local-code', 'prove-slowly'],
  run: sharedSensor,
  input: (uses): SharedSensorInput => ({
    sensor: sensorOf(uses),
    fedBy: uses['fedBy'] as SharedSensorInput['fedBy'],
    first: deviceOf('first', uses),
    second: deviceOf('second', uses),
    allowedErrorV: uses['allowedErrorV'] as number,
  }),
  scope: (values, { states }) => {
    const [both, first, second] = states;
    const { supplyV, sensorOhm, wiperFraction } = values as Readonly<Record<string, number>>;
    return {
      bothNodeV: both?.nodeV ?? null,
      firstNodeV: first?.nodeV ?? null,
      secondNodeV: second?.nodeV ?? null,
      deadSecondA: first?.second.intoA ?? null,
      deadFirstA: second?.first.intoA ?? null,
      wiperV: (supplyV as number) * (wiperFraction as number),
      wiperOhm: (sensorOhm as number) * (wiperFraction as number) * (1 - (wiperFraction as number)),
    };
  },
});
