import { type SizeInput, wireResistance } from '../conductor/index.js';
import { resistanceRatio } from '../conductor/metal.js';
import { InputError } from '../error/index.js';
import { needNoLessThan } from '../error/bounded.js';
import { needConductorTempC, needList, needObject, needOneOf, needOwnName } from '../error/guard.js';
import type { ResistanceBasis } from '../table/index.js';

/** What a part of a cranking circuit is; each has a limit of its own. `body`: sheet metal, engine, frame. */
export type CrankingRole = 'connection' | 'cable' | 'contact' | 'body';

/** A part by its resistance. */
export interface CrankingResistance {
  /** What it is, each name once: 'post clamp', 'solenoid contact'. */
  readonly name: string;
  readonly role: CrankingRole;
  /** Resistance in Ω, at least 0, as it is while cranking, or of copper at `ratedTempC`. */
  readonly resistanceOhm: number;
  /** Temperature in °C at which copper was measured, and that in use: both or neither. */
  readonly ratedTempC?: number;
  readonly conductorTempC?: number;
}

/** A cable or strap by its size. */
export interface CrankingCable extends SizeInput {
  readonly name: string;
  readonly role: 'cable';
  /** Length in m, at least 0. */
  readonly lengthM: number;
  /** Which resistance the size has. */
  readonly resistanceBasis: ResistanceBasis;
  /** Temperature of the copper in °C. */
  readonly conductorTempC: number;
}

export type CrankingPart = CrankingResistance | CrankingCable;

/** A part with its resistance while cranking. */
export interface OhmicPart {
  readonly name: string;
  readonly role: CrankingRole;
  readonly side: 'out' | 'return';
  readonly resistanceOhm: number;
}

/** The parts of one side, each checked, with a name that none of `names` has, and brought to Ω. */
export function ohmicParts(
  fn: string,
  side: 'out' | 'return',
  parts: readonly CrankingPart[],
  names: Set<string>,
): OhmicPart[] {
  const field = side === 'out' ? 'outParts' : 'returnParts';
  needList(fn, field, parts);
  return parts.map((part, i) => {
    const at = `${field}[${i}]`;
    needObject(fn, at, part);
    needOwnName(fn, `${at}.name`, part.name, names);
    const sized = 'lengthM' in part;
    if (sized === 'resistanceOhm' in part) {
      throw new InputError(fn, `${at}.lengthM`, 'oneOfFields', undefined, 'or resistanceOhm must be given, one only');
    }
    needOneOf(fn, `${at}.role`, part.role, sized ? ['cable'] : ['connection', 'cable', 'contact', 'body']);
    const { name, role } = part;
    return { name, role, side, resistanceOhm: sized ? cableOhm(fn, at, part) : givenOhm(fn, at, part) };
  });
}

function cableOhm(fn: string, at: string, part: CrankingCable): number {
  try {
    return wireResistance(part).resistanceOhm;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const must = error.message.replace(/^\S+ \S+ /, '').replace(/, got .*$/, '');
    throw new InputError(fn, `${at}.${error.field}`, error.rule, error.value, must);
  }
}

function givenOhm(fn: string, at: string, part: CrankingResistance): number {
  const { resistanceOhm, ratedTempC, conductorTempC } = part;
  needNoLessThan(fn, `${at}.resistanceOhm`, resistanceOhm);
  if (ratedTempC === undefined && conductorTempC === undefined) return resistanceOhm;
  needConductorTempC(fn, `${at}.ratedTempC`, ratedTempC as number);
  needConductorTempC(fn, `${at}.conductorTempC`, conductorTempC as number);
  return resistanceOhm * resistanceRatio('copper', ratedTempC as number, conductorTempC as number);
}
