import { starterSolenoid } from 'loomwright';
import { defineCard } from '../type.js';

const zero = { name: 'zeroTempC', symbol: 'T_0', value: 234.5, unit: 'K', source: 'nbs-hb-100' } as const;

export const starterSolenoidCard = defineCard({
  name: 'starterSolenoid',
  area: 'load',
  question: "Does the starter's solenoid pull in and hold, hot and cold?",
  page: 'starter',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 12.2, label: 'Battery as it pulls in' },
    { kind: 'number', name: 'crankingV', above: 0, example: 9.6 },
    {
      kind: 'number',
      name: 'wireResistanceOhm',
      min: 0,
      example: 0.05,
      unit: 'mΩ',
      label: 'Its wire, out and back',
      help: 'With switch, relay contact and terminals.',
    },
    { kind: 'number', name: 'pullInResistanceOhm', above: 0, example: 0.25 },
    { kind: 'number', name: 'holdInResistanceOhm', above: 0, example: 0.9 },
    { kind: 'number', name: 'motorResistanceOhm', min: 0, example: 0.01, unit: 'mΩ' },
    { kind: 'number', name: 'ratedPullInV', above: 0, example: 7.5 },
    { kind: 'number', name: 'ratedHoldV', above: 0, example: 2.5 },
    { kind: 'number', name: 'ratedTempC', min: -100, max: 400, example: 20 },
    { kind: 'number', name: 'coldTempC', min: -60, max: 200, example: -20, label: 'Coldest winding' },
    { kind: 'number', name: 'hotTempC', max: 200, example: 110, label: 'Hottest winding' },
  ],
  results: [
    { name: 'state', round: 'nearest', label: 'The solenoid', primary: true },
    { name: 'hotLeastSupplyV', round: 'up' },
    { name: 'hotPullInV', round: 'down' },
    { name: 'hotNeededPullInV', round: 'up' },
    { name: 'coldPullInA', round: 'up' },
    { name: 'hotPullInA', round: 'up' },
    { name: 'hotHoldV', round: 'down' },
    { name: 'hotNeededHoldV', round: 'up' },
    { name: 'coldHoldA', round: 'up' },
  ],
  steps: [
    {
      result: 'hotFactor',
      text: 'Copper hot over copper as rated',
      formula: '(zeroTempC + hotTempC) / (zeroTempC + ratedTempC)',
      constants: [zero],
      source: 'nbs-hb-100',
    },
    {
      result: 'ratedBothOhm',
      text: 'Both windings side by side, as rated',
      formula: '1 / (1 / (pullInResistanceOhm + motorResistanceOhm) + 1 / holdInResistanceOhm)',
      source: 'circuit-theory',
    },
    {
      result: 'hotBothOhm',
      text: 'The same, hot',
      formula:
        '1 / (1 / (pullInResistanceOhm * hotFactor + motorResistanceOhm) + 1 / (holdInResistanceOhm * hotFactor))',
      source: 'circuit-theory',
    },
    {
      result: 'hotPullInV',
      text: 'Volts at its terminal as it pulls in',
      formula: 'supplyV * hotBothOhm / (hotBothOhm + wireResistanceOhm)',
      source: 'circuit-theory',
    },
    {
      result: 'hotNeededPullInV',
      text: 'Volts needed for the same pull',
      formula: 'ratedPullInV * hotBothOhm / ratedBothOhm',
      source: 'circuit-theory',
    },
    {
      result: 'hotHoldV',
      text: 'Volts while cranking, one winding left',
      formula: 'crankingV * holdInResistanceOhm * hotFactor / (holdInResistanceOhm * hotFactor + wireResistanceOhm)',
      source: 'circuit-theory',
    },
    {
      result: 'hotNeededHoldV',
      text: 'Volts needed to hold',
      formula: 'ratedHoldV * hotFactor',
      source: 'nbs-hb-100',
    },
    {
      result: 'coldPullInA',
      text: 'Current of both windings, cold',
      formula: 'supplyV / (wireResistanceOhm + coldBothOhm)',
      source: 'circuit-theory',
    },
    {
      result: 'coldHoldA',
      text: 'Current of the one that stays, cold',
      formula: 'crankingV / (wireResistanceOhm + holdInResistanceOhm * coldFactor)',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'nbs-hb-100', 'vehicle-service-data'],
  cautions: ['local-code', 'battery'],
  run: starterSolenoid,
  scope: (values, { cold, hot }) => {
    const n = (name: string): number => values[name] as number;
    const hotFactor = (234.5 + n('hotTempC')) / (234.5 + n('ratedTempC'));
    const coldFactor = (234.5 + n('coldTempC')) / (234.5 + n('ratedTempC'));
    const both = (factor: number): number =>
      1 / (1 / (n('pullInResistanceOhm') * factor + n('motorResistanceOhm')) + 1 / (n('holdInResistanceOhm') * factor));
    return {
      hotFactor,
      ratedBothOhm: both(1),
      hotBothOhm: both(hotFactor),
      coldFactor,
      coldBothOhm: both(coldFactor),
      hotPullInA: hot.pullInA,
      hotPullInV: hot.pullInV,
      hotNeededPullInV: hot.neededPullInV,
      hotLeastSupplyV: hot.leastSupplyV,
      hotHoldV: hot.holdV,
      hotNeededHoldV: hot.neededHoldV,
      coldPullInA: cold.pullInA,
      coldHoldA: cold.holdA,
    };
  },
});
