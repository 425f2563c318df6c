import type { Bundling } from './bundling.js';
import type { Draft } from './draft.js';
import type { Metal, Network, PathOhm, SolvedState } from './network.js';
import type { Loom } from './schema.js';
import type { Sized, Sizer, Surroundings } from './size-draft.js';

/** The most rounds of sizing that there are. */
export const MOST_ROUNDS = 24;

/** A loom in its last round: everything that the plan is written from. */
export interface Settled {
  readonly loom: Loom;
  readonly drafts: readonly Draft[];
  readonly sizer: Sizer;
  readonly sized: readonly Sized[];
  readonly around: readonly Surroundings[];
  readonly bundling: Bundling;
  readonly network: Network;
  readonly ohms: readonly PathOhm[];
  readonly metal: Metal;
  readonly states: readonly SolvedState[];
  readonly rounds: number;
  readonly agreed: boolean;
}

/** Resistance of one wire of a circuit at a copper temperature. */
export function wireOhm(draft: Draft, wire: number, sizer: Sizer, sized: Sized, tempC: number): number {
  const size = sizer.stock[sized.size];
  if (size === undefined) return 0;
  return ((draft.wires[wire]?.lengthM ?? 0) * size.ohmPerM * (234.5 + tempC)) / (234.5 + 20);
}
