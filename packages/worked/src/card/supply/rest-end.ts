import {
  type RestEnd,
  restVoltsTenSteps,
  restVoltsThumb,
  restVoltsTrade,
  type RestVoltsTable,
  restVoltsWithDensity,
} from 'loomwright';

/** Volts at rest in place of the charge that is to be left, and the list that they go by. */
export const restEndFields = [
  {
    kind: 'number',
    name: 'endOpenV',
    above: 0,
    example: null,
    optional: true,
    help: 'Takes the place of the charge, by the list below.',
  },
  {
    kind: 'choice',
    name: 'restList',
    label: 'Volts at rest by',
    choices: [
      { value: 'trade', label: 'the trade council’s list', use: restVoltsTrade, identifier: 'restVoltsTrade' },
      { value: 'ten', label: 'a list in steps of ten', use: restVoltsTenSteps, identifier: 'restVoltsTenSteps' },
      { value: 'thumb', label: 'a rule of thumb', use: restVoltsThumb, identifier: 'restVoltsThumb' },
      {
        value: 'density',
        label: 'a list with densities',
        use: restVoltsWithDensity,
        identifier: 'restVoltsWithDensity',
      },
    ],
    example: 'trade',
  },
] as const;

/** What is to be left, from these fields and `endChargeFraction`. */
export function restEnd(uses: Readonly<Record<string, unknown>>): RestEnd {
  const { endChargeFraction, endOpenV, restList } = uses;
  return endOpenV === undefined
    ? { kind: 'charge', chargeFraction: endChargeFraction as number }
    : { kind: 'volts', openV: endOpenV as number, list: restList as RestVoltsTable };
}
