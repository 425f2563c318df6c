import {
  bladeTerminals,
  checkTerminal,
  type CheckTerminalInput,
  type CheckTerminalResult,
  connectorLoading,
  loadingFactor,
  pinCurrent,
  roundContacts,
  type Terminal,
} from 'loomwright';
import { type Choice, type ChoiceField, defineCard, type Values } from '../type.js';

const terminals: readonly Terminal[] = [...bladeTerminals.rows, ...roundContacts.rows];

const terminalChoices: readonly Choice[] = terminals.map((use) => ({
  value: use.name,
  label: bladeTerminals.rows.includes(use) ? `${use.name} blade or pin` : `${use.name} round contact`,
  use,
}));

const loading: ChoiceField = {
  kind: 'choice',
  name: 'loadingTable',
  label: 'Table of loading factors',
  choices: [
    {
      value: connectorLoading.key,
      label: "Connector maker's, to 18 AWG",
      use: connectorLoading,
      identifier: 'connectorLoading',
    },
  ],
  example: connectorLoading.key,
};

export const checkTerminalCard = defineCard<CheckTerminalInput, CheckTerminalResult>({
  name: 'checkTerminal',
  area: 'joint',
  question: 'Does this terminal suit this wire and its current?',
  page: 'terminals',
  fields: [
    { kind: 'choice', name: 'terminal', choices: terminalChoices, example: '2.8 mm' },
    { kind: 'number', name: 'areaMm2', min: 0.001, example: 1.5, help: 'Of several wires in one crimp the sum.' },
    { kind: 'number', name: 'outerDiameterMm', above: 0, example: 2.4 },
    { kind: 'number', name: 'currentA', min: 0, example: 6 },
    { kind: 'number', name: 'ambientTempC', min: -273.15, max: 2000, example: 60, label: 'Air around the connector' },
    { kind: 'number', name: 'contactCount', min: 1, example: 6 },
    {
      kind: 'number',
      name: 'loadedCount',
      label: 'Contacts loaded at once',
      symbol: 'n',
      min: 1,
      example: 3,
      help: 'This one included.',
    },
    loading,
    {
      kind: 'number',
      name: 'dropLimitV',
      above: 0,
      optional: true,
      example: 0.06,
      unit: 'mV',
      help: 'Not judged if empty.',
    },
  ],
  results: [
    { name: 'allowedCurrentA', round: 'down', primary: true },
    { name: 'ok', label: 'Suits', round: 'nearest' },
    { name: 'loadingFactor', round: 'down' },
    { name: 'contactDropMv', round: 'up' },
    { name: 'contactLossW', round: 'up' },
  ],
  steps: [
    {
      result: 'loadingFactor',
      text: 'What neighbours and a thin wire leave',
      how: 'looked up: the next fuller row, the column that is not thicker than the wire',
      source: 'connector-loading-factors',
    },
    {
      result: 'aloneCurrentA',
      text: 'Current of one loaded contact by itself in this air',
      how: 'between the points of its data, straight in the square of the current',
      source: 'blade-terminal-practice',
    },
    {
      result: 'allowedCurrentA',
      text: 'Both',
      formula: 'aloneCurrentA * loadingFactor',
      source: 'connector-loading-factors',
    },
    {
      result: 'contactDropV',
      text: 'Volts lost in the contact at the end of its life',
      formula: 'currentA * contactOhm',
      source: 'circuit-theory',
    },
    {
      result: 'contactLossW',
      text: 'Heat of the contact',
      formula: 'contactDropV * currentA',
      source: 'circuit-theory',
    },
  ],
  sources: ['blade-terminal-practice', 'round-contact-data', 'connector-loading-factors'],
  cautions: ['local-code'],
  run: checkTerminal,
  scope: (values, output) => ({
    aloneCurrentA: output.allowedCurrentA === null ? null : output.allowedCurrentA / output.loadingFactor,
    contactOhm: terminalOf(values)?.contactOhm ?? null,
    contactDropMv: output.contactDropV === null ? null : output.contactDropV * 1000,
  }),
});

/** The terminal that is chosen. */
function terminalOf(values: Values): Terminal | undefined {
  return terminals.find(({ name }) => name === values['terminal']);
}

export const pinCurrentCard = defineCard({
  name: 'pinCurrent',
  area: 'joint',
  question: 'What may this contact carry where it sits?',
  page: 'terminals',
  fields: [
    { kind: 'number', name: 'ratedCurrentA', above: 0, example: 13 },
    { kind: 'number', name: 'ratedRiseK', above: 0, example: 30 },
    {
      kind: 'number',
      name: 'maxTempC',
      label: 'Hottest that the contact may be',
      min: -273.15,
      max: 2000,
      example: 125,
    },
    { kind: 'number', name: 'ambientTempC', label: 'Air around the connector', min: -273.15, max: 2000, example: 100 },
    {
      kind: 'number',
      name: 'reductionFraction',
      min: 0.01,
      max: 1,
      example: 0.8,
      help: '80 % of the curve by IEC 60512-5-2.',
    },
    {
      kind: 'number',
      name: 'loadingFactor',
      min: 0.01,
      max: 1,
      example: 1,
      help: '1 for one contact alone with its thickest wire.',
    },
    { kind: 'number', name: 'exponent', min: 0.5, max: 0.6, example: 0.5 },
  ],
  results: [
    { name: 'currentA', label: 'May carry', round: 'down', primary: true },
    { name: 'baseCurrentA', round: 'down' },
    { name: 'cappedAtRating', label: 'Held at the rating', round: 'nearest' },
  ],
  steps: [
    {
      result: 'baseCurrentA',
      text: 'Base curve: the room left below the limit, against the rise of the test',
      formula: 'ratedCurrentA * ((maxTempC - ambientTempC) / ratedRiseK)^exponent',
      source: 'iec-60512-5-2',
      when: (values) => Number(values['ambientTempC']) < Number(values['maxTempC']),
    },
    {
      result: 'pinCurrentA',
      text: 'Reduced, never above the rating, and with its neighbours',
      formula: 'min(ratedCurrentA, reductionFraction * baseCurrentA) * loadingFactor',
      source: 'iec-60512-5-2',
    },
  ],
  sources: ['iec-60512-5-2'],
  cautions: ['local-code'],
  run: pinCurrent,
  scope: (_, output) => ({ pinCurrentA: output.currentA }),
});

export const loadingFactorCard = defineCard({
  name: 'loadingFactor',
  area: 'joint',
  question: 'How much do hot neighbours take from a contact?',
  page: 'terminals',
  fields: [
    { ...loading, name: 'table' },
    {
      kind: 'choice',
      name: 'awg',
      choices: ['28', '26', '24', '22', '20', '18', '16', '14', '12', '10'].map((awg) => ({
        value: awg,
        label: `AWG ${awg}`,
      })),
      example: '20',
    },
    { kind: 'number', name: 'contactCount', min: 1, example: 12 },
    { kind: 'number', name: 'loadedCount', label: 'Contacts loaded at once', symbol: 'n', min: 1, example: 6 },
  ],
  results: [
    { name: 'factor', round: 'down', primary: true },
    { name: 'rowLoadedFraction', round: 'nearest' },
    { name: 'columnAwg', round: 'nearest' },
  ],
  steps: [
    {
      result: 'factor',
      text: 'Factor on the current of one contact alone',
      how: 'looked up: the next fuller row, the next thinner gauge',
      source: 'connector-loading-factors',
    },
  ],
  sources: ['connector-loading-factors'],
  cautions: ['local-code'],
  run: loadingFactor,
});
