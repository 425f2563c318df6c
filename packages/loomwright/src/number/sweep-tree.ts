import { InputError } from '../error/index.js';
import { needFinite, needInput } from '../error/guard.js';
import { needFloats, needNumbers } from './factor-symmetric.js';

/** What `sweepTree` needs: a tree of resistances, its nodes numbered so that each comes after its parent. */
export interface SweepTreeInput {
  /** The parent of each node, of a lower number; −1 hangs the node on what feeds the tree. Not changed. */
  readonly parent: Int32Array;
  /** Resistance from each node to its parent in Ω, at least 0. */
  readonly resistanceOhm: Float64Array;
  /** Current that leaves the tree at each node in A, whatever its volts; negative where it enters. */
  readonly drawnA: Float64Array;
  /** Conductance from each node to 0 V, in 1/Ω, at least 0: loads that are resistances. */
  readonly shuntPerOhm?: Float64Array;
  /** Volts of what feeds the tree. */
  readonly feedV: number;
  /** Two arrays, as long as there are nodes, for volts and for the current into each node; new ones unless given. */
  readonly into?: TreeSweep;
}

/** Volts of each node, and the current in A from each parent to its node. */
export interface TreeSweep {
  readonly nodeV: Float64Array;
  readonly branchA: Float64Array;
}

/**
 * Solves a tree of resistances in two passes: currents add up from the ends to the root, volts go down from the root.
 *
 * Use it where nothing forms a loop and all returns to one common 0 V; it costs a few operations a node and loses no
 * digits. Everything else is for `solveSymmetric`.
 *
 * $$G_k' = g_k + \sum_\mathrm{children} \frac{G}{1 + R G} \qquad J_k' = j_k + \sum_\mathrm{children} \frac{J}{1 + R G}
 * \qquad V_k = \frac{V_\mathrm{parent} - R_k J_k}{1 + R_k G_k}$$
 *
 * @param input parents, resistances, currents drawn, conductances, feed
 * @returns volts and currents by node
 * @throws InputError when an array is missing, has another length, holds a number out of range, or a parent does not
 * come before its node; what `into` then holds means nothing
 * @source circuit-theory (Norton's circuit of each branch)
 * @example sweepTree({ parent: Int32Array.of(-1, 0), resistanceOhm: Float64Array.of(0.1, 0.1), drawnA: Float64Array.of(0, 5), feedV: 12 }).nodeV[1] //=> 11
 */
export function sweepTree(input: SweepTreeInput): TreeSweep {
  const fn = 'sweepTree';
  needInput(fn, input);
  const { parent, resistanceOhm, drawnA, shuntPerOhm, feedV, into } = input;
  if (!(parent instanceof Int32Array)) {
    throw new InputError(fn, 'parent', parent === undefined ? 'missing' : 'list', parent, 'must be an Int32Array');
  }
  const count = parent.length;
  needFloats(fn, 'resistanceOhm', resistanceOhm, count);
  needFloats(fn, 'drawnA', drawnA, count);
  if (shuntPerOhm !== undefined) needFloats(fn, 'shuntPerOhm', shuntPerOhm, count);
  needFinite(fn, 'feedV', feedV);
  const nodeV = into?.nodeV ?? new Float64Array(count);
  const branchA = into?.branchA ?? new Float64Array(count);
  if (nodeV.length !== count || branchA.length !== count) {
    throw new InputError(fn, 'into', 'list', into, `must have two arrays of ${count} numbers`);
  }
  branchA.set(drawnA);
  let sum: number;
  if (shuntPerOhm === undefined) sum = addUp(parent, resistanceOhm, feedV, nodeV, branchA);
  else {
    for (let k = 0; k < count; k++) {
      if ((shuntPerOhm[k] as number) < 0) belowNought('shuntPerOhm', k, shuntPerOhm[k] as number);
    }
    nodeV.set(shuntPerOhm);
    sum = norton(parent, resistanceOhm, feedV, nodeV, branchA);
  }
  if (sum !== 0) {
    needNumbers(fn, 'resistanceOhm', resistanceOhm, count);
    needNumbers(fn, 'drawnA', drawnA, count);
    if (shuntPerOhm !== undefined) needNumbers(fn, 'shuntPerOhm', shuntPerOhm, count);
    throw new InputError(fn, 'drawnA', 'range', sum, 'must be so small that all currents and volts are finite');
  }
  return { nodeV, branchA };
}

// Each number is looked at where it is used. One that is not finite makes volts or a current that are not, and nought
// times these is no longer nought: the sum of them tells, and only then is it looked for.

/** Currents alone, in `a` what each node draws: a branch carries what is drawn beyond it. Gives 0 where all is finite. */
function addUp(parent: Int32Array, ohms: Float64Array, feedV: number, v: Float64Array, a: Float64Array): number {
  for (let k = parent.length - 1; k >= 0; k--) {
    const above = parent[k] as number;
    if ((above + 1) >>> 0 > k) noParent(k, above);
    if (above >= 0) a[above] = (a[above] as number) + (a[k] as number);
  }
  let none = 0;
  for (let k = 0; k < parent.length; k++) {
    const above = parent[k] as number;
    const ohm = ohms[k] as number;
    if (ohm < 0) belowNought('resistanceOhm', k, ohm);
    const volts = (above < 0 ? feedV : (v[above] as number)) - ohm * (a[k] as number);
    v[k] = volts;
    none += volts * 0;
  }
  return none;
}

/** With conductances to 0 V, which `v` holds until the volts are known. */
function norton(parent: Int32Array, ohms: Float64Array, feedV: number, v: Float64Array, a: Float64Array): number {
  for (let k = parent.length - 1; k >= 0; k--) {
    const above = parent[k] as number;
    if ((above + 1) >>> 0 > k) noParent(k, above);
    const g = v[k] as number;
    if (above < 0) continue;
    const seen = 1 / (1 + (ohms[k] as number) * g);
    v[above] = (v[above] as number) + g * seen;
    a[above] = (a[above] as number) + (a[k] as number) * seen;
  }
  let none = 0;
  for (let k = 0; k < parent.length; k++) {
    const above = parent[k] as number;
    const ohm = ohms[k] as number;
    if (ohm < 0) belowNought('resistanceOhm', k, ohm);
    const feed = above < 0 ? feedV : (v[above] as number);
    const g = v[k] as number;
    const j = a[k] as number;
    const seen = 1 / (1 + ohm * g);
    const volts = (feed - ohm * j) * seen;
    const amps = (feed * g + j) * seen;
    v[k] = volts;
    a[k] = amps;
    none += (volts + amps) * 0;
  }
  return none;
}

function noParent(k: number, above: number): never {
  throw new InputError('sweepTree', `parent[${k}]`, 'range', above, 'must be a node of a lower number, or -1');
}

function belowNought(field: string, k: number, value: number): never {
  throw new InputError('sweepTree', `${field}[${k}]`, 'atLeast', value, 'must be at least 0');
}
