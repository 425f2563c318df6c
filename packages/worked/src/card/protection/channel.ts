import { checkChannel, type CheckChannelInput, type SolidStateChannel } from 'loomwright';
import { defineCard } from '../type.js';
import { wireFields, wireOf } from './fields.js';

export const checkChannelCard = defineCard({
  name: 'checkChannel',
  area: 'protection',
  question: 'Does this load start on a solid-state output, and does a stall trip it in time?',
  page: 'solid-state-channels',
  fields: [
    { kind: 'number', name: 'runA', above: 0, example: 8 },
    { kind: 'number', name: 'startCurrentA', min: 0, example: 38 },
    { kind: 'number', name: 'startS', above: 0, example: 0.08, unit: 'ms' },
    { kind: 'number', name: 'stallA', above: 0, label: 'Current when held fast', optional: true, example: 38 },
    {
      kind: 'choice',
      name: 'tripKind',
      choices: [
        { value: 'threshold', label: 'Above a current for a while' },
        { value: 'i2t', label: 'When the heat adds up (electronic fuse)' },
      ],
      example: 'i2t',
    },
    { kind: 'number', name: 'tripA', above: 0, example: 15 },
    { kind: 'number', name: 'delayS', label: 'For as long as', example: 0.1, unit: 'ms', help: 'For a threshold.' },
    { kind: 'number', name: 'tripI2tA2s', above: 0, example: 250, help: 'For adding heat.' },
    {
      kind: 'number',
      name: 'currentLimitA',
      above: 0,
      optional: true,
      example: null,
      help: 'Empty where it does not hold back.',
    },
    { kind: 'number', name: 'coldRatedA', min: 0, example: 15 },
    { kind: 'number', name: 'hotRatedA', min: 0, example: 9 },
    { kind: 'number', name: 'moduleTempC', min: -60, max: 85, example: 60 },
    { kind: 'number', name: 'onResistanceOhm', above: 0, example: 0.006, unit: 'mΩ' },
    { kind: 'number', name: 'leakageA', min: 0, label: 'Leaks while off', example: 0.0003, unit: 'mA' },
    {
      kind: 'number',
      name: 'glowA',
      above: 0,
      optional: true,
      example: null,
      unit: 'mA',
      help: 'Empty for other loads.',
    },
    {
      kind: 'number',
      name: 'glowV',
      above: 0,
      optional: true,
      example: null,
      help: 'With the current at which it glows.',
    },
    { kind: 'number', name: 'inductanceH', min: 0, example: 0.0003, unit: 'mH' },
    { kind: 'flag', name: 'freewheel', example: false },
    { kind: 'number', name: 'clampV', above: 0, label: 'Clamps at', symbol: 'V_c', optional: true, example: 40 },
    { kind: 'number', name: 'clampEnergyJ', above: 0, optional: true, example: 0.4 },
    { kind: 'number', name: 'supplyV', above: 0, example: 14.4 },
    { kind: 'number', name: 'ampacityA', above: 0, example: 18 },
    ...wireFields({ areaMm2: 1, ambientTempC: 50, maxConductorTempC: 105, overloadTempC: 130, shortTempC: 250 }),
    { kind: 'number', name: 'bankMostA', above: 0, optional: true, example: 40 },
    { kind: 'number', name: 'bankOthersA', min: 0, optional: true, example: 25 },
    {
      kind: 'number',
      name: 'firstOhm',
      min: 0,
      label: 'Wire of the first output',
      optional: true,
      example: null,
      unit: 'mΩ',
      help: 'With the second wire: two outputs joined at the load.',
    },
    { kind: 'number', name: 'secondOhm', min: 0, optional: true, example: null, unit: 'mΩ' },
  ],
  results: [
    { name: 'ok', round: 'nearest', label: 'Every limit is met', primary: true },
    { name: 'startTripsAfterS', round: 'down' },
    { name: 'stallTripsAfterS', round: 'up' },
    { name: 'stallBearsS', round: 'down' },
    { name: 'ratedA', round: 'down', label: 'Rated at this temperature' },
    { name: 'shareA', round: 'up' },
    { name: 'otherTripsAfterS', round: 'up' },
    { name: 'switchOffEnergyJ', round: 'up' },
    { name: 'bleedResistanceOhm', round: 'down' },
  ],
  steps: [
    {
      result: 'ratedA',
      text: 'Rating at the temperature of the module',
      formula: 'coldRatedA + (hotRatedA - coldRatedA) * (moduleTempC - coldTempC) / (hotTempC - coldTempC)',
      constants: [
        { name: 'coldTempC', symbol: 'T_1', value: 25, unit: 'K', source: 'given-by-caller' },
        { name: 'hotTempC', symbol: 'T_2', value: 85, unit: 'K', source: 'given-by-caller' },
      ],
      source: 'circuit-theory',
      when: (values) => (values['moduleTempC'] as number) > 25,
    },
    {
      result: 'stallTripsAfterS',
      text: 'A stall trips it after',
      formula: 'tripI2tA2s / (stallA^2 - tripA^2)',
      source: 'circuit-theory',
      when: (values) =>
        values['tripKind'] === 'i2t' &&
        typeof values['stallA'] === 'number' &&
        typeof values['currentLimitA'] !== 'number' &&
        typeof values['firstOhm'] !== 'number',
    },
    {
      result: 'switchOffEnergyJ',
      text: 'Energy in the switch when it opens on the largest current',
      formula: 'inductanceH * largestA^2 / 2 * clampV / (clampV - supplyV)',
      source: 'circuit-theory',
      when: (values) => typeof values['clampV'] === 'number',
    },
    {
      result: 'bleedResistanceOhm',
      text: 'Largest resistor that keeps the LED dark',
      formula: 'glowV / leakageA',
      source: 'circuit-theory',
      when: (values) => typeof values['glowV'] === 'number',
    },
  ],
  sources: ['circuit-theory', 'iec-60949'],
  cautions: ['local-code', 'stored-heat'],
  run: checkChannel,
  input: (uses): CheckChannelInput => {
    const n = (name: string): number => uses[name] as number;
    const or = (name: string): number | null => (uses[name] as number | undefined) ?? null;
    const trip: SolidStateChannel['trip'] =
      uses['tripKind'] === 'i2t'
        ? { kind: 'i2t', carryA: n('tripA'), i2tA2s: n('tripI2tA2s') }
        : { kind: 'threshold', tripA: n('tripA'), delayS: n('delayS') };
    return {
      channel: {
        ratedByTempC: [
          [25, n('coldRatedA')],
          [85, n('hotRatedA')],
        ],
        onResistanceOhm: n('onResistanceOhm'),
        currentLimitA: or('currentLimitA'),
        trip,
        retry: null,
        leakageA: n('leakageA'),
        clampV: or('clampV'),
        clampEnergyJ: or('clampEnergyJ'),
        pwm: null,
      },
      load: {
        runA: n('runA'),
        startSteps: [{ currentA: n('startCurrentA'), durationS: n('startS') }],
        stallA: or('stallA'),
        inductanceH: n('inductanceH'),
        freewheel: uses['freewheel'] as boolean,
        glow: or('glowA') === null && or('glowV') === null ? null : { glowA: n('glowA'), glowV: n('glowV') },
      },
      supplyV: n('supplyV'),
      moduleTempC: n('moduleTempC'),
      ampacityA: n('ampacityA'),
      wire: wireOf(uses),
      bank: or('bankMostA') === null ? null : { mostA: n('bankMostA'), othersA: or('bankOthersA') ?? 0 },
      module: null,
      drive: null,
      parallel:
        or('firstOhm') === null && or('secondOhm') === null
          ? null
          : { firstOhm: n('firstOhm'), secondOhm: n('secondOhm') },
    };
  },
  scope: (values, output) => {
    const { switchOffEnergyJ } = output;
    const { inductanceH, clampV, supplyV } = values;
    const known = switchOffEnergyJ !== null && typeof clampV === 'number' && typeof inductanceH === 'number';
    return {
      largestA: known
        ? Math.sqrt((2 * switchOffEnergyJ * (clampV - (supplyV as number))) / (clampV * inductanceH))
        : null,
    };
  },
});
