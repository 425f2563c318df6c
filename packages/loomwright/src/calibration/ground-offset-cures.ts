import type { GroundPiece, GroundWeb } from './ground-web.js';
import { offsetChecks, type OffsetError, type ReadySensor } from './ground-offset-sensor.js';

/** A load whose current comes back through the grounds. */
export interface OffsetLoad {
  readonly name: string;
  /** Point where its current enters the grounds. */
  readonly returnsAt: string;
  /** Current in A; below 0 what feeds the vehicle from there, such as an alternator. */
  readonly currentA: number;
}

/** One way to mend a sensor that is off by too much. */
export interface OffsetCure {
  readonly code: 'ground-to-controller' | 'own-return' | 'extra-strap' | 'larger-wire';
  readonly words: string;
  /** Whether it brings the sensor within its limits, and why not. */
  readonly meets: boolean;
  readonly because: string | null;
  /** Loads that get a return of their own, the fewest that are enough. */
  readonly loads: readonly string[];
  /** Piece that is made larger. */
  readonly piece: string | null;
  /** Most resistance of the strap, or of the piece made larger, in Ω. */
  readonly neededOhm: number | null;
  /** By how much larger the piece must be in area, its joints with it. */
  readonly areaFactor: number | null;
  /** Worst error that is left, loads on in whatever combination. */
  readonly left: OffsetError;
}

/** All loads that raise the sensor's ground, and all that lower it, in V. */
export function extremes(shiftsV: readonly number[]): readonly [raisedV: number, loweredV: number] {
  return [shiftsV.reduce((sum, v) => sum + Math.max(v, 0), 0), shiftsV.reduce((sum, v) => sum + Math.min(v, 0), 0)];
}

/** The worse of both, by what the sensor bears; the larger shift where it bears all. */
export function worstOf(ready: ReadySensor, shiftsV: readonly number[]): OffsetError {
  const [raisedV, loweredV] = extremes(shiftsV);
  const up = ready.shareOf(raisedV, 0);
  const down = ready.shareOf(0, loweredV);
  const isUp = up === down ? raisedV >= -loweredV : up > down;
  return ready.errorOf(isUp ? raisedV : loweredV);
}

/** What is kept from a limit so that the last digits of a quotient do not pass it. */
const SAFE = 0.999999999;

/** Nobody lays a piece of more than so many times its area. */
const MOST_AREA_FACTOR = 100;

/** What one cure says, before it is judged by what it leaves. */
type Proposal = Omit<OffsetCure, 'meets' | 'left'> & { readonly shiftsV: readonly number[] };

/** The cures of a sensor that does not meet its limits, each judged by what it leaves. */
export function offsetCures(
  web: GroundWeb,
  pieces: readonly GroundPiece[],
  loads: readonly OffsetLoad[],
  ready: ReadySensor,
  shiftsV: readonly number[],
): readonly OffsetCure[] {
  const proposals = [
    backToController(ready, shiftsV),
    ownReturns(web, loads, ready, shiftsV),
    extraStrap(web, ready, shiftsV),
    largerWire(web, pieces, loads, ready, shiftsV),
  ];
  return proposals.map(({ shiftsV: leftV, ...cure }): OffsetCure => {
    const [raisedV, loweredV] = extremes(leftV);
    const meets = offsetChecks(ready, ready.errorOf(raisedV), ready.errorOf(loweredV)).every(({ ok }) => ok);
    const because = meets ? null : (cure.because ?? 'its reading is at the end of its scale');
    const { neededOhm, areaFactor } = meets ? cure : NOTHING;
    return { ...cure, meets, because, neededOhm, areaFactor, left: worstOf(ready, leftV) };
  });
}

const NOTHING = { because: null, loads: [], piece: null, neededOhm: null, areaFactor: null } as const;

function backToController({ sensor }: ReadySensor, shiftsV: readonly number[]): Proposal {
  const isWire = sensor.groundedBy === 'wire';
  return {
    ...NOTHING,
    code: 'ground-to-controller',
    words: `the ground wire of ${sensor.name} back to the controller, and nothing else on it`,
    because: isWire
      ? null
      : 'its ground is the body that it is screwed into: it would have to be one with a ground pin',
    shiftsV: isWire ? [0] : shiftsV,
  };
}

