import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needAbove, needAtLeast, needBetween, needInput, needOneOf } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import { type BundleDiameterRule, measureBundle } from './measure.js';
import type { BundleWire } from './wires.js';

/** How much of a tube may be filled. */
export type FillRule = 'nec-chapter-9-table-1' | 'given';

/** What a bundle is put into or through. */
export type Sleeve =
  | {
      /** Tube or conduit that keeps its shape. */
      readonly kind: 'tube';
      /** Smallest inside diameter in mm, above 0. */
      readonly boreMm: number;
      readonly fillRule: FillRule;
      /** Largest share of the bore, above 0 to 1: with `fillRule` 'given', and only then. */
      readonly fillLimitFraction?: number;
    }
  | {
      /** Braided sleeve that opens and closes, or a grommet that grips and seals. */
      readonly kind: 'braid' | 'grommet';
      /** Smallest bundle in mm that it lies close to. */
      readonly leastMm: number;
      /** Largest bundle in mm that it takes. */
      readonly mostMm: number;
    }
  | {
      readonly kind: 'heat-shrink';
      /** Inside diameter in mm as supplied. */
      readonly suppliedMm: number;
      /** Inside diameter in mm when fully shrunk on nothing. */
      readonly recoveredMm: number;
      /** Largest thing in mm that it must slip over, such as a connector; none unless given. */
      readonly passOverMm?: number;
    }
  | {
      /** Bare hole in sheet metal. */
      readonly kind: 'hole';
      readonly boreMm: number;
    };

export interface SleeveFillInput {
  readonly wires: readonly BundleWire[];
  /** How the bundle's diameter is found; `multiplication-factor` for real hands. */
  readonly diameterRule: BundleDiameterRule;
  readonly sleeve: Sleeve;
}

export interface SleeveFillResult {
  /** Diameter of the bundle by the rule, in mm. */
  readonly bundleDiameterMm: number;
  /** Sum of the wires' own circles over that of the bore (the widest state of a sleeve that opens). */
  readonly fillFraction: number;
  /** Room on each side of the bundle in the middle of the bore, in mm; below 0 it does not go in. */
  readonly clearanceMm: number;
  /** Whether every check is met. */
  readonly ok: boolean;
  readonly checks: readonly Check[];
  /** The check with the least room. */
  readonly decidedBy: string;
}

const KINDS = ['tube', 'braid', 'grommet', 'heat-shrink', 'hole'];

/** Clearance of 3/8 in that AC 43.13-1B, 11-115, asks for at a penetration without a grommet, in mm. */
const PENETRATION_MM = 9.525;

/**
 * Whether a bundle fits a tube, a braided sleeve, a grommet, a heat-shrink sleeve or a bare hole.
 *
 * What must go in is judged by the bundle's diameter by the rule; what must grip is judged by the thinnest that the
 * bundle could be, so that neither is judged too kindly.
 *
 * $$f = \frac{\sum_i n_i d_i^2}{D_{\mathrm{bore}}^2}$$
 *
 * The share of a conduit's bore that may be filled by `nec-chapter-9-table-1` is 53 % for one wire, 31 % for two, 40 %
 * for more: a building rule, taken over by common practice. A bare hole needs 3/8 in around the bundle, else a grommet.
 *
 * @param input wires, rule for the diameter, the sleeve
 * @returns bundle diameter, fill, clearance, checks and the one that decided
 * @throws InputError when a field is missing, out of range, or its pair is in the wrong order
 * @source nec-chapter-9-table-1 (from memory); ac-43-13-1b-dressing, 11-115 (clearance)
 * @example sleeveFill({ wires: [{ outerDiameterMm: 2.4, count: 7 }], diameterRule: 'multiplication-factor', sleeve: { kind: 'tube', boreMm: 13, fillRule: 'nec-chapter-9-table-1' } }).fillFraction //=> 0.238580
 */
