/** A number for a sentence: three digits, no zeros behind. What decides is never this, but the number itself. */
export function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}
