import {
  balanceShift,
  type BalanceShiftInput,
  type BalanceShiftResult,
  centreOfMass,
  type CentreOfMassInput,
  type CentreOfMassResult,
  massToMove,
  type MassToMoveInput,
} from 'loomwright';
import { defineCard } from '../type.js';
import { changeList, massList } from './lists.js';

export const balanceShiftCard = defineCard<BalanceShiftInput, BalanceShiftResult>({
  name: 'balanceShift',
  area: 'bundle',
  question: 'What do axles and wheels carry after this?',
  page: 'weight-moved',
  fields: [
    { kind: 'number', name: 'wheelbaseM', above: 0, example: 2.6 },
    { kind: 'number', name: 'trackM', above: 0, example: 1.5 },
    { kind: 'number', name: 'frontAxleKg', above: 0, example: 720 },
    { kind: 'number', name: 'rearAxleKg', above: 0, example: 580 },
    { kind: 'number', name: 'rightSideKg', min: 0, optional: true, example: 640, help: 'Empty if it was not weighed.' },
    {
      kind: 'text',
      name: 'changes',
      example: 'winch 38 kg to -0.7 / 0; battery 20 kg from -0.4 / 0.5 to 2.9 / -0.4; spare wheel 22 kg from 3.1 / 0',
      help: 'Name, mass, from and to. Places in m: behind the front axle / right of the middle. Parted by semicolons.',
    },
    {
      kind: 'choice',
      name: 'cornerRule',
      choices: [
        { value: 'same-side-share', label: 'Same share on both axles' },
        { value: 'none', label: 'None: no corners' },
      ],
      example: 'same-side-share',
    },
  ],
  results: [
    { name: 'rearAfterKg', round: 'up', digits: 4, primary: true },
    { name: 'frontAfterKg', round: 'up', digits: 4 },
    { name: 'frontChangeKg', round: 'nearest' },
    { name: 'rearChangeKg', round: 'nearest' },
    { name: 'leftAfterKg', round: 'up', digits: 4 },
    { name: 'rightAfterKg', round: 'up', digits: 4 },
    { name: 'centreShiftMm', round: 'nearest' },
    { name: 'massAfterKg', round: 'up', digits: 4 },
    { name: 'leftFrontKg', label: 'Left front, by the assumption', round: 'nearest' },
    { name: 'rightFrontKg', label: 'Right front', round: 'nearest' },
    { name: 'leftRearKg', label: 'Left rear', round: 'nearest' },
    { name: 'rightRearKg', label: 'Right rear', round: 'nearest' },
  ],
  steps: [
    {
      result: 'rearChangeKg',
      text: 'Each mass loads the rear axle by its share of the wheelbase',
      how: 'mass times distance behind the front axle over the wheelbase; removed masses count below 0',
      source: 'statics',
    },
    { result: 'rearAfterKg', text: 'Rear axle', formula: 'rearAxleKg + rearChangeKg', source: 'statics' },
    { result: 'frontAfterKg', text: 'Front axle', formula: 'frontAxleKg + frontChangeKg', source: 'statics' },
    { result: 'massAfterKg', text: 'Both', formula: 'frontAfterKg + rearAfterKg', source: 'statics' },
    {
      result: 'centreBeforeM',
      text: 'Centre of gravity behind the front axle, before',
      formula: 'rearAxleKg / (frontAxleKg + rearAxleKg) * wheelbaseM',
      source: 'faa-h-8083-25',
    },
    {
      result: 'centreAfterM',
      text: 'And after',
      formula: 'rearAfterKg / massAfterKg * wheelbaseM',
      source: 'faa-h-8083-25',
    },
    { result: 'centreShiftM', text: 'It moved', formula: 'centreAfterM - centreBeforeM', source: 'statics' },
  ],
  sources: ['statics', 'faa-h-8083-25'],
  cautions: ['local-code', 'prove-slowly'],
  run: balanceShift,
  input: ({ changes, cornerRule, ...rest }) => ({
    ...(rest as unknown as Omit<BalanceShiftInput, 'changes'>),
    changes: changeList('balanceShift', changes as string),
    ...(cornerRule === 'none' ? {} : { cornerRule: cornerRule as 'same-side-share' }),
  }),
  scope: (_, { before, after, shift }) => ({
    frontAfterKg: after.frontAxleKg,
    rearAfterKg: after.rearAxleKg,
    leftAfterKg: after.leftSideKg,
    rightAfterKg: after.rightSideKg,
    frontChangeKg: shift.frontAxleKg,
    rearChangeKg: shift.rearAxleKg,
    massAfterKg: after.massKg,
    centreBeforeM: before.behindFrontAxleM,
    centreAfterM: after.behindFrontAxleM,
    centreShiftM: after.behindFrontAxleM - before.behindFrontAxleM,
    centreShiftMm: (after.behindFrontAxleM - before.behindFrontAxleM) * 1000,
    leftFrontKg: after.corners?.leftFrontKg ?? null,
    rightFrontKg: after.corners?.rightFrontKg ?? null,
    leftRearKg: after.corners?.leftRearKg ?? null,
    rightRearKg: after.corners?.rightRearKg ?? null,
  }),
});

export const centreOfMassCard = defineCard<CentreOfMassInput, CentreOfMassResult>({
  name: 'centreOfMass',
  area: 'bundle',
  question: 'Where do these masses balance?',
  page: 'weight-moved',
  fields: [
    {
      kind: 'text',
      name: 'masses',
      example: '18 kg at 0; 11 kg at 0.6; 4.5 kg at 1.1',
      help: 'Mass in kg, place in m from any point. Below 0 for what is taken away.',
    },
  ],
  results: [
    { name: 'alongM', round: 'nearest', primary: true },
    { name: 'massKg', round: 'up', digits: 4 },
  ],
  steps: [
    {
      result: 'alongM',
      text: 'Centre of gravity',
      how: 'each mass times its place, added, over the sum of the masses',
      source: 'statics',
    },
  ],
  sources: ['statics', 'faa-h-8083-25'],
  cautions: ['local-code'],
  run: centreOfMass,
  input: (uses) => ({ masses: massList('centreOfMass', uses['masses'] as string) }),
});

export const massToMoveCard = defineCard<MassToMoveInput, ReturnType<typeof massToMove>>({
  name: 'massToMove',
  area: 'bundle',
  question: 'How much must move to shift the balance?',
  page: 'weight-moved',
  fields: [
    { kind: 'number', name: 'totalMassKg', above: 0, example: 1300 },
    { kind: 'number', name: 'shiftM', example: 0.03, unit: 'mm', help: 'Below 0: forward.' },
    { kind: 'number', name: 'fromM', example: -0.4, help: 'From any point, to the rear.' },
    { kind: 'number', name: 'toM', example: 2.6 },
  ],
  results: [{ name: 'massKg', label: 'Move', round: 'up', primary: true }],
  steps: [
    {
      result: 'massKg',
      text: 'Mass that makes the shift',
      formula: 'totalMassKg * shiftM / (toM - fromM)',
      source: 'faa-h-8083-25',
    },
  ],
  sources: ['faa-h-8083-25'],
  cautions: ['local-code', 'prove-slowly'],
  run: massToMove,
});
