import {
  type ConductorTable,
  geometric,
  iec60228Class2,
  iec60228Class5Tinned,
  InputError,
  necChapter9Table8Aluminium,
  necChapter9Table8Coated,
  necChapter9Table8Uncoated,
  type ResistanceBasis,
  type SizeInput,
} from 'loomwright';
import { wireChoices } from '../feed/size-feed.js';
import type { Choice, ChoiceField, TextField } from '../type.js';

/** Every table of sizes that the core has for a bare conductor. */
export const tableChoices: readonly Choice[] = [
  ...wireChoices,
  {
    value: iec60228Class5Tinned.key,
    label: 'IEC 60228 class 5, flexible, tinned',
    use: iec60228Class5Tinned,
    identifier: 'iec60228Class5Tinned',
  },
  {
    value: iec60228Class2.key,
    label: 'IEC 60228 class 2, stranded',
    use: iec60228Class2,
    identifier: 'iec60228Class2',
  },
  {
    value: necChapter9Table8Uncoated.key,
    label: 'NFPA 70 copper, at 75 °C',
    use: necChapter9Table8Uncoated,
    identifier: 'necChapter9Table8Uncoated',
  },
  {
    value: necChapter9Table8Coated.key,
    label: 'NFPA 70 coated copper, at 75 °C',
    use: necChapter9Table8Coated,
    identifier: 'necChapter9Table8Coated',
  },
  {
    value: necChapter9Table8Aluminium.key,
    label: 'NFPA 70 aluminium, at 75 °C',
    use: necChapter9Table8Aluminium,
    identifier: 'necChapter9Table8Aluminium',
  },
];

/** Tables and geometry alone. */
export const basisField: ChoiceField = {
  kind: 'choice',
  name: 'resistanceBasis',
  label: 'Resistance by',
  choices: [
    ...tableChoices,
    { value: 'geometric', label: 'Geometry alone: solid copper', use: geometric, identifier: 'geometric' },
  ],
  example: 'iso-19642',
};

/** A size as its own table writes it. */
export const sizeField: TextField = {
  kind: 'text',
  name: 'size',
  label: 'Size, as that table writes it',
  help: 'A number of mm² in a metric table, else a gauge: 12, 2/0. For geometry alone write AWG before a gauge.',
  example: '2.5',
};

/** The size fields of an input from what was written for a basis. */
export function sizeOf(fn: string, text: unknown, basis: ResistanceBasis): SizeInput {
  const written = String(text ?? '').trim();
  const gauge = /^(?:AWG|SAE)\s*(\S+)$/i.exec(written)?.[1];
  if (basis.kind === 'geometric') return gauge === undefined ? { areaMm2: areaOf(fn, text, written) } : { awg: gauge };
  if (basis.sizes === 'mm2') {
    const areaMm2 = areaOf(fn, text, written);
    if (!basis.rows.some(([name]) => name === String(areaMm2))) throw unknown(fn, text, basis);
    return { areaMm2 };
  }
  const wanted = /^0{1,4}$/.test(gauge ?? written) ? `${(gauge ?? written).length}/0` : (gauge ?? written);
  if (!basis.rows.some(([name]) => name === wanted)) throw unknown(fn, text, basis);
  return basis.sizes === 'awg' ? { awg: wanted } : { saeGauge: wanted };
}

function areaOf(fn: string, text: unknown, written: string): number {
  const [, digits] = /^(\d*\.?\d+)\s*(?:mm²|mm2)?$/.exec(written) ?? [];
  if (digits === undefined) throw new InputError(fn, 'size', 'number', text, 'must be a number of mm², such as 2.5');
  return Number(digits);
}

function unknown(fn: string, text: unknown, { key, rows }: ConductorTable): InputError {
  const names = rows.map(([name]) => name).join(' ');
  return new InputError(fn, 'size', 'inTable', text, `must be a size of ${key}: ${names}`);
}
