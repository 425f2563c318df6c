// Doc blocks with one fault each: the test of the examples must find every one.

/**
 * Doubles a number.
 * @param x any number
 * @returns twice x
 * @throws nothing
 * @source own
 * @example twice(2) //=> 5
 */
export function twice(x: number): number {
  return 2 * x;
}

/**
 * Halves a number.
 * @returns half of x
 * @throws nothing
 * @source own
 */
export function half(x: number): number {
  return x / 2;
}

/** @example bare(1) //=> 1 */
export function bare(x: number): number {
  return x;
}

export const arrow = (x: number): number => x;
