import type { ThermistorPoint } from 'loomwright';
import { signedEntriesOf, unread } from '../entries.js';

const NUMBER = String.raw`([+-]?(?:\d+\.?\d*|\.\d+))`;
const READING = new RegExp(String.raw`^${NUMBER}\s*(°?\s*[CF])?[\s:]+${NUMBER}\s*(k|K)?\s*(?:Ω|ohms?)?$`, 'i');

/** `0 °C 5900 Ω; 122 °F 834 Ω; 100: 0.186 kΩ`: temperature in °C or °F, resistance in Ω or kΩ. */
export function readings(fn: string, text: string): ThermistorPoint[] {
  return signedEntriesOf(text).map((entry) => {
    const match = READING.exec(entry);
    if (match === null) throw unread(fn, 'points', entry, '50 °C 834 Ω', 'readings are parted by semicolons');
    const temp = Number(match[1]);
    const resistanceOhm = Number(match[3]) * (match[4] === undefined ? 1 : 1000);
    return /F/i.test(match[2] ?? '') ? { tempF: temp, resistanceOhm } : { tempC: temp, resistanceOhm };
  });
}
