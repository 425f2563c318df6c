import { adaptSender, type AdaptSenderInput } from 'loomwright';
import { ohmList } from '../divider/lists.js';
import { seriesField } from '../divider/series.js';
import { defineCard } from '../type.js';

export const adaptSenderCard = defineCard({
  name: 'adaptSender',
  area: 'level',
  question: 'Can resistors make this sender fit that gauge?',
  page: 'sender-fits-or-cannot',
  fields: [
    {
      kind: 'text',
      name: 'senderOhm',
      label: 'Sender, Ω from empty to full',
      example: '0, 280',
      help: 'At equal steps of the level. Two figures for a straight one; five measured ones are better.',
    },
    {
      kind: 'text',
      name: 'gaugeOhm',
      label: 'Gauge, Ω from empty to full',
      example: '0, 90',
      help: 'At equal steps of its dial.',
    },
    {
      kind: 'choice',
      name: 'resistors',
      label: 'Resistors',
      choices: [
        { value: 'sought', label: 'seek the best' },
        { value: 'given', label: 'try these' },
      ],
      example: 'sought',
    },
    { kind: 'number', name: 'tryAtSenderOhm', example: 0, help: 'Of one’s own. 0 for none.' },
    { kind: 'number', name: 'tryAcrossOhm', example: null, optional: true, help: 'Of one’s own. Empty for none.' },
    { kind: 'number', name: 'tryAtGaugeOhm', example: 0, help: 'Of one’s own. 0 for none.' },
    seriesField('E24'),
    { kind: 'number', name: 'toleranceFraction', min: 0, example: 0.01, unit: '%' },
    {
      kind: 'number',
      name: 'mostErrorFraction',
      min: 0,
      example: 0.25,
      unit: '%',
      help: 'Of the dial. Small ones are rarely possible.',
    },
  ],
  results: [
    { name: 'worstErrorFraction', round: 'up', primary: true },
    { name: 'senderSideOhm', round: 'nearest', digits: 4, trim: true },
    { name: 'acrossOhm', round: 'nearest', digits: 4, trim: true },
    { name: 'gaugeSideOhm', round: 'nearest', digits: 4, trim: true },
    { name: 'worstAtFraction', round: 'nearest', digits: 3 },
    { name: 'mostOverFraction', round: 'up' },
    { name: 'mostUnderFraction', round: 'up' },
    { name: 'emptyShownFraction', round: 'nearest' },
    { name: 'halfShownFraction', round: 'nearest' },
    { name: 'fullShownFraction', round: 'nearest' },
  ],
  steps: [
    {
      result: 'acrossOhm',
      text: 'Resistors',
      how: 'as given; or no, one, two, three in turn, the first number that keeps the wish, and of these the best values',
      source: 'iec-60063',
    },
    {
      result: 'fullSeenOhm',
      text: 'The gauge sees, tank full',
      formula: 'gaugeSideOhm + acrossOhm * (fullOhm + senderSideOhm) / (acrossOhm + fullOhm + senderSideOhm)',
      source: 'circuit-theory',
    },
    {
      result: 'worstErrorFraction',
      text: 'Largest difference of dial and level',
      how: 'at the marks of sender and dial and at the one place between them where the dial rises as fast as the level; resistors at both ends of their tolerance',
      source: 'circuit-theory',
    },
  ],
  sources: ['circuit-theory', 'iec-60063'],
  cautions: ['fuel', 'local-code'],
  run: adaptSender,
  input: (uses): AdaptSenderInput => ({
    senderOhm: ohmList('adaptSender', 'senderOhm', uses['senderOhm'] as string),
    gaugeOhm: ohmList('adaptSender', 'gaugeOhm', uses['gaugeOhm'] as string),
    series: uses['series'] as AdaptSenderInput['series'],
    toleranceFraction: uses['toleranceFraction'] as number,
    mostErrorFraction: uses['mostErrorFraction'] as number,
    ...(uses['resistors'] === 'given'
      ? {
          network: {
            senderSideOhm: uses['tryAtSenderOhm'] as number,
            acrossOhm: (uses['tryAcrossOhm'] as number | undefined) ?? null,
            gaugeSideOhm: uses['tryAtGaugeOhm'] as number,
          },
        }
      : {}),
  }),
  scope: (values, output) => ({
    fullOhm: ohmList('adaptSender', 'senderOhm', String(values['senderOhm'])).at(-1) ?? null,
    fullSeenOhm: output.possible && output.acrossOhm !== null ? (output.curve.at(-1)?.seenOhm ?? null) : null,
  }),
});
