import { conductorTemperature } from 'loomwright';
import { defineCard } from '../type.js';
import { convectionField, filmScope, pi, surfaceSteps, wireFields, zeroTempC } from './wire-fields.js';

export const conductorTemperatureCard = defineCard({
  name: 'conductorTemperature',
  area: 'heat',
  question: 'How hot does this wire get?',
  page: 'how-hot-does-it-get',
  fields: [{ kind: 'number', name: 'currentA', min: 0, example: 20 }, ...wireFields, convectionField],
  results: [
    { name: 'conductorTempC', round: 'up', primary: true },
    { name: 'surfaceTempC', round: 'up' },
    { name: 'lossWPerM', round: 'up' },
    { name: 'convectionWPerM', round: 'nearest' },
    { name: 'radiationWPerM', round: 'nearest' },
    { name: 'reason', round: 'nearest' },
  ],
  steps: [
    {
      result: 'surfaceTempC',
      text: 'Surface temperature',
      how: 'found so that the heat made and the heat given off are equal',
      source: 'heat-balance',
    },
    ...surfaceSteps,
    { result: 'lossWPerM', text: 'Both', formula: 'convectionWPerM + radiationWPerM', source: 'heat-balance' },
    {
      result: 'conductorTempC',
      text: 'Temperature of the copper under its insulation',
      formula:
        'surfaceTempC + lossWPerM * log(outerDiameterMm / conductorDiameterMm) / (2 * pi * insulationConductivityWPerMK)',
      constants: [pi],
      source: 'heat-balance',
    },
    {
      result: 'madeWPerM',
      text: 'Heat that the current makes at that temperature: the same, so the balance closes',
      formula: 'currentA^2 * resistanceOhmPerM * (zeroTempC + conductorTempC) / (zeroTempC + ratedTempC)',
      constants: [zeroTempC],
      source: 'nbs-hb-100',
    },
  ],
  sources: ['churchill-chu-1975', 'uw-mhtl-8406', 'heat-balance'],
  cautions: ['local-code'],
  run: conductorTemperature,
  scope: (values, { conductorTempC, surfaceTempC }) => ({
    ...filmScope(values, surfaceTempC),
    madeWPerM:
      conductorTempC === null
        ? null
        : ((values['currentA'] as number) ** 2 * (values['resistanceOhmPerM'] as number) * (234.5 + conductorTempC)) /
          (234.5 + (values['ratedTempC'] as number)),
  }),
});
