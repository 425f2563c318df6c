import { InputError, type LevelPoint } from 'loomwright';

function entries(text: string): string[] {
  return text
    .split(/[;,\n]/)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '');
}

/** `0, 8, 20.5, 60 L`: litres. */
export function litreList(fn: string, field: string, text: string): number[] {
  return entries(text).map((entry) => {
    const match = /^(\d*\.?\d+)\s*L?$/i.exec(entry);
    if (match === null) {
      throw new InputError(fn, field, 'text', entry, 'must read like 8 or 20.5 L', 'entries are parted by commas');
    }
    return Number(match[1]);
  });
}

/** Litres at equal steps of the level, as a strapping table. */
export function evenStrapping(fn: string, field: string, text: string): LevelPoint[] {
  const litres = litreList(fn, field, text);
  return litres.map((volumeL, i) => ({ levelFraction: i / Math.max(litres.length - 1, 1), volumeL }));
}
