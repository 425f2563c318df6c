import { readFileSync } from 'node:fs';
import { parseCircuit, problemLine, sizeCircuit, type SizedCircuit } from '@loomwright/harness';
import { type Card, feedScope, sizeFeedCard, sizeFeedSteps } from '@loomwright/worked/card';
import { stepsText, workedSteps } from '@loomwright/worked/work';
import { feedText } from './feed-text.js';

/** What a command prints and how it exits: 0 met, 1 bad input, 2 not possible. */
export interface Outcome {
  readonly out: string;
  readonly err: string;
  readonly status: 0 | 1 | 2;
}

/** Sizes the feed of a circuit file. */
export function feed(file: string, options: { readonly json?: boolean; readonly working?: boolean }): Outcome {
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch (error) {
    const why = (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'there is no such file' : (error as Error).message;
    return bad(`${file}: ${why}`);
  }
  const parsed = parseCircuit(text);
  if (!parsed.ok) return bad(parsed.problems.map((problem) => problemLine(file, problem)).join('\n'));
  const sized = sizeCircuit(parsed.circuit);
  const met = sized.feed.possible && (sized.relay === null || sized.relay.state === 'picks');
  const out =
    options.json === true
      ? `${JSON.stringify(data(sized), null, 2)}\n`
      : feedText(sized) + (options.working === true ? working(sized) : '');
  return { out, err: '', status: met ? 0 : 2 };
}

function data({ circuit, feed: answer, relay }: SizedCircuit): unknown {
  return { circuit: circuit.circuit, feed: answer, relay };
}

/** The working of a sized feed, the same steps as on the handbook's page. */
function working({ input, feed: answer }: SizedCircuit): string {
  if (!answer.possible) return '';
  const names = feedScope(input, answer);
  const steps = workedSteps(sizeFeedSteps, { protection: input.protection.kind }, names, answer);
  const text = stepsText({ card: sizeFeedCard as unknown as Card, steps });
  return `\n  Working\n\n${text.replace(/^(?=.)/gm, '    ')}\n`;
}

function bad(err: string): Outcome {
  return { out: '', err: `${err}\n`, status: 1 };
}
