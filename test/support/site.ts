// The built site on a port of its own, and a browser to read it with.
import { createReadStream, existsSync, readdirSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { findChromium } from './chromium.mjs';

export const DIST = fileURLToPath(new URL('../../docs/.vitepress/dist/', import.meta.url));

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.json': 'application/json',
};

/** Serves a built site under a base path; returns its address without the base. */
export async function serve(folder: string, base = '/'): Promise<{ readonly origin: string; readonly server: Server }> {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://site');
    const inside = decodeURIComponent(pathname).startsWith(base)
      ? decodeURIComponent(pathname).slice(base.length)
      : null;
    let path = inside === null || inside.includes('..') ? '' : join(folder, inside);
    if (path !== '' && existsSync(path) && statSync(path).isDirectory()) path = join(path, 'index.html');
    if (path === '' || !existsSync(path)) {
      response.writeHead(404, { 'content-type': 'text/plain' }).end('not here');
      return;
    }
    response.writeHead(200, { 'content-type': TYPES[extname(path)] ?? 'application/octet-stream' });
    createReadStream(path).pipe(response);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return { origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, server };
}

/** Every page of a built site, as paths below its base. */
export function pagesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true })
    .map((name) => String(name).replaceAll('\\', '/'))
    .filter((name) => name.endsWith('.html') && name !== '404.html')
    .sort();
}

async function launch(): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === null) throw new Error('there is no chromium');
  return chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

/** What a page said and asked for while it was open. */
export interface Watched {
  readonly page: Page;
  /** Console errors and warnings, and errors that nobody caught. */
  readonly said: string[];
  /** Addresses of all requests. */
  readonly asked: string[];
}

/** A page in a context of its own, watched from its first request. */
export async function open(browser: Browser, address: string, options: BrowserContextOptions = {}): Promise<Watched> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const said: string[] = [];
  const asked: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') said.push(message.text());
  });
  page.on('pageerror', (error) => said.push(error.message));
  page.on('request', (request) => asked.push(request.url()));
  await page.goto(address, { waitUntil: 'networkidle' });
  return { page, said, asked };
}

/** The built site for the tests of a file: it and a browser are opened before them and closed after. */
export interface Site {
  readonly browser: Browser;
  readonly origin: string;
  /** A page of it by its path, in a context of its own. */
  readonly open: (path: string, options?: BrowserContextOptions) => Promise<Watched>;
}

export function useSite(): Site {
  const site = {
    open: (path: string, options?: BrowserContextOptions) => open(site.browser, site.origin + path, options),
  } as { browser: Browser; origin: string; server: Server; open: Site['open'] };
  beforeAll(async () => {
    site.browser = await launch();
    Object.assign(site, await serve(DIST));
  });
  afterAll(async () => {
    await site.browser.close();
    site.server.close();
  });
  return site;
}
