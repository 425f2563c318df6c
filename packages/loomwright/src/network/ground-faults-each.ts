import { InputError } from '../error/index.js';
import { needInput, needObject, needOneOf } from '../error/guard.js';
import { solveSymmetric } from '../number/solve-symmetric.js';
import type { PreparedGroundFaults } from './ground-faults-prepare.js';

export interface GroundFaultsEachInput {
  readonly prepared: PreparedGroundFaults;
  /** Every node in every case, or the watched points only: the latter costs less a case. */
  readonly detail: 'every-node' | 'watched';
  /** Arrays to be filled again; new ones unless given. */
  readonly into?: GroundFaultsEachResult;
}

export interface GroundFaultsEachResult {
  /** Shift in V against the intact network: case after case, in the order of nodes or of watched points. */
  readonly shiftV: Float64Array;
  /**
   * What is left of the way between the ends of each ground once it is gone, as a share of the whole with it: 0 where
   * nothing is. Cases below `LEAST_SHARE` are not worked out here, and their shifts are 0.
   */
  readonly otherShare: Float64Array;
}

/** Below this share a shift would lose more than eleven of its sixteen digits: the case must be solved anew. */
export const LEAST_SHARE = 1e-5;

/**
 * Takes each ground away in turn, and gives the shift of every node, or of the watched points, in one array.
 *
 * Use it for many cases of one prepared network. For an answer with limits, names and islands take `groundFaults`.
 * The network is factored once. For every node a case costs one solution; for watched points each of them costs one
 * solution for all cases, and a case no more than its ground's own way through the factor.
 *
 * $$\Delta v = \frac{I}{1 - g\,u^\mathsf{T}x}\,x \qquad G x = u \qquad
 * \Delta v_r = \frac{I}{1 - g\,u^\mathsf{T}x}\,u^\mathsf{T} y_r \qquad G y_r = r$$
 *
 * with $u$ the ends of the ground, $g$ its conductance and $I$ its current in the intact network.
 *
 * @param input prepared network, detail, arrays to fill
 * @returns shifts case after case, and how much of a way is left beside each ground
 * @throws InputError when the input is no prepared network or an array has another length
 * @source sherman-morrison-1950
 * @example groundFaultsEach({ prepared: prepareGroundFaults({ network: { reference: 'post', branches: [{ name: 'strap', from: 'engine', to: 'post', resistanceOhm: 0.001 }, { name: 'cable', from: 'engine', to: 'post', resistanceOhm: 0.019 }], sources: [{ name: 'battery', from: 'post', to: 'plus', voltageV: 12, resistanceOhm: 0.01 }], loads: [{ name: 'starter', from: 'plus', to: 'engine', load: { kind: 'constant-current', currentA: 200 } }], settle: settleNetwork }, grounds: ['strap'], watched: [{ name: 'sensor', node: 'engine', against: 'post' }], by: solveNetwork }), detail: 'watched' }).shiftV[0] //=> 3.61
 */
export function groundFaultsEach(input: GroundFaultsEachInput): GroundFaultsEachResult {
  const fn = 'groundFaultsEach';
  needInput(fn, input);
  const { prepared, detail } = input;
  needObject(fn, 'prepared', prepared);
  needOneOf(fn, 'detail', detail, ['every-node', 'watched']);
  const cases = prepared.grounds.length;
  const width = detail === 'watched' ? prepared.watchedNode.length : prepared.nodes.length;
  const { into = { shiftV: new Float64Array(cases * width), otherShare: new Float64Array(cases) } } = input;
  if (into.shiftV.length !== cases * width || into.otherShare.length !== cases) {
    throw new InputError(fn, 'into', 'list', into.shiftV, `must have room for ${cases} cases of ${width}`);
  }
  if (detail === 'watched') watchedEach(prepared, into);
  else everyNodeEach(prepared, into);
  return into;
}

