import type { Check, SourceKey } from 'loomwright';
import type { Card, Constant, ResultField, Step, Values } from '../card/index.js';
import { inputOf } from '../card/index.js';

/** One step with its numbers. */
export interface WorkedStep {
  readonly step: Step;
  /** The value that it gives; null where there is no number. */
  readonly value: number | null;
  /** The formula as a tree, or null where the step is a look-up or an iteration. */
  readonly formula: string | null;
  /** Every name that the formula uses, with its value. */
  readonly names: Readonly<Record<string, number>>;
  readonly constants: readonly Constant[];
  readonly source: SourceKey;
}

/** One result with its value. */
export interface WorkedResult {
  readonly field: ResultField;
  readonly value: number | string | boolean | null;
}

/** A calculation with its working: data that the renderers turn into TeX-Markdown, HTML or text. */
export interface Worked<O = unknown> {
  readonly card: Card;
  readonly values: Values;
  /** What the function answered. */
  readonly output: O;
  readonly results: readonly WorkedResult[];
  readonly steps: readonly WorkedStep[];
  readonly checks: readonly Check[];
  readonly decidedBy: string | null;
  /** Why there is no answer, where there is none. */
  readonly because: string | null;
  readonly sources: readonly SourceKey[];
}

/**
 * Runs a card's function on flat values and gathers the working.
 *
 * @param card one of the cards
 * @param values numbers in the core's units, words for choices
 * @returns output, results, steps with the numbers put in, checks
 * @throws InputError as the function throws it
 */
export function work<I, O>(card: Card<I, O>, values: Values): Worked<O> {
  const output = card.run(inputOf(card, values));
  const names = scopeOf(card, values, output);
  const all = (typeof output === 'object' && output !== null ? output : { value: output }) as Record<string, unknown>;
  const impossible = all['possible'] === false;
  const steps = impossible ? [] : workedSteps(card.steps, values, names, output);
  return {
    card: card as unknown as Card,
    values,
    output,
    results: impossible
      ? []
      : card.results.map((field) => ({
          field,
          value: (names[field.name] ?? all[field.name] ?? null) as WorkedResult['value'],
        })),
    steps,
    checks: (all['checks'] as readonly Check[] | undefined) ?? [],
    decidedBy: (all['decidedBy'] as string | undefined) ?? null,
    because: impossible ? ((all['because'] as string | undefined) ?? 'not possible') : null,
    sources: card.sources,
  };
}

/** Steps with the numbers put in, from names and their values. */
export function workedSteps(
  steps: readonly Step[],
  values: Values,
  names: Readonly<Record<string, number | null>>,
  output: unknown,
): WorkedStep[] {
  return steps.filter((step) => step.when?.(values) ?? true).map((step) => workStep(step, names, output));
}

function workStep(step: Step, names: Readonly<Record<string, number | null>>, output: unknown): WorkedStep {
  const used: Record<string, number> = {};
  if (step.formula !== undefined) {
    for (const name of step.formula.match(/[A-Za-z_]\w*/g) ?? []) {
      const value = names[name];
      if (typeof value === 'number') used[name] = value;
    }
  }
  const constants = step.constants ?? [];
  for (const constant of constants) used[constant.name] = constant.value;
  return {
    step,
    value: names[step.result] ?? null,
    formula: step.formula ?? null,
    names: used,
    constants,
    source: step.sourceOf?.(output as never) ?? step.source,
  };
}

/** Every number that a step or a result may name: fields, the function's results, and the card's own scope. */
export function scopeOf<I, O>(card: Card<I, O>, values: Values, output: O): Record<string, number | null> {
  const names: Record<string, number | null> = {};
  for (const [name, value] of Object.entries(values)) if (typeof value === 'number') names[name] = value;
  if (typeof output === 'number') names['value'] = output;
  else if (typeof output === 'object' && output !== null) {
    for (const [name, value] of Object.entries(output)) if (typeof value === 'number') names[name] = value;
  }
  const impossible = typeof output === 'object' && output !== null && 'possible' in output && output.possible === false;
  return impossible || card.scope === undefined ? names : { ...names, ...card.scope(values, output) };
}
