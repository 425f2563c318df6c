import { InputError } from '../error/index.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { AmpacityInput } from './ampacity.js';
import { needMaxConductorTempC, needWireInAir } from './wire-in-air.js';

/** What one rule says. */
export interface RuleFactor<Rule extends string> {
  readonly rule: Rule;
  /** Factor on the current of a single wire, or null where `reason` says why the rule has none. */
  readonly factor: number | null;
  /** `beyond-table`, `no-wire-given` (the rule `heat` needs one), or `air-at-limit` (the wire bears nothing at all). */
  readonly reason: 'beyond-table' | 'no-wire-given' | 'air-at-limit' | null;
  readonly source: SourceKey;
  readonly sourceStatus: SourceStatus;
}

/** The least and the most of the rules that have a number. */
export function range(rules: readonly RuleFactor<string>[]): { minFactor: number | null; maxFactor: number | null } {
  const factors = rules.flatMap(({ factor }) => (factor === null ? [] : [factor]));
  if (factors.length === 0) return { minFactor: null, maxFactor: null };
  return { minFactor: Math.min(...factors), maxFactor: Math.max(...factors) };
}

/** The wire of a rule must be whole. */
export function needWire(fn: string, wire: AmpacityInput | undefined): void {
  if (typeof wire !== 'object' || wire === null || Array.isArray(wire)) {
    const rule = wire === undefined ? 'missing' : 'object';
    throw new InputError(fn, 'wire', rule, wire, 'must be a wire: an object with named fields');
  }
  needWireInAir(fn, wire, 'wire.');
  needMaxConductorTempC(fn, wire.maxConductorTempC, wire.ambientTempC, 'wire.');
}
