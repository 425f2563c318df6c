import { type Check, type CheckInput, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needBetween, needInput, needInteger, needList, needObject } from '../error/guard.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { figure } from './figure.js';
import { bearsS, type FusedWire, needFusedWire, withstandA2s } from './fused-wire.js';
import { needSteps, needTrip, type SurgeStep, type TripModel, tripsAfterS, tripsAtS } from './trip.js';

/** What a solid-state output can do, from its data sheet. */
export interface SolidStateChannel {
  /** Continuous current by the temperature of the module: at least one row of rising °C, falling A. */
  readonly ratedByTempC: readonly (readonly [tempC: number, currentA: number])[];
  /** Resistance switched on and hot, in Ω, above 0. */
  readonly onResistanceOhm: number;
  /** Current in A to which it holds back, above 0; null where it does not. */
  readonly currentLimitA: number | null;
  readonly trip: TripModel;
  /** Tries again after a trip: so many times (null: for ever), after so long each; null where it stays off. */
  readonly retry: { readonly count: number | null; readonly offS: number } | null;
  /** Current in A that leaks, or tests the wire, while it is off, at least 0. */
  readonly leakageA: number;
  /** Volts across the switch at which it clamps a coil, above 0; null where it does not. */
  readonly clampV: number | null;
  /** Energy in J that one clamping may bring, above 0; null where unsaid. */
  readonly clampEnergyJ: number | null;
  /** Range of pulse-width modulation; null where it cannot. */
  readonly pwm: { readonly leastHz: number; readonly mostHz: number; readonly leastOnS: number } | null;
}

/** What hangs on it. */
export interface ChannelLoad {
  /** Current in A while it runs, above 0: its peak where it is pulsed. */
  readonly runA: number;
  /** Currents at switching on, one after another; may be empty. */
  readonly startSteps: readonly SurgeStep[];
  /** Current in A where it is held fast or shorted inside, above 0; null where it cannot be. */
  readonly stallA: number | null;
  /** Inductance in H, at least 0. */
  readonly inductanceH: number;
  /** Whether a diode across the load takes its current when it is switched off. */
  readonly freewheel: boolean;
  /** Current in A and voltage in V at which an LED is seen to glow; null for other loads. */
  readonly glow: { readonly glowA: number; readonly glowV: number } | null;
}

/** A total that the output shares with others. */
export interface SharedTotal {
  /** Most current in A together, above 0. */
  readonly mostA: number;
  /** Current in A of the others at the same time, at least 0. */
  readonly othersA: number;
}

export interface CheckChannelInput {
  readonly channel: SolidStateChannel;
  readonly load: ChannelLoad;
  /** Highest supply in V, above 0. */
  readonly supplyV: number;
  /** Temperature of the module in °C, within its rows or below. */
  readonly moduleTempC: number;
  /** Current in A that the wire of one output bears for good, above 0. */
  readonly ampacityA: number;
  /** What that wire bears for a while. */
  readonly wire: FusedWire;
  /** Group of outputs that share one feed; null where there is none. */
  readonly bank: SharedTotal | null;
  /** The whole module; null where no total is stated. */
  readonly module: SharedTotal | null;
  /** How the load is pulsed; null where it is simply on. */
  readonly drive: { readonly frequencyHz: number; readonly dutyFraction: number } | null;
  /** Wires of two outputs joined at the load, in Ω each; null for one output alone. */
  readonly parallel: { readonly firstOhm: number; readonly secondOhm: number } | null;
}

export interface CheckChannelResult {
  readonly ok: boolean;
  readonly checks: readonly Check[];
  /** The check with the least room. */
  readonly decidedBy: string;
  /** Continuous current in A of one output at this temperature. */
  readonly ratedA: number;
  /** Largest share in A that one output carries while the load runs: all of it where it is alone. */
  readonly shareA: number;
  /** Shares in A of the first and the second output; null where it is alone. */
  readonly sharesA: readonly [number, number] | null;
  /** Whether the output holds the start back, which then takes longer. */
  readonly startLimited: boolean;
  /** When the start trips the output, in s; null where it does not. */
  readonly startTripsAfterS: number | null;
  /** Current of the stall that flows, in A; null where the load cannot stall. */
  readonly stallA: number | null;
  /** When a stall trips it, in s; null where it never does or the load cannot stall. */
  readonly stallTripsAfterS: number | null;
  /** How long in s the wire bears the stall; null for good or where the load cannot stall. */
  readonly stallBearsS: number | null;
  /** Where one of two has opened: when the other trips at the load's running current, in s; null for never or alone. */
  readonly otherTripsAfterS: number | null;
  /** Energy in J that the switch takes when it opens on the largest current; null where it does not clamp. */
  readonly switchOffEnergyJ: number | null;
  /** Largest resistor in Ω across an LED that keeps it dark; null where none is needed. */
  readonly bleedResistanceOhm: number | null;
}

