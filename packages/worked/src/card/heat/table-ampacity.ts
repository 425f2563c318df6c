import { ac4313Ampacity, tableAmpacity, us33Cfr183Ampacity } from 'loomwright';
import { defineCard } from '../type.js';

export const tableAmpacityCard = defineCard({
  name: 'tableAmpacity',
  area: 'heat',
  question: 'How much current does a published table grant?',
  page: 'how-hot-does-it-get',
  fields: [
    {
      kind: 'choice',
      name: 'table',
      choices: [
        {
          value: us33Cfr183Ampacity.key,
          label: '33 CFR 183.425, single wire at 30 °C',
          use: us33Cfr183Ampacity,
          identifier: 'us33Cfr183Ampacity',
        },
        {
          value: ac4313Ampacity.key,
          label: 'AC 43.13-1B table 11-9, large bundle at 70 °C and 60 000 ft',
          use: ac4313Ampacity,
          identifier: 'ac4313Ampacity',
        },
      ],
      example: us33Cfr183Ampacity.key,
    },
    { kind: 'number', name: 'areaMm2', above: 0, example: 2.5 },
    { kind: 'number', name: 'insulationTempC', min: 60, max: 2000, example: 105 },
    { kind: 'number', name: 'ambientTempC', min: -273.15, max: 2000, example: 50, label: 'Air around the wire' },
  ],
  results: [
    { name: 'currentA', round: 'down', label: 'Current granted', primary: true },
    { name: 'printedCurrentA', round: 'down', trim: true },
    { name: 'rowSize', round: 'nearest', label: 'Row taken (AWG)' },
    { name: 'columnTempC', round: 'down', trim: true },
    { name: 'baseTempC', round: 'nearest', trim: true },
    { name: 'ambientFactor', round: 'down' },
  ],
  steps: [
    {
      result: 'printedCurrentA',
      text: 'Current as printed',
      how: 'the largest size and the highest class that are not above yours',
      source: 'us-33-cfr-183',
      sourceOf: (output: { source: 'us-33-cfr-183' }) => output.source,
    },
    {
      result: 'ambientFactor',
      text: "Factor from the table's air to yours",
      formula: 'sqrt((columnTempC - ambientTempC) / (columnTempC - baseTempC))',
      source: 'us-33-cfr-183',
    },
    {
      result: 'currentA',
      text: 'Current granted',
      formula: 'printedCurrentA * ambientFactor',
      source: 'us-33-cfr-183',
    },
  ],
  sources: ['us-33-cfr-183', 'ac-43-13-1b'],
  cautions: ['local-code'],
  run: tableAmpacity,
});
