import { type Load, settle } from '../load/load.js';
import type { NetworkLoad } from './element.js';
import { loadVolts } from './load-steps.js';
import { loadState, type LoadState } from './network-result.js';
import type { SettledDiodes } from './diode-states.js';
import type { SettledLoads } from './settle-loads.js';

/** Each load with its volts and current, and why it draws nothing where electronics are not fed. */
export function loadStates(loads: readonly NetworkLoad[], settled: SettledDiodes): readonly LoadState[] {
  const { parts, solved, equations, unfed, backwards } = settled;
  const { branchOf, joinedFrom, joinedTo } = equations.wiring;
  return loads.map(({ name, load }, i): LoadState => {
    const k = branchOf.loads[i] as number;
    const voltageV = loadVolts(equations, solved, i);
    const dutyFraction = 'dutyFraction' in load ? load.dutyFraction : 1;
    if (unfed[i] === 1) {
      const apart = parts.partOf[joinedFrom[k] as number] !== parts.partOf[joinedTo[k] as number];
      if (apart) {
        const because = 'no current can come back from it: its ends are not on one circuit';
        return { ...loadState(name, null, 0), dutyFraction, fed: false, code: 'no-way', because };
      }
      const why = backwards[i] === 1 ? BACKWARDS : whyNot(load, i, settled);
      return { ...loadState(name, voltageV, 0), dutyFraction, fed: false, ...why };
    }
    const currentA = solved.branchA[k] as number;
    const motor = load.kind === 'motor' || load.kind === 'h-bridge-motor' ? settle(load, Math.abs(voltageV), 0) : null;
    const turns = motor === null || 'code' in motor ? null : motor;
    const speedRpm = turns === null || turns.speedRpm === null ? null : turns.speedRpm * (voltageV < 0 ? -1 : 1);
    return { ...loadState(name, voltageV, currentA), dutyFraction, speedRpm, stalled: turns?.stalled ?? false };
  });
}

const BACKWARDS = {
  code: 'against-a-diode',
  because: 'what it draws could only come through a diode the wrong way',
};

/** Why electronics draw nothing, from the volts that they see without any others, and what these come through. */
function whyNot(load: Load, i: number, { bare, equations }: SettledLoads): Pick<LoadState, 'code' | 'because'> {
  const { circuit, topV, wiring } = equations;
  const emptyV = loadVolts(equations, bare, i);
  if (!(emptyV > 1e-12 * topV)) {
    const back = emptyV < -1e-9 * topV;
    return { code: 'no-volts', because: back ? 'its volts are the wrong way round' : 'there are no volts across it' };
  }
  const ohm = circuit.throughOhm(bare, wiring.branchOf.loads[i] as number);
  const alone = settle(load, emptyV, ohm);
  if ('code' in alone) return { code: alone.code, because: alone.because };
  return {
    code: 'not-beside-the-others',
    because: `${emptyV} V behind ${ohm} Ω would feed it alone, but not beside the others`,
  };
}
