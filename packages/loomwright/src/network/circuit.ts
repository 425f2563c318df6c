import { analyseNodes } from '../number/analyse-nodes.js';
import { solveNodes } from '../number/solve-nodes.js';
import { solveSymmetric } from '../number/solve-symmetric.js';
import { partsOf } from './parts.js';
import type { Circuit } from './settled.js';
import type { Wiring } from './wiring.js';

/** The node equations of a network, with one node held in each of its parts. */
export function circuitOf(wiring: Wiring, perOhm: Float64Array, before: Circuit | null): Circuit {
  const { joinedFrom: from, joinedTo: to, joinedCount: nodeCount } = wiring;
  const parts = partsOf(wiring, perOhm);
  const { held } = parts;
  const same = before !== null && String(before.parts.held) === String(held);
  const analysis = same ? before.analysis : analyseNodes({ nodeCount, from, to, held });
  return {
    parts,
    analysis,
    solve: (conductances, drivenA) => {
      const solved = solveNodes({ analysis, perOhm: conductances, drivenA });
      return solved.definite ? solved : null;
    },
    throughOhm: ({ factor }, branch) => {
      const a = analysis.unknown[from[branch] as number] as number;
      const b = analysis.unknown[to[branch] as number] as number;
      const sides = new Float64Array(analysis.nodeOf.length);
      if (a >= 0) sides[a] = 1;
      if (b >= 0) sides[b] = (sides[b] as number) - 1;
      const x = solveSymmetric({ factor, sides });
      return Math.max((x[a] ?? 0) - (x[b] ?? 0), 0);
    },
  };
}
