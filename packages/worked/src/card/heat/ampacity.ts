import { ampacity } from 'loomwright';
import { defineCard } from '../type.js';
import { convectionField, filmScope, surfaceSteps, wireFields, zeroTempC } from './wire-fields.js';

export const ampacityCard = defineCard({
  name: 'ampacity',
  area: 'heat',
  question: 'How much current does this wire bear?',
  page: 'how-hot-does-it-get',
  fields: [
    { kind: 'number', name: 'maxConductorTempC', min: -100, max: 400, example: 100 },
    ...wireFields,
    convectionField,
  ],
  results: [
    { name: 'currentA', round: 'down', label: 'Current that it bears', primary: true },
    { name: 'surfaceTempC', round: 'up' },
    { name: 'lossWPerM', round: 'up' },
    { name: 'reason', round: 'nearest' },
  ],
  steps: [
    {
      result: 'surfaceTempC',
      text: 'Surface temperature with the copper at its limit',
      how: 'one root: surface and what the insulation adds make the limit',
      source: 'heat-balance',
    },
    ...surfaceSteps,
    { result: 'lossWPerM', text: 'Both', formula: 'convectionWPerM + radiationWPerM', source: 'heat-balance' },
    {
      result: 'currentA',
      text: 'The current that makes that heat in hot copper',
      formula: 'sqrt(lossWPerM / resistanceOhmPerM * (zeroTempC + ratedTempC) / (zeroTempC + maxConductorTempC))',
      constants: [zeroTempC],
      source: 'nbs-hb-100',
    },
  ],
  sources: ['churchill-chu-1975', 'uw-mhtl-8406', 'heat-balance'],
  cautions: ['local-code'],
  run: ampacity,
  scope: (values, output) => {
    const film = filmScope(values, output.surfaceTempC);
    const rise = output.surfaceTempC - (values['ambientTempC'] as number);
    const conductivity = film['conductivityWPerMK'] as number;
    const nusselt = rise > 0 ? output.convectionWPerM / (Math.PI * conductivity * rise) : null;
    return {
      ...film,
      nusselt,
      rayleigh: nusselt === null ? null : rayleighOf(nusselt, film['prandtl'] as number, values),
    };
  },
});

/** The Rayleigh number that gives a Nusselt number; null by Morgan's formula, which has jumps. */
function rayleighOf(nusselt: number, prandtl: number, values: Readonly<Record<string, unknown>>): number | null {
  if (values['convection'] === 'morgan') return null;
  return (((Math.sqrt(nusselt) - 0.6) / 0.387) * (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 6;
}
