import {
  sensorSupplyBudget,
  type SensorSupplyBudgetInput,
  type SensorSupplyBudgetResult,
  type SupplyPinSum,
} from 'loomwright';
import { defineCard } from '../type.js';
import { limiterText, supplyDevicesText, supplyPinsText } from './supply-lists.js';

/** The answer, with its tightest pin and its split in words. */
export interface SensorSupplyShown extends SensorSupplyBudgetResult {
  readonly tightestPin: string;
  readonly splitWords: string;
}

const shareOf = ({ sumA, limitA }: SupplyPinSum): number => sumA / limitA;

/** The pin that uses the largest share of its limit. */
function tightestOf({ pins }: SensorSupplyBudgetResult): SupplyPinSum {
  return pins.reduce((a, b) => (shareOf(b) > shareOf(a) ? b : a));
}

function wordsOf({ fewestMoves: split }: SensorSupplyBudgetResult): string {
  if (!split.possible) return `not possible: ${split.because}`;
  if (split.moved.length === 0) return 'nothing has to move';
  return split.moved.map((name) => `${name} to ${split.pinOf[name] ?? ''}`).join(', ');
}

export const sensorSupplyBudgetCard = defineCard({
  name: 'sensorSupplyBudget',
  area: 'calibration',
  question: 'What do the five-volt pins carry, and who dies with whom?',
  page: 'five-volt-supply',
  fields: [
    {
      kind: 'text',
      name: 'supplyPins',
      example:
        'VREF1: 60 mA, holds 120 mA, blocks; VREF2: 60 mA, folds 120 mA to 40 mA, back 0.6 V; AUX: 40 mA, trips 80 mA, blocks',
      help: 'Name: what it may carry, what it does beyond (holds, folds, trips; rail where it has no limiter), and whether it blocks volts from outside or lets them back behind a drop.',
    },
    {
      kind: 'text',
      name: 'supplyDevices',
      example: [
        'pedal 1: VREF1, track 2 kΩ, 20 %, one of pedal, gives 18 %',
        'pedal 2: VREF1, track 2 kΩ, 20 %, one of pedal, gives 36 %',
        'throttle 1: VREF2, 8 mA from 4.5 V, 10 %, one of throttle, gives 60 %, stands 20 V',
        'throttle 2: VREF2, 8 mA from 4.5 V, 10 %, one of throttle, gives 40 %, stands 20 V',
        'boost: VREF1, 12 mA from 4.5 V, 10 %, gives 45 %, stands 6.5 V, cold 1.1 hot 0.95',
        'oil pressure: VREF1, 10 mA from 4.5 V, 10 %, gives 52 %, stands 16 V, cold 1.1 hot 0.95',
        'crank: VREF1, 15 mA from 4 V, 10 %, stands 24 V, fixed',
        'coolant: AUX, pull-up 2.49 kΩ over 60 Ω, 1 %, gives 25 %',
        'panel light: VREF1, LED 150 Ω at 2 V, 5 %',
      ].join('; '),
      help: 'Name: pin, draw (12 mA from 4.5 V, track 2 kΩ, pull-up 1 kΩ over 50 Ω, LED 150 Ω at 2 V), tolerance; then, where known: gives 45 % or 2 V, stands 6.5 V, cold 1.1 hot 0.95, one of pedal, fixed.',
    },
    { kind: 'number', name: 'supplyV', above: 0, example: 5, label: 'Volts of the pins', symbol: 'S' },
    {
      kind: 'number',
      name: 'supplyToleranceFraction',
      min: 0,
      example: 0.02,
      unit: '%',
      label: 'They may be off by',
      symbol: '\\delta',
    },
    { kind: 'number', name: 'regulatorLimitA', above: 0, example: 0.25, unit: 'mA' },
    {
      kind: 'text',
      name: 'regulatorLimiter',
      example: 'holds 300 mA',
      help: 'Or folds 300 mA to 80 mA, or trips 300 mA.',
    },
    { kind: 'number', name: 'ownA', min: 0, example: 0.08, unit: 'mA' },
    { kind: 'number', name: 'railWorksFromV', min: 0, example: 4.6 },
    { kind: 'number', name: 'railStandsV', above: 0, optional: true, example: 6 },
    {
      kind: 'choice',
      name: 'converterReference',
      choices: [
        { value: 'rail', label: 'the rail behind the pins' },
        { value: 'own', label: 'a reference of its own' },
      ],
      example: 'rail',
    },
    { kind: 'number', name: 'wantedHeadroomFraction', min: 0, example: 0.1, unit: '%' },
    {
      kind: 'number',
      name: 'shortOhm',
      min: 0.001,
      example: 0.5,
      label: 'A shorted wire has',
      symbol: 'R_\\mathrm{short}',
    },
    { kind: 'number', name: 'batteryV', above: 0, example: 14.4, label: 'The battery has' },
    { kind: 'number', name: 'allowedErrorV', above: 0, example: 0.05, unit: 'mV' },
  ],
  results: [
    { name: 'tightestPin', round: 'nearest', primary: true },
    { name: 'tightestSumA', round: 'up', digits: 3, unit: 'mA' },
    { name: 'tightestHeadroomA', round: 'down', digits: 3, unit: 'mA' },
    { name: 'totalA', label: 'All pins and the controller', symbol: 'I', round: 'up', digits: 3, unit: 'mA' },
    { name: 'splitWords', round: 'nearest' },
  ],
  steps: [
    {
      result: 'tightestSumA',
      text: 'What the tightest pin carries at worst',
      how: 'each device at the corner of its tolerance and on its worse day, at the highest volts of the pin',
      source: 'circuit-theory',
    },
    {
      result: 'tightestHeadroomA',
      text: 'What is left of its limit',
      formula: 'tightestLimitA - tightestSumA',
      source: 'circuit-theory',
    },
    {
      result: 'shortedV',
      text: 'That pin, shorted to ground',
      how: 'where the wire and the devices take no more than the limiter gives, coming from above',
      source: 'circuit-theory',
    },
    {
      result: 'movedCount',
      text: 'Wires that have to be moved',
      how: 'every split tried, but for branches that cannot be better than the best so far',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'common-practice', 'given-by-caller'],
  cautions: ['prove-slowly', 'battery', 'local-code'],
  run: (input: SensorSupplyBudgetInput): SensorSupplyShown => {
    const answer = sensorSupplyBudget(input);
    return { ...answer, tightestPin: tightestOf(answer).name, splitWords: wordsOf(answer) };
  },
  input: (uses): SensorSupplyBudgetInput => {
    const fn = 'sensorSupplyBudget';
    const text = (name: string): string => uses[name] as string;
    const number = (name: string): number => uses[name] as number;
    return {
      supplyV: number('supplyV'),
      supplyToleranceFraction: number('supplyToleranceFraction'),
      reference: text('converterReference') as 'rail' | 'own',
      regulator: {
        limitA: number('regulatorLimitA'),
        limiter: limiterText(fn, 'regulatorLimiter', text('regulatorLimiter')),
        ownA: number('ownA'),
        worksFromV: number('railWorksFromV'),
        standsV: (uses['railStandsV'] as number | undefined) ?? null,
      },
      pins: supplyPinsText(fn, 'supplyPins', text('supplyPins')),
      devices: supplyDevicesText(fn, 'supplyDevices', text('supplyDevices')),
      wantedHeadroomFraction: number('wantedHeadroomFraction'),
      shortOhm: number('shortOhm'),
      batteryV: number('batteryV'),
      allowedErrorV: number('allowedErrorV'),
    };
  },
  scope: (_, output) => {
    const { name, sumA, limitA, headroomA } = tightestOf(output);
    const { fewestMoves, faults } = output;
    return {
      tightestSumA: sumA,
      tightestLimitA: limitA,
      tightestHeadroomA: headroomA,
      shortedV: faults.find(({ fault, pin }) => fault === 'short-to-ground' && pin === name)?.pinV ?? null,
      movedCount: fewestMoves.possible ? fewestMoves.moved.length : null,
    };
  },
});
