import { solveSymmetric } from '../number/solve-symmetric.js';
import { LEAST_SHARE, throughOhm } from './ground-faults-each.js';
import type { PreparedGroundFaults } from './ground-faults-prepare.js';

/** Two unknowns whose difference is asked for in every case (−1: the reference, −2: no volts). */
export interface ShiftRow {
  readonly node: number;
  readonly against: number;
}

/** The shifts of one case. */
export interface CaseShift {
  /** Shift in V of a row, by its place in the list. */
  readonly row: (r: number) => number;
  /** Shift in V of an unknown. Costs a solution for each ground where only rows are prepared. */
  readonly unknown: (u: number) => number;
}

/** Shifts by updating the factored network; null where the case must be solved anew. */
export type CaseSolver = (lost: readonly number[]) => CaseShift | null;

/**
 * Takes one or two grounds away by an update of rank one or two: with s the currents that would undo the grounds,
 * (1 − D UᵀG⁻¹U) s = I, every shift is that of s let into G at the grounds' ends.
 */
export function caseSolver(prepared: PreparedGroundFaults, rows: readonly ShiftRow[], everyNode: boolean): CaseSolver {
  const { factor, groundFrom, groundTo, groundPerOhm, groundA } = prepared;
  const count = factor.pivots.length;
  const scratch = new Float64Array(count);
  const sidesOf = (from: number, to: number): Float64Array => {
    const sides = new Float64Array(count);
    if (from >= 0) sides[from] = 1;
    if (to >= 0) sides[to] = from === to ? 0 : -1;
    return solveSymmetric({ factor, sides, into: sides });
  };
  const columns: (Float64Array | undefined)[] = [];
  const column = (k: number): Float64Array => (columns[k] ??= sidesOf(groundFrom[k] as number, groundTo[k] as number));
  const adjoint = everyNode ? null : rows.map(({ node, against }) => sidesOf(node, against));
  const at = (list: Float64Array, u: number): number => (u < 0 ? 0 : (list[u] as number));
  const between = (list: Float64Array, from: number, to: number): number => at(list, from) - at(list, to);
  const ends = (k: number): readonly [number, number] => [groundFrom[k] as number, groundTo[k] as number];
  const share: number[] = [];
  const shareOf = (k: number): number =>
    (share[k] ??= 1 - (groundPerOhm[k] as number) * throughOhm(prepared, ...ends(k), scratch));
  const undoing = (lost: readonly number[]): readonly number[] | null => {
    const [e, f] = lost as readonly [number, number | undefined];
    const one = shareOf(e);
    if (f === undefined) return one < LEAST_SHARE ? null : [(groundA[e] as number) / one];
    const two = shareOf(f);
    const crossOhm = between(column(e), ...ends(f));
    const a = (groundPerOhm[e] as number) * crossOhm;
    const b = (groundPerOhm[f] as number) * crossOhm;
    const whole = one * two - a * b;
    if (whole < LEAST_SHARE) return null;
    const [i, j] = [groundA[e] as number, groundA[f] as number];
    return [(i * two + a * j) / whole, (j * one + b * i) / whole];
  };
  return (lost) => {
    const weights = undoing(lost);
    if (weights === null) return null;
    const sum = (of: (k: number) => number): number =>
      lost.reduce((total, k, n) => total + (weights[n] as number) * of(k), 0);
    const unknown = (u: number): number => (u < 0 ? 0 : sum((k) => at(column(k), u)));
    return {
      unknown,
      row: (r) => {
        const { node, against } = rows[r] as ShiftRow;
        const own = adjoint?.[r];
        return own === undefined ? unknown(node) - unknown(against) : sum((k) => between(own, ...ends(k)));
      },
    };
  };
}
