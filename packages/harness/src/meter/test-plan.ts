import type { ExpectedReading, LoomPlan, PathElement } from '../loom/plan-type.js';
import { node } from '../loom/draft.js';
import type { LoomLoad } from '../loom/schema.js';
import { SPREAD_BASIS } from '../loom/spread.js';
import { METER_BASIS, meterErrorA, meterErrorOhm, meterErrorV } from './meter.js';
import type { TestPlan, TestStageKey, TestStep } from './test-plan-type.js';
import { ifNotOf, settingOf, STAGES } from './test-words.js';

const ORDER: readonly TestStageKey[] = ['dead', 'first power', 'standing', 'cranking', 'running'];
const UNIT = { posts: 'V', volts: 'V', millivolts: 'mV', ground: 'mV', amps: 'A', ohms: 'Ω' } as const;
/** Volts at the posts that may differ from the plan's before the rest is read (common practice). */
const POSTS_V = 0.3;
/** What a lamp in series may pass while it is called dark: clocks and memories (common practice). */
const DARK_A = 0.05;
/** Least ohms between what should not touch, in Ω (common practice). */
const APART_OHM = 10_000;

/**
 * Tests of a planned vehicle in stages: dead, first power, standing, cranking, running. Each step says where the probes
 * go, what the meter is set to, what it should read, between which limits it passes, and what may be wrong if not.
 *
 * Use it on what `planLoom` answered; the sheet of readings is made from it. Limits are what a healthy part may have by
 * the stated spread (`basis`), widened by the error of a hand-held meter. A step that passes proves no more than that:
 * a joint is proved by millivolts with its current flowing, never by ohms.
 *
 * $$x_\mathrm{low} - e(x_\mathrm{low}) \le x \le x_\mathrm{high} + e(x_\mathrm{high})$$
 *
 * @param plan what `planLoom` answered
 * @returns the stages with their steps, and what spreads and limits rest on
 * @throws nothing
 * @source the plan's own; spreads and meter common-practice
 */
export function testPlan(plan: LoomPlan): TestPlan {
  const parts = new Map(
    plan.circuits.map(({ name, path }) => [name, new Map(path.map((one) => [one.name, one.kind]))]),
  );
  const partOf = ({ circuit, part }: ExpectedReading): PathElement['kind'] | null =>
    part === null ? null : (parts.get(circuit)?.get(part) ?? 'body');
  const lamps = Object.keys(plan.loom.supply.batteries).sort().map(lampStep);
  const cranking = crankingStates(plan.loom);
  const byStage = new Map(ORDER.map((key): [TestStageKey, ExpectedReading[]] => [key, []]));
  for (const reading of plan.readings) byStage.get(stageOf(plan.loom, cranking, reading))?.push(reading);
  let number = 0;
  const stages = ORDER.map((key) => {
    const readings = (byStage.get(key) ?? []).sort(first);
    const steps = [
      ...(key === 'first power' ? lamps : []),
      ...readings.map((reading) => stepOf(reading, partOf(reading))),
    ].map((step) => ({ ...step, number: ++number }));
    return { key, ...STAGES[key], steps };
  });
  return {
    vehicle: plan.vehicle.name,
    stages: stages.filter(({ steps }) => steps.length > 0),
    basis: [...SPREAD_BASIS, METER_BASIS],
  };
}

/** Posts come before what follows them, in each state. */
function first(a: ExpectedReading, b: ExpectedReading): number {
  return Number(b.kind === 'posts') - Number(a.kind === 'posts');
}

function stageOf(
  loom: LoomPlan['loom'],
  cranking: ReadonlySet<string>,
  { kind, state }: ExpectedReading,
): TestStageKey {
  if (state === null) return 'dead';
  if (kind === 'amps') return 'first power';
  if (cranking.has(state)) return 'cranking';
  return loom.states[state]?.alternator === 'off' ? 'standing' : 'running';
}

/** States in which something turns the engine over: what the file calls so, or what has the budget of a starter. */
function crankingStates({ items }: LoomPlan['loom']): ReadonlySet<string> {
  const cranks = (item: LoomPlan['loom']['items'][string]): item is LoomLoad =>
    item.kind === 'load' && (item.cranks ?? item.budget === 'starter-0-8-v');
  return new Set(
    Object.values(items)
      .filter(cranks)
      .flatMap(({ on }) => on),
  );
}

function lampStep(battery: string): TestStep {
  return {
    number: 0,
    name: `battery ${battery}: lamp in series, all fuses out`,
    kind: 'lamp',
    state: null,
    circuit: battery,
    part: null,
    red: `cable of ${node.negative(battery)}`,
    black: node.negative(battery),
    setting: settingOf('lamp', null),
    unit: 'A',
    currentA: 0,
    value: 0,
    because: null,
    lowValue: 0,
    highValue: 0,
    lowLimit: null,
    highLimit: DARK_A,
    ifNot: 'a way past the fuses: a wire before its fuse on body, or something connected to the post itself',
  };
}

function stepOf(reading: ExpectedReading, part: PathElement['kind'] | null): TestStep {
  const { name, kind, state, circuit, probes, value, because, currentA, lowValue, highValue } = reading;
  return {
    number: 0,
    name,
    kind,
    state,
    circuit,
    part: reading.part,
    red: probes[0],
    black: probes[1],
    setting: settingOf(kind, value),
    unit: UNIT[kind],
    currentA,
    value,
    because,
    lowValue,
    highValue,
    ...limitsOf(reading),
    ifNot: ifNotOf(reading, part),
  };
}

function limitsOf({
  kind,
  name,
  value,
  lowValue,
  highValue,
}: ExpectedReading): Pick<TestStep, 'lowLimit' | 'highLimit'> {
  if (kind === 'ohms' && name.endsWith('load out')) return { lowLimit: APART_OHM, highLimit: null };
  if (value === null) return { lowLimit: null, highLimit: null };
  if (kind === 'posts') return { lowLimit: value - POSTS_V, highLimit: value + POSTS_V };
  const error = (of: number): number => {
    if (kind === 'ohms') return meterErrorOhm(of);
    if (kind === 'amps') return meterErrorA(of);
    return kind === 'volts' ? meterErrorV(of) : 1000 * meterErrorV(of / 1000);
  };
  const [low, high] = [lowValue ?? value, highValue ?? value];
  const lowLimit = low - error(low);
  return { lowLimit: lowLimit > 0 ? lowLimit : null, highLimit: high + error(high) };
}
