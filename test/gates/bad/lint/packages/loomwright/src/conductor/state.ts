export let calls = 0;

export function count(): number {
  calls = calls + 1;
  return calls;
}