function everyNodeEach(prepared: PreparedGroundFaults, { shiftV, otherShare }: GroundFaultsEachResult): void {
  const { unknown, factor, groundFrom, groundTo, groundPerOhm, groundA, nodes } = prepared;
  const count = factor.pivots.length;
  const sides = new Float64Array(count);
  const x = new Float64Array(count);
  const scratch = new Float64Array(count);
  const at = (u: number): number => (u < 0 ? 0 : (x[u] as number));
  for (let k = 0; k < groundFrom.length; k++) {
    const from = groundFrom[k] as number;
    const to = groundTo[k] as number;
    if (from >= 0) sides[from] = 1;
    if (to >= 0) sides[to] = from === to ? 0 : -1;
    solveSymmetric({ factor, sides, into: x, scratch });
    if (from >= 0) sides[from] = 0;
    if (to >= 0) sides[to] = 0;
    const share = 1 - (groundPerOhm[k] as number) * (at(from) - at(to));
    otherShare[k] = share > 0 ? share : 0;
    const factorA = share < LEAST_SHARE ? 0 : (groundA[k] as number) / share;
    const first = k * nodes.length;
    for (let i = 0; i < nodes.length; i++) {
      const u = unknown[i] as number;
      shiftV[first + i] = u < 0 ? 0 : factorA * (x[u] as number);
    }
  }
}

function watchedEach(prepared: PreparedGroundFaults, { shiftV, otherShare }: GroundFaultsEachResult): void {
  const { factor, groundFrom, groundTo, groundPerOhm, groundA, watchedNode, watchedAgainst } = prepared;
  const count = factor.pivots.length;
  const width = watchedNode.length;
  // One column a watched point: what a current from `against` to `node` would do to every node.
  const columns = new Float64Array(width * count);
  for (let r = 0; r < width; r++) {
    const node = watchedNode[r] as number;
    const against = watchedAgainst[r] as number;
    if (node === against) continue;
    if (node >= 0) columns[r * count + node] = 1;
    if (against >= 0) columns[r * count + against] = -1;
  }
  const scratch = new Float64Array(count);
  solveSymmetric({ factor, sides: columns, into: columns, scratch });
  scratch.fill(0);
  for (let k = 0; k < groundFrom.length; k++) {
    const from = groundFrom[k] as number;
    const to = groundTo[k] as number;
    const share = 1 - (groundPerOhm[k] as number) * throughOhm(prepared, from, to, scratch);
    otherShare[k] = share > 0 ? share : 0;
    const factorA = share < LEAST_SHARE ? 0 : (groundA[k] as number) / share;
    for (let r = 0; r < width; r++) {
      const first = r * count;
      const v = from < 0 ? 0 : (columns[first + from] as number);
      const w = to < 0 ? 0 : (columns[first + to] as number);
      shiftV[k * width + r] = factorA * (v - w);
    }
  }
}

/**
 * Resistance in Ω that the network shows between two unknowns: the sum of $y_k^2/d_k$ over the ways of both up the
 * tree of elimination, where the rest of $L y = u$ is nothing. Leaves `scratch` at 0.
 */
export function throughOhm({ factor }: PreparedGroundFaults, from: number, to: number, scratch: Float64Array): number {
  const { analysis, lower, pivots } = factor;
  const { turn, columnStart, rowIndex } = analysis;
  const end = pivots.length;
  let i = from < 0 ? end : (turn[from] as number);
  let j = to < 0 ? end : (turn[to] as number);
  if (i === j) return 0;
  if (i < end) scratch[i] = 1;
  if (j < end) scratch[j] = -1;
  let ohm = 0;
  while (i < end || j < end) {
    // The lower turn comes first; where both ways have met they go on as one.
    const k = i < j ? i : j;
    const first = columnStart[k] as number;
    const last = columnStart[k + 1] as number;
    const up = first < last ? (rowIndex[first] as number) : end;
    if (i === k) i = up;
    if (j === k) j = up;
    const y = scratch[k] as number;
    scratch[k] = 0;
    if (y === 0) continue;
    ohm += (y * y) / (pivots[k] as number);
    for (let q = first; q < last; q++) {
      const row = rowIndex[q] as number;
      scratch[row] = (scratch[row] as number) - (lower[q] as number) * y;
    }
  }
  return ohm;
}
