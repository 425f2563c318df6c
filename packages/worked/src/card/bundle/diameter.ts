import {
  bundleDiameter,
  type BundleDiameterInput,
  type BundleDiameterResult,
  packBundle,
  type PackBundleInput,
  type PackBundleResult,
  sleeveFill,
  type SleeveFillInput,
  type SleeveFillResult,
} from 'loomwright';
import { type Choice, defineCard, type TextField, type Values } from '../type.js';
import { wireList } from './lists.js';

const EXAMPLE = '9 × 1.9; 4 × 2.4; 2 × 3.7';

const wires: TextField = {
  kind: 'text',
  name: 'wires',
  example: EXAMPLE,
  help: 'How many × the diameter over the insulation in mm; sizes parted by semicolons.',
};

const rules: readonly Choice[] = [
  { value: 'multiplication-factor', label: 'Data sheet, for real hands' },
  { value: 'packing', label: 'Packing, the tightest' },
];

/** Whether the data sheet's rule for mixed sizes is at work. */
function isMixed(values: Values): boolean {
  const list = wireList('bundleDiameter', String(values['wires']));
  const sizes = new Set(list.map(({ outerDiameterMm }) => outerDiameterMm));
  return sizes.size > 1 || list.reduce((sum, { count }) => sum + count, 0) > 61;
}

export const bundleDiameterCard = defineCard<BundleDiameterInput, BundleDiameterResult>({
  name: 'bundleDiameter',
  area: 'bundle',
  question: 'How thick is this bundle?',
  page: 'will-it-fit',
  fields: [
    wires,
    { kind: 'choice', name: 'rule', label: 'By which rule', choices: rules, example: 'multiplication-factor' },
  ],
  results: [
    { name: 'diameterMm', label: 'Diameter of the bundle', symbol: 'D', round: 'up', primary: true },
    { name: 'ruleDiameterMm', round: 'up' },
    { name: 'lowerBoundMm', round: 'down' },
    { name: 'fillFraction', label: 'Share of the circle that is wire', round: 'nearest' },
    { name: 'wireCount', round: 'nearest', digits: 6, trim: true },
    { name: 'method', label: 'Found by', round: 'nearest' },
  ],
  steps: [
    {
      result: 'squareSumMm2',
      text: 'Squares of all diameters over the insulation, added',
      how: 'each diameter squared, times how many there are',
      source: 'bundle-factors',
    },
    {
      result: 'ruleDiameterMm',
      text: 'Bundle of mixed sizes by the data sheet',
      formula: '1.2 * sqrt(squareSumMm2)',
      source: 'bundle-factors',
      when: (values) => values['rule'] === 'multiplication-factor' && isMixed(values),
    },
    {
      result: 'ruleDiameterMm',
      text: 'Bundle of equal wires by the data sheet',
      how: 'the factor of that many wires, times the diameter of one',
      source: 'bundle-factors',
      when: (values) => values['rule'] === 'multiplication-factor' && !isMixed(values),
    },
    {
      result: 'ruleDiameterMm',
      text: 'Tightest packing',
      how: 'best known ratio for up to 20 equal wires, else the best packing drawn',
      source: 'circle-packing',
      when: (values) => values['rule'] === 'packing',
    },
    {
      result: 'lowerBoundMm',
      text: 'What no bundle of these wires can be below',
      how: 'the largest of: their area, the two or three thickest side by side, the k thickest as k equal ones',
      source: 'oler-1961',
    },
    {
      result: 'fillFraction',
      text: 'Share of the circle that is wire',
      formula: 'squareSumMm2 / bundleDiameterMm^2',
      source: 'statics',
    },
  ],
  sources: ['bundle-factors', 'circle-packing', 'oler-1961'],
  cautions: ['local-code'],
  run: bundleDiameter,
  input: (uses) => ({
    wires: wireList('bundleDiameter', uses['wires'] as string),
    rule: uses['rule'] as BundleDiameterInput['rule'],
  }),
  scope: (_, output) => ({
    squareSumMm2: output.fillFraction * output.diameterMm ** 2,
    bundleDiameterMm: output.diameterMm,
  }),
});

