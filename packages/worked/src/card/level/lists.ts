import type { LevelPoint } from 'loomwright';
import { entriesOf, unread } from '../entries.js';

/** `0, 8, 20.5, 60 L`: litres. */
export function litreList(fn: string, field: string, text: string): number[] {
  return entriesOf(text, 'commas').map((entry) => {
    const match = /^(\d*\.?\d+)\s*L?$/i.exec(entry);
    if (match === null) throw unread(fn, field, entry, '8 or 20.5 L', 'entries are parted by commas');
    return Number(match[1]);
  });
}

/** Litres at equal steps of the level, as a strapping table. */
export function evenStrapping(fn: string, field: string, text: string): LevelPoint[] {
  const litres = litreList(fn, field, text);
  return litres.map((volumeL, i) => ({ levelFraction: i / Math.max(litres.length - 1, 1), volumeL }));
}
