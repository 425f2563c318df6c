import {
  type CrankingPart,
  type CrankingReading,
  type CrankingRole,
  type ResistanceBasis,
  type SizeInput,
} from 'loomwright';
import { sizeOf } from '../conductor/basis.js';
import { signedEntriesOf, unread } from '../entries.js';

const NUMBER = String.raw`(\d*\.?\d+)`;
const PART = new RegExp(
  String.raw`^(.+?)\s*:\s*(joint|cable|strap|contact|body)\s+${NUMBER}\s*(mΩ|mohm|Ω|ohm|m|cm|ft|in)(?:\s+of\s+(\S+))?$`,
);
const METRES: Readonly<Record<string, number>> = { m: 1, cm: 0.01, ft: 0.3048, in: 0.0254 };
const OHMS: Readonly<Record<string, number>> = { Ω: 1, ohm: 1, mΩ: 1e-3, mohm: 1e-3 };
const ROLES: Readonly<Record<string, CrankingRole>> = {
  joint: 'connection',
  cable: 'cable',
  strap: 'cable',
  contact: 'contact',
  body: 'body',
};

/** What a cable of the list is where it does not say so itself. */
export interface CableOfList {
  readonly size: unknown;
  readonly resistanceBasis: ResistanceBasis;
  readonly conductorTempC: number;
}

/** `post clamp: joint 0.2 mΩ; long cable: cable 3.8 m; engine strap: strap 0.4 m of 35`: parts in order. */
export function crankingParts(fn: string, field: string, text: string, cable: CableOfList): CrankingPart[] {
  const like = 'post clamp: joint 0.2 mΩ, or long cable: cable 3.8 m';
  return signedEntriesOf(text).map((entry) => {
    const [, name = '', kind = '', amount, unit = '', own] = PART.exec(entry) ?? [];
    const role = ROLES[kind];
    const metres = METRES[unit];
    if (role === undefined || (metres !== undefined && role !== 'cable')) throw unread(fn, field, entry, like);
    if (metres === undefined) {
      if (own !== undefined) throw unread(fn, field, entry, like);
      return { name, role, resistanceOhm: Number(amount) * (OHMS[unit] as number) };
    }
    const size: SizeInput = sizeOf(fn, own ?? cable.size, cable.resistanceBasis);
    const { resistanceBasis, conductorTempC } = cable;
    return { name, role: 'cable', lengthM: Number(amount) * metres, ...size, resistanceBasis, conductorTempC };
  });
}

/** `long cable 0.45 V; frame 120 mV`: volts read across parts. */
export function readingList(fn: string, field: string, text: string): CrankingReading[] {
  return signedEntriesOf(text).map((entry) => {
    const match = new RegExp(String.raw`^(.+?)\s+${NUMBER}\s*(mV|V)$`).exec(entry);
    if (match === null) throw unread(fn, field, entry, 'long cable 0.45 V');
    return { name: match[1] as string, readingV: Number(match[2]) * (match[3] === 'mV' ? 1e-3 : 1) };
  });
}
