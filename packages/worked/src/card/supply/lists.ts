import { type DischargeStage, InputError } from 'loomwright';

// Lists as people write them in one line. An entry that cannot be read is named, with what one looks like.

function entries(text: string): string[] {
  return text
    .replace(/\u2212/g, '-')
    .split(/[;\n]/)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '');
}

function unread(fn: string, field: string, entry: string, like: string): InputError {
  return new InputError(fn, field, 'text', entry, `must read like ${like}`, 'entries are parted by semicolons');
}

/** `80 A for 6 min; 8 A for 2 h`: discharges one after the other. */
export function stageList(fn: string, field: string, text: string): DischargeStage[] {
  return entries(text).map((entry) => {
    const match = /^(\d*\.?\d+)\s*A\s+(?:for\s+)?(\d*\.?\d+)\s*(min|h)$/.exec(entry);
    if (match === null) throw unread(fn, field, entry, '80 A for 6 min');
    const time = Number(match[2]);
    return { currentA: Number(match[1]), runTimeH: match[3] === 'min' ? time / 60 : time };
  });
}