const FN = 'checkChannel';

/**
 * A solid-state output and its load: does it start, does a stall trip in time for the wire, does it stay dark?
 *
 * Use it for one electronic output or two joined at the load. The output is judged by peak currents. Where it holds an
 * inrush back, the start is taken to last longer in proportion (the same charge flows): a motor that must start under
 * load may not start at all. Two outputs share by resistance; when one opens, the other carries all, and a fault in
 * either wire is then fed through the other. Of an inductive load the energy is that without its resistance, the
 * careful side.
 *
 * $$E = \tfrac12 L I^2 \frac{V_c}{V_c - V},\qquad
 * I_1 = I\frac{R_2}{R_1 + R_2},\qquad R_\mathrm{bleed} \le \frac{V_\mathrm{glow}}{I_\mathrm{leak}}$$
 *
 * `threshold` trips after the current has stayed above it; `i2t` when $\int (I^2 - I_c^2)\,dt$ reaches its value;
 * `curve` when the shares of its times add up to one.
 *
 * @param input output, load, supply, wire, totals
 * @returns every check with its margin, times to trip, shares, energy, bleed resistor
 * @throws InputError when a field is missing or out of range, or the module is hotter than its data reach
 * @source circuit-theory; iec-60949 (the wire in a short circuit)
 * @example checkChannel({ channel: { ratedByTempC: [[25, 20], [85, 12]], onResistanceOhm: 0.005, currentLimitA: null, trip: { kind: 'threshold', tripA: 30, delayS: 0.1 }, retry: null, leakageA: 0, clampV: 40, clampEnergyJ: 0.3, pwm: null }, load: { runA: 8, startSteps: [{ currentA: 40, durationS: 0.05 }], stallA: 40, inductanceH: 0.0002, freewheel: false, glow: null }, supplyV: 14.4, moduleTempC: 55, ampacityA: 20, wire: { areaMm2: 1.5, ambientTempC: 50, maxConductorTempC: 105, overloadTempC: 105, shortTempC: 160 }, bank: null, module: null, drive: null, parallel: null }).stallTripsAfterS //=> 0.1
 */
