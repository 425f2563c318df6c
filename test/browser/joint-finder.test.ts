// The page "Which joint is bad?" as a reader uses it.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { diagnose, parseLoom, planLoom } from '@loomwright/harness';
import { useSite } from '../support/site.js';
import { sandpiperText } from '../support/small-plan.js';

const site = useSite();
const PAGE = '/handbook/which-joint-is-bad.html';

const verdict = (page: Page) => page.locator('.joint-finder .verdict');
const words = async (page: Page): Promise<string> =>
  (await page.locator('.joint-finder .told').innerText()).replace(/\s+/g, ' ');

describe('which joint is bad', () => {
  it('stands there with its example before any script runs', async () => {
    const { page } = await site.open(PAGE, { javaScriptEnabled: false });
    expect(await verdict(page).innerText()).toContain('contact of relay of pump');
    expect(await page.getByLabel('over contact of relay of pump').inputValue()).toBe('1720');
    await page.context().close();
  });

  it('says what the library says of what is typed, in a worker', async () => {
    const parsed = parseLoom(sandpiperText);
    if (!parsed.ok) throw new Error('Sandpiper cannot be read');
    const plan = planLoom(parsed.loom);
    const state = 'road';
    const found = diagnose(plan, [
      { state, red: 'battery starter +', black: 'battery starter −', readsV: 14.18 },
      { state, red: 'lift pump +', black: 'lift pump −', readsV: 12.31 },
      { state, over: 'pin of lift pump +', circuit: 'lift pump', readsV: 1.46 },
    ]);
    expect(found.suspects.map(({ name }) => name)).toEqual(['pin of lift pump +']);
    const { page, said, asked } = await site.open(PAGE);
    await page.getByRole('radio', { name: 'Sandpiper' }).check();
    await expect.poll(() => verdict(page).innerText()).toContain('parts');
    const before = asked.length;
    await page.getByLabel('over pin of lift pump +').fill('1460');
    await expect.poll(() => verdict(page).innerText(), { timeout: 20_000 }).toContain('pin of lift pump +');
    const shown = await words(page);
    for (const sentence of found.sentences) expect(shown).toContain(sentence.replace(/\s+/g, ' '));
    expect(asked.slice(before).filter((address) => !/worker|\.js$/.test(address))).toEqual([]);
    expect(said).toEqual([]);
    await page.context().close();
  });

  it('says at the field what cannot be read, and leaves it out', async () => {
    const { page } = await site.open(PAGE);
    const field = page.getByLabel('over pin of pump +');
    for (const text of ['abc', '-', '1e999', '1,5']) {
      await field.fill(text);
      expect(await page.locator('.joint-finder .error').innerText()).toContain('a number is wanted');
      expect(await field.getAttribute('aria-invalid')).toBe('true');
    }
    await field.fill('');
    expect(await page.locator('.joint-finder .error').count()).toBe(0);
    await page.context().close();
  });

  it('shows the circuits of another state, and finds nothing in readings as planned', async () => {
    const { page } = await site.open(PAGE);
    await page.getByRole('radio', { name: 'Sandpiper' }).check();
    await page.getByLabel('state').selectOption('cranking');
    await page.getByLabel('circuit').selectOption('starter motor');
    await expect.poll(() => page.locator('.joint-finder .line').count(), { timeout: 20_000 }).toBeGreaterThan(3);
    const lines = page.locator('.joint-finder .line');
    const count = await lines.count();
    for (let i = 0; i < count; i++) {
      const planned = (await lines.nth(i).locator('.planned').innerText()).replace(/[^\d.]/g, '');
      await lines.nth(i).locator('input').fill(planned);
    }
    await expect.poll(() => page.locator('.joint-finder .told tbody tr').count(), { timeout: 20_000 }).toBe(count);
    expect(await verdict(page).innerText()).toContain('Nothing found');
    await page.getByLabel('at the load').fill('8.1');
    await expect.poll(() => verdict(page).innerText(), { timeout: 20_000 }).not.toContain('Nothing found');
    await page.context().close();
  });
});
