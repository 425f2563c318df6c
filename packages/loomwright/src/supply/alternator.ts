import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needList, needObject } from '../error/guard.js';

/** One point of an alternator's curve. */
export interface AlternatorPoint {
  /** Speed of its rotor in rpm, at least 0, rising from point to point. */
  readonly rotorRpm: number;
  /** What it gives there in A, at least 0. */
  readonly currentA: number;
}

/** An alternator by its curve. */
export interface Alternator {
  /** At least two points, straight between them. Begin with the speed at which it gives nothing yet. */
  readonly points: readonly AlternatorPoint[];
  /** Volts that the curve holds for, above 0: 13.5 V by ISO 8854. Powers of loads are turned into amperes with it. */
  readonly curveV: number;
  /** Turns of the rotor for one of the engine, above 0: crank pulley over its own; 2 to 3.5. */
  readonly pulleyRatio: number;
  /** Most speed that the rotor stands in rpm; left out where it is not known. */
  readonly mostRotorRpm?: number;
}

export function needAlternator(fn: string, alternator: Alternator): void {
  needObject(fn, 'alternator', alternator);
  const { points, curveV, pulleyRatio, mostRotorRpm } = alternator;
  needMoreThan(fn, 'alternator.curveV', curveV);
  needMoreThan(fn, 'alternator.pulleyRatio', pulleyRatio);
  if (mostRotorRpm !== undefined) needMoreThan(fn, 'alternator.mostRotorRpm', mostRotorRpm);
  needList(fn, 'alternator.points', points, 2);
  points.forEach((point, i) => {
    const at = `alternator.points[${i}]`;
    needObject(fn, at, point);
    needNoLessThan(fn, `${at}.rotorRpm`, point.rotorRpm);
    needNoLessThan(fn, `${at}.currentA`, point.currentA);
    const before = points[i - 1];
    if (before !== undefined && !(point.rotorRpm > before.rotorRpm)) {
      throw new InputError(fn, `${at}.rotorRpm`, 'order', point.rotorRpm, 'must rise from point to point');
    }
  });
}

/** What the curve says at a rotor speed; null beyond its points, where it says nothing. */
export function curveCurrent(points: readonly AlternatorPoint[], rotorRpm: number): number | null {
  const first = points[0] as AlternatorPoint;
  if (rotorRpm < first.rotorRpm) return first.currentA === 0 || rotorRpm === 0 ? 0 : null;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]] as [AlternatorPoint, AlternatorPoint];
    if (rotorRpm > b.rotorRpm) continue;
    if (rotorRpm === b.rotorRpm) return b.currentA;
    return a.currentA + ((b.currentA - a.currentA) * (rotorRpm - a.rotorRpm)) / (b.rotorRpm - a.rotorRpm);
  }
  return null;
}

/** The least rotor speed from which the curve gives a current; null where it never does. */
export function speedFor(points: readonly AlternatorPoint[], currentA: number): number | null {
  const first = points[0] as AlternatorPoint;
  if (first.currentA >= currentA) return first.rotorRpm;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]] as [AlternatorPoint, AlternatorPoint];
    if (b.currentA < currentA) continue;
    return a.rotorRpm + ((b.rotorRpm - a.rotorRpm) * (currentA - a.currentA)) / (b.currentA - a.currentA);
  }
  return null;
}
