import { type Load, settle } from '../load/load.js';
import { solveSymmetric } from '../number/solve-symmetric.js';
import type { NetworkLoad } from './element.js';
import { acrossV } from './load-steps.js';
import type { LoadState } from './network-result.js';
import type { SettledLoads } from './settle-loads.js';

/** Each load with its volts and current, and why it draws nothing where electronics are not fed. */
export function loadStates(loads: readonly NetworkLoad[], settled: SettledLoads): readonly LoadState[] {
  const { parts, solved, equations, unfed } = settled;
  const { branchOf, joinedFrom, joinedTo } = equations.wiring;
  return loads.map(({ name, load }, i): LoadState => {
    const k = branchOf.loads[i] as number;
    const voltageV = acrossV(equations, solved, i);
    const dutyFraction = 'dutyFraction' in load ? load.dutyFraction : 1;
    const still = { name, currentA: 0, powerW: 0, dutyFraction, speedRpm: null, stalled: false };
    if (unfed[i] === 1) {
      const apart = parts.partOf[joinedFrom[k] as number] !== parts.partOf[joinedTo[k] as number];
      if (apart) {
        const because = 'no current can come back from it: its ends are not on one circuit';
        return { ...still, voltageV: null, fed: false, code: 'no-way', because };
      }
      return { ...still, voltageV, fed: false, ...whyNot(load, i, voltageV, settled) };
    }
    const currentA = solved.branchA[k] as number;
    const motor = load.kind === 'motor' || load.kind === 'h-bridge-motor' ? settle(load, Math.abs(voltageV), 0) : null;
    const turns = motor === null || 'code' in motor ? null : motor;
    const speedRpm = turns === null || turns.speedRpm === null ? null : turns.speedRpm * (voltageV < 0 ? -1 : 1);
    return {
      ...still,
      voltageV,
      currentA,
      powerW: voltageV * currentA,
      speedRpm,
      stalled: turns?.stalled ?? false,
      fed: true,
      code: null,
      because: null,
    };
  });
}

/** Why electronics draw nothing, from the volts that they see without and the resistance that these come through. */
function whyNot(load: Load, i: number, emptyV: number, settled: SettledLoads): Pick<LoadState, 'code' | 'because'> {
  const { equations, solved } = settled;
  if (!(emptyV > 1e-12 * equations.topV)) {
    const back = emptyV < -1e-9 * equations.topV;
    return { code: 'no-volts', because: back ? 'its volts are the wrong way round' : 'there are no volts across it' };
  }
  const { analysis, wiring } = equations;
  const k = wiring.branchOf.loads[i] as number;
  const a = analysis.unknown[wiring.joinedFrom[k] as number] as number;
  const b = analysis.unknown[wiring.joinedTo[k] as number] as number;
  const sides = new Float64Array(analysis.nodeOf.length);
  if (a >= 0) sides[a] = 1;
  if (b >= 0) sides[b] = (sides[b] as number) - 1;
  const x = solveSymmetric({ factor: solved.factor, sides });
  const ohm = (a < 0 ? 0 : (x[a] as number)) - (b < 0 ? 0 : (x[b] as number));
  const alone = settle(load, emptyV, Math.max(ohm, 0));
  if ('code' in alone) return { code: alone.code, because: alone.because };
  return {
    code: 'not-beside-the-others',
    because: `${emptyV} V behind ${ohm} Ω would feed it, but not beside what it takes from the others`,
  };
}
