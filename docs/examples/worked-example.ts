import type { SourceKey, SourceStatus } from 'loomwright';
import type { Card, Values } from '@loomwright/worked/card';
import { fieldUnit } from '@loomwright/worked/quantity';
import { work, type Worked } from '@loomwright/worked/work';

/** A worked example of a named source: what it asks, and what it prints. */
export interface WorkedExample {
  /** The problem in a sentence or two, in our own words. */
  readonly problem: string;
  readonly source: SourceKey;
  /** Clause, table, page. */
  readonly place: string;
  readonly status: SourceStatus;
  readonly card: Card;
  readonly values: Values;
  /** Results by name, as the source prints them; agreement is asked to half a unit of the last digit. */
  readonly prints: Readonly<Record<string, string>>;
  /** How many units of the last printed digit may be missed, where the source rounds more coarsely, and why. */
  readonly slack?: { readonly units: number; readonly why: string };
}

/** Keeps a card's own types in place while an example holds any card. */
export function defineExample<I, O>(
  example: Omit<WorkedExample, 'card'> & { readonly card: Card<I, O> },
): WorkedExample {
  return example as unknown as WorkedExample;
}

/**
 * The working of an example, with every printed result compared. A difference throws, so that neither the site nor
 * the tests pass with a stated number that the library does not give.
 */
export function workExample(example: WorkedExample): Worked {
  const worked = work(example.card, example.values);
  const names = {
    ...(worked.output as Record<string, unknown>),
    ...Object.fromEntries(worked.steps.map((s) => [s.step.result, s.value])),
  };
  for (const [name, print] of Object.entries(example.prints)) {
    const value = names[name];
    const decimals = print.includes('.') ? print.length - print.indexOf('.') - 1 : 0;
    const off =
      typeof value === 'number'
        ? Math.abs(value - Number(print)) * 10 ** decimals
        : String(value) === print
          ? 0
          : Infinity;
    if (!(off <= (example.slack?.units ?? 0.5) + 1e-9)) {
      throw new Error(
        `${example.card.name}: ${name} is ${String(value)}, but ${example.source} (${example.place}) prints ${print}`,
      );
    }
  }
  return worked;
}

/** The unit in which a result is printed: that of its name. */
export function printedUnit(name: string): string {
  return fieldUnit(name) ?? '';
}
