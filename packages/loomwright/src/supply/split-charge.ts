import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { batteryAt, lineV } from './split-battery.js';
import { type SplitChargeInput, splitCircuit, type SplitCircuit } from './split-charge-input.js';
import { fillOf, type SplitFill, timeToCharge } from './split-fill.js';
import { solveSplit, type SplitPoints, type SplitState } from './split-solve.js';

export type { SplitBattery } from './split-battery.js';
export type { SplitAlternator, SplitCable, SplitChargeInput, SplitLink } from './split-charge-input.js';
export type { ConverterMode } from './split-converter.js';
export type { SplitFill } from './split-fill.js';
export type { SplitState } from './split-solve.js';

/** The starter pulls on both batteries, or on its own alone. */
export interface SplitCranking {
  /** Posts of the starter battery by itself, and with the link as it is. */
  readonly aloneV: number;
  readonly starterV: number;
  readonly serviceV: number;
  /** Current that comes back from the service battery through its cable in A, below 0 where it takes some. */
  readonly reverseA: number;
}

/** A fuse at one end of the service cable. */
export interface SplitFuse {
  readonly end: 'feed' | 'service-battery';
  /** Least rating in A: what flows for long is at most three quarters of it. */
  readonly leastRatingA: number;
  /** Short circuit right behind it, and at the far end of the cable, from the battery at this end alone, full. */
  readonly shortA: number;
  readonly farShortA: number;
}

