import { needInput } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { BoundReason } from './bound.js';
import { type BundleDiameterRule, type Measured, measureBundle } from './measure.js';
import type { BundleWire } from './wires.js';

export interface BundleDiameterInput {
  readonly wires: readonly BundleWire[];
  /** `packing`: the tightest that geometry allows. `multiplication-factor`: the rule of a data sheet, for real hands. */
  readonly rule: BundleDiameterRule;
}

export interface BundleDiameterResult {
  /** Diameter to reckon with, in mm: by the rule, raised where the rule is below what is possible. */
  readonly diameterMm: number;
  /** Diameter as the rule gives it, in mm. */
  readonly ruleDiameterMm: number;
  /** Diameter below which no bundle of these wires can be, in mm. */
  readonly lowerBoundMm: number;
  /** What sets that bound. */
  readonly boundBy: BoundReason;
  /** How the rule's diameter was found. */
  readonly method: Measured['method'];
  /** Why `diameterMm` is above the rule's, or null where it is not. */
  readonly raisedBy: Measured['raisedBy'];
  /** Share of the circle that the wires fill. */
  readonly fillFraction: number;
  readonly wireCount: number;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Diameter of a round bundle of wires.
 *
 * Use `multiplication-factor` to choose a sleeve, a grommet or a hole: hands do not lay wires as tightly as geometry
 * can. Use `packing` to see the tightest that could be. Neither counts tape, ties, twist or a sleeve.
 *
 * Equal wires: $D = k_n d$. The ratio $k_n$ of a packing is proved to be the smallest for 1 to 14 and 19 wires and the
 * best known for 15 to 18 and 20; that of the data sheet goes to 61. Other bundles: a packing drawn by us (it fits, but
 * is not proved to be the smallest; the same wires always give the same one, and adding a wire may by its imperfection
 * show up to 2 % less), or by the data sheet
 *
 * $$D = 1.2\,\sqrt{\sum_i n_i d_i^2}$$
 *
 * which is too small for two to five thick wires among thin ones, so the result is never below the proved bound nor
 * below the factor for the k thickest wires, each reckoned as thin as the k-th.
 *
 * @param input wires and rule
 * @returns the diameter in mm to reckon with, the rule's own, the bound, how it was found, the fill
 * @throws InputError when a field is missing or out of range, and for more than 300 wires to be packed
 * @source circle-packing (ratios to 20); bundle-factors (factors to 61 and 1.2 root of squares); oler-1961 (bound)
 * @example bundleDiameter({ wires: [{ outerDiameterMm: 2, count: 7 }], rule: 'packing' }).diameterMm //=> 6
 */
export function bundleDiameter(input: BundleDiameterInput): BundleDiameterResult {
  needInput('bundleDiameter', input);
  const { wires, rule } = input;
  const { squareSumMm2, ...measured } = measureBundle('bundleDiameter', wires, 'rule', rule);
  return {
    ...measured,
    fillFraction: squareSumMm2 / (measured.diameterMm * measured.diameterMm),
    source: rule === 'packing' ? 'circle-packing' : 'bundle-factors',
    sourceStatus: measured.method === 'drawn-packing' ? 'derived' : 'published',
  };
}
