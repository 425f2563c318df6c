import { type SizeInput, wireResistance } from '../conductor/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needObject, needOneOf } from '../error/guard.js';
import type { ResistanceBasis } from '../table/index.js';
import { needSplitBattery, type SplitBattery } from './split-battery.js';

/** A run of cable, out and back. */
export interface SplitCable extends SizeInput {
  /** Lengths in m, at least 0: out, and back where the return is a cable too. */
  readonly outLengthM: number;
  readonly returnLengthM: number;
  /** Joints, fuses, bodywork on the way in Ω, at least 0. With the cable above 0. */
  readonly jointOhm: number;
}

/** What joins the two batteries. */
export type SplitLink =
  | {
      /** A relay from the starter battery to the service battery. */
      readonly kind: 'relay';
      /** Its contact in Ω, at least 0, and the most that it carries in A, above 0. */
      readonly contactOhm: number;
      readonly ratedA: number;
      /** Volts of the starter battery below which it lets go, above 0; null where the ignition holds it. */
      readonly opensBelowV: number | null;
    }
  | {
      /** `diode`: one from battery to battery. `isolator-diodes`: one to each battery, from the alternator. */
      readonly kind: 'diode' | 'isolator-diodes';
      /** Drop: volts at no current, at least 0, and Ω on top, at least 0. */
      readonly thresholdV: number;
      readonly diodeOhm: number;
      readonly ratedA: number;
    }
  | {
      /** A d.c. converter at the service battery, fed by the whole cable. */
      readonly kind: 'converter';
      /** Volts that it holds at its output, and most current there in A, above 0. */
      readonly outV: number;
      readonly mostOutA: number;
      /** Power out over power in, above 0 and at most 1. */
      readonly conversionEfficiency: number;
      /** Window of its input in V: below the least it draws less, so that it stays there. */
      readonly leastInV: number;
      readonly mostInV: number;
    };

export interface SplitAlternator {
  /** Volts that its regulator holds where it looks, above 0. */
  readonly heldV: number;
  /** Most that it gives at the speed in question, warm, in A, above 0. */
  readonly mostA: number;
  /** Where the regulator looks: at its own terminal, or at the posts of a battery. */
  readonly senseAt: 'alternator' | 'starter-battery' | 'service-battery';
}

export interface SplitChargeInput {
  readonly alternator: SplitAlternator;
  readonly starter: SplitBattery;
  readonly service: SplitBattery;
  /** What is drawn while driving in A, at least 0: at the starter battery, and at the service battery. */
  readonly starterLoadA: number;
  readonly serviceLoadA: number;
  /** From the alternator to the starter battery, and from where they part to the service battery. */
  readonly mainCable: SplitCable;
  readonly serviceCable: SplitCable;
  /** Which resistance the sizes have, and how warm the copper is in °C. */
  readonly resistanceBasis: ResistanceBasis;
  readonly conductorTempC: number;
  readonly link: SplitLink;
  /** Charge that the service battery is to reach, above 0 and at most 1, and hours of driving, above 0 and at most 1000. */
  readonly wantedChargeFraction: number;
  readonly driveTimeH: number;
  /** Current of the starter in A, above 0; null where cranking is not asked for. */
  readonly crankingA: number | null;
  /** Rating of the fuses at both ends in A, above 0; null where they are still to be chosen. */
  readonly fuseRatingA: number | null;
}

/** The circuit in numbers. */
export interface SplitCircuit extends SplitChargeInput {
  readonly mainOhm: number;
  /** The service cable alone. */
  readonly serviceOhm: number;
}

