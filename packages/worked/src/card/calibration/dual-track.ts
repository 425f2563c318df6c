import {
  type AgreementBand,
  type AgreementRow,
  dualTrack,
  type DualTrackInput,
  type DualTrackResult,
  type PedalTrack,
} from 'loomwright';
import { entriesOf, unread } from '../entries.js';
import { defineCard, type Field, type Uses, type Values } from '../type.js';

/** The answer with its worst fault in words. */
export interface DualTrackShown extends DualTrackResult {
  readonly worstInWords: string;
}

const NUMBER = String.raw`((?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)`;
const ROW = new RegExp(String.raw`^${NUMBER}[\s:=]+${NUMBER}\s+(?:to\s+)?${NUMBER}$`, 'i');

/** `0.37 0 0.37; 5 2.31 2.69`: volts of the first input, then the least and the most of the second. */
export function agreementRows(text: string): AgreementRow[] {
  return entriesOf(text).map((entry) => {
    const match = ROW.exec(entry);
    if (match === null) {
      const like = '5 2.31 2.69, volts of the first input, then least and most of the second';
      throw unread('dualTrack', 'rows', entry, like, 'rows are parted by semicolons, decimals are points');
    }
    return { firstV: Number(match[1]), lowestSecondV: Number(match[2]), highestSecondV: Number(match[3]) };
  });
}

interface TrackExample {
  readonly releasedV: number;
  readonly pressedV: number;
  readonly pullUpOhm: number | null;
  readonly pullDownOhm: number | null;
  readonly lowLimitV: number;
  readonly highLimitV: number;
}

/** The fields of one track and its input. */
function trackFields(who: 'first' | 'second', example: TrackExample): Field[] {
  const own = who === 'first' ? 'First track' : 'Second track';
  const n = who === 'first' ? 1 : 2;
  const volts = (name: keyof TrackExample, label: string, symbol: string, help?: string): Field => ({
    kind: 'number',
    name: `${who}${name.charAt(0).toUpperCase()}${name.slice(1)}`,
    label: `${own}${label}`,
    symbol: `${symbol}${n}}`,
    min: 0,
    example: example[name],
    ...(help === undefined ? {} : { help }),
  });
  const pull = (name: 'pullUpOhm' | 'pullDownOhm', label: string, symbol: string): Field => ({
    kind: 'number',
    name: `${who}${name.charAt(0).toUpperCase()}${name.slice(1)}`,
    label: `${own}${label}`,
    symbol: `${symbol}${n}}`,
    min: 1,
    max: 1e9,
    optional: true,
    example: example[name],
    unit: 'kΩ',
  });
  return [
    volts('releasedV', ', released', 'V_{r', 'With nothing connected to the signal.'),
    volts('pressedV', ', pressed', 'V_{p'),
    pull('pullUpOhm', ': pull-up', 'R_{u'),
    pull('pullDownOhm', ': pull-down', 'R_{d'),
    volts('lowLimitV', ' is a fault below', 'V_{l'),
    volts('highLimitV', ' is a fault above', 'V_{h'),
  ];
}

function trackOf(who: 'first' | 'second', uses: Uses): PedalTrack {
  const own = (name: string): number => uses[`${who}${name}`] as number;
  const ends = {
    releasedV: own('ReleasedV'),
    pressedV: own('PressedV'),
    toleranceV: uses['trackToleranceV'] as number,
    seriesOhm: uses['seriesOhm'] as number,
    pullUpOhm: (uses[`${who}PullUpOhm`] as number | undefined) ?? null,
    pullDownOhm: (uses[`${who}PullDownOhm`] as number | undefined) ?? null,
    inputOhm: (uses['inputOhm'] as number | undefined) ?? null,
    pullToleranceFraction: uses['pullToleranceFraction'] as number,
    converterErrorV: uses['converterErrorV'] as number,
    lowLimitV: own('LowLimitV'),
    highLimitV: own('HighLimitV'),
  };
  if (uses['kind'] === 'potentiometer') {
    return { kind: 'potentiometer', resistanceOhm: uses['trackOhm'] as number, ...ends };
  }
  const floats = uses['kind'] === 'active-floats';
  return {
    kind: 'active',
    lostSupply: floats ? 'floats' : 'to-ground',
    lostGround: floats ? 'floats' : 'to-supply',
    ...ends,
  };
}

function bandOf(uses: Uses): AgreementBand {
  switch (uses['band']) {
    case 'travel':
      return { by: 'travel', bandFraction: uses['bandFraction'] as number };
    case 'rows':
      return { by: 'rows', rows: agreementRows(uses['rows'] as string) };
    default:
      return { by: 'volts', bandV: uses['bandV'] as number };
  }
}

