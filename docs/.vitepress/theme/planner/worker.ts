// Reads and plans a file beside the page. It brings mathjs, yaml and zod, asks for nothing and sends nothing away.
import { drawGrounds, type LoomPlan, parseLoom, planLoom, sheetFiles } from '@loomwright/harness';
import { type Shown, type ShownProblem, shownOf } from './shown';

export type Question =
  | { readonly kind: 'plan'; readonly id: number; readonly text: string; readonly width: number }
  | { readonly kind: 'grounds'; readonly id: number; readonly state: string; readonly width: number }
  | { readonly kind: 'files'; readonly id: number; readonly date: string };

export type Answer =
  | { readonly kind: 'plan'; readonly id: number; readonly ms: number; readonly shown: Shown }
  | { readonly kind: 'problems'; readonly id: number; readonly problems: readonly ShownProblem[] }
  | { readonly kind: 'grounds'; readonly id: number; readonly svg: string }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string }
  | {
      readonly kind: 'files';
      readonly id: number;
      readonly files: readonly { readonly name: string; readonly text: string }[];
    };

let last: LoomPlan | null = null;

function answer(question: Question): Answer {
  const { id } = question;
  if (question.kind === 'files') {
    const date = question.date.trim();
    return { kind: 'files', id, files: last === null ? [] : sheetFiles(last, date === '' ? {} : { date }) };
  }
  if (question.kind === 'grounds') {
    const { state, width } = question;
    return {
      kind: 'grounds',
      id,
      svg: last === null ? '' : drawGrounds(last, state === '' ? { width } : { width, state }),
    };
  }
  const start = performance.now();
  const parsed = parseLoom(question.text);
  if (!parsed.ok) {
    const problems = parsed.problems.map(({ line, field, message, likely }) => ({
      line,
      text: `${field === '' ? '' : `${field}: `}${message}${likely === null ? '' : ` Did you mean '${likely}'?`}`,
    }));
    return { kind: 'problems', id, problems };
  }
  last = planLoom(parsed.loom);
  const ms = performance.now() - start;
  return { kind: 'plan', id, ms, shown: shownOf(last, question.width) };
}

self.onmessage = ({ data }: MessageEvent<Question>): void => {
  let reply: Answer;
  try {
    reply = answer(data);
  } catch (error) {
    reply = { kind: 'failed', id: data.id, message: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply);
};
