import { escapeText } from '../draw/index.js';

// Our symbols are a small part of TeX: a letter or a Greek letter, a word in \mathrm{}, one lower index, a prime.
// Two renderers write them where no TeX is at hand.

const GREEK: Readonly<Record<string, string>> = {
  alpha: 'α',
  beta: 'β',
  gamma: 'γ',
  delta: 'δ',
  Delta: 'Δ',
  epsilon: 'ε',
  varepsilon: 'ε',
  eta: 'η',
  theta: 'θ',
  vartheta: 'ϑ',
  kappa: 'κ',
  lambda: 'λ',
  Lambda: 'Λ',
  mu: 'μ',
  nu: 'ν',
  pi: 'π',
  Pi: 'Π',
  rho: 'ρ',
  sigma: 'σ',
  Sigma: 'Σ',
  tau: 'τ',
  varphi: 'φ',
  phi: 'φ',
  Phi: 'Φ',
  psi: 'ψ',
  omega: 'ω',
  Omega: 'Ω',
  infty: '∞',
  ell: 'ℓ',
};

interface SymbolParts {
  readonly base: Glyphs;
  readonly lower: Glyphs | null;
  readonly upper: Glyphs | null;
  readonly primes: number;
}

interface Glyphs {
  readonly text: string;
  /** A word or a digit stands upright, a letter slanted. */
  readonly upright: boolean;
}

/** Reads a symbol. Throws for TeX beyond the small part that we use. */
function parts(tex: string): SymbolParts {
  const atom = String.raw`(?:\\(?:mathrm|text|operatorname)\{([^{}]*)\}|\\([A-Za-z]+)|([A-Za-z0-9%+\-*,]))`;
  const group = String.raw`(?:\{((?:[^{}]|\{[^{}]*\})*)\}|(\\[A-Za-z]+(?:\{[^{}]*\})?|[A-Za-z0-9+\-]))`;
  const match = new RegExp(`^${atom}('*)(?:_${group})?(?:\\^${group})?('*)$`).exec(
    tex.replace(/\\[,;! ]/g, ' ').trim(),
  );
  if (match === null) throw new Error(`'${tex}' is not a symbol that we can write`);
  const [, word, command, letter, prime1 = '', low1, low2, up1, up2, prime2 = ''] = match;
  return {
    base:
      word === undefined
        ? glyphs(command === undefined ? (letter as string) : `\\${command}`)
        : { text: word, upright: true },
    lower: low1 === undefined && low2 === undefined ? null : glyphs(low1 ?? (low2 as string)),
    upper: up1 === undefined && up2 === undefined ? null : glyphs(up1 ?? (up2 as string)),
    primes: prime1.length + prime2.length,
  };
}

function glyphs(tex: string): Glyphs {
  let upright = /\\(?:mathrm|text)/.test(tex) || /^[0-9]/.test(tex);
  const text = tex
    .replace(/\\(?:mathrm|text|operatorname)\{([^{}]*)\}/g, '$1')
    .replace(/\\([A-Za-z]+)/g, (_, name: string) => {
      const letter = GREEK[name];
      if (letter === undefined) throw new Error(`\\${name} is not a letter that we can write`);
      return letter;
    })
    .replace(/[{}]/g, '');
  if (text.length > 1 && /[A-Za-z]{2}/.test(text)) upright = true;
  return { text, upright };
}

/** A symbol as plain text: `l_out`, `T₀` as `T_0`. */
export function symbolText(tex: string): string {
  const { base, lower, upper, primes } = parts(tex);
  return `${base.text}${lower === null ? '' : `_${lower.text}`}${upper === null ? '' : `^${upper.text}`}${'′'.repeat(primes)}`;
}

/** A symbol as HTML. */
export function symbolHtml(tex: string): string {
  const { base, lower, upper, primes } = parts(tex);
  const one = ({ text, upright }: Glyphs): string => (upright ? escapeText(text) : `<i>${escapeText(text)}</i>`);
  const raised = upper === null ? '' : `<sup>${one(upper)}</sup>`;
  return `${one(base)}${'′'.repeat(primes)}${lower === null ? '' : `<sub>${one(lower)}</sub>`}${raised}`;
}
