// The page "Plan a vehicle" as a reader uses it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { parseLoom, planLoom, sheetFiles, sheets } from '@loomwright/harness';
import { DIST, useSite } from '../support/site.js';
import { sandpiperText } from '../support/small-plan.js';

const site = useSite();
const PAGE = '/handbook/plan-a-vehicle.html';

function planned(text: string) {
  const parsed = parseLoom(text);
  if (!parsed.ok) throw new Error(parsed.problems.map(({ message }) => message).join('\n'));
  return planLoom(parsed.loom);
}
const file = (page: Page) => page.locator('.planner textarea');
const status = (page: Page) => page.locator('.planner .status').innerText();
const ready = (page: Page) => expect.poll(() => status(page), { timeout: 20_000 }).toContain('Planned in');
/** Puts a text into the file, as if typed. */
async function type(page: Page, text: string): Promise<void> {
  await file(page).fill(text);
}
const plan = planned(sandpiperText);

describe('plan a vehicle', () => {
  it('stands there with Sandpiper planned before any script runs', async () => {
    const { page } = await site.open(PAGE, { javaScriptEnabled: false });
    expect(await file(page).inputValue()).toBe(sandpiperText);
    expect(await page.locator('.planner .counts').innerText()).toContain(
      `${plan.circuits.length} circuits, ${plan.wires.length} wires`,
    );
    expect(await page.locator('.planner .picture svg').count()).toBe(1);
    expect(await page.locator('.planner .finding').count()).toBe(plan.findings.length);
    expect(await page.locator('.planner .leaf tbody tr').count()).toBe(plan.wires.length);
    await page.context().close();
  });

  it('plans what is typed, in a worker, and asks for nothing while somebody edits', async () => {
    const { page, said, asked } = await site.open(PAGE);
    await ready(page);
    expect(page.workers()).toHaveLength(1);
    // The planner is the worker's: the page itself did not load it.
    const scripts = asked.filter((address) => /worker-[\w-]+\.js$/.test(address));
    expect(scripts).toHaveLength(1);
    const code = readFileSync(join(DIST, new URL(scripts[0]!).pathname), 'utf8');
    expect(code).toContain('onmessage');
    expect(code).not.toMatch(/\bfetch\s*\(|XMLHttpRequest|WebSocket|EventSource|sendBeacon|importScripts/);
    const before = asked.length;
    const beacons: string[] = [];
    await page.context().route('**/*', (route) => {
      beacons.push(route.request().url());
      return route.continue();
    });
    const changed = sandpiperText
      .replace('vehicle:\n  name: Sandpiper', 'vehicle:\n  name: Redshank')
      .replace(/\n {2}horn:\n.*\n/, '\n');
    expect(changed).not.toBe(sandpiperText);
    const expected = planned(changed);
    await type(page, changed);
    await expect.poll(() => page.locator('.planner .verdict').innerText(), { timeout: 20_000 }).toContain('Redshank');
    expect(await page.locator('.planner .counts').innerText()).toContain(
      `${expected.circuits.length} circuits, ${expected.wires.length} wires`,
    );
    expect(await page.locator('.planner .picture svg').getAttribute('aria-label')).toContain('Redshank');
    for (const { title, key } of [sheets(expected).fuses, sheets(expected).readings, sheets(expected).cuts]) {
      await page.getByRole('radio', { name: title }).check();
      const rows = sheets(expected)[key].tables.reduce((sum, { rows: all, foot }) => sum + all.length + foot.length, 0);
      expect(await page.locator('.planner .leaf tbody tr').count()).toBe(rows);
    }
    await page.getByRole('radio', { name: 'by heat' }).check();
    expect(await page.locator('.planner .picture svg').getAttribute('aria-label')).toContain('Hottest copper');
    await page.getByRole('radio', { name: 'the grounds' }).check();
    expect(await page.locator('.planner .picture svg').getAttribute('aria-label')).toContain('Grounds of');
    await page.getByLabel('State', { exact: true }).selectOption('cranking');
    await expect
      .poll(() => page.locator('.planner .picture svg').getAttribute('aria-label'))
      .toContain('State cranking');
    await page.locator('#loom-date').fill('2 May');
    await page.getByRole('button', { name: 'Make the files' }).click();
    await expect.poll(() => page.locator('.planner .files a').count()).toBe(sheetFiles(expected).length);
    expect(asked.slice(before).filter((address) => !address.startsWith('blob:'))).toEqual([]);
    expect(beacons.filter((address) => !address.startsWith('blob:'))).toEqual([]);
    expect(said).toEqual([]);
    await page.context().close();
  });

  it('hands out the same files as the library writes', async () => {
    const { page } = await site.open(PAGE, { acceptDownloads: true });
    await ready(page);
    await page.locator('#loom-date').fill('2 May');
    await page.getByRole('button', { name: 'Make the files' }).click();
    for (const name of ['sheets.html', 'wire-list.csv', 'sheets.json']) {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('link', { name, exact: true }).click(),
      ]);
      expect(download.suggestedFilename()).toBe(name);
      const text = readFileSync(await download.path(), 'utf8');
      expect(text).toBe(sheetFiles(plan, { date: '2 May' }).find((each) => each.name === name)?.text);
    }
    await page.context().close();
  });

  it('says what is wrong with a line, and goes there', async () => {
    const { page, said } = await site.open(PAGE);
    await ready(page);
    await type(page, sandpiperText.replace('bumper: { x: 3.7 m', 'bumper: { x: 3.7'));
    await expect.poll(() => page.locator('.planner .problems li').count(), { timeout: 20_000 }).toBeGreaterThan(0);
    expect(await page.locator('.planner .problems').innerText()).toContain('places.bumper.x');
    expect(await file(page).getAttribute('aria-invalid')).toBe('true');
    expect(await page.getByRole('button', { name: 'Make the files' }).isDisabled()).toBe(true);
    await page.locator('.planner .problems button').first().click();
    const picked = await file(page).evaluate((box: HTMLTextAreaElement) =>
      box.value.slice(box.selectionStart, box.selectionEnd),
    );
    expect(picked).toContain('bumper: { x: 3.7');
    for (const bad of ['', '{', 'a: *b', '- 1', '\u0000', 'vehicle: [[[[[['.repeat(200)]) {
      await type(page, bad);
      await expect.poll(() => page.locator('.planner .problems li').count(), { timeout: 20_000 }).toBeGreaterThan(0);
    }
    await page.getByRole('button', { name: 'Sandpiper again' }).click();
    await ready(page);
    expect(await page.locator('.planner .problems li').count()).toBe(0);
    expect(said).toEqual([]);
    await page.context().close();
  });

  it('takes what the file says as text, never as markup', async () => {
    const { page, said } = await site.open(PAGE);
    await ready(page);
    await type(
      page,
      sandpiperText
        .replace('name: Sandpiper', `name: "<img src=x onerror=document.title='gone'>"`)
        .replaceAll('sill trunk', '<b onclick=x>sill</b>'),
    );
    await expect.poll(() => page.locator('.planner .verdict').innerText(), { timeout: 20_000 }).toContain('<img');
    expect(await page.locator('.planner .seen img, .planner .seen b, .planner .leaf b').count()).toBe(0);
    expect(await page.title()).not.toBe('gone');
    expect(said).toEqual([]);
    await page.context().close();
  });

  it('works on a phone: no sideways scroll, the drawing as wide as the page', async () => {
    const { page } = await site.open(PAGE, { viewport: { width: 360, height: 740 } });
    await ready(page);
    const [scroll, inner] = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
    expect(scroll).toBeLessThanOrEqual(inner);
    const box = await page.locator('.planner .picture svg').boundingBox();
    expect(box!.width).toBeGreaterThan(250);
    expect(box!.width).toBeLessThanOrEqual(360);
    await page.context().close();
  });
});
