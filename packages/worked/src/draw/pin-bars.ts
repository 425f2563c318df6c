import { drawing, element, ink, label } from './svg.js';

/** One pin with what hangs on it. */
export interface BarPin {
  readonly name: string;
  readonly limitA: number;
  /** What may be used of the limit where some is to stay free. */
  readonly usableA: number;
  readonly parts: readonly { readonly name: string; readonly currentA: number; readonly moved?: boolean }[];
}

export interface PinBarsInput {
  readonly title: string;
  /** Groups below one another: as it is, as proposed. */
  readonly groups: readonly { readonly name: string; readonly pins: readonly BarPin[] }[];
  /** Width in px: 360 on a phone, 640 or more on a desk. */
  readonly width: number;
  /** Writes a current: what is taken is rounded up, what is left down. */
  readonly format: (amps: number, round: 'up' | 'down') => string;
}

const ROW = 78;
const LETTER = 6.3;

/**
 * A bar a pin: what hangs on it one after the other, in copper, with a mark at its limit and a finer one at what may be
 * used of it. What was moved is in verdigris and has a mark; names that do not fit stand below.
 */
export function pinBars(input: PinBarsInput): string {
  const { title, groups, width, format } = input;
  const right = width - 12;
  const all = groups.flatMap(({ pins }) => pins);
  const sumOf = (pin: BarPin): number => pin.parts.reduce((sum, { currentA }) => sum + currentA, 0);
  const span = Math.max(...all.map((pin) => Math.max(pin.limitA, sumOf(pin))), 1e-9) * 1.02;
  const x = (amps: number): number => (right * amps) / span;
  const shapes: string[] = [];
  const said: string[] = [];
  let top = 0;
  for (const group of groups) {
    shapes.push(label(0, top + 16, group.name, { 'font-weight': 600, fill: ink.soft }));
    top += 26;
    for (const pin of group.pins) {
      const sumA = sumOf(pin);
      const fits = sumA <= pin.usableA * (1 + 1e-9);
      const leftA = pin.usableA - sumA;
      // Where some is to stay free the finer mark counts, and the text says so: the pin's own limit lies beyond it.
      const [room, over] = pin.usableA < pin.limitA ? ['to the fine mark', 'over the fine mark'] : ['left', 'too much'];
      const verdict = fits ? `✓ ${format(leftA, 'down')} ${room}` : `✕ ${format(-leftA, 'up')} ${over}`;
      shapes.push(
        label(0, top + 13, `${pin.name}, ${format(sumA, 'up')} of ${format(pin.limitA, 'down')}`, {
          'font-weight': 600,
        }),
        label(right, top + 13, verdict, { 'text-anchor': 'end', fill: fits ? ink.verdigris : ink.red }),
      );
      const small: string[] = [];
      let from = 0;
      for (const { name, currentA, moved = false } of pin.parts) {
        const x1 = x(from);
        const wide = Math.max(x(from + currentA) - x1 - 1.5, 0.75);
        const word = moved ? `→ ${name}` : name;
        // A name stands beside the marks that cross its bar, on the wider side of each.
        let [start, end] = [x1, x1 + wide];
        for (const mark of [x(pin.limitA), x(pin.usableA)]) {
          if (mark <= start || mark >= end) continue;
          if (end - mark > mark - start) start = mark;
          else end = mark;
        }
        const inside = word.length * LETTER + 8 <= end - start;
        shapes.push(
          element('rect', { x: x1, y: top + 20, width: wide, height: 24, fill: moved ? ink.verdigris : ink.copper }),
        );
        if (inside) {
          const at = { 'text-anchor': 'middle', 'font-size': 13, fill: ink.ground };
          shapes.push(label((start + end) / 2, top + 36.5, word, at));
        } else small.push(word);
        from += currentA;
      }
      const line = (amps: number, strong: boolean): string =>
        element('line', {
          x1: x(amps),
          x2: x(amps),
          y1: top + (strong ? 16 : 18),
          y2: top + (strong ? 48 : 46),
          stroke: ink.text,
          'stroke-width': strong ? 2.5 : 1,
          'stroke-dasharray': strong ? undefined : '3 3',
        });
      shapes.push(
        element('line', {
          x1: 0,
          x2: x(pin.limitA),
          y1: top + 44.5,
          y2: top + 44.5,
          stroke: ink.soft,
          'stroke-width': 1,
        }),
        line(pin.limitA, true),
      );
      if (pin.usableA < pin.limitA) shapes.push(line(pin.usableA, false));
      const lines = wrapped(small, Math.floor(right / LETTER));
      lines.forEach((text, i) => shapes.push(label(0, top + 61 + 15 * i, text, { fill: ink.soft, 'font-size': 13 })));
      said.push(`${group.name}, ${pin.name}: ${pin.parts.map(({ name }) => name).join(', ')}; ${verdict}`);
      top += ROW + 15 * Math.max(0, lines.length - 1);
    }
    top += 6;
  }
  return drawing(width, top, title, said.join('. '), ...shapes);
}

/** Names in lines of so many letters at most. */
function wrapped(names: readonly string[], letters: number): readonly string[] {
  const lines: string[] = [];
  names.forEach((name, i) => {
    const text = i === 0 ? `narrow: ${name}` : name;
    const last = lines.at(-1);
    if (last !== undefined && last.length + text.length + 2 <= letters) lines[lines.length - 1] = `${last}, ${text}`;
    else lines.push(text);
  });
  return lines;
}