export function sleeveFill(input: SleeveFillInput): SleeveFillResult {
  needInput('sleeveFill', input);
  const { wires, diameterRule, sleeve } = input;
  if (typeof sleeve !== 'object' || sleeve === null) {
    throw new InputError(
      'sleeveFill',
      'sleeve',
      sleeve === undefined ? 'missing' : 'object',
      sleeve,
      'must be an object',
    );
  }
  needOneOf('sleeveFill', 'sleeve.kind', sleeve.kind, KINDS);
  const bundle = measureBundle('sleeveFill', wires, 'diameterRule', diameterRule);
  const { diameterMm, lowerBoundMm, squareSumMm2, wireCount } = bundle;
  const checks: Check[] = [];
  const fit = (
    name: string,
    value: number,
    sense: Check['sense'],
    limit: number,
    source: SourceKey,
    status: SourceStatus,
  ): void => {
    checks.push(makeCheck({ name, value, limit, unit: 'mm', sense, source, sourceStatus: status }));
  };
  let widestMm: number;
  if (sleeve.kind === 'tube') {
    needAbove('sleeveFill', 'sleeve.boreMm', sleeve.boreMm);
    widestMm = sleeve.boreMm;
    fit('bundle goes in', diameterMm, 'atMost', widestMm, 'given-by-caller', 'derived');
    checks.push(fillCheck(sleeve, squareSumMm2 / (widestMm * widestMm), wireCount));
  } else if (sleeve.kind === 'heat-shrink') {
    const { suppliedMm, recoveredMm, passOverMm } = sleeve;
    needAbove('sleeveFill', 'sleeve.recoveredMm', recoveredMm);
    needAbove('sleeveFill', 'sleeve.suppliedMm', suppliedMm, recoveredMm, 'supplied is the wider of the two');
    widestMm = suppliedMm;
    fit('bundle goes in', diameterMm, 'atMost', suppliedMm, 'given-by-caller', 'derived');
    if (passOverMm !== undefined) {
      needAbove('sleeveFill', 'sleeve.passOverMm', passOverMm);
      fit('slips over the connector', passOverMm, 'atMost', suppliedMm, 'given-by-caller', 'derived');
    }
    fit('shrinks tight', lowerBoundMm, 'atLeast', recoveredMm, 'given-by-caller', 'derived');
  } else if (sleeve.kind === 'hole') {
    needAbove('sleeveFill', 'sleeve.boreMm', sleeve.boreMm);
    widestMm = sleeve.boreMm;
    fit(
      'clearance without a grommet',
      (widestMm - diameterMm) / 2,
      'atLeast',
      PENETRATION_MM,
      'ac-43-13-1b-dressing',
      'published',
    );
  } else {
    const { leastMm, mostMm } = sleeve;
    needAtLeast('sleeveFill', 'sleeve.leastMm', leastMm);
    needAbove('sleeveFill', 'sleeve.mostMm', mostMm, leastMm, 'most is the larger of the two');
    widestMm = mostMm;
    fit('bundle goes in', diameterMm, 'atMost', mostMm, 'given-by-caller', 'derived');
    fit(
      sleeve.kind === 'grommet' ? 'grips the bundle' : 'lies close',
      lowerBoundMm,
      'atLeast',
      leastMm,
      'given-by-caller',
      'derived',
    );
  }
  return {
    bundleDiameterMm: diameterMm,
    fillFraction: squareSumMm2 / (widestMm * widestMm),
    clearanceMm: (widestMm - diameterMm) / 2,
    ok: checks.every((check) => check.ok),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

function fillCheck(sleeve: Sleeve & { kind: 'tube' }, value: number, wireCount: number): Check {
  needOneOf('sleeveFill', 'sleeve.fillRule', sleeve.fillRule, ['nec-chapter-9-table-1', 'given']);
  const given = sleeve.fillRule === 'given';
  if (given) needBetween('sleeveFill', 'sleeve.fillLimitFraction', sleeve.fillLimitFraction as number, 1e-6, 1);
  else if (sleeve.fillLimitFraction !== undefined) {
    throw new InputError(
      'sleeveFill',
      'sleeve.fillLimitFraction',
      'oneOfFields',
      sleeve.fillLimitFraction,
      "goes with fillRule 'given' only",
    );
  }
  return makeCheck({
    name: 'fill of the bore',
    value,
    limit: given ? (sleeve.fillLimitFraction as number) : wireCount === 1 ? 0.53 : wireCount === 2 ? 0.31 : 0.4,
    unit: '',
    sense: 'atMost',
    source: given ? 'given-by-caller' : 'nec-chapter-9-table-1',
    sourceStatus: given ? 'derived' : 'memory',
  });
}
