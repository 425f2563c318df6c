import { checkTerminal, pinCurrent, type CheckTerminalInput, type PinCurrentInput } from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

/** What a terminal may carry over the temperature around it, alone and among its neighbours. */
export function terminalByAir(input: CheckTerminalInput, label: string): ChartSpec {
  const at = (ambientTempC: number, alone: boolean): number | null =>
    checkTerminal({ ...input, ambientTempC, ...(alone ? { loadedCount: 1 } : {}) }).allowedCurrentA;
  const line = (alone: boolean): [number, number][] =>
    Array.from({ length: 25 }, (_, i) => 5 * i).flatMap((tempC) => {
      const currentA = at(tempC, alone);
      return currentA === null ? [] : [[tempC, currentA] as [number, number]];
    });
  const here = at(input.ambientTempC, false);
  return {
    title: 'What the contact may carry, by the air around it',
    x: { label: 'Air around the connector', unit: '°C' },
    y: { label: 'Allowed', unit: 'A' },
    series: [
      { name: 'one loaded contact', points: line(true), colour: 'text', as: 'line', labelAt: 4 },
      ...(input.loadedCount > 1
        ? [{ name: 'with its neighbours', points: line(false), colour: 'blue', as: 'line', labelAt: 2 } as const]
        : []),
    ],
    limits: [{ axis: 'y', value: input.currentA, name: 'current wanted', fails: 'below' }],
    ...(here === null ? {} : { chosen: { x: input.ambientTempC, y: here, label } }),
  };
}

/** The derating curve of a contact, before and after the reduction. */
export function pinByAir(input: PinCurrentInput, label: string): ChartSpec {
  // Closer together towards the limit, where the curve falls fast.
  const temps = Array.from({ length: 45 }, (_, i) => input.maxTempC - (input.maxTempC + 20) * (1 - i / 44) ** 2);
  const curve = (reductionFraction: number): [number, number][] =>
    temps.map((ambientTempC) => [ambientTempC, pinCurrent({ ...input, ambientTempC, reductionFraction }).currentA]);
  return {
    title: 'Derating of the contact',
    x: { label: 'Air around the connector', unit: '°C' },
    y: { label: 'Allowed', unit: 'A' },
    series: [
      { name: 'base curve, held at the rating', points: curve(1), colour: 'text', as: 'line', labelAt: 5 },
      { name: 'to use', points: curve(input.reductionFraction), colour: 'verdigris', as: 'line', labelAt: 22 },
    ],
    chosen: { x: input.ambientTempC, y: pinCurrent(input).currentA, label },
  };
}
