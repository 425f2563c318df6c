import { iec60228Class5, iso19642, solveFeed, type ResistanceBasis, type SizeFeedInput } from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

/** Volts at the load for every stock size, on two resistance bases: the figure of the page and of the notebook. */
export function voltsBySize(
  input: SizeFeedInput,
  areasMm2: readonly number[],
  conductorTempC: number,
  fuseOhm: number,
  chosen: { readonly areaMm2: number; readonly label: string } | null,
): ChartSpec {
  const { supplyV, load, returnParts, limits } = input;
  const outParts = input.outParts.map((part) => ('fuse' in part ? { name: part.name, resistanceOhm: fuseOhm } : part));
  const volts = (areaMm2: number, resistanceBasis: ResistanceBasis): number | null => {
    const known = resistanceBasis.kind !== 'table' || resistanceBasis.rows.some(([name]) => name === String(areaMm2));
    if (!known) return null;
    const solved = solveFeed({ supplyV, outParts, returnParts, load, areaMm2, resistanceBasis, conductorTempC });
    return solved.possible ? solved.loadV : null;
  };
  const line = (resistanceBasis: ResistanceBasis): [number, number][] =>
    areasMm2.flatMap((areaMm2) => {
      const v = volts(areaMm2, resistanceBasis);
      return v === null ? [] : [[areaMm2, v] as [number, number]];
    });
  const limitV = limits.budget?.dropV ?? limits.dropV;
  const iso = line(iso19642);
  const at = chosen === null ? undefined : iso.find(([area]) => area === chosen.areaMm2);
  return {
    title: `Volts at the load by wire size, copper at ${Math.round(conductorTempC)} °C`,
    x: { label: 'Wire', unit: 'mm²', log: true, ticks: [...areasMm2] },
    y: { label: 'At the load', unit: 'V' },
    series: [
      { name: 'ISO 19642', points: iso, colour: 'text' },
      { name: 'IEC 60228 class 5', points: line(iec60228Class5), colour: 'verdigris', labelAt: 2 },
    ],
    ...(limitV === undefined
      ? {}
      : { limits: [{ axis: 'y', value: supplyV - limitV, name: 'least allowed', fails: 'below' }] }),
    ...(at === undefined || chosen === null ? {} : { chosen: { x: at[0], y: at[1], label: chosen.label } }),
  };
}
