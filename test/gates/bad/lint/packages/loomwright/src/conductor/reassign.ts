export function reassign(lengthM: number): number {
  lengthM = lengthM + 1;
  return lengthM;
}
