// Every page of the site, in both schemes, on a desk and on a phone.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, describe, expect, it } from 'vitest';
import { DIST, open, pagesOf, serve, useSite } from '../support/site.js';

const site = useSite();
const pages = pagesOf(DIST);
/** The pages of functions and areas come from one generator: an area, a function and the tables stand for all. */
const looked = pages.filter(
  (page) =>
    !page.startsWith('api/') ||
    ['api/feed/index.html', 'api/feed/sizeFeed.html', 'api/table/index.html'].includes(page),
);

const VIEWS = [
  { width: 1440, colorScheme: 'light' },
  { width: 360, colorScheme: 'dark' },
] as const;

it('has pages', () => {
  expect(pages).toContain('index.html');
  expect(pages.some((page) => page.startsWith('handbook/'))).toBe(true);
  expect(looked.filter((page) => page.startsWith('api/'))).toHaveLength(3);
});

// Two at a time: a page's work is one process of the browser's, and waits for ours.
it.concurrent.each(looked.flatMap((path) => VIEWS.map((view) => ({ path, ...view }))))(
  '$path at $width px, $colorScheme: no error, no other host, no sideways scroll, no finding of axe',
  async ({ path, width, colorScheme }) => {
    const { page, said, asked } = await site.open(`/${path}`, {
      viewport: { width, height: 900 },
      colorScheme,
    });
    expect(said).toEqual([]);
    expect(asked.filter((address) => !address.startsWith(site.origin) && !address.startsWith('data:'))).toEqual([]);
    const [scroll, inner] = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
    expect(scroll).toBeLessThanOrEqual(inner);
    const found = await new AxeBuilder({ page }).analyze();
    expect(
      found.violations.map(
        ({ id, nodes }) =>
          `${id}: ${nodes
            .map((node) => node.target.join(' '))
            .slice(0, 3)
            .join('; ')}`,
      ),
    ).toEqual([]);
    await page.context().close();
  },
);

describe('under a sub-path', () => {
  const folder = mkdtempSync(join(tmpdir(), 'site-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  it('every link and file is found', async () => {
    const docs = fileURLToPath(new URL('../../docs/', import.meta.url));
    const built = spawnSync(
      process.execPath,
      [join(docs, 'node_modules/vitepress/bin/vitepress.js'), 'build', '.', '--outDir', folder],
      {
        cwd: docs,
        env: { ...process.env, LOOMWRIGHT_BASE: '/garage/book/' },
        encoding: 'utf8',
      },
    );
    expect(built.status, built.stderr).toBe(0);
    const under = await serve(folder, '/garage/book/');
    const { page, said, asked } = await open(
      site.browser,
      `${under.origin}/garage/book/handbook/size-a-pump-feed.html`,
    );
    expect(said).toEqual([]);
    expect(
      asked.filter((address) => !address.startsWith(`${under.origin}/garage/book/`) && !address.startsWith('data:')),
    ).toEqual([]);
    await page.getByRole('link', { name: 'Notebooks' }).first().click();
    await expect.poll(() => page.url()).toContain('/garage/book/notebooks/');
    expect(said).toEqual([]);
    await page.context().close();
    under.server.close();
  }, 240_000);
});
