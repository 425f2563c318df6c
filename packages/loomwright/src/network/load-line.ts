import { hotOhm, type Load, type MotorLoad, settle } from '../load/load.js';

/** Current of a load at some volts across it, and how much more it takes for each volt more. */
export interface LoadLine {
  readonly currentA: number;
  readonly slopePerOhm: number;
}

/**
 * What a load is to a network: `linear` a resistance; `passive` lets current through in either direction whatever the
 * volts; `active` is electronics, which needs volts the right way round and draws what it is given as.
 */
export type LoadNature = 'linear' | 'passive' | 'active';

export function natureOf(load: Load): LoadNature {
  switch (load.kind) {
    case 'resistance':
    case 'heater':
    case 'solenoid':
    case 'starter-solenoid':
      return 'linear';
    case 'lamp':
    case 'motor':
    case 'h-bridge-motor':
      return 'passive';
    case 'pwm':
      return natureOf(load.load);
    default:
      return 'active';
  }
}

/** Conductance in 1/Ω of a load that is a resistance, of a lamp at its rated volts, of a motor that stands still. */
export function restPerOhm(load: Load): number {
  switch (load.kind) {
    case 'resistance':
    case 'heater':
      return 1 / load.resistanceOhm;
    case 'solenoid':
      return 1 / hotOhm(load.resistanceOhm, load.ratedTempC, load.coilTempC);
    case 'starter-solenoid':
      return 1 / load.holdInResistanceOhm + (load.stage === 'hold' ? 0 : 1 / load.pullInResistanceOhm);
    case 'lamp':
      return load.ratedPowerW / (load.ratedV * load.ratedV);
    case 'motor':
      return 1 / load.windingResistanceOhm;
    case 'h-bridge-motor':
      return load.dutyFraction / (load.bridgeResistanceOhm + load.motor.windingResistanceOhm);
    case 'pwm':
      return restPerOhm(load.load);
    default:
      return 0;
  }
}

/** The line of a passive load at volts of either sign, of an active one at volts above 0. */
export function lineAt(load: Load, voltageV: number): LoadLine {
  if (voltageV < 0) {
    const { currentA, slopePerOhm } = lineAt(load, -voltageV);
    return { currentA: -currentA, slopePerOhm };
  }
  switch (load.kind) {
    case 'lamp': {
      // At no volts at all a cold filament would be a short: below a millionth of its volts it is a resistance.
      const least = load.ratedV * 1e-6;
      const atV = Math.max(voltageV, least);
      const a = currentAt(load, atV);
      if (voltageV <= least) return { currentA: (a * voltageV) / least, slopePerOhm: a / least };
      return { currentA: a, slopePerOhm: (load.law.currentExponent * a) / voltageV };
    }
    case 'motor':
      return motorLine(load, voltageV, load.windingResistanceOhm);
    case 'h-bridge-motor': {
      const { motor, dutyFraction, bridgeResistanceOhm } = load;
      const line = motorLine(motor, dutyFraction * voltageV, bridgeResistanceOhm + motor.windingResistanceOhm);
      return { currentA: line.currentA, slopePerOhm: dutyFraction * line.slopePerOhm };
    }
    case 'pwm':
      return lineAt(load.load, voltageV);
    case 'constant-current':
      return { currentA: load.currentA, slopePerOhm: 0 };
    case 'constant-power':
    case 'capacitor-input':
    case 'led-driver': {
      const powerW = load.kind === 'led-driver' ? load.powerW / load.efficiency : load.powerW;
      return { currentA: powerW / voltageV, slopePerOhm: -powerW / (voltageV * voltageV) };
    }
    default:
      return { currentA: voltageV * restPerOhm(load), slopePerOhm: restPerOhm(load) };
  }
}

/** Volts below which an active load goes out. */
export function leastV(load: Load): number {
  return load.kind === 'led-driver' ? load.leastV : load.kind === 'pwm' ? leastV(load.load) : 0;
}

function currentAt(load: Load, voltageV: number): number {
  const point = settle(load, voltageV, 0);
  return 'code' in point ? 0 : point.currentA;
}

/** A millionth of the winding's own slope is left to a motor at constant torque: two of them in series stay solvable. */
function motorLine(motor: MotorLoad, voltageV: number, ohm: number): LoadLine {
  const least = 1e-6 / ohm;
  const ratedEmfV = motor.ratedV - motor.ratedCurrentA * motor.windingResistanceOhm;
  if (motor.torque === 'constant') {
    if (voltageV <= motor.ratedCurrentA * ohm) return { currentA: voltageV / ohm, slopePerOhm: 1 / ohm };
    return { currentA: motor.ratedCurrentA, slopePerOhm: least };
  }
  const k = motor.ratedCurrentA / (ratedEmfV * ratedEmfV);
  const emfV = (2 * voltageV) / (1 + Math.sqrt(1 + 4 * k * ohm * voltageV));
  return { currentA: k * emfV * emfV, slopePerOhm: Math.max(least, (2 * k * emfV) / (1 + 2 * k * ohm * emfV)) };
}
