import type { MarkdownEnv, MarkdownRenderer } from 'vitepress';
import { joinUnits } from './join-units';

type State = Parameters<Parameters<MarkdownRenderer['core']['ruler']['push']>[1]>[0];
type Token = State['tokens'][number];

/** What our pages ask of markdown beyond the usual. */
export function bookMarkdown(md: MarkdownRenderer): void {
  md.core.ruler.push('title-by-theme', dropOwnTitle);
  md.core.ruler.push('side-notes', (state) => {
    state.tokens = placeSideNotes(state);
  });
  md.core.ruler.push('units', joinUnitsOfText);
  md.renderer.rules.table_open = () =>
    '<div class="table" tabindex="0" role="group" aria-label="Table, scrolls sideways">\n<table>\n';
  md.renderer.rules.table_close = () => '</table>\n</div>\n';
}

/** The theme sets the title from the front matter; a first heading that says it again is dropped. */
function dropOwnTitle(state: State): void {
  const env = state.env as MarkdownEnv;
  const [first] = state.tokens;
  const { title, layout } = env.frontmatter ?? {};
  if (title === undefined || layout === 'home' || first?.type !== 'heading_open' || first.tag !== 'h1') return;
  const end = state.tokens.findIndex((token) => token.type === 'heading_close');
  state.tokens.splice(0, end + 1);
}

function joinUnitsOfText(state: State): void {
  for (const { children } of state.tokens) {
    for (const child of children ?? []) if (child.type === 'text') child.content = joinUnits(child.content);
  }
}

/**
 * A side note is written below its paragraph. In the page it stands before the paragraph, both in one wrapper, so that
 * it can float beside the first line where there is a margin; on a narrow screen CSS puts it below again.
 */
function placeSideNotes(state: State): Token[] {
  const { tokens } = state;
  const inLine = tokens.find((token) => token.children?.some((child) => /^<\/?Side\b/.test(child.content)));
  if (inLine !== undefined) {
    const where = (state.env as MarkdownEnv).relativePath ?? 'a page';
    throw new Error(`${where}: <Side> must begin a line of its own, with an empty line before it`);
  }
  const out: Token[] = [];
  for (let i = 0; i < tokens.length;) {
    const notes: Token[] = [];
    while (i < tokens.length && isSideStart(tokens[i])) {
      const end = tokens.findIndex((token, at) => at >= i && /<\/Side>/.test(token.content));
      notes.push(...tokens.slice(i, end + 1));
      i = end + 1;
    }
    if (notes.length === 0) {
      out.push(tokens[i++] as Token);
      continue;
    }
    const start = blockStart(out);
    const block = out.splice(start);
    if (block[0]?.type === 'heading_open') {
      out.push(...block, ...notes);
    } else {
      out.push(html(state, '<div class="noted">\n'), ...notes, ...block, html(state, '</div>\n'));
    }
  }
  return out;
}

function isSideStart(token: Token | undefined): boolean {
  return token?.type === 'html_block' && /^<Side\b/.test(token.content.trim());
}

/** Where the last whole block of a list of tokens starts. */
function blockStart(tokens: readonly Token[]): number {
  let depth = 0;
  for (let i = tokens.length - 1; i >= 0; i -= 1) {
    depth -= (tokens[i] as Token).nesting;
    if (depth <= 0) return i;
  }
  return 0;
}

function html(state: State, content: string): Token {
  const token = new state.Token('html_block', '', 0);
  token.content = content;
  return token;
}
