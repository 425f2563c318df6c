import { integrate } from '../number/index.js';
import { batteryAt, type SplitBattery } from './split-battery.js';
import type { SplitCircuit } from './split-charge-input.js';
import { solveSplit, type SplitState } from './split-solve.js';

/** How full both are after some driving, and what flows then. */
export interface SplitFill {
  readonly driveTimeH: number;
  readonly serviceChargeFraction: number;
  readonly starterChargeFraction: number;
  readonly serviceV: number;
  readonly serviceA: number;
  readonly starterV: number;
  readonly starterA: number;
  readonly alternatorA: number;
  readonly linkA: number;
}

const STEPS = 30;
const TOLERANCE = 1e-7;
/** What lies beyond has no number: no vehicle drives on for so long. */
const MOST_H = 1e4;

type Shares = readonly [starter: number, service: number];

const stateAt = (circuit: SplitCircuit, [starter, service]: Shares): SplitState | null =>
  solveSplit(circuit, { starter: batteryAt(circuit.starter, starter), service: batteryAt(circuit.service, service) });

/** Change of charge in an hour; a full battery stays full, and an empty one gives no more. */
function rate({ chargeAh, chargeEfficiency }: SplitBattery, share: number, currentA: number): number {
  if (currentA > 0) return share >= 1 ? 0 : (chargeEfficiency * currentA) / chargeAh;
  return share <= 0 ? 0 : currentA / chargeAh;
}

function ratesOf(circuit: SplitCircuit): (y: Float64Array, out: Float64Array) => void {
  return (y, out) => {
    const shares = [y[0] as number, y[1] as number] as const;
    const found = stateAt(circuit, shares);
    out[0] = found === null ? 0 : rate(circuit.starter, shares[0], found.starterA);
    out[1] = found === null ? 0 : rate(circuit.service, shares[1], found.serviceA);
  };
}

const startOf = ({ starter, service }: SplitCircuit): Float64Array =>
  Float64Array.of(starter.chargeFraction, service.chargeFraction);

/** Points through the drive, from its start to its end. */
export function fillOf(circuit: SplitCircuit): readonly SplitFill[] {
  const rates = ratesOf(circuit);
  const duration = circuit.driveTimeH / STEPS;
  let y = startOf(circuit);
  return Array.from({ length: STEPS + 1 }, (_, i) => i).flatMap((i): SplitFill[] => {
    if (i > 0) y = integrate({ fn: 'splitCharge', rates, start: y, duration, tolerance: TOLERANCE }).state;
    const [starterChargeFraction, serviceChargeFraction] = [y[0], y[1]].map((share) =>
      Math.min(Math.max(share as number, 0), 1),
    ) as [number, number];
    const found = stateAt(circuit, [starterChargeFraction, serviceChargeFraction]);
    if (found === null) return [];
    const { serviceV, serviceA, starterV, starterA, alternatorA, linkA } = found;
    const driveTimeH = (circuit.driveTimeH * i) / STEPS;
    const shares = { serviceChargeFraction, starterChargeFraction };
    return [{ driveTimeH, ...shares, serviceV, serviceA, starterV, starterA, alternatorA, linkA }];
  });
}

/** Hours until the service battery has a charge; null where it never has it. */
export function timeToCharge(circuit: SplitCircuit, share: number): number | null {
  if (circuit.service.chargeFraction >= share) return 0;
  const { time, ended } = integrate({
    fn: 'splitCharge',
    rates: ratesOf(circuit),
    start: startOf(circuit),
    duration: MOST_H,
    tolerance: TOLERANCE,
    event: (y) => (y[1] as number) - share,
  });
  return ended === 'event' ? time : null;
}
