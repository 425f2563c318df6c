import { ConvergenceError } from '../error/index.js';
import { alone, type BatteryPoint, branchBehind, type BranchPoint } from './split-battery.js';
import type { SplitCircuit } from './split-charge-input.js';
import { converterAt, type ConverterMode } from './split-converter.js';

/** The circuit at one moment. */
export interface SplitState {
  readonly alternatorV: number;
  readonly alternatorA: number;
  /** What holds it: the regulator its volts, the alternator its most current; `none` where it gives nothing. */
  readonly heldBy: 'regulator' | 'alternator' | 'none';
  /** Posts of each battery, and current into it, below 0 where it gives. */
  readonly starterV: number;
  readonly starterA: number;
  readonly serviceV: number;
  readonly serviceA: number;
  /** Current in the service cable. */
  readonly linkA: number;
  /** Lost in the relay or diode on the way to the service battery; null for a converter. And in the service cable. */
  readonly linkDropV: number | null;
  readonly cableDropV: number;
  /** Heat in W of the relay, the diode to the service battery or the converter, and of the service cable. */
  readonly linkW: number;
  readonly cableW: number;
  /** What the converter does, and its volts in; null without one. */
  readonly converterMode: ConverterMode | null;
  readonly converterInV: number | null;
}

/** The two batteries as they are at the moment. */
export interface SplitPoints {
  readonly starter: BatteryPoint;
  readonly service: BatteryPoint;
}

interface Way extends BranchPoint {
  readonly mode: ConverterMode | null;
  readonly inV: number | null;
  readonly outA: number;
}

/** All that follows from the volts where the ways part. */
interface Part {
  readonly partV: number;
  readonly starter: BranchPoint;
  readonly service: Way;
  readonly totalA: number;
  readonly alternatorV: number;
  /** What the regulator sees less what it holds; the total less the most that there is. */
  readonly overV: number;
  readonly overA: number;
}

const NOUGHT = 1e-12;

/**
 * Volts and amperes at one moment; null where the loads pull all volts down. The unknown is the volts where the ways
 * to the batteries part. Currents rise with it in straight pieces (a converter's fall, and its piece is bent), so that
 * the pieces are looked through, and the one with a change of sign is solved.
 */
export function solveSplit(circuit: SplitCircuit, points: SplitPoints, linked = true): SplitState | null {
  const at = (partV: number): Part => partAt(circuit, points, linked, partV);
  let top = at(2 * circuit.alternator.heldV);
  for (let i = 0; (Math.max(top.overV, top.overA) < 0 || top.totalA < 0) && i < 60; i++) top = at(2 * top.partV);
  const kinks = kinksOf(circuit, points).filter((volts) => volts > 0 && volts < top.partV);
  const ends = [at(0), ...[...new Set(kinks)].sort((a, b) => a - b).map(at), top];
  const bottom = ends[0] as Part;
  if (bottom.overA >= 0) return null;
  // A regulator that looks at a battery which is not joined never sees its volts.
  const regulated = bottom.overV >= 0 ? bottom : top.overV < 0 ? top : rootOf(at, ends, (part) => part.overV);
  let found = regulated;
  let heldBy: SplitState['heldBy'] = 'regulator';
  if (regulated.overA > 0) {
    // A converter draws more as its volts sink, which can give a second, lower answer: the upper one is meant.
    const below = ends.filter(({ partV }) => partV < regulated.partV);
    found = rootOf(at, [...below, regulated], ({ overA }) => overA);
    heldBy = 'alternator';
  } else if (regulated.totalA <= 0) {
    const above = ends.filter(({ partV }) => partV > regulated.partV);
    if (regulated.totalA < 0) found = rootOf(at, [regulated, ...above], ({ totalA }) => totalA);
    heldBy = 'none';
  }
  const { starter, service, totalA, alternatorV } = found;
  return {
    alternatorV,
    alternatorA: Math.abs(totalA) < NOUGHT ? 0 : totalA,
    heldBy,
    starterV: starter.batteryV,
    starterA: starter.batteryA,
    serviceV: service.batteryV,
    serviceA: service.batteryA,
    ...linkOf(circuit, service),
  };
}

/**
 * The uppermost point at which a value passes 0, from below to above. A piece is straight, so that one step is enough;
 * that of a converter is bent, and takes a few by false position, the end that stays halved (Illinois).
 */
