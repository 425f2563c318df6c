export function untyped(text: string): number {
  const value: any = JSON.parse(text);
  return value.lengthM;
}
