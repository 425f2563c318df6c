import {
  bladeFuse,
  boltInFuseSf30,
  boltInFuseSf51,
  type CheckFuseResult,
  type ChosenFuse,
  type FuseCircuit,
  type FusedWire,
  type FusePulse,
  largeBladeFuse,
  miniFuse,
  type OverloadRule,
  type PulseShape,
} from 'loomwright';
import type { Choice, Constant, Field, Step, Uses, Values } from '../type.js';

/** Blade families as choices of a card. */
export const bladeChoices: readonly Choice[] = [
  { value: 'blade-fuse', label: 'Blade, medium (ISO 8820-3 type C)', use: bladeFuse, identifier: 'bladeFuse' },
  { value: 'mini-fuse', label: 'Blade, small (type F, from memory)', use: miniFuse, identifier: 'miniFuse' },
  { value: 'large-blade-fuse', label: 'Blade, large (type E)', use: largeBladeFuse, identifier: 'largeBladeFuse' },
];

/** Bolt-in families as choices of a card. */
export const boltInChoices: readonly Choice[] = [
  {
    value: 'bolt-in-fuse-sf51',
    label: 'Bolt-in SF51, 100 to 500 A (from memory)',
    use: boltInFuseSf51,
    identifier: 'boltInFuseSf51',
  },
  {
    value: 'bolt-in-fuse-sf30',
    label: 'Bolt-in SF30, 30 to 150 A (from memory)',
    use: boltInFuseSf30,
    identifier: 'boltInFuseSf30',
  },
];

/** Every rating of the three, as choices: which are made depends on the family. */
export const ratingChoices: readonly Choice[] = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40].map((rating) => ({
  value: String(rating),
  label: `${rating} A`,
  use: rating,
}));

export const shapeChoices: readonly Choice[] = [
  { value: 'square', label: 'Square' },
  { value: 'exponential', label: 'Decay: its time constant' },
  { value: 'half-sine', label: 'Half sine' },
  { value: 'triangle', label: 'Triangle' },
  { value: 'parabola', label: 'Parabola, i = k t²' },
];

export const ruleChoices: readonly Choice[] = [
  { value: 'strict', label: 'Strict: opens before the wire is at its class' },
  { value: 'iec-60364-4-43', label: 'IEC 60364-4-43 (from memory)' },
  { value: 'rating-at-most-ampacity', label: 'Rating at most the ampacity' },
  { value: 'us-33-cfr-183-455', label: '33 CFR 183.455: 150 % of the ampacity' },
];

/** What a wire bears for a while, in fields. */
export function wireFields(example: {
  readonly areaMm2: number;
  readonly ambientTempC: number;
  readonly maxConductorTempC: number;
  readonly overloadTempC: number;
  readonly shortTempC: number;
}): readonly Field[] {
  return [
    { kind: 'number', name: 'areaMm2', above: 0, example: example.areaMm2 },
    {
      kind: 'number',
      name: 'wireAmbientTempC',
      min: -60,
      max: 200,
      example: example.ambientTempC,
    },
    {
      kind: 'number',
      name: 'classTempC',
      min: -60,
      max: 400,
      example: example.maxConductorTempC,
    },
    {
      kind: 'number',
      name: 'overloadTempC',
      min: -60,
      max: 400,
      example: example.overloadTempC,
      help: 'The class itself, where nothing more is known.',
    },
    {
      kind: 'number',
      name: 'faultTempC',
      min: -60,
      max: 400,
      example: example.shortTempC,
      help: 'PVC 160, rubber 200 to 220, cross-linked polyethylene 250.',
    },
  ];
}

/** The wire of those fields. */
export function wireOf(uses: Uses): FusedWire {
  const n = (name: string): number => uses[name] as number;
  return {
    areaMm2: n('areaMm2'),
    ambientTempC: n('wireAmbientTempC'),
    maxConductorTempC: n('classTempC'),
    overloadTempC: n('overloadTempC'),
    shortTempC: n('faultTempC'),
  };
}

/** The fields of a circuit: all but family and rating. */
export const circuitFields: readonly Field[] = [
  { kind: 'number', name: 'continuousA', above: 0, example: 9 },
  { kind: 'number', name: 'continuousFraction', above: 0, max: 1, example: 0.75, unit: '%' },
  { kind: 'number', name: 'ambientTempC', min: -40, max: 125, example: 45, label: 'Air around the fuse' },
  { kind: 'choice', name: 'pulseShape', choices: shapeChoices, example: 'exponential' },
  { kind: 'number', name: 'peakA', above: 0, example: 42, label: 'Peak at the start', symbol: 'i_p' },
  { kind: 'number', name: 'pulseS', above: 0, example: 0.06, unit: 'ms' },
  {
    kind: 'number',
    name: 'count',
    min: 1,
    example: 10000,
    label: 'Starts',
    symbol: 'n',
    help: 'In the life of the fuse; shares are printed up to 100 000.',
  },
  { kind: 'number', name: 'restS', min: 0, example: 30, help: 'Shares of the guides hold from 10 s on.' },
  { kind: 'number', name: 'ampacityA', above: 0, example: 22 },
  { kind: 'choice', name: 'overloadRule', choices: ruleChoices, example: 'iec-60364-4-43' },
  ...wireFields({ areaMm2: 1.5, ambientTempC: 50, maxConductorTempC: 105, overloadTempC: 130, shortTempC: 250 }),
  { kind: 'number', name: 'farShortA', above: 0, example: 96 },
  { kind: 'number', name: 'clearWithinS', above: 0, example: 0.5 },
  { kind: 'number', name: 'prospectiveA', above: 0, optional: true, example: 620 },
  { kind: 'number', name: 'systemV', above: 0, optional: true, example: 15 },
];

