import { parseQuantity, QuantityError } from '@loomwright/worked/quantity';
import { z } from 'zod';
import { knownOf } from '../file/keys.js';
import type { Problem } from '../file/problem.js';
import { dotted, problemsOf } from '../file/problems-of.js';
import { readFile } from '../file/read.js';
import type { MeterReading } from './diagnosis-type.js';

const text = (what: string) => z.string().min(1).max(200).describe(what);

const readingsSchema = z.strictObject({
  state: text('State in which all were taken that name none').optional(),
  readings: z
    .array(
      z.strictObject({
        name: text('Name of an expected reading, as on the sheet').optional(),
        state: text('State of the vehicle').optional(),
        over: text('A part of a path').optional(),
        red: text('Point of the red probe').optional(),
        black: text('Point of the black probe').optional(),
        circuit: text('Circuit of a part or point whose name stands in several').optional(),
        reads: z.union([z.string(), z.number()]).describe('What the meter showed, with its unit: V, mV, A, Ω or open'),
      }),
    )
    .min(1),
});

/** Readings of a file, or what is wrong with it. */
export type ParsedReadings =
  | {
      readonly ok: true;
      readonly readings: readonly MeterReading[];
      /** Line of each in the file, from 1. */
      readonly lines: readonly number[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Reads a file of meter readings (YAML or JSON) for `diagnose`.
 *
 * It never throws on bad content. Each reading has its unit: `reads: 12.24 V`, `180 mV`, `7.4 A`, `0.6 Ω` or `open`. A
 * `state` at the top stands for readings that name none and are not in ohms.
 *
 * @param content the file's text
 * @returns the readings with their lines, or the problems
 * @throws nothing on any text
 * @example parseReadings('readings: []').ok //=> false
 */
export function parseReadings(content: string): ParsedReadings {
  const { file, problems } = readFile(content);
  if (file === null) return { ok: false, problems };
  const result = readingsSchema.safeParse(file.data);
  if (!result.success) {
    const known = knownOf(z.toJSONSchema(readingsSchema, { io: 'input' }));
    return { ok: false, problems: problemsOf(result.error, file, known) };
  }
  const { state, readings } = result.data;
  const wrong: Problem[] = [];
  const lines: number[] = [];
  const list = readings.map(({ reads, state: own, name, over, red, black, circuit }, i): MeterReading => {
    lines.push(file.place(['readings', i])?.line ?? 1);
    const value = readsOf(reads, (message) => {
      const path = ['readings', i, 'reads'];
      const at = file.place(path);
      wrong.push({
        line: at?.line ?? null,
        column: at?.column ?? null,
        field: dotted(path),
        rule: 'quantity',
        message,
        likely: null,
      });
    });
    const at = own ?? (name === undefined && !('readsOhm' in value) ? state : undefined);
    const given = { name, state: at, over, red, black, circuit };
    return { ...Object.fromEntries(Object.entries(given).filter(([, word]) => word !== undefined)), ...value };
  });
  return wrong.length > 0 ? { ok: false, problems: wrong } : { ok: true, readings: list, lines };
}

function readsOf(
  given: string | number,
  fail: (message: string) => void,
): Pick<MeterReading, 'readsV' | 'readsA' | 'readsOhm'> {
  const words = String(given).trim();
  if (/^(?:open|OL)$/i.test(words)) return { readsOhm: 'open' };
  const [field, unit] = /(?:Ω|\u2126|ohms?)$/i.test(words)
    ? (['readsOhm', 'Ω'] as const)
    : /A$/.test(words)
      ? (['readsA', 'A'] as const)
      : (['readsV', 'V'] as const);
  try {
    return { [field]: parseQuantity(words, unit, 'reads') };
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    fail(`${error.message.replace(/^\S+ /, '').replace(/\.$/, '')}; or V, A, Ω, or open.`);
    return {};
  }
}