export function checkChannel(input: CheckChannelInput): CheckChannelResult {
  needInput(FN, input);
  guard(input);
  const { channel, load, supplyV, moduleTempC, ampacityA, wire, parallel } = input;
  const ratedA = ratedAt(channel, moduleTempC);
  const sharesA = parallel === null ? null : shares(channel.onResistanceOhm, parallel, load.runA);
  const shareA = sharesA === null ? load.runA : Math.max(...sharesA);
  const part = shareA / load.runA;
  const limitA = channel.currentLimitA ?? Number.MAX_VALUE;
  // The start, held back to the limit and stretched by as much.
  const steps = load.startSteps.map(({ currentA, durationS }) => {
    const own = currentA * part;
    return own <= limitA ? { currentA: own, durationS } : { currentA: limitA, durationS: (durationS * own) / limitA };
  });
  const startLimited = load.startSteps.some(({ currentA }) => currentA * part > limitA);
  const startTripsAfterS = tripsAfterS(channel.trip, [...steps, { currentA: shareA, durationS: Number.MAX_VALUE }]);
  const stallA = load.stallA === null ? null : Math.min(load.stallA * part, limitA);
  const stallTripsAfterS = stallA === null ? null : tripsAtS(channel.trip, stallA);
  const stallBears = stallA === null ? null : bearsS(wire, ampacityA, stallA);
  const otherTripsAfterS = parallel === null ? null : tripsAtS(channel.trip, Math.min(load.runA, limitA));
  const largestA = Math.max(shareA, stallA ?? 0, ...steps.map(({ currentA }) => currentA));
  const clamps = load.inductanceH > 0 && !load.freewheel;
  const { clampV } = channel;
  const switchOffEnergyJ =
    clamps && clampV !== null && clampV > supplyV
      ? (0.5 * load.inductanceH * largestA * largestA * clampV) / (clampV - supplyV)
      : null;
  const checks = [
    check({ name: 'continuous current', value: shareA, limit: ratedA, unit: 'A', sense: 'atMost' }),
    startCheck(startTripsAfterS, startLimited, shareA, limitA),
    check({ name: 'wire of the output', value: shareA, limit: ampacityA, unit: 'A', sense: 'atMost' }),
    ...stallChecks(input, stallA, stallTripsAfterS, stallBears),
    ...totalChecks(input),
    ...driveChecks(input),
    ...otherChecks(input, otherTripsAfterS, limitA),
  ];
  if (clamps) checks.push(offCheck(input, switchOffEnergyJ));
  const { glow } = load;
  if (glow !== null) {
    const because = 'a resistor across the load keeps it dark: see bleedResistanceOhm';
    const dark = { name: 'LED stays dark', value: channel.leakageA, limit: glow.glowA, unit: 'A' } as const;
    checks.push(check({ ...dark, sense: 'atMost', ...(channel.leakageA > glow.glowA ? { because } : {}) }));
  }
  return {
    ok: checks.every((each) => each.ok),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
    ratedA,
    shareA,
    sharesA,
    startLimited,
    startTripsAfterS,
    stallA,
    stallTripsAfterS,
    stallBearsS: stallBears,
    otherTripsAfterS,
    switchOffEnergyJ,
    bleedResistanceOhm: glow !== null && channel.leakageA > glow.glowA ? glow.glowV / channel.leakageA : null,
  };
}

/** A check of ours: limits from the caller's data, arithmetic from circuit theory. */
function check(input: Omit<CheckInput, 'source' | 'sourceStatus'>): Check {
  return makeCheck({ source: 'given-by-caller', sourceStatus: 'derived', ...input });
}

/** Continuous current at a temperature, by straight lines; colder than the first row counts as it. */
function ratedAt({ ratedByTempC: rows }: SolidStateChannel, tempC: number): number {
  const i = rows.findIndex(([at]) => tempC <= at);
  const [t1, a1] = rows[i] as readonly [number, number];
  if (i === 0) return a1;
  const [t0, a0] = rows[i - 1] as readonly [number, number];
  return a0 + ((a1 - a0) * (tempC - t0)) / (t1 - t0);
}

function shares(
  onOhm: number,
  { firstOhm, secondOhm }: NonNullable<CheckChannelInput['parallel']>,
  currentA: number,
): readonly [number, number] {
  const first = onOhm + firstOhm;
  const second = onOhm + secondOhm;
  return [(currentA * second) / (first + second), (currentA * first) / (first + second)];
}

function startCheck(tripsAfter: number | null, limited: boolean, shareA: number, limitA: number): Check {
  const name = 'starts without a trip';
  const none = { name, value: null, limit: null, unit: 's', sense: 'atLeast' } as const;
  if (shareA > limitA) {
    return check({
      ...none,
      okWithoutNumber: false,
      because: `it holds back to ${figure(limitA)} A, less than the load runs on`,
    });
  }
  const held = limited ? 'the output holds the start back, which then takes longer' : null;
  if (tripsAfter === null) return check({ ...none, okWithoutNumber: true, because: held ?? 'no current of it trips' });
  const because = `it trips after ${figure(tripsAfter)} s${held === null ? '' : `; ${held}`}`;
  return check({ ...none, value: tripsAfter, okWithoutNumber: false, because });
}

