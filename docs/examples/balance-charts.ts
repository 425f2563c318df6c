import {
  energyBudget,
  type EnergyBudgetInput,
  restingDrain,
  type RestingDrainInput,
  runTime,
  type RunTime,
  type RunTimeInput,
  senseError,
  type SenseErrorInput,
} from 'loomwright';
import type { ChartSpec } from '@loomwright/worked/plot';

type Points = [number, number][];

/** So many values from one to another, in equal ratios. */
function inRatios(from: number, to: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => from * (to / from) ** (i / (count - 1)));
}

/** Hours of a battery by the current: Peukert's law, plain ampere-hours, and the form without the hour rate. */
export function hoursByCurrent(input: RunTimeInput, label: string): ChartSpec {
  const rated = input.ratedChargeAh / input.ratedTimeH;
  const at = (currentA: number): RunTime | null => {
    const result = runTime({ ...input, currentA });
    return result.possible ? result : result.nearest;
  };
  const from = Math.min(rated / 2, input.currentA > 0 ? input.currentA : rated);
  const to = Math.max(20 * rated, input.currentA);
  const line = (value: (found: RunTime) => number | null): Points =>
    inRatios(from, to, 31).flatMap((amps): Points => {
      const found = at(amps);
      const y = found === null ? null : value(found);
      return y === null || !(y > 0) ? [] : [[amps, y]];
    });
  const here = input.currentA > 0 ? at(input.currentA) : null;
  const share = (found: RunTime): number => Math.max(found.afterStagesFraction - input.endChargeFraction, 0);
  return {
    title: 'How long it lasts, by the current',
    x: { label: 'Current', unit: 'A', log: true },
    y: { label: 'Time', unit: 'h', log: true },
    series: [
      {
        name: 'plain ampere-hours',
        points: line((f) => f.plainTimeH),
        colour: 'soft',
        as: 'line',
        labelAt: 19,
        labelSide: 'above',
      },
      {
        name: 'C / Iᵏ, refused',
        points: line((f) => (f.unreferencedTimeH === null ? null : f.unreferencedTimeH * share(f))),
        colour: 'red',
        as: 'line',
        labelAt: 9,
        labelSide: 'left',
      },
      { name: 'Peukert', points: line((f) => f.runTimeH), colour: 'text', as: 'line', labelAt: 24, labelSide: 'left' },
    ],
    ...(here !== null && (here.runTimeH ?? 0) > 0
      ? { chosen: { x: input.currentA, y: here.runTimeH as number, label } }
      : {}),
  };
}

/** Charge of a standing battery by the day: with its drains, and by itself alone. */
export function chargeByDay(input: RestingDrainInput, label: string): ChartSpec | null {
  const { standingDays, endChargeFraction, selfAhPerDay, drainAhPerDay } = restingDrain(input);
  if (standingDays === null || standingDays > 3650) return null;
  const end = standingDays * 1.35;
  const line = (lossAhPerDay: number): Points =>
    Array.from({ length: 21 }, (_, i): [number, number] => {
      const day = (end * i) / 20;
      return [day, 100 * Math.max(input.startChargeFraction - (day * lossAhPerDay) / input.fullChargeAh, 0)];
    });
  return {
    title: 'Charge, day by day',
    x: { label: 'Standing', unit: 'd', domain: [0, end] },
    y: { label: 'Charge', unit: '%', domain: [0, 100] },
    series: [
      { name: 'by itself alone', points: line(selfAhPerDay), colour: 'blue', as: 'line', labelAt: 9 },
      {
        name: 'with its drains',
        points: line(selfAhPerDay + drainAhPerDay),
        colour: 'text',
        as: 'line',
        labelAt: 6,
        labelSide: 'left',
      },
    ],
    limits: [{ axis: 'y', value: 100 * endChargeFraction, name: 'to be left', fails: 'below' }],
    chosen: { x: standingDays, y: 100 * endChargeFraction, label },
  };
}

/** What the alternator gives by the speed of the engine, and what each state asks for. */
export function outputBySpeed(input: EnergyBudgetInput): ChartSpec {
  const { alternator } = input;
  const { states } = energyBudget(input);
  const points = alternator.points.map(({ rotorRpm, currentA }): [number, number] => [
    rotorRpm / alternator.pulleyRatio,
    currentA,
  ]);
  // States that ask for the same at the same speed are one point: the worst of them colours it.
  const asked: { name: string; rotorRpm: number; meanA: number; balanceA: number }[] = [];
  for (const { name, rotorRpm, meanA, balanceA } of states) {
    if (rotorRpm <= 0) continue;
    const same = asked.find((one) => one.rotorRpm === rotorRpm && one.meanA === meanA);
    if (same === undefined) asked.push({ name, rotorRpm, meanA, balanceA });
    else Object.assign(same, { name: `${same.name}, ${name}`, balanceA: Math.min(same.balanceA, balanceA) });
  }
  const most = Math.max(...points.map(([, y]) => y), ...asked.map(({ meanA }) => meanA));
  const mostRpm = Math.max(...alternator.points.map(({ rotorRpm }) => rotorRpm));
  // States of one speed lie one above the other: their names go to different sides. Left of a
  // point runs the curve, but near the end of the scale there is no room on the right.
  const sides = [{}, { labelSide: 'above' }, { labelSide: 'left' }] as const;
  return {
    title: 'What the curve gives, and what each state takes',
    x: { label: 'Engine', unit: 'rpm', domain: [0, (points.at(-1) as [number, number])[0]] },
    y: { label: 'Current', unit: 'A', domain: [0, most * 1.12] },
    series: [
      { name: 'alternator, cold', points, colour: 'verdigris', labelAt: Math.max(points.length - 2, 0) },
      ...asked.map(({ name, rotorRpm, meanA, balanceA }, i) => ({
        name,
        points: [[rotorRpm / alternator.pulleyRatio, meanA]] as Points,
        colour: balanceA < 0 ? ('red' as const) : ('copper' as const),
        as: 'dots' as const,
        labelAt: 0,
        ...(rotorRpm > 0.8 * mostRpm ? ({ labelSide: 'left' } as const) : sides[i % sides.length]),
      })),
    ],
  };
}

/** Volts at the battery as all currents rise together, against what it wants. */
export function batteryByLoad(input: SenseErrorInput, label: string): ChartSpec {
  const at = (share: number): number =>
    senseError({ ...input, parts: input.parts.map((part) => ({ ...part, currentA: part.currentA * share })) }).batteryV;
  const { batteryV, leastBatteryV, mostBatteryV } = senseError(input);
  const points = [0, 0.5, 1, 1.5].map((share): [number, number] => [100 * share, at(share)]);
  const low = Math.min(leastBatteryV, ...points.map(([, y]) => y));
  const high = Math.max(mostBatteryV, ...points.map(([, y]) => y));
  return {
    title: 'What the battery gets as the currents rise',
    x: { label: 'Currents, of those given', unit: '%', domain: [0, 150] },
    y: { label: 'At the posts', unit: 'V', domain: [low - 0.2, high + 0.2] },
    series: [{ name: '', points, colour: 'text', as: 'line' }],
    limits: [
      { axis: 'y', value: leastBatteryV, name: 'at least', fails: 'below' },
      { axis: 'y', value: mostBatteryV, name: 'at most', fails: 'above' },
    ],
    chosen: { x: 100, y: batteryV, label },
  };
}
