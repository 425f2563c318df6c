import {
  type AmpacityInput,
  bundleAmpacity,
  bundleFactor,
  type BundleRule,
  bundleTemperature,
  InputError,
  insulatedWire,
  iso19642ThinWall,
  packBundle,
  type WireInBundle,
} from 'loomwright';
import { defineCard, type Field } from '../type.js';
import { wireFields, wireOf, zeroTempC } from './wire-fields.js';

const limitField: Field = { kind: 'number', name: 'maxConductorTempC', min: -100, max: 400, example: 100 };

export const bundleFactorCard = defineCard({
  name: 'bundleFactor',
  area: 'heat',
  question: 'What does company take from the current of a wire?',
  page: 'bundles',
  fields: [
    { kind: 'number', name: 'wireCount', min: 1, max: 1000, example: 12 },
    { kind: 'number', name: 'loadedFraction', above: 0, max: 1, example: 0.4, unit: '%' },
    {
      kind: 'number',
      name: 'currentCarryingCount',
      min: 0,
      optional: true,
      example: null,
      help: 'All, where left empty.',
    },
    {
      kind: 'choice',
      name: 'rule',
      choices: [
        { value: 'mil-w-5088', label: 'Aviation curves, MIL-W-5088' },
        { value: 'heat', label: 'Heat balance of this bundle' },
        { value: 'eee-inst-002', label: 'Space, (29 − N)/28' },
        { value: 'us-33-cfr-183', label: 'Boat, 33 CFR 183 (from memory)' },
        { value: 'nec-310-15', label: 'Building, NFPA 70' },
      ],
      example: 'mil-w-5088',
    },
    limitField,
    ...wireFields,
  ],
  results: [
    { name: 'factor', round: 'down', primary: true },
    { name: 'minFactor', round: 'down' },
    { name: 'maxFactor', round: 'down' },
    { name: 'reason', round: 'nearest' },
  ],
  steps: [
    {
      result: 'factor',
      text: 'Factor of the rule',
      how: 'from its table, curve or form; by the heat balance for the rule of that name',
      source: 'mil-w-5088',
      sourceOf: (output: { source: 'mil-w-5088' }) => output.source,
    },
  ],
  sources: ['mil-w-5088', 'eee-inst-002', 'us-33-cfr-183', 'nec-310-15', 'heat-balance'],
  cautions: ['local-code'],
  run: bundleFactor,
  input: (uses) => ({
    wireCount: uses['wireCount'] as number,
    loadedFraction: uses['loadedFraction'] as number,
    ...('currentCarryingCount' in uses ? { currentCarryingCount: uses['currentCarryingCount'] as number } : {}),
    rule: uses['rule'] as BundleRule,
    wire: wireOf(uses, ['maxConductorTempC']) as unknown as AmpacityInput,
  }),
});

export const bundleAmpacityCard = defineCard({
  name: 'bundleAmpacity',
  area: 'heat',
  question: 'How much current does each wire of a bundle of equal wires bear?',
  page: 'bundles',
  fields: [
    { kind: 'number', name: 'wireCount', min: 1, max: 1000, example: 12 },
    { kind: 'number', name: 'loadedFraction', above: 0, max: 1, example: 0.4, unit: '%' },
    limitField,
    ...wireFields,
  ],
  results: [
    { name: 'currentA', round: 'down', label: 'Current of each loaded wire', primary: true },
    { name: 'singleCurrentA', round: 'down' },
    { name: 'factor', round: 'down' },
    { name: 'surfaceTempC', round: 'up', label: 'Surface of the bundle' },
    { name: 'lossWPerM', round: 'up', label: 'Heat given off by a metre of the bundle' },
    { name: 'bundleDiameterMm', round: 'nearest' },
    { name: 'bundleConductivityWPerMK', round: 'down' },
    { name: 'reason', round: 'nearest' },
  ],
  steps: [
    {
      result: 'bundleDiameterMm',
      text: 'Diameter of the bundle',
      formula: '1.2 * sqrt(wireCount) * outerDiameterMm',
      source: 'common-practice',
      when: (values) => (values['wireCount'] as number) > 1,
    },
    {
      result: 'bundleConductivityWPerMK',
      text: 'Conductivity across it',
      how: 'the least that wires in still air can have together',
      source: 'hashin-shtrikman-1962',
    },
    {
      result: 'surfaceTempC',
      text: 'Surface of the bundle with the middle wire at its limit',
      how: 'one root, as for a single wire',
      source: 'heat-balance',
    },
    {
      result: 'currentA',
      text: 'The current that makes that heat in all loaded wires',
      formula:
        'sqrt(lossWPerM / (loadedCount * resistanceOhmPerM) * (zeroTempC + ratedTempC) / (zeroTempC + maxConductorTempC))',
      constants: [zeroTempC],
      source: 'nbs-hb-100',
      when: (values) => (values['loadedFraction'] as number) * (values['wireCount'] as number) > 1.5,
    },
    { result: 'factor', text: 'Over the current alone', formula: 'currentA / singleCurrentA', source: 'heat-balance' },
  ],
  sources: ['heat-balance', 'hashin-shtrikman-1962', 'common-practice'],
  cautions: ['local-code'],
  run: bundleAmpacity,
  scope: (values) => ({
    loadedCount: Math.max(1, (values['wireCount'] as number) * (values['loadedFraction'] as number)),
  }),
});

