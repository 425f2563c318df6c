/**
 * A formula as a small tree: what a renderer needs and no more. It is made from mathjs's parse, so that a page can
 * show formulas without loading mathjs.
 */
export type Tree =
  | { readonly k: 'number'; readonly text: string }
  | { readonly k: 'name'; readonly name: string }
  | { readonly k: 'op'; readonly op: '+' | '-' | '*' | '/' | '^'; readonly args: readonly [Tree, Tree] }
  | { readonly k: 'neg'; readonly arg: Tree }
  | { readonly k: 'call'; readonly fn: string; readonly args: readonly Tree[] };

/** How a renderer writes a name: as its symbol, or as the value put in for it. */
export type Leaf = (name: string) => string;

const RANK = { '+': 1, '-': 1, '*': 2, '/': 2, '^': 4 } as const;

function rank(tree: Tree): number {
  if (tree.k === 'op') return RANK[tree.op];
  return tree.k === 'neg' ? 1 : 9;
}

/** The tree as TeX. Leaves are written by `leaf`, which returns TeX. */
export function treeToTex(tree: Tree, leaf: Leaf): string {
  const go = (t: Tree): string => treeToTex(t, leaf);
  const inside = (t: Tree, atLeast: number): string => (rank(t) < atLeast ? `\\left(${go(t)}\\right)` : go(t));
  switch (tree.k) {
    case 'number':
      return tree.text;
    case 'name':
      return leaf(tree.name);
    case 'neg':
      return `-${inside(tree.arg, 2)}`;
    case 'call':
      if (tree.fn === 'sqrt') return `\\sqrt{${tree.args.map(go).join()}}`;
      if (tree.fn === 'abs') return `\\left|${tree.args.map(go).join()}\\right|`;
      if (tree.fn === 'exp') return `e^{${tree.args.map(go).join()}}`;
      return `${TEX_FN[tree.fn] ?? `\\operatorname{${tree.fn}}`}\\left(${tree.args.map(go).join(',\\ ')}\\right)`;
    case 'op': {
      const [a, b] = tree.args;
      if (tree.op === '/') return `\\frac{${go(a)}}{${go(b)}}`;
      if (tree.op === '^') return `{${inside(a, 5)}}^{${go(b)}}`;
      if (tree.op === '*') return `${inside(a, 2)} \\cdot ${inside(b, 2)}`;
      return `${go(a)} ${tree.op} ${inside(b, tree.op === '-' ? 2 : 1)}`;
    }
  }
}

const TEX_FN: Readonly<Record<string, string>> = {
  log: '\\ln',
  log10: '\\log_{10}',
  cos: '\\cos',
  sin: '\\sin',
  tan: '\\tan',
  max: '\\max',
  min: '\\min',
};

/** The tree as plain text on one line. */
export function treeToText(tree: Tree, leaf: Leaf): string {
  const go = (t: Tree): string => treeToText(t, leaf);
  const inside = (t: Tree, atLeast: number): string => (rank(t) < atLeast ? `(${go(t)})` : go(t));
  switch (tree.k) {
    case 'number':
      return tree.text;
    case 'name':
      return leaf(tree.name);
    case 'neg':
      return `−${inside(tree.arg, 2)}`;
    case 'call':
      if (tree.fn === 'sqrt') return `√(${tree.args.map(go).join()})`;
      return `${tree.fn === 'log' ? 'ln' : tree.fn}(${tree.args.map(go).join(', ')})`;
    case 'op': {
      const [a, b] = tree.args;
      const sign = { '+': '+', '-': '−', '*': '×', '/': '/', '^': '^' }[tree.op];
      if (tree.op === '^') return `${inside(a, 5)}^${inside(b, 5)}`;
      return `${inside(a, RANK[tree.op])} ${sign} ${inside(b, tree.op === '-' || tree.op === '*' ? 2 : tree.op === '/' ? 3 : 1)}`;
    }
  }
}

/** The tree as MathML, for pages. Leaves are written by `leaf`, which returns MathML. */
export function treeToMathml(tree: Tree, leaf: Leaf): string {
  const go = (t: Tree): string => treeToMathml(t, leaf);
  const inside = (t: Tree, atLeast: number): string =>
    rank(t) < atLeast ? `<mrow><mo>(</mo>${go(t)}<mo>)</mo></mrow>` : go(t);
  switch (tree.k) {
    case 'number':
      return `<mn>${tree.text}</mn>`;
    case 'name':
      return leaf(tree.name);
    case 'neg':
      return `<mrow><mo>−</mo>${inside(tree.arg, 2)}</mrow>`;
    case 'call': {
      const args = tree.args.map(go).join('<mo>,</mo>');
      if (tree.fn === 'sqrt') return `<msqrt>${args}</msqrt>`;
      if (tree.fn === 'exp') return `<msup><mi>e</mi><mrow>${args}</mrow></msup>`;
      if (tree.fn === 'abs') return `<mrow><mo>|</mo>${args}<mo>|</mo></mrow>`;
      const name = tree.fn === 'log' ? 'ln' : tree.fn === 'log10' ? 'lg' : tree.fn;
      return `<mrow><mi mathvariant="normal">${name}</mi><mo>(</mo>${args}<mo>)</mo></mrow>`;
    }
    case 'op': {
      const [a, b] = tree.args;
      if (tree.op === '/') return `<mfrac><mrow>${go(a)}</mrow><mrow>${go(b)}</mrow></mfrac>`;
      if (tree.op === '^') return `<msup><mrow>${inside(a, 5)}</mrow><mrow>${go(b)}</mrow></msup>`;
      if (tree.op === '*') return `<mrow>${inside(a, 2)}<mo>·</mo>${inside(b, 2)}</mrow>`;
      const sign = tree.op === '-' ? '−' : '+';
      return `<mrow>${go(a)}<mo>${sign}</mo>${inside(b, tree.op === '-' ? 2 : 1)}</mrow>`;
    }
  }
}
