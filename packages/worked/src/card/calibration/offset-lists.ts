import { type GroundPiece, type OffsetLoad, type OffsetScale, type OffsetSensor, sensorGroundBudget } from 'loomwright';
import { signedEntriesOf, unread } from '../entries.js';

// Grounds, loads and sensors as people write them: entries parted by semicolons, each with its name first.

const NUMBER = String.raw`([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)`;

/** `engine strap: engine > post, 0.5 mΩ; …`: pieces of the grounds. */
export function piecesText(fn: string, field: string, text: string): GroundPiece[] {
  return signedEntriesOf(text).map((entry) => {
    const match = new RegExp(`^([^:]+):([^>,]+)>([^>,]+),\\s*${NUMBER}\\s*(m?)(?:Ω|ohm)$`).exec(entry);
    if (match === null) throw unread(fn, field, entry, 'engine strap: engine > post, 0.5 mΩ');
    const [, name = '', from = '', to = '', ohm, milli] = match;
    const resistanceOhm = milli === 'm' ? Number(ohm) / 1000 : Number(ohm);
    return { name: name.trim(), from: from.trim(), to: to.trim(), resistanceOhm };
  });
}

/** `fan: nose, 22 A; alternator: engine, -90 A`: where a load's current comes back, and how much. */
export function offsetLoadsText(fn: string, field: string, text: string): OffsetLoad[] {
  return signedEntriesOf(text).map((entry) => {
    const match = new RegExp(`^([^:]+):([^,]+),\\s*${NUMBER}\\s*A$`).exec(entry);
    if (match === null) throw unread(fn, field, entry, 'fan: nose, 22 A');
    const [, name = '', returnsAt = '', amps] = match;
    return { name: name.trim(), returnsAt: returnsAt.trim(), currentA: Number(amps) };
  });
}

const SENSOR = 'oil pressure: engine > dash, body, ratiometric, 2 V, 2.5 bar/V, ground budget, 0.1 bar';

/**
 * `oil pressure: engine > dash, body, ratiometric, 2 V, 2.5 bar/V, ground budget, 0.1 bar`: where its ground is and
 * where its controller's, what the ground is, how it reads, its volts, its slope or its points (`points 0.5=110 4=10 °C`),
 * and what it is judged by: the budget of a sensor's ground, mV, or its own unit.
 */
export function offsetSensorsText(fn: string, field: string, text: string): OffsetSensor[] {
  return signedEntriesOf(text).map((entry) => {
    const bad = (): Error => unread(fn, field, entry, SENSOR);
    const head = /^([^:]+):([^>,]+)>([^>,]+),\s*(wire|body)\s*,\s*([a-z-]+)\s*,(.+)$/.exec(entry);
    if (head === null) throw bad();
    const [, name = '', groundAt = '', controllerAt = '', groundedBy, reads, rest = ''] = head;
    const [volts = '', ...clauses] = rest.split(',').map((part) => part.trim());
    const inputV = quantity(volts, 'V');
    if (inputV === null) throw bad();
    const sensor = {
      name: name.trim(),
      groundAt: groundAt.trim(),
      controllerAt: controllerAt.trim(),
      groundedBy: groundedBy as OffsetSensor['groundedBy'],
      reads: reads as OffsetSensor['reads'],
      inputV,
    };
    return clauses.reduce<OffsetSensor>((made, clause) => {
      if (clause === 'ground budget') return { ...made, budget: sensorGroundBudget };
      const scaled = scaleOf(clause);
      if (scaled !== null) return { ...made, ...scaled };
      const permittedMv = quantity(clause, 'mV');
      if (permittedMv !== null) return { ...made, permittedMv };
      const permittedValue = made.unit === undefined ? null : quantity(clause, made.unit);
      if (permittedValue === null) throw bad();
      return { ...made, permittedValue };
    }, sensor);
  });
}

/** The number before a unit, or null where the text is something else. */
function quantity(text: string, unit: string): number | null {
  const match = new RegExp(`^${NUMBER}\\s*(.*)$`).exec(text);
  return match === null || match[2] !== unit ? null : Number(match[1]);
}

function scaleOf(clause: string): { readonly scale: OffsetScale; readonly unit: string } | null {
  const slope = new RegExp(`^${NUMBER}\\s*([^/\\s]+)\\s*/\\s*V$`).exec(clause);
  if (slope !== null) return { scale: { kind: 'slope', valuePerV: Number(slope[1]) }, unit: slope[2] as string };
  const points = new RegExp(`^points((?:\\s+${NUMBER}=${NUMBER})+)\\s*(\\S*)$`).exec(clause);
  if (points === null) return null;
  const cells = (points[1] as string)
    .trim()
    .split(/\s+/)
    .map((point) => {
      const [inValue, outValue] = point.split('=').map(Number) as [number, number];
      return { inValue, outValue };
    });
  return { scale: { kind: 'points', cells }, unit: points.at(-1) as string };
}
