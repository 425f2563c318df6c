import {
  ac4313Switch12V,
  ac4313Switch28V,
  checkRelay,
  type CheckRelayInput,
  coilSuppression,
  type CoilSuppressionInput,
  contactShare,
  type ContactRatioTable,
  type ContactShareInput,
  milPrf22885Rating,
  milR5757Lamp,
  relayMakerInrush,
  relayMakerRating,
  relayModuleInrush,
  type Suppressor,
  switchMakerRating,
} from 'loomwright';
import { type Choice, defineCard, type Uses } from '../type.js';

const choice = (table: ContactRatioTable, identifier: string, label: string): Choice => ({
  value: table.key,
  label,
  use: table,
  identifier,
});

export const checkRelayCard = defineCard({
  name: 'checkRelay',
  area: 'relay',
  question: 'Does this contact stand its load?',
  page: 'relays',
  fields: [
    {
      kind: 'choice',
      name: 'load',
      label: 'What hangs on it',
      choices: [
        { value: 'resistive', label: 'Heater, resistor' },
        { value: 'lamp', label: 'Filament lamps' },
        { value: 'motor', label: 'Motor' },
        { value: 'inductive', label: 'Coils' },
        { value: 'solenoid', label: 'Solenoid' },
        { value: 'capacitor', label: 'Electronics with a capacitor' },
      ],
      example: 'lamp',
    },
    { kind: 'number', name: 'currentA', above: 0, example: 9.2, label: 'Running current' },
    { kind: 'number', name: 'supplyV', above: 0, example: 14 },
    {
      kind: 'choice',
      name: 'ratingRule',
      label: 'Rule for the rating',
      choices: [
        choice(ac4313Switch12V, 'ac4313Switch12V', 'AC 43.13-1B, 12 V d.c.'),
        choice(ac4313Switch28V, 'ac4313Switch28V', 'AC 43.13-1B, 28 V d.c.'),
        choice(switchMakerRating, 'switchMakerRating', 'Switch makers: lamp 10, motor 6 times'),
        choice(relayMakerRating, 'relayMakerRating', 'Relay makers: lamp a fifth of the rating'),
        choice(milPrf22885Rating, 'milPrf22885Rating', 'MIL-PRF-22885: coils 4 of 7 A'),
      ],
      example: ac4313Switch12V.key,
    },
    { kind: 'number', name: 'ratedA', above: 0, example: 40, label: 'Rating of the contact' },
    { kind: 'number', name: 'contactRatedV', above: 0, example: 14 },
    { kind: 'number', name: 'ambientTempC', min: -273.15, max: 2000, example: 70, label: 'Air around the relay' },
    { kind: 'number', name: 'fullToTempC', min: -273.15, example: 85 },
    { kind: 'number', name: 'noneAtTempC', max: 2000, example: 125 },
    {
      kind: 'choice',
      name: 'inrushRule',
      label: 'Rule for the first current',
      choices: [
        choice(relayModuleInrush, 'relayModuleInrush', 'Manual of relay modules: lamp 10 to 15 times'),
        choice(relayMakerInrush, 'relayMakerInrush', 'Relay makers: motor 6, lamp 10 to 15 times'),
        choice(milR5757Lamp, 'milR5757Lamp', 'MIL-R-5757: lamp 12 times'),
      ],
      example: relayModuleInrush.key,
    },
    { kind: 'number', name: 'makeA', above: 0, optional: true, example: 120 },
  ],
  results: [
    { name: 'neededRatingA', round: 'up', primary: true },
    { name: 'contactRatingA', round: 'down' },
    { name: 'ratio', round: 'up', label: 'Ratio of the rule', trim: true },
    { name: 'ambientFactor', round: 'down', label: 'Share left by the heat' },
    { name: 'inrushLowA', round: 'down' },
    { name: 'inrushHighA', round: 'up' },
  ],
  steps: [
    {
      result: 'neededRatingA',
      text: 'Resistive rating that the rule asks for',
      formula: 'ratio * currentA',
      source: 'ac-43-13-1b',
      sourceOf: (output: { readonly checks: readonly { readonly source: 'ac-43-13-1b' }[] }) =>
        output.checks[0]?.source ?? 'ac-43-13-1b',
    },
    {
      result: 'ambientFactor',
      text: 'Share of the rating that the heat leaves',
      how: 'straight between full and nothing',
      source: 'automotive-relay-notes',
    },
    {
      result: 'contactRatingA',
      text: 'What is left of the rating',
      formula: 'ratedA * ambientFactor * voltageFactor',
      source: 'automotive-relay-notes',
    },
  ],
  sources: [
    'ac-43-13-1b',
    'switch-maker-guides',
    'automotive-relay-notes',
    'mil-prf-22885',
    'relay-module-manual',
    'mil-r-5757',
  ],
  cautions: ['local-code'],
  run: checkRelay,
  input: (uses: Uses): CheckRelayInput => {
    const { contactRatedV, ...rest } = uses;
    return { ...(rest as unknown as CheckRelayInput), ratedV: contactRatedV as number };
  },
  scope: (_, { ratingA }) => ({ contactRatingA: ratingA }),
});

