import { InputError } from '../error/index.js';
import { needOneOf } from '../error/guard.js';
import { type BoundReason, leastDiameterMm } from './bound.js';
import { equalRatio, sheetFactor } from './equal.js';
import { type Packing, packRadii } from './pack.js';
import { type BundleWire, needWires, squareSumMm2, thickestFirst } from './wires.js';

/** How the diameter of a bundle is found. */
export type BundleDiameterRule = 'packing' | 'multiplication-factor';

const RULES: readonly BundleDiameterRule[] = ['packing', 'multiplication-factor'];

/** Most wires that are packed one by one. */
const MOST_PACKED = 300;

/** A bundle measured by a rule and against what is possible. */
export interface Measured {
  readonly diameterMm: number;
  readonly ruleDiameterMm: number;
  readonly lowerBoundMm: number;
  readonly boundBy: BoundReason;
  readonly method:
    'one-wire' | 'proved-packing' | 'best-known-packing' | 'drawn-packing' | 'factor' | 'root-of-squares';
  readonly raisedBy: 'lower-bound' | 'equal-part' | null;
  readonly squareSumMm2: number;
  readonly wireCount: number;
}

/** The diameter of a bundle, for the function `fn` whose field `ruleField` names the rule. */
export function measureBundle(
  fn: string,
  wires: readonly BundleWire[],
  ruleField: string,
  rule: BundleDiameterRule,
): Measured {
  const wireCount = needWires(fn, wires);
  needOneOf(fn, ruleField, rule, RULES);
  const sizes = thickestFirst(wires);
  const bound = leastDiameterMm(sizes);
  const byRule = rule === 'packing' ? packed(fn, sizes, wireCount) : bySheet(sizes, wireCount);
  let diameterMm = byRule.diameterMm;
  let raisedBy: Measured['raisedBy'] = null;
  if (rule === 'multiplication-factor') {
    let k = 0;
    for (const { outerDiameterMm, count } of sizes) {
      k += count;
      const least = outerDiameterMm * (sheetFactor(k) ?? 0);
      if (least > diameterMm) [diameterMm, raisedBy] = [least, 'equal-part'];
    }
  }
  if (bound.diameterMm > diameterMm * (1 + 1e-8)) [diameterMm, raisedBy] = [bound.diameterMm, 'lower-bound'];
  return {
    diameterMm,
    ruleDiameterMm: byRule.diameterMm,
    lowerBoundMm: Math.min(bound.diameterMm, diameterMm),
    boundBy: bound.by,
    method: byRule.method,
    raisedBy,
    squareSumMm2: squareSumMm2(sizes),
    wireCount,
  };
}

type ByRule = Pick<Measured, 'diameterMm' | 'method'>;

function packed(fn: string, sizes: readonly BundleWire[], wireCount: number): ByRule {
  const [only, more] = sizes as [BundleWire, BundleWire?];
  const known = more === undefined ? equalRatio(wireCount) : null;
  if (known !== null) {
    const method = wireCount === 1 ? 'one-wire' : known.proved ? 'proved-packing' : 'best-known-packing';
    return { diameterMm: known.ratio * only.outerDiameterMm, method };
  }
  return { diameterMm: 2 * packSizes(fn, sizes, wireCount).radiusMm, method: 'drawn-packing' };
}

function bySheet(sizes: readonly BundleWire[], wireCount: number): ByRule {
  const [only, more] = sizes as [BundleWire, BundleWire?];
  const factor = more === undefined ? sheetFactor(wireCount) : null;
  if (factor !== null) {
    return { diameterMm: factor * only.outerDiameterMm, method: wireCount === 1 ? 'one-wire' : 'factor' };
  }
  return { diameterMm: 1.2 * Math.sqrt(squareSumMm2(sizes)), method: 'root-of-squares' };
}

/** Packs all wires, thickest first. */
export function packSizes(fn: string, sizes: readonly BundleWire[], wireCount: number): Packing {
  if (wireCount > MOST_PACKED) {
    throw new InputError(
      fn,
      'wires',
      'atMost',
      wireCount,
      `must be at most ${MOST_PACKED} wires to be packed one by one`,
    );
  }
  return packRadii(
    sizes.flatMap(({ outerDiameterMm, count }) => Array.from({ length: count }, () => outerDiameterMm / 2)),
  );
}
