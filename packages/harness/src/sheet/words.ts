import type { DecidedBy, LoomPlan, PlannedCircuit, Severity } from '../loom/plan-type.js';

/** What decided a size, in words. */
export const DECIDED: Readonly<Record<DecidedBy, string>> = {
  drop: 'voltage drop',
  heat: 'heat',
  protection: 'protection',
  mechanical: 'handling',
  terminal: 'terminal',
  stock: 'thinnest in stock',
  given: 'given in the file',
};

/** A severity in words. */
export const SEVERITY: Readonly<Record<Severity, string>> = {
  fail: 'not met',
  warn: 'look at',
  note: 'note',
};

/** Text where no size in stock is possible. */
export const NO_SIZE = 'none possible';

/** What protects a circuit, with its rating: `front box 3, 15 A`. */
export function protectionText(ratings: ReadonlyMap<string, number | null>, { protection }: PlannedCircuit): string {
  if (protection.kind === 'none') return 'none';
  const name =
    protection.kind === 'fuse' ? protection.fuse : protection.kind === 'channel' ? protection.channel : protection.name;
  const rating = ratings.get(name) ?? null;
  const text = rating === null ? `${name}, none fits` : `${name}, ${rating} A`;
  return protection.kind === 'upstream' ? `${text} (further up)` : text;
}

/** Ratings of fuses and settings of channels in A by their names; null where none fits. */
export function ratingsOf({ fuses, channels }: LoomPlan): ReadonlyMap<string, number | null> {
  return new Map([
    ...channels.map(({ name, settingA }) => [name, settingA] as const),
    ...fuses.map(({ name, ratingA }) => [name, ratingA] as const),
  ]);
}

/** Length to cut in whole centimetres, rounded up: the one figure that every sheet shows and adds. */
export function cutCm(lengthM: number): number {
  // A length that is a whole number of centimetres but for the last bits of its sum is not a centimetre longer.
  return Math.ceil(lengthM * 100 - 1e-9);
}

/** Texts sorted as people expect: `front box 9` before `front box 10`. The same on every machine. */
export function byName(a: string, b: string): number {
  const parts = (text: string): string[] => text.match(/\d+|\D+/g) ?? [];
  const [p, q] = [parts(a), parts(b)];
  for (let i = 0; i < Math.min(p.length, q.length); i++) {
    const [x, y] = [p[i] as string, q[i] as string];
    if (x === y) continue;
    const [m, n] = [Number(x), Number(y)];
    if (Number.isFinite(m) && Number.isFinite(n) && m !== n) return m - n;
    return x < y ? -1 : 1;
  }
  return p.length - q.length;
}
