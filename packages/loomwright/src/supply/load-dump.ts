import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needList, needObject, needOneOf, needText } from '../error/guard.js';
import type { LoadDumpTable } from '../table/index.js';

/** A load that stays on the alternator when its battery goes. */
export interface DumpLoad {
  readonly name: string;
  /** Resistance in Ω, above 0; null for electronics that take next to nothing. */
  readonly resistanceOhm: number | null;
  /** Most volts that it stands for so long, above 0. */
  readonly standsV: number;
}

/** The pulse: by the alternator and a standard's ranges, or as it is given. */
export type DumpPulse =
  | {
      readonly kind: 'alternator';
      readonly table: LoadDumpTable;
      /** Current in A at 6000 rpm of the rotor, above 0, and the speed of the rotor in rpm at which the battery goes. */
      readonly ratedA: number;
      readonly rotorRpm: number;
      /** `central`: suppressed in the alternator itself, by its diodes. */
      readonly suppression: 'none' | 'central';
      /** Length in s, from a tenth on the way up to a tenth on the way down, above 0. */
      readonly durationS: number;
    }
  | {
      readonly kind: 'given';
      /** Volts before it, peak with nothing connected, Ω behind it, length in s; above 0. */
      readonly supplyV: number;
      readonly openPeakV: number;
      readonly sourceOhm: number;
      readonly durationS: number;
    };

/** A suppressor between the feed and ground. */
export interface DumpSuppressor {
  /** Volts at which it begins to conduct, above those of the supply, and its resistance from there in Ω, at least 0. */
  readonly clampV: number;
  readonly dynamicOhm: number;
  /** Most current in A and most energy of one pulse in J, above 0. */
  readonly mostA: number;
  readonly mostJ: number;
}

export interface LoadDumpInput {
  readonly pulse: DumpPulse;
  readonly loads: readonly DumpLoad[];
  readonly suppressor: DumpSuppressor | null;
  /** Volts that may stand for a minute, as when jumped from 24 V: a suppressor must not conduct below. Above 0. */
  readonly standingV: number;
}