export const bundleTemperatureCard = defineCard({
  name: 'bundleTemperature',
  area: 'heat',
  question: 'Which wire of this bundle gets hottest, and how hot?',
  page: 'bundles',
  fields: [
    {
      kind: 'text',
      name: 'wires',
      label: 'Wires, thin wall: how many × size at current',
      example: '3 × 2.5 mm² at 15 A; 4 × 0.75 mm² at 4 A; 5 × 0.5 mm² at 0 A',
      help: 'Sizes of ISO 19642 thin-wall cable in PVC; one kind after another, parted by semicolons.',
    },
    { kind: 'number', name: 'ambientTempC', min: -60, max: 200, example: 50, label: 'Air around the bundle' },
    { kind: 'number', name: 'altitudeM', min: -500, max: 20000, example: 0 },
    { kind: 'number', name: 'emissivity', min: 0, max: 1, example: 0.9 },
  ],
  results: [
    { name: 'hottestTempC', round: 'up', primary: true },
    { name: 'surfaceTempC', round: 'up', label: 'Surface of the bundle' },
    { name: 'lossWPerM', round: 'up', label: 'Heat given off by a metre of the bundle' },
    { name: 'bundleDiameterMm', round: 'nearest' },
    { name: 'bundleConductivityWPerMK', round: 'down' },
    { name: 'reason', round: 'nearest' },
  ],
  steps: [
    {
      result: 'bundleDiameterMm',
      text: 'The wires, packed',
      how: 'drawn as tightly as we find; real bundles are looser',
      source: 'circle-packing',
    },
    {
      result: 'bundleConductivityWPerMK',
      text: 'Conductivity across the bundle',
      how: 'the least that insulation, copper and still air can have together',
      source: 'hashin-shtrikman-1962',
    },
    {
      result: 'surfaceTempC',
      text: 'Surface of the bundle',
      how: 'found so that the heat of all wires, each at its own temperature, leaves through it',
      source: 'heat-balance',
    },
    {
      result: 'hottestTempC',
      text: 'The hottest wire',
      how: 'each wire stands in the warmth of all others and in its own',
      source: 'heat-balance',
    },
  ],
  sources: ['heat-balance', 'hashin-shtrikman-1962', 'iso-19642', 'circle-packing'],
  cautions: ['local-code'],
  run: bundleTemperature,
  input: (uses) => ({
    ...wiresInPlace(uses['wires'] as string),
    ambientTempC: uses['ambientTempC'] as number,
    altitudeM: uses['altitudeM'] as number,
    emissivity: uses['emissivity'] as number,
  }),
  scope: (values) => ({ bundleDiameterMm: wiresInPlace(values['wires'] as string).bundleDiameterMm }),
});

/** Conductivity of soft PVC in W/(m·K). */
const PVC = 0.17;

interface Placed {
  readonly wires: readonly WireInBundle[];
  readonly bundleDiameterMm: number;
}

// Packing takes a tenth of a second, and function, working and drawing ask for the same text one after another.
const last: { text: string; placed: Placed | null } = { text: '', placed: null };

/** Wires as text, packed: '3 × 2.5 mm² at 15 A; 4 × 0.75 mm² at 4 A'. */
export function wiresInPlace(text: string): Placed {
  if (last.placed === null || last.text !== text) {
    last.placed = readAndPack(text);
    last.text = text;
  }
  return last.placed;
}

function readAndPack(text: string): Placed {
  const kinds = text
    .split(';')
    .filter((part) => part.trim() !== '')
    .map((part) => {
      const found = /^\s*(\d+)\s*[x×*]\s*([\d.]+)\s*(?:mm²|mm2)?\s*(?:at|@)\s*(\d+(?:\.\d+)?)\s*A?\s*$/i.exec(part);
      if (found === null) {
        throw new InputError('bundleTemperature', 'wires', 'text', part.trim(), "must read '3 × 2.5 mm² at 15 A'");
      }
      return { count: Number(found[1]), size: found[2] as string, currentA: Number(found[3]) };
    });
  const total = kinds.reduce((sum, { count }) => sum + count, 0);
  if (total < 1 || total > 60) {
    throw new InputError('bundleTemperature', 'wires', 'list', total, 'must be 1 to 60 wires in all');
  }
  const wires = kinds.map(({ count, size, currentA }) => {
    const row = insulatedWire({ wireTable: iso19642ThinWall, size: wanted(size) });
    return {
      count,
      wire: {
        currentA,
        resistanceOhmPerM: row.resistanceOhmPerM as number,
        ratedTempC: 20,
        conductorDiameterMm: row.conductorDiameterMm as number,
        outerDiameterMm: row.outerDiameterMm,
        insulationConductivityWPerMK: PVC,
      },
    };
  });
  const packed = packBundle({
    wires: wires.map(({ count, wire }) => ({ outerDiameterMm: wire.outerDiameterMm, count })),
  });
  return {
    wires: packed.circles.map(({ xMm, yMm, wireIndex }) => ({
      ...(wires[wireIndex] as (typeof wires)[number]).wire,
      xMm,
      yMm,
    })),
    bundleDiameterMm: packed.diameterMm,
  };
}

/** A size of the table; any other is an error of the text. */
function wanted(size: string): string {
  const name = String(Number(size));
  if (iso19642ThinWall.rows.some(([row]) => row === name)) return name;
  const names = iso19642ThinWall.rows.map(([row]) => row).join(' ');
  throw new InputError('bundleTemperature', 'wires', 'inTable', size, `must have sizes of the table (${names})`);
}
