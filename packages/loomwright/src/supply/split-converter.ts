import { alone, type BatteryPoint, branchBehind, type BranchPoint, voltsAt } from './split-battery.js';
import type { SplitLink } from './split-charge-input.js';

/**
 * `holds-volts`: at its set volts. `limits-current`: at its most current. `folds-back`: it draws less, so that its
 * input does not sink below the least. `off`: its input is below the least without it.
 */
export type ConverterMode = 'holds-volts' | 'limits-current' | 'folds-back' | 'off';

type Converter = Extract<SplitLink, { readonly kind: 'converter' }>;

interface ConverterPoint extends BranchPoint {
  readonly mode: ConverterMode;
  readonly inV: number;
  readonly outA: number;
}

/** A converter behind volts and a cable, with the battery and its loads at its output. */
export function converterAt(
  { outV, mostOutA, conversionEfficiency, leastInV }: Converter,
  ohm: number,
  battery: BatteryPoint,
  loadA: number,
  feedV: number,
): ConverterPoint {
  const held = branchBehind(outV, 0, 0, battery, loadA);
  const full = held.currentA <= mostOutA ? held : givenOut(battery, loadA, mostOutA);
  const wantsW = (full.batteryV * full.currentA) / conversionEfficiency;
  // Power behind a resistance: R I² − V I + P = 0, the root of less current.
  const room = feedV * feedV - 4 * ohm * wantsW;
  const wantsA = room < 0 ? Infinity : (2 * wantsW) / (feedV + Math.sqrt(room));
  const mostInA = Math.max((feedV - leastInV) / ohm, 0);
  if (wantsA <= mostInA) {
    const mode = full === held ? 'holds-volts' : 'limits-current';
    return { ...full, currentA: wantsA, outA: full.currentA, mode, inV: feedV - ohm * wantsA };
  }
  if (mostInA === 0) return { ...alone(battery, loadA), mode: 'off', inV: feedV, outA: 0 };
  const outW = conversionEfficiency * leastInV * mostInA;
  const outA = currentFor(battery, loadA, outW);
  return { ...givenOut(battery, loadA, outA), currentA: mostInA, outA, mode: 'folds-back', inV: leastInV };
}

/** Current out of the converter that makes a power there: I (V + R (I − I₀)) = P on the line that it then lies on. */
function currentFor({ chargeV, restV, resistanceOhm }: BatteryPoint, loadA: number, outW: number): number {
  const on = (lineV: number): number => {
    const b = lineV - resistanceOhm * loadA;
    return (2 * outW) / (b + Math.sqrt(b * b + 4 * resistanceOhm * outW));
  };
  const charging = on(chargeV ?? restV);
  // Between the lines all of it goes into the loads.
  return charging > loadA ? charging : Math.min(on(restV), loadA);
}

/** The battery where so much comes out of the converter. */
function givenOut(battery: BatteryPoint, loadA: number, outA: number): BranchPoint {
  const batteryA = outA - loadA;
  return { currentA: outA, batteryA, batteryV: voltsAt(battery, batteryA) };
}