export interface LoadDumpResult {
  /** Resistance behind the pulse in Ω, and whether it lies in the standard's range; null for a given pulse. */
  readonly sourceOhm: number;
  readonly inRange: boolean | null;
  /** Peak with nothing connected, and all loads side by side in Ω; null without any. */
  readonly openPeakV: number;
  readonly loadsOhm: number | null;
  /** Peak at the loads without a suppressor, and with it. */
  readonly peakV: number;
  readonly clampedV: number;
  /** What the suppressor has to take: current in A, energy in J, and for how long in s; null without one. */
  readonly suppressorA: number | null;
  readonly suppressorJ: number | null;
  readonly conductsS: number | null;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

interface Pulse {
  readonly supplyV: number;
  readonly openPeakV: number;
  readonly sourceOhm: number;
  readonly durationS: number;
  /** Volts above which the alternator's own diodes take it; null without them. */
  readonly ownV: number | null;
  readonly inRange: boolean | null;
}

/**
 * The pulse of an alternator that loses its battery while it charges: its peak at what stays connected, and what a
 * suppressor has to take.
 *
 * The ranges are those of a standard's test. Its rule for the resistance behind the pulse is from the rating and the
 * speed; high volts go with high resistance, which is taken as a straight line between the ends. Loads that stay on
 * divide the peak; electronics alone do not.
 *
 * $$R_i = \frac{10\,U_\mathrm{nom}\,N}{0.8\,I_\mathrm{rated}\cdot 12000} \qquad
 * u(t) = U_A + (U_S - U_A)\,10^{-t/t_d} \qquad V = u\,\frac{R_L}{R_L + R_i}$$
 *
 * $$E = \int V_c\,i + r\,i^2 \,dt \qquad i = \frac{u R_L/(R_L+R_i) - V_c}{r + R_i R_L/(R_L+R_i)}$$
 *
 * $U_\mathrm{nom}$ is 14 or 28 V. The rise is taken as sudden: what it would take off is left as a margin.
 *
 * @param input pulse, loads left on, suppressor, volts that may stand
 * @returns resistance, peaks, what the suppressor takes, a check a load
 * @throws InputError when a field is missing or out of range
 * Valid for one pulse in a minute. Where the alternator suppresses it itself, a suppressor below its volts shares the
 * pulse with it, and what is reckoned is as if it had to take all.
 * @source iso-16750-2; circuit-theory
 * @example loadDump({ pulse: { kind: 'alternator', table: loadDump12V, ratedA: 100, rotorRpm: 6000, suppression: 'none', durationS: 0.2 }, loads: [], suppressor: null, standingV: 24 }).sourceOhm //=> 0.875
 */
export function loadDump(input: LoadDumpInput): LoadDumpResult {
  const pulse = guard(input);
  const { supplyV, openPeakV, sourceOhm, ownV } = pulse;
  const { loads, suppressor } = input;
  const siemens = loads.reduce((sum, { resistanceOhm }) => sum + (resistanceOhm === null ? 0 : 1 / resistanceOhm), 0);
  const loadsOhm = siemens === 0 ? null : 1 / siemens;
  const share = 1 / (1 + sourceOhm * siemens);
  const dividedV = Math.max(openPeakV * share, supplyV);
  const peakV = ownV === null ? dividedV : Math.min(dividedV, ownV);
  const taken =
    suppressor === null
      ? null
      : ownV !== null && suppressor.clampV >= ownV
        ? NOTHING
        : absorbed(pulse, share, suppressor);
  const clampedV =
    suppressor === null || taken === null || taken.currentA === 0
      ? peakV
      : Math.min(peakV, suppressor.clampV + suppressor.dynamicOhm * taken.currentA);
  const found = {
    sourceOhm,
    inRange: pulse.inRange,
    openPeakV,
    loadsOhm,
    peakV,
    clampedV,
    suppressorA: taken === null ? null : taken.currentA,
    suppressorJ: taken === null ? null : taken.energyJ,
    conductsS: taken === null ? null : taken.timeS,
  };
  const checks = checksOf(input, found);
  return { ...found, checks, decidedBy: tightestCheck(checks)?.name ?? '' };
}

interface Absorbed {
  readonly currentA: number;
  readonly energyJ: number;
  readonly timeS: number;
}

const NOTHING: Absorbed = { currentA: 0, energyJ: 0, timeS: 0 };

/** Current at first, energy and time of a suppressor: i = (a + b e^(−kt)) / R until it is 0. */
function absorbed(
  { supplyV, openPeakV, sourceOhm, durationS }: Pulse,
  share: number,
  { clampV, dynamicOhm }: DumpSuppressor,
): Absorbed {
  const a = supplyV * share - clampV;
  const b = (openPeakV - supplyV) * share;
  if (a + b <= 0) return NOTHING;
  const ohm = sourceOhm * share + dynamicOhm;
  const k = Math.LN10 / durationS;
  const left = -a / b;
  const timeS = -Math.log(left) / k;
  const charge = (a * timeS + (b * (1 - left)) / k) / ohm;
  const squared = (a * a * timeS + (2 * a * b * (1 - left)) / k + (b * b * (1 - left * left)) / (2 * k)) / (ohm * ohm);
  return { currentA: (a + b) / ohm, energyJ: clampV * charge + dynamicOhm * squared, timeS };
}

function guard(input: LoadDumpInput): Pulse {
  const fn = 'loadDump';
  needInput(fn, input);
  const { loads, suppressor } = input;
  const pulse = pulseOf(fn, input.pulse);
  needList(fn, 'loads', loads);
  loads.forEach((load, i) => {
    const at = `loads[${i}]`;
    needObject(fn, at, load);
    needText(fn, `${at}.name`, load.name);
    if (load.resistanceOhm !== null) needMoreThan(fn, `${at}.resistanceOhm`, load.resistanceOhm);
    needMoreThan(fn, `${at}.standsV`, load.standsV);
  });
  if (suppressor !== null) {
    needObject(fn, 'suppressor', suppressor);
    needMoreThan(fn, 'suppressor.clampV', suppressor.clampV, pulse.supplyV);
    needNoLessThan(fn, 'suppressor.dynamicOhm', suppressor.dynamicOhm);
    needMoreThan(fn, 'suppressor.mostA', suppressor.mostA);
    needMoreThan(fn, 'suppressor.mostJ', suppressor.mostJ);
  }
  needMoreThan(fn, 'standingV', input.standingV);
  return pulse;
}

function pulseOf(fn: string, pulse: DumpPulse): Pulse {
  needObject(fn, 'pulse', pulse);
  needOneOf(fn, 'pulse.kind', pulse.kind, ['alternator', 'given']);
  needMoreThan(fn, 'pulse.durationS', pulse.durationS);
  if (pulse.kind === 'given') {
    needMoreThan(fn, 'pulse.supplyV', pulse.supplyV);
    needMoreThan(fn, 'pulse.openPeakV', pulse.openPeakV, pulse.supplyV);
    needMoreThan(fn, 'pulse.sourceOhm', pulse.sourceOhm);
    return { ...pulse, ownV: null, inRange: null };
  }
  const { table, ratedA, rotorRpm, suppression, durationS } = pulse;
  if (table?.openPeaksV?.length !== 2 || table.sourcesOhm?.length !== 2) {
    const rule = table === undefined ? 'missing' : 'object';
    throw new InputError(
      fn,
      'pulse.table',
      rule,
      table,
      'must be a table of load dumps',
      'import one, such as loadDump12V',
    );
  }
  needMoreThan(fn, 'pulse.ratedA', ratedA);
  needMoreThan(fn, 'pulse.rotorRpm', rotorRpm);
  needBetween(fn, 'pulse.rotorRpm', rotorRpm, 0, 30_000);
  needOneOf(fn, 'pulse.suppression', suppression, ['none', 'central']);
  const { supplyV, openPeaksV, sourcesOhm, suppressedV } = table;
  const sourceOhm = (10 * supplyV * rotorRpm) / (0.8 * ratedA * 12_000);
  const [leastOhm, mostOhm] = sourcesOhm;
  const along = Math.min(Math.max((sourceOhm - leastOhm) / (mostOhm - leastOhm), 0), 1);
  return {
    supplyV,
    openPeakV: openPeaksV[0] + (openPeaksV[1] - openPeaksV[0]) * along,
    sourceOhm,
    durationS,
    ownV: suppression === 'central' ? suppressedV : null,
    inRange: sourceOhm >= leastOhm && sourceOhm <= mostOhm,
  };
}

function checksOf(
  { loads, suppressor, standingV }: LoadDumpInput,
  found: Omit<LoadDumpResult, 'checks' | 'decidedBy'>,
): Check[] {
  const given = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks = loads.map(({ name, standsV }) =>
    makeCheck({
      ...given,
      name: `volts at ${name}`,
      value: found.clampedV,
      limit: standsV,
      unit: 'V',
      sense: 'atMost',
    }),
  );
  if (suppressor !== null) {
    const { clampV, mostA, mostJ } = suppressor;
    const { suppressorA, suppressorJ } = found;
    checks.push(
      makeCheck({
        ...given,
        name: 'current of the suppressor',
        value: suppressorA,
        limit: mostA,
        unit: 'A',
        sense: 'atMost',
      }),
      makeCheck({
        ...given,
        name: 'energy of the suppressor',
        value: suppressorJ,
        limit: mostJ,
        unit: 'J',
        sense: 'atMost',
      }),
      makeCheck({
        ...given,
        name: 'suppressor is quiet at volts that may stand',
        value: clampV,
        limit: standingV,
        unit: 'V',
        sense: 'atLeast',
      }),
    );
  }
  return checks;
}
