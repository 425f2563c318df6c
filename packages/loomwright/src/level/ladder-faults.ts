import type { LadderStep } from './ladder-sender.js';

/** What the input makes of one true step while a fault is there. */
export interface LadderReading {
  /** Ω between the leads; null where that is open, or on the battery. */
  readonly senderOhm: number | null;
  /** The step that is read, counted from 0 at empty; null where the reading itself tells of a fault. */
  readonly readIndex: number | null;
  readonly code: 'step' | 'open' | 'short';
}

/** One thing that breaks. */
export interface LadderFault {
  readonly kind:
    | 'contact-dead'
    | 'contact-stuck'
    | 'resistor-open'
    | 'resistor-shorted'
    | 'wire-open'
    | 'wire-to-ground'
    | 'wire-to-battery';
  /**
   * Which contact, counted from 0 at empty; or which resistor, counted from 0 at the end of the chain that every
   * contact's current passes. Null for the wire.
   */
  readonly partIndex: number | null;
  /** One a true step, from empty to full. */
  readonly readings: readonly LadderReading[];
  /** Most litres shown that are not there, and most that are there and not shown, at the steps that read wrongly. */
  readonly mostOverL: number;
  readonly mostUnderL: number;
  /** Whether the reading tells of the fault: at every level, at some, or at none. `harmless` changes no reading. */
  readonly seen: 'always' | 'sometimes' | 'never' | 'harmless';
}

interface Ladder {
  readonly stepOhm: readonly number[];
  readonly idleOhm: number | null;
  readonly steps: readonly LadderStep[];
  readonly read: (senderOhm: number | null) => number | 'open' | 'short';
}

/** Every single fault of contacts, chain and wire. */
export function ladderFaults(ladder: Ladder): readonly LadderFault[] {
  const { stepOhm, idleOhm } = ladder;
  const order = [...stepOhm].sort((a, b) => a - b);
  const add = (
    kind: LadderFault['kind'],
    partIndex: number | null,
    ohmOf: (ohm: number, i: number) => number | null,
  ): LadderFault => judge(ladder, kind, partIndex, stepOhm.map(ohmOf));
  const each = stepOhm.map((_, i) => i);
  return [
    ...each.map((k) => add('contact-dead', k, (ohm, i) => (i === k ? idleOhm : ohm))),
    ...each.map((k) => add('contact-stuck', k, (ohm) => Math.min(ohm, stepOhm[k] as number))),
    ...each.map((k) => add('resistor-open', k, (ohm) => (ohm >= (order[k] as number) ? null : ohm))),
    ...each.map((k) => {
      const gone = (order[k] as number) - (k === 0 ? 0 : (order[k - 1] as number));
      return add('resistor-shorted', k, (ohm) => (ohm >= (order[k] as number) ? ohm - gone : ohm));
    }),
    add('wire-open', null, () => null),
    add('wire-to-ground', null, () => 0),
    // Volts of the battery on the pin lie above everything that the sender can give, as an open wire's do.
    add('wire-to-battery', null, () => null),
  ];
}

function judge(
  { stepOhm, steps, read }: Ladder,
  kind: LadderFault['kind'],
  partIndex: number | null,
  seenOhm: readonly (number | null)[],
): LadderFault {
  let mostOverL = 0;
  let mostUnderL = 0;
  const readings = seenOhm.map((senderOhm, i): LadderReading => {
    const code = read(senderOhm);
    if (typeof code === 'string') return { senderOhm, readIndex: null, code };
    if (senderOhm === stepOhm[i]) return { senderOhm, readIndex: code, code: 'step' };
    const shownL = (steps[code] as LadderStep).bestL;
    mostOverL = Math.max(mostOverL, shownL - (steps[i] as LadderStep).fromL);
    mostUnderL = Math.max(mostUnderL, (steps[i] as LadderStep).toL - shownL);
    return { senderOhm, readIndex: code, code: 'step' };
  });
  const changed = readings.map((reading, i) => reading.senderOhm !== stepOhm[i]);
  const hidden = readings.filter((reading, i) => changed[i] === true && reading.readIndex !== null).length;
  const told = readings.filter((reading) => reading.readIndex === null).length;
  const seen =
    told === 0 && hidden === 0 ? 'harmless' : told === readings.length ? 'always' : told > 0 ? 'sometimes' : 'never';
  return { kind, partIndex, readings, mostOverL, mostUnderL, seen };
}
