export function twoArguments(input: object, lengthM: number): unknown[] {
  return [input, lengthM];
}

export function plainArgument(lengthM: number): number {
  return lengthM;
}

export function aToB(lengthM: number, factor: number): number {
  return lengthM * factor;
}
