import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needInput, needObject } from '../error/guard.js';
import { figure } from '../divider/figure.js';
import { needTolerance } from '../divider/guard.js';
import { needSeries } from '../table/preferred-value.js';
import type { PreferredSeries } from '../table/index.js';
import { scaled, searchNetwork } from './adapt-search.js';
import { dialError, type DialNetwork, levelAt, seenOhm, senderAt, senderFor, shownAt } from './dial.js';
import { needSteadyOhm } from './guard.js';

export interface AdaptSenderInput {
  /** Ω of the sender at equal steps of the level, from empty to full, 2 to 100; two for one that is straight in ohms. */
  readonly senderOhm: readonly number[];
  /** Ω that the gauge wants at equal steps of its dial, from empty to full, 2 to 100. */
  readonly gaugeOhm: readonly number[];
  /** The series that is in the drawer. */
  readonly series: PreferredSeries;
  /** Tolerance of each resistor as a fraction, 0 to below 1. */
  readonly toleranceFraction: number;
  /** Most that the dial may be off at any level, as a share of the dial, 0 to below 1. */
  readonly mostErrorFraction: number;
  /** A network to be judged as it is; left out, the best one is sought. */
  readonly network?: DialNetwork;
}

/** A level, what the gauge sees there, and what it shows. */
export interface DialPoint {
  readonly levelFraction: number;
  readonly seenOhm: number;
  readonly shownFraction: number;
}

/** What a dial does over the whole tank. The pointer stops at the ends of the dial. */
export interface DialReading {
  /** Most shown above the true level, most shown below it, and the larger of both; tolerance included. */
  readonly mostOverFraction: number;
  readonly mostUnderFraction: number;
  readonly worstErrorFraction: number;
  /** The true level at which the worst error is, parts as marked. */
  readonly worstAtFraction: number;
  /** Shown with the tank empty, half full and full. */
  readonly emptyShownFraction: number;
  readonly halfShownFraction: number;
  readonly fullShownFraction: number;
  /** The level at which the pointer leaves full as the tank empties; null where it never stands there. */
  readonly leavesFullFraction: number | null;
  /** The level at which it comes to rest at empty; null where it never does. */
  readonly reachesEmptyFraction: number | null;
  /** Eleven levels from empty to full, parts as marked. */
  readonly curve: readonly DialPoint[];
}

