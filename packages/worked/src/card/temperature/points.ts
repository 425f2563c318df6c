import { InputError, type ThermistorPoint } from 'loomwright';

// Readings as people write them in one line. An entry that cannot be read is named, with what one looks like.

const NUMBER = String.raw`([+-]?(?:\d+\.?\d*|\.\d+))`;
const READING = new RegExp(String.raw`^${NUMBER}\s*(°?\s*[CF])?[\s:]+${NUMBER}\s*(k|K)?\s*(?:Ω|ohms?)?$`, 'i');

/** `0 °C 5900 Ω; 122 °F 834 Ω; 100: 0.186 kΩ`: temperature in °C or °F, resistance in Ω or kΩ. */
export function readings(fn: string, text: string): ThermistorPoint[] {
  return text
    .replace(/\u2212/g, '-')
    .split(/[;\n]/)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '')
    .map((entry) => {
      const match = READING.exec(entry);
      if (match === null) {
        throw new InputError(
          fn,
          'points',
          'text',
          entry,
          'must read like 50 °C 834 Ω',
          'readings are parted by semicolons',
        );
      }
      const temp = Number(match[1]);
      const resistanceOhm = Number(match[3]) * (match[4] === undefined ? 1 : 1000);
      return /F/i.test(match[2] ?? '') ? { tempF: temp, resistanceOhm } : { tempC: temp, resistanceOhm };
    });
}
