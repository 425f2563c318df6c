import type { ResolvedSize } from '../conductor/index.js';
import { resistanceRatio } from '../conductor/metal.js';
import { InputError } from '../error/index.js';
import { needAtLeast, needList, needObject, needText } from '../error/guard.js';
import type { PathPart } from '../load/index.js';

/** A stretch of the wire that is being solved or sized. */
export interface WirePart {
  readonly name: string;
  /** Length in m, at least 0. */
  readonly lengthM: number;
}

/** A stretch of wire or a fixed resistance (terminal, fuse hot, relay contact, connector, body). */
export type FeedPart = WirePart | PathPart;

/** The place in a path of the fuse that `sizeFeed` chooses; its typical resistance hot is counted there. */
export interface FuseToChoose {
  readonly name: string;
  readonly fuse: 'chosen';
}

/** What every feed has. */
export interface FeedPath {
  /** Supply voltage in V, above 0. */
  readonly supplyV: number;
  /** From the supply to the load, in order. */
  readonly outParts: readonly FeedPart[];
  /** From the load back to the supply, in order: a wire, a body, or both. */
  readonly returnParts: readonly FeedPart[];
}

/** Throws unless every part is a wire or a resistance. */
export function needParts(fn: string, field: string, parts: readonly FeedPart[]): void {
  needList(fn, field, parts);
  parts.forEach((part, i) => {
    const at = `${field}[${i}]`;
    needObject(fn, at, part);
    needText(fn, `${at}.name`, part.name);
    const wire = 'lengthM' in part;
    if (wire === 'resistanceOhm' in part) {
      throw new InputError(fn, `${at}.lengthM`, 'oneOfFields', undefined, 'or resistanceOhm must be given, one only');
    }
    if (wire) needAtLeast(fn, `${at}.lengthM`, part.lengthM);
    else needAtLeast(fn, `${at}.resistanceOhm`, part.resistanceOhm);
  });
}

/** The parts with the chosen fuse put in at a resistance. */
export function withFuse(parts: readonly (FeedPart | FuseToChoose)[], resistanceOhm: number): FeedPart[] {
  return parts.map((part) => ('fuse' in part ? { name: part.name, kind: 'fuse', resistanceOhm } : part));
}

/** Metres of wire in a list of parts. */
export function wireLengthM(parts: readonly FeedPart[]): number {
  let sum = 0;
  for (const part of parts) if ('lengthM' in part) sum += part.lengthM;
  return sum;
}

/** Ohms of the fixed parts. */
export function fixedOhm(parts: readonly FeedPart[]): number {
  let sum = 0;
  for (const part of parts) if (!('lengthM' in part)) sum += part.resistanceOhm;
  return sum;
}

/** The parts as resistances, with the wire of a size at a temperature. */
export function withSize(parts: readonly FeedPart[], size: ResolvedSize, conductorTempC: number): PathPart[] {
  const perM = size.resistanceOhmPerM * resistanceRatio(size.metal, size.ratedTempC, conductorTempC);
  return parts.map((part) =>
    'lengthM' in part ? { name: part.name, kind: 'wire', resistanceOhm: part.lengthM * perM } : part,
  );
}
