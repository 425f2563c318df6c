/** A number for a sentence: four digits, no zeros behind. What decides is never this, but the number itself. */
export function figure(value: number | null): string {
  return value === null ? 'none' : String(Number(value.toPrecision(4)));
}
