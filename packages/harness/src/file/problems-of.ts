import type { z } from 'zod';
import { likelyName } from './likely.js';
import type { Problem } from './problem.js';
import type { ReadFile } from './read.js';

/** A path as people read it: `path.out[2].wire`. */
export function dotted(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, step) =>
      typeof step === 'number' ? `${text}[${step}]` : text === '' ? String(step) : `${text}.${String(step)}`,
    '',
  );
}

/** Zod's findings as problems: each with its line, its rule and, for a mistyped name, the likely one. */
export function problemsOf(
  error: z.ZodError,
  file: ReadFile,
  knownKeys: (path: readonly PropertyKey[]) => readonly string[],
): Problem[] {
  const problems: Problem[] = [];
  const add = (
    path: readonly PropertyKey[],
    rule: Problem['rule'],
    message: string,
    likely: string | null = null,
  ): void => {
    const at = file.place(path);
    problems.push({ line: at?.line ?? null, column: at?.column ?? null, field: dotted(path), rule, message, likely });
  };
  for (const issue of error.issues) {
    if (issue.code === 'unrecognized_keys') {
      const known = knownKeys(issue.path);
      for (const key of issue.keys) {
        add(
          [...issue.path, key],
          'unknown-key',
          `is not a field here; known are ${known.join(', ')}.`,
          likelyName(key, known),
        );
      }
    } else if (issue.code === 'invalid_value') {
      const words = issue.values.map(String);
      const given = String(valueAt(file.data, issue.path));
      add(issue.path, 'choice', `must be one of ${words.join(', ')}, got '${given}'.`, likelyName(given, words));
    } else if (issue.code === 'invalid_type' && valueAt(file.data, issue.path) === undefined) {
      add(issue.path, 'missing', 'is required.');
    } else if (issue.code === 'custom') {
      const params = (issue.params ?? {}) as { rule?: Problem['rule']; likely?: string };
      add(issue.path, params.rule ?? 'rule', issue.message, params.likely ?? null);
    } else {
      add(issue.path, issue.code === 'invalid_type' ? 'type' : 'range', `${issue.message}.`);
    }
  }
  return problems.sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let value = data;
  for (const step of path) value = (value as Record<PropertyKey, unknown> | undefined | null)?.[step];
  return value;
}
