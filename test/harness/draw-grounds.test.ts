import { describe, expect, it } from 'vitest';
import { drawGrounds, type LoomPlan, planLoom } from '@loomwright/harness';
import { parseHTML } from 'linkedom';
import { looped } from '../support/looped-loom.js';
import { smallPlan } from '../support/small-plan.js';

const plan = planLoom(looped);
const read = (svg: string) => parseHTML(`<html><body>${svg}</body></html>`).document;
const texts = (svg: string): string[] => [...read(svg).querySelectorAll('text')].map((one) => one.textContent ?? '');

/** Classes of millivolts, typed again: at most 20, at most 100, more. */
const markOf = (volts: number): string => (Math.abs(volts) > 0.1 ? '!' : Math.abs(volts) > 0.02 ? '~' : '');

describe('a map of grounds', () => {
  it.each([360, 900])('names every ground point and battery at %s px', (width) => {
    const all = texts(drawGrounds(plan, { width })).join('|');
    for (const name of [...Object.keys(looped.grounds), 'starter −', 'service −', 'house −'])
      expect(all).toContain(name);
  });
  it('says by a mark in the ring what its colour says', () => {
    const state = plan.states.find(({ name }) => name === 'rescue')!;
    const document = read(drawGrounds(plan, { width: 360, state: 'rescue' }));
    const marks = [...document.querySelectorAll('text')].filter((one) => /^[~!]$/.test(one.textContent ?? ''));
    const points = [
      ...Object.keys(looped.grounds).map((name) => `ground ${name}`),
      ...Object.keys(looped.supply.batteries).map((name) => `battery ${name} −`),
    ];
    const wanted = points.map((name) => markOf(state.nodes[name]!)).filter((mark) => mark !== '');
    // Two more stand in the key.
    expect(marks.map((one) => one.textContent).sort()).toEqual([...wanted, '~', '!'].sort());
  });
  it('has a table of all states on a desk, with the millivolts of the plan', () => {
    const all = texts(drawGrounds(plan, { width: 900 }));
    for (const { nodes } of plan.states) {
      const value = (nodes['ground roof stud']! * 1000).toFixed(1).replace('-', '−').replace('−0.0', '0.0');
      expect(all.some((text) => text.endsWith(value))).toBe(true);
    }
    expect(all).toContain('mV in each state');
    expect(texts(drawGrounds(plan, { width: 360 }))).not.toContain('mV in each state');
  });
  it('shows the state that is asked for, else that with the most millivolts', () => {
    expect(drawGrounds(plan, { width: 640, state: 'cranking' })).toContain('State cranking');
    const most = plan.states
      .map(({ name, nodes }) => {
        const volts = Object.keys(nodes).filter((node) => /^(ground|battery .* −$)/.test(node));
        return { name, volts: Math.max(...volts.map((node) => Math.abs(nodes[node]!))) };
      })
      .sort((a, b) => b.volts - a.volts)[0]!;
    expect(drawGrounds(plan, { width: 640 })).toContain(`State ${most.name}`);
    expect(drawGrounds(plan, { width: 640, state: 'nowhere' })).toContain(`State ${most.name}`);
  });
  it('draws what carries too much in another colour and with a mark', () => {
    const bent = structuredClone(plan) as unknown as { states: { name: string; currents: Record<string, number> }[] };
    bent.states.find(({ name }) => name === 'rescue')!.currents['stray engine block to dash stud'] = 9;
    const svg = drawGrounds(bent as unknown as LoomPlan, { width: 900, state: 'rescue' });
    expect(svg).toContain('too much');
    // Its ohms and amperes, or where these find no room its amperes.
    expect(texts(svg).some((text) => /^! (25|9\.0)/.test(text))).toBe(true);
  });
  it('stays inside its width and holds no number that is none', () => {
    for (const width of [240, 360, 900]) {
      const svg = drawGrounds(plan, { width });
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      for (const one of read(svg).querySelectorAll('circle, line')) {
        for (const key of ['cx', 'x1', 'x2']) {
          const value = one.getAttribute(key);
          if (value === null) continue;
          expect(Number(value)).toBeGreaterThanOrEqual(0);
          expect(Number(value)).toBeLessThanOrEqual(width);
        }
      }
    }
  });
  it('draws a plan without grounds', () => {
    expect(drawGrounds(smallPlan, { width: 100 })).toContain('Grounds of Trial &#60;cart&#62; from above');
  });
});
