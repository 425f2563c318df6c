import type { SourceKey } from 'loomwright';
import type { CautionKey } from './caution.js';

/** Flat values of a card's fields: numbers in the core's units, words for choices, booleans for flags. */
export type Values = Readonly<Record<string, number | string | boolean | null>>;

/** Values in which each choice that stands for something, such as a table, is replaced by it. */
export type Uses = Readonly<Record<string, unknown>>;

interface FieldBase {
  /** Name in the core; its end tells the unit. Looked up in the nomenclature for label, symbol and meaning. */
  readonly name: string;
  /** Label, where the nomenclature's is too general here. */
  readonly label?: string;
  /** One sentence of help. */
  readonly help?: string;
}

/** A number with a unit. */
export interface NumberField extends FieldBase {
  readonly kind: 'number';
  /** TeX symbol, where the nomenclature's does not fit here. */
  readonly symbol?: string;
  /** Range that the core accepts: `min` and `max` belong to it, `above` does not. */
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
  /** May be left empty; the key is then absent from the values. */
  readonly optional?: true;
  /** Value of the worked example, in the core's unit; null for an optional field that the example leaves empty. */
  readonly example: number | null;
  /** Unit first shown, where it is not the core's: 'mΩ', 'ft'. */
  readonly unit?: string;
}

/** One choice of a list. `use` is what the function gets, such as a table, and `identifier` its exported name. */
export interface Choice {
  readonly value: string;
  readonly label: string;
  readonly use?: unknown;
  readonly identifier?: string;
}

/** A word from a list, a table, or a gauge. */
export interface ChoiceField extends FieldBase {
  readonly kind: 'choice';
  readonly choices: readonly Choice[];
  readonly example: string;
}

/** Yes or no. */
export interface FlagField extends FieldBase {
  readonly kind: 'flag';
  readonly example: boolean;
}

/** Free text, such as a list of numbers that the card parses itself. */
export interface TextField extends FieldBase {
  readonly kind: 'text';
  readonly example: string;
}

export type Field = NumberField | ChoiceField | FlagField | TextField;

/** A value that a result shows. */
export interface ResultField {
  /** Name in the function's result or in the card's `scope`; its end tells the unit. */
  readonly name: string;
  readonly label?: string;
  readonly symbol?: string;
  /** Which way a display may round: the safe one. A drop or a heat goes up, volts left and ampacity go down. */
  readonly round: 'up' | 'down' | 'nearest';
  /** Shown first and large. */
  readonly primary?: true;
  readonly digits?: number;
  /** Leaves out noughts at the end, for values that come from a list, such as a rating. */
  readonly trim?: true;
  /** Unit shown, where it is not the core's. */
  readonly unit?: string;
}

/** A number that a formula uses and a source gives. */
export interface Constant {
  readonly name: string;
  readonly symbol: string;
  readonly value: number;
  /** Unit as mathjs writes it; '' for a pure number. Celsius temperatures count as K from 0 °C. */
  readonly unit: string;
  readonly source: SourceKey;
}

/** One step of the working. With `formula` a test proves its dimensions and that it agrees with the function. */
export interface Step {
  /** The value it gives: a name in the result or in `scope`. */
  readonly result: string;
  /** What the step does, in a few words. */
  readonly text: string;
  /** Right-hand side in mathjs syntax, in names of fields, scope, results and constants. */
  readonly formula?: string;
  readonly constants?: readonly Constant[];
  /** Where no formula can be shown: a look-up or an iteration, in words. */
  readonly how?: string;
  readonly source: SourceKey;
  /** The source where it depends on the answer, such as that of the table looked up. */
  readonly sourceOf?: (output: never) => SourceKey;
  /** Left out of the working when this is false for the values at hand. */
  readonly when?: (values: Values) => boolean;
}

/**
 * One description of a function, read by the page's calculator, the working, the notebook and the command.
 * Nothing that it says is said anywhere else.
 */
export interface Card<I = unknown, O = unknown> {
  /** Exported name of the function. */
  readonly name: string;
  /** Area of the core. */
  readonly area: string;
  /** The reader's question, as a sentence. */
  readonly question: string;
  /** Handbook page that leads to it (file name without ending). */
  readonly page: string;
  readonly fields: readonly Field[];
  readonly results: readonly ResultField[];
  readonly steps: readonly Step[];
  readonly sources: readonly SourceKey[];
  readonly cautions: readonly CautionKey[];
  /** The function. */
  readonly run: (input: I) => O;
  /**
   * Its input from the flat values. Without it the input is the values as they are, each choice replaced by what it
   * stands for and each empty field left out.
   */
  readonly input?: (values: Uses) => I;
  /** Exported names of what `input` brings in besides the choices: tables and rules, for code to copy. */
  readonly identifiers?: Readonly<Record<string, unknown>>;
  /** Intermediate numbers that the steps name, from values and result. */
  readonly scope?: (values: Values, output: O) => Readonly<Record<string, number | null>>;
}

/** Keeps a card's own types in place while lists hold cards of any kind. */
export function defineCard<I, O>(card: Card<I, O>): Card<I, O> {
  return card;
}
