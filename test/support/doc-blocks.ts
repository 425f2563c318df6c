// Doc blocks of the exported functions of a package, found by the TypeScript compiler, not by text.
import ts from 'typescript';

export interface DocTag {
  readonly name: string;
  readonly text: string;
}

export interface DocBlock {
  /** Name of the exported function. */
  readonly name: string;
  /** File that declares it. */
  readonly file: string;
  /** What stands before the first tag. */
  readonly summary: string;
  readonly tags: readonly DocTag[];
}

/** The exported functions of a module, through whatever it re-exports, each with its own doc block. */
export function exportedFunctions(entry: string, options: ts.CompilerOptions = {}): readonly DocBlock[] {
  const program = ts.createProgram([entry], {
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    target: ts.ScriptTarget.ES2022,
    noLib: true,
    types: [],
    ...options,
  });
  const checker = program.getTypeChecker();
  const file = program.getSourceFile(entry);
  const module = file === undefined ? undefined : checker.getSymbolAtLocation(file);
  if (module === undefined) throw new Error(`${entry} is not a module`);
  return checker.getExportsOfModule(module).flatMap((found) => {
    const symbol = found.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(found) : found;
    const declaration = symbol.declarations?.find(isFunction);
    return declaration === undefined ? [] : [docBlock(found.name, declaration)];
  });
}

/** A function, or a constant that holds one. */
function isFunction(node: ts.Declaration): boolean {
  if (ts.isFunctionDeclaration(node)) return true;
  if (!ts.isVariableDeclaration(node) || node.initializer === undefined) return false;
  return ts.isArrowFunction(node.initializer) || ts.isFunctionExpression(node.initializer);
}

function docBlock(name: string, declaration: ts.Declaration): DocBlock {
  const parts = ts.getJSDocCommentsAndTags(declaration);
  const text = (comment: string | ts.NodeArray<ts.JSDocComment> | undefined): string =>
    (ts.getTextOfJSDocComment(comment) ?? '').trim();
  const tags = parts.flatMap((part) => (ts.isJSDoc(part) ? [...(part.tags ?? [])] : [part]));
  return {
    name,
    file: declaration.getSourceFile().fileName,
    summary: parts
      .filter((part) => ts.isJSDoc(part))
      .map((part) => text(part.comment))
      .join('\n'),
    tags: tags.map((tag) => ({ name: tag.tagName.text, text: tagText(tag) })),
  };
}

/** All that stands after the tag's name, as written: `@throws InputError when …` keeps its first word. */
function tagText(tag: ts.JSDocTag): string {
  return tag
    .getText()
    .replace(/^@\w+\s?/, '')
    .split('\n')
    .map((line) => line.replace(/^\s*\*(?: |$)/, ''))
    .join('\n')
    .trim();
}
