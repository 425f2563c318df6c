export interface Writable {
  lengthM: number;
}
