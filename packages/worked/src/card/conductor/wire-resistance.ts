import { type ResistanceBasis, wireResistance, type WireResistanceInput, type WireResistanceResult } from 'loomwright';
import { defineCard, type Uses } from '../type.js';
import { basisField, sizeField, sizeOf } from './basis.js';
import { zeroTempC } from './metal.js';

/** The resistance of one metre as the basis states it, and the temperature of that value. */
export function ratedOf(input: WireResistanceInput): { ratedOhmPerM: number; ratedTempC: number; zeroTempC: number } {
  const { resistanceBasis } = input;
  const ratedTempC = resistanceBasis.kind === 'table' ? resistanceBasis.ratedTempC : 20;
  const aluminium = resistanceBasis.kind === 'table' && resistanceBasis.metal === 'aluminium';
  const { resistanceOhmPerM } = wireResistance({ ...input, lengthM: 1, conductorTempC: ratedTempC });
  return { ratedOhmPerM: resistanceOhmPerM, ratedTempC, zeroTempC: zeroTempC(aluminium) };
}

const inputFrom = (uses: Uses): WireResistanceInput => ({
  ...sizeOf('wireResistance', uses['size'], uses['resistanceBasis'] as ResistanceBasis),
  resistanceBasis: uses['resistanceBasis'] as ResistanceBasis,
  lengthM: uses['lengthM'] as number,
  conductorTempC: uses['conductorTempC'] as number,
});

const basisOf = (value: unknown): ResistanceBasis =>
  basisField.choices.find((choice) => choice.value === value)?.use as ResistanceBasis;

export const wireResistanceCard = defineCard<WireResistanceInput, WireResistanceResult>({
  name: 'wireResistance',
  area: 'conductor',
  question: 'What resistance does this length of wire have?',
  page: 'resistance-and-heat',
  fields: [
    basisField,
    sizeField,
    { kind: 'number', name: 'lengthM', min: 0, max: 1e6, example: 8, help: 'Along the current: out plus back.' },
    { kind: 'number', name: 'conductorTempC', min: -100, max: 400, example: 70 },
  ],
  results: [
    { name: 'resistanceOhm', round: 'up', digits: 4, primary: true },
    { name: 'resistanceOhmPerM', round: 'up', digits: 4 },
    { name: 'areaMm2', round: 'down', trim: true },
    { name: 'size', round: 'nearest' },
  ],
  steps: [
    {
      result: 'ratedOhmPerM',
      text: 'Resistance of one metre at the temperature of its table',
      how: 'looked up, or that of copper of the area',
      source: 'iec-60228',
      sourceOf: (output: WireResistanceResult) => output.source,
    },
    {
      result: 'resistanceOhmPerM',
      text: 'The same at the temperature of the metal',
      formula: 'ratedOhmPerM * (zeroTempC + conductorTempC) / (zeroTempC + ratedTempC)',
      source: 'nbs-hb-100',
    },
    {
      result: 'resistanceOhm',
      text: 'The whole length',
      formula: 'resistanceOhmPerM * lengthM',
      source: 'circuit-theory',
    },
  ],
  sources: ['iec-60228', 'iso-19642', 'ac-43-13-1b', 'sae-j1128', 'nec-chapter-9-table-8', 'nbs-hb-100'],
  cautions: ['local-code'],
  run: wireResistance,
  input: inputFrom,
  scope: (values) => ratedOf(inputFrom({ ...values, resistanceBasis: basisOf(values['resistanceBasis']) })),
});
