import { needEarthly, needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput, needList, needObject } from '../error/guard.js';

/** One path to the node: a source of volts behind a resistance. A plain resistor to ground has 0 V. */
export interface TheveninBranch {
  /** Open-circuit volts of the branch against ground. */
  readonly emfV: number;
  /** Its resistance in Ω, above 0. */
  readonly resistanceOhm: number;
}

export interface TheveninInput {
  /** Every path that leads to the node. */
  readonly branches: readonly TheveninBranch[];
  /** Current that something pushes into the node in A, such as leakage; 0 unless given, below 0 when it draws. */
  readonly injectedA?: number;
  /** Load from the node to ground in Ω, at least 0; left out for none. */
  readonly loadOhm?: number;
}

export interface TheveninResult {
  /** Open-circuit volts of the node. */
  readonly emfV: number;
  /** Resistance in Ω behind them. */
  readonly sourceOhm: number;
  /** Current into a short to ground in A. */
  readonly shortA: number;
  /** The most power that any load can take, in W: that of a load equal to `sourceOhm`. */
  readonly mostLoadW: number;
  /** Volts of the node with the load given, or open. */
  readonly nodeV: number;
  /** Current in the load in A; 0 without one. */
  readonly loadA: number;
  /** Power in the load in W. */
  readonly loadW: number;
  /** Current from each branch into the node in A, in the order given. */
  readonly branchA: readonly number[];
}

/**
 * Everything that meets at one node, as one source behind one resistance.
 *
 * Use it for a sensor with two listeners, a signal with two pull-ups, a node fed from two ends.
 *
 * $$E = R \left(\sum_k \frac{E_k}{R_k} + I\right) \qquad \frac{1}{R} = \sum_k \frac{1}{R_k}$$
 *
 * @param input branches, injected current, load
 * @returns open volts, source resistance in Ω, short current, node volts and load current, current of each branch
 * @throws InputError when a field is missing or out of range
 * @source lessons-electric-circuits, volume I, chapter 10 (Thévenin's and Millman's theorems)
 * @example thevenin({ branches: [{ emfV: 28, resistanceOhm: 4 }, { emfV: 7, resistanceOhm: 1 }] }).emfV //=> 11.2
 */
export function thevenin(input: TheveninInput): TheveninResult {
  const fn = 'thevenin';
  needInput(fn, input);
  const { branches, injectedA = 0, loadOhm } = input;
  needList(fn, 'branches', branches, 1);
  needEarthly(fn, 'injectedA', injectedA);
  if (loadOhm !== undefined) needNoLessThan(fn, 'loadOhm', loadOhm);
  branches.forEach((branch, i) => {
    needObject(fn, `branches[${i}]`, branch);
    needEarthly(fn, `branches[${i}].emfV`, branch.emfV);
    needMoreThan(fn, `branches[${i}].resistanceOhm`, branch.resistanceOhm);
  });
  const sourceOhm = 1 / branches.reduce((sum, branch) => sum + 1 / branch.resistanceOhm, 0);
  /** What all push into a node that is held at these volts. */
  const intoA = (nodeV: number): number =>
    branches.reduce((sum, branch) => sum + (branch.emfV - nodeV) / branch.resistanceOhm, injectedA);
  const shortA = intoA(0);
  const emfV = shortA * sourceOhm;
  const loadA = loadOhm === undefined ? 0 : emfV / (loadOhm + sourceOhm);
  const nodeV = loadOhm === undefined ? emfV : loadA * loadOhm;
  return {
    emfV,
    sourceOhm,
    shortA,
    mostLoadW: (emfV * shortA) / 4,
    nodeV,
    loadA,
    loadW: nodeV * loadA,
    // By currents: the difference of a source's volts to the node's would lose the digits of a small one.
    branchA: branches.map((branch) => ((loadA - intoA(branch.emfV)) * sourceOhm) / branch.resistanceOhm),
  };
}
