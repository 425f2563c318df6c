// The page "Plan a vehicle" in a browser: a file on standard input is put into it as if typed, again and again. Prints, as
// JSON, how long it took in ms from the last key to the picture, the page's pause for typing taken off: the first time,
// and once warm. Needs the built site and a Chromium; prints `null` without them.
/* global Event, requestAnimationFrame */
import { existsSync } from 'node:fs';
import { extname } from 'node:path';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { findChromium } from '../test/support/chromium.mjs';

const DIST = fileURLToPath(new URL('../docs/.vitepress/dist', import.meta.url));
const PAGE = '/handbook/plan-a-vehicle.html';
const TYPES = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.svg': 'image/svg+xml' };
/** The page waits so long for the next key. */
const PAUSE_MS = 250;
/** Rounds until the worker is warm. */
const COLD = 4;

async function timesOf(file, rounds) {
  const executablePath = findChromium();
  if (executablePath === null || !existsSync(DIST + PAGE)) return null;
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  await context.route('http://site.test/**', (route) => {
    const path = DIST + decodeURIComponent(new URL(route.request().url()).pathname);
    return existsSync(path)
      ? route.fulfill({ path, contentType: TYPES[extname(path)] ?? 'application/octet-stream' })
      : route.fulfill({ status: 404 });
  });
  const page = await context.newPage();
  await page.goto(`http://site.test${PAGE}`, { waitUntil: 'networkidle' });
  const all = [];
  for (let round = 0; round < rounds + COLD; round++) {
    const ms = await page.evaluate(async (typed) => {
      const box = document.querySelector('.planner textarea');
      const status = document.querySelector('.planner .status');
      const start = performance.now();
      box.value = typed;
      box.dispatchEvent(new Event('input'));
      await new Promise((resolve) => requestAnimationFrame(resolve));
      await new Promise((resolve, reject) => {
        const look = () => {
          const said = status.textContent.trim();
          if (said.startsWith('Planned in')) resolve();
          else if (said.startsWith('Planning')) setTimeout(look, 1);
          else reject(new Error(said));
        };
        look();
      });
      await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
      return performance.now() - start;
    }, file);
    all.push(ms - PAUSE_MS);
  }
  await browser.close();
  return { firstMs: all[0], warmMs: all.slice(COLD) };
}

process.stdout.write(JSON.stringify(await timesOf(await text(process.stdin), Number(process.argv[2] ?? 7))));