export function splitCircuit(fn: string, input: SplitChargeInput): SplitCircuit {
  needInput(fn, input);
  const { alternator, link } = input;
  needObject(fn, 'alternator', alternator);
  needMoreThan(fn, 'alternator.heldV', alternator.heldV);
  needMoreThan(fn, 'alternator.mostA', alternator.mostA);
  needOneOf(fn, 'alternator.senseAt', alternator.senseAt, ['alternator', 'starter-battery', 'service-battery']);
  needSplitBattery(fn, 'starter', input.starter);
  needSplitBattery(fn, 'service', input.service);
  needNoLessThan(fn, 'starterLoadA', input.starterLoadA);
  needNoLessThan(fn, 'serviceLoadA', input.serviceLoadA);
  needLink(fn, link);
  if (link.kind === 'converter' && alternator.senseAt === 'service-battery') {
    const must = 'must not be service-battery behind a converter';
    throw new InputError(
      fn,
      'alternator.senseAt',
      'oneOf',
      alternator.senseAt,
      must,
      'the regulator would never see its volts',
    );
  }
  needMoreThan(fn, 'wantedChargeFraction', input.wantedChargeFraction);
  needBetween(fn, 'wantedChargeFraction', input.wantedChargeFraction, 0, 1, '80 % is 0.8');
  needMoreThan(fn, 'driveTimeH', input.driveTimeH);
  needBetween(fn, 'driveTimeH', input.driveTimeH, 0, 1000);
  if (input.crankingA !== null) needMoreThan(fn, 'crankingA', input.crankingA);
  if (input.fuseRatingA !== null) needMoreThan(fn, 'fuseRatingA', input.fuseRatingA);
  return { ...input, mainOhm: cableOhm(fn, 'mainCable', input), serviceOhm: cableOhm(fn, 'serviceCable', input) };
}

function needLink(fn: string, link: SplitLink): void {
  needObject(fn, 'link', link);
  needOneOf(fn, 'link.kind', link.kind, ['relay', 'diode', 'isolator-diodes', 'converter']);
  if (link.kind === 'converter') {
    needMoreThan(fn, 'link.outV', link.outV);
    needMoreThan(fn, 'link.mostOutA', link.mostOutA);
    needMoreThan(fn, 'link.conversionEfficiency', link.conversionEfficiency);
    needBetween(fn, 'link.conversionEfficiency', link.conversionEfficiency, 0, 1, '90 % is 0.9');
    needMoreThan(fn, 'link.leastInV', link.leastInV);
    needMoreThan(fn, 'link.mostInV', link.mostInV, link.leastInV);
    return;
  }
  needMoreThan(fn, 'link.ratedA', link.ratedA);
  if (link.kind === 'relay') {
    needNoLessThan(fn, 'link.contactOhm', link.contactOhm);
    if (link.opensBelowV !== null) needMoreThan(fn, 'link.opensBelowV', link.opensBelowV);
  } else {
    needNoLessThan(fn, 'link.thresholdV', link.thresholdV);
    needNoLessThan(fn, 'link.diodeOhm', link.diodeOhm);
  }
}

function cableOhm(fn: string, at: 'mainCable' | 'serviceCable', input: SplitChargeInput): number {
  const cable = input[at];
  needObject(fn, at, cable);
  const { outLengthM, returnLengthM, jointOhm, ...size } = cable;
  needNoLessThan(fn, `${at}.outLengthM`, outLengthM);
  needNoLessThan(fn, `${at}.returnLengthM`, returnLengthM);
  needNoLessThan(fn, `${at}.jointOhm`, jointOhm);
  const { resistanceBasis, conductorTempC } = input;
  const lengthM = outLengthM + returnLengthM;
  const ohm = jointOhm + sizedOhm(fn, at, { ...size, resistanceBasis, conductorTempC, lengthM });
  if (ohm >= 1e-9) return ohm;
  throw new InputError(
    fn,
    `${at}.outLengthM`,
    'above',
    outLengthM,
    'must be above 0 where the joints are without resistance',
  );
}

/** A wire's resistance; what is wrong with it is said of the field here. */
function sizedOhm(fn: string, at: string, wire: Parameters<typeof wireResistance>[0]): number {
  try {
    return wireResistance(wire).resistanceOhm;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const must = error.message.replace(/^\S+ \S+ /, '').replace(/, got .*$/, '');
    const shared = error.field === 'resistanceBasis' || error.field === 'conductorTempC';
    throw new InputError(fn, shared ? error.field : `${at}.${error.field}`, error.rule, error.value, must);
  }
}