/** A stall must trip before the wire is harmed, and so must all the tries after it. */
function stallChecks(
  { channel, ampacityA, wire }: CheckChannelInput,
  stallA: number | null,
  tripsS: number | null,
  bears: number | null,
): Check[] {
  if (stallA === null) return [];
  const stall = { name: 'stall trips in time for the wire', unit: 's', sense: 'atMost' } as const;
  if (tripsS === null) {
    const because =
      bears === null
        ? 'it never trips, and the wire bears the stall for good: the load itself is not protected'
        : 'it never trips, and the wire does not bear the stall for good';
    return [check({ ...stall, value: null, limit: bears, okWithoutNumber: bears === null, because })];
  }
  const checks = [
    check({
      ...stall,
      value: tripsS,
      limit: bears,
      okWithoutNumber: true,
      ...(bears === null ? { because: 'the wire bears the stall for good' } : {}),
    }),
  ];
  const { retry } = channel;
  if (retry !== null && bears !== null) {
    const retries = { name: 'retries against the wire', sense: 'atMost' } as const;
    if (retry.count === null) {
      const rmsA = stallA * Math.sqrt(tripsS / (tripsS + retry.offS));
      checks.push(check({ ...retries, value: rmsA, limit: ampacityA, unit: 'A', because: 'r.m.s. of endless tries' }));
    } else {
      // No heat is taken to leave between tries: the careful side.
      const i2tA2s = (retry.count + 1) * stallA * stallA * tripsS;
      checks.push(check({ ...retries, value: i2tA2s, limit: withstandA2s(wire), unit: 'A²s' }));
    }
  }
  return checks;
}

function totalChecks({ load, bank, module }: CheckChannelInput): Check[] {
  const checks: Check[] = [];
  for (const [name, total] of [
    ['total of the bank', bank],
    ['total of the module', module],
  ] as const) {
    if (total === null) continue;
    const value = total.othersA + load.runA;
    checks.push(check({ name, value, limit: total.mostA, unit: 'A', sense: 'atMost' }));
  }
  return checks;
}

function driveChecks({ channel, load, drive }: CheckChannelInput): Check[] {
  if (drive === null) return [];
  const { pwm } = channel;
  const { frequencyHz: value, dutyFraction } = drive;
  const range = 'switching frequency';
  if (pwm === null) {
    const none = { name: range, value, limit: null, unit: 'Hz', sense: 'atMost', okWithoutNumber: false } as const;
    return [check({ ...none, because: 'this output cannot be pulsed' })];
  }
  const onS = Math.min(dutyFraction, 1 - dutyFraction) / value;
  const checks = [
    check({ name: range, value, limit: pwm.mostHz, unit: 'Hz', sense: 'atMost' }),
    check({ name: `${range}, least`, value, limit: pwm.leastHz, unit: 'Hz', sense: 'atLeast' }),
  ];
  if (dutyFraction < 1) {
    checks.push(check({ name: 'shortest pulse', value: onS, limit: pwm.leastOnS, unit: 's', sense: 'atLeast' }));
  }
  if (load.inductanceH > 0 && !load.freewheel) {
    const none = { value: null, limit: null, unit: 'J', sense: 'atMost', okWithoutNumber: false } as const;
    const because = 'a pulsed coil needs a diode across it: the switch would clamp in every pulse';
    checks.push(check({ ...none, name: 'pulsed coil has a diode', because }));
  }
  return checks;
}

/** One of two has opened: the other carries all, within its rating or until it trips in time for its wire. */
function otherChecks(
  { load, parallel, ampacityA, wire }: CheckChannelInput,
  tripsS: number | null,
  limitA: number,
): Check[] {
  if (parallel === null) return [];
  const alone = Math.min(load.runA, limitA);
  const bears = bearsS(wire, ampacityA, alone);
  const name = 'one opens: the other in time for its wire';
  const common = { name, value: tripsS, limit: bears, unit: 's', sense: 'atMost' } as const;
  const because =
    bears === null
      ? `its wire bears ${figure(alone)} A for good`
      : tripsS === null
        ? `it never trips at ${figure(alone)} A, and its wire does not bear that for good`
        : null;
  return [check({ ...common, okWithoutNumber: bears === null, ...(because === null ? {} : { because }) })];
}

function offCheck({ channel, supplyV }: CheckChannelInput, energyJ: number | null): Check {
  const { clampV, clampEnergyJ } = channel;
  const because =
    clampV === null
      ? 'the output does not clamp: the load needs a diode or another suppressor'
      : energyJ === null
        ? `a clamp at ${clampV} V does not hold ${supplyV} V off`
        : clampEnergyJ === null
          ? 'no energy is stated for the clamp'
          : null;
  return check({
    name: 'energy at switching off',
    value: energyJ,
    limit: clampEnergyJ,
    unit: 'J',
    sense: 'atMost',
    okWithoutNumber: false,
    ...(because === null ? {} : { because }),
  });
}

