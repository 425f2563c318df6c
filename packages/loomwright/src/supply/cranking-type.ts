import type { Check } from '../check/index.js';
import type { CrankingBudget } from '../table/index.js';
import type { CrankingPart, CrankingRole } from './cranking-part.js';
import type { CrankingReading, JudgedReading } from './cranking-reading.js';
import type { CrankingStarter } from './cranking-starter.js';

/** Where a controller takes its supply and its ground, and what it needs. */
export interface CrankingController {
  /** The part of the way out after which it is tapped; null: at the battery's positive post. */
  readonly outAfter: string | null;
  /** The part of the way back before which it is grounded; null: at the battery's negative post. */
  readonly groundBefore: string | null;
  /** Least volts with which it works while the starter turns, above 0. */
  readonly leastV: number;
  /** Least volts in the first moment, rotor still; null where that is not to be judged. */
  readonly firstLeastV: number | null;
}

export interface CrankingCircuitInput {
  /** Volts of the rested battery, above 0, and its resistance in Ω at its temperature, at least 0. */
  readonly openV: number;
  readonly batteryResistanceOhm: number;
  /** From the positive post to the starter's terminal, in order. */
  readonly outParts: readonly CrankingPart[];
  /** From the starter's case to the negative post, in order. */
  readonly returnParts: readonly CrankingPart[];
  readonly starter: CrankingStarter;
  /** Null where none is to be judged. */
  readonly controller: CrankingController | null;
  /** Sets of limits, at least one: `crankingBudgetParts`, `crankingBudgetSides`, `crankingBudgetGuideline`. */
  readonly budgets: readonly CrankingBudget[];
  /** A reading so many V above the predicted one means a bad joint: the meter, and how well all is known. Above 0. */
  readonly deviationV: number;
  /** Volts read across parts while cranking. */
  readonly readings?: readonly CrankingReading[];
  /** Current read at the same time, in A, above 0; without it the predicted one is taken. */
  readonly readingA?: number;
  /** Least speed of the engine in rpm; needs a starter with `gearRatio`. */
  readonly leastEngineRpm?: number;
}

/** One part while cranking, the battery's inside being the first. */
export interface CrankingPartState extends JudgedReading {
  readonly name: string;
  readonly role: CrankingRole | 'battery';
  readonly side: 'battery' | 'out' | 'return';
  readonly resistanceOhm: number;
  /** Volts lost in it, and its share of all that is lost, the battery's inside counted. */
  readonly dropV: number;
  readonly dropFraction: number;
  /** Heat in it in W. */
  readonly lossW: number;
  /** Tightest limit of its kind in V, the same in Ω at this current, and the set's key; null where none has one. */
  readonly limitV: number | null;
  readonly limitOhm: number | null;
  readonly budget: string | null;
}

/** A point where a probe can be put, from the positive post down to the negative one. */
export interface LadderPoint {
  readonly name: string;
  readonly side: 'out' | 'return';
  /** Predicted volts above the negative post. */
  readonly aboveNegativeV: number;
  /** Lost since the point before it, in mV: at the positive post inside the battery, at the case in the starter: null. */
  readonly lostMv: number | null;
}

/** Volts and amperes at one moment. */
export interface CrankingMoment {
  readonly currentA: number;
  /** At the battery's posts, at the starter's terminal and case, at the controller (null without one). */
  readonly postV: number;
  readonly starterV: number;
  readonly controllerV: number | null;
}

/** One point of the starter's line in this circuit, from standing still to running free. */
export interface StarterLinePoint {
  readonly currentA: number;
  readonly starterV: number;
  readonly speedRpm: number;
  /** Torque over that held fast in the bench test. */
  readonly torqueFraction: number;
}

export interface CrankingCircuit extends CrankingMoment {
  readonly possible: true;
  /** The first moment, rotor still; null where the starter is known by less than a bench test. */
  readonly firstMoment: CrankingMoment | null;
  /** Volts lost inside the battery, on the positive side, on the ground side, and on both sides. */
  readonly batteryDropV: number;
  readonly positiveDropV: number;
  readonly negativeDropV: number;
  readonly dropV: number;
  /** Speed of starter and engine in rpm; null where they are not known. */
  readonly speedRpm: number | null;
  readonly engineRpm: number | null;
  /** The engine asks for more torque than the starter has through this circuit. */
  readonly stalled: boolean;
  readonly starterPowerW: number;
  readonly parts: readonly CrankingPartState[];
  readonly ladder: readonly LadderPoint[];
  readonly line: readonly StarterLinePoint[];
  /** Parts whose reading says that they are bad, the worst first. */
  readonly badParts: readonly string[];
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}
