export function twoArguments(input: object, lengthM: number): unknown[] {
  return [input, lengthM];
}

export function plainArgument(lengthM: number): number {
  return lengthM;
}

export function aToB(input: { readonly lengthM: number }): number {
  return input.lengthM;
}