/** Loads are taken off the grounds, the one that moves the reading most first, until it is enough. */
function ownReturns(
  web: GroundWeb,
  loads: readonly OffsetLoad[],
  ready: ReadySensor,
  shiftsV: readonly number[],
): Proposal {
  const leftV = [...shiftsV];
  const moved: string[] = [];
  while (moved.length < loads.length && ready.shareOf(...extremes(leftV)) > 1) {
    const [raisedV, loweredV] = extremes(leftV);
    const up = ready.shareOf(raisedV, 0) > 1;
    const down = ready.shareOf(0, loweredV) > 1;
    let most = -1;
    leftV.forEach((v, i) => {
      const counts = (v > 0 && up) || (v < 0 && down);
      if (counts && (most < 0 || Math.abs(v) > Math.abs(leftV[most] as number))) most = i;
    });
    moved.push((loads[most] as OffsetLoad).name);
    leftV[most] = 0;
  }
  const words = `a return of its own to ${web.reference} for ${moved.join(', ')}`;
  return { ...NOTHING, code: 'own-return', words, loads: moved, shiftsV: leftV };
}

/** A strap between both grounds takes the same share of every load's shift. */
function extraStrap(web: GroundWeb, ready: ReadySensor, shiftsV: readonly number[]): Proposal {
  const { groundAt, controllerAt } = ready.sensor;
  const betweenOhm = web.ohmOf(groundAt, controllerAt, groundAt, controllerAt);
  const neededOhm = (betweenOhm / (ready.shareOf(...extremes(shiftsV)) - 1)) * SAFE;
  const words = `a strap more from ${groundAt} to ${controllerAt}`;
  const leftV = shiftsV.map((v) => (v * neededOhm) / (neededOhm + betweenOhm));
  return { ...NOTHING, code: 'extra-strap', words, neededOhm, shiftsV: leftV };
}

/**
 * The piece that must grow least. Beside a piece a second one of r Ω moves the shift of each load from e to
 * e − t d / (r + z): what the sensor, and what the piece, sees of a current between the other's ends.
 */
function largerWire(
  web: GroundWeb,
  pieces: readonly GroundPiece[],
  loads: readonly OffsetLoad[],
  ready: ReadySensor,
  shiftsV: readonly number[],
): Proposal {
  const { groundAt, controllerAt } = ready.sensor;
  const found = pieces.map(({ name, from, to, resistanceOhm }) => {
    const z = web.ohmOf(from, to, from, to);
    const t = web.ohmOf(groundAt, controllerAt, from, to);
    const slopes = loads.map(({ returnsAt, currentA }) => t * currentA * web.ohmOf(from, to, returnsAt, web.reference));
    const shiftsAt = (g: number): readonly number[] => shiftsV.map((v, l) => v - g * (slopes[l] as number));
    const shareAt = (g: number): number => ready.shareOf(...extremes(shiftsAt(g)));
    const best = leastOf(shareAt, 1 / (resistanceOhm / (MOST_AREA_FACTOR - 1) + z));
    const meets = shareAt(best) <= SAFE;
    const g = meets ? firstOf((at) => shareAt(at) <= SAFE, best) : best;
    const areaFactor = 1 + resistanceOhm / (1 / g - z);
    return { name, meets, areaFactor, neededOhm: resistanceOhm / areaFactor, shiftsV: shiftsAt(g), share: shareAt(g) };
  });
  const able = found.filter(({ meets }) => meets);
  // Of those that are enough the one that must grow least; else the one that helps most.
  const cost = (f: (typeof found)[number]): number => (able.length > 0 ? f.areaFactor : f.share);
  const best = (able.length > 0 ? able : found).reduce((a, b) => (cost(b) < cost(a) ? b : a));
  return {
    ...NOTHING,
    code: 'larger-wire',
    words: `${best.name} larger`,
    because: best.meets ? null : `no piece alone is enough, even ${MOST_AREA_FACTOR} times larger; this one helps most`,
    piece: best.name,
    neededOhm: best.neededOhm,
    areaFactor: best.areaFactor,
    shiftsV: best.shiftsV,
  };
}

/** Where a convex function is least between 0 and an end. */
function leastOf(f: (x: number) => number, end: number): number {
  let low = 0;
  let high = end;
  for (let step = 0; step < 120; step++) {
    const third = (high - low) / 3;
    if (f(low + third) <= f(high - third)) high -= third;
    else low += third;
  }
  return (low + high) / 2;
}

/** The first place up to one that holds, where all from it on do. */
function firstOf(holds: (x: number) => boolean, end: number): number {
  let low = 0;
  let high = end;
  for (let step = 0; step < 100; step++) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}
