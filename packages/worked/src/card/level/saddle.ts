import { type SaddleLobe, saddleTank, type SaddleTankInput } from 'loomwright';
import { seriesField } from '../divider/series.js';
import { defineCard, type Field, type Uses } from '../type.js';
import { evenStrapping } from './lists.js';

function fieldsOf(side: 'left' | 'right', litres: string, saddle: number): readonly Field[] {
  const name = side === 'left' ? 'Left' : 'Right';
  return [
    {
      kind: 'text',
      name: `${side}Strapping`,
      label: `${name} side, litres`,
      example: litres,
      help: 'At equal steps of its float, from its lowest place to its highest.',
    },
    { kind: 'number', name: `${side}EmptyOhm`, min: 0, max: 1e8, example: 90 },
    { kind: 'number', name: `${side}FullOhm`, min: 0, max: 1e8, example: 10 },
    { kind: 'number', name: `${side}SaddleFraction`, above: 0, max: 1, example: saddle, unit: '%' },
  ];
}

function lobeOf(uses: Uses, side: 'left' | 'right'): SaddleLobe {
  return {
    strapping: evenStrapping('saddleTank', `${side}.strapping`, uses[`${side}Strapping`] as string),
    emptyOhm: uses[`${side}EmptyOhm`] as number,
    fullOhm: uses[`${side}FullOhm`] as number,
    saddleFraction: uses[`${side}SaddleFraction`] as number,
  };
}

export const saddleTankCard = defineCard({
  name: 'saddleTank',
  area: 'level',
  question: 'What do two floats in one tank tell, and what do they hide?',
  page: 'two-floats-in-one-tank',
  fields: [
    ...fieldsOf('left', '0, 30', 0.5),
    ...fieldsOf('right', '0, 30', 0.5),
    {
      kind: 'choice',
      name: 'pumpSide',
      label: 'The pump draws from the',
      choices: [
        { value: 'left', label: 'left side' },
        { value: 'right', label: 'right side' },
      ],
      example: 'left',
    },
    {
      kind: 'choice',
      name: 'wiring',
      label: 'The senders are wired',
      choices: [
        { value: 'series', label: 'in series' },
        { value: 'parallel', label: 'in parallel' },
        { value: 'two-inputs', label: 'to two inputs' },
      ],
      example: 'parallel',
    },
    {
      kind: 'number',
      name: 'fixedOhm',
      label: 'Fixed resistor at the tank',
      min: 0,
      example: 0,
      help: 'In series with the wire. It tells a wire on ground from a full tank.',
    },
    { kind: 'number', name: 'biasV', above: 0, example: 5 },
    { kind: 'number', name: 'biasOhm', min: 0.001, max: 1e8, example: 180 },
    { kind: 'number', name: 'inputOhm', min: 0.001, max: 1e8, example: null, optional: true, unit: 'kΩ' },
    { kind: 'number', name: 'faultV', above: 0, example: 14.4 },
    { kind: 'number', name: 'guardV', label: 'A fault is told at a distance of', min: 0, example: 0.2, unit: 'mV' },
    seriesField('E12'),
  ],
  results: [
    { name: 'mostAmbiguityL', round: 'up', primary: true },
    { name: 'totalL', round: 'nearest', digits: 4, trim: true },
    { name: 'trappedL', round: 'up' },
    { name: 'lostOverL', round: 'up' },
    { name: 'lowestPinV', round: 'nearest', digits: 4 },
    { name: 'highestPinV', round: 'nearest', digits: 4 },
    { name: 'leastFixedOhm', round: 'up', digits: 4, trim: true },
  ],
  steps: [
    {
      result: 'fullSeenOhm',
      text: 'Both sides full, in parallel',
      formula: 'leftFullOhm * rightFullOhm / (leftFullOhm + rightFullOhm)',
      source: 'circuit-theory',
      when: (values) => values['wiring'] === 'parallel',
    },
    {
      result: 'fullSeenOhm',
      text: 'Both sides full, in series',
      formula: 'leftFullOhm + rightFullOhm',
      source: 'circuit-theory',
      when: (values) => values['wiring'] === 'series',
    },
    {
      result: 'fullV',
      text: 'The input then reads',
      formula: 'biasV * (fullSeenOhm + fixedOhm) / (fullSeenOhm + fixedOhm + biasOhm)',
      source: 'circuit-theory',
      when: (values) => values['wiring'] !== 'two-inputs' && typeof values['inputOhm'] !== 'number',
    },
    {
      result: 'mostAmbiguityL',
      text: 'Litres between the least and the most that one reading may mean',
      how: 'for each reading on the way from full to empty, all splits between the sides that give the same ohms',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'iec-60063'],
  cautions: ['fuel', 'local-code'],
  run: saddleTank,
  input: (uses): SaddleTankInput => ({
    ...(Object.fromEntries(
      Object.entries(uses).filter(([name]) => !/^(?:left|right)/.test(name)),
    ) as unknown as SaddleTankInput),
    inputOhm: (uses['inputOhm'] as number | undefined) ?? null,
    left: lobeOf(uses, 'left'),
    right: lobeOf(uses, 'right'),
  }),
  scope: (values, output) => {
    const l = Number(values['leftFullOhm']);
    const r = Number(values['rightFullOhm']);
    const wired = values['wiring'] === 'series' ? l + r : (l * r) / (l + r);
    const one = values['wiring'] !== 'two-inputs';
    return { fullSeenOhm: one ? wired : null, fullV: one ? (output.path[0]?.pinV[0] ?? null) : null };
  },
});
