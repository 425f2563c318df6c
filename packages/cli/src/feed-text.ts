import type { Check, SizeFeedResult } from 'loomwright';
import type { SizedCircuit } from '@loomwright/harness';
import { cautions, statusWords } from '@loomwright/worked/card';
import { formatQuantity } from '@loomwright/worked/quantity';
import { bar, columns, wrap } from './text.js';

const WIDTH = 88;

/** A sized circuit as a page of text. */
export function feedText(sized: SizedCircuit): string {
  const { circuit, feed, relay } = sized;
  const lines = [`${circuit.circuit}${circuit.vehicle === undefined ? '' : ` · ${circuit.vehicle}`}`];
  if (circuit.note !== undefined) lines.push(...wrap(circuit.note, WIDTH, '  '));
  lines.push('');
  if (feed.possible) lines.push(...answer(sized, feed));
  else {
    lines.push('  NOT POSSIBLE', ...wrap(feed.because, WIDTH, '  '));
    if (feed.nearest !== null) lines.push('', `  Nearest: ${feed.nearest.size}`, ...checkLines(feed.nearest.checks));
  }
  if (relay !== null) {
    const word = { picks: 'pulls in', holds: 'holds if it was in, but does not pull in', drops: 'lets go' }[
      relay.state
    ];
    lines.push(
      '',
      `  Relay: ${word}; needs a supply of ${up(relay.leastSupplyV, 'V')} with its coil hot`,
      ...checkLines(relay.checks),
    );
  }
  lines.push('');
  for (const key of ['local-code', 'fuel', 'battery'] as const) {
    lines.push(...wrap(`${cautions[key].title}: ${cautions[key].text}`, WIDTH, '  '));
  }
  return `${lines.join('\n')}\n`;
}

function answer({ circuit, input }: SizedCircuit, feed: SizeFeedResult): string[] {
  const fuse = feed.fuse === null ? '' : `, ${feed.fuse.ratingA} A fuse`;
  const lines = [
    `  ${feed.size}${fuse}`,
    `  decided by: ${feed.decidedBy}${feed.below === null ? '' : ` (${feed.below.size} fails it)`}`,
    '',
  ];
  lines.push(
    `  Volts along the path, copper at ${up(feed.conductorTempC, '°C')}`,
    ...ladder(feed, input.supplyV, circuit.circuit),
  );
  lines.push('', '  Limits', ...checkLines(feed.checks));
  if (feed.at.length > 1) {
    lines.push('', '  At other supplies');
    lines.push(
      ...columns(
        feed.at.map(({ supplyV, loadV, dropV }) =>
          loadV === null || dropV === null
            ? ['   ', near(supplyV, 'V'), 'cannot be fed']
            : ['   ', near(supplyV, 'V'), `${down(loadV, 'V')} at the load`, `${up(dropV, 'V')} lost`],
        ),
        [1],
      ),
    );
  }
  const sides = [feed.below, feed.above].filter((side) => side !== null);
  if (sides.length > 0) {
    lines.push('', '  Sizes on either side');
    for (const side of sides) {
      const failed = side.checks.filter((check) => !check.ok).map((check) => check.name);
      lines.push(
        ...wrap(
          `${side.size}: ${failed.length === 0 ? 'meets every limit' : `fails ${failed.join(', ')}`}`,
          WIDTH,
          '    ',
        ),
      );
    }
  }
  const open = feed.fuse?.notJudged ?? [];
  if (open.length > 0) lines.push('', ...wrap(`Not judged of the fuse: ${open.join(', ')}.`, WIDTH, '  '));
  if (feed.remarks.length > 0) lines.push('', ...feed.remarks.flatMap((remark) => wrap(remark.text, WIDTH, '  ')));
  return lines;
}

/** One line a part: its bar begins where the one before ended. */
function ladder(feed: SizeFeedResult, supplyV: number, loadName: string): string[] {
  const { parts, dropV, loadV } = feed.solved;
  const room = 28;
  let lost = 0;
  const rows: string[][] = [['   ', 'supply', '', near(supplyV, 'V')]];
  const rung = (part: (typeof parts)[number]): void => {
    const at = Math.floor((lost / dropV) * room);
    rows.push(['   ', part.name, `${' '.repeat(at)}${bar(part.dropFraction, room)}`, milli(part.dropV)]);
    lost += part.dropV;
  };
  parts.filter((part) => part.side === 'out').forEach(rung);
  rows.push(['   ', loadName, `${' '.repeat(Math.floor((lost / dropV) * room))}◇`, down(loadV, 'V')]);
  parts.filter((part) => part.side === 'return').forEach(rung);
  rows.push(['   ', 'lost in all', '', up(dropV, 'V')]);
  return columns(rows, [3]);
}

function checkLines(checks: readonly Check[]): string[] {
  return columns(
    checks.map((check) => {
      const { value, limit, unit, sense } = check;
      const atMost = sense === 'atMost';
      const shown =
        value === null ? '–' : formatQuantity(value, unit, { round: atMost ? 'up' : 'down', trim: unit === 'mm²' });
      const against =
        limit === null ? '' : `${atMost ? 'at most' : 'at least'} ${formatQuantity(limit, unit, { trim: true })}`;
      const room = check.marginFraction;
      const margin =
        room === null ? '' : room < 0 ? `${Math.ceil(-room * 100)} % short` : `${Math.floor(room * 100)} % left`;
      return [
        '   ',
        check.ok ? 'met' : 'NOT MET',
        check.name,
        shown,
        against,
        margin,
        `${check.source}, ${statusWords[check.sourceStatus]}`,
      ];
    }),
    [3, 5],
  );
}

const up = (value: number, unit: string): string => formatQuantity(value, unit, { round: 'up' });
const milli = (volts: number): string => formatQuantity(volts, 'V', { round: 'up', prefix: 'm' });
const down = (value: number, unit: string): string => formatQuantity(value, unit, { round: 'down', digits: 4 });
const near = (value: number, unit: string): string => formatQuantity(value, unit, { digits: 4 });
