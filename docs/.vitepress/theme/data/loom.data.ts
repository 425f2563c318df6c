import { defineLoader } from 'vitepress';
import { sandpiperTrunk } from '../../data/sandpiper-trunk';
import { drawTrunk, runM } from '../drawing/trunk';

export interface LoomDrawing {
  /** The plan with its nose to the left, for a wide screen and for paper. */
  readonly broad: string;
  /** The plan with its nose up, for a narrow screen. */
  readonly tall: string;
  readonly rows: readonly { readonly name: string; readonly strands: string; readonly runM: string }[];
  readonly ends: number;
  readonly strands: number;
  /** Wire in the drawing in m, rounded up. */
  readonly wireM: number;
}

declare const data: LoomDrawing;
export { data };

/** Drawn when the site is built, so that a page carries lines and no code for them. */
export default defineLoader({
  load(): LoomDrawing {
    const { ends } = sandpiperTrunk;
    const runs = ends.map((end) => ({ end, run: runM(sandpiperTrunk, end) }));
    return {
      broad: drawTrunk(sandpiperTrunk, {
        nose: 'left',
        pxPerM: 176,
        room: { nose: 66, tail: 92, side: 66 },
        pen: 1,
        textPx: 14.5,
      }),
      tall: drawTrunk(sandpiperTrunk, {
        nose: 'top',
        pxPerM: 78,
        room: { nose: 40, tail: 54, side: 108 },
        pen: 0.64,
        textPx: 13.5,
      }),
      rows: runs.map(({ end, run }) => ({
        name: [end.name, end.detail].filter(Boolean).join(', '),
        strands: strandWords(end.strands),
        // A length to buy is rounded up.
        runM: (Math.ceil(run * 10 - 1e-9) / 10).toFixed(1),
      })),
      ends: ends.length,
      strands: ends.reduce((sum, end) => sum + end.strands.length, 0),
      wireM: Math.ceil(
        runs.reduce((sum, { end, run }) => sum + run * end.strands.length * (end.strands.includes('bus') ? 2 : 1), 0),
      ),
    };
  },
});

function strandWords(strands: readonly string[]): string {
  const names: Readonly<Record<string, readonly [string, string]>> = {
    feed: ['feed', 'feeds'],
    heavy: ['heavy feed', 'heavy feeds'],
    signal: ['signal', 'signals'],
    bus: ['bus pair', 'bus pairs'],
  };
  return [...new Set(strands)]
    .map((kind) => {
      const count = strands.filter((each) => each === kind).length;
      return `${count} ${names[kind]?.[count === 1 ? 0 : 1]}`;
    })
    .join(', ');
}
