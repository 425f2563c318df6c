/** A part of the site, as the running head names it. */
export interface Part {
  readonly name: string;
  readonly path: string;
  /** The markdown file of its first page. */
  readonly file: string;
  /** Files that belong to it. */
  readonly holds: RegExp;
}

export const parts: readonly Part[] = [
  { name: 'Handbook', path: '/handbook/', file: 'handbook/index.md', holds: /^handbook\// },
  { name: 'Notebooks', path: '/notebooks/', file: 'notebooks/index.md', holds: /^notebooks\// },
  { name: 'Reference', path: '/reference/', file: 'reference/index.md', holds: /^(reference|api)\// },
  { name: 'About', path: '/about.html', file: 'about.md', holds: /^about\.md$/ },
];

/** The part that a markdown file belongs to. */
export function partOf(file: string): Part | undefined {
  return parts.find((part) => part.holds.test(file));
}