export interface AdaptSenderDesign extends DialReading, DialNetwork {
  readonly possible: true;
  /** The same sender with nothing between it and the gauge. */
  readonly plain: DialReading;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

export type AdaptSenderResult = AdaptSenderDesign | NotPossible<AdaptSenderDesign>;

/**
 * The resistors that make a sender fit a gauge, or the reason why none can.
 *
 * Resistors never widen an ohm span nor turn it round: in series they only raise it, in parallel they only lower and
 * compress it, and what they compress they also bend. The fewest resistors are taken that keep the wish, of these
 * the best; where none do, the best network of all is the nearest, also where sender and gauge go opposite ways. For a
 * sender that goes to an input with a pull-up use a table instead: an input can be taught any curve, a gauge cannot.
 *
 * $$R' = R_g + \frac{R_p (R + R_s)}{R_p + R + R_s} \qquad
 * \frac{\mathrm{d}R'}{\mathrm{d}R} = \left(\frac{R_p}{R_p + R + R_s}\right)^{2} \le 1$$
 *
 * @param input sender, gauge, series, wish
 * @returns resistors, worst error of the dial and where, curve, or not possible, because, with the nearest
 * @throws InputError when a field is missing or out of range, or resistances do not follow one another
 * @source circuit-theory; any network of fixed resistors equals this one (T form of a two-port); values of iec-60063 from a two-hundredth of the gauge's span to a hundred times the largest resistance, by a search that is proven
 * @example adaptSender({ senderOhm: [0, 280], gaugeOhm: [0, 90], series: e24, toleranceFraction: 0, mostErrorFraction: 0.3 }).acrossOhm //=> 100
 */
export function adaptSender(input: AdaptSenderInput): AdaptSenderResult {
  guard(input);
  const { senderOhm, gaugeOhm, series, toleranceFraction, mostErrorFraction } = input;
  const end = (ohms: readonly number[]): number => (ohms.at(-1) as number) - (ohms[0] as number);
  const network = input.network ?? searchNetwork(input, series, toleranceFraction, mostErrorFraction).network;
  const design = judge(input, network);
  const off = `${figure(design.worstErrorFraction * 100)} % of the dial`;
  if (end(senderOhm) > 0 !== end(gaugeOhm) > 0) {
    const way = (ohms: readonly number[]): string => (end(ohms) > 0 ? 'rises' : 'falls');
    return {
      possible: false,
      code: 'inverted',
      because: `the sender ${way(senderOhm)} in ohms from empty to full and the gauge ${way(gaugeOhm)}: no resistor turns that round; ${input.network === undefined ? 'the best' : 'this network'} is off by ${off}`,
      nearest: design,
    };
  }
  if (design.worstErrorFraction <= mostErrorFraction) return design;
  if (input.network !== undefined) {
    return { possible: false, code: 'network-off', because: `this network is off by up to ${off}`, nearest: design };
  }
  // The ends may be off by the wish: the gauge's span between them must come from the sender's.
  const marks = [mostErrorFraction, 1 - mostErrorFraction].map((share) => senderAt(gaugeOhm, Math.min(1, share)));
  const wantedOhm = mostErrorFraction < 0.5 ? Math.abs((marks[0] as number) - (marks[1] as number)) : 0;
  const spanOhm = Math.abs(end(senderOhm));
  return spanOhm < wantedOhm
    ? {
        possible: false,
        code: 'span-too-small',
        because: `the sender moves by ${figure(spanOhm)} Ω, the gauge needs ${figure(wantedOhm)} Ω, and resistors never widen a span; the best is off by ${off}`,
        nearest: design,
      }
    : {
        possible: false,
        code: 'too-bent',
        because: `resistors that bring the ends together bend what lies between; the best is off by ${off}`,
        nearest: design,
      };
}

function guard(input: AdaptSenderInput): void {
  const fn = 'adaptSender';
  needInput(fn, input);
  needSteadyOhm(fn, 'senderOhm', input.senderOhm);
  needSteadyOhm(fn, 'gaugeOhm', input.gaugeOhm);
  needSeries(fn, input.series);
  needTolerance(fn, 'toleranceFraction', input.toleranceFraction);
  needTolerance(fn, 'mostErrorFraction', input.mostErrorFraction);
  if (input.network === undefined) return;
  needObject(fn, 'network', input.network);
  const { senderSideOhm, acrossOhm, gaugeSideOhm } = input.network;
  needNoLessThan(fn, 'network.senderSideOhm', senderSideOhm);
  if (acrossOhm !== null) needMoreThan(fn, 'network.acrossOhm', acrossOhm);
  needNoLessThan(fn, 'network.gaugeSideOhm', gaugeSideOhm);
}

function judge(input: AdaptSenderInput, network: DialNetwork): AdaptSenderDesign {
  const reading = readingOf(input, network, input.toleranceFraction);
  const checks = [
    makeCheck({
      name: 'worst error of the dial',
      value: reading.worstErrorFraction,
      limit: input.mostErrorFraction,
      unit: 'fraction',
      sense: 'atMost',
      source: 'given-by-caller',
      sourceStatus: 'derived',
    }),
  ];
  const { senderSideOhm, acrossOhm, gaugeSideOhm } = network;
  return {
    possible: true,
    senderSideOhm,
    acrossOhm,
    gaugeSideOhm,
    ...reading,
    plain: readingOf(input, { senderSideOhm: 0, acrossOhm: null, gaugeSideOhm: 0 }, 0),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

function readingOf(input: AdaptSenderInput, network: DialNetwork, tolerance: number): DialReading {
  const { senderOhm, gaugeOhm } = input;
  const shown = (levelFraction: number): number =>
    shownAt(gaugeOhm, seenOhm(network, senderAt(senderOhm, levelFraction)));
  const exact = dialError(input, network);
  const corners = [1 - tolerance, 1 + tolerance].map((factor) => dialError(input, scaled(network, factor)));
  const mostOverFraction = Math.max(...corners.map((corner) => corner.over));
  const mostUnderFraction = Math.max(...corners.map((corner) => corner.under));
  /** The level at which the pointer meets an end of the dial, if it stands there at the same end of the tank. */
  const meets = (end: 0 | 1): number | null => {
    if (shown(end) !== end) return null;
    const ohm = senderFor(network, (end === 1 ? gaugeOhm.at(-1) : gaugeOhm[0]) as number);
    return (ohm === null ? null : levelAt(senderOhm, ohm)) ?? end;
  };
  return {
    mostOverFraction,
    mostUnderFraction,
    worstErrorFraction: Math.max(mostOverFraction, mostUnderFraction),
    worstAtFraction: exact.over >= exact.under ? exact.overAt : exact.underAt,
    emptyShownFraction: shown(0),
    halfShownFraction: shown(0.5),
    fullShownFraction: shown(1),
    leavesFullFraction: meets(1),
    reachesEmptyFraction: meets(0),
    curve: Array.from({ length: 11 }, (_, i) => ({
      levelFraction: i / 10,
      seenOhm: seenOhm(network, senderAt(senderOhm, i / 10)),
      shownFraction: shown(i / 10),
    })),
  };
}
