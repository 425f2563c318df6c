import type { CalibrationCell } from 'loomwright';
import { signedEntriesOf, unread } from '../entries.js';

const NUMBER = String.raw`([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)`;
const CELL = new RegExp(String.raw`^${NUMBER}[\s:=]+${NUMBER}$`, 'i');

/** `0.217 120; 0.273 110`: what comes in, then what is to be shown, parted by semicolons or lines. */
export function cellList(fn: string, field: string, text: string): CalibrationCell[] {
  return signedEntriesOf(text).map((entry) => {
    const match = CELL.exec(entry);
    if (match === null) {
      const like = '0.35 100, what comes in and then what is to be shown';
      throw unread(fn, field, entry, like, 'points are parted by semicolons, decimals are points');
    }
    return { inValue: Number(match[1]), outValue: Number(match[2]) };
  });
}
