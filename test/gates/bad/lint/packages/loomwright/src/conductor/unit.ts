export interface Unit {
  readonly length: number;
  readonly current: number | null;
  readonly drops: readonly number[];
  readonly areas: Float64Array;
  readonly inner: { readonly amps: number };
  readonly lengthM: number;
}
