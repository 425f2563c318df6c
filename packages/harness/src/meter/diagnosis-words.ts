import { formatQuantity } from '@loomwright/worked/quantity';
import type { Diagnosis, Suspect } from './diagnosis-type.js';

const ohm = (value: number, round: 'up' | 'down' | 'nearest' = 'nearest'): string =>
  formatQuantity(value, 'Ω', { digits: 2, round, prefix: 'natural' });
const volts = (value: number): string =>
  Math.abs(value) < 1 ? formatQuantity(value * 1000, 'mV', { digits: 3 }) : formatQuantity(value, 'V', { decimals: 2 });
const amps = (value: number): string => formatQuantity(value, 'A', { digits: 2, prefix: 'natural' });
const CONFIDENCE = { none: 'none', weak: 'weak', fair: 'fair', strong: 'strong' } as const;

/** What was found, in sentences with its numbers; no more certain than the readings are. */
export function sentencesOf(
  found: Omit<Diagnosis, 'sentences'>,
  touching: readonly { readonly name: string; readonly value: number }[],
): readonly string[] {
  const { readings, changedOver, contradicting, supply } = found;
  const nameOf = (index: number): string => readings.find((one) => one.index === index)?.name ?? `reading ${index + 1}`;
  const capital = (text: string): string => text.replace(/^[a-z]/, (c) => c.toUpperCase());
  return [
    ...touching.map(
      ({ name, value }) =>
        `${name}: ${ohm(value)} where nothing should conduct. Something is still plugged in, or there is a short or a way to body.`,
    ),
    ...verdictOf(found),
    ...supply
      .filter(() => found.verdict !== 'supply')
      .map(
        (one) =>
          `Battery ${one.battery} is at ${volts(one.foundV)} in ${one.state} where the plan has ${volts(one.plannedV)}; that is allowed for.`,
      ),
    ...changedOver.map(
      (index) => `${nameOf(index)}: the sign is against the plan. It is taken as read with the probes changed over.`,
    ),
    ...contradicting.map(
      (index) =>
        `${nameOf(index)}: the other readings contradict it${found.verdict === 'part' ? ', and it is left out' : ''}. Take it again.`,
    ),
    ...furtherOf(found),
  ].map(capital);
}

function verdictOf(found: Omit<Diagnosis, 'sentences'>): string[] {
  const { verdict, suspects, others, awaySigma, seenCount, partCount, supply, confidence } = found;
  switch (verdict) {
    case 'short':
      return [];
    case 'nothing found':
      return [
        'Nothing found: all readings are within what a healthy vehicle shows.',
        `They would have shown 50 mΩ more in ${seenCount} of its ${partCount} parts; of the others they say nothing.`,
      ];
    case 'supply':
      return supply.map(({ battery, state, foundV, plannedV, sigmaV, read }) =>
        read
          ? `Battery ${battery} explains all: ${volts(foundV)} at its posts in ${state} where the plan has ${volts(plannedV)}. Charge it, or correct the plan, and read again.`
          : `Battery ${battery} at about ${volts(foundV)} (± ${volts(2 * sigmaV)}) in ${state}, where the plan has ${volts(plannedV)}, would explain all. Read its posts before you look for a joint.`,
      );
    case 'reading':
      return ['One reading is against all others, and without it they are those of a healthy vehicle.'];
    case 'not one cause':
      return [
        'No single part explains these readings.',
        ...others
          .slice(0, 1)
          .map(
            (one) =>
              `What helps most is ${causeText(one)}. There may be two faults, or a wrong reading: mend or repeat, and read again.`,
          ),
      ];
    case 'part': {
      const [first] = suspects;
      if (first === undefined) return [];
      const one = `${awaySigma.toFixed(1)} sigmas from a healthy vehicle: ${CONFIDENCE[confidence]} evidence`;
      const only = found.readings.length === 1 ? ' It rests on one reading alone.' : '';
      if (suspects.length === 1) return [`${causeText(first)} (${one}).${only}`];
      const same = suspects.every(({ circuit, kind }) => circuit === first.circuit && kind === 'part');
      const where = same ? ` in the path of ${first.circuit}` : '';
      const more = suspects.length - 6;
      const list = suspects.slice(0, 6).map((each) => (same ? each.name : placeOf(each)));
      return [
        `One of ${suspects.length} causes${where} that these readings cannot tell apart (${one}).${only}`,
        `If it is the first: ${causeText(first)}.`,
        `All: ${list.join('; ')}${more > 0 ? `; and ${more} more` : ''}.`,
      ];
    }
  }
}

function placeOf({ kind, name, circuit }: Pick<Suspect, 'kind' | 'name' | 'circuit'>): string {
  if (kind === 'load') return `the load ${name} itself`;
  return circuit === name ? name : `${name} (${circuit})`;
}

function causeText({
  kind,
  name,
  circuit,
  extraOhm,
  lowOhm,
  highOhm,
  powerW,
  currentA,
  plannedA,
  open,
  state,
}: Suspect): string {
  const where = placeOf({ kind, name, circuit });
  if (kind === 'load') return `${name} draws ${amps(currentA)} where the plan has ${amps(plannedA)}`;
  if (open || extraOhm === null) return `${where} is open${lowOhm === null ? '' : `, or has more than ${ohm(lowOhm)}`}`;
  const range =
    lowOhm === null
      ? ''
      : highOhm === null
        ? `, at least ${ohm(lowOhm, 'down')}`
        : `, between ${ohm(lowOhm, 'down')} and ${ohm(highOhm, 'up')}`;
  const heat =
    powerW === null || state === null
      ? ''
      : `; with ${amps(currentA)} in ${state} it makes ${formatQuantity(powerW, 'W', { digits: 2, round: 'up' })} of heat`;
  return `${where} has ${ohm(extraOhm)} more than planned${range}${heat}`;
}

function furtherOf({ further, suspects }: Omit<Diagnosis, 'sentences'>): string[] {
  if (further === null) return suspects.length > 1 ? ['No single further reading in these states parts them.'] : [];
  const { red, black, state, circuit, predictedV } = further;
  const [low, high] = [Math.min(...predictedV), Math.max(...predictedV)];
  const of = circuit === null ? '' : ` (${circuit})`;
  return [
    `Read next, in ${state}: red on ${red}, black on ${black}${of}. It would show ${volts(low)} with some of them and ${volts(high)} with others.`,
  ];
}
