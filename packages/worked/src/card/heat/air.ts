import { airProperties, nusseltHorizontalCylinder, standardPressure } from 'loomwright';
import { defineCard } from '../type.js';
import { convectionField } from './wire-fields.js';

export const airPropertiesCard = defineCard({
  name: 'airProperties',
  area: 'heat',
  question: 'What is the air around a warm wire like?',
  page: 'how-hot-does-it-get',
  fields: [
    { kind: 'number', name: 'filmTempC', min: -73.15, max: 226.85, example: 70 },
    { kind: 'number', name: 'altitudeM', min: -500, max: 20000, example: 0 },
  ],
  results: [
    { name: 'conductivityWPerMK', round: 'nearest', digits: 4, primary: true },
    { name: 'densityKgPerM3', round: 'nearest', digits: 4 },
    { name: 'viscosityPaS', round: 'nearest', digits: 4 },
    { name: 'kinematicViscosityM2PerS', round: 'nearest', digits: 4 },
    { name: 'specificHeatJPerKgK', round: 'nearest', digits: 4 },
    { name: 'diffusivityM2PerS', round: 'nearest', digits: 4 },
    { name: 'prandtl', round: 'nearest', digits: 4 },
  ],
  steps: [
    {
      result: 'conductivityWPerMK',
      text: 'Heat conductivity',
      how: 'a fit of the form of Sutherland in the film temperature',
      source: 'uw-mhtl-8406',
    },
    {
      result: 'kinematicViscosityM2PerS',
      text: 'Kinematic viscosity',
      formula: 'viscosityPaS / densityKgPerM3',
      source: 'uw-mhtl-8406',
    },
    {
      result: 'diffusivityM2PerS',
      text: 'Thermal diffusivity',
      formula: 'conductivityWPerMK / (densityKgPerM3 * specificHeatJPerKgK)',
      source: 'uw-mhtl-8406',
    },
    {
      result: 'prandtl',
      text: 'Prandtl number',
      formula: 'specificHeatJPerKgK * viscosityPaS / conductivityWPerMK',
      source: 'uw-mhtl-8406',
    },
  ],
  sources: ['uw-mhtl-8406', 'us-standard-atmosphere'],
  cautions: ['local-code'],
  run: airProperties,
});

export const standardPressureCard = defineCard({
  name: 'standardPressure',
  area: 'heat',
  question: 'How thin is the air up there?',
  page: 'how-hot-does-it-get',
  fields: [{ kind: 'number', name: 'altitudeM', min: -500, max: 20000, example: 3000 }],
  results: [
    { name: 'pressureKpa', round: 'nearest', digits: 4, primary: true },
    { name: 'pressureRatio', round: 'nearest', digits: 4 },
  ],
  steps: [
    {
      result: 'pressureKpa',
      text: 'Pressure of the standard atmosphere',
      how: 'falling by a power to 11 000 m, exponentially above',
      source: 'us-standard-atmosphere',
    },
    {
      result: 'pressureRatio',
      text: 'As a share of that at sea level',
      formula: 'pressureKpa / seaLevelKpa',
      constants: [
        { name: 'seaLevelKpa', symbol: 'p_0', value: 101.325, unit: 'kPa', source: 'us-standard-atmosphere' },
      ],
      source: 'us-standard-atmosphere',
    },
  ],
  sources: ['us-standard-atmosphere'],
  cautions: ['local-code'],
  run: standardPressure,
});

export const nusseltHorizontalCylinderCard = defineCard({
  name: 'nusseltHorizontalCylinder',
  area: 'heat',
  question: 'How well does still air cool a level cylinder?',
  page: 'how-hot-does-it-get',
  fields: [
    { kind: 'number', name: 'rayleigh', min: 0, max: 1e12, example: 1.869e6 },
    { kind: 'number', name: 'prandtl', min: 0.01, max: 1000, example: 0.7241 },
    convectionField,
  ],
  results: [{ name: 'nusselt', round: 'nearest', digits: 4, primary: true }],
  steps: [
    {
      result: 'nusselt',
      text: 'After Churchill and Chu',
      formula: '(0.60 + 0.387 * rayleigh^(1/6) / (1 + (0.559 / prandtl)^(9/16))^(8/27))^2',
      source: 'churchill-chu-1975',
      when: (values) => values['convection'] !== 'morgan',
    },
    {
      result: 'nusselt',
      text: 'After Morgan',
      how: 'by decades of the Rayleigh number',
      source: 'morgan-1975',
      when: (values) => values['convection'] === 'morgan',
    },
  ],
  sources: ['churchill-chu-1975', 'morgan-1975'],
  cautions: ['local-code'],
  run: nusseltHorizontalCylinder,
});
