import {
  canError29,
  canError31,
  type CanErrorRule,
  canFrameBits,
  type CanFrameBitsInput,
  type CanIdBits,
  canLoad,
  type CanLoadInput,
  canResponseTimes,
  type CanResponseTimes,
  type CanResponseTimesInput,
} from 'loomwright';
import { type ChoiceField, defineCard, type NumberField, type TextField, type Uses } from '../type.js';
import { messageList } from './lists.js';

const ID: ChoiceField = {
  kind: 'choice',
  name: 'idBits',
  label: 'Identifier',
  choices: [
    { value: '11', label: '11 bits', use: 11 },
    { value: '29', label: '29 bits', use: 29 },
  ],
  example: '11',
};

const RATE: NumberField = { kind: 'number', name: 'bitRateBitPerS', above: 0, example: 250_000, unit: 'kbit/s' };

const MESSAGES: TextField = {
  kind: 'text',
  name: 'messages',
  label: 'Messages, highest priority first',
  example:
    'switches: 2 bytes every 20 ms within 20 ms; speed and pump: 8 bytes every 10 ms within 10 ms; temperatures: 8 bytes every 100 ms within 100 ms jitter 2 ms; clock: 4 bytes every 1 s',
  help: 'speed: 8 bytes every 10 ms within 5 ms jitter 1 ms; and so on. The lowest identifier goes first.',
};

const messagesOf = (fn: string, uses: Uses) =>
  messageList(fn, 'messages', uses['messages'] as string, uses['idBits'] as CanIdBits);

export const canFrameBitsCard = defineCard({
  name: 'canFrameBits',
  area: 'bus',
  question: 'How long does a message hold the line?',
  page: 'can-load',
  fields: [ID, { kind: 'number', name: 'dataByteCount', min: 0, max: 8, example: 8 }, { ...RATE, example: 500_000 }],
  results: [
    { name: 'mostWithSpaceS', round: 'up', primary: true },
    { name: 'mostWithSpaceBits', round: 'up', trim: true },
    { name: 'mostBits', round: 'up', trim: true },
    { name: 'leastBits', round: 'down', trim: true },
    { name: 'stuffBits', round: 'up', trim: true },
  ],
  steps: [
    {
      result: 'stuffableBits',
      text: 'Bits that stuffing may lengthen',
      how: '34 bits beside the data with 11 bits of identifier, 54 with 29; 8 for each byte',
      source: 'can-frame-bits',
    },
    {
      result: 'stuffBits',
      text: 'Most stuff bits',
      how: 'one after the first five, then one after every four: a quarter of all but the first, whole ones',
      source: 'can-frame-bits',
    },
    {
      result: 'mostBits',
      text: 'With the 10 bits of the end, which none is put into',
      formula: 'stuffableBits + stuffBits + tailBits',
      constants: [{ name: 'tailBits', symbol: 'n_\\mathrm{end}', value: 10, unit: 'bits', source: 'can-frame-bits' }],
      source: 'can-frame-bits',
    },
    {
      result: 'mostWithSpaceBits',
      text: 'And the space after it',
      formula: 'mostBits + spaceBits',
      constants: [{ name: 'spaceBits', symbol: 'n_\\mathrm{space}', value: 3, unit: 'bits', source: 'can-frame-bits' }],
      source: 'can-frame-bits',
    },
    {
      result: 'mostWithSpaceS',
      text: 'Time on the line',
      formula: 'mostWithSpaceBits / bitRateBitPerS',
      source: 'can-frame-bits',
    },
  ],
  sources: ['can-frame-bits'],
  cautions: ['prove-slowly'],
  run: canFrameBits,
  input: (uses): CanFrameBitsInput => uses as unknown as CanFrameBitsInput,
});

