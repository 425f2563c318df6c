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

const FRACTION = 'display:inline-flex;flex-direction:column;vertical-align:middle;text-align:center;margin:0 0.15em';
const OVER = 'border-bottom:1px solid currentColor;padding:0 0.2em 0.1em';
const UNDER = 'padding:0.1em 0.2em 0';

const ROOT = 'display:inline-flex;align-items:stretch;vertical-align:middle';
const UNDER_ROOT = 'border-top:1px solid currentColor;padding:0.1em 0.1em 0';
/** As high as what stands under it. */
const ROOT_SIGN =
  '<svg role="img" aria-label="√" viewBox="0 0 10 20" preserveAspectRatio="none" style="width:0.7em;height:auto;min-height:1.2em"><path d="M0 12 2.5 10.5 6 19.5 10 0" fill="none" stroke="currentColor" vector-effect="non-scaling-stroke"/></svg>';

/**
 * The tree as HTML that needs no style sheet and no font with a table of mathematics: fractions stand over one
 * another, powers are raised. Leaves are written by `leaf`, which returns HTML.
 */
export function treeToHtml(tree: Tree, leaf: Leaf): string {
  const go = (t: Tree): string => treeToHtml(t, leaf);
  const inside = (t: Tree, atLeast: number): string => (rank(t) < atLeast ? `(${go(t)})` : go(t));
  switch (tree.k) {
    case 'number':
      return tree.text;
    case 'name':
      return leaf(tree.name);
    case 'neg':
      return `−${inside(tree.arg, 2)}`;
    case 'call': {
      const args = tree.args.map(go).join(', ');
      if (tree.fn === 'sqrt')
        return `<span style="${ROOT}">${ROOT_SIGN}<span style="${UNDER_ROOT}">${args}</span></span>`;
      if (tree.fn === 'exp') return `e<sup>${args}</sup>`;
      if (tree.fn === 'abs') return `|${args}|`;
      return `${tree.fn === 'log' ? 'ln' : tree.fn === 'log10' ? 'lg' : tree.fn}(${args})`;
    }
    case 'op': {
      const [a, b] = tree.args;
      if (tree.op === '/')
        return `<span style="${FRACTION}"><span style="${OVER}">${go(a)}</span><span style="${UNDER}">${go(b)}</span></span>`;
      if (tree.op === '^') return `${inside(a, 5)}<sup>${go(b)}</sup>`;
      if (tree.op === '*') return `${inside(a, 2)} · ${inside(b, 2)}`;
      return `${go(a)} ${tree.op === '-' ? '−' : '+'} ${inside(b, tree.op === '-' ? 2 : 1)}`;
    }
  }
}
