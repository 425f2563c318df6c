import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needFlag, needInput, needObject, needOneOf } from '../error/guard.js';
import { needLampLaw } from '../load/load.js';
import { needSeries } from '../table/preferred-value.js';
import type { PreferredSeries } from '../table/index.js';
import type { WarningLamp, WarningLed } from './warning-branch.js';

/** The alternator at its warning terminal. */
export type ExcitedAlternator =
  | {
      /** D+: the warning branch feeds the rotor until the alternator feeds it itself. */
      readonly kind: 'field';
      /** Rotor with its brushes in Ω, above 0, and the drop of the regulator's transistor in V, at least 0. */
      readonly rotorOhm: number;
      readonly regulatorDropV: number;
      /** Current in A with which it is sure to excite, above 0. */
      readonly neededA: number;
      /** Volts of its terminal while it charges, above 0. */
      readonly chargingV: number;
      /** Engine speed in rpm from which it excites itself without any current; left out where it is not known. */
      readonly selfExcitationRpm?: number;
    }
  | {
      /** L: a switch in the regulator, which wakes on a small current and pulls down while nothing is charged. */
      readonly kind: 'driver';
      /** Drop of that switch in V, at least 0, and the most current that it bears in A, above 0. */
      readonly driverDropV: number;
      readonly driverMostA: number;
      /** Current in A that wakes it, above 0. */
      readonly neededA: number;
      /** Volts of its terminal while it charges; null where it floats. */
      readonly chargingV: number | null;
      readonly selfExcitationRpm?: number;
    }
  | {
      /** No exciter wire: it excites itself, or is told over a bus or a control line. */
      readonly kind: 'no-wire';
      readonly control: 'self-exciting' | 'by-bus';
      readonly selfExcitationRpm?: number;
    };

export interface ExcitationResistorInput {
  readonly alternator: ExcitedAlternator;
  /** Ignition in V with the key on and the engine off, at its lowest; above 0. */
  readonly ignitionV: number;
  /** Ignition in V while it charges, at its highest; at least the lowest. */
  readonly runningV: number;
  /** Lamp and LED of the warning; null where there is none. */
  readonly lamp: WarningLamp | null;
  readonly led: WarningLed | null;
  /** `choose` for the largest that is safe, `none`, or a resistance in Ω above 0, side by side with the lamp. */
  readonly resistor: 'choose' | 'none' | number;
  /** The series that is in the drawer, and its tolerance as a fraction, at least 0 and below 1. */
  readonly series: PreferredSeries;
  readonly toleranceFraction: number;
  /** Whether lamp and LED count towards the excitation. If not, a burnt lamp leaves it whole. */
  readonly countLamp: boolean;
  /** Drop in V of a diode in the wire, above 0; null without one. */
  readonly diodeDropV: number | null;
  /** What else hangs on the ignition, in Ω above 0: coil, relays, controllers. Null where nothing is to be judged. */
  readonly ignitionLoadOhm: number | null;
  /** Volts of the ignition below which the engine is sure to stop, above 0. */
  readonly ignitionHoldV: number;
}

export function needExcitation(fn: string, input: ExcitationResistorInput): void {
  needInput(fn, input);
  const { alternator, ignitionV, runningV, lamp, led, resistor, toleranceFraction } = input;
  needObject(fn, 'alternator', alternator);
  needOneOf(fn, 'alternator.kind', alternator.kind, ['field', 'driver', 'no-wire']);
  if (alternator.selfExcitationRpm !== undefined) {
    needMoreThan(fn, 'alternator.selfExcitationRpm', alternator.selfExcitationRpm);
  }
  needMoreThan(fn, 'ignitionV', ignitionV);
  needNoLessThan(fn, 'runningV', runningV, ignitionV);
  if (alternator.kind === 'no-wire') {
    needOneOf(fn, 'alternator.control', alternator.control, ['self-exciting', 'by-bus']);
  } else {
    needMoreThan(fn, 'alternator.neededA', alternator.neededA);
    if (alternator.chargingV !== null) needMoreThan(fn, 'alternator.chargingV', alternator.chargingV);
    if (alternator.kind === 'field') {
      needMoreThan(fn, 'alternator.rotorOhm', alternator.rotorOhm);
      needNoLessThan(fn, 'alternator.regulatorDropV', alternator.regulatorDropV);
    } else {
      needNoLessThan(fn, 'alternator.driverDropV', alternator.driverDropV);
      needMoreThan(fn, 'alternator.driverMostA', alternator.driverMostA);
    }
  }
  if (lamp !== null)
    needLamp(fn, lamp, Math.max(runningV, alternator.kind === 'no-wire' ? 0 : (alternator.chargingV ?? 0)));
  if (led !== null) needLed(fn, led);
  if (typeof resistor === 'number') needMoreThan(fn, 'resistor', resistor);
  else needOneOf(fn, 'resistor', resistor, ['choose', 'none']);
  if (resistor === 'none' && lamp === null && led === null) {
    throw new InputError(fn, 'resistor', 'oneOf', resistor, 'must not be none where there is no lamp and no LED');
  }
  needSeries(fn, input.series);
  needNoLessThan(fn, 'toleranceFraction', toleranceFraction);
  if (toleranceFraction >= 1) {
    throw new InputError(fn, 'toleranceFraction', 'below', toleranceFraction, 'must be below 1', '5 % is 0.05');
  }
  needFlag(fn, 'countLamp', input.countLamp);
  if (input.diodeDropV !== null) needMoreThan(fn, 'diodeDropV', input.diodeDropV);
  if (input.ignitionLoadOhm !== null) needMoreThan(fn, 'ignitionLoadOhm', input.ignitionLoadOhm);
  needMoreThan(fn, 'ignitionHoldV', input.ignitionHoldV);
}

function needLamp(fn: string, lamp: WarningLamp, mostV: number): void {
  needObject(fn, 'lamp', lamp);
  needMoreThan(fn, 'lamp.ratedPowerW', lamp.ratedPowerW);
  needMoreThan(fn, 'lamp.ratedV', lamp.ratedV);
  needLampLaw(fn, 'lamp.law', lamp.law);
  if (mostV <= 2 * lamp.ratedV) return;
  const must = `must be at least half of the highest volts, ${mostV}`;
  throw new InputError(fn, 'lamp.ratedV', 'atLeast', lamp.ratedV, must, 'no filament lamp stands twice its volts');
}

function needLed(fn: string, led: WarningLed): void {
  needObject(fn, 'led', led);
  needMoreThan(fn, 'led.forwardV', led.forwardV);
  needMoreThan(fn, 'led.seriesOhm', led.seriesOhm);
  needMoreThan(fn, 'led.fullA', led.fullA);
}
