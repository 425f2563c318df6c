// Where sources are cited: `source:` and `sources:` of literals, and the `@source` of doc blocks.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { root } from './root.js';

export interface Cited {
  readonly key: string;
  readonly file: string;
}

/** A `@source` tag. */
export interface SourceTag {
  readonly text: string;
  readonly file: string;
}

export interface Citations {
  readonly literals: readonly Cited[];
  readonly tags: readonly SourceTag[];
  /** Every other text literal, for keys that are handed on. */
  readonly texts: ReadonlySet<string>;
}

/** The TypeScript files below a folder of the repository, as paths from its root. */
export function filesUnder(folder: string): readonly string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((file) => `${folder}/${file.replaceAll('\\', '/')}`)
    .filter((file) => /(?<!\.d)\.ts$/.test(file) && !/\/node_modules\/|\/dist\//.test(file));
}

/** All citations in some files, or in one text for a test. */
export function citationsIn(
  files: readonly string[],
  read = (file: string) => readFileSync(join(root, file), 'utf8'),
): Citations {
  const literals: Cited[] = [];
  const tags: SourceTag[] = [];
  const texts = new Set<string>();
  for (const file of files) {
    const text = read(file);
    const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
    const visit = (node: ts.Node): void => {
      if (ts.isStringLiteral(node)) texts.add(node.text);
      if (ts.isPropertyAssignment(node) && /^sources?$/.test(node.name.getText())) {
        for (const key of keysIn(node.initializer)) literals.push({ key, file });
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
    for (const block of text.match(/\/\*\*[^]*?\*\//g) ?? []) {
      const tag = /@source ([^]*?)(?=\n\s*\* @|\n\s*\*\/|\*\/)/.exec(block)?.[1];
      if (tag !== undefined) tags.push({ text: tag.replace(/\n\s*\* ?/g, ' ').trim(), file });
    }
  }
  return { literals, tags, texts };
}

/** The texts that an expression can be: a literal, either side of a choice, the members of a list. */
function keysIn(node: ts.Expression): readonly string[] {
  if (ts.isStringLiteral(node)) return [node.text];
  if (ts.isConditionalExpression(node)) return [...keysIn(node.whenTrue), ...keysIn(node.whenFalse)];
  if (ts.isArrayLiteralExpression(node)) return node.elements.flatMap((element) => keysIn(element));
  if (ts.isParenthesizedExpression(node)) return keysIn(node.expression);
  return [];
}

/** The known keys that a `@source` names anywhere. */
export function keysOfTag(text: string, known: Readonly<Record<string, unknown>>): readonly string[] {
  return (text.match(/[a-z0-9]+(?:-[a-z0-9]+)*/g) ?? []).filter((token) => Object.hasOwn(known, token));
}

/** What stands where a key should and is none: the first word of a part between semicolons, hyphenated as keys are. */
export function strayKeysOfTag(text: string, known: Readonly<Record<string, unknown>>): readonly string[] {
  return text
    .split(/;| or (?=[a-z0-9]+-)/)
    .map((part) => /^[a-z0-9]+(?:-[a-z0-9]+)+(?=$|[\s,:(])/.exec(part.trim())?.[0])
    .filter((key) => key !== undefined)
    .filter((key) => !Object.hasOwn(known, key));
}

/** Whether a `@source` says that the source is the argument's: "the table's own", "the sources of basis and rule". */
export function isHandedOn(text: string): boolean {
  return /\bown\b|\bsources? of\b/.test(text);
}
