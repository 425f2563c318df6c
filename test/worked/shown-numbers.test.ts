// Numbers as pages show them: constants with all digits of their source, and noughts that rounding left a hair off.
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { exampleValues, rtdResistanceCard } from '@loomwright/worked/card';
import { chart, chartTable, type PlotParts } from '@loomwright/worked/plot';
import { parseFormula, stepsText, treeToHtml, work } from '@loomwright/worked/work';

describe('a constant in a formula', () => {
  it('has a power of ten as it is printed, and a minus', () => {
    const text = stepsText(work(rtdResistanceCard, exampleValues(rtdResistanceCard)));
    expect(text).toContain('−5.775×10⁻⁷');
    expect(text).not.toMatch(/\de-\d/);
  });
});

const axis = { label: 'Time', unit: 's' };

describe('the table of a chart', () => {
  it('says 0 where a sine has 1e-16, and keeps what is small by itself', () => {
    const points = [0, Math.PI / 2, Math.PI].map((x): [number, number] => [x, Math.sin(x)]);
    const small = points.map(([x]): [number, number] => [x, 2e-16]);
    const rows = chartTable({
      title: '',
      x: axis,
      y: axis,
      series: [
        { name: 'a', colour: 'blue', points },
        { name: 'b', colour: 'red', points: small },
      ],
    });
    expect(rows.slice(1).map((row) => row[1])).toEqual(['0', '1.000', '0']);
    expect(rows[3]?.[2]).toBe('2.000×10⁻¹⁶');
  });
});

describe('the numbers of an axis', () => {
  const drawn = (numbers: readonly string[], log: boolean): (string | null)[] => {
    const texts = numbers.map((text) => `<text>${text}</text>`).join('');
    const { document } = parseHTML(`<svg><g aria-label="y-axis tick label">${texts}</g></svg>`);
    const svg = document.querySelector('svg')!;
    // Of the library that draws only what it puts out counts here.
    const parts = new Proxy({}, { get: (_, name) => (name === 'plot' ? () => svg : () => ({})) }) as PlotParts;
    chart(parts, { title: '', x: axis, y: { ...axis, log }, series: [] }, { width: 500 });
    return Array.from(svg.querySelectorAll('text'), (text) => text.textContent);
  };
  it('have as many decimals as the one that has most', () => {
    expect(drawn(['9.9', '10', '10.1'], false)).toEqual(['9.9', '10.0', '10.1']);
    expect(drawn(['−0.5', '0', '0.25', '1'], false)).toEqual(['−0.50', '0', '0.25', '1.00']);
    expect(drawn(['0', '10', '20'], false)).toEqual(['0', '10', '20']);
  });
  it('stand as they are on a logarithmic axis', () => {
    expect(drawn(['0.1', '1', '10'], true)).toEqual(['0.1', '1', '10']);
  });
});

describe('a root as HTML', () => {
  it('has a sign as high as what stands under it, and its bar above all of that', () => {
    const html = treeToHtml(parseFormula('2 * sqrt(1 + a / b)'), (name) => name);
    expect(html).toMatch(
      /^2 · <span style="display:inline-flex;align-items:stretch[^"]*"><svg role="img" aria-label="√".*<\/svg><span style="border-top[^"]*">1 \+ /,
    );
    expect(html).not.toContain('>√');
  });
});
