import { distance } from 'fastest-levenshtein';

/** The name of a list that a mistyped one was probably meant to be, or null. */
export function likelyName(given: string, names: readonly string[]): string | null {
  let best: string | null = null;
  let least = Math.max(2, Math.floor(given.length / 3)) + 1;
  for (const name of names) {
    const steps = distance(given.toLowerCase(), name.toLowerCase());
    if (steps < least) {
      least = steps;
      best = name;
    }
  }
  return best;
}
