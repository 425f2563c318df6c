import {
  type CrankingBudget,
  crankingBudgetGuideline,
  crankingBudgetParts,
  crankingBudgetSides,
  crankingCircuit,
  type CrankingCircuitInput,
  type CrankingStarter,
  type MotorStarter,
  type ResistanceBasis,
} from 'loomwright';
import { basisField, sizeField } from '../conductor/basis.js';
import { defineCard, type Uses, type Values } from '../type.js';
import { crankingParts, readingList } from './cranking-lists.js';

const BUDGETS: Readonly<Record<string, readonly CrankingBudget[]>> = {
  both: [crankingBudgetParts, crankingBudgetSides],
  parts: [crankingBudgetParts],
  sides: [crankingBudgetSides],
  guideline: [crankingBudgetGuideline],
};

const named = (text: unknown): string | null => {
  const name = String(text ?? '').trim();
  return name === '' ? null : name;
};

function starterOf(uses: Uses): CrankingStarter {
  const n = (name: string): number => uses[name] as number;
  switch (uses['starterKind']) {
    case 'resistor':
      return { kind: 'resistor', resistanceOhm: n('lockedV') / n('lockedA') };
    case 'measured-current':
      return { kind: 'measured-current', currentA: n('crankingA') };
    default: {
      const [lockedV, lockedA, freeV, freeA] = [n('lockedV'), n('lockedA'), n('freeV'), n('freeA')];
      const [freeRpm, crankingA, gearRatio] = [n('freeRpm'), n('crankingA'), n('gearRatio')];
      const kind = uses['starterKind'] as MotorStarter['kind'];
      return { kind, lockedV, lockedA, freeV, freeA, freeRpm, crankingA, gearRatio };
    }
  }
}

const motor = ({ starterKind }: Values): boolean => starterKind === 'series' || starterKind === 'permanent-magnet';
const bench = ({ starterKind }: Values): boolean => starterKind !== 'measured-current';

