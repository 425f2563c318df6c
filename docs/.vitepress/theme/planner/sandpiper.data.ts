import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { parseLoom, planLoom } from '@loomwright/harness';
import { type Shown, shownOf } from './shown';

export interface SandpiperData {
  readonly text: string;
  readonly shown: Shown;
}

declare const data: SandpiperData;
export { data };

const FILE = resolve(process.cwd(), '../packages/cli/examples/sandpiper.yaml');

/** Sandpiper planned when the site is built: the page stands there before its script runs. */
export default {
  watch: [FILE],
  load(): SandpiperData {
    const text = readFileSync(FILE, 'utf8');
    const parsed = parseLoom(text);
    if (!parsed.ok) throw new Error(parsed.problems.map(({ line, message }) => `${line ?? ''} ${message}`).join('\n'));
    return { text, shown: shownOf(planLoom(parsed.loom), 420) };
  },
};
