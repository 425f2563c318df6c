import {
  ac4313Ampacity,
  aircraftContinuousBudget,
  aircraftIntermittentBudget,
  as22759Slash16,
  awgStranded,
  bladeFuse,
  chooseFuse,
  criticalFeedBudget,
  type DropBudget,
  type FuseProtection,
  generalFeedBudget,
  heatingByBalance,
  heatingByTable,
  iec60228Class5,
  type InsulatedWireTable,
  iso19642,
  InputError,
  iso19642ThinWall,
  type JudgedSize,
  type NotPossible,
  type OverloadRule,
  type ResistanceBasis,
  saeGxl,
  saeJ1128,
  sizeFeed,
  type SizeFeedInput,
  type SizeFeedResult,
  us33Cfr183Ampacity,
  type AmpacityTable,
} from 'loomwright';
import { type Card, type Choice, defineCard, type Step, type Uses } from '../type.js';
import { inputOf } from '../values.js';
import { feedScope } from './feed-scope.js';

const zero = { name: 'zeroTempC', symbol: 'T_0', value: 234.5, unit: 'K', source: 'nbs-hb-100' } as const;
const twenty = { name: 'baseTempC', symbol: 'T_{20}', value: 20, unit: 'K', source: 'nbs-hb-100' } as const;

/** The working of a sized feed; the command shows the same for a circuit file. */
export const sizeFeedSteps: readonly Step[] = [
  {
    result: 'resistanceOhmPerM',
    text: 'Resistance of one metre of the chosen size at 20 °C',
    how: 'looked up in the table of the wire',
    source: 'iec-60228',
    sourceOf: (output: SizeFeedResult) => output.source,
  },
  {
    result: 'ampacityA',
    text: 'Current that the wire bears in this air',
    how: 'by the heat balance of the wire, or a table of currents carried to the ambient temperature',
    source: 'heat-balance',
    sourceOf: (output: SizeFeedResult) =>
      output.checks.find(({ name }) => name === 'conductor temperature')?.source ?? 'heat-balance',
  },
  {
    result: 'wireResistanceOhm',
    text: 'Resistance of the wire, out and back, hot',
    formula: 'resistanceOhmPerM * wireLengthM * (zeroTempC + conductorTempC) / (zeroTempC + baseTempC)',
    constants: [zero, twenty],
    source: 'nbs-hb-100',
  },
  {
    result: 'dropV',
    text: 'Volts lost in wire and fixed parts',
    formula: 'currentA * (wireResistanceOhm + fixedResistanceOhm)',
    source: 'circuit-theory',
  },
  { result: 'loadV', text: 'Volts left for the load', formula: 'supplyV - dropV', source: 'circuit-theory' },
  {
    result: 'shortResistanceOhm',
    text: 'Resistance of a short at the far end, with the wire as hot as its insulation bears',
    formula:
      'seriesResistanceOhm + resistanceOhmPerM * wireLengthM * (zeroTempC + shortTempC) / (zeroTempC + baseTempC)',
    constants: [zero, twenty],
    source: 'nbs-hb-100',
    when: (values) => values['protection'] !== 'none',
  },
  {
    result: 'farShortA',
    text: 'Current of that short at the lowest battery voltage',
    formula: 'shortSupplyV / shortResistanceOhm',
    source: 'circuit-theory',
    when: (values) => values['protection'] !== 'none',
  },
];

/** Wire tables as choices of a card. */
export const wireChoices: readonly Choice[] = [
  { value: 'iso-19642', label: 'ISO 19642 road vehicle cable (from memory)', use: iso19642, identifier: 'iso19642' },
  {
    value: 'iec-60228-class-5',
    label: 'IEC 60228 class 5, flexible',
    use: iec60228Class5,
    identifier: 'iec60228Class5',
  },
  { value: 'awg-stranded', label: 'AWG stranded, tinned (AC 43.13-1B)', use: awgStranded, identifier: 'awgStranded' },
  { value: 'sae-j1128', label: 'SAE J1128 primary cable (from memory)', use: saeJ1128, identifier: 'saeJ1128' },
];

