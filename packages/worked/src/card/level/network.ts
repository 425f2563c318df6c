import { type NetworkPart, senderNetwork, type SenderNetworkInput } from 'loomwright';
import { defineCard, type Uses, type Values } from '../type.js';

/** One or two senders, a fixed resistor ahead of them and one across, as parts between nodes. */
function partsOf(uses: Uses): readonly NetworkPart[] {
  const number = (name: string): number => uses[name] as number;
  const fixedOhm = number('fixedOhm');
  const top = fixedOhm !== 0 ? 'lead' : 'pin';
  const resistor = (name: string, from: string, to: string, ohm: number): NetworkPart => ({
    name,
    from,
    to,
    emptyOhm: ohm,
    fullOhm: ohm,
    inTank: false,
  });
  const fixed: readonly NetworkPart[] = [
    ...(fixedOhm !== 0 ? [resistor('fixed resistor', 'pin', 'lead', fixedOhm)] : []),
    ...(typeof uses['fixedAcrossOhm'] === 'number'
      ? [resistor('resistor across', top, 'ground', uses['fixedAcrossOhm'])]
      : []),
  ];
  const sender = (name: string, from: string, to: string, second: boolean): NetworkPart => ({
    name,
    from,
    to,
    emptyOhm: number(second ? 'secondEmptyOhm' : 'emptyOhm'),
    fullOhm: number(second ? 'secondFullOhm' : 'fullOhm'),
    inTank: true,
  });
  if (uses['arrangement'] === 'series') {
    return [
      ...fixed,
      sender('first sender', top, 'between', false),
      sender('second sender', 'between', 'ground', true),
    ];
  }
  const first = sender('first sender', top, 'ground', false);
  return uses['arrangement'] === 'one'
    ? [...fixed, first]
    : [...fixed, first, sender('second sender', top, 'ground', true)];
}

/** One sender and nothing across it: then the step's formula holds. */
const isPlain = (values: Values): boolean =>
  values['arrangement'] === 'one' &&
  typeof values['inputOhm'] !== 'number' &&
  typeof values['fixedAcrossOhm'] !== 'number';

export const senderNetworkCard = defineCard({
  name: 'senderNetwork',
  area: 'level',
  question: 'What does the input see of these senders, and what does a chafed wire do?',
  page: 'sender-fits-or-cannot',
  fields: [
    {
      kind: 'choice',
      name: 'arrangement',
      label: 'Senders',
      choices: [
        { value: 'one', label: 'one' },
        { value: 'series', label: 'two in series' },
        { value: 'parallel', label: 'two in parallel' },
      ],
      example: 'one',
    },
    { kind: 'number', name: 'emptyOhm', min: 0, max: 1e8, example: 350 },
    { kind: 'number', name: 'fullOhm', min: 0, max: 1e8, example: 10 },
    { kind: 'number', name: 'secondEmptyOhm', example: 350, help: 'Counts with two senders only.' },
    { kind: 'number', name: 'secondFullOhm', example: 10 },
    { kind: 'number', name: 'fixedOhm', min: 0, example: 0, help: 'Between the pin and the senders. 0 for none.' },
    {
      kind: 'number',
      name: 'fixedAcrossOhm',
      min: 0,
      max: 1e8,
      optional: true,
      example: null,
      help: 'From the senders’ live end to ground, out of the tank. Empty for none.',
    },
    { kind: 'number', name: 'biasV', above: 0, example: 5, help: 'A reference of 5 V, or the battery.' },
    { kind: 'number', name: 'biasOhm', min: 0.001, max: 1e8, example: 270 },
    { kind: 'number', name: 'inputOhm', above: 0, example: null, optional: true, unit: 'kΩ' },
    { kind: 'number', name: 'faultV', above: 0, example: 14.4 },
    { kind: 'number', name: 'guardV', label: 'A fault is told at a distance of', min: 0, example: 0.1, unit: 'mV' },
    {
      kind: 'number',
      name: 'tankMostA',
      above: 0,
      example: 0.02,
      optional: true,
      unit: 'mA',
      help: '20 mA at most in a fuel tank is common practice. Ask the maker.',
    },
    { kind: 'number', name: 'tankFaultMostW', above: 0, example: null, optional: true },
  ],
  results: [
    { name: 'worstFaultW', round: 'up', primary: true },
    { name: 'worstFaultA', round: 'up' },
    { name: 'worstFault', label: 'Worst fault for the tank', round: 'nearest' },
    { name: 'lowestPinV', round: 'nearest', digits: 4 },
    { name: 'highestPinV', round: 'nearest', digits: 4 },
    { name: 'mostTankA', round: 'up' },
    { name: 'mostTankW', round: 'up' },
    { name: 'biasMostW', round: 'up' },
  ],
  steps: [
    {
      result: 'emptyV',
      text: 'Pin at empty, one sender',
      formula: 'biasV * (emptyOhm + fixedOhm) / (emptyOhm + fixedOhm + biasOhm)',
      source: 'circuit-theory',
      when: isPlain,
    },
    {
      result: 'fullV',
      text: 'Pin at full, one sender',
      formula: 'biasV * (fullOhm + fixedOhm) / (fullOhm + fixedOhm + biasOhm)',
      source: 'circuit-theory',
      when: isPlain,
    },
    {
      result: 'worstFaultW',
      text: 'Most heat in the tank of all faults',
      how: 'each lead broken, on ground and on the battery, each part open and shorted, the network solved anew at every level',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'common-practice'],
  cautions: ['fuel', 'local-code'],
  run: senderNetwork,
  input: (uses): SenderNetworkInput => ({
    parts: partsOf(uses),
    biasV: uses['biasV'] as number,
    biasOhm: uses['biasOhm'] as number,
    inputOhm: (uses['inputOhm'] as number | undefined) ?? null,
    faultV: uses['faultV'] as number,
    guardV: uses['guardV'] as number,
    tankMostA: (uses['tankMostA'] as number | undefined) ?? null,
    tankFaultMostW: (uses['tankFaultMostW'] as number | undefined) ?? null,
  }),
  scope: (_, output) => ({
    emptyV: output.readings[0]?.pinV ?? null,
    fullV: output.readings.at(-1)?.pinV ?? null,
  }),
});
