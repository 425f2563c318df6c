import { ladderSender, type LadderSenderInput } from 'loomwright';
import { ohmList } from '../divider/lists.js';
import { defineCard, type Values } from '../type.js';
import { evenStrapping } from './lists.js';

const alone = (values: Values): boolean => typeof values['inputOhm'] !== 'number';

export const ladderSenderCard = defineCard({
  name: 'ladderSender',
  area: 'level',
  question: 'What does a ladder sender tell, and how far is it off?',
  page: 'ladder-sender',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 5, label: 'Pull-up goes to' },
    { kind: 'number', name: 'pullUpOhm', above: 0, example: 240 },
    {
      kind: 'number',
      name: 'pullToleranceFraction',
      label: 'Tolerance of the pull-up',
      symbol: 't_\\mathrm{pull}',
      min: 0,
      example: 0.01,
      unit: '%',
    },
    { kind: 'number', name: 'inputOhm', above: 0, example: null, optional: true, unit: 'kΩ' },
    { kind: 'number', name: 'wireOhm', min: 0, example: 0.5 },
    {
      kind: 'text',
      name: 'stepOhm',
      example: '240, 200, 165, 132, 98, 64, 33',
      help: 'Between the leads, from empty to full, the contacts at equal steps of the level.',
    },
    { kind: 'number', name: 'toleranceFraction', label: 'Tolerance of the chain', min: 0, example: 0.02, unit: '%' },
    {
      kind: 'number',
      name: 'overlapFraction',
      min: 0,
      example: 0.02,
      unit: '%',
      help: 'Share of the level over which neighbours are closed together. 0 for none.',
    },
    {
      kind: 'number',
      name: 'senderIdleOhm',
      min: 0,
      example: null,
      optional: true,
      help: 'Empty where the sender is open then.',
    },
    { kind: 'text', name: 'strapping', example: '0, 60', help: 'From empty to full. Two figures for straight walls.' },
    { kind: 'number', name: 'guardV', min: 0, example: 0.05, unit: 'mV' },
    {
      kind: 'number',
      name: 'sensorMostA',
      above: 0,
      example: 0.02,
      optional: true,
      unit: 'mA',
      help: '20 mA at most in a fuel tank is common practice. Ask the maker.',
    },
    { kind: 'number', name: 'faultV', above: 0, example: 14.4 },
  ],
  results: [
    { name: 'worstUncertaintyL', round: 'up', primary: true },
    { name: 'worstUncertaintyFraction', round: 'up' },
    { name: 'straightWorstErrorFraction', round: 'up' },
    { name: 'smallestGapV', round: 'down' },
    { name: 'openThresholdV', round: 'nearest', digits: 4 },
    { name: 'shortThresholdV', round: 'nearest', digits: 4 },
    { name: 'sensorA', round: 'up' },
    { name: 'faultA', round: 'up' },
    { name: 'faultW', round: 'up' },
  ],
  steps: [
    {
      result: 'emptyV',
      text: 'First contact, as marked',
      formula: 'supplyV * emptyOhm / (emptyOhm + pullUpOhm)',
      source: 'circuit-theory',
      when: alone,
    },
    {
      result: 'fullV',
      text: 'Last contact, as marked',
      formula: 'supplyV * fullOhm / (fullOhm + pullUpOhm)',
      source: 'circuit-theory',
      when: alone,
    },
    {
      result: 'worstUncertaintyL',
      text: 'Half of the litres that the longest step covers',
      how: 'each contact is read between the middles to its neighbours, moved by half the overlap; the strapping table turns these levels into litres',
      source: 'circuit-theory',
    },
    {
      result: 'faultA',
      text: 'Current in the sender at its lowest, its wire on the battery',
      formula: 'faultV / min(emptyOhm, fullOhm)',
      source: 'circuit-theory',
      when: (values) => !ohmList('ladderSender', 'stepOhm', String(values['stepOhm'])).includes(0),
    },
  ],
  sources: ['circuit-theory', 'common-practice'],
  cautions: ['fuel', 'local-code'],
  run: ladderSender,
  input: (uses): LadderSenderInput => {
    const { senderIdleOhm, ...rest } = uses;
    const stepOhm = ohmList('ladderSender', 'stepOhm', uses['stepOhm'] as string);
    return {
      ...(rest as unknown as LadderSenderInput),
      inputOhm: (uses['inputOhm'] as number | undefined) ?? null,
      idleOhm: (senderIdleOhm as number | undefined) ?? null,
      sensorMostA: (uses['sensorMostA'] as number | undefined) ?? null,
      stepOhm,
      stepLevelFraction: stepOhm.map((_, i) => i / Math.max(stepOhm.length - 1, 1)),
      strapping: evenStrapping('ladderSender', 'strapping', uses['strapping'] as string),
    };
  },
  scope: (_, output) => ({
    emptyOhm: output.steps[0]?.senderOhm ?? null,
    fullOhm: output.steps.at(-1)?.senderOhm ?? null,
    emptyV: output.steps[0]?.pinV ?? null,
    fullV: output.steps.at(-1)?.pinV ?? null,
  }),
});