/** Words for the faults, as a page and a table write them. */
export const pedalFaultWords = {
  'supply-open': 'supply wire open',
  'ground-open': 'ground wire open',
  'signal-open': 'signal wire open',
  'signal-to-ground': 'signal on ground',
  'signal-to-supply': 'signal on the supply',
  'signal-to-battery': 'signal on the battery',
  'signals-together': 'both signals together',
  'supply-sags': 'supply sags',
  'ground-raised': 'ground raised',
} as const;

/** A fault in words: what, and of which track. */
export function pedalFaultText({
  kind,
  at,
}: {
  readonly kind: keyof typeof pedalFaultWords;
  readonly at: string;
}): string {
  if (kind === 'signals-together') return pedalFaultWords[kind];
  return `${pedalFaultWords[kind]}, ${at === 'both' ? 'both tracks' : `${at} track`}`;
}

function run(input: DualTrackInput): DualTrackShown {
  const result = dualTrack(input);
  const worst = result.faults.find(({ kind, at }) => `${kind}, ${at}` === result.worstFault);
  return { ...result, worstInWords: worst === undefined ? 'none' : pedalFaultText(worst) };
}

const byVolts = (values: Values): boolean => values['band'] === 'volts';

export const dualTrackCard = defineCard({
  name: 'dualTrack',
  area: 'calibration',
  question: 'Which faults of a two-track pedal are seen, and which open the throttle unseen?',
  page: 'pedal-tracks',
  fields: [
    { kind: 'number', name: 'supplyV', min: 0.1, max: 1000, example: 5, label: 'Supply of the pedal' },
    {
      kind: 'choice',
      name: 'wiring',
      label: 'Supply and ground',
      choices: [
        { value: 'own', label: 'a wire of each for each track' },
        { value: 'shared', label: 'one of each for both tracks' },
      ],
      example: 'own',
    },
    {
      kind: 'choice',
      name: 'kind',
      label: 'Each track is',
      choices: [
        { value: 'potentiometer', label: 'a potentiometer' },
        { value: 'active-floats', label: 'an output; lets go without supply or ground' },
        { value: 'active-held', label: 'an output; held by the wire that is left' },
      ],
      example: 'potentiometer',
    },
    {
      kind: 'number',
      name: 'trackOhm',
      min: 1,
      max: 1e7,
      example: 2000,
      unit: 'kΩ',
      help: 'Whole resistance of a potentiometer.',
    },
    {
      kind: 'number',
      name: 'seriesOhm',
      label: 'In its wiper or output',
      symbol: 'R_s',
      min: 0.1,
      max: 1e7,
      example: 500,
    },
    ...trackFields('first', {
      releasedV: 0.8,
      pressedV: 4,
      pullUpOhm: null,
      pullDownOhm: 220_000,
      lowLimitV: 0.5,
      highLimitV: 4.5,
    }),
    ...trackFields('second', {
      releasedV: 0.4,
      pressedV: 2,
      pullUpOhm: null,
      pullDownOhm: 220_000,
      lowLimitV: 0.2,
      highLimitV: 2.4,
    }),
    { kind: 'number', name: 'inputOhm', min: 1, max: 1e9, example: null, optional: true, unit: 'MΩ' },
    {
      kind: 'number',
      name: 'ratio',
      label: 'Second is expected at, times the first',
      symbol: 'k',
      example: 0.5,
      help: 'Below 0 where one rises and the other falls.',
    },
    { kind: 'number', name: 'offsetV', example: 0 },
    {
      kind: 'choice',
      name: 'band',
      label: 'They may differ by',
      choices: [
        { value: 'volts', label: 'volts' },
        { value: 'travel', label: 'travel' },
        { value: 'rows', label: 'rows of a table' },
      ],
      example: 'volts',
    },
    { kind: 'number', name: 'bandV', above: 0, example: 0.13, unit: 'mV' },
    { kind: 'number', name: 'bandFraction', example: 0.08, unit: '%', help: 'Counts for travel: 2° of 16° is 12.5 %.' },
    {
      kind: 'text',
      name: 'rows',
      label: 'First at, second from, to',
      example: '0.5 0.05 0.45; 4.5 2.05 2.45',
      help: 'Counts for rows.',
    },
    { kind: 'number', name: 'disagreeS', min: 0, example: 0.3, unit: 'ms' },
    { kind: 'number', name: 'rangeS', min: 0, example: 0.1, unit: 'ms' },
    { kind: 'number', name: 'sampleS', label: 'Between two looks', symbol: 't_3', min: 0, example: 0.01, unit: 'ms' },
    {
      kind: 'choice',
      name: 'shows',
      label: 'The throttle follows',
      choices: [
        { value: 'first', label: 'the first track' },
        { value: 'lowest', label: 'the lower of both' },
        { value: 'mean', label: 'their mean' },
      ],
      example: 'first',
    },
    { kind: 'number', name: 'trackToleranceV', min: 0, example: 0.03, unit: 'mV' },
    { kind: 'number', name: 'converterErrorV', min: 0, example: 0.005, unit: 'mV' },
    {
      kind: 'number',
      name: 'pullToleranceFraction',
      label: 'Tolerance of the pulls',
      symbol: 't_\\mathrm{pull}',
      min: 0,
      max: 0.5,
      example: 0.05,
      unit: '%',
    },
    {
      kind: 'number',
      name: 'supplyToleranceFraction',
      label: 'Tolerance of the supply',
      symbol: 't_s',
      min: 0,
      max: 0.5,
      example: 0.005,
      unit: '%',
      help: 'Beside that of the converter. 0 where both hang on the same volts.',
    },
    { kind: 'number', name: 'sagSupplyV', min: 0, example: 4.5 },
    { kind: 'number', name: 'raisedGroundV', min: 0, example: 0.4, unit: 'mV' },
    { kind: 'number', name: 'batteryV', label: 'A chafed signal meets', symbol: 'V_B', min: 0, example: 14.4 },
    { kind: 'number', name: 'guardV', label: 'Room wanted to every limit', min: 0, example: 0.01, unit: 'mV' },
    { kind: 'number', name: 'allowedErrorFraction', min: 0, max: 1, example: 0.05, unit: '%' },
  ],
  results: [
    {
      name: 'mostOverFraction',
      label: 'Throttle raised unseen by up to',
      symbol: 'e',
      round: 'up',
      digits: 3,
      primary: true,
    },
    { name: 'worstInWords', label: 'Worst fault', round: 'nearest' },
    {
      name: 'roomV',
      label: 'Room of a healthy pedal in the band',
      symbol: 'V_\\mathrm{room}',
      round: 'down',
      digits: 3,
    },
    {
      name: 'leastBandV',
      label: 'Smallest band that it never trips',
      symbol: 'b_\\mathrm{min}',
      round: 'up',
      digits: 3,
    },
    { name: 'leastBandFraction', round: 'up', digits: 3 },
    { name: 'tightestOverFraction', round: 'up', digits: 3 },
    { name: 'fitRatio', round: 'nearest', digits: 4 },
    { name: 'fitOffsetV', round: 'nearest', digits: 3 },
    { name: 'pressedLowestV', round: 'nearest', digits: 4 },
    { name: 'pressedHighestV', round: 'nearest', digits: 4 },
  ],
  steps: [
    {
      result: 'pressedLowestV',
      text: 'Pressed, the second may read as little as',
      formula: 'ratio * pressedFirstV + offsetV - bandV',
      source: 'circuit-theory',
      when: byVolts,
    },
    {
      result: 'pressedHighestV',
      text: 'And as much as',
      formula: 'ratio * pressedFirstV + offsetV + bandV',
      source: 'circuit-theory',
      when: byVolts,
    },
    {
      result: 'fitRatio',
      text: 'Slope through both healthy ends',
      formula: '(pressedSecondV - releasedSecondV) / (pressedFirstV - releasedFirstV)',
      source: 'circuit-theory',
    },
    {
      result: 'leastBandV',
      text: 'Smallest band that a healthy pedal never trips',
      how: 'tracks, pulls, supply and converter at their worst corners at 201 places, and the room wanted',
      source: 'circuit-theory',
    },
    {
      result: 'mostOverFraction',
      text: 'Most that the throttle is raised unseen',
      how: 'every wire open, every signal shorted, both joined, supply and ground shifted; each over the whole travel',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'pedal-service-texts'],
  cautions: ['throttle', 'local-code'],
  run,
  input: (uses): DualTrackInput => ({
    supplyV: uses['supplyV'] as number,
    supplyToleranceFraction: uses['supplyToleranceFraction'] as number,
    wiring: uses['wiring'] as 'own' | 'shared',
    first: trackOf('first', uses),
    second: trackOf('second', uses),
    ratio: uses['ratio'] as number,
    offsetV: uses['offsetV'] as number,
    band: bandOf(uses),
    shows: uses['shows'] as 'first' | 'lowest' | 'mean',
    disagreeS: uses['disagreeS'] as number,
    rangeS: uses['rangeS'] as number,
    sampleS: uses['sampleS'] as number,
    batteryV: uses['batteryV'] as number,
    sagSupplyV: uses['sagSupplyV'] as number,
    raisedGroundV: uses['raisedGroundV'] as number,
    guardV: uses['guardV'] as number,
    allowedErrorFraction: uses['allowedErrorFraction'] as number,
  }),
  scope: (_, { first, second, healthy, tightest }) => ({
    releasedFirstV: first.releasedV,
    pressedFirstV: first.pressedV,
    releasedSecondV: second.releasedV,
    pressedSecondV: second.pressedV,
    pressedLowestV: healthy.at(-1)?.lowestSecondV ?? null,
    pressedHighestV: healthy.at(-1)?.highestSecondV ?? null,
    tightestOverFraction: tightest.mostOverFraction,
  }),
});
