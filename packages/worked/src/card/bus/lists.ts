import type { CanIdBits, CanPlug, CanStub, TimedMessage } from 'loomwright';
import { entriesOf, unread } from '../entries.js';

const LIKE = 'speed: 8 bytes every 10 ms within 5 ms';
const TIME = '(\\d*\\.?\\d+)\\s*(ms|s)';
const ENTRY = new RegExp(
  `^(.+?)\\s*:\\s*(\\d+)\\s*bytes?\\s+every\\s+${TIME}(?:\\s+within\\s+${TIME})?(?:\\s+jitter\\s+${TIME})?$`,
  'i',
);

/** `speed: 8 bytes every 10 ms within 5 ms jitter 1 ms; …`: messages from the highest priority to the lowest. */
export function messageList(fn: string, field: string, text: string, idBits: CanIdBits): TimedMessage[] {
  return entriesOf(text).map((entry): TimedMessage => {
    const match = ENTRY.exec(entry);
    if (match === null) throw unread(fn, field, entry, LIKE, 'messages are parted by semicolons');
    const seconds = (at: number): number | null =>
      match[at] === undefined ? null : match[at + 1] === 'ms' ? Number(match[at]) / 1000 : Number(match[at]);
    return {
      name: match[1] as string,
      idBits,
      dataByteCount: Number(match[2]),
      periodS: seconds(3) as number,
      deadlineS: seconds(5),
      jitterS: seconds(7) ?? 0,
    };
  });
}

const PLUG = /^(.+?)\s+at\s+(\d*\.?\d+)\s*m(?:\s+with\s+(\d*\.?\d+)\s*(?:Ω|ohm))?(\s+through)?$/i;

/** `engine at 0 m with 120 Ω; switches at 3 m through; …`: plugs along the trunk. */
export function plugList(fn: string, field: string, text: string): CanPlug[] {
  return entriesOf(text).map((entry): CanPlug => {
    const match = PLUG.exec(entry);
    if (match === null) {
      const like = 'engine at 0 m with 120 Ω, or switches at 3 m through';
      throw unread(fn, field, entry, like, 'plugs are parted by semicolons');
    }
    return {
      name: match[1] as string,
      positionM: Number(match[2]),
      terminatorOhm: match[3] === undefined ? null : Number(match[3]),
      inputOhm: null,
      carriesLine: match[4] !== undefined,
    };
  });
}

const STUB = /^(.+?)\s+at\s+(\d*\.?\d+)\s*m\s*,\s*(\d*\.?\d+)\s*(m|cm)$/i;

/** `display at 2 m, 25 cm; …`: stubs. */
export function stubList(fn: string, field: string, text: string): CanStub[] {
  return entriesOf(text).map((entry): CanStub => {
    const match = STUB.exec(entry);
    if (match === null) throw unread(fn, field, entry, 'display at 2 m, 25 cm', 'stubs are parted by semicolons');
    const lengthM = match[4] === 'cm' ? Number(match[3]) / 100 : Number(match[3]);
    return { name: match[1] as string, positionM: Number(match[2]), lengthM };
  });
}

/** `0; 6 m`: places. */
export function placeList(fn: string, field: string, text: string): number[] {
  return entriesOf(text).map((entry) => {
    const match = /^(\d*\.?\d+)\s*m?$/.exec(entry);
    if (match === null) throw unread(fn, field, entry, '6 m', 'places are parted by semicolons');
    return Number(match[1]);
  });
}
