import {
  groundOffsetError,
  type GroundOffsetErrorInput,
  type GroundOffsetErrorResult,
  type OffsetPair,
  sensorGroundBudget,
  type SensorOffset,
} from 'loomwright';
import { defineCard } from '../type.js';
import { offsetLoadsText, offsetSensorsText, piecesText } from './offset-lists.js';

/** The answer, with its worst pair in words. */
export interface GroundOffsetShown extends GroundOffsetErrorResult {
  readonly worstPair: string;
}

interface Found {
  readonly sensor: SensorOffset;
  readonly pair: OffsetPair;
}

/** The pair that takes the largest share of what its sensor bears; the first one where none shifts any. */
function worstOf({ sensors, worstLoad, worstSensor }: GroundOffsetErrorResult): Found | undefined {
  const all = sensors.flatMap((sensor) => sensor.pairs.map((pair): Found => ({ sensor, pair })));
  return all.find(({ sensor, pair }) => sensor.name === worstSensor && pair.load === worstLoad) ?? all[0];
}

export const groundOffsetErrorCard = defineCard({
  name: 'groundOffsetError',
  area: 'calibration',
  question: 'Which load moves which sensor, by how much, and what mends it?',
  page: 'ground-shifts-a-sensor',
  fields: [
    {
      kind: 'text',
      name: 'groundPieces',
      example: [
        'battery to engine: engine > post, 0.5 mΩ',
        'battery to frame: frame > post, 0.45 mΩ',
        'engine to frame: engine > frame, 0.7 mΩ',
        'nose stud: nose > frame, 1.1 mΩ',
        'bulkhead stud: bulkhead > frame, 0.9 mΩ',
        'dash stud: dash > bulkhead, 1.6 mΩ',
      ].join('; '),
      help: 'Name: its two ends, then its resistance with both joints. Parted by semicolons.',
    },
    { kind: 'text', name: 'reference', label: 'Where all currents end', example: 'post' },
    {
      kind: 'text',
      name: 'offsetLoads',
      example:
        'fan: nose, 22 A; heated screen: dash, 18 A; search lights: dash, 11 A; tail lift: frame, 140 A; alternator: engine, -90 A',
      help: 'Name: where its current comes back, and how much. What feeds the vehicle has a minus.',
    },
    {
      kind: 'text',
      name: 'offsetSensors',
      example: [
        'coolant: engine > bulkhead, body, pull-up, 1.4 V, points 0.3=120 0.8=100 1.4=80 2.3=60 3.9=20 °C, 1 °C',
        'oil pressure: engine > dash, body, ratiometric, 2 V, 2.5 bar/V, ground budget, 0.2 bar',
        'outside air: nose > dash, wire, pull-up, 2.5 V, points 1=45 2.5=20 4.2=-15 °C, 1.5 °C',
        'fuel level: frame > dash, wire, pull-up, 1.2 V, 60 %/V, 3 %',
        'boost: engine > bulkhead, wire, absolute, 1.8 V, 80 kPa/V, 3 kPa',
        'lift height: frame > dash, wire, differential, 2 V, 25 %/V, 1 %',
      ].join('; '),
      help: 'Name: its ground > its controller’s ground, wire or body, how it reads (absolute, ratiometric, pull-up, differential), its volts, slope or points, and what it is judged by: ground budget, mV, or its unit.',
    },
    { kind: 'number', name: 'supplyV', above: 0, example: 5, label: 'Supply of the sensors', symbol: 'S' },
    { kind: 'number', name: 'referenceV', above: 0, example: 5, label: 'Full scale of the converter' },
    { kind: 'number', name: 'converterBits', min: 1, max: 32, example: 10 },
  ],
  results: [
    { name: 'worstPair', round: 'nearest', primary: true },
    { name: 'pairShiftMv', round: 'nearest', digits: 3 },
    { name: 'pairErrorMv', round: 'nearest', digits: 3 },
    { name: 'pairErrorCount', round: 'nearest', digits: 3 },
    { name: 'overSensorCount', round: 'up', trim: true },
  ],
  steps: [
    {
      result: 'sharedOhm',
      text: 'What this sensor shares with this load',
      how: 'node equations: volts between both grounds for one ampere that comes back where this load does',
      source: 'circuit-theory',
    },
    {
      result: 'pairShiftMv',
      text: 'Its ground above the controller’s',
      formula: 'pairLoadA * sharedOhm',
      source: 'circuit-theory',
    },
    {
      result: 'pairErrorMv',
      text: 'What of that reaches the reading',
      formula: 'pairShiftMv * passedFraction',
      source: 'circuit-theory',
    },
    {
      result: 'pairErrorCount',
      text: 'The same in counts',
      formula: 'pairErrorMv / referenceV * stepCount',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'common-practice', 'given-by-caller'],
  cautions: ['battery', 'stored-heat', 'prove-slowly', 'local-code'],
  identifiers: { sensorGroundBudget },
  run: (input: GroundOffsetErrorInput): GroundOffsetShown => {
    const answer = groundOffsetError(input);
    const { worstLoad, worstSensor } = answer;
    return { ...answer, worstPair: worstLoad === null ? 'none' : `${worstLoad} on ${worstSensor ?? ''}` };
  },
  input: (uses): GroundOffsetErrorInput => {
    const fn = 'groundOffsetError';
    const text = (name: string): string => uses[name] as string;
    return {
      reference: text('reference').trim(),
      pieces: piecesText(fn, 'groundPieces', text('groundPieces')),
      loads: offsetLoadsText(fn, 'offsetLoads', text('offsetLoads')),
      sensors: offsetSensorsText(fn, 'offsetSensors', text('offsetSensors')),
      supplyV: uses['supplyV'] as number,
      referenceV: uses['referenceV'] as number,
      converterBits: uses['converterBits'] as number,
    };
  },
  scope: (values, output) => {
    const found = worstOf(output);
    if (found === undefined) return {};
    const { sensor, pair } = found;
    const load = offsetLoadsText('', '', values['offsetLoads'] as string).find(({ name }) => name === pair.load);
    const pairLoadA = load?.currentA ?? 0;
    return {
      pairLoadA,
      sharedOhm: pairLoadA === 0 ? null : pair.shiftMv / 1000 / pairLoadA,
      pairShiftMv: pair.shiftMv,
      passedFraction: sensor.passedFraction,
      pairErrorMv: pair.overRange === 'no' ? pair.errorMv : null,
      pairErrorCount: pair.errorCount,
      stepCount: 2 ** (values['converterBits'] as number),
      overSensorCount: output.sensors.filter(({ checks }) => checks.some(({ ok }) => !ok)).length,
    };
  },
});
