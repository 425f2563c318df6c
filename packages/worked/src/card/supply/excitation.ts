import { e12, e24, e6, type ExcitationResistorInput, excitationResistor, filamentLamp } from 'loomwright';
import { defineCard, type Values } from '../type.js';

const hasDiode = (values: Values): boolean => typeof values['diodeDropV'] === 'number';
const byHand = (values: Values): boolean => values['kind'] === 'field' && values['countLamp'] === false;

export const excitationResistorCard = defineCard({
  name: 'excitationResistor',
  area: 'supply',
  question: 'Which resistor belongs beside the charge lamp, and what does the lamp show?',
  page: 'alternator-and-charge-lamp',
  fields: [
    {
      kind: 'choice',
      name: 'kind',
      label: 'The terminal is',
      choices: [
        { value: 'field', label: 'D+: the lamp feeds the rotor' },
        { value: 'driver', label: 'L: a switch in the regulator' },
        { value: 'self-exciting', label: 'none: one wire, excites itself' },
        { value: 'by-bus', label: 'a bus or control line' },
      ],
      example: 'field',
    },
    {
      kind: 'number',
      name: 'neededA',
      above: 0,
      example: 0.2,
      help: '0.15 to 0.3 A for D+, tens of mA for L. Ask the maker.',
    },
    { kind: 'number', name: 'rotorOhm', above: 0, example: 3.5, help: 'For D+.' },
    { kind: 'number', name: 'regulatorDropV', min: 0, example: 1.2, label: 'Drop of its transistor or switch' },
    { kind: 'number', name: 'driverMostA', example: 0.5, label: 'Its switch bears', help: 'For L.' },
    {
      kind: 'number',
      name: 'chargingV',
      above: 0,
      example: 14.2,
      optional: true,
      help: 'Empty where it floats (some L).',
    },
    { kind: 'number', name: 'selfExcitationRpm', above: 0, example: 2400, optional: true },
    { kind: 'number', name: 'ignitionV', above: 0, example: 11.8 },
    { kind: 'number', name: 'runningV', above: 0, example: 14.3 },
    { kind: 'number', name: 'lampPowerW', above: 0, example: 2, optional: true },
    { kind: 'number', name: 'lampRatedV', example: 12 },
    { kind: 'number', name: 'ledForwardV', above: 0, example: null, optional: true },
    { kind: 'number', name: 'ledSeriesOhm', example: 680 },
    { kind: 'number', name: 'ledFullA', example: 0.015, unit: 'mA' },
    {
      kind: 'choice',
      name: 'fit',
      label: 'Resistor beside them',
      choices: [
        { value: 'choose', label: 'choose it' },
        { value: 'none', label: 'none' },
      ],
      example: 'choose',
    },
    {
      kind: 'number',
      name: 'givenResistorOhm',
      above: 0,
      example: null,
      optional: true,
    },
    {
      kind: 'choice',
      name: 'series',
      choices: [
        { value: 'e6', label: 'E6', use: e6, identifier: 'e6' },
        { value: 'e12', label: 'E12', use: e12, identifier: 'e12' },
        { value: 'e24', label: 'E24', use: e24, identifier: 'e24' },
      ],
      example: 'e12',
    },
    { kind: 'number', name: 'toleranceFraction', min: 0, example: 0.05, unit: '%' },
    { kind: 'flag', name: 'countLamp', label: 'Lamp and LED count towards the excitation', example: false },
    {
      kind: 'number',
      name: 'diodeDropV',
      above: 0,
      example: 0.8,
      optional: true,
      help: 'Lets current go to the alternator only. Empty for none.',
    },
    {
      kind: 'number',
      name: 'ignitionLoadOhm',
      above: 0,
      example: 15,
      optional: true,
      help: 'Empty: back-feed is not judged.',
    },
    { kind: 'number', name: 'ignitionHoldV', above: 0, example: 4 },
  ],
  results: [
    { name: 'resistorOhm', round: 'nearest', digits: 3, trim: true, primary: true },
    { name: 'leastRatingW', round: 'up' },
    { name: 'excitationA', round: 'down' },
    { name: 'lampDeadA', round: 'down' },
    { name: 'exactOhm', round: 'down' },
    { name: 'resistorW', round: 'up' },
    { name: 'groundedW', round: 'up' },
    { name: 'backFeedV', round: 'up' },
    { name: 'selfExcitationRpm', round: 'up' },
  ],
  steps: [
    {
      result: 'exactOhm',
      text: 'Resistance that just gives the current at the lowest volts',
      formula: '(ignitionV - regulatorDropV - diodeDropV - neededA * rotorOhm) / neededA',
      source: 'circuit-theory',
      when: (values) => byHand(values) && hasDiode(values),
    },
    {
      result: 'exactOhm',
      text: 'Resistance that just gives the current at the lowest volts',
      formula: '(ignitionV - regulatorDropV - neededA * rotorOhm) / neededA',
      source: 'circuit-theory',
      when: (values) => byHand(values) && !hasDiode(values),
    },
    {
      result: 'resistorOhm',
      text: 'Largest of the series below it, at the high end of its tolerance',
      how: 'rounded down, so that the excitation is safe',
      source: 'iec-60063',
    },
    {
      result: 'groundedW',
      text: 'Its heat with the wire grounded, at the low end',
      formula: '(runningV - diodeDropV) ^ 2 / (resistorOhm * (1 - toleranceFraction))',
      source: 'circuit-theory',
      when: hasDiode,
    },
    {
      result: 'groundedW',
      text: 'Its heat with the wire grounded, at the low end',
      formula: 'runningV ^ 2 / (resistorOhm * (1 - toleranceFraction))',
      source: 'circuit-theory',
      when: (values) => !hasDiode(values),
    },
    {
      result: 'leastRatingW',
      text: 'Rating, for a key left on',
      formula: '2 * resistorW',
      source: 'common-practice',
    },
  ],
  sources: ['circuit-theory', 'lamp-rerating', 'iec-60063', 'common-practice'],
  cautions: ['battery', 'isolator', 'local-code'],
  run: excitationResistor,
  identifiers: { filamentLamp },
  input: (uses): ExcitationResistorInput => {
    const number = (name: string): number => uses[name] as number;
    const orNull = (name: string): number | null => (uses[name] as number | undefined) ?? null;
    const rpm = orNull('selfExcitationRpm');
    const self = rpm === null ? {} : { selfExcitationRpm: rpm };
    const kind = uses['kind'] as string;
    const lampPowerW = orNull('lampPowerW');
    const forwardV = orNull('ledForwardV');
    return {
      alternator:
        kind === 'field'
          ? {
              kind,
              rotorOhm: number('rotorOhm'),
              regulatorDropV: number('regulatorDropV'),
              neededA: number('neededA'),
              chargingV: number('chargingV'),
              ...self,
            }
          : kind === 'driver'
            ? {
                kind,
                driverDropV: number('regulatorDropV'),
                driverMostA: number('driverMostA'),
                neededA: number('neededA'),
                chargingV: orNull('chargingV'),
                ...self,
              }
            : { kind: 'no-wire', control: kind as 'self-exciting' | 'by-bus', ...self },
      ignitionV: number('ignitionV'),
      runningV: number('runningV'),
      lamp: lampPowerW === null ? null : { ratedPowerW: lampPowerW, ratedV: number('lampRatedV'), law: filamentLamp },
      led: forwardV === null ? null : { forwardV, seriesOhm: number('ledSeriesOhm'), fullA: number('ledFullA') },
      resistor: orNull('givenResistorOhm') ?? (uses['fit'] as 'choose' | 'none'),
      series: uses['series'] as ExcitationResistorInput['series'],
      toleranceFraction: number('toleranceFraction'),
      countLamp: uses['countLamp'] as boolean,
      diodeDropV: orNull('diodeDropV'),
      ignitionLoadOhm: orNull('ignitionLoadOhm'),
      ignitionHoldV: number('ignitionHoldV'),
    };
  },
  scope: (_, output) => ({ backFeedV: output.possible ? (output.backFeed?.nodeV ?? null) : null }),
});
