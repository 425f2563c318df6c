/** Attributes of an element; numbers are written with at most two decimals. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Text made safe for SVG and HTML. */
export function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`);
}

/** One SVG element. Children are SVG already. */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? number(value) : escapeText(String(value))}"`)
    .join('');
  return children.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${children.join('')}</${name}>`;
}

/** A number for a coordinate: two decimals at most, no negative zero. */
export function number(value: number): string {
  return String(Math.round(value * 100) / 100 || 0);
}

/**
 * The colours of the house. On the site the tokens of the page decide, so that a drawing follows light and dark; in a
 * notebook or a file the second value stands.
 */
export const ink = {
  text: 'var(--lw-text, #20251F)',
  soft: 'var(--lw-soft, #5A6158)',
  ground: 'var(--lw-ground, #FBF8F2)',
  rule: 'var(--lw-hair, #D8D2C4)',
  copper: 'var(--lw-copper, #9C4A1A)',
  verdigris: 'var(--lw-verdigris, #1F6B5E)',
  blue: 'var(--lw-blue, #22577A)',
  amber: 'var(--lw-amber, #8A5A00)',
  red: 'var(--lw-red, #A3241C)',
} as const;

const SANS = "var(--lw-sans, 'IBM Plex Sans Condensed', 'Arial Narrow', sans-serif)";

/** A text. */
export function label(x: number, y: number, text: string, attributes: Attributes = {}): string {
  return element('text', { x, y, fill: ink.text, ...attributes }, escapeText(text));
}

/** A whole drawing with a title and a description for those who cannot see it. */
export function drawing(
  width: number,
  height: number,
  title: string,
  description: string,
  ...parts: readonly string[]
): string {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${number(width)} ${number(height)}`,
      width: '100%',
      style: `max-width:${number(width)}px;height:auto;display:block;font-family:${SANS};font-size:14px;font-variant-numeric:tabular-nums`,
      role: 'img',
      'aria-label': `${title}. ${description}`,
    },
    element('title', {}, escapeText(title)),
    ...parts,
  );
}
