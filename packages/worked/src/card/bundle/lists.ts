import { type BundleWire, InputError, type MassChange, type PlacedMass, type VehiclePlace } from 'loomwright';
import { signedEntriesOf, unread } from '../entries.js';

/** The entries of a list that may not be empty. */
function someEntries(fn: string, field: string, text: string, like: string): string[] {
  const list = signedEntriesOf(text);
  if (list.length === 0) throw new InputError(fn, field, 'missing', undefined, `needs an entry such as ${like}`);
  return list;
}

const NUMBER = String.raw`(-?\d*\.?\d+)`;

/** `7 × 2.4 mm; 3 × 1.6`: how many, and the diameter over the insulation in mm, or in inches with `in`. */
export function wireList(fn: string, text: string): BundleWire[] {
  const like = new RegExp(String.raw`^(?:(\d+)\s*[×x*]\s*)?${NUMBER}\s*(mm|in|")?$`, 'i');
  return someEntries(fn, 'wires', text, '7 × 2.4 mm').map((entry) => {
    const match = like.exec(entry);
    if (match === null || !(Number(match[2]) > 0) || match[1] === '0') throw unread(fn, 'wires', entry, '7 × 2.4 mm');
    const inches = match[3] !== undefined && match[3].toLowerCase() !== 'mm';
    return { outerDiameterMm: Number(match[2]) * (inches ? 25.4 : 1), count: Number(match[1] ?? 1) };
  });
}

/** `2 × 18; 1 × 20`: how many of which size. */
export function sizeList(fn: string, text: string): { size: string; count: number }[] {
  return someEntries(fn, 'wires', text, '2 × 18').map((entry) => {
    const match = /^(?:(\d+)\s*[×x*]\s*)?([\d./]+)$/i.exec(entry);
    if (match === null) throw unread(fn, 'wires', entry, '2 × 18');
    return { size: match[2] as string, count: Number(match[1] ?? 1) };
  });
}

/** `100 kg at 0; 60 kg at 10.1`: masses in kg and places in m. */
export function massList(fn: string, text: string): PlacedMass[] {
  const like = new RegExp(String.raw`^${NUMBER}\s*kg\s+at\s+${NUMBER}(?:\s*m)?$`, 'i');
  return someEntries(fn, 'masses', text, '20 kg at 1.4').map((entry) => {
    const match = like.exec(entry);
    if (match === null) throw unread(fn, 'masses', entry, '20 kg at 1.4');
    return { massKg: Number(match[1]), alongM: Number(match[2]) };
  });
}

/**
 * `battery 20 kg from -0.4 / 0.5 to 2.9 / 0.5; winch 38 kg to -0.6 / 0; spare wheel 22 kg from 2.6 / 0`: a name, a mass
 * in kg, and places in m behind the front axle and right of the middle. From alone is removed, to alone is added.
 */
export function changeList(fn: string, text: string): MassChange[] {
  const place = String.raw`${NUMBER}\s*\/\s*${NUMBER}`;
  const like = new RegExp(String.raw`^(.+?)\s+${NUMBER}\s*kg(?:\s+from\s+${place})?(?:\s+to\s+${place})?$`, 'i');
  return signedEntriesOf(text).map((entry) => {
    const match = like.exec(entry);
    if (match === null || (match[3] === undefined && match[5] === undefined)) {
      throw unread(fn, 'changes', entry, 'battery 20 kg from -0.4 / 0.5 to 2.9 / 0.5');
    }
    const at = (i: number): VehiclePlace => ({
      behindFrontAxleM: Number(match[i]),
      rightOfCentreM: Number(match[i + 1]),
    });
    const what = { name: match[1] as string, massKg: Number(match[2]) };
    if (match[5] === undefined) return { kind: 'removed', ...what, from: at(3) };
    if (match[3] === undefined) return { kind: 'added', ...what, to: at(5) };
    return { kind: 'moved', ...what, from: at(3), to: at(5) };
  });
}
