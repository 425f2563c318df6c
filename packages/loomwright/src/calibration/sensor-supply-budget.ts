import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needObject, needOneOf } from '../error/guard.js';
import { lawOf, needDevices, needLimiter, needPins, shownV, shownValue, type SupplyDevice } from './supply-device.js';
import { supplyFaults, type SupplyFault, type SupplyFaultInput } from './supply-faults.js';
import { drawnA } from './supply-law.js';
import { supplySplits, type SupplySplitResult } from './supply-split.js';

export interface SensorSupplyBudgetInput extends SupplyFaultInput {
  /** Volts that the pins give, above 0, and their tolerance as a fraction, 0 to below 1. */
  readonly supplyV: number;
  readonly supplyToleranceFraction: number;
  /** Part of each pin's limit that is to stay free, 0 to below 1. */
  readonly wantedHeadroomFraction: number;
  /** Resistance of a wire that is shorted, to ground or to the battery, in Ω, at least 0.001. */
  readonly shortOhm: number;
  /** Volts of the battery that a wire may touch, above the supply. */
  readonly batteryV: number;
  /** By how much a reading may be off and still count as right, in V, above 0. */
  readonly allowedErrorV: number;
}

/** What one pin carries. */
export interface SupplyPinSum {
  readonly name: string;
  /** At the worst corner of every tolerance and day; as marked; all on the coldest, and all on the hottest day. In A. */
  readonly sumA: number;
  readonly markedA: number;
  readonly coldA: number;
  readonly hotA: number;
  readonly limitA: number;
  /** What is left of the limit; below 0 where it is passed. */
  readonly headroomA: number;
  readonly devices: readonly { readonly name: string; readonly currentA: number }[];
}

/** What a device shows whose supply wire is open: a resistance to ground holds its input at nothing. */
export interface SupplyOpen {
  readonly name: string;
  readonly shownV: number | null;
  readonly shownValue: number | null;
}

/** Several tracks of one thing. */
export interface SupplyTracks {
  readonly name: string;
  readonly devices: readonly string[];
  /** Pins that they hang on, each once. */
  readonly pins: readonly string[];
}