function rootOf(at: (partV: number) => Part, ends: readonly Part[], of: (part: Part) => number): Part {
  let k = ends.length - 1;
  while (k > 1 && of(ends[k - 1] as Part) >= 0) k--;
  let [{ partV: low }, { partV: high }] = [ends[k - 1], ends[k]] as [Part, Part];
  let [f, g] = [of(ends[k - 1] as Part), of(ends[k] as Part)];
  const near = NOUGHT * Math.max(1, Math.abs(f), Math.abs(g));
  let side = 0;
  for (let step = 0; step < 200; step++) {
    const part = at(low + ((high - low) * f) / (f - g));
    const value = of(part);
    if (Math.abs(value) <= near || high - low <= NOUGHT * high) return part;
    if (value < 0) {
      [low, f] = [part.partV, value];
      if (side < 0) g /= 2;
    } else {
      [high, g] = [part.partV, value];
      if (side > 0) f /= 2;
    }
    side = value;
  }
  throw new ConvergenceError('splitCharge', 200, low, f);
}

function partAt(circuit: SplitCircuit, points: SplitPoints, linked: boolean, partV: number): Part {
  const { alternator, mainOhm, starterLoadA, link } = circuit;
  const star = link.kind === 'isolator-diodes';
  const starter = starterAt(circuit, points.starter, partV);
  const service = linked ? serviceAt(circuit, points.service, partV) : open(circuit, points.service);
  const totalA = starter.currentA + service.currentA + (star ? 0 : starterLoadA);
  const alternatorV = star ? partV : partV + mainOhm * totalA;
  const { senseAt, heldV, mostA } = alternator;
  const seenV =
    senseAt === 'alternator' ? alternatorV : senseAt === 'starter-battery' ? starter.batteryV : service.batteryV;
  return { partV, starter, service, totalA, alternatorV, overV: seenV - heldV, overA: totalA - mostA };
}

/** Volts at which a battery begins to take or to give, reaches its most, or a diode begins to block. */
function kinksOf(
  { link, mainOhm, serviceOhm, starterLoadA, serviceLoadA }: SplitCircuit,
  points: SplitPoints,
): number[] {
  const of = (battery: BatteryPoint, ohm: number, dropV: number, loadA: number): number[] => {
    const { restV, chargeV, acceptanceA, resistanceOhm } = battery;
    const shift = dropV + ohm * loadA;
    const most = chargeV === null || acceptanceA === null ? [] : [chargeV + acceptanceA * (ohm + resistanceOhm)];
    return [
      ...[restV, ...(chargeV === null ? [] : [chargeV]), ...most].map((v) => v + shift),
      restV + dropV - loadA * resistanceOhm,
    ];
  };
  if (link.kind === 'converter') return of(points.starter, 0, 0, 0);
  if (link.kind === 'relay') {
    return [...of(points.starter, 0, 0, 0), ...of(points.service, serviceOhm + link.contactOhm, 0, serviceLoadA)];
  }
  const { thresholdV, diodeOhm } = link;
  const service = of(points.service, serviceOhm + diodeOhm, thresholdV, serviceLoadA);
  if (link.kind === 'diode') return [...of(points.starter, 0, 0, 0), ...service];
  return [...of(points.starter, mainOhm + diodeOhm, thresholdV, starterLoadA), ...service];
}

function starterAt({ link, mainOhm, starterLoadA }: SplitCircuit, battery: BatteryPoint, partV: number): BranchPoint {
  if (link.kind !== 'isolator-diodes') return branchBehind(partV, 0, null, battery, 0);
  return branchBehind(partV, mainOhm + link.diodeOhm, link.thresholdV, battery, starterLoadA);
}

function serviceAt(circuit: SplitCircuit, battery: BatteryPoint, partV: number): Way {
  const { link, serviceOhm, serviceLoadA } = circuit;
  if (link.kind === 'converter') return converterAt(link, serviceOhm, battery, serviceLoadA, partV);
  const [ohm, dropV] = link.kind === 'relay' ? [link.contactOhm, null] : [link.diodeOhm, link.thresholdV];
  const way = branchBehind(partV, serviceOhm + ohm, dropV, battery, serviceLoadA);
  return { ...way, mode: null, inV: null, outA: way.currentA };
}

function open({ serviceLoadA }: SplitCircuit, battery: BatteryPoint): Way {
  return { ...alone(battery, serviceLoadA), mode: null, inV: null, outA: 0 };
}

type LinkPart = Pick<
  SplitState,
  'linkA' | 'linkDropV' | 'cableDropV' | 'linkW' | 'cableW' | 'converterMode' | 'converterInV'
>;

function linkOf({ link, serviceOhm }: SplitCircuit, way: Way): LinkPart {
  const { currentA: linkA, mode: converterMode, inV: converterInV } = way;
  const cableDropV = linkA * serviceOhm;
  const linkDropV =
    link.kind === 'converter'
      ? null
      : link.kind === 'relay'
        ? linkA * link.contactOhm
        : linkA === 0
          ? 0
          : link.thresholdV + linkA * link.diodeOhm;
  const linkW = linkDropV === null ? (converterInV ?? 0) * linkA - way.batteryV * way.outA : linkDropV * linkA;
  return { linkA, linkDropV, cableDropV, linkW, cableW: cableDropV * linkA, converterMode, converterInV };
}
