import type { NotPossible } from '../check/index.js';
import type { SizeInput } from '../conductor/index.js';
import { resolveSize } from '../conductor/size.js';
import { needConductorTempC, needInput } from '../error/guard.js';
import { type Load, type PathLimit, solvePath, type SolvePathResult } from '../load/index.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { ResistanceBasis } from '../table/index.js';
import { type FeedPath, needParts, wireLengthM, withSize } from './path.js';

export interface SolveFeedInput extends FeedPath, SizeInput {
  /** Which resistance the size has: a table, or `geometric`. */
  readonly resistanceBasis: ResistanceBasis;
  /** Temperature of the copper in °C, −100 to 400. `sizeFeed` works it out from the current. */
  readonly conductorTempC: number;
  readonly load: Load;
}

export interface SolveFeedResult extends SolvePathResult {
  /** The size as the trade writes it. */
  readonly size: string;
  /** Nominal area in mm². */
  readonly areaMm2: number;
  /** Wire out and back in m. */
  readonly wireLengthM: number;
  /** Volts lost in the wire alone, and in the fixed parts alone. */
  readonly wireDropV: number;
  readonly fixedDropV: number;
  /** Conductor temperature used, in °C. */
  readonly conductorTempC: number;
  /** Key of the basis, and where its resistance comes from. */
  readonly resistanceBasis: string;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * One feed solved: volts at the load, and what every part of the path takes.
 *
 * Use it when the wire is there and you want to know what reaches the load and where the rest goes. List fuse and
 * relay with their resistance **hot**, every terminal, and the way back: a wire, the body, or both.
 *
 * $$V_{\mathrm{load}} = V - I\Bigl(\sum_k R_k + r(T)\sum_j l_j\Bigr)$$
 *
 * @param input supply, parts out and back, size, basis, conductor temperature, load
 * @returns the solved path with wire and fixed parts told apart, or `possible: false` as `solvePath` gives it
 * @throws InputError when a field is missing or out of range, or the size is not in the basis
 * @source circuit-theory; the basis' own source for the wire
 * @example solveFeed({ supplyV: 13.8, outParts: [{ name: 'wire', lengthM: 5.5 }], returnParts: [{ name: 'wire back', lengthM: 1 }], areaMm2: 2.5, resistanceBasis: geometric, conductorTempC: 20, load: { kind: 'constant-current', currentA: 15 } }).wireDropV //=> 0.672399
 */
export function solveFeed(input: SolveFeedInput): SolveFeedResult | NotPossible<PathLimit> {
  needInput('solveFeed', input);
  const { supplyV, outParts, returnParts, resistanceBasis, conductorTempC, load } = input;
  needParts('solveFeed', 'outParts', outParts);
  needParts('solveFeed', 'returnParts', returnParts);
  const size = resolveSize('solveFeed', input, resistanceBasis);
  needConductorTempC('solveFeed', 'conductorTempC', conductorTempC);
  const solved = solvePath({
    supplyV,
    outParts: withSize(outParts, size, conductorTempC),
    returnParts: withSize(returnParts, size, conductorTempC),
    load,
  });
  if (!solved.possible) return solved;
  const all = [...outParts, ...returnParts];
  let wireDropV = 0;
  let fixedDropV = 0;
  solved.parts.forEach((part, i) => {
    if ('lengthM' in (all[i] as object)) wireDropV += part.dropV;
    else fixedDropV += part.dropV;
  });
  return {
    ...solved,
    size: size.label,
    areaMm2: size.areaMm2,
    wireLengthM: wireLengthM(all),
    wireDropV,
    fixedDropV,
    conductorTempC,
    resistanceBasis: resistanceBasis.key,
    source: resistanceBasis.kind === 'geometric' ? 'nbs-hb-100' : resistanceBasis.source,
    sourceStatus: resistanceBasis.kind === 'geometric' ? 'derived' : resistanceBasis.status,
  };
}
