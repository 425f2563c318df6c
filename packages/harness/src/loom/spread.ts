import { resistivity } from 'loomwright';
import type { PathElement, PlannedWay } from './plan-type.js';

/** What a part may have as built, healthy: from the least to the most, in Ω. */
export interface Spread {
  readonly leastOhm: number;
  readonly mostOhm: number;
}

/**
 * What the spread of each kind rests on, for people: the plan's own figure is the middle of a contact's spread and the
 * upper end of a wire's.
 */
export const SPREAD_BASIS: readonly string[] = [
  'Wires: from ideal copper at 20 °C to the figure of the plan, which is that of the named wire table with the wire hot.',
  'Fuses: from 15 % below the typical cold resistance to 15 % above the typical hot one (common practice).',
  'Contacts, terminals, joints, relays, switches and outputs: from a quarter of the figure in the file to one and a half times (common practice).',
  'Body and ways not laid for current: from a half of the figure in the file to one and a half times (common practice).',
  'Loads: current within 10 % of the file (common practice).',
];

/** Share by which the current of a load may differ from the file (common practice). */
export const LOAD_SPREAD = 0.1;

const FUSE = 0.15;
// Copper at 45 °C against 20 °C.
const WARM = 1.1;
const CONTACT: readonly [number, number] = [0.25, 1.5];
const BODY: readonly [number, number] = [0.5, 1.5];

/** Spread of one thing in a path. A wire is given with its length and area. */
export function spreadOfElement(
  { kind, resistanceOhm, coldOhm }: PathElement,
  wire: { readonly lengthM: number; readonly areaMm2: number | null } | null,
): Spread {
  if (kind === 'wire') {
    const { areaMm2 = null, lengthM = 0 } = wire ?? {};
    const { resistivity20OhmMm2PerM } = resistivity({ conductorTempC: 20 });
    const idealOhm = areaMm2 === null || areaMm2 <= 0 ? resistanceOhm : (resistivity20OhmMm2PerM * lengthM) / areaMm2;
    return { leastOhm: Math.min(idealOhm, coldOhm ?? idealOhm, resistanceOhm), mostOhm: resistanceOhm };
  }
  if (kind === 'fuse') {
    const cold = coldOhm ?? resistanceOhm;
    return {
      leastOhm: Math.min(cold, resistanceOhm) * (1 - FUSE),
      mostOhm: Math.max(cold, resistanceOhm) * (1 + FUSE),
    };
  }
  const [least, most] = kind === 'body' ? BODY : CONTACT;
  return { leastOhm: least * resistanceOhm, mostOhm: most * resistanceOhm };
}

/** The same on a dead circuit, from 20 °C to a warm shed. */
export function coldSpreadOf(one: PathElement, wire: Parameters<typeof spreadOfElement>[1]): Spread {
  const { leastOhm, mostOhm } = spreadOfElement(one, wire);
  if (one.coldOhm === null) return { leastOhm, mostOhm };
  if (one.kind === 'wire') return { leastOhm, mostOhm: one.coldOhm * WARM };
  return one.kind === 'fuse' ? { leastOhm, mostOhm: one.coldOhm * (1 + FUSE) } : { leastOhm, mostOhm };
}

/** Spread of a way of the grounds that is no circuit. */
export function spreadOfWay({ kind, resistanceOhm }: Pick<PlannedWay, 'kind' | 'resistanceOhm'>): Spread {
  const [least, most] = kind === 'joint' ? CONTACT : BODY;
  return { leastOhm: least * resistanceOhm, mostOhm: most * resistanceOhm };
}
