import { readFileSync } from 'node:fs';
import { type LoomPlan, parseLoom, planLoom, problemLine } from '@loomwright/harness';

/** A planned file, or why there is none. */
export type Planned = { readonly ok: true; readonly plan: LoomPlan } | { readonly ok: false; readonly err: string };

/** Reads and plans the file of a whole vehicle. */
export function planFile(file: string): Planned {
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch (error) {
    const why = (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'there is no such file' : (error as Error).message;
    return { ok: false, err: `${file}: ${why}\n` };
  }
  const parsed = parseLoom(text);
  if (!parsed.ok) return { ok: false, err: `${parsed.problems.map((each) => problemLine(file, each)).join('\n')}\n` };
  return { ok: true, plan: planLoom(parsed.loom) };
}

/** 0 where every limit is met, 2 where one is not. */
export function statusOf(plan: LoomPlan): 0 | 2 {
  return plan.findings.some(({ severity }) => severity === 'fail') ? 2 : 0;
}