export const canLoadCard = defineCard({
  name: 'canLoad',
  area: 'bus',
  question: 'How busy is the line?',
  page: 'can-load',
  fields: [
    RATE,
    ID,
    MESSAGES,
    {
      kind: 'choice',
      name: 'stuffing',
      label: 'Stuff bits',
      choices: [
        { value: 'most', label: 'the most that can occur' },
        { value: 'none', label: 'none' },
      ],
      example: 'most',
    },
    {
      kind: 'choice',
      name: 'interframe',
      label: 'Space after a frame',
      choices: [
        { value: 'counted', label: 'counted' },
        { value: 'left-out', label: 'left out' },
      ],
      example: 'counted',
    },
    {
      kind: 'number',
      name: 'allowedFraction',
      label: 'Allowed',
      above: 0,
      max: 1,
      example: 0.5,
      unit: '%',
      help: 'No standard names a limit. Leave room for what is added later.',
    },
  ],
  results: [
    { name: 'loadFraction', round: 'up', primary: true },
    { name: 'framesPerS', round: 'nearest' },
    { name: 'convention', label: 'Counted with', round: 'nearest' },
  ],
  steps: [
    {
      result: 'loadFraction',
      text: 'Load of the line',
      how: 'the time of each frame over the time between two of it, summed',
      source: 'can-frame-bits',
    },
  ],
  sources: ['can-frame-bits', 'broster-2002'],
  cautions: ['prove-slowly'],
  run: canLoad,
  input: (uses): CanLoadInput => ({
    bitRateBitPerS: uses['bitRateBitPerS'] as number,
    messages: messagesOf('canLoad', uses),
    stuffing: uses['stuffing'] as CanLoadInput['stuffing'],
    interframe: uses['interframe'] as CanLoadInput['interframe'],
    allowedFraction: uses['allowedFraction'] as number,
  }),
});

/** The answer's times, whether all deadlines are kept or not. */
const timesOf = (output: ReturnType<typeof canResponseTimes>): CanResponseTimes | null =>
  output.possible ? output : output.nearest;

export const canResponseTimesCard = defineCard({
  name: 'canResponseTimes',
  area: 'bus',
  question: 'Does every message arrive in time?',
  page: 'can-load',
  fields: [
    RATE,
    ID,
    MESSAGES,
    {
      kind: 'choice',
      name: 'ownInterframe',
      label: 'A message has arrived',
      choices: [
        { value: 'left-out', label: 'when its frame ends' },
        { value: 'counted', label: 'after the 3 bits of space' },
      ],
      example: 'left-out',
    },
    {
      kind: 'choice',
      name: 'blocking',
      label: 'It may first wait for',
      choices: [
        { value: 'lower-frames-or-space', label: 'a lower frame, at least 3 bits' },
        { value: 'lower-frames', label: 'a lower frame' },
        { value: 'lower-and-own-frames', label: 'a lower frame or its own' },
      ],
      example: 'lower-frames-or-space',
    },
    { kind: 'number', name: 'faultCount', label: 'Faults on the line', min: 0, max: 1000, example: 1 },
    {
      kind: 'choice',
      name: 'faultRule',
      label: 'A fault costs',
      choices: [
        { value: 'error31', label: '31 bits and the frame with its space', use: canError31, identifier: 'canError31' },
        { value: 'error29', label: '29 bits and the frame', use: canError29, identifier: 'canError29' },
      ],
      example: 'error31',
    },
  ],
  results: [
    { name: 'worstResponseS', round: 'up', primary: true },
    { name: 'loadFraction', round: 'up' },
  ],
  steps: [
    {
      result: 'worstResponseS',
      text: 'Longest response of all',
      how: 'each message waits for one lower frame, for faults, and for all of higher priority that become due until it may begin; all its sendings in one busy time are looked at',
      source: 'davis-2007',
    },
  ],
  sources: ['davis-2007', 'broster-2002', 'sae-message-set', 'can-frame-bits'],
  cautions: ['prove-slowly', 'local-code'],
  run: canResponseTimes,
  input: (uses): CanResponseTimesInput => ({
    bitRateBitPerS: uses['bitRateBitPerS'] as number,
    messages: messagesOf('canResponseTimes', uses),
    ownInterframe: uses['ownInterframe'] as CanResponseTimesInput['ownInterframe'],
    blocking: uses['blocking'] as CanResponseTimesInput['blocking'],
    faults: { faultCount: uses['faultCount'] as number, rule: uses['faultRule'] as CanErrorRule },
  }),
  scope: (_, output) => {
    const times = timesOf(output);
    const responses = times?.messages.map(({ responseS }) => responseS) ?? [];
    const known = responses.filter((response) => response !== null);
    return {
      worstResponseS: known.length === responses.length && known.length > 0 ? Math.max(...known) : null,
      loadFraction: times?.loadFraction ?? null,
    };
  },
});