export const coilSuppressionCard = defineCard({
  name: 'coilSuppression',
  area: 'relay',
  question: 'What does the driver see as a coil is switched off, and how late does it let go?',
  page: 'relays',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 14.4 },
    { kind: 'number', name: 'coilResistanceOhm', above: 0, example: 90 },
    { kind: 'number', name: 'inductanceH', above: 0, example: 0.3, unit: 'mH' },
    { kind: 'number', name: 'releaseA', above: 0, example: 0.02, unit: 'mA' },
    { kind: 'number', name: 'mechanicalS', min: 0, example: 0.0015, unit: 'ms' },
    { kind: 'number', name: 'driverMostV', above: 0, example: 60 },
    {
      kind: 'choice',
      name: 'suppressor',
      label: 'Across the coil',
      choices: [
        { value: 'diode-zener', label: 'Diode and zener diode' },
        { value: 'diode', label: 'Diode' },
        { value: 'resistor', label: 'Resistor' },
        { value: 'tvs', label: 'TVS' },
        { value: 'none', label: 'Nothing' },
      ],
      example: 'diode-zener',
    },
    { kind: 'number', name: 'forwardV', min: 0, example: 0.8 },
    { kind: 'number', name: 'zenerV', min: 0, example: 24, label: 'Zener diode or TVS clamps at' },
    { kind: 'number', name: 'suppressorOhm', example: 680 },
  ],
  results: [
    { name: 'peakDriverV', round: 'up', primary: true },
    { name: 'releaseS', round: 'up', unit: 'ms' },
    { name: 'decayS', round: 'up', unit: 'ms' },
    { name: 'coilA', round: 'up', unit: 'mA' },
    { name: 'energyJ', round: 'up', unit: 'mJ', label: 'Energy in the coil' },
    { name: 'suppressorJ', round: 'up', unit: 'mJ' },
    { name: 'standingW', round: 'up' },
  ],
  steps: [
    { result: 'coilA', text: 'Current of the coil', formula: 'supplyV / coilResistanceOhm', source: 'circuit-theory' },
    {
      result: 'energyJ',
      text: 'Energy in the coil',
      formula: '0.5 * inductanceH * coilA ^ 2',
      source: 'circuit-theory',
    },
    {
      result: 'peakCoilV',
      text: 'Across the coil, reversed',
      formula: 'coilA * suppressorOhm',
      source: 'circuit-theory',
      when: ({ suppressor }) => suppressor === 'resistor',
    },
    {
      result: 'peakDriverV',
      text: 'At the driver: supply and clamp in series',
      formula: 'supplyV + peakCoilV',
      source: 'circuit-theory',
      when: ({ suppressor }) => suppressor !== 'none',
    },
    {
      result: 'decayS',
      text: 'Until the armature lets go',
      formula:
        '(inductanceH / coilResistanceOhm) * log((coilA * coilResistanceOhm + peakCoilV) / (releaseA * coilResistanceOhm + peakCoilV))',
      source: 'circuit-theory',
      when: ({ suppressor }) => suppressor !== 'none' && suppressor !== 'resistor',
    },
    {
      result: 'decayS',
      text: 'Until the armature lets go',
      formula: 'inductanceH / (coilResistanceOhm + suppressorOhm) * log(coilA / releaseA)',
      source: 'circuit-theory',
      when: ({ suppressor }) => suppressor === 'resistor',
    },
    {
      result: 'releaseS',
      text: 'Until the contact is open',
      formula: 'decayS + mechanicalS',
      source: 'circuit-theory',
    },
  ],
  sources: ['automotive-relay-notes', 'circuit-theory'],
  cautions: ['local-code'],
  run: coilSuppression,
  input: (uses: Uses): CoilSuppressionInput => {
    const n = (name: string): number => uses[name] as number;
    return {
      supplyV: n('supplyV'),
      coilResistanceOhm: n('coilResistanceOhm'),
      inductanceH: n('inductanceH'),
      releaseA: n('releaseA'),
      mechanicalS: n('mechanicalS'),
      driverMostV: n('driverMostV'),
      suppressor: suppressorOf(uses),
    };
  },
});

