import {
  type CalibrationCell,
  type CalibrationCurve,
  type CalibrationTableInput,
  InputError,
  linearSensor,
  thermistorInput,
  thermistorResistance,
} from 'loomwright';
import { curveFields, curveOf } from '../temperature/curve-fields.js';
import type { Field, Uses } from '../type.js';
import { cellList } from './cell-list.js';

// Where the table builder's curve comes from: points, or one of the library's own functions of a sensor.

const FN = 'calibrationTable';

/** The choice, and the fields of all functions. What another choice needs stands empty or unread. */
export const curveKind: Field = {
  kind: 'choice',
  name: 'from',
  label: 'The curve is',
  choices: [
    { value: 'points', label: 'measured points' },
    { value: 'thermistor-volts', label: 'a thermistor with a pull resistor: volts to °C' },
    { value: 'thermistor-ohms', label: 'a thermistor: ohms to °C' },
    { value: 'straight', label: 'a straight sensor: volts at two values' },
  ],
  example: 'points',
};

export const curveOfSensorFields: readonly Field[] = [
  ...curveFields,
  {
    kind: 'number',
    name: 'lowTempC',
    label: 'Thermistor: from',
    example: -20,
    optional: true,
    help: 'The range that the table is to cover.',
  },
  { kind: 'number', name: 'highTempC', label: 'Thermistor: to', example: 120, optional: true },
  {
    kind: 'choice',
    name: 'side',
    label: 'It goes to',
    choices: [
      { value: 'sensor-to-ground', label: 'ground, with a pull-up' },
      { value: 'sensor-to-supply', label: 'the supply, with a pull-down' },
    ],
    example: 'sensor-to-ground',
  },
  { kind: 'number', name: 'pullOhm', label: 'Pull resistor', example: 2490, optional: true, unit: 'kΩ' },
  { kind: 'number', name: 'supplyV', label: 'Supply of the sensor', example: 5, optional: true },
  { kind: 'number', name: 'lowV', label: 'Straight sensor: volts at its low value', example: 0.5, optional: true },
  { kind: 'number', name: 'lowValue', label: 'its low value', example: 0, optional: true },
  { kind: 'number', name: 'highV', label: 'volts at its high value', example: 4.5, optional: true },
  { kind: 'number', name: 'highValue', label: 'its high value', example: 10, optional: true },
];

/** Points taken of a function. Of ohms they stand evenly by the temperature: by the ohm the hot end would be coarse. */
const TAKEN = 281;

/** What `calibrationTable` is given: the points written, or a function of the sensor. */
export function curveOrPoints(uses: Uses): Pick<CalibrationTableInput, 'points' | 'curve'> {
  switch (uses['from']) {
    case 'thermistor-volts':
      return { curve: thermistorVolts(uses) };
    case 'thermistor-ohms':
      return { points: thermistorOhms(uses) };
    case 'straight':
      return { curve: straight(uses) };
    default:
      return { points: cellList(FN, 'points', uses['points'] as string) };
  }
}

/** Runs something for a temperature of the range, and names that field where the curve does not reach. */
function atTemp<T>(field: 'lowTempC' | 'highTempC', uses: Uses, run: (tempC: number) => T): T {
  const tempC = uses[field] as number | undefined;
  if (tempC === undefined) throw new InputError(FN, field, 'missing', tempC, 'is required for a thermistor');
  try {
    return run(tempC);
  } catch (error) {
    if (!(error instanceof InputError) || error.field !== 'tempC') throw error;
    const must = error.message.replace(/^\S+ \S+ /, '').replace(/, got .*$/, '');
    throw new InputError(FN, field, error.rule, error.value, must);
  }
}

function needRange(uses: Uses): readonly [number, number] {
  const [low, high] = [uses['lowTempC'] as number, uses['highTempC'] as number];
  if (low >= high)
    throw new InputError(FN, 'highTempC', 'above', high, `must be above ${low} °C, where the range begins`);
  return [low, high];
}

function thermistorVolts(uses: Uses): CalibrationCurve {
  const divider = {
    curve: curveOf(uses),
    side: uses['side'] as 'sensor-to-ground' | 'sensor-to-supply',
    supplyV: uses['supplyV'] as number,
    pullOhm: uses['pullOhm'] as number,
  };
  const voltsAt = (tempC: number): number => thermistorInput({ ...divider, tempC }).inputV;
  const ends = [atTemp('lowTempC', uses, voltsAt), atTemp('highTempC', uses, voltsAt)];
  needRange(uses);
  return {
    // Both ends lie within the curve; a volt's last digit may not.
    valueAt: (inputV) => thermistorInput({ ...divider, inputV, extrapolate: true }).tempC as number,
    lowInValue: Math.min(...ends),
    highInValue: Math.max(...ends),
    sampleCount: TAKEN,
  };
}

function thermistorOhms(uses: Uses): readonly CalibrationCell[] {
  const curve = curveOf(uses);
  const ohmAt = (tempC: number): number => thermistorResistance({ curve, tempC }).resistanceOhm;
  atTemp('lowTempC', uses, ohmAt);
  atTemp('highTempC', uses, ohmAt);
  const [low, high] = needRange(uses);
  return Array.from({ length: TAKEN }, (_, i) => {
    const outValue = high + ((low - high) * i) / (TAKEN - 1);
    return { inValue: ohmAt(outValue), outValue };
  });
}

function straight(uses: Uses): CalibrationCurve {
  const [lowV, highV] = [uses['lowV'] as number, uses['highV'] as number];
  const sensor = {
    ...{ lowV, highV, lowValue: uses['lowValue'] as number, highValue: uses['highValue'] as number },
    ...{ output: 'absolute' as const, ratedSupplyV: 5, supplyV: 5, lowFaultV: lowV, highFaultV: highV },
  };
  // Asked once here, so that what is missing is named by its own field.
  linearSensor({ ...sensor, inputV: lowV });
  return {
    valueAt: (inputV) => linearSensor({ ...sensor, inputV }).value as number,
    lowInValue: lowV,
    highInValue: highV,
    sampleCount: TAKEN,
  };
}
