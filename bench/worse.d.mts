export declare const ALLOWANCE: number;
export declare function worse(
  stored: readonly { readonly name: string; readonly ratio: number; readonly atMost: boolean }[],
  now: readonly { readonly name: string; readonly ratio: number }[],
): string[];
