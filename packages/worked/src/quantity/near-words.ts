/**
 * The words of a list that a mistyped one may have meant, nearest first, at most three.
 *
 * Words that differ in case alone are the only answer. Otherwise a word counts as near when one of the two begins with
 * the other, or when at most a third of its letters are added, left out, changed or swapped.
 *
 * @param word what was typed; @param words what is known
 * @example nearWords('iso-19624', ['iso-19642', 'geometric']) //=> ['iso-19642']
 */
export function nearWords(word: string, words: readonly string[]): string[] {
  const typed = word.slice(0, 60).toLowerCase();
  const sameLetters = words.filter((known) => known.toLowerCase() === typed);
  if (sameLetters.length > 0) return sameLetters.slice(0, 3);
  return words
    .map((known) => {
      const low = known.toLowerCase();
      const begins = typed.length >= 3 && low.length >= 3 && (low.startsWith(typed) || typed.startsWith(low));
      return { known, steps: begins ? 0.5 : distance(typed, low) };
    })
    .filter(({ known, steps }) => steps <= Math.ceil(known.length / 3) && steps < known.length)
    .sort((a, b) => a.steps - b.steps || (a.known < b.known ? -1 : 1))
    .slice(0, 3)
    .map(({ known }) => known);
}

/** Letters added, left out, changed or swapped with their neighbour. */
function distance(a: string, b: string): number {
  let two: number[] = [];
  let one = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min((one[j] as number) + 1, (row[j - 1] as number) + 1, (one[j - 1] as number) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        best = Math.min(best, (two[j - 2] as number) + 1);
      }
      row.push(best);
    }
    two = one;
    one = row;
  }
  return one[b.length] as number;
}
