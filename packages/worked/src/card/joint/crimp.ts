import {
  as7928PullOut,
  awgStrandedAreas,
  bendAtTerminals,
  bendCoaxBundle,
  bendH05vk,
  bendMultiConductor,
  bendPolyimide,
  bendRadius,
  type BendRadiusInput,
  type BendRadiusResult,
  type BendRule,
  bendSingleWire,
  bendThinWall,
  bendWelding,
  crimpPullOut,
  type CrimpPullOutResult,
  iec60352PullOut,
  metricAreas,
  saeAreas,
  spliceArea,
  type SpliceAreaInput,
  tensilePullOut,
  ul486aPullOut,
} from 'loomwright';
import { sizeList } from '../bundle/lists.js';
import { type Choice, defineCard } from '../type.js';

const areaChoices: readonly Choice[] = [
  {
    value: awgStrandedAreas.key,
    label: 'AWG, stranded (AC 43.13-1B)',
    use: awgStrandedAreas,
    identifier: 'awgStrandedAreas',
  },
  { value: saeAreas.key, label: 'SAE gauge (from memory)', use: saeAreas, identifier: 'saeAreas' },
  { value: metricAreas.key, label: 'mm², nominal', use: metricAreas, identifier: 'metricAreas' },
];

export const spliceAreaCard = defineCard<SpliceAreaInput, ReturnType<typeof spliceArea>>({
  name: 'spliceArea',
  area: 'joint',
  question: 'Which splice takes these wires together?',
  page: 'terminals',
  fields: [
    {
      kind: 'text',
      name: 'wires',
      label: 'Wires in one barrel',
      example: '2 × 18; 1 × 20',
      help: 'How many × which size, parted by semicolons.',
    },
    { kind: 'choice', name: 'areaTable', choices: areaChoices, example: awgStrandedAreas.key },
  ],
  results: [
    { name: 'size', label: 'Counts as size', round: 'nearest', primary: true },
    { name: 'areaMm2', label: 'Sum of the conductors', round: 'up' },
    { name: 'circularMils', round: 'up', digits: 6, trim: true },
    { name: 'sizeAreaMm2', round: 'down' },
  ],
  steps: [
    {
      result: 'areaMm2',
      text: 'All conductors added',
      how: 'the area of each size by the table, times how many there are',
      source: 'nasa-std-8739-4',
    },
    {
      result: 'sizeAreaMm2',
      text: 'The next larger size',
      how: 'the smallest of the table that is not below the sum',
      source: 'nasa-std-8739-4',
    },
  ],
  sources: ['nasa-std-8739-4', 'ac-43-13-1b'],
  cautions: ['local-code'],
  run: spliceArea,
  input: (uses) => ({
    wires: sizeList('spliceArea', uses['wires'] as string),
    areaTable: uses['areaTable'] as SpliceAreaInput['areaTable'],
  }),
});

export const crimpPullOutCard = defineCard({
  name: 'crimpPullOut',
  area: 'joint',
  question: 'How hard must this crimp hold?',
  page: 'terminals',
  fields: [
    {
      kind: 'choice',
      name: 'table',
      label: 'By which standard',
      choices: [
        { value: ul486aPullOut.key, label: 'UL 486A, by gauge', use: ul486aPullOut, identifier: 'ul486aPullOut' },
        {
          value: as7928PullOut.key,
          label: 'SAE AS7928, aircraft lugs and splices',
          use: as7928PullOut,
          identifier: 'as7928PullOut',
        },
        {
          value: iec60352PullOut.key,
          label: 'IEC 60352-2, by mm² (from memory)',
          use: iec60352PullOut,
          identifier: 'iec60352PullOut',
        },
      ],
      example: ul486aPullOut.key,
    },
    { kind: 'text', name: 'size', label: 'Size', example: '16', help: 'A gauge, or mm² for the IEC table.' },
  ],
  results: [
    { name: 'pullOutN', round: 'up', primary: true },
    { name: 'rowSize', round: 'nearest' },
    { name: 'sourceStatus', label: 'Status', round: 'nearest' },
  ],
  steps: [
    {
      result: 'pullOutN',
      text: 'Least force',
      how: 'looked up; where pounds-force and newtons of a print differ, the larger',
      source: 'ul-486a',
      sourceOf: (output: CrimpPullOutResult) => output.source,
    },
  ],
  sources: ['ul-486a', 'as7928', 'iec-60352-2'],
  cautions: ['local-code'],
  run: crimpPullOut,
});

export const tensilePullOutCard = defineCard({
  name: 'tensilePullOut',
  area: 'joint',
  question: 'How hard must a crimp hold that no table lists?',
  page: 'terminals',
  fields: [
    { kind: 'number', name: 'areaMm2', min: 0.001, example: 0.519 },
    { kind: 'number', name: 'tensileNPerMm2', above: 0, example: 230, help: 'Annealed copper about 230.' },
    {
      kind: 'number',
      name: 'shareFraction',
      label: 'Share that the crimp must reach',
      min: 0.01,
      max: 1,
      example: 0.6,
      help: '60 % by NASA-STD-8739.4.',
    },
  ],
  results: [
    { name: 'pullOutN', round: 'up', primary: true },
    { name: 'wireBreaksN', round: 'down' },
  ],
  steps: [
    { result: 'wireBreaksN', text: 'Strength of the wire', formula: 'tensileNPerMm2 * areaMm2', source: 'statics' },
    {
      result: 'pullOutN',
      text: 'The share of it',
      formula: 'shareFraction * wireBreaksN',
      source: 'nasa-std-8739-4',
    },
  ],
  sources: ['nasa-std-8739-4'],
  cautions: ['local-code'],
  run: tensilePullOut,
});

const bendRules: Readonly<Record<string, BendRule>> = {
  bendSingleWire,
  bendThinWall,
  bendAtTerminals,
  bendMultiConductor,
  bendPolyimide,
  bendH05vk,
  bendWelding,
  bendCoaxBundle,
};

export const bendRadiusCard = defineCard<BendRadiusInput, BendRadiusResult>({
  name: 'bendRadius',
  area: 'joint',
  question: 'How tightly may this be bent?',
  page: 'how-long-to-cut',
  fields: [
    {
      kind: 'choice',
      name: 'rule',
      label: 'What is bent',
      choices: Object.entries(bendRules).map(([identifier, use]) => ({
        value: use.key,
        label: `${use.title}: ${use.radiusFactor} diameters`,
        use,
        identifier,
      })),
      example: bendSingleWire.key,
    },
    { kind: 'number', name: 'outerDiameterMm', above: 0, example: 2.4 },
  ],
  results: [
    { name: 'bendRadiusMm', round: 'up', primary: true },
    { name: 'longTermRadiusMm', round: 'up' },
    { name: 'sourceStatus', label: 'Status', round: 'nearest' },
  ],
  steps: [
    {
      result: 'bendRadiusMm',
      text: 'Radius at the inside of the bend',
      formula: 'radiusFactor * outerDiameterMm',
      source: 'army-tm-1-1500-204-23-4',
      sourceOf: (output: BendRadiusResult) => output.source,
    },
  ],
  sources: ['army-tm-1-1500-204-23-4', 'nasa-std-8739-4', 'cable-bend-data', 'ac-43-13-1b-dressing'],
  cautions: ['local-code'],
  run: bendRadius,
  scope: (values) => ({
    radiusFactor: Object.values(bendRules).find(({ key }) => key === values['rule'])?.radiusFactor ?? null,
  }),
});
