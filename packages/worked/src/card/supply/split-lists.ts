import type { ResistanceBasis, SplitBattery, SplitCable } from 'loomwright';
import { sizeOf } from '../conductor/basis.js';
import { unread } from '../entries.js';

const NUMBER = String.raw`(\d*\.?\d+)`;
const BATTERY = new RegExp(
  String.raw`^${NUMBER}\s*Ah,\s*${NUMBER}\s*%\s*full,\s*${NUMBER}\s*mΩ,\s*filled\s+at\s+${NUMBER}\s*V(?:,\s*takes\s+${NUMBER}\s*A)?$`,
);
const RUN = new RegExp(
  String.raw`^${NUMBER}\s*m\s+out(?:,\s*${NUMBER}\s*m\s+back)?\s+of\s+([^,]+?)(?:,\s*joints\s+${NUMBER}\s*mΩ)?$`,
);

/** What all batteries of a card share. */
export type SharedBattery = Pick<SplitBattery, 'emptyV' | 'restFullV' | 'mostV' | 'chargeEfficiency'>;

/** `100 Ah, 50 % full, 10 mΩ, filled at 14.4 V, takes 30 A`: a battery. */
export function splitBattery(fn: string, field: string, text: string, shared: SharedBattery): SplitBattery {
  const match = BATTERY.exec(text.trim());
  if (match === null) throw unread(fn, field, text, '100 Ah, 50 % full, 10 mΩ, filled at 14.4 V, takes 30 A', '');
  const [chargeAh, percent, milliohm, chargeFullV] = match.slice(1, 5).map(Number) as [number, number, number, number];
  return {
    ...shared,
    chargeAh,
    chargeFraction: percent / 100,
    resistanceOhm: milliohm / 1000,
    chargeFullV,
    acceptanceA: match[5] === undefined ? null : Number(match[5]),
  };
}

/** `4 m out, 4 m back of 16, joints 2 mΩ`: a run of cable. */
export function splitCable(fn: string, field: string, text: string, basis: ResistanceBasis): SplitCable {
  const match = RUN.exec(text.trim());
  if (match === null) throw unread(fn, field, text, '4 m out, 4 m back of 16, joints 2 mΩ', '');
  const [, out, back, size, joint] = match;
  return {
    ...sizeOf(fn, size, basis),
    outLengthM: Number(out),
    returnLengthM: Number(back ?? 0),
    jointOhm: Number(joint ?? 0) / 1000,
  };
}
