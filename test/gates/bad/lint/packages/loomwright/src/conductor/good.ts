export interface GoodInput {
  /** Current in A. */
  readonly currentA: number;
  readonly resistanceOhmPerM: number;
  readonly resistivity20OhmMm2PerM: number;
  readonly i2tA2s: number | null;
  readonly classesC: readonly number[];
  readonly temperatureFactor: number;
  readonly wireCount: number;
  readonly name: string;
}

/** A class of its own is allowed to an error. */
export class GoodError extends Error {}

export function good(input: GoodInput): { readonly dropV: number } {
  const { currentA, resistanceOhmPerM } = input;
  return { dropV: currentA * resistanceOhmPerM };
}

/** A converter takes a plain value. */
export function areaToGood(areaMm2: number): number {
  return areaMm2;
}

/** Not public: not in the index. */
export function helper(fn: string, value: number): string {
  return `${fn} ${value}`;
}

/** Not public either: its numbers are called as it likes. */
export interface Inner {
  readonly length: number;
}
