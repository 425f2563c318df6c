import { readFileSync } from 'node:fs';
import { parseCircuit, problemLine, sizeCircuit } from '@loomwright/harness';
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
  const out = options.json === true ? `${JSON.stringify(data(sized), null, 2)}\n` : feedText(sized);
  return { out, err: '', status: met ? 0 : 2 };
}

function data({ circuit, feed: answer, relay }: ReturnType<typeof sizeCircuit>): unknown {
  return { circuit: circuit.circuit, feed: answer, relay };
}

function bad(err: string): Outcome {
  return { out: '', err: `${err}\n`, status: 1 };
}
