import { bladeFuse, fuseDropCurrent, largeBladeFuse, miniFuse, restingDrain, type RestingDrainInput } from 'loomwright';
import { defineCard } from '../type.js';
import { drainList, restFuseList } from './lists.js';
import { restEnd, restEndFields } from './rest-end.js';

const families = [
  { value: bladeFuse.key, label: 'Blade, medium', use: bladeFuse, identifier: 'bladeFuse' },
  { value: miniFuse.key, label: 'Blade, small', use: miniFuse, identifier: 'miniFuse' },
  { value: largeBladeFuse.key, label: 'Blade, large', use: largeBladeFuse, identifier: 'largeBladeFuse' },
];

const ratings = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40].map((amps) => ({
  value: String(amps),
  label: `${amps} A`,
  use: amps,
}));

const tolerance = {
  kind: 'number',
  name: 'fuseToleranceFraction',
  min: 0,
  example: 0.15,
  unit: '%',
  help: 'Makers differ by about 15 %.',
} as const;

export const fuseDropCurrentCard = defineCard({
  name: 'fuseDropCurrent',
  area: 'supply',
  question: 'What flows through a fuse, by the millivolts across it?',
  page: 'drain',
  fields: [
    { kind: 'choice', name: 'family', label: 'Kind of fuse', choices: families, example: bladeFuse.key },
    { kind: 'choice', name: 'ratingA', choices: ratings, example: '10' },
    { kind: 'number', name: 'dropMv', min: 0, max: 1000, example: 1 },
    tolerance,
  ],
  results: [
    { name: 'currentA', round: 'nearest', primary: true, label: 'Typical current' },
    { name: 'lowA', round: 'down' },
    { name: 'highA', round: 'up' },
    { name: 'coldOhm', label: 'Cold fuse', round: 'nearest' },
    { name: 'currentAPerMv', round: 'nearest' },
    { name: 'warmFraction', round: 'up' },
  ],
  steps: [
    {
      result: 'coldOhm',
      text: 'Resistance of the cold fuse',
      how: 'looked up for its kind and rating',
      source: 'iso-8820-3',
    },
    { result: 'currentA', text: 'Current that makes this drop', formula: 'dropMv / coldOhm', source: 'circuit-theory' },
    {
      result: 'lowA',
      text: 'The same on a fuse at the upper end of its tolerance',
      formula: 'currentA / (1 + fuseToleranceFraction)',
      source: 'circuit-theory',
    },
    {
      result: 'highA',
      text: 'And at the lower',
      formula: 'currentA / (1 - fuseToleranceFraction)',
      source: 'circuit-theory',
    },
  ],
  sources: ['fuse-drop-charts', 'iso-8820-3'],
  cautions: ['battery'],
  run: fuseDropCurrent,
});

export const restingDrainCard = defineCard({
  name: 'restingDrain',
  area: 'supply',
  question: 'How many days may it stand?',
  page: 'drain',
  fields: [
    {
      kind: 'text',
      name: 'drains',
      label: 'What draws with everything off',
      example: 'radio 4 mA on F7; clock 3 mA on F7; tracker 120 mA 5 % on F8; dash 6 mA on F9; alternator 1 mA',
      help: 'Name, current, share of the time, fuse: tracker 120 mA 5 % on F8. Parted by semicolons.',
    },
    {
      kind: 'text',
      name: 'fuses',
      label: 'Fuses that stay live, with readings',
      example: 'F7 blade 10 A; F8 mini 5 A; F9 mini 7.5 A reads 0.9 mV',
      help: 'Name, kind (blade, mini, large), rating, and what a meter shows: F9 mini 7.5 A reads 0.9 mV.',
    },
    tolerance,
    { kind: 'number', name: 'fullChargeAh', above: 0, example: 60, help: 'What it has today, not what it had new.' },
    { kind: 'number', name: 'startChargeFraction', min: 0, max: 1, example: 0.95, unit: '%' },
    { kind: 'number', name: 'endChargeFraction', min: 0, max: 1, example: 0.6, unit: '%' },
    ...restEndFields,
    {
      kind: 'number',
      name: 'selfDischargeFractionPerDay',
      min: 0,
      example: 0.002,
      help: 'Of the full charge in a day: 0.001 to 0.01, more when hot. Common practice.',
    },
    { kind: 'number', name: 'limitA', above: 0, example: 0.05, unit: 'mA', help: '25 to 50 mA, from memory.' },
  ],
  results: [
    { name: 'standingDays', round: 'down', primary: true },
    { name: 'meanA', round: 'up', label: 'Mean drain' },
    { name: 'drainAhPerDay', round: 'up' },
    { name: 'selfAhPerDay', round: 'up' },
    { name: 'usableAh', round: 'down' },
    { name: 'mostA', round: 'up', label: 'All of it at once' },
    { name: 'unfusedA', round: 'up' },
    { name: 'endChargeFraction', round: 'up', label: 'Charge that is left' },
  ],
  steps: [
    { result: 'meanA', text: 'Each drain by its share of the time', how: 'summed', source: 'circuit-theory' },
    {
      result: 'selfAhPerDay',
      text: 'What the battery loses by itself',
      formula: 'selfDischargeFractionPerDay * fullChargeAh',
      source: 'circuit-theory',
    },
    {
      result: 'usableAh',
      text: 'What may be lost',
      formula: '(startChargeFraction - endChargeFraction) * fullChargeAh',
      source: 'circuit-theory',
      when: (values) => typeof values['endOpenV'] !== 'number',
    },
    {
      result: 'standingDays',
      text: 'Over what is lost in a day',
      formula: 'usableAh / (drainAhPerDay + selfAhPerDay)',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'fuse-drop-charts', 'battery-rest-lists', 'common-practice'],
  cautions: ['battery', 'local-code'],
  run: restingDrain,
  identifiers: { bladeFuse, miniFuse, largeBladeFuse },
  input: (uses): RestingDrainInput => {
    const { drains, fuses, endChargeFraction: _charge, endOpenV: _volts, restList: _list, ...rest } = uses;
    return {
      ...(rest as unknown as RestingDrainInput),
      drains: drainList('restingDrain', 'drains', drains as string),
      fuses: restFuseList('restingDrain', 'fuses', fuses as string),
      end: restEnd(uses),
    };
  },
});
