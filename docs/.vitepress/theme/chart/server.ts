import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';
import { chart, type ChartSpec } from '@loomwright/worked/plot';

/** A chart as SVG text, for the page as it leaves the server. */
export function draw(spec: ChartSpec): string {
  const { document } = parseHTML('<html><body></body></html>');
  return chart(Plot, spec, { width: 640, document: document as unknown as Document }).outerHTML;
}
