import {
  coilsOnDriver,
  type CoilsOnDriverInput,
  InputError,
  relayMap,
  type RelayMapInput,
  relayPickup,
} from 'loomwright';
import { signedEntriesOf, unread } from '../entries.js';
import { defineCard, type Field, type Uses } from '../type.js';

const zero = { name: 'zeroTempC', symbol: 'T_0', value: 234.5, unit: 'K', source: 'automotive-relay-notes' } as const;

/** What a data sheet says of the coil. */
const coilFields: readonly Field[] = [
  { kind: 'number', name: 'coilResistanceOhm', above: 0, example: 90 },
  { kind: 'number', name: 'ratedPickUpV', above: 0, example: 7.2 },
  { kind: 'number', name: 'ratedDropOutV', min: 0, example: 1.6 },
  { kind: 'number', name: 'ratedTempC', min: -100, max: 400, example: 20 },
];
const wireField = {
  kind: 'number',
  name: 'wireResistanceOhm',
  min: 0,
  example: 0.5,
  label: "Coil's wires, out and back",
} as const;

const hot = {
  result: 'coilHotOhm',
  text: 'Resistance of the coil, hot',
  formula: 'coilResistanceOhm * (zeroTempC + coilTempC) / (zeroTempC + ratedTempC)',
  constants: [zero],
  source: 'automotive-relay-notes',
} as const;
const pickUp = {
  result: 'pickUpV',
  text: 'Volts that it needs, hot',
  formula: 'ratedPickUpV * (zeroTempC + coilTempC) / (zeroTempC + ratedTempC)',
  constants: [zero],
  source: 'automotive-relay-notes',
} as const;

export const relayPickupCard = defineCard({
  name: 'relayPickup',
  area: 'relay',
  question: 'Does this relay still pull in, hot and while cranking?',
  page: 'relays',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 9.5, label: 'Supply at the worst moment' },
    { kind: 'number', name: 'driverDropV', min: 0, example: 0.3 },
    wireField,
    ...coilFields,
    { kind: 'number', name: 'ambientTempC', min: -60, max: 200, example: 70, label: 'Air around the relay' },
    { kind: 'number', name: 'heatedByV', min: 0, max: 1000, example: 14.2 },
    { kind: 'number', name: 'thermalResistanceKPerW', min: 0, max: 1000, example: 30 },
  ],
  results: [
    { name: 'state', round: 'nearest', label: 'The relay', primary: true },
    { name: 'coilV', round: 'down' },
    { name: 'pickUpV', round: 'up' },
    { name: 'leastSupplyV', round: 'up' },
    { name: 'dropOutSupplyV', round: 'up' },
    { name: 'coilTempC', round: 'up' },
    { name: 'coilHotOhm', round: 'up' },
    { name: 'coilCurrentA', round: 'up', unit: 'mA' },
  ],
  steps: [
    {
      result: 'selfHeatingK',
      text: 'Heating of the coil by the volts that held it',
      formula: 'thermalResistanceKPerW * (heatedByV - driverDropV) ^ 2 / coilHotOhm',
      source: 'circuit-theory',
    },
    {
      result: 'coilTempC',
      text: 'Temperature of the coil',
      formula: 'ambientTempC + selfHeatingK',
      source: 'circuit-theory',
    },
    hot,
    pickUp,
    {
      result: 'coilCurrentA',
      text: 'Current that it gets',
      formula: '(supplyV - driverDropV) / (coilHotOhm + wireResistanceOhm)',
      source: 'circuit-theory',
    },
    { result: 'coilV', text: 'Volts that it gets', formula: 'coilCurrentA * coilHotOhm', source: 'circuit-theory' },
    {
      result: 'leastSupplyV',
      text: 'Least supply to pull in',
      formula: 'driverDropV + pickUpV * (coilHotOhm + wireResistanceOhm) / coilHotOhm',
      source: 'circuit-theory',
    },
  ],
  sources: ['automotive-relay-notes', 'circuit-theory'],
  cautions: ['local-code', 'prove-slowly'],
  run: relayPickup,
});

/** `7; 8; 9.5`: numbers parted by semicolons. */
function numberList(field: string, text: string): number[] {
  return signedEntriesOf(text).map((entry) => {
    if (!/^-?\d*\.?\d+$/.test(entry)) throw unread('relayMap', field, entry, '8; 9.5');
    return Number(entry);
  });
}

