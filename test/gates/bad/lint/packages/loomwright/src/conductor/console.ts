export function speak(): void {
  console.log('12 V');
}
