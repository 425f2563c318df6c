import { describe, expect, it } from 'vitest';
import { drawLoom } from '@loomwright/harness';
import { parseHTML } from 'linkedom';
import { smallPlan } from '../support/small-plan.js';

const WIDTHS = [0, 360, 640, 1040] as const;
const parse = (svg: string) => parseHTML(`<html><body>${svg}</body></html>`).document;
/** Trunks: lines within a group that has a title. */
function trunks(svg: string) {
  return [...parse(svg).querySelectorAll('g > title')].map((title) => {
    const line = title.parentElement?.querySelector('line');
    const n = (name: string): number => Number(line?.getAttribute(name));
    return {
      title: title.textContent ?? '',
      width: n('stroke-width'),
      dash: line?.getAttribute('stroke-dasharray') ?? null,
      colour: line?.getAttribute('stroke') ?? '',
      dx: n('x2') - n('x1'),
      dy: n('y2') - n('y1'),
    };
  });
}

describe.each(WIDTHS)('drawLoom at %d px', (width) => {
  const svg = drawLoom(smallPlan, { width, colourBy: 'volts' });
  it('is to scale, the nose to the left or, narrow, to the top', () => {
    // front (2, 0.5), middle (1, 0), rear (−0.5, −0.4): both trunks have one scale in both directions.
    const [long, rear] = trunks(svg);
    const upright = width < 560;
    const [ahead, aside] = upright ? (['dy', 'dx'] as const) : (['dx', 'dy'] as const);
    const scale = long![ahead] / 1;
    expect(scale).toBeGreaterThan(40);
    expect(rear![ahead] / 1.5).toBeCloseTo(scale, 1);
    // Left of the vehicle is left of the sheet with the nose up, and below with the nose to the left.
    expect(long![aside] / (upright ? 0.5 : -0.5)).toBeCloseTo(scale, 1);
    expect(rear![aside] / (upright ? 0.4 : -0.4)).toBeCloseTo(scale, 1);
  });
  it('draws widths in proportion to the bundles, an empty one dotted', () => {
    const [long, rear, spare] = trunks(svg);
    expect(long!.width / rear!.width).toBeCloseTo(2, 6);
    expect(spare!.dash).toBe('1 3');
  });
  it('tells the classes apart by colour, dash and words', () => {
    // tail lamp loses 0.5625 V of 0.50 V, in both trunks; by heat it is 106 °C in a cover for 105 °C.
    const [long, rear] = trunks(svg);
    expect(long!.title).toContain('tail lamp 0.57\u202fV, not met');
    expect(rear!.colour).toContain('--lw-red');
    const met = drawLoom(
      { ...smallPlan, wires: smallPlan.wires.filter(({ name }) => name !== 'tail lamp out') },
      { width, colourBy: 'volts' },
    );
    // horn loses 0.3125 V of the 0.50 V that it may.
    expect(trunks(met)[0]).toMatchObject({ title: expect.stringContaining('horn 0.32\u202fV, up to 0.5 V') as string });
    expect(trunks(met)[0]!.dash).not.toBe(long!.dash);
    expect(trunks(met)[0]!.colour).not.toBe(long!.colour);
    const hot = drawLoom(smallPlan, { width, colourBy: 'heat' });
    expect(trunks(hot)[0]!.title).toContain('tail lamp 106\u202f°C, hotter: not met');
    for (const mark of ['✓', '!', '✕']) expect(hot).toContain(`>${mark} `);
  });
  it('names every place once, and holds all texts within its sheet', () => {
    const document = parse(svg);
    const [, , w = 0, h = 0] = (document.querySelector('svg')?.getAttribute('viewBox') ?? '').split(' ').map(Number);
    const texts = [...document.querySelectorAll('text')];
    for (const name of ['front', 'middle', 'rear'])
      expect(texts.filter(({ textContent }) => textContent === name)).toHaveLength(1);
    for (const text of texts) {
      const [x, y] = ['x', 'y'].map((name) => Number(text.getAttribute(name)));
      expect(x!).toBeGreaterThanOrEqual(0);
      expect(x!).toBeLessThanOrEqual(w);
      expect(y!).toBeGreaterThan(0);
      expect(y!).toBeLessThanOrEqual(h);
    }
  });
  it('says to those who cannot see it what is worst, and escapes names', () => {
    expect(parse(svg).querySelector('svg')?.getAttribute('aria-label')).toContain('Worst: long trunk: 2 wires');
    expect(svg).not.toContain('<cart>');
  });
});

describe('drawLoom, edges', () => {
  it('draws a loom of one place and no trunk', () => {
    const one = {
      ...smallPlan,
      bundles: [],
      loom: { ...smallPlan.loom, places: { shed: smallPlan.loom.places['front']! } },
    };
    const svg = drawLoom(one, { width: 640, colourBy: 'heat' });
    expect(svg).toContain('shed');
    expect(svg).not.toMatch(/NaN|Infinity/);
  });
  it('keeps a number and a key for places that stand too close for their names', () => {
    const places = Object.fromEntries(
      Array.from({ length: 40 }, (_, i) => [
        `place with a long name ${i}`,
        { ...smallPlan.loom.places['front']!, x: 1 + i / 100 },
      ]),
    );
    const svg = drawLoom(
      { ...smallPlan, bundles: [], loom: { ...smallPlan.loom, places } },
      { width: 360, colourBy: 'volts' },
    );
    const all = parse(svg).querySelector('svg')?.textContent ?? '';
    for (const name of Object.keys(places)) expect(all.replace(/\s+/g, '')).toContain(name.replace(/\s+/g, ''));
  });
});