function suppressorOf(uses: Uses): Suppressor {
  const n = (name: string): number => uses[name] as number;
  switch (uses['suppressor']) {
    case 'diode':
      return { kind: 'diode', forwardV: n('forwardV') };
    case 'diode-zener':
      return { kind: 'diode-zener', forwardV: n('forwardV'), zenerV: n('zenerV') };
    case 'resistor':
      return { kind: 'resistor', resistanceOhm: n('suppressorOhm') };
    case 'tvs':
      return { kind: 'tvs', clampV: n('zenerV'), place: 'coil' };
    default:
      return { kind: 'none' };
  }
}

export const contactShareCard = defineCard({
  name: 'contactShare',
  area: 'relay',
  question: 'How do two relays side by side share a current?',
  page: 'relays',
  fields: [
    { kind: 'number', name: 'currentA', above: 0, example: 60 },
    { kind: 'number', name: 'firstContactOhm', above: 0, example: 0.002, unit: 'mΩ' },
    { kind: 'number', name: 'secondContactOhm', above: 0, example: 0.006, unit: 'mΩ' },
    { kind: 'number', name: 'ratedA', above: 0, optional: true, example: 40, label: 'Rating of each' },
  ],
  results: [
    { name: 'firstContactA', round: 'up', primary: true },
    { name: 'secondContactA', round: 'up' },
    { name: 'dropV', round: 'up', unit: 'mV' },
    { name: 'lossW', round: 'up', label: 'Heat in both' },
    { name: 'aloneA', round: 'up' },
  ],
  steps: [
    {
      result: 'firstContactA',
      text: 'Share of the first',
      formula: 'currentA * secondContactOhm / (firstContactOhm + secondContactOhm)',
      source: 'circuit-theory',
    },
    {
      result: 'secondContactA',
      text: 'Share of the second',
      formula: 'currentA * firstContactOhm / (firstContactOhm + secondContactOhm)',
      source: 'circuit-theory',
    },
    { result: 'dropV', text: 'Volts lost', formula: 'firstContactA * firstContactOhm', source: 'circuit-theory' },
  ],
  sources: ['circuit-theory'],
  cautions: ['local-code'],
  run: contactShare,
  input: (uses: Uses): ContactShareInput => {
    const rating = uses['ratedA'] === undefined ? {} : { ratedA: uses['ratedA'] as number };
    return {
      currentA: uses['currentA'] as number,
      contacts: [
        { name: 'first', resistanceOhm: uses['firstContactOhm'] as number, ...rating },
        { name: 'second', resistanceOhm: uses['secondContactOhm'] as number, ...rating },
      ],
    };
  },
  scope: (_, { parts }) => ({
    firstContactA: parts[0]?.currentA ?? null,
    secondContactA: parts[1]?.currentA ?? null,
  }),
});
