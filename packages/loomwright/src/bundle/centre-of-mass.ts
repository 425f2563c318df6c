import { InputError } from '../error/index.js';
import { needFinite, needInput, needList } from '../error/guard.js';

/** A mass and where it is, from a point that is the same for all. */
export interface PlacedMass {
  /** Mass in kg; below 0 for one that is taken away. */
  readonly massKg: number;
  /** Place along the vehicle in m, to the rear. */
  readonly alongM: number;
  /** Place across in m, to the right; 0 unless given. */
  readonly acrossM?: number;
}

export interface CentreOfMassInput {
  readonly masses: readonly PlacedMass[];
}

export interface CentreOfMassResult {
  /** Sum of the masses in kg. */
  readonly massKg: number;
  /** Centre along, in m from the point. */
  readonly alongM: number;
  /** Centre across, in m to the right. */
  readonly acrossM: number;
}

/**
 * Centre of gravity of several masses.
 *
 * Use it to find where a group of parts balances, or where a whole vehicle does after parts were added and removed.
 * For axle loads use `balanceShift`.
 *
 * $$x = \frac{\sum_i m_i x_i}{\sum_i m_i}$$
 *
 * @param input masses with their places
 * @returns the sum in kg and the place of the centre in m
 * @throws InputError when a field is missing or not finite, or the masses do not sum to more than 0
 * @source statics
 * @example centreOfMass({ masses: [{ massKg: 30, alongM: 0 }, { massKg: 20, alongM: 0.9144 }] }).alongM //=> 0.36576
 */
export function centreOfMass(input: CentreOfMassInput): CentreOfMassResult {
  needInput('centreOfMass', input);
  needList('centreOfMass', 'masses', input.masses, 1);
  let massKg = 0;
  let along = 0;
  let across = 0;
  input.masses.forEach((mass, i) => {
    if (typeof mass !== 'object' || mass === null) {
      throw new InputError('centreOfMass', `masses[${i}]`, 'object', mass, 'must be an object with massKg and alongM');
    }
    const { acrossM = 0 } = mass;
    needFinite('centreOfMass', `masses[${i}].massKg`, mass.massKg);
    needFinite('centreOfMass', `masses[${i}].alongM`, mass.alongM);
    needFinite('centreOfMass', `masses[${i}].acrossM`, acrossM);
    massKg += mass.massKg;
    along += mass.massKg * mass.alongM;
    across += mass.massKg * acrossM;
  });
  if (!(massKg > 0)) {
    throw new InputError('centreOfMass', 'masses', 'above', massKg, 'must sum to more than 0 kg');
  }
  return { massKg, alongM: along / massKg, acrossM: across / massKg };
}
