import { InputError } from '../error/index.js';
import { needAbove, needInteger, needList } from '../error/guard.js';

/** Wires of one size in a bundle. */
export interface BundleWire {
  /** Diameter over the insulation in mm: the largest that the wire may have. Above 0. */
  readonly outerDiameterMm: number;
  /** How many of them, at least 1. */
  readonly count: number;
}

/** The list of wires must have wires in it. Returns how many. */
export function needWires(fn: string, wires: readonly BundleWire[]): number {
  needList(fn, 'wires', wires, 1);
  let total = 0;
  wires.forEach((wire, i) => {
    if (typeof wire !== 'object' || wire === null) {
      throw new InputError(fn, `wires[${i}]`, 'object', wire, 'must be an object with outerDiameterMm and count');
    }
    needAbove(fn, `wires[${i}].outerDiameterMm`, wire.outerDiameterMm);
    needInteger(fn, `wires[${i}].count`, wire.count, 1);
    total += wire.count;
  });
  return total;
}

/** Sum of the squares of all diameters, in mm². */
export function squareSumMm2(wires: readonly BundleWire[]): number {
  return wires.reduce((sum, { outerDiameterMm: d, count }) => sum + count * d * d, 0);
}

/** Sizes from the thickest down, equal ones put together. */
export function thickestFirst(wires: readonly BundleWire[]): BundleWire[] {
  const bySize = new Map<number, number>();
  for (const { outerDiameterMm, count } of wires) {
    bySize.set(outerDiameterMm, (bySize.get(outerDiameterMm) ?? 0) + count);
  }
  return [...bySize]
    .map(([outerDiameterMm, count]) => ({ outerDiameterMm, count }))
    .sort((a, b) => b.outerDiameterMm - a.outerDiameterMm);
}
