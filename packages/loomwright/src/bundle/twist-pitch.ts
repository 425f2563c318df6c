import { InputError } from '../error/index.js';
import { needAbove, needInput } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { TwistTable } from '../table/index.js';
import { M_PER_FOOT } from '../unit/index.js';

export interface TwistPitchInput {
  readonly table: TwistTable;
  /** American wire gauge, such as '20'. */
  readonly awg: string;
  /** Wires twisted together: 2 or 3. */
  readonly wireCount: number;
  /** Diameter of one wire over its insulation in mm, above 0. */
  readonly outerDiameterMm: number;
}

export interface TwistPitchResult {
  /** Length in mm in which a wire goes round once. */
  readonly pitchMm: number;
  /** Diameter in mm of the helix of each wire's middle. */
  readonly helixDiameterMm: number;
  /** Length of the wire over that of the cable. */
  readonly twistFactor: number;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/**
 * Pitch of a twisted pair or triple by a table of twists a foot, and how much longer its wires are.
 *
 * Wires that touch each other have their middles on a circle of $d$ (pair) or $2d/\sqrt3$ (triple).
 *
 * $$p = \frac{1\,\mathrm{ft}}{n}, \qquad k = \sqrt{1 + \left(\frac{\pi D}{p}\right)^2}$$
 *
 * @param input table, gauge, number of wires, diameter
 * @returns pitch and helix diameter in mm, ready for `cutLength`, and the factor on the length
 * @throws InputError when a field is missing or out of range, or the gauge is not in the table
 * @source the table's own; statics (length of a helix)
 * @example twistPitch({ table: aircraftTwist, awg: '20', wireCount: 2, outerDiameterMm: 1.3 }).pitchMm //=> 30.48
 */
export function twistPitch(input: TwistPitchInput): TwistPitchResult {
  needInput('twistPitch', input);
  const { table, awg, wireCount, outerDiameterMm } = input;
  if (typeof table !== 'object' || table === null || table.rows === undefined) {
    throw new InputError(
      'twistPitch',
      'table',
      table === undefined || table === null ? 'missing' : 'object',
      table,
      'must be a table of twists',
    );
  }
  const row = table.rows.find(([gauge]) => gauge === awg);
  if (row === undefined) {
    throw new InputError(
      'twistPitch',
      'awg',
      awg === undefined ? 'missing' : 'inTable',
      awg,
      `must be a gauge of ${table.key}`,
    );
  }
  if (wireCount !== 2 && wireCount !== 3) {
    throw new InputError('twistPitch', 'wireCount', 'oneOf', wireCount, 'must be 2 or 3');
  }
  needAbove('twistPitch', 'outerDiameterMm', outerDiameterMm);
  const pitchMm = (M_PER_FOOT * 1000) / row[(wireCount - 1) as 1 | 2];
  const helixDiameterMm = wireCount === 2 ? outerDiameterMm : (2 * outerDiameterMm) / Math.sqrt(3);
  const turn = (Math.PI * helixDiameterMm) / pitchMm;
  return {
    pitchMm,
    helixDiameterMm,
    twistFactor: Math.sqrt(1 + turn * turn),
    source: table.source,
    sourceStatus: table.status,
  };
}