export const packBundleCard = defineCard<PackBundleInput, PackBundleResult>({
  name: 'packBundle',
  area: 'bundle',
  question: 'How do these wires lie in a tight bundle?',
  page: 'will-it-fit',
  fields: [wires],
  results: [
    { name: 'diameterMm', label: 'Circle around them', symbol: 'D', round: 'up', digits: 4, primary: true },
    { name: 'lowerBoundMm', round: 'down' },
  ],
  steps: [
    {
      result: 'bundleDiameterMm',
      text: 'Circle around the best packing found',
      how: 'springs push overlapping circles apart while they are pressed together; the best of a few dozen tries',
      source: 'circle-packing',
    },
  ],
  sources: ['circle-packing', 'oler-1961'],
  cautions: ['local-code'],
  run: packBundle,
  input: (uses) => ({ wires: wireList('packBundle', uses['wires'] as string) }),
  scope: (_, output) => ({ bundleDiameterMm: output.diameterMm }),
});

export const sleeveFillCard = defineCard<SleeveFillInput, SleeveFillResult>({
  name: 'sleeveFill',
  area: 'bundle',
  question: 'Does this bundle fit its sleeve, grommet or hole?',
  page: 'will-it-fit',
  fields: [
    wires,
    {
      kind: 'choice',
      name: 'diameterRule',
      label: 'Bundle by which rule',
      choices: rules,
      example: 'multiplication-factor',
    },
    {
      kind: 'choice',
      name: 'sleeve',
      label: 'Goes into or through',
      choices: [
        { value: 'grommet', label: 'Grommet or seal that grips' },
        { value: 'braid', label: 'Braided sleeve that opens' },
        { value: 'heat-shrink', label: 'Heat-shrink sleeve' },
        { value: 'tube', label: 'Tube or conduit' },
        { value: 'hole', label: 'Bare hole in sheet metal' },
      ],
      example: 'grommet',
    },
    { kind: 'number', name: 'opensToMm', above: 0, example: 14, help: 'Bore; widest bundle; bore as supplied.' },
    {
      kind: 'number',
      name: 'closesToMm',
      min: 0,
      example: 8,
      help: 'Thinnest bundle that it grips; bore when fully shrunk. A tube and a hole have none.',
    },
  ],
  results: [
    { name: 'ok', label: 'Fits', round: 'nearest', primary: true },
    { name: 'bundleDiameterMm', round: 'up' },
    { name: 'fillFraction', label: 'Share of the bore that is wire', round: 'up' },
    { name: 'clearanceMm', round: 'down' },
  ],
  steps: [
    {
      result: 'bundleDiameterMm',
      text: 'Diameter of the bundle',
      how: 'by the rule chosen',
      source: 'bundle-factors',
    },
    {
      result: 'fillFraction',
      text: 'Wire over bore, circle by circle',
      formula: 'squareSumMm2 / opensToMm^2',
      source: 'statics',
    },
    {
      result: 'clearanceMm',
      text: 'Room on each side, in the middle of the bore',
      formula: '(opensToMm - bundleDiameterMm) / 2',
      source: 'statics',
    },
  ],
  sources: ['bundle-factors', 'nec-chapter-9-table-1', 'ac-43-13-1b-dressing'],
  cautions: ['local-code'],
  run: sleeveFill,
  input: (uses) => ({
    wires: wireList('sleeveFill', uses['wires'] as string),
    diameterRule: uses['diameterRule'] as SleeveFillInput['diameterRule'],
    sleeve: sleeveOf(uses['sleeve'] as string, uses['opensToMm'] as number, uses['closesToMm'] as number),
  }),
  scope: (values, output) => ({ squareSumMm2: output.fillFraction * Number(values['opensToMm']) ** 2 }),
});

function sleeveOf(kind: string, opensToMm: number, closesToMm: number): SleeveFillInput['sleeve'] {
  if (kind === 'tube') return { kind, boreMm: opensToMm, fillRule: 'nec-chapter-9-table-1' };
  if (kind === 'hole') return { kind, boreMm: opensToMm };
  if (kind === 'heat-shrink') return { kind, suppliedMm: opensToMm, recoveredMm: closesToMm };
  return { kind: kind as 'braid' | 'grommet', leastMm: closesToMm, mostMm: opensToMm };
}
