import type { z } from 'zod';
import type { ConstantCurrentLoad, ConstantPowerLoad, MotorLoad, ResistanceLoad } from 'loomwright';
import type { load } from './trade.js';

/** What a file's load is to the core. */
export function loadOf(
  given: z.output<typeof load>,
): ConstantCurrentLoad | ResistanceLoad | ConstantPowerLoad | MotorLoad {
  switch (given.kind) {
    case 'constant current':
      return { kind: 'constant-current', currentA: given.current };
    case 'resistance':
      return { kind: 'resistance', resistanceOhm: given.resistance };
    case 'constant power':
      return { kind: 'constant-power', powerW: given.power };
    case 'motor':
      return {
        kind: 'motor',
        windingResistanceOhm: given.windingResistance,
        speedConstantRpmPerV: given.speedConstant,
        ratedCurrentA: given.ratedCurrent,
        ratedV: given.ratedVoltage,
        torque: given.torque === 'constant' ? 'constant' : 'speed-squared',
      };
  }
}
