// The calculator as a reader uses it, on the page of the pump feed.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { exampleValues, inputOf, sizeFeedCard } from '@loomwright/worked/card';
import { formatQuantity } from '@loomwright/worked/quantity';
import { sizeFeed } from 'loomwright';
import { DIST, useSite } from '../support/site.js';

const site = useSite();
const cache = fileURLToPath(new URL('../node_modules/.cache/copied/', import.meta.url));
const PAGE = '/handbook/size-a-pump-feed.html';

mkdirSync(cache, { recursive: true });

const calculator = (page: Page): ReturnType<Page['locator']> =>
  page.locator('.calculator[aria-label="Which wire and which fuse does this feed need?"]');
const results = async (page: Page): Promise<Record<string, string>> => {
  const rows = calculator(page).locator('.answer dl > div');
  const found: Record<string, string> = { Wire: await calculator(page).locator('.answer output').innerText() };
  for (const row of await rows.all()) found[await row.locator('dt').innerText()] = await row.locator('dd').innerText();
  return found;
};

describe('the page of the pump feed', () => {
  it('stands there with the example before any script runs, and agrees with the library to every printed digit', async () => {
    const { page } = await site.open(PAGE, { javaScriptEnabled: false });
    const answer = sizeFeed(inputOf(sizeFeedCard, exampleValues(sizeFeedCard)));
    if (!answer.possible) throw new Error(answer.because);
    const shown = await results(page);
    expect(shown['Wire']).toBe(answer.size);
    expect(shown['Volts at the load']).toBe(formatQuantity(answer.solved.loadV, 'V', { digits: 4, round: 'down' }));
    expect(shown['Voltage lost out and back']).toBe(formatQuantity(answer.solved.dropV, 'V', { round: 'up' }));
    expect(shown['Blade fuse']).toBe(formatQuantity(answer.fuse?.ratingA ?? null, 'A', { trim: true }));
    expect(await page.locator('.calculator svg').count()).toBeGreaterThan(1);
    await page.context().close();
  });

  it('answers to what is typed, loads the reader of units only when a unit is typed, and keeps the state in the address', async () => {
    const { page, said, asked } = await site.open(PAGE);
    const box = calculator(page);
    expect(asked.some((address) => /\/reader\./.test(address))).toBe(false);
    await box.getByLabel('Current of the load', { exact: false }).first().fill('15');
    await expect.poll(async () => (await results(page))['Wire']).not.toBe('4 mm²');
    expect(page.url()).toContain('sizeFeed.currentA=15_A');
    expect(asked.some((address) => /\/reader\./.test(address))).toBe(false);
    await box.getByLabel('Wire to the load', { exact: false }).first().fill('2 m 30');
    await expect.poll(() => asked.some((address) => /\/reader\./.test(address))).toBe(true);
    await expect.poll(() => box.locator('.field .error').count()).toBe(1);
    await box.getByLabel('Wire to the load', { exact: false }).first().fill('1.2 m');
    await expect.poll(() => box.locator('.field .error').count()).toBe(0);
    const before = await results(page);
    const again = await site.open(page.url().slice(site.origin.length));
    await expect.poll(async () => JSON.stringify(await results(again.page))).toBe(JSON.stringify(before));
    expect([...said, ...again.said]).toEqual([]);
    await page.context().close();
    await again.page.context().close();
  });

  it('says what is wrong at the field, in words and in the unit shown, and keeps the last answer greyed', async () => {
    const { page, said } = await site.open(PAGE);
    const box = calculator(page);
    const current = box.getByLabel('Current of the load', { exact: false }).first();
    for (const [typed, words] of [
      ['abc', 'not a number'],
      ['-', 'not a number'],
      ['', 'needed'],
      ['1e999', 'large'],
      ['0', 'above 0 A'],
      ['-3', 'above 0 A'],
    ] as const) {
      await current.fill(typed);
      await expect.poll(() => box.locator('.field .error').allInnerTexts()).toEqual([expect.stringContaining(words)]);
      expect(await current.getAttribute('aria-invalid')).toBe('true');
      expect(await box.locator('.answer.stale').count()).toBe(1);
    }
    await current.fill('7.5');
    await expect.poll(() => box.locator('.field .error').count()).toBe(0);
    await expect.poll(async () => (await results(page))['Wire']).toBe('4 mm²');
    const insulation = box.getByLabel('Insulation class', { exact: false }).first();
    await box.getByLabel('Unit of Insulation class').selectOption('°F');
    expect(await insulation.inputValue()).toBe('221');
    await insulation.fill('100');
    await expect.poll(() => box.locator('.field .error').allInnerTexts()).toEqual([expect.stringContaining('104 °F')]);
    expect(said).toEqual([]);
    await page.context().close();
  });

  it('changes units without changing the answer', async () => {
    const { page } = await site.open(PAGE);
    const before = await results(page);
    await calculator(page).getByLabel('Unit of Wire to the load').selectOption('m');
    expect(
      await calculator(page)
        .getByLabel(/^Wire to the load/)
        .first()
        .inputValue(),
    ).toBe('5.1816');
    expect(await results(page)).toEqual(before);
    await page.context().close();
  });

  it('says that a feed is not possible, and why', async () => {
    const { page } = await site.open(`${PAGE}?sizeFeed.currentA=60_A`);
    await expect.poll(() => calculator(page).locator('.answer').innerText()).toContain('Not possible');
    await expect.poll(() => calculator(page).locator('.answer').innerText()).toContain('no wire is thick enough');
    await page.context().close();
  });

  it('works by keyboard alone', async () => {
    const { page } = await site.open(PAGE);
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('href'))).toContain('#');
    await calculator(page).locator('input').first().focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('12.6');
    await expect.poll(() => page.url()).toContain('sizeFeed.supplyV=12.6_V');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('SELECT');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT');
    const fold = calculator(page).locator('details.working summary');
    await fold.focus();
    await page.keyboard.press('Enter');
    expect(await calculator(page).locator('details.working').getAttribute('open')).not.toBeNull();
    expect(await calculator(page).locator('details.working').innerText()).toContain('Volts left for the load');
    await page.context().close();
  });

  it('copies the call as code that gives the same answer', async () => {
    const context = await site.browser.newContext({ permissions: ['clipboard-read', 'clipboard-write'] });
    const page = await context.newPage();
    await page.goto(site.origin + PAGE, { waitUntil: 'networkidle' });
    await calculator(page).getByRole('button', { name: 'Copy as code' }).click();
    await expect.poll(() => calculator(page).locator('.deeds [role=status]').innerText()).toContain('copied');
    const code = await page.evaluate(() => navigator.clipboard.readText());
    // The copied text is run as it stands, but for the last line that hands the answer out.
    const file = join(cache, 'copied.mjs');
    writeFileSync(file, `${code}\nexport default answer;\n`);
    const { default: answer } = (await import(pathToFileURL(file).href)) as { default: { size: string } };
    expect(answer.size).toBe((await results(page))['Wire']);
    await context.close();
  });

  it('weighs at most 350 kB gzipped before search, fonts left out', async () => {
    const { page, asked } = await site.open(PAGE);
    const files = asked
      .map((address) => new URL(address).pathname)
      .filter((path) => /\.(?:html|js|css|svg)$/.test(path));
    const bytes = [...new Set(files)].reduce(
      (sum, path) => sum + gzipSync(readFileSync(join(DIST, path)), { level: 9 }).length,
      0,
    );
    expect(bytes).toBeLessThan(350_000);
    expect(bytes).toBeGreaterThan(20_000);
    await page.context().close();
  });
});
