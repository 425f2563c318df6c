import { filamentLamp, halogenLamp, lampAtVoltage, type LampLaw, lampInrush } from 'loomwright';
import { defineCard } from '../type.js';

const laws = [
  { value: filamentLamp.key, label: 'Filament lamp', use: filamentLamp, identifier: 'filamentLamp' },
  { value: halogenLamp.key, label: 'Halogen lamp', use: halogenLamp, identifier: 'halogenLamp' },
];
const lawOf = (key: unknown): LampLaw => (key === halogenLamp.key ? halogenLamp : filamentLamp);

export const lampAtVoltageCard = defineCard({
  name: 'lampAtVoltage',
  area: 'load',
  question: 'How much light is left when volts are lost?',
  page: 'lamps',
  fields: [
    { kind: 'number', name: 'ratedPowerW', above: 0, example: 21 },
    { kind: 'number', name: 'ratedV', above: 0, example: 13.5, label: 'Volts of that power' },
    { kind: 'number', name: 'lampV', above: 0, example: 12.9 },
    { kind: 'choice', name: 'law', label: 'Kind of lamp', choices: laws, example: filamentLamp.key },
    { kind: 'number', name: 'ratedLightLumen', min: 0, optional: true, example: 460 },
    { kind: 'number', name: 'ratedLifeTimeH', min: 0, optional: true, example: 300 },
  ],
  results: [
    { name: 'lightFraction', round: 'down', primary: true },
    { name: 'lightLumen', round: 'down' },
    { name: 'currentA', round: 'up', digits: 4 },
    { name: 'powerW', round: 'up' },
    { name: 'lifeFraction', round: 'down' },
    { name: 'lifeTimeH', round: 'down' },
    { name: 'colourFraction', round: 'nearest' },
  ],
  steps: [
    { result: 'ratedA', text: 'Current at the rated volts', formula: 'ratedPowerW / ratedV', source: 'circuit-theory' },
    {
      result: 'currentA',
      text: 'Current at these volts',
      formula: 'ratedA * (lampV / ratedV) ^ currentExponent',
      source: 'lamp-rerating',
    },
    { result: 'powerW', text: 'Power', formula: 'lampV * currentA', source: 'circuit-theory' },
    {
      result: 'lightFraction',
      text: 'Light, by the exponent that leaves less',
      formula: '(lampV / ratedV) ^ lightExponent',
      source: 'lamp-rerating',
    },
    {
      result: 'lifeFraction',
      text: 'Life, by the exponent that leaves less',
      formula: '(ratedV / lampV) ^ lifeExponent',
      source: 'lamp-rerating',
      when: ({ law }) => law === filamentLamp.key,
    },
  ],
  sources: ['lamp-rerating', 'un-r37'],
  cautions: ['local-code'],
  run: lampAtVoltage,
  scope: ({ law, lampV, ratedV }, _) => {
    const { currentExponent, lightExponents, lifeExponents } = lawOf(law);
    const under = (lampV as number) < (ratedV as number);
    return {
      currentExponent,
      lightExponent: lightExponents[under ? 1 : 0],
      lifeExponent: lifeExponents === null ? null : lifeExponents[under ? 0 : 1],
    };
  },
});

export const lampInrushCard = defineCard({
  name: 'lampInrush',
  area: 'load',
  question: 'How large is the surge of a lamp as it is switched on?',
  page: 'lamps',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 13.8 },
    {
      kind: 'number',
      name: 'loopResistanceOhm',
      min: 0,
      example: 0.08,
      unit: 'mΩ',
      help: 'Out and back, with battery, fuse and contacts.',
    },
    { kind: 'number', name: 'ratedPowerW', above: 0, example: 110, help: 'Of all lamps switched together.' },
    { kind: 'number', name: 'ratedV', above: 0, example: 12, label: 'Volts of that power' },
    { kind: 'number', name: 'hotOverColdRatio', min: 2, max: 25, example: 12 },
    { kind: 'number', name: 'ambientTempC', min: -60, max: 200, example: 20, label: 'Lamp before' },
    {
      kind: 'number',
      name: 'warmUpS',
      above: 0,
      example: 0.1,
      unit: 'ms',
      help: 'Until a lamp by itself is within 10 % of its steady current: 100 ms for a headlamp, less for a small lamp.',
    },
  ],
  results: [
    { name: 'peakA', round: 'up', primary: true },
    { name: 'inrushRatio', round: 'up' },
    { name: 'steadyA', round: 'up' },
    { name: 'doubleS', round: 'up', unit: 'ms' },
    { name: 'settledS', round: 'up', unit: 'ms' },
    { name: 'rmsA', round: 'up', label: 'R.m.s. of the surge' },
    { name: 'meanA', round: 'up', label: 'Mean of the surge' },
    { name: 'i2tA2s', round: 'up', label: 'I²t of the surge' },
    { name: 'firstLampV', round: 'down' },
  ],
  steps: [
    {
      result: 'coldResistanceOhm',
      text: 'Resistance of the cold filament',
      formula:
        'ratedV ^ 2 / (ratedPowerW * hotOverColdRatio) * ((absoluteTempC + ambientTempC) / (absoluteTempC + roomTempC)) ^ 1.2',
      constants: [
        { name: 'absoluteTempC', symbol: 'T_K', value: 273.15, unit: 'K', source: 'tungsten-filament' },
        { name: 'roomTempC', symbol: 'T_{20}', value: 20, unit: 'K', source: 'tungsten-filament' },
      ],
      source: 'tungsten-filament',
    },
    {
      result: 'peakA',
      text: 'First current',
      formula: 'supplyV / (loopResistanceOhm + coldResistanceOhm)',
      source: 'circuit-theory',
    },
    {
      result: 'steadyA',
      text: 'Steady current',
      how: 'where the heat made is the heat radiated',
      source: 'tungsten-filament',
    },
    { result: 'inrushRatio', text: 'Surge over steady', formula: 'peakA / steadyA', source: 'circuit-theory' },
    {
      result: 'settledS',
      text: 'Time to within a tenth',
      how: 'heat stored over heat gained, integrated over the temperature',
      source: 'tungsten-filament',
    },
    { result: 'i2tA2s', text: 'What the fuse feels', formula: 'rmsA ^ 2 * settledS', source: 'circuit-theory' },
    {
      result: 'firstLampV',
      text: 'Volts at the lamp in the first moment',
      formula: 'peakA * coldResistanceOhm',
      source: 'circuit-theory',
    },
  ],
  sources: ['tungsten-filament', 'lamp-rerating', 'switch-maker-guides', 'relay-module-manual', 'mil-r-5757'],
  cautions: ['local-code'],
  run: lampInrush,
});
