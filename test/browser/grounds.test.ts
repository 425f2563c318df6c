// The map of grounds by keyboard and by pointer, and the calculator of a network.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { useSite } from '../support/site.js';

const site = useSite();

describe('the map of grounds', () => {
  const strap = (page: Page, name: string): ReturnType<Page['locator']> =>
    page.locator('.ground-map').getByRole('button', { name });
  const verdict = (page: Page): Promise<string> => page.locator('.ground-map .verdict').innerText();

  it('takes a strap off from the keyboard, and puts it back with the pointer', async () => {
    const { page, said } = await site.open('/handbook/how-many-grounds.html');
    const map = page.locator('.ground-map .picture');
    const before = await map.innerHTML();
    await strap(page, 'tail stud').focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => strap(page, 'tail stud').getAttribute('aria-pressed')).toBe('true');
    expect(await verdict(page)).toContain('Cut off: tail');
    expect(await map.innerHTML()).not.toBe(before);
    await map.locator('[data-strap="tail stud"]').dispatchEvent('click');
    await expect.poll(() => strap(page, 'tail stud').getAttribute('aria-pressed')).toBe('false');
    await expect.poll(() => map.innerHTML()).toBe(before);
    // A load by the space bar: the starter off, and every wire carries what it bears.
    await page.locator('.ground-map').getByLabel('starter').focus();
    await page.keyboard.press(' ');
    await expect.poll(() => verdict(page)).toContain('No wire carries more than it bears');
    expect(said).toEqual([]);
    await page.context().close();
  });
});

describe('the calculator of a network', () => {
  it('follows what is typed, and says what cannot be read', async () => {
    const { page, said } = await site.open('/handbook/one-network-every-volt.html');
    const box = page.locator('.calculator').first();
    const network = box.getByLabel('Network', { exact: false }).first();
    const least = (): Promise<string> => box.locator('.answer .figure output').innerText();
    const text = await network.inputValue();
    await network.fill('battery: source post > plus, 12 V, 1 Ω; lamp: load plus > post, 5 Ω');
    await expect.poll(least).toMatch(/^10\.0\sV$/);
    await network.fill('battery: source post > plus, 12 V, 1 Ω; radio: load plus > post, 50 W');
    await expect.poll(() => box.locator('.network-table').innerText()).toContain('not fed: 50 W is more than');
    for (const [bad, why] of [
      ['battery: souce post > plus', 'Must read like'],
      ['a: source n > p, 12 V, 0 Ω; b: source n > p, 13 V, 0 Ω', 'closes a loop of 0'],
    ] as const) {
      await network.fill(bad);
      await expect.poll(() => box.innerText()).toContain(why);
    }
    await network.fill(text);
    await expect.poll(least).toMatch(/^11\.3\sV$/);
    expect(said).toEqual([]);
    await page.context().close();
  });
});
