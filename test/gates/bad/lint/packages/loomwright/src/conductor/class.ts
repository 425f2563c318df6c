export class Wire {
  readonly lengthM: number = 1;
}