export interface SplitCharge {
  readonly possible: true;
  /** As the drive begins, with both batteries at their charge. */
  readonly now: SplitState;
  /** After a long drive, with nothing left to charge; null where the loads are more than is given. */
  readonly end: SplitState | null;
  /** Charge at which the service battery stays, and whether that is full; null likewise. */
  readonly endChargeFraction: number | null;
  readonly canBeFull: boolean;
  /** Volts at the service battery in the end less what fills it; null likewise. */
  readonly sparedV: number | null;
  /** Hours to the charge wanted; null where it never gets there. */
  readonly chargeTimeH: number | null;
  readonly chargeTimeReason: 'never' | null;
  /** Charge of the service battery after the drive, and the way there. */
  readonly drivenChargeFraction: number;
  readonly fill: readonly SplitFill[];
  /** The moment in which the link closes, before the service battery has taken charge; null for a converter. */
  readonly rush: SplitState | null;
  readonly cranking: SplitCranking | null;
  /** Most current of the service cable over the drive, or what a converter draws at its least volts. */
  readonly continuousA: number;
  /** Resistance of the service cable, out and back with its joints, and of that from the alternator. */
  readonly serviceOhm: number;
  readonly mainOhm: number;
  readonly fuses: readonly [SplitFuse, SplitFuse];
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

export type SplitChargeResult = SplitCharge | NotPossible<SplitCharge>;

/** Charges that differ by less are the same. */
const NEAR = 1e-6;
const FUSE_SHARE = 0.75;

/**
 * A second battery charged through a relay, a diode or a d.c. converter: volts and amperes at both, whether it is ever
 * full, how long that takes, and what its cable has to bear.
 *
 * Each battery has two straight lines over its charge $s$: volts below which it gives current, and volts above which it
 * takes some; between them there is none. A diode costs the same volts to the last, so that the charge stays short of
 * full; a cable costs nothing in the end, only time.
 *
 * $$I = \frac{V - V_d - V_c(s)}{R_\mathrm{cable} + R_B} \qquad V_c(s) = V_0 + (V_1 - V_0)\,s \qquad
 * \dot s = \eta\,\frac{I}{Q} \qquad s_\mathrm{end} = \frac{V - V_d - V_0}{V_1 - V_0}$$
 *
 * The rush is reckoned from the line at rest, because that of charging builds up only in seconds to minutes.
 *
 * @param input alternator, both batteries, loads, cables, link, charge wanted, hours of driving, starter current, fuse
 * @returns the circuit now, in the end, at the moment of closing and while cranking; charge over time; fuses; checks; or
 * not possible, because the loads pull all volts down
 * @throws InputError when a field is missing or out of range; ConvergenceError where the drive cannot be followed
 * Valid for one temperature; real lead takes its last tenth more slowly than a straight line has it.
 * @source circuit-theory; charge-line (straight lines of volts by charge); common-practice (three quarters of a fuse)
 * @example splitCharge({ alternator: { heldV: 14.4, mostA: 60, senseAt: 'starter-battery' }, starter: { chargeAh: 60, chargeFraction: 1, resistanceOhm: 0.01, emptyV: 11.8, restFullV: 12.7, chargeFullV: 14.4, mostV: 14.8, chargeEfficiency: 0.85, acceptanceA: null }, service: { chargeAh: 100, chargeFraction: 0.5, resistanceOhm: 0.01, emptyV: 11.8, restFullV: 12.7, chargeFullV: 14.4, mostV: 14.8, chargeEfficiency: 0.85, acceptanceA: null }, starterLoadA: 0, serviceLoadA: 0, mainCable: { areaMm2: 25, outLengthM: 1, returnLengthM: 1, jointOhm: 0 }, serviceCable: { areaMm2: 16, outLengthM: 4, returnLengthM: 4, jointOhm: 0 }, resistanceBasis: geometric, conductorTempC: 20, link: { kind: 'diode', thresholdV: 0.65, diodeOhm: 0, ratedA: 100 }, wantedChargeFraction: 0.8, driveTimeH: 2, crankingA: null, fuseRatingA: null }).endChargeFraction //=> 0.75
 */
export function splitCharge(input: SplitChargeInput): SplitChargeResult {
  const circuit = splitCircuit('splitCharge', input);
  const { starter, service } = circuit;
  const points = {
    starter: batteryAt(starter, starter.chargeFraction),
    service: batteryAt(service, service.chargeFraction),
  };
  const now = solveSplit(circuit, points);
  if (now === null || now.serviceV <= 0 || now.starterV <= 0) {
    const because = 'the loads are more than both batteries and the alternator can give: all volts fall to nothing';
    return { possible: false, code: 'collapses', because, nearest: null };
  }
  const end = endOf(circuit);
  const { emptyV, chargeFullV } = service;
  const endChargeFraction =
    end === null ? null : Math.min(Math.max((end.serviceV - emptyV) / (chargeFullV - emptyV), 0), 1);
  const wanted = input.wantedChargeFraction;
  const reached = service.chargeFraction >= wanted || (endChargeFraction !== null && endChargeFraction > wanted - NEAR);
  const chargeTimeH = reached ? timeToCharge(circuit, wanted) : null;
  const fill = fillOf(circuit);
  const rush = rushOf(circuit, points);
  const cranking = crankingOf(circuit);
  const continuousA = continuousOf(circuit, fill);
  const found = {
    now,
    end,
    endChargeFraction,
    canBeFull: end !== null && end.serviceV >= chargeFullV - NEAR,
    sparedV: end === null ? null : end.serviceV - chargeFullV,
    chargeTimeH,
    chargeTimeReason: chargeTimeH === null ? ('never' as const) : null,
    drivenChargeFraction: (fill.at(-1) as SplitFill).serviceChargeFraction,
    fill,
    rush,
    cranking,
    continuousA,
    serviceOhm: circuit.serviceOhm,
    mainOhm: circuit.mainOhm,
    fuses: fusesOf(circuit, continuousA),
  };
  const checks = checksOf(circuit, found);
  return { possible: true, ...found, checks, decidedBy: tightestCheck(checks)?.name ?? '' };
}

type Found = Omit<SplitCharge, 'possible' | 'checks' | 'decidedBy'>;

/** Both batteries with all that they take: what is left are the loads. */
function endOf(circuit: SplitCircuit): SplitState | null {
  const full = { starter: batteryAt(circuit.starter, 1), service: batteryAt(circuit.service, 1) };
  const found = solveSplit(circuit, full);
  return found === null || found.starterA < -NEAR || found.serviceA < -NEAR ? null : found;
}

/** The moment of closing: the starter battery at the volts that it has come to, the service battery at rest. */
function rushOf(circuit: SplitCircuit, { starter, service }: SplitPoints): SplitState | null {
  if (circuit.link.kind === 'converter') return null;
  const before = solveSplit(circuit, { starter, service }, false);
  if (before === null) return null;
  const surfaceV = before.starterV - before.starterA * starter.resistanceOhm;
  return solveSplit(circuit, {
    starter: { ...starter, chargeV: surfaceV, restV: surfaceV, acceptanceA: null },
    service: { ...service, chargeV: service.restV, acceptanceA: null },
  });
}

function crankingOf({
  crankingA,
  starter,
  service,
  serviceLoadA,
  serviceOhm,
  link,
}: SplitCircuit): SplitCranking | null {
  if (crankingA === null) return null;
  const starterOpenV = lineV(starter, 'rest', starter.chargeFraction);
  const serviceOpenV = lineV(service, 'rest', service.chargeFraction) - service.resistanceOhm * serviceLoadA;
  const aloneV = starterOpenV - starter.resistanceOhm * crankingA;
  if (link.kind !== 'relay') return { aloneV, starterV: aloneV, serviceV: serviceOpenV, reverseA: 0 };
  const wayOhm = serviceOhm + link.contactOhm + service.resistanceOhm;
  const reverseA = (serviceOpenV - aloneV) / (wayOhm + starter.resistanceOhm);
  const starterV = aloneV + starter.resistanceOhm * reverseA;
  return { aloneV, starterV, serviceV: serviceOpenV - service.resistanceOhm * reverseA, reverseA };
}

function continuousOf({ link }: SplitCircuit, fill: readonly SplitFill[]): number {
  if (link.kind !== 'converter') return Math.max(...fill.map(({ linkA }) => Math.abs(linkA)));
  return (link.outV * link.mostOutA) / (link.conversionEfficiency * link.leastInV);
}

function fusesOf({ starter, service, serviceOhm }: SplitCircuit, continuousA: number): readonly [SplitFuse, SplitFuse] {
  const leastRatingA = continuousA / FUSE_SHARE;
  const fuse = (end: SplitFuse['end'], { restFullV, resistanceOhm }: typeof starter): SplitFuse => {
    return {
      end,
      leastRatingA,
      shortA: restFullV / resistanceOhm,
      farShortA: restFullV / (resistanceOhm + serviceOhm),
    };
  };
  return [fuse('feed', starter), fuse('service-battery', service)];
}

function checksOf({ starter, service, link, ...circuit }: SplitCircuit, found: Found): Check[] {
  const { now, end, rush, cranking, fill, continuousA, endChargeFraction } = found;
  const checks: Check[] = [];
  const judge = (name: string, value: number | null, limit: number, unit: string, sense: Check['sense']): void => {
    const because = value === null ? { because: 'the loads are more than the alternator gives' } : {};
    const given = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
    checks.push(makeCheck({ name, value, limit, unit, sense, ...given, ...because }));
  };
  judge('charge of the service battery', endChargeFraction, circuit.wantedChargeFraction, 'fraction', 'atLeast');
  const most = (of: (state: SplitState | SplitFill) => number): number =>
    Math.max(...fill.map(of), end === null ? 0 : of(end));
  judge(
    'service battery is not overcharged',
    most(({ serviceV }) => serviceV),
    service.mostV,
    'V',
    'atMost',
  );
  judge(
    'starter battery is not overcharged',
    most(({ starterV }) => starterV),
    starter.mostV,
    'V',
    'atMost',
  );
  judge('loads in the end', end === null ? null : end.alternatorA, circuit.alternator.mostA, 'A', 'atMost');
  const givesA = most(({ starterA }) => -starterA);
  if (givesA > 0) judge('starter battery is not drained', givesA, 0, 'A', 'atMost');
  if (link.kind === 'converter') {
    judge('volts into the converter, at least', now.converterInV, link.leastInV, 'V', 'atLeast');
    judge('volts into the converter, at most', now.converterInV, link.mostInV, 'V', 'atMost');
  } else {
    const other = most(({ alternatorA, linkA }) => (link.kind === 'isolator-diodes' ? alternatorA - linkA : 0));
    const mostA = Math.max(continuousA, Math.abs(rush?.linkA ?? 0), Math.abs(cranking?.reverseA ?? 0), other);
    judge(`current of the ${link.kind === 'relay' ? 'relay' : 'diode'}`, mostA, link.ratedA, 'A', 'atMost');
  }
  if (link.kind === 'relay' && link.opensBelowV !== null) {
    const leastV = Math.min(rush?.starterV ?? now.starterV, now.starterV);
    judge('relay stays in', leastV, link.opensBelowV, 'V', 'atLeast');
  }
  if (circuit.fuseRatingA !== null) {
    const limit = FUSE_SHARE * circuit.fuseRatingA;
    const practice = { source: 'common-practice', sourceStatus: 'common-practice' } as const;
    const fuse = { name: 'current of the fuses', value: continuousA, limit, unit: 'A', sense: 'atMost' } as const;
    checks.push(makeCheck({ ...fuse, ...practice }));
  }
  return checks;
}
