import { calibrateLevel, type CalibrateLevelInput, type LevelCan } from 'loomwright';
import { signedEntriesOf, unread } from '../entries.js';
import { defineCard } from '../type.js';

const CAN = /^(\d+\.?\d*|\.\d+)\s*L?[\s:=]+([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)$/i;

/** `5:2.49; 10:2.39`, or with a blank: litres put in so far and the reading then, parted by semicolons or lines. */
export function canList(fn: string, field: string, text: string): LevelCan[] {
  return signedEntriesOf(text).map((entry) => {
    const match = CAN.exec(entry);
    if (match === null) {
      const like = '5:2.49, the litres so far and then the reading';
      throw unread(fn, field, entry, like, 'cans are parted by semicolons, decimals are points');
    }
    return { totalL: Number(match[1]), readingValue: Number(match[2]) };
  });
}

const OPTIONAL = ['noiseValue', 'cellCount', 'wantedErrorL', 'readingStepValue', 'shownStepL'] as const;

export const calibrateLevelCard = defineCard({
  name: 'calibrateLevel',
  area: 'level',
  question: 'Which table do my cans of fuel make for the gauge?',
  page: 'calibrate-a-tank',
  fields: [
    {
      kind: 'text',
      name: 'cans',
      example:
        '0:2.497; 5:2.494; 10:2.391; 15:2.247; 20:2.089; 25:1.934; 30:1.771; 35:1.603; 40:1.419; 45:1.208; 50:0.967; 55:0.702; 60:0.611',
      help: 'Litres so far and the reading then, from the empty tank on; parted by semicolons. Repeat the litres to read twice.',
    },
    {
      kind: 'choice',
      name: 'readingUnit',
      choices: [
        { value: 'V', label: 'volts' },
        { value: 'Ω', label: 'ohms' },
        { value: 'count', label: 'counts' },
      ],
      example: 'V',
    },
    {
      kind: 'choice',
      name: 'readingGoes',
      choices: [
        { value: 'up', label: 'up' },
        { value: 'down', label: 'down' },
      ],
      example: 'down',
    },
    {
      kind: 'number',
      name: 'noiseValue',
      min: 0,
      example: 0.004,
      optional: true,
      help: 'One standard deviation. Empty to take it from cans that were read more than once.',
    },
    { kind: 'number', name: 'canToleranceFraction', min: 0, max: 0.999, example: 0.01, unit: '%' },
    {
      kind: 'choice',
      name: 'canErrors',
      choices: [
        { value: 'same-can', label: 'one can, filled again and again' },
        { value: 'each-its-own', label: 'each can errs by itself' },
      ],
      example: 'same-can',
    },
    {
      kind: 'number',
      name: 'coverageFactor',
      label: 'Deviations that count as certain',
      symbol: 'k',
      min: 1,
      max: 5,
      example: 2,
      help: 'For bands, and to call a reading off or still. 2 holds 19 times of 20.',
    },
    {
      kind: 'number',
      name: 'noughtAtL',
      min: 0,
      example: 7,
      help: '0 shows all that is in the tank. What the pump leaves, and a reserve, may stay below nought.',
    },
    { kind: 'number', name: 'unusableL', min: 0, example: 3 },
    {
      kind: 'choice',
      name: 'deadShows',
      choices: [
        { value: 'least', label: 'the least that may be there' },
        { value: 'most', label: 'the most that may be there' },
      ],
      example: 'least',
    },
    {
      kind: 'choice',
      name: 'between',
      choices: [
        { value: 'smooth', label: 'a smooth curve' },
        { value: 'straight', label: 'straight lines' },
      ],
      example: 'smooth',
    },
    { kind: 'number', name: 'mostGapL', above: 0, example: 6 },
    { kind: 'number', name: 'cellCount', min: 2, max: 5000, example: 8, optional: true },
    {
      kind: 'number',
      name: 'wantedErrorL',
      min: 0,
      example: null,
      optional: true,
      help: 'With it the fewest cells are taken that keep it.',
    },
    {
      kind: 'number',
      name: 'readingStepValue',
      above: 0,
      example: 0.01,
      optional: true,
      help: 'The controller holds readings to this step. Empty where it holds any number.',
    },
    { kind: 'number', name: 'shownStepL', above: 0, example: 0.5, optional: true },
  ],
  results: [
    { name: 'worstErrorL', round: 'up', digits: 3, primary: true },
    { name: 'heldCount', round: 'nearest', digits: 4, trim: true },
    { name: 'leastErrorL', round: 'up', digits: 3 },
    { name: 'roundingLossL', round: 'up', digits: 3 },
    { name: 'worstCanErrorL', round: 'up', digits: 3 },
    { name: 'widestBandL', round: 'up', digits: 3 },
    { name: 'noiseMostL', round: 'up', digits: 3 },
    { name: 'hiddenBottomL', round: 'up', digits: 3 },
    { name: 'reserveL', round: 'down', digits: 3 },
  ],
  steps: [
    {
      result: 'fullCanL',
      text: 'All litres at full, by the tolerance of the one can',
      formula: 'canToleranceFraction * lastL / sqrt(3)',
      source: 'jcgm-100',
      when: (values) => values['canErrors'] === 'same-can',
    },
    {
      result: 'leastErrorL',
      text: 'Least worst error of a table of so many cells',
      how: 'readings made to go one way by least squares, joined by a curve that never turns back; then the cells as in the table builder',
      source: 'imai-iri-1988',
    },
    {
      result: 'roundingLossL',
      text: 'What rounding costs',
      formula: 'worstErrorL - leastErrorL',
      source: 'imai-iri-1988',
    },
    {
      result: 'reserveL',
      text: 'Kept below nought for the pump',
      formula: 'noughtAtL - unusableL',
      source: 'given-by-caller',
      when: (values) => Number(values['noughtAtL']) >= Number(values['unusableL']),
    },
  ],
  sources: ['ayer-1955', 'fritsch-carlson-1980', 'imai-iri-1988', 'jcgm-100'],
  cautions: ['fuel', 'local-code'],
  run: calibrateLevel,
  input: (uses): CalibrateLevelInput => ({
    ...(uses as unknown as CalibrateLevelInput),
    cans: canList('calibrateLevel', 'cans', uses['cans'] as string),
    ...(Object.fromEntries(OPTIONAL.map((name) => [name, uses[name] ?? null])) as Pick<
      CalibrateLevelInput,
      (typeof OPTIONAL)[number]
    >),
  }),
  scope: (_, output) => {
    if (!output.possible) return { heldCount: null, fullCanL: null, lastL: null, hiddenBottomL: null };
    const last = output.cans.at(-1);
    return {
      heldCount: output.cells.length,
      fullCanL: last?.canL ?? null,
      lastL: last?.totalL ?? null,
      hiddenBottomL: output.zones.find(({ where }) => where === 'bottom')?.hiddenL ?? 0,
    };
  },
});