const budgetChoices: readonly Choice[] = [
  {
    value: aircraftContinuousBudget.key,
    label: '0.5 V, continuous load (aircraft, from memory)',
    use: aircraftContinuousBudget,
    identifier: 'aircraftContinuousBudget',
  },
  {
    value: aircraftIntermittentBudget.key,
    label: '1 V, short duty (aircraft, from memory)',
    use: aircraftIntermittentBudget,
    identifier: 'aircraftIntermittentBudget',
  },
  {
    value: criticalFeedBudget.key,
    label: '0.36 V, 3 % of 12 V (small craft)',
    use: criticalFeedBudget,
    identifier: 'criticalFeedBudget',
  },
  {
    value: generalFeedBudget.key,
    label: '1.2 V, 10 % of 12 V (small craft)',
    use: generalFeedBudget,
    identifier: 'generalFeedBudget',
  },
];

export const sizeFeedCard: Card<SizeFeedInput, SizeFeedResult | NotPossible<JudgedSize>> = defineCard({
  name: 'sizeFeed',
  area: 'feed',
  question: 'Which wire and which fuse does this feed need?',
  page: 'size-a-pump-feed',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 13.8 },
    { kind: 'number', name: 'currentA', above: 0, example: 7.5, label: 'Current of the load' },
    { kind: 'number', name: 'outLengthM', min: 0, example: 5.1816, unit: 'ft' },
    {
      kind: 'number',
      name: 'returnLengthM',
      min: 0,
      example: 0.6,
      help: 'To the frame, or all the way: whatever is wire.',
    },
    {
      kind: 'number',
      name: 'fixedResistanceOhm',
      min: 0,
      example: 0.0223,
      unit: 'mΩ',
      help: 'Terminals, fuse holder, relay, connectors and body, all added. The fuse itself is not among them.',
    },
    { kind: 'choice', name: 'resistanceBasis', label: 'Wire that you buy', choices: wireChoices, example: 'iso-19642' },
    {
      kind: 'choice',
      name: 'budget',
      label: 'May lose at most',
      choices: budgetChoices,
      example: aircraftContinuousBudget.key,
    },
    {
      kind: 'choice',
      name: 'heating',
      label: 'Heating judged by',
      choices: [
        { value: 'heat-balance', label: 'Heat balance of the wire' },
        {
          value: us33Cfr183Ampacity.key,
          label: 'Table: 33 CFR 183.425, single wire',
          use: us33Cfr183Ampacity,
          identifier: 'us33Cfr183Ampacity',
        },
        {
          value: ac4313Ampacity.key,
          label: 'Table: AC 43.13-1B, large bundle',
          use: ac4313Ampacity,
          identifier: 'ac4313Ampacity',
        },
      ],
      example: 'heat-balance',
    },
    {
      kind: 'number',
      name: 'bundleFactor',
      above: 0,
      max: 1,
      example: 1,
      help: 'What a wire bears among others, as a share of what it bears alone. Counted with the heat balance only.',
    },
    { kind: 'number', name: 'insulationTempC', min: 40, max: 300, example: 105 },
    { kind: 'number', name: 'ambientTempC', min: -60, max: 200, example: 50, label: 'Air around the wire' },
    { kind: 'number', name: 'leastAreaMm2', min: 0, example: 0.75, help: 'What stands being handled and shaken here.' },
    {
      kind: 'choice',
      name: 'protection',
      label: 'Fuse rule',
      choices: [
        { value: 'iec-60364-4-43', label: 'IEC 60364-4-43' },
        { value: 'strict', label: 'Strict: opens before the wire is at its class' },
        { value: 'us-33-cfr-183-455', label: '33 CFR 183.455: 150 % of the ampacity' },
        { value: 'none', label: 'No fuse' },
      ],
      example: 'iec-60364-4-43',
    },
    {
      kind: 'number',
      name: 'overloadTempC',
      min: 40,
      max: 400,
      optional: true,
      example: 130,
      help: 'What the insulation bears in an overload, for minutes: its class, where nothing more is known. Empty: not judged.',
    },
    {
      kind: 'number',
      name: 'faultTempC',
      min: 40,
      max: 400,
      optional: true,
      example: 160,
      help: 'In a short of at most 5 s: PVC 160, cross-linked polyethylene 250. Empty: not judged.',
    },
    { kind: 'number', name: 'fuseTempC', min: -40, max: 125, example: 40 },
    { kind: 'number', name: 'shortSupplyV', above: 0, example: 12 },
    { kind: 'number', name: 'sourceResistanceOhm', min: 0, example: 0.012, unit: 'mΩ' },
  ],
  results: [
    { name: 'size', round: 'nearest', label: 'Wire', primary: true },
    { name: 'ratingA', round: 'nearest', label: 'Blade fuse', trim: true },
    { name: 'loadV', round: 'down', digits: 4 },
    { name: 'dropV', round: 'up', label: 'Voltage lost out and back' },
    { name: 'conductorTempC', round: 'up' },
    { name: 'ampacityA', round: 'down' },
    { name: 'farShortA', round: 'down' },
    { name: 'lossW', round: 'up' },
  ],
  steps: sizeFeedSteps,
  sources: [
    'heat-balance',
    'ac-43-13-1b',
    'us-33-cfr-183',
    'iso-19642',
    'iso-8820-3',
    'iec-60364-4-43',
    'fuse-selection-guides',
  ],
  cautions: ['local-code', 'fuel', 'battery'],
  run: sizeFeed,
  input: feedInput,
  identifiers: { as22759Slash16, bladeFuse, chooseFuse, heatingByBalance, heatingByTable, iso19642ThinWall, saeGxl },
  scope: (values, output) => (output.possible ? feedScope(inputOf(sizeFeedCard, values), output) : {}),
});

