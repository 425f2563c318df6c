import {
  type ConstantCurrentLoad,
  type ConstantPowerLoad,
  filamentLamp,
  type Load,
  type MotorLoad,
  type ResistanceLoad,
} from 'loomwright';
import type { z } from 'zod';
import type { circuitLoad, load } from './trade.js';

type Given = z.output<typeof load>;
type GivenMotor = Omit<Extract<Given, { kind: 'motor' }>, 'kind'>;
type OfCircuit = z.output<typeof circuitLoad>;
type Steady = Extract<OfCircuit, { kind: 'switched fast' }>['load'];

/** What a file's load is to the core. */
export function loadOf(given: Given): ConstantCurrentLoad | ResistanceLoad | ConstantPowerLoad | MotorLoad {
  switch (given.kind) {
    case 'constant current':
      return { kind: 'constant-current', currentA: given.current };
    case 'resistance':
      return { kind: 'resistance', resistanceOhm: given.resistance };
    case 'constant power':
      return { kind: 'constant-power', powerW: given.power };
    case 'motor':
      return motorOf(given);
  }
}

/** The same for the load of one circuit, which may be of more kinds. */
export function circuitLoadOf(given: OfCircuit): Load {
  switch (given.kind) {
    case 'motor on a bridge':
      return {
        kind: 'h-bridge-motor',
        motor: motorOf(given),
        bridgeResistanceOhm: given.bridgeResistance,
        dutyFraction: given.duty,
      };
    case 'switched fast':
      return { kind: 'pwm', load: steadyOf(given.load), dutyFraction: given.duty };
    default:
      return steadyOf(given);
  }
}

function steadyOf(given: Steady): Exclude<Load, { kind: 'pwm' | 'h-bridge-motor' }> {
  switch (given.kind) {
    case 'lamp':
      return {
        kind: 'lamp',
        ratedPowerW: given.power,
        ratedV: given.ratedVoltage,
        // The current of a halogen lamp goes with its volts as that of any filament.
        law: filamentLamp,
      };
    case 'LED driver':
      return { kind: 'led-driver', powerW: given.power, efficiency: given.efficiency, leastV: given.leastVolts };
    case 'coil':
      // The copper of a coil. Its inductance says nothing of the current that it settles at.
      return {
        kind: 'resistance',
        resistanceOhm: (given.resistance * (234.5 + given.coilTemperature)) / (234.5 + given.ratedAt),
      };
    case 'starter solenoid':
      return {
        kind: 'starter-solenoid',
        pullInResistanceOhm: given.pullIn,
        holdInResistanceOhm: given.holdIn,
        stage: given.stage === 'hold' ? 'hold' : 'pull-in',
      };
    default:
      return loadOf(given);
  }
}

function motorOf(given: GivenMotor): MotorLoad {
  return {
    kind: 'motor',
    windingResistanceOhm: given.windingResistance,
    speedConstantRpmPerV: given.speedConstant,
    ratedCurrentA: given.ratedCurrent,
    ratedV: given.ratedVoltage,
    torque: given.torque === 'constant' ? 'constant' : 'speed-squared',
  };
}