function guard(input: CheckChannelInput): void {
  const { channel, load, supplyV, moduleTempC, ampacityA, wire, bank, module, drive, parallel } = input;
  needObject(FN, 'channel', channel);
  needList(FN, 'channel.ratedByTempC', channel.ratedByTempC, 1);
  let before: readonly [number, number] | null = null;
  channel.ratedByTempC.forEach((row, i) => {
    const at = `channel.ratedByTempC[${i}]`;
    needList(FN, at, row, 2);
    needBetween(FN, `${at}.tempC`, row[0], -60, 300);
    needNoLessThan(FN, `${at}.currentA`, row[1]);
    if (before !== null && !(row[0] > before[0] && row[1] <= before[1])) {
      throw new InputError(FN, at, 'order', row[0], 'must be hotter, with no more current, than the one before');
    }
    before = row;
  });
  needMoreThan(FN, 'channel.onResistanceOhm', channel.onResistanceOhm);
  if (channel.currentLimitA !== null) needMoreThan(FN, 'channel.currentLimitA', channel.currentLimitA);
  needTrip(FN, channel.trip, 'channel.trip');
  if (channel.retry !== null) {
    needObject(FN, 'channel.retry', channel.retry);
    if (channel.retry.count !== null) needInteger(FN, 'channel.retry.count', channel.retry.count, 1);
    needMoreThan(FN, 'channel.retry.offS', channel.retry.offS);
  }
  needNoLessThan(FN, 'channel.leakageA', channel.leakageA);
  if (channel.clampV !== null) needMoreThan(FN, 'channel.clampV', channel.clampV);
  if (channel.clampEnergyJ !== null) needMoreThan(FN, 'channel.clampEnergyJ', channel.clampEnergyJ);
  if (channel.pwm !== null) {
    needObject(FN, 'channel.pwm', channel.pwm);
    needNoLessThan(FN, 'channel.pwm.leastHz', channel.pwm.leastHz);
    needMoreThan(FN, 'channel.pwm.mostHz', channel.pwm.mostHz, channel.pwm.leastHz);
    needNoLessThan(FN, 'channel.pwm.leastOnS', channel.pwm.leastOnS);
  }
  needObject(FN, 'load', load);
  needMoreThan(FN, 'load.runA', load.runA);
  needSteps(FN, 'load.startSteps', load.startSteps);
  if (load.stallA !== null) needMoreThan(FN, 'load.stallA', load.stallA);
  needNoLessThan(FN, 'load.inductanceH', load.inductanceH);
  if (load.glow !== null) {
    needObject(FN, 'load.glow', load.glow);
    needMoreThan(FN, 'load.glow.glowA', load.glow.glowA);
    needMoreThan(FN, 'load.glow.glowV', load.glow.glowV);
  }
  needMoreThan(FN, 'supplyV', supplyV);
  const [hottestC] = channel.ratedByTempC[channel.ratedByTempC.length - 1] as readonly [number, number];
  needBetween(FN, 'moduleTempC', moduleTempC, -60, hottestC, 'the rating of the output ends there');
  needMoreThan(FN, 'ampacityA', ampacityA);
  needFusedWire(FN, wire);
  for (const [name, total] of [
    ['bank', bank],
    ['module', module],
  ] as const) {
    if (total === null) continue;
    needObject(FN, name, total);
    needMoreThan(FN, `${name}.mostA`, total.mostA);
    needNoLessThan(FN, `${name}.othersA`, total.othersA);
  }
  if (drive !== null) {
    needObject(FN, 'drive', drive);
    needMoreThan(FN, 'drive.frequencyHz', drive.frequencyHz);
    needMoreThan(FN, 'drive.dutyFraction', drive.dutyFraction);
    needBetween(FN, 'drive.dutyFraction', drive.dutyFraction, 0, 1);
  }
  if (parallel !== null) {
    needObject(FN, 'parallel', parallel);
    needNoLessThan(FN, 'parallel.firstOhm', parallel.firstOhm);
    needNoLessThan(FN, 'parallel.secondOhm', parallel.secondOhm);
  }
}
