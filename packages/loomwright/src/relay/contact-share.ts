import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needInput, needList, needObject, needText } from '../error/guard.js';

/** One of several contacts side by side. */
export interface ParallelContact {
  readonly name: string;
  /** Resistance of the contact with its own terminals and wires, in Ω, above 0. */
  readonly resistanceOhm: number;
  /** What it may carry, in A, above 0: judged where given. */
  readonly ratedA?: number;
  /** What it may close on or break, in A, above 0: judged against the whole current where given. */
  readonly switchA?: number;
}

export interface ContactShareInput {
  /** Current of all together in A, above 0. */
  readonly currentA: number;
  /** Two contacts or more. */
  readonly contacts: readonly ParallelContact[];
}

/** What one contact carries. */
export interface ContactPart {
  readonly name: string;
  readonly currentA: number;
  readonly currentFraction: number;
  /** Heat in it, in W. */
  readonly lossW: number;
}

export interface ContactShareResult {
  readonly parts: readonly ContactPart[];
  /** Resistance of all together in Ω, volts lost, heat in W. */
  readonly resistanceOhm: number;
  readonly dropV: number;
  readonly lossW: number;
  /** Largest current of one over an even share. */
  readonly unevenRatio: number;
  /** What the first to close and the last to open switches: all of it, in A. */
  readonly aloneA: number;
  readonly checks: readonly Check[];
  readonly decidedBy: string | null;
}

/**
 * How contacts side by side share a current: by their conductances, not evenly.
 *
 * Use it before two relays are put in parallel for more current. A few milliohms decide who carries what, they change
 * with every switching, and they never close at the same moment: for a moment one has it all.
 *
 * $$I_k = I \frac{1 / R_k}{\sum_j 1 / R_j}$$
 *
 * @param input the current, and each contact with its wires
 * @returns current and heat of each, volts lost, what one alone must switch, checks
 * @throws InputError when a field is missing or out of range, or there are fewer than two contacts
 * @source circuit-theory
 * @example contactShare({ currentA: 60, contacts: [{ name: 'A', resistanceOhm: 0.002 }, { name: 'B', resistanceOhm: 0.006 }] }).parts[0].currentA //=> 45
 */
export function contactShare(input: ContactShareInput): ContactShareResult {
  const fn = 'contactShare';
  needInput(fn, input);
  const { currentA, contacts } = input;
  needMoreThan(fn, 'currentA', currentA);
  needList(fn, 'contacts', contacts, 2);
  contacts.forEach((contact, i) => {
    needObject(fn, `contacts[${i}]`, contact);
    needText(fn, `contacts[${i}].name`, contact.name);
    needMoreThan(fn, `contacts[${i}].resistanceOhm`, contact.resistanceOhm);
    if (contact.ratedA !== undefined) needMoreThan(fn, `contacts[${i}].ratedA`, contact.ratedA);
    if (contact.switchA !== undefined) needMoreThan(fn, `contacts[${i}].switchA`, contact.switchA);
  });
  // Through ratios of resistances rather than their sum of conductances: round shares stay round.
  const shareOf = (ohm: number): number => 1 / contacts.reduce((sum, other) => sum + ohm / other.resistanceOhm, 0);
  const parts = contacts.map(({ name, resistanceOhm }) => ({
    name,
    currentA: currentA * shareOf(resistanceOhm),
    currentFraction: shareOf(resistanceOhm),
    lossW: (currentA * shareOf(resistanceOhm)) ** 2 * resistanceOhm,
  }));
  const [first] = contacts as readonly [ParallelContact];
  const dropV = currentA * shareOf(first.resistanceOhm) * first.resistanceOhm;
  const given = { unit: 'A', sense: 'atMost', source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks: Check[] = [];
  contacts.forEach(({ name, ratedA, switchA }, i) => {
    const value = (parts[i] as ContactPart).currentA;
    if (ratedA !== undefined) checks.push(makeCheck({ ...given, name: `${name} carries`, value, limit: ratedA }));
    if (switchA !== undefined) {
      checks.push(makeCheck({ ...given, name: `${name} switches it all alone`, value: currentA, limit: switchA }));
    }
  });
  return {
    parts,
    resistanceOhm: dropV / currentA,
    dropV,
    lossW: dropV * currentA,
    unevenRatio: Math.max(...parts.map((part) => part.currentFraction)) * contacts.length,
    aloneA: currentA,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? null,
  };
}
