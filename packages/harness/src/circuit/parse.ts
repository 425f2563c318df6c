import { z } from 'zod';
import type { Problem } from '../file/problem.js';
import { problemsOf } from '../file/problems-of.js';
import { readFile } from '../file/read.js';
import { knownOf } from '../file/keys.js';
import { type Circuit, circuitSchema } from './schema.js';

/** What reading a circuit file gives: the circuit, or all that is wrong with it. */
export type ParsedCircuit =
  { readonly ok: true; readonly circuit: Circuit } | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Reads a file with one circuit, YAML or JSON. It never throws on bad content: all problems come back at once, each
 * with line, column, field, rule and, for a mistyped name, the likely one.
 */
export function parseCircuit(text: string): ParsedCircuit {
  const { file, problems } = readFile(text);
  if (file === null) return { ok: false, problems };
  const result = circuitSchema.safeParse(file.data);
  if (result.success) return { ok: true, circuit: result.data };
  return { ok: false, problems: problemsOf(result.error, file, knownOf(circuitJsonSchema())) };
}

/** The JSON Schema of a circuit file, for editors. */
export function circuitJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(circuitSchema, { io: 'input' });
}
