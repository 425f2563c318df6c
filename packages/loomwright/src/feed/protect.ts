import { needAbove, needAtLeast, needBetween, needFunction, needObject, needOneOf, needText } from '../error/guard.js';
import type { Heating } from '../heat/index.js';
import type { chooseFuse, OverloadRule } from '../protection/index.js';
import type { FuseFamily } from '../table/index.js';

/** A fuse at the source end of the wire, chosen together with the size. */
export interface FuseProtection {
  readonly kind: 'fuse';
  /** The chooser, `chooseFuse`: handed in, so that nobody pays for it who does not use it. */
  readonly by: typeof chooseFuse;
  readonly family: FuseFamily;
  /** Share of the rating that a continuous current may use, above 0 to 1; 0.75 in maker guides. */
  readonly continuousFraction: number;
  /** How the rating is held against the ampacity. */
  readonly overloadRule: OverloadRule;
  /** Temperature around the fuse in °C. */
  readonly fuseTempC: number;
  /** Lowest supply in V at which a short at the far end must still open the fuse, above 0. */
  readonly shortSupplyV: number;
  /** Resistance of battery and feed before the path in Ω, at least 0. */
  readonly sourceResistanceOhm: number;
  /** Time in s within which that short must be cleared, above 0. */
  readonly clearWithinS: number;
  /**
   * What the insulation bears for minutes and for seconds, in °C (for PVC the class and 160, for cross-linked 250).
   * Where given, the wire is held against the longest time that the fuse may take at every current.
   */
  readonly wireLimits?: { readonly overloadTempC: number; readonly shortTempC: number };
}

/** A device upstream that is there already, with the current at which it is sure to act. */
export interface UpstreamProtection {
  readonly kind: 'upstream';
  /** What it is. */
  readonly name: string;
  /** Largest current in A that it may let through for good: for a blade fuse 1.35 times its rating. Above 0. */
  readonly mayCarryA: number;
}

/** No protection, and why that is allowed. The answer repeats it. */
export interface NoProtection {
  readonly kind: 'none';
  readonly because: string;
}

/** What protects a wire. There is no default: an unfused wire is said aloud. */
export type Protection = FuseProtection | UpstreamProtection | NoProtection;

/** Throws unless the protection is whole. `chooseFuse` judges the rest of its fields. */
export function needProtection(fn: string, protection: Protection): void {
  const none = "{ kind: 'none', because: '…' } where there is none";
  needObject(fn, 'protection', protection, 'must be an object with a kind', none);
  needOneOf(fn, 'protection.kind', protection.kind, ['fuse', 'upstream', 'none']);
  if (protection.kind === 'none') needText(fn, 'protection.because', protection.because);
  else if (protection.kind === 'upstream') {
    needText(fn, 'protection.name', protection.name);
    needAbove(fn, 'protection.mayCarryA', protection.mayCarryA);
  } else {
    needFunction(fn, 'protection.by', protection.by, 'chooseFuse');
    needAbove(fn, 'protection.shortSupplyV', protection.shortSupplyV);
    needAtLeast(fn, 'protection.sourceResistanceOhm', protection.sourceResistanceOhm);
  }
}

/** Throws unless the heating is whole; its rule judges its own fields. */
export function needHeating(fn: string, heating: Heating): void {
  needObject(fn, 'heating', heating, 'must be an object with a rule (by)');
  needFunction(fn, 'heating.by', heating.by, 'heatingByTable or heatingByBalance');
  needBetween(fn, 'heating.insulationTempC', heating.insulationTempC, 40, 300, 'no class of wire is there');
  needBetween(fn, 'heating.ambientTempC', heating.ambientTempC, -60, 200);
}
