import { type CanIdBits, InputError, type TimedMessage } from 'loomwright';

const LIKE = 'speed: 8 bytes every 10 ms within 5 ms';
const TIME = '(\\d*\\.?\\d+)\\s*(ms|s)';
const ENTRY = new RegExp(
  `^(.+?)\\s*:\\s*(\\d+)\\s*bytes?\\s+every\\s+${TIME}(?:\\s+within\\s+${TIME})?(?:\\s+jitter\\s+${TIME})?$`,
  'i',
);

/** `speed: 8 bytes every 10 ms within 5 ms jitter 1 ms; …`: messages from the highest priority to the lowest. */
export function messageList(fn: string, field: string, text: string, idBits: CanIdBits): TimedMessage[] {
  return text
    .split(/[;\n]/)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '')
    .map((entry): TimedMessage => {
      const match = ENTRY.exec(entry);
      if (match === null) {
        throw new InputError(fn, field, 'text', entry, `must read like ${LIKE}`, 'messages are parted by semicolons');
      }
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