/** The circuit of those fields. */
export function circuitOf(uses: Uses): FuseCircuit {
  const n = (name: string): number => uses[name] as number;
  const pulse: FusePulse = {
    name: 'start',
    shape: uses['pulseShape'] as PulseShape,
    peakA: n('peakA'),
    durationS: n('pulseS'),
    count: n('count'),
    restS: n('restS'),
  };
  return {
    family: uses['family'] as FuseCircuit['family'],
    continuousA: n('continuousA'),
    continuousFraction: n('continuousFraction'),
    ambientTempC: n('ambientTempC'),
    ampacityA: n('ampacityA'),
    overloadRule: uses['overloadRule'] as OverloadRule,
    farShortA: n('farShortA'),
    clearWithinS: n('clearWithinS'),
    pulses: [pulse],
    wire: wireOf(uses),
    ...(uses['prospectiveA'] === undefined ? {} : { prospectiveA: n('prospectiveA') }),
    ...(uses['systemV'] === undefined ? {} : { systemV: n('systemV') }),
  };
}

const oneSecond: Constant = { name: 'oneSecond', symbol: 't_1', value: 1, unit: 's', source: 'iec-60949' };
const zero: Constant = { name: 'zeroTempC', symbol: 'T_0', value: 234.5, unit: 'K', source: 'nbs-hb-100' };

/** The working of one fuse in its circuit. */
export const fuseSteps: readonly Step[] = [
  {
    result: 'carriedA',
    text: 'What the fuse may carry for good in its surroundings',
    formula: 'ratingA * ambientFactor * continuousFraction',
    source: 'fuse-selection-guides',
  },
  {
    result: 'pulseA2s',
    text: 'I²t of the start, by its shape',
    formula: 'shapeFactor * peakA^2 * pulseS',
    source: 'fuse-selection-guides',
  },
  {
    result: 'mayNeverOpenA',
    text: 'Current that may flow for good without opening the fuse',
    formula: 'openingRatio * ratingA',
    source: 'iso-8820-3',
  },
  {
    result: 'heatFactor',
    text: 'Share of the heat balance that this current takes',
    formula: '(classTempC - wireAmbientTempC) / (zeroTempC + classTempC) * (mayNeverOpenA / ampacityA)^2',
    constants: [zero],
    source: 'heat-balance',
  },
  {
    result: 'mayNeverOpenTempC',
    text: 'Temperature that the wire then reaches',
    formula: 'wireAmbientTempC + heatFactor * (zeroTempC + wireAmbientTempC) / (1 - heatFactor)',
    constants: [zero],
    source: 'heat-balance',
  },
  {
    result: 'oneSecondAPerMm2',
    text: 'k of the wire, from its class to what it bears for seconds',
    formula: 'metalAPerMm2 * sqrt(log((zeroTempC + faultTempC) / (zeroTempC + classTempC)))',
    constants: [zero, { name: 'metalAPerMm2', symbol: 'K', value: 226, unit: 'A/mm^2', source: 'iec-60949' }],
    source: 'iec-60949',
  },
  {
    result: 'withstandI2tA2s',
    text: 'Let-through that the wire bears',
    formula: '(oneSecondAPerMm2 * areaMm2)^2 * oneSecond',
    constants: [oneSecond],
    source: 'iec-60949',
  },
  {
    result: 'letThroughA2s',
    text: 'Longest that the fuse lets through at the current where the wire has least room',
    how: 'longest opening by the family, straight on logarithmic scales between printed points',
    source: 'iso-8820-3',
  },
  {
    result: 'farShortRatio',
    text: 'The short at the far end as a multiple of the rating',
    formula: 'farShortA / ratingA',
    source: 'circuit-theory',
  },
];

/** Share of peak² × time of each shape. */
const SHAPE: Readonly<Record<string, number>> = {
  square: 1,
  exponential: 1 / 2,
  'half-sine': 1 / 2,
  triangle: 1 / 3,
  parabola: 1 / 5,
};

/** What the steps name, from one judged fuse. */
export function fuseScope(values: Values, output: CheckFuseResult | ChosenFuse): Record<string, number | null> {
  const n = (name: string): number => values[name] as number;
  const { ratingA, checks, letThrough, mayNeverOpenA, mayNeverOpenTempC, ambientFactor } = output;
  const gain =
    ((n('classTempC') - n('wireAmbientTempC')) / (234.5 + n('classTempC'))) * (mayNeverOpenA / n('ampacityA')) ** 2;
  const withstandI2tA2s = letThrough[0]?.withstandI2tA2s ?? null;
  const through = checks.find(({ name }) => name.startsWith('let-through'));
  return {
    ratingA,
    ambientFactor,
    carriedA: ratingA * ambientFactor * n('continuousFraction'),
    shapeFactor: SHAPE[values['pulseShape'] as string] ?? null,
    pulseA2s: checks.find(({ name }) => name.startsWith('pulse'))?.value ?? null,
    openingRatio: mayNeverOpenA / ratingA,
    mayNeverOpenA,
    mayNeverOpenTempC,
    heatFactor: mayNeverOpenTempC === null ? null : gain,
    withstandI2tA2s,
    oneSecondAPerMm2: withstandI2tA2s === null ? null : Math.sqrt(withstandI2tA2s) / n('areaMm2'),
    letThroughA2s: through?.value ?? null,
    farShortRatio: output.farShortRatio,
  };
}
