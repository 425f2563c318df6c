export function chance(): number {
  return Math.random();
}
