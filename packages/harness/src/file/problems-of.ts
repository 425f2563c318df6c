import type { z } from 'zod';
import { nearWords } from '@loomwright/worked/quantity';
import type { Known } from './keys.js';
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
export function problemsOf(error: z.ZodError, file: ReadFile, known: Known): Problem[] {
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
  for (const issue of error.issues) tell(issue, issue.path, file, known, add);
  return problems.sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
}

type Add = (path: readonly PropertyKey[], rule: Problem['rule'], message: string, likely?: string | null) => void;

/** One finding in words. Its path is given: within a union zod counts from there. */
function tell(issue: z.core.$ZodIssue, path: readonly PropertyKey[], file: ReadFile, known: Known, add: Add): void {
  if (issue.code === 'unrecognized_keys') {
    const keys = known.keys(path);
    for (const key of issue.keys) {
      add([...path, key], 'unknown-key', `is not a field here; known are ${keys.join(', ')}.`, likely(key, keys));
    }
  } else if (issue.code === 'invalid_value') {
    const words = issue.values.map(String);
    const value = valueAt(file.data, path);
    const given = String(value);
    if (value === undefined) add(path, 'missing', `is required: one of ${words.join(', ')}.`);
    else add(path, 'choice', `must be one of ${words.join(', ')}, got '${given}'.`, likely(given, words));
  } else if (issue.code === 'invalid_union' && issue.discriminator !== undefined) {
    union(issue, path, file, known, add);
  } else if (
    (issue.code === 'invalid_type' || issue.code === 'invalid_union') &&
    valueAt(file.data, path) === undefined
  ) {
    const keys = known.keys(path);
    add(path, 'missing', keys.length === 0 ? 'is required.' : `is required, with the fields ${keys.join(', ')}.`);
  } else if (issue.code === 'invalid_union') {
    union(issue, path, file, known, add);
  } else if (issue.code === 'custom') {
    const params = (issue.params ?? {}) as { rule?: Problem['rule']; likely?: string };
    add(path, params.rule ?? 'rule', issue.message, params.likely ?? null);
  } else {
    add(path, issue.code === 'invalid_type' ? 'type' : 'range', `${issue.message}.`);
  }
}

/** A union that nothing fits: what the alternatives want, in words. */
function union(
  issue: z.core.$ZodIssueInvalidUnion,
  path: readonly PropertyKey[],
  file: ReadFile,
  known: Known,
  add: Add,
): void {
  const given = valueAt(file.data, path);
  if (issue.discriminator !== undefined) {
    const words = known.words(path);
    if (given === undefined) add(path, 'missing', `is required: one of ${words.join(', ')}.`);
    else {
      const text = String(given);
      add(path, 'choice', `must be one of ${words.join(', ')}, got '${text}'.`, likely(text, words));
    }
  } else if (typeof given === 'object' && given !== null) {
    // The alternative with the fewest findings is the one that was meant; its findings say more than the union's.
    const nearest = [...issue.errors].sort((a, b) => a.length - b.length)[0] ?? [];
    for (const inner of nearest) {
      const here = [...path, ...inner.path];
      if (inner.code === 'unrecognized_keys') {
        const keys = known.keys(path);
        add(
          here,
          'unknown-key',
          `${inner.keys.join(', ')} cannot stand here; one kind at a time, of the fields ${keys.join(', ')}.`,
        );
      } else tell(inner, here, file, known, add);
    }
  } else add(path, 'type', `must be a text with a number and its unit, got ${String(given)}.`);
}

/** The name that a mistyped one was probably meant to be. */
function likely(given: string, names: readonly string[]): string | null {
  return nearWords(given, names)[0] ?? null;
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let value = data;
  for (const step of path) value = (value as Record<PropertyKey, unknown> | undefined | null)?.[step];
  return value;
}
