import { InputError } from '../error/index.js';
import { needBetween } from '../error/guard.js';
import type { FuseFamily, FuseLimits } from '../table/index.js';

/** A family must be one of the objects of the table room. */
export function needFamily(fn: string, family: FuseFamily, field = 'family'): void {
  if (typeof family !== 'object' || family === null || !Array.isArray(family.ratingsA)) {
    throw new InputError(
      fn,
      field,
      family === undefined ? 'missing' : 'object',
      family,
      'must be a fuse family',
      'import one, such as bladeFuse',
    );
  }
}

/** A rating must be one that the family is made in. */
export function needRating(fn: string, family: FuseFamily, ratingA: number, field = 'ratingA'): void {
  if (!family.ratingsA.includes(ratingA)) {
    throw new InputError(
      fn,
      field,
      ratingA === undefined ? 'missing' : 'inTable',
      ratingA,
      `must be a rating of ${family.key} (${family.ratingsA.join(' ')})`,
    );
  }
}

/** The limits that hold for a rating. */
export function limitsOf(family: FuseFamily, ratingA: number): FuseLimits {
  return family.limits.find((group) => ratingA <= group.upToA) ?? (family.limits.at(-1) as FuseLimits);
}

/** Typical resistance hot, at rated current, in Ω: what a drop at rated current says. Null where no figure is known. */
export function hotResistanceOhm(family: FuseFamily, ratingA: number): number | null {
  const row = family.dropMillivolt.find(([rating]) => rating === ratingA);
  return row === undefined ? null : row[1] / 1000 / ratingA;
}

/** Typical resistance cold in Ω. Null where no figure is known. */
export function coldResistanceOhm(family: FuseFamily, ratingA: number): number | null {
  const row = family.coldMilliohm.find(([rating]) => rating === ratingA);
  return row === undefined ? null : row[1] / 1000;
}

/** Typical melting I²t in A²s, for nuisance opening only. Null where no figure is known. */
export function meltingI2tOf(family: FuseFamily, ratingA: number): number | null {
  return family.meltingI2t.find(([rating]) => rating === ratingA)?.[1] ?? null;
}

/** The current, as a multiple of the rating, from which the family opens within a time; null where none is printed. */
export function openingMultiple(family: FuseFamily, ratingA: number, withinS: number): number | null {
  for (const [percent, , longestS] of limitsOf(family, ratingA).rows) {
    if (longestS !== null && longestS <= withinS) return percent / 100;
  }
  return null;
}

/** Per cent of rating at which the family is sure to open at all, as a multiple: the conventional opening current. */
export function conventionalMultiple(family: FuseFamily, ratingA: number): number {
  const row = limitsOf(family, ratingA).rows.find(([, , longestS]) => longestS !== null);
  return (row?.[0] ?? 135) / 100;
}

/**
 * Share of the rating usable at an ambient temperature, by straight lines; colder than the first row counts as it.
 * A family without a curve asks for the caller's own share.
 */
export function ambientShare(fn: string, family: FuseFamily, ambientTempC: number, given?: number): number {
  if (given !== undefined) {
    needBetween(fn, 'ambientFactor', given, 0.01, 1.5);
    return given;
  }
  const rows = family.ambientFactor;
  const first = rows[0];
  const last = rows.at(-1);
  if (first === undefined || last === undefined) {
    const hint = 'take the share of its rating at this temperature from the data of the fuse';
    throw new InputError(fn, 'ambientFactor', 'missing', given, `is required: ${family.key} has no re-rating`, hint);
  }
  if (ambientTempC <= first[0]) return first[1];
  if (ambientTempC > last[0]) {
    throw new InputError(
      fn,
      'ambientTempC',
      'atMost',
      ambientTempC,
      `must be at most ${last[0]}, where the re-rating of ${family.key} ends`,
    );
  }
  const i = rows.findIndex(([tempC]) => ambientTempC <= tempC);
  const [t0, f0] = rows[i - 1] as readonly [number, number];
  const [t1, f1] = rows[i] as readonly [number, number];
  return f0 + ((f1 - f0) * (ambientTempC - t0)) / (t1 - t0);
}
