import {
  ntc103jl1a,
  ntc10k3mcd1,
  ntc10k44031,
  ntc2252,
  ntcCoolant2500,
  ntcMaterial1,
  type ThermistorCurve,
} from 'loomwright';
import type { Choice, Constant, Field, Uses, Values } from '../type.js';

/** Letters of the reader's own, instead of a published curve. */
const OWN = 'own';

/** Thermistor curves as choices of a card. */
export const curveChoices: readonly Choice[] = [
  { value: OWN, label: 'Letters of your own, below' },
  {
    value: 'ntc-coolant-2500',
    label: 'Coolant sensor, 2.5 kΩ at 20 °C (from memory)',
    use: ntcCoolant2500,
    identifier: 'ntcCoolant2500',
  },
  { value: 'ntc-2252', label: '2252 Ω at 25 °C, printed table', use: ntc2252, identifier: 'ntc2252' },
  {
    value: 'ntc-10k-44031',
    label: '10 kΩ at 25 °C, series 44031, printed table',
    use: ntc10k44031,
    identifier: 'ntc10k44031',
  },
  { value: 'ntc-10k3mcd1', label: '10 kΩ at 25 °C, 10K3MCD1', use: ntc10k3mcd1, identifier: 'ntc10k3mcd1' },
  { value: 'ntc-103jl1a', label: '10 kΩ at 25 °C, 103JL1A', use: ntc103jl1a, identifier: 'ntc103jl1a' },
  { value: 'ntc-material-1', label: '10 kΩ at 25 °C, material type 1', use: ntcMaterial1, identifier: 'ntcMaterial1' },
];

/** A curve, and the letters of one's own. Filled with those of three readings: 5900, 834 and 186 Ω at 0, 50, 100 °C. */
export const curveFields: readonly Field[] = [
  { kind: 'choice', name: 'curve', label: 'Curve of the sensor', choices: curveChoices, example: OWN },
  { kind: 'number', name: 'aPerK', optional: true, example: 0.001313427309596249 },
  { kind: 'number', name: 'bPerK', optional: true, example: 0.0002564389563183287 },
  { kind: 'number', name: 'cPerK', optional: true, example: 1.8482012363779e-7 },
];

/** Whether the working can show Steinhart and Hart's equation: own letters, or a published set of three. */
export function hasLetters(values: Values): boolean {
  return values['curve'] === OWN || values['curve'] === 'ntc-10k3mcd1';
}

/** The curve that a card's values mean. */
export function curveOf(uses: Uses): ThermistorCurve {
  if (uses['curve'] !== OWN) return uses['curve'] as ThermistorCurve;
  return {
    kind: 'steinhart-hart',
    a: uses['aPerK'] as number,
    b: uses['bPerK'] as number,
    c: uses['cPerK'] as number,
  };
}

/** The same from flat values, in which the choice is a word. */
export function curveOfValues(values: Values): ThermistorCurve {
  const choice = curveChoices.find(({ value }) => value === values['curve']);
  return curveOf(choice?.use === undefined ? values : { ...values, curve: choice.use });
}

/** The letters that the working names, whichever curve they are of. */
export function lettersOf(values: Values): Record<string, number | null> {
  const curve = curveOfValues(values);
  if (curve.kind !== 'steinhart-hart') return {};
  const { a, b, c } = curve;
  return { aPerK: a, bPerK: b, cPerK: c };
}

/** The other input fields, with the curve put together. */
export function withCurve<I>(uses: Uses): I {
  const { aPerK: _a, bPerK: _b, cPerK: _c, ...rest } = uses;
  return { ...rest, curve: curveOf(uses) } as I;
}

export const oneOhm: Constant = {
  name: 'oneOhm',
  symbol: 'R_1',
  value: 1,
  unit: 'ohm',
  source: 'steinhart-hart-1968',
};
export const zeroC: Constant = {
  name: 'zeroC',
  symbol: 'T_0',
  value: 273.15,
  unit: 'K',
  source: 'steinhart-hart-1968',
};