export interface SensorSupplyBudgetResult {
  readonly pins: readonly SupplyPinSum[];
  /** All pins and the controller itself, at worst, against the regulator behind them. */
  readonly totalA: number;
  readonly regulatorHeadroomA: number;
  /** Each pin's wiring shorted to ground, then to the battery. */
  readonly faults: readonly SupplyFault[];
  readonly opens: readonly SupplyOpen[];
  readonly tracks: readonly SupplyTracks[];
  /** Which device to which pin, so that all limits hold and tracks stand apart: two proposals. */
  readonly fewestMoves: SupplySplitResult;
  readonly mostHeadroom: SupplySplitResult;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * What the five-volt pins of a controller carry, who dies with whom when one wire is shorted, and how to split them.
 *
 * Every device is summed at the worst corner of its tolerance, at the highest supply, on its worse day. A short to
 * ground takes what the pin's limiter gives: the pin comes to rest where wiring and devices take no more than that, from
 * above. Without a limiter of its own the pin takes the rail down, and with it every other pin. Touched to the battery,
 * a pin that does not block lets its volts into the rail; a controller on a rail too low or too high reads nothing. Two tracks of one pedal belong on two pins.
 *
 * $$\sum_d I_d(V) + \frac{V}{R_\mathrm{short}} = I_\mathrm{most}(V) \qquad I_\mathrm{most} = I_0 + (I_k - I_0)\frac{V}{S}$$
 *
 * Devices in faults take what they are marked with. A sensor with electronics is dead below the volts that it works from.
 *
 * @param input pins, regulator, devices, supply, faults to be tried
 * @returns sums and headroom, faults with every device's fate, tracks, two splits or why there is none, checks
 * @throws InputError when a field is missing or out of range, a name is there twice, or a device's pin is not there
 * @source circuit-theory; tracks on pins of their own by common practice; splits by branch and bound
 * @example sensorSupplyBudget({ supplyV: 5, supplyToleranceFraction: 0, reference: 'rail', regulator: { limitA: 0.2, limiter: { kind: 'constant', mostA: 0.3 }, ownA: 0, worksFromV: 4.5, standsV: null }, pins: [{ name: 'A', limitA: 0.05, limiter: null, backDropV: 0 }], devices: [{ name: 'pedal', pin: 'A', draw: { kind: 'resistance', resistanceOhm: 1000 }, toleranceFraction: 0, standsV: null }], wantedHeadroomFraction: 0, shortOhm: 1, batteryV: 14.4, allowedErrorV: 0.05 }).pins[0].headroomA //=> 0.045
 */
export function sensorSupplyBudget(input: SensorSupplyBudgetInput): SensorSupplyBudgetResult {
  const fn = 'sensorSupplyBudget';
  needInput(fn, input);
  guard(fn, input);
  const { supplyV, supplyToleranceFraction, wantedHeadroomFraction, regulator, pins, devices } = input;
  const highV = supplyV * (1 + supplyToleranceFraction);
  const worstA = (device: SupplyDevice): number =>
    drawnA([lawOf(device, 'worst')], highV) * Math.max(1, device.coldFactor ?? 1, device.hotFactor ?? 1);
  const sums = pins.map(({ name, limitA }): SupplyPinSum => {
    const on = devices.filter(({ pin }) => pin === name);
    const sumOf = (of: (device: SupplyDevice) => number): number => on.reduce((sum, device) => sum + of(device), 0);
    const markedA = (device: SupplyDevice): number => drawnA([lawOf(device, 'marked')], supplyV);
    const sumA = sumOf(worstA);
    return {
      name,
      sumA,
      markedA: sumOf(markedA),
      coldA: sumOf((device) => markedA(device) * (device.coldFactor ?? 1)),
      hotA: sumOf((device) => markedA(device) * (device.hotFactor ?? 1)),
      limitA,
      headroomA: limitA - sumA,
      devices: on.map((device) => ({ name: device.name, currentA: worstA(device) })),
    };
  });
  const totalA = sums.reduce((sum, { sumA }) => sum + sumA, regulator.ownA);
  const faults = supplyFaults(input);
  const tracks = tracksOf(devices);
  const items = devices.map((device) => ({
    name: device.name,
    currentA: worstA(device),
    pin: pins.findIndex(({ name }) => name === device.pin),
    fixed: device.fixed === true,
    trackOf: device.trackOf,
  }));
  const roomy = pins.map(({ name, limitA }) => ({ name, limitA, roomA: limitA * (1 - wantedHeadroomFraction) }));
  const checks = checksOf(input, sums, totalA, faults, tracks);
  return {
    pins: sums,
    totalA,
    regulatorHeadroomA: regulator.limitA - totalA,
    faults,
    opens: devices.map((device): SupplyOpen => {
      // Electronics without supply say nothing; a wiper or a pulled wire lies on its resistance to ground.
      const readV = device.draw.kind === 'current' ? null : shownV(device, supplyV, 0, supplyV);
      return { name: device.name, shownV: readV, shownValue: shownValue(device, readV) };
    }),
    tracks,
    ...supplySplits(items, roomy),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

function tracksOf(devices: readonly SupplyDevice[]): readonly SupplyTracks[] {
  const names = [...new Set(devices.flatMap(({ trackOf }) => trackOf ?? []))];
  return names.map((name) => {
    const own = devices.filter(({ trackOf }) => trackOf === name);
    return { name, devices: own.map((device) => device.name), pins: [...new Set(own.map(({ pin }) => pin))] };
  });
}

function checksOf(
  { wantedHeadroomFraction, regulator, devices }: SensorSupplyBudgetInput,
  sums: readonly SupplyPinSum[],
  totalA: number,
  faults: readonly SupplyFault[],
  tracks: readonly SupplyTracks[],
): readonly Check[] {
  const given = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const practice = { source: 'common-practice', sourceStatus: 'common-practice' } as const;
  const atMost = (name: string, value: number, limit: number, unit: string): Check =>
    makeCheck({ name, value, limit, unit, sense: 'atMost', ...given });
  const atLeast = (name: string, value: number, limit: number): Check =>
    makeCheck({ name, value, limit, unit: '', sense: 'atLeast', ...practice });
  const wanted = 1 - wantedHeadroomFraction;
  const rails = faults.map(({ railV }) => railV);
  const ofRail = { unit: 'V', ...given };
  return [
    ...sums.map(({ name, sumA, limitA }) => atMost(`current of ${name}`, sumA, limitA * wanted, 'A')),
    atMost('current of the regulator', totalA, regulator.limitA * wanted, 'A'),
    ...tracks.map(({ name, devices: own, pins }) =>
      atLeast(`pins that tracks of ${name} hang on`, pins.length, own.length),
    ),
    ...tracks.map(({ name, devices: own }) => {
      // The fault that leaves the fewest tracks; a track that reads off is one that lies, and counts as lost.
      const left = faults.map(({ fault, pin, devices: all }) => ({
        because: `${pin} ${fault === 'short-to-ground' ? 'shorted to ground' : 'touching the battery'}`,
        value: all.filter((d) => own.includes(d.name) && d.state === 'works').length,
      }));
      const { value, because } = left.reduce((a, b) => (b.value < a.value ? b : a));
      return makeCheck({ ...atLeast(`tracks of ${name} left by one fault`, value, 1), because });
    }),
    makeCheck({
      ...ofRail,
      name: 'least volts of the controller’s rail',
      value: Math.min(...rails),
      limit: regulator.worksFromV,
      sense: 'atLeast',
    }),
    ...(regulator.standsV === null
      ? []
      : [atMost('most volts of the controller’s rail', Math.max(...rails), regulator.standsV, 'V')]),
    ...devices.flatMap(({ name, standsV }) => {
      if (standsV === null) return [];
      const volts = faults.flatMap((fault) => fault.devices.filter((d) => d.name === name).map((d) => d.deviceV));
      return [atMost(`most volts at ${name}`, Math.max(...volts), standsV, 'V')];
    }),
  ];
}

function guard(fn: string, input: SensorSupplyBudgetInput): void {
  const { supplyV, regulator, pins, devices } = input;
  needMoreThan(fn, 'supplyV', supplyV);
  needBelowOne(fn, 'supplyToleranceFraction', input.supplyToleranceFraction);
  needBelowOne(fn, 'wantedHeadroomFraction', input.wantedHeadroomFraction);
  needBetween(fn, 'shortOhm', input.shortOhm, 1e-3, 1e6);
  needMoreThan(fn, 'batteryV', input.batteryV, supplyV);
  needMoreThan(fn, 'allowedErrorV', input.allowedErrorV);
  needOneOf(fn, 'reference', input.reference, ['rail', 'own']);
  needObject(fn, 'regulator', regulator);
  needMoreThan(fn, 'regulator.limitA', regulator.limitA);
  needNoLessThan(fn, 'regulator.ownA', regulator.ownA);
  needLimiter(fn, 'regulator.limiter', regulator.limiter);
  needNoLessThan(fn, 'regulator.worksFromV', regulator.worksFromV);
  if (regulator.standsV !== null) needMoreThan(fn, 'regulator.standsV', regulator.standsV);
  needPins(fn, pins);
  needDevices(fn, devices, pins);
}

function needBelowOne(fn: string, field: string, value: number): void {
  needNoLessThan(fn, field, value);
  if (value >= 1) throw new InputError(fn, field, 'below', value, 'must be below 1', '5 % is 0.05');
}
