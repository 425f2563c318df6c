import { InputError } from '../error/index.js';
import { needAbove, needAtLeast, needOneOf } from '../error/guard.js';

/** Draws the same current at any voltage: the usual reading of "a 15 A pump", and a fair first guess for one. */
export interface ConstantCurrentLoad {
  readonly kind: 'constant-current';
  /** Current in A, above 0. */
  readonly currentA: number;
}

/** A plain resistance: a heater once warm. */
export interface ResistanceLoad {
  readonly kind: 'resistance';
  /** Resistance in Ω, above 0. */
  readonly resistanceOhm: number;
}

/** Draws the same power at any voltage, so more current at less voltage: a converter, an LED driver, a radio. */
export interface ConstantPowerLoad {
  readonly kind: 'constant-power';
  /** Power in W, above 0. */
  readonly powerW: number;
}

/** A permanent-magnet motor that runs: winding resistance, back-EMF and what its load asks of it. */
export interface MotorLoad {
  readonly kind: 'motor';
  /** Resistance of winding and brushes in Ω, above 0. */
  readonly windingResistanceOhm: number;
  /** Speed constant in rpm per volt of back-EMF, above 0. */
  readonly speedConstantRpmPerV: number;
  /** Current in A at the rated voltage, above 0 and below that of the stalled motor. */
  readonly ratedCurrentA: number;
  /** Voltage in V at which it draws that current. */
  readonly ratedV: number;
  /** `constant` for a lift or a positive-displacement pump, `speed-squared` for a fan or a centrifugal pump. */
  readonly torque: 'constant' | 'speed-squared';
}

/** What is at the end of a path. */
export type Load = ConstantCurrentLoad | ResistanceLoad | ConstantPowerLoad | MotorLoad;

const KINDS = ['constant-current', 'resistance', 'constant-power', 'motor'];

/** Throws unless the load is one of the kinds, whole and in range. */
export function needLoad(fn: string, load: Load): void {
  if (typeof load !== 'object' || load === null) {
    throw new InputError(fn, 'load', load === undefined ? 'missing' : 'object', load, 'must be a load with a kind');
  }
  needOneOf(fn, 'load.kind', load.kind, KINDS);
  if (load.kind === 'constant-current') needAbove(fn, 'load.currentA', load.currentA);
  else if (load.kind === 'resistance') needAbove(fn, 'load.resistanceOhm', load.resistanceOhm);
  else if (load.kind === 'constant-power') needAbove(fn, 'load.powerW', load.powerW);
  else {
    needAbove(fn, 'load.windingResistanceOhm', load.windingResistanceOhm);
    needAbove(fn, 'load.speedConstantRpmPerV', load.speedConstantRpmPerV);
    needAbove(fn, 'load.ratedCurrentA', load.ratedCurrentA);
    needAtLeast(fn, 'load.ratedV', load.ratedV);
    needOneOf(fn, 'load.torque', load.torque, ['constant', 'speed-squared']);
    const stallA = load.ratedV / load.windingResistanceOhm;
    if (!(load.ratedCurrentA < stallA)) {
      throw new InputError(
        fn,
        'load.ratedCurrentA',
        'below',
        load.ratedCurrentA,
        `must be below ratedV / windingResistanceOhm (${stallA} A)`,
      );
    }
  }
}

/** Where a load settles behind a resistance. */
export interface LoadPoint {
  readonly currentA: number;
  /** The other, unstable current that satisfies a constant power, or null. */
  readonly otherCurrentA: number | null;
  /** Speed of a motor in rpm, or null. */
  readonly speedRpm: number | null;
  readonly stalled: boolean;
}

/** Why a load cannot settle, and the most that the line would bear. */
export interface LoadImpossible {
  readonly code: 'no-volts-left' | 'power-beyond-line';
  readonly because: string;
  readonly mostA: number;
}

/** The current of a load behind a supply and a series resistance, in closed form. */
export function settle(load: Load, supplyV: number, seriesOhm: number): LoadPoint | LoadImpossible {
  const point = { otherCurrentA: null, speedRpm: null, stalled: false };
  switch (load.kind) {
    case 'constant-current': {
      if (load.currentA * seriesOhm < supplyV) return { ...point, currentA: load.currentA };
      return {
        code: 'no-volts-left',
        because: `${load.currentA} A through ${seriesOhm} Ω would take the whole ${supplyV} V`,
        mostA: supplyV / seriesOhm,
      };
    }
    case 'resistance':
      return { ...point, currentA: supplyV / (seriesOhm + load.resistanceOhm) };
    case 'constant-power': {
      // R I² − V I + P = 0. The smaller root is written so that R = 0 and tiny R lose no digits.
      const under = supplyV * supplyV - 4 * seriesOhm * load.powerW;
      if (under < 0) {
        return {
          code: 'power-beyond-line',
          because: `${load.powerW} W is more than ${supplyV} V can push through ${seriesOhm} Ω (at most ${(supplyV * supplyV) / (4 * seriesOhm)} W)`,
          mostA: supplyV / (2 * seriesOhm),
        };
      }
      const root = Math.sqrt(under);
      return {
        ...point,
        currentA: (2 * load.powerW) / (supplyV + root),
        otherCurrentA: seriesOhm > 0 ? (supplyV + root) / (2 * seriesOhm) : null,
      };
    }
    case 'motor': {
      const loopOhm = seriesOhm + load.windingResistanceOhm;
      const ratedEmfV = load.ratedV - load.ratedCurrentA * load.windingResistanceOhm;
      if (load.torque === 'constant') {
        const emfV = supplyV - load.ratedCurrentA * loopOhm;
        if (emfV <= 0) return { ...point, currentA: supplyV / loopOhm, speedRpm: 0, stalled: true };
        return { ...point, currentA: load.ratedCurrentA, speedRpm: emfV * load.speedConstantRpmPerV };
      }
      // I = k E²: k R E² + E − V = 0, in the form that loses no digits for small k R.
      const k = load.ratedCurrentA / (ratedEmfV * ratedEmfV);
      const emfV = (2 * supplyV) / (1 + Math.sqrt(1 + 4 * k * loopOhm * supplyV));
      return { ...point, currentA: k * emfV * emfV, speedRpm: emfV * load.speedConstantRpmPerV };
    }
  }
}
