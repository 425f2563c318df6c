// Drawings of inputs: what is in them, and that they stay within their width.
import { describe, expect, it } from 'vitest';
import { pinCircuit, voltWindows } from '@loomwright/worked/draw';

const states = [
  { name: 'up', lowV: 0.4, highV: 0.6, pinV: 0.5 },
  { name: 'down & out', lowV: 1.2, highV: 1.5, pinV: 1.3 },
  { name: 'none', lowV: 1.4, highV: 5, pinV: 5 },
];
const windows = (width: number): string =>
  voltWindows({
    title: 'What the input may read',
    supplyV: 5,
    states,
    thresholdsV: [0.9, 1.45],
    width,
    format: (v) => v.toFixed(2),
  });
const circuit = (width: number): string =>
  pinCircuit({
    title: 'A divider',
    topLabel: '13.8 V',
    parts: [
      { kind: 'resistor', label: '18 kΩ' },
      { kind: 'led', label: '2 V' },
      { kind: 'switch', label: 'a switch' },
      { kind: 'sensor', label: '10 to 350 Ω' },
    ],
    tapAfter: 1,
    tapLabel: 'pin, 4.9 V',
    pullUp: { label: '1 kΩ', topLabel: '5 V' },
    width,
  });

/** Every number of an attribute, in px. */
const numbers = (svg: string, name: string): number[] =>
  [...svg.matchAll(new RegExp(` ${name}="([-\\d.]+)"`, 'g'))].map(([, value]) => Number(value));

describe('voltWindows', () => {
  it.each([320, 640])('at %i px says which states overlap, in words and in red', (width) => {
    const svg = windows(width);
    expect(svg).toContain(
      'aria-label="What the input may read. up from 0.40 to 0.60; down &#38; out from 1.20 to 1.50;',
    );
    expect(svg.match(/<text[^>]* fill="var\(--lw-red/g)).toHaveLength(2);
    expect(svg).toContain(width === 320 ? 'down &#38; out (overlaps)' : 'down &#38; out ✕');
    expect(svg).not.toContain(width === 320 ? 'up (overlaps)' : 'up ✕');
    for (const x of [...numbers(svg, 'x'), ...numbers(svg, 'x1'), ...numbers(svg, 'x2')]) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(width);
    }
  });
  it('draws a bar as wide as the worst cases', () => {
    const svg = windows(640);
    const widths = numbers(svg, 'width').slice(0, 3);
    expect(widths[1]! / widths[0]!).toBeCloseTo(0.3 / 0.2, 2);
    expect(widths[2]! / widths[0]!).toBeCloseTo(3.6 / 0.2, 1);
  });
});

describe('pinCircuit', () => {
  it.each([320, 640])('at %i px has every part, the tap and the pull-up, and says so', (width) => {
    const svg = circuit(width);
    for (const text of ['13.8 V', '18 kΩ', '2 V', 'a switch', '10 to 350 Ω', 'pin, 4.9 V', '1 kΩ', '5 V']) {
      expect(svg).toContain(`>${text}<`);
    }
    expect(svg).toContain(
      '13.8 V, 18 kΩ, 2 V, a switch, 10 to 350 Ω, ground; pin, 4.9 V after 18 kΩ, with 1 kΩ to 5 V',
    );
    for (const x of numbers(svg, 'x')) expect(x).toBeLessThanOrEqual(width);
  });
  it('puts a long label below the line rather than over the edge', () => {
    const at = (tapLabel: string): string =>
      pinCircuit({
        title: 'T',
        topLabel: '5 V',
        parts: [{ kind: 'resistor', label: '1 kΩ' }],
        tapAfter: 1,
        tapLabel,
        width: 320,
      });
    expect(at('pin')).toMatch(/font-weight="600">pin</);
    expect(at('pin, 0.179 V to 2.823 V')).toMatch(/x="320"[^>]* text-anchor="end">pin, 0.179 V to 2.823 V</);
  });
  it('leaves the tap out where there is none', () => {
    const svg = pinCircuit({ title: 'LED', topLabel: '12 V', parts: [{ kind: 'led', label: '2 V' }], width: 320 });
    expect(svg).toContain('aria-label="LED. 12 V, 2 V, ground"');
    expect(svg).not.toContain('font-weight');
  });
});
