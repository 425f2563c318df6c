import { type CrankingCircuit, crankingCircuit, type CrankingCircuitInput } from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

/** The starter's line in this circuit: its speed at each current, from standing still to running free. */
export function starterLine(found: CrankingCircuit, label: string): ChartSpec | null {
  const { line, currentA, speedRpm } = found;
  if (line.length === 0 || speedRpm === null) return null;
  return {
    title: 'The starter in this circuit, from standing still to running free',
    x: { label: 'Current', unit: 'A' },
    y: { label: 'Starter turns', unit: 'rpm' },
    series: [
      {
        name: 'speed',
        points: line.map((point): [number, number] => [point.currentA, point.speedRpm]),
        colour: 'text',
        as: 'line',
        labelAt: 5,
        labelSide: 'above',
      },
    ],
    chosen: { x: currentA, y: speedRpm, label },
  };
}

/** Volts at the starter for each size of the cables that have no size of their own. */
export function startVoltsBySize(
  input: (size: string) => CrankingCircuitInput,
  sizes: readonly string[],
  chosen: { readonly size: string; readonly label: string },
): ChartSpec | null {
  const points = sizes.flatMap((size): [number, number][] => {
    try {
      const found = crankingCircuit(input(size));
      return found.possible ? [[Number(size), found.starterV]] : [];
    } catch (error) {
      // A size that this table of resistance does not have is left out.
      if ((error as { code?: string }).code === 'LOOMWRIGHT_INPUT') return [];
      throw error;
    }
  });
  if (points.length < 2) return null;
  const at = points.find(([area]) => String(area) === chosen.size);
  return {
    title: 'Volts at the starter by size of the cables',
    x: { label: 'Cables', unit: 'mm²', log: true, ticks: points.map(([area]) => area) },
    y: { label: 'At the starter', unit: 'V' },
    series: [{ name: 'while cranking', points, colour: 'text', labelAt: 1 }],
    ...(at === undefined ? {} : { chosen: { x: at[0], y: at[1], label: chosen.label } }),
  };
}
