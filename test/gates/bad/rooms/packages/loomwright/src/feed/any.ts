export interface Any {
  readonly currentA: number;
}
