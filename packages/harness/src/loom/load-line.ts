import { solvePath } from 'loomwright';
import type { DraftLoad } from './draft.js';

/** Current of a load behind its path at the volts before the path, and how much more it takes for each volt more. */
export interface PathLine {
  readonly currentA: number;
  readonly slopePerOhm: number;
}

/** Whether its line, put in at other volts, is still right at these. */
export function isStraight(load: DraftLoad, sourceV: number, seriesOhm: number): boolean {
  if (load.kind === 'constant-current') return load.currentA * seriesOhm < sourceV;
  return load.kind === 'resistance';
}

/**
 * The line of a load behind the resistance of its path, or null where it cannot be fed. A resistance passes current
 * either way; all others need volts the right way round. Currents are those of `solvePath`; slopes are their
 * derivatives:
 *
 * $$\frac{\mathrm dI}{\mathrm dV} = \frac{g}{1 + gR} \qquad g_\mathrm{power} = -\frac{I}{V_\mathrm{load}} \qquad
 * g_\mathrm{motor} = \frac{2I/E}{1 + 2IR_\mathrm{w}/E}$$
 */
export function lineOf(load: DraftLoad, sourceV: number, seriesOhm: number): PathLine | null {
  if (load.kind === 'resistance') {
    const slopePerOhm = 1 / (load.resistanceOhm + seriesOhm);
    return { currentA: sourceV * slopePerOhm, slopePerOhm };
  }
  if (!(sourceV > 0)) return null;
  if (load.kind === 'constant-current') {
    return load.currentA * seriesOhm < sourceV ? { currentA: load.currentA, slopePerOhm: 0 } : null;
  }
  const outParts = [{ name: 'path', resistanceOhm: seriesOhm }];
  const solved = solvePath({ supplyV: sourceV, outParts, returnParts: [], load });
  if (!solved.possible) return null;
  const { currentA, loadV } = solved;
  if (load.kind === 'constant-power') {
    const g = -currentA / loadV;
    return { currentA, slopePerOhm: g / (1 + g * seriesOhm) };
  }
  const ohm = load.windingResistanceOhm;
  const emfV = loadV - currentA * ohm;
  if (!(emfV > 1e-9 * loadV)) return { currentA, slopePerOhm: 1 / (ohm + seriesOhm) };
  if (load.torque === 'constant') return { currentA, slopePerOhm: 0 };
  const g = (2 * currentA) / emfV;
  return { currentA, slopePerOhm: g / (1 + g * (ohm + seriesOhm)) };
}