/** The cover that a wire of a table usually has: its diameters decide the heat balance. */
function coverOf(basis: ResistanceBasis): InsulatedWireTable {
  return basis === awgStranded ? as22759Slash16 : basis === saeJ1128 ? saeGxl : iso19642ThinWall;
}

function feedInput(uses: Uses): SizeFeedInput {
  const n = (name: string): number => uses[name] as number;
  const rule = uses['protection'] as OverloadRule | 'none';
  return {
    supplyV: n('supplyV'),
    outParts: [
      ...(rule === 'none' ? [] : [{ name: 'fuse', fuse: 'chosen' } as const]),
      { name: 'fixed parts', kind: 'other', resistanceOhm: n('fixedResistanceOhm') },
      { name: 'wire out', lengthM: n('outLengthM') },
    ],
    returnParts: [{ name: 'wire back', lengthM: n('returnLengthM') }],
    load: { kind: 'constant-current', currentA: n('currentA') },
    resistanceBasis: uses['resistanceBasis'] as ResistanceBasis,
    limits: { budget: uses['budget'] as DropBudget },
    judgedAtV: [9, 14.4],
    heating:
      uses['heating'] === 'heat-balance'
        ? {
            by: heatingByBalance,
            wireTable: coverOf(uses['resistanceBasis'] as ResistanceBasis),
            insulationTempC: n('insulationTempC'),
            ambientTempC: n('ambientTempC'),
            altitudeM: 0,
            // PVC: of the usual covers the one that lets the least heat through.
            insulationConductivityWPerMK: 0.17,
            bundleFactor: n('bundleFactor'),
          }
        : {
            by: heatingByTable,
            table: uses['heating'] as AmpacityTable,
            insulationTempC: n('insulationTempC'),
            ambientTempC: n('ambientTempC'),
          },
    leastAreaMm2: n('leastAreaMm2'),
    protection:
      rule === 'none'
        ? { kind: 'none', because: 'chosen so by the reader' }
        : {
            kind: 'fuse',
            by: chooseFuse,
            family: bladeFuse,
            continuousFraction: 0.75,
            overloadRule: rule,
            fuseTempC: n('fuseTempC'),
            shortSupplyV: n('shortSupplyV'),
            sourceResistanceOhm: n('sourceResistanceOhm'),
            clearWithinS: 0.5,
            ...wireLimitsOf(uses),
          },
  };
}

/** What the insulation bears for a while: both temperatures, or neither. */
function wireLimitsOf(uses: Uses): Pick<FuseProtection, 'wireLimits'> {
  const [overloadTempC, shortTempC] = [uses['overloadTempC'], uses['faultTempC']] as (number | undefined)[];
  if (overloadTempC !== undefined && shortTempC !== undefined) return { wireLimits: { overloadTempC, shortTempC } };
  if (overloadTempC === undefined && shortTempC === undefined) return {};
  const lacking = overloadTempC === undefined ? 'overloadTempC' : 'faultTempC';
  throw new InputError(
    'sizeFeed',
    lacking,
    'missing',
    undefined,
    'is required beside the other',
    'or leave both empty',
  );
}