export const relayMapCard = defineCard({
  name: 'relayMap',
  area: 'relay',
  question: 'From which volts does a relay pull in, and down to which does it hold?',
  page: 'relays',
  fields: [
    { kind: 'number', name: 'driverDropV', min: 0, example: 0.3 },
    wireField,
    ...coilFields,
    { kind: 'text', name: 'suppliesV', example: '2; 4; 6; 8; 9; 10; 12; 14' },
    { kind: 'text', name: 'coilTempsC', example: '-40; 0; 40; 80; 120; 150' },
  ],
  results: [
    { name: 'leastSupplyV', round: 'up', label: 'Pulls in at the last temperature from', primary: true },
    { name: 'dropOutSupplyV', round: 'up', label: 'Lets go there at' },
    { name: 'firstLeastSupplyV', round: 'up' },
  ],
  steps: [
    hot,
    pickUp,
    {
      result: 'leastSupplyV',
      text: 'Supply from which it pulls in',
      formula: 'driverDropV + pickUpV * (coilHotOhm + wireResistanceOhm) / coilHotOhm',
      source: 'automotive-relay-notes',
    },
  ],
  sources: ['automotive-relay-notes'],
  cautions: ['local-code'],
  run: relayMap,
  input: (uses: Uses): RelayMapInput => ({
    ...(uses as unknown as RelayMapInput),
    suppliesV: numberList('suppliesV', uses['suppliesV'] as string),
    coilTempsC: numberList('coilTempsC', uses['coilTempsC'] as string),
  }),
  scope: (values, { rows }) => {
    const n = (name: string): number => values[name] as number;
    const first = rows[0];
    const last = rows.at(-1);
    if (first === undefined || last === undefined) return {};
    const ratio = (234.5 + last.coilTempC) / (234.5 + n('ratedTempC'));
    return {
      coilTempC: last.coilTempC,
      coilHotOhm: n('coilResistanceOhm') * ratio,
      pickUpV: n('ratedPickUpV') * ratio,
      leastSupplyV: last.leastSupplyV,
      dropOutSupplyV: last.dropOutSupplyV,
      firstLeastSupplyV: first.leastSupplyV,
    };
  },
});

export const coilsOnDriverCard = defineCard({
  name: 'coilsOnDriver',
  area: 'relay',
  question: 'Can one output work several relays?',
  page: 'relays',
  fields: [
    { kind: 'number', name: 'supplyV', above: 0, example: 10.5 },
    { kind: 'number', name: 'driverDropV', min: 0, example: 0.4 },
    { kind: 'number', name: 'sharedResistanceOhm', min: 0, example: 0.6 },
    { kind: 'number', name: 'driverMostA', above: 0, example: 0.5 },
    { kind: 'number', name: 'relayCount', example: 3 },
    ...coilFields,
    { kind: 'number', name: 'coilTempC', min: -60, max: 200, example: 85 },
    wireField,
    { kind: 'number', name: 'inductanceH', above: 0, example: 0.3, unit: 'mH' },
  ],
  results: [
    { name: 'currentA', round: 'up', label: 'Current of the driver', unit: 'mA', primary: true },
    { name: 'coilV', round: 'down' },
    { name: 'pickUpV', round: 'up' },
    { name: 'sharedDropV', round: 'up' },
    { name: 'energyJ', round: 'up', unit: 'mJ', label: 'Energy of all coils' },
  ],
  steps: [
    hot,
    pickUp,
    {
      result: 'currentA',
      text: 'Current of the driver',
      formula: '(supplyV - driverDropV) / (sharedResistanceOhm + (coilHotOhm + wireResistanceOhm) / relayCount)',
      source: 'circuit-theory',
    },
    {
      result: 'coilV',
      text: 'Volts of each coil',
      formula: 'currentA / relayCount * coilHotOhm',
      source: 'circuit-theory',
    },
    {
      result: 'energyJ',
      text: 'Energy of all coils',
      formula: '0.5 * inductanceH * relayCount * (currentA / relayCount) ^ 2',
      source: 'circuit-theory',
    },
  ],
  sources: ['automotive-relay-notes', 'circuit-theory'],
  cautions: ['local-code'],
  run: coilsOnDriver,
  input: (uses: Uses): CoilsOnDriverInput => {
    const n = (name: string): number => uses[name] as number;
    const count = n('relayCount');
    if (!Number.isInteger(count) || count < 1 || count > 20) {
      throw new InputError('coilsOnDriver', 'relayCount', 'range', count, 'must be a whole number from 1 to 20');
    }
    return {
      supplyV: n('supplyV'),
      driverDropV: n('driverDropV'),
      sharedResistanceOhm: n('sharedResistanceOhm'),
      driverMostA: n('driverMostA'),
      coils: Array.from({ length: count }, (_, i) => ({
        name: `relay ${i + 1}`,
        coilResistanceOhm: n('coilResistanceOhm'),
        ratedPickUpV: n('ratedPickUpV'),
        ratedDropOutV: n('ratedDropOutV'),
        ratedTempC: n('ratedTempC'),
        coilTempC: n('coilTempC'),
        wireResistanceOhm: n('wireResistanceOhm'),
        inductanceH: n('inductanceH'),
      })),
    };
  },
  scope: (values, { coils }) => ({
    coilHotOhm:
      ((values['coilResistanceOhm'] as number) * (234.5 + (values['coilTempC'] as number))) /
      (234.5 + (values['ratedTempC'] as number)),
    coilV: coils[0]?.coilV ?? null,
    pickUpV: coils[0]?.pickUpV ?? null,
  }),
});
