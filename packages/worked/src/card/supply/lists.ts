import {
  bladeFuse,
  type DischargeStage,
  type FuseFamily,
  InputError,
  largeBladeFuse,
  miniFuse,
  type RestDrain,
  type RestFuse,
} from 'loomwright';

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

const NUMBER = String.raw`(\d*\.?\d+)`;

/** `radio 4 mA on F7; tracker 120 mA 5 % on F8; clock 3 mA`: what draws with everything off. */
export function drainList(fn: string, field: string, text: string): RestDrain[] {
  return entries(text).map((entry) => {
    const pattern = new RegExp(`^(.+?)\\s+${NUMBER}\\s*(µA|uA|mA|A)(?:\\s+${NUMBER}\\s*%)?(?:\\s+on\\s+(\\S+))?$`);
    const match = pattern.exec(entry);
    if (match === null) throw unread(fn, field, entry, 'tracker 120 mA 5 % on F8');
    const [, name = '', amount, unit, percent, fuse] = match;
    const scale = unit === 'A' ? 1 : unit === 'mA' ? 1e-3 : 1e-6;
    return {
      name,
      currentA: Number(amount) * scale,
      dutyFraction: percent === undefined ? 1 : Number(percent) / 100,
      fuse: fuse ?? null,
    };
  });
}

const FAMILIES: Readonly<Record<string, FuseFamily>> = { blade: bladeFuse, mini: miniFuse, large: largeBladeFuse };

/** `F7 blade 10 A; F8 mini 5 A reads 0.8 mV`: fuses that stay live at rest. */
export function restFuseList(fn: string, field: string, text: string): RestFuse[] {
  return entries(text).map((entry) => {
    const pattern = new RegExp(`^(\\S+)\\s+(blade|mini|large)\\s+${NUMBER}\\s*A(?:\\s+reads\\s+${NUMBER}\\s*mV)?$`);
    const match = pattern.exec(entry);
    if (match === null) throw unread(fn, field, entry, 'F7 blade 10 A reads 0.1 mV');
    const [, name = '', kind = '', rating, reading] = match;
    const fuse = { name, family: FAMILIES[kind] as FuseFamily, ratingA: Number(rating) };
    return reading === undefined ? fuse : { ...fuse, measuredMv: Number(reading) };
  });
}