export const crankingCircuitCard = defineCard({
  name: 'crankingCircuit',
  area: 'supply',
  question: 'How many volts reach the starter and the controller while cranking, and where do the others go?',
  page: 'battery-moved',
  fields: [
    { kind: 'number', name: 'openV', above: 0, example: 12.6, label: 'Battery at rest' },
    {
      kind: 'number',
      name: 'batteryResistanceOhm',
      min: 0,
      example: 0.009,
      unit: 'mΩ',
      help: 'From its rating or from two loads: see the page on a battery at rest.',
    },
    { ...basisField, label: 'Resistance of cables by' },
    { ...sizeField, label: 'Size of cables', example: '70' },
    { kind: 'number', name: 'conductorTempC', min: -100, max: 400, example: 40, label: 'Copper of the cables' },
    {
      kind: 'text',
      name: 'outList',
      label: 'From the positive post to the starter',
      example:
        'post clamp: joint 0.2 mΩ; isolator: contact 0.3 mΩ; long cable: cable 3.8 m; bulkhead stud: joint 0.15 mΩ; starter cable: cable 0.9 m; solenoid: contact 0.5 mΩ',
      help: 'Each with a name: joint, cable, strap, contact or body, and mΩ, or metres of a cable.',
    },
    {
      kind: 'text',
      name: 'returnList',
      label: "From the starter's case to the negative post",
      example:
        'engine strap: strap 0.4 m of 35; frame: body 0.4 mΩ; ground cable: cable 0.5 m; ground clamp: joint 0.2 mΩ',
      help: 'A strap of another size says so: strap 0.4 m of 35.',
    },
    {
      kind: 'choice',
      name: 'starterKind',
      choices: [
        { value: 'series', label: 'series-wound motor, by its bench test' },
        { value: 'permanent-magnet', label: 'permanent-magnet motor, by its bench test' },
        { value: 'measured-current', label: 'known by its current while cranking' },
        { value: 'resistor', label: 'a plain resistance: held fast' },
      ],
      example: 'series',
    },
    { kind: 'number', name: 'crankingA', above: 0, example: 180 },
    { kind: 'number', name: 'lockedV', above: 0, example: 5 },
    { kind: 'number', name: 'lockedA', above: 0, example: 550 },
    { kind: 'number', name: 'freeV', above: 0, example: 11.5 },
    { kind: 'number', name: 'freeA', above: 0, example: 75 },
    { kind: 'number', name: 'freeRpm', above: 0, example: 5500 },
    { kind: 'number', name: 'gearRatio', above: 0, example: 13 },
    { kind: 'number', name: 'leastEngineRpm', above: 0, optional: true, example: 100 },
    {
      kind: 'text',
      name: 'outAfter',
      label: 'Controller fed after',
      example: 'isolator',
      help: 'Name of a part of the way out; empty: at the positive post.',
    },
    {
      kind: 'text',
      name: 'groundBefore',
      label: 'Controller grounded before',
      example: 'frame',
      help: 'Name of a part of the way back; empty: at the negative post.',
    },
    { kind: 'number', name: 'controllerLeastV', above: 0, example: 8 },
    { kind: 'number', name: 'firstLeastV', above: 0, optional: true, example: 6 },
    {
      kind: 'choice',
      name: 'budgets',
      choices: [
        { value: 'both', label: 'each part and each side' },
        { value: 'parts', label: 'each part: 0.1, 0.2, 0.3 V, 1.0 V in all' },
        { value: 'sides', label: 'each side: 0.5 V and 0.3 V' },
        { value: 'guideline', label: 'a weaker guideline: 0.2, 0.3 V, 0.6 and 0.3 V' },
      ],
      example: 'both',
    },
    {
      kind: 'number',
      name: 'deviationV',
      above: 0,
      example: 0.05,
      unit: 'mV',
      label: 'A joint is bad above the prediction by',
    },
    {
      kind: 'text',
      name: 'readings',
      label: 'Read while cranking',
      example: '',
      help: 'long cable 0.31 V; frame 90 mV. May be empty.',
    },
    { kind: 'number', name: 'readingA', above: 0, optional: true, example: null },
  ],
  results: [
    { name: 'starterV', round: 'down', digits: 4, primary: true },
    { name: 'currentA', round: 'up', label: 'Current' },
    { name: 'postV', round: 'down', digits: 4 },
    { name: 'controllerV', round: 'down', digits: 4 },
    { name: 'engineRpm', round: 'down', label: 'Engine turns' },
    { name: 'dropV', round: 'up', label: 'Lost in the cables, both sides' },
    { name: 'positiveDropV', round: 'up' },
    { name: 'negativeDropV', round: 'up' },
    { name: 'firstMomentA', round: 'up' },
    { name: 'firstMomentPostV', round: 'down' },
    { name: 'firstMomentControllerV', round: 'down' },
  ],
  steps: [
    {
      result: 'pathResistanceOhm',
      text: 'All parts out and back',
      how: 'cables by their table, warmed; joints and contacts as given; added up',
      source: 'circuit-theory',
    },
    {
      result: 'lockedOhm',
      text: 'Starter held fast',
      formula: 'lockedV / lockedA',
      source: 'circuit-theory',
      when: bench,
    },
    {
      result: 'currentA',
      text: 'Current',
      formula: 'openV / (batteryResistanceOhm + pathResistanceOhm + lockedOhm)',
      source: 'circuit-theory',
      when: ({ starterKind }) => starterKind === 'resistor',
    },
    {
      result: 'currentA',
      text: 'Current',
      how: 'what the torque of the engine asks for, at any volts; or that of a starter held fast, where it stalls',
      source: 'circuit-theory',
      when: motor,
    },
    {
      result: 'postV',
      text: 'Volts at the posts',
      formula: 'openV - currentA * batteryResistanceOhm',
      source: 'circuit-theory',
    },
    {
      result: 'dropV',
      text: 'Lost between posts and starter',
      formula: 'currentA * pathResistanceOhm',
      source: 'circuit-theory',
    },
    { result: 'starterV', text: 'Volts at the starter', formula: 'postV - dropV', source: 'circuit-theory' },
    {
      result: 'starterPowerW',
      text: 'Power that the starter takes',
      formula: 'starterV * currentA',
      source: 'circuit-theory',
    },
    {
      result: 'starterRpm',
      text: 'Its speed: field constant',
      formula: 'freeRpm * (starterV - currentA * lockedOhm) / (freeV - freeA * lockedOhm)',
      source: 'circuit-theory',
      when: ({ starterKind }) => starterKind === 'permanent-magnet',
    },
    {
      result: 'starterRpm',
      text: 'Its speed: field as the current',
      formula: 'freeRpm * (starterV - currentA * lockedOhm) / (freeV - freeA * lockedOhm) * freeA / currentA',
      source: 'circuit-theory',
      when: ({ starterKind }) => starterKind === 'series',
    },
    { result: 'engineRpm', text: 'Engine', formula: 'starterRpm / gearRatio', source: 'circuit-theory', when: motor },
    {
      result: 'firstMomentA',
      text: 'First moment, rotor still',
      formula: 'openV / (batteryResistanceOhm + pathResistanceOhm + lockedOhm)',
      source: 'circuit-theory',
      when: motor,
    },
  ],
  sources: ['circuit-theory', 'service-drop-limits', 'iso-19642', 'nbs-hb-100'],
  cautions: ['local-code', 'battery', 'stored-heat', 'isolator'],
  run: crankingCircuit,
  identifiers: { crankingBudgetParts, crankingBudgetSides, crankingBudgetGuideline },
  input: (uses): CrankingCircuitInput => {
    const n = (name: string): number => uses[name] as number;
    const fn = 'crankingCircuit';
    const cable = {
      size: uses['size'],
      resistanceBasis: uses['resistanceBasis'] as ResistanceBasis,
      conductorTempC: n('conductorTempC'),
    };
    const starter = starterOf(uses);
    const isMotor = 'freeRpm' in starter;
    const readings = readingList(fn, 'readings', String(uses['readings'] ?? ''));
    return {
      openV: n('openV'),
      batteryResistanceOhm: n('batteryResistanceOhm'),
      outParts: crankingParts(fn, 'outList', String(uses['outList']), cable),
      returnParts: crankingParts(fn, 'returnList', String(uses['returnList']), cable),
      starter,
      controller: {
        outAfter: named(uses['outAfter']),
        groundBefore: named(uses['groundBefore']),
        leastV: n('controllerLeastV'),
        // What the first moment is, only a bench test tells.
        firstLeastV: isMotor ? ((uses['firstLeastV'] as number | undefined) ?? null) : null,
      },
      budgets: BUDGETS[String(uses['budgets'])] ?? [],
      deviationV: n('deviationV'),
      ...(readings.length === 0 ? {} : { readings }),
      ...(uses['readingA'] === undefined ? {} : { readingA: n('readingA') }),
      ...(isMotor && uses['leastEngineRpm'] !== undefined ? { leastEngineRpm: n('leastEngineRpm') } : {}),
    };
  },
  scope: (values, output) => {
    if (!output.possible) return {};
    const { firstMoment, parts, speedRpm } = output;
    return {
      pathResistanceOhm: parts.reduce((sum, part) => (part.side === 'battery' ? sum : sum + part.resistanceOhm), 0),
      lockedOhm: Number(values['lockedV']) / Number(values['lockedA']),
      starterRpm: speedRpm,
      firstMomentA: firstMoment?.currentA ?? null,
      firstMomentPostV: firstMoment?.postV ?? null,
      firstMomentControllerV: firstMoment?.controllerV ?? null,
    };
  },
});
