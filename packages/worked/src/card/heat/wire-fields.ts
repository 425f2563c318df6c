import { airProperties } from 'loomwright';
import type { Constant, Field, Step, Uses } from '../type.js';

/** Thin-wall 2.5 mm² vehicle cable of PVC in an engine bay: the example of this room. */
export const wireFields: readonly Field[] = [
  {
    kind: 'number',
    name: 'resistanceOhmPerM',
    above: 0,
    example: 0.0076,
    unit: 'mΩ/m',
    help: 'The most that the standard of the wire allows.',
  },
  { kind: 'number', name: 'ratedTempC', min: -100, max: 400, example: 20 },
  { kind: 'number', name: 'conductorDiameterMm', above: 0, example: 2.2 },
  { kind: 'number', name: 'outerDiameterMm', above: 0, max: 300, example: 3, help: 'Equal to the strands: bare.' },
  {
    kind: 'number',
    name: 'insulationConductivityWPerMK',
    min: 0.01,
    max: 10,
    example: 0.17,
    help: 'PVC 0.17, cross-linked polyethylene 0.29, silicone 0.2, ETFE 0.24.',
  },
  { kind: 'number', name: 'ambientTempC', min: -60, max: 200, example: 50, label: 'Air around the wire' },
  { kind: 'number', name: 'altitudeM', min: -500, max: 20000, example: 0 },
  {
    kind: 'number',
    name: 'emissivity',
    min: 0,
    max: 1,
    example: 0.9,
    help: 'Any plastic or rubber cover 0.9 (common practice), bright copper 0.05.',
  },
];

/** The two correlations as a field. */
export const convectionField: Field = {
  kind: 'choice',
  name: 'convection',
  choices: [
    { value: 'churchill-chu', label: 'Churchill and Chu' },
    { value: 'morgan', label: 'Morgan' },
  ],
  example: 'churchill-chu',
};

/** The wire's own fields out of a card's values, for functions that take it as an object. */
export function wireOf(uses: Uses, more: readonly string[] = []): Record<string, unknown> {
  const names = [...wireFields.map((field) => field.name), 'convection', ...more];
  return Object.fromEntries(names.flatMap((name) => (name in uses ? [[name, uses[name]]] : [])));
}

export const pi: Constant = {
  name: 'pi',
  symbol: '\\pi',
  value: 3.14159265359,
  unit: '',
  source: 'heat-balance',
};
export const zeroTempC: Constant = {
  name: 'zeroTempC',
  symbol: 'T_0',
  value: 234.5,
  unit: 'K',
  source: 'nbs-hb-100',
};
const sigma: Constant = {
  name: 'sigma',
  symbol: '\\sigma',
  value: 5.670374419e-8,
  unit: 'W/(m^2 K^4)',
  source: 'heat-balance',
};
const kelvin: Constant = {
  name: 'kelvinTempC',
  symbol: 'T_K',
  value: 273.15,
  unit: 'K',
  source: 'heat-balance',
};

/** The surface's two ways out, step by step. */
export const surfaceSteps: readonly Step[] = [
  {
    result: 'rayleigh',
    text: 'Rayleigh number of the diameter',
    how: 'from the air film, half-way between surface and air',
    source: 'uw-mhtl-8406',
  },
  {
    result: 'nusselt',
    text: 'Nusselt number of still air around a level cylinder',
    formula: '(0.60 + 0.387 * rayleigh^(1/6) / (1 + (0.559 / prandtl)^(9/16))^(8/27))^2',
    source: 'churchill-chu-1975',
    when: (values) => values['convection'] !== 'morgan',
  },
  {
    result: 'nusselt',
    text: 'Nusselt number of still air around a level cylinder',
    how: 'by decades of the Rayleigh number',
    source: 'morgan-1975',
    when: (values) => values['convection'] === 'morgan',
  },
  {
    result: 'convectionWPerM',
    text: 'Heat to the air',
    formula: 'pi * conductivityWPerMK * nusselt * (surfaceTempC - ambientTempC)',
    constants: [pi],
    source: 'churchill-chu-1975',
  },
  {
    result: 'radiationWPerM',
    text: 'Heat radiated to what is around, as warm as the air',
    formula:
      'pi * outerDiameterMm * emissivity * sigma * ((surfaceTempC + kelvinTempC)^4 - (ambientTempC + kelvinTempC)^4)',
    constants: [pi, sigma, kelvin],
    source: 'heat-balance',
  },
];

/** Air of the film for the steps above, of a surface in the air of the values. */
export function filmScope(
  values: Readonly<Record<string, unknown>>,
  surfaceTempC: number | null,
): Record<string, number> {
  if (surfaceTempC === null) return {};
  const filmTempC = (surfaceTempC + (values['ambientTempC'] as number)) / 2;
  const { conductivityWPerMK, prandtl } = airProperties({ filmTempC, altitudeM: values['altitudeM'] as number });
  return { filmTempC, conductivityWPerMK, prandtl };
}
