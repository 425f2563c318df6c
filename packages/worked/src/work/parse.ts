import { math } from '../quantity/adapter.js';
import type { Tree } from './tree.js';

/** What we read of a mathjs node; its own types are wider than needed. */
interface Node {
  readonly type: string;
  readonly op?: string;
  readonly args?: readonly Node[];
  readonly content?: Node;
  readonly name?: string;
  readonly value?: unknown;
  readonly fn?: { readonly name?: string };
}

const OPS = ['+', '-', '*', '/', '^'] as const;

/**
 * A formula in mathjs syntax as a tree.
 *
 * @throws Error for syntax that the working does not show (assignments, comparisons, matrices)
 */
export function parseFormula(formula: string): Tree {
  return toTree(math.parse(formula), formula);
}

function toTree(node: Node, formula: string): Tree {
  const args = (node.args ?? []).map((arg) => toTree(arg, formula));
  switch (node.type) {
    case 'ParenthesisNode':
      return toTree(node.content as Node, formula);
    case 'ConstantNode':
      return { k: 'number', text: String(node.value) };
    case 'SymbolNode':
      return { k: 'name', name: node.name as string };
    case 'FunctionNode':
      return { k: 'call', fn: node.fn?.name ?? '', args };
    case 'OperatorNode': {
      if (args.length === 1 && node.op === '-') return { k: 'neg', arg: args[0] as Tree };
      const op = OPS.find((known) => known === node.op);
      if (op !== undefined && args.length === 2) return { k: 'op', op, args: [args[0] as Tree, args[1] as Tree] };
    }
  }
  throw new Error(`'${formula}' has a ${node.type}${node.op ? ` ${node.op}` : ''} that the working does not show`);
}
