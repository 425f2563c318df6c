export function world(): unknown[] {
  return [Date.now(), new Date(), setTimeout, fetch, globalThis, performance.now()];
}
