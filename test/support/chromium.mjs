import { existsSync } from 'node:fs';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/snap/bin/chromium'];

/** Path of a Chromium on this machine (or what CHROMIUM names), or null. */
export function findChromium() {
  const named = process.env.CHROMIUM;
  if (named) return existsSync(named) ? named : null;
  return PLACES.find((path) => existsSync(path)) ?? null;
}
