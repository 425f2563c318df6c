import type { Outcome } from './feed.js';
import { planFile, statusOf } from './plan-read.js';
import { planText } from './plan-text.js';

/** Plans the file of a whole vehicle: findings, and every wire with what decided its size. */
export function plan(file: string, options: { readonly json?: boolean }): Outcome {
  const planned = planFile(file);
  if (!planned.ok) return { out: '', err: planned.err, status: 1 };
  // The file itself is not repeated: everything else of the plan is, unrounded.
  const { loom: _, ...data } = planned.plan;
  const out = options.json === true ? `${JSON.stringify(data, null, 2)}\n` : planText(planned.plan);
  return { out, err: '', status: statusOf(planned.plan) };
}
