import type { NotPossible } from '../check/index.js';
import { needAbove, needAtLeast, needInput, needList, needObject, needText } from '../error/guard.js';
import { type Load, needLoad, settle } from './load.js';

/** What a part of a path is. */
export type PartKind = 'wire' | 'fuse' | 'relay' | 'switch' | 'terminal' | 'connector' | 'body' | 'source' | 'other';

/** One thing in the path that current goes through. */
export interface PathPart {
  /** What it is: 'main fuse', 'wire out', 'ground stud'. */
  readonly name: string;
  /** What kind of thing it is, for drawings and for what depends on it; `other` where left out. */
  readonly kind?: PartKind;
  /** Resistance in Ω, at least 0, at the temperature that matters (a fuse: hot). */
  readonly resistanceOhm: number;
}

export interface SolvePathInput {
  /** Voltage at the start of the path in V, above 0. Behind a battery, list its resistance as a part. */
  readonly supplyV: number;
  /** From the supply to the load, in order. */
  readonly outParts: readonly PathPart[];
  /** From the load back to the supply, in order. */
  readonly returnParts: readonly PathPart[];
  readonly load: Load;
}

/** One part of a solved path. */
export interface SolvedPart {
  readonly name: string;
  readonly kind: PartKind;
  readonly side: 'out' | 'return';
  readonly resistanceOhm: number;
  /** Volts lost in it. */
  readonly dropV: number;
  /** Mean heat made in it, in W. */
  readonly lossW: number;
  /** Its share of all volts lost, 0 to 1. */
  readonly dropFraction: number;
  /** Volts above the supply's negative before and after it. */
  readonly beforeV: number;
  readonly afterV: number;
}

export interface SolvePathResult {
  readonly possible: true;
  /** Current in A while the load is on; for all but switched loads simply the current. */
  readonly currentA: number;
  /** The same by what it matters for: a channel is judged by the peak, wire and fuse by the r.m.s., a battery by the mean. */
  readonly peakA: number;
  readonly rmsA: number;
  readonly meanA: number;
  /** Volts across the load while it is on. */
  readonly loadV: number;
  /** Volts lost out and back. */
  readonly dropV: number;
  /** The same as a fraction of the supply. */
  readonly dropFraction: number;
  /** Mean power that the load takes, in W. */
  readonly loadPowerW: number;
  /** Mean heat made in the path, in W. */
  readonly lossW: number;
  /** Resistance of the path in Ω, load not counted. */
  readonly pathResistanceOhm: number;
  /** Each part in order, the load between the last `out` and the first `return`. */
  readonly parts: readonly SolvedPart[];
  /** A constant power can also be drawn at this higher current and lower voltage; a real load does not stay there. */
  readonly otherCurrentA: number | null;
  /** Speed of a motor in rpm, else null. */
  readonly speedRpm: number | null;
  /** Whether a motor stands still. */
  readonly stalled: boolean;
}

/** What a path that cannot feed its load could carry at most. */
export interface PathLimit {
  /** The most current in A at which the path can still feed this kind of load. */
  readonly currentA: number;
}

/**
 * One load at the end of a series path: volts, amperes, watts, and what each part takes.
 *
 * Use it where one current goes out and back through everything. For paths that share wires or grounds a network is
 * needed, not this.
 *
 * $$V_{\mathrm{load}} = V - I \sum_k R_k$$
 *
 * with $I$ from the load's kind: given; $V/(\sum R + R_{\mathrm{load}})$; the smaller root of $R I^2 - V I + P = 0$; a
 * motor's balance of back-EMF and torque; or a lamp's $I \sim V_{\mathrm{load}}^{0.55}$. Of a load that is switched fast
 * with duty $d$ the peak is $I$, the r.m.s. $I\sqrt{d}$ and the mean $I d$.
 *
 * @param input supply, parts out and back, load
 * @returns the solved path, or `possible: false` where the path cannot feed the load: codes `no-volts-left`
 * (a constant current would take all volts), `power-beyond-line` (no current gives the wanted power) and
 * `below-least-volts` (an LED driver goes out)
 * @throws InputError when a field is missing or out of range
 * @source circuit-theory; lamp-rerating (a lamp's current)
 * @example solvePath({ supplyV: 12, outParts: [{ name: 'wire', resistanceOhm: 0.1 }], returnParts: [], load: { kind: 'resistance', resistanceOhm: 1.1 } }).loadV //=> 11
 */
export function solvePath(input: SolvePathInput): SolvePathResult | NotPossible<PathLimit> {
  needInput('solvePath', input);
  const { supplyV, outParts, returnParts, load } = input;
  needAbove('solvePath', 'supplyV', supplyV);
  const outOhm = sumParts('solvePath', 'outParts', outParts);
  const pathResistanceOhm = outOhm + sumParts('solvePath', 'returnParts', returnParts);
  needLoad('solvePath', load);
  const point = settle(load, supplyV, pathResistanceOhm);
  if ('code' in point) {
    return { possible: false, code: point.code, because: point.because, nearest: { currentA: point.mostA } };
  }
  const { currentA, dutyFraction } = point;
  const dropV = currentA * pathResistanceOhm;
  const loadV = supplyV - dropV;
  const parts: SolvedPart[] = [];
  let beforeV = supplyV;
  const walk = (side: 'out' | 'return', list: readonly PathPart[]): void => {
    for (const { name, kind = 'other', resistanceOhm } of list) {
      const partV = currentA * resistanceOhm;
      const afterV = beforeV - partV;
      parts.push({
        name,
        kind,
        side,
        resistanceOhm,
        dropV: partV,
        lossW: partV * currentA * dutyFraction,
        dropFraction: pathResistanceOhm > 0 ? resistanceOhm / pathResistanceOhm : 0,
        beforeV,
        afterV,
      });
      beforeV = afterV;
    }
  };
  walk('out', outParts);
  beforeV = currentA * (pathResistanceOhm - outOhm);
  walk('return', returnParts);
  return {
    possible: true,
    currentA,
    peakA: currentA,
    rmsA: currentA * Math.sqrt(dutyFraction),
    meanA: currentA * dutyFraction,
    loadV,
    dropV,
    dropFraction: dropV / supplyV,
    loadPowerW: loadV * currentA * dutyFraction,
    lossW: dropV * currentA * dutyFraction,
    pathResistanceOhm,
    parts,
    otherCurrentA: point.otherCurrentA,
    speedRpm: point.speedRpm,
    stalled: point.stalled,
  };
}

function sumParts(fn: string, field: string, parts: readonly PathPart[]): number {
  needList(fn, field, parts);
  let sum = 0;
  parts.forEach((part, i) => {
    needObject(fn, `${field}[${i}]`, part);
    needText(fn, `${field}[${i}].name`, part.name);
    needAtLeast(fn, `${field}[${i}].resistanceOhm`, part.resistanceOhm);
    sum += part.resistanceOhm;
  });
  return sum;
}
