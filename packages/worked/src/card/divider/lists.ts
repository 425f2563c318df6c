import type { TheveninBranch } from 'loomwright';
import { signedEntriesOf, unread } from '../entries.js';

const NUMBER = String.raw`(-?\d*\.?\d+(?:e[+-]?\d+)?)`;
const FACTOR: Readonly<Record<string, number>> = { '': 1, k: 1e3, M: 1e6, m: 1e-3 };

const COMMAS = 'entries are parted by commas';

/** `110, 360, 1.3k, 2k7`: resistances in Ω. */
export function ohmList(fn: string, field: string, text: string): number[] {
  return signedEntriesOf(text, 'commas').map((entry) => {
    const plain = new RegExp(`^${NUMBER}\\s*([kMm]?)\\s*(?:Ω|ohm|R)?$`).exec(entry);
    if (plain !== null) return Number(plain[1]) * (FACTOR[plain[2] ?? ''] as number);
    const inside = /^(\d+)([RkKM])(\d+)$/.exec(entry);
    if (inside === null) throw unread(fn, field, entry, '110, 1.3k or 2k7', COMMAS);
    const letter = inside[2] === 'R' ? '' : inside[2] === 'K' ? 'k' : (inside[2] as string);
    return Number(`${inside[1]}.${inside[3]}`) * (FACTOR[letter] as number);
  });
}

/** `12 V / 6; 0 V / 4k7`: the open volts of each path to a node, and its resistance in Ω. */
export function branchList(fn: string, field: string, text: string): TheveninBranch[] {
  return signedEntriesOf(text, 'commas').map((entry) => {
    const match = new RegExp(`^${NUMBER}\\s*V?\\s*/\\s*(.+)$`).exec(entry);
    if (match === null) throw unread(fn, field, entry, '12 V / 4k7', COMMAS);
    return { emfV: Number(match[1]), resistanceOhm: ohmList(fn, field, match[2] as string)[0] as number };
  });
}

/** `up, down, set`: names, parted by commas. */
export function nameList(text: string): string[] {
  return signedEntriesOf(text, 'commas');
}
