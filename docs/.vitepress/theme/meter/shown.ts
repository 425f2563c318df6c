// What the page shows of readings and of what they tell, as texts and plain data: made in the worker while somebody
// types, and once when the site is built.
import { diagnose, type Diagnosis, type LoomPlan, type MeterReading, type Suspect } from '@loomwright/harness';
import { formatQuantity } from '@loomwright/worked/quantity';

/** A place where the probes go, with what the plan expects there. */
export interface MeterRow {
  readonly key: string;
  readonly label: string;
  readonly unit: 'V' | 'mV';
  readonly planned: string;
  readonly reading: MeterReading;
}

/** What can be chosen. */
export interface MeterChoices {
  /** Circuits that carry current in each state. */
  readonly states: readonly { readonly name: string; readonly circuits: readonly string[] }[];
}

export interface ShownSuspect {
  readonly name: string;
  readonly extra: string;
  readonly range: string;
  readonly heat: string;
}

export interface ShownDiagnosis {
  readonly verdict: Diagnosis['verdict'];
  readonly title: string;
  readonly sentences: readonly string[];
  readonly suspects: readonly ShownSuspect[];
  readonly rows: readonly {
    readonly name: string;
    readonly read: string;
    readonly planned: string;
    readonly explained: string;
  }[];
}

const volts = (value: number): string =>
  Math.abs(value) < 1
    ? formatQuantity(1000 * value, 'mV', { decimals: 1 })
    : formatQuantity(value, 'V', { decimals: 2 });
const ohm = (value: number, round: 'up' | 'down' | 'nearest'): string =>
  formatQuantity(value, 'Ω', { digits: 2, round, prefix: 'natural' });

export function choicesOf(plan: LoomPlan): MeterChoices {
  const live = new Set(
    plan.circuits.filter(({ nodes, path }) => nodes !== null && path.length > 0).map(({ name }) => name),
  );
  return {
    states: plan.states.flatMap(({ name, currents }) => {
      const circuits = Object.keys(currents).filter(
        (one) => live.has(one) && !one.startsWith('coil ') && Math.abs(currents[one] ?? 0) >= 0.1,
      );
      return circuits.length === 0 ? [] : [{ name, circuits }];
    }),
  };
}

/** The readings that one takes on a circuit: posts, load, each part of its path. */
export function rowsOf(plan: LoomPlan, state: string, circuit: string): readonly MeterRow[] {
  const solved = plan.states.find(({ name }) => name === state);
  const found = plan.circuits.find(({ name }) => name === circuit);
  if (solved === undefined || found?.nodes === undefined || found.nodes === null) return [];
  const { from, load, back } = found.nodes;
  const currentA = Math.abs(solved.currents[circuit] ?? 0);
  const at = (node: string): number => solved.nodes[node] ?? 0;
  const between = (key: string, label: string, red: string, black: string, unit: 'V' | 'mV'): MeterRow => {
    const value = at(red) - at(black);
    return { key, label, unit, planned: plannedText(value, unit), reading: { state, red, black } };
  };
  const battery = solved.batteries.map(({ name }) =>
    between(`posts ${name}`, `posts of battery ${name}`, `battery ${name} +`, `battery ${name} −`, 'V'),
  );
  const ends =
    back === null
      ? between('ends', `from ${from} to ${load}`, from, load, 'mV')
      : between('load', `at the load, from ${load} to ${back}`, load, back, 'V');
  const parts = found.path
    .filter(({ kind }) => kind !== 'wire')
    .map(({ name, resistanceOhm }): MeterRow => {
      const planned = plannedText(currentA * resistanceOhm, 'mV');
      return {
        key: `over ${name}`,
        label: `over ${name}`,
        unit: 'mV',
        planned,
        reading: { state, over: name, circuit },
      };
    });
  return [...battery, ends, ...parts];
}

function plannedText(value: number, unit: 'V' | 'mV'): string {
  return unit === 'V'
    ? formatQuantity(value, 'V', { decimals: 2 })
    : formatQuantity(1000 * value, 'mV', { decimals: 1 });
}

const TITLE: Readonly<Record<Diagnosis['verdict'], string>> = {
  'nothing found': '✓ Nothing found',
  supply: '✕ The battery first',
  short: '✕ A short',
  part: '✕ A bad part',
  reading: '– One reading is against the others',
  'not one cause': '– Not one cause',
};

/** What the readings tell. */
export function diagnosisOf(plan: LoomPlan, readings: readonly MeterReading[]): ShownDiagnosis {
  const found = diagnose(plan, readings);
  const [only] = found.suspects;
  const title =
    found.verdict === 'part' && only !== undefined
      ? found.suspects.length === 1
        ? `✕ ${only.name}`
        : `✕ One of ${found.suspects.length} parts`
      : TITLE[found.verdict];
  return {
    verdict: found.verdict,
    title,
    sentences: found.sentences,
    suspects: found.suspects.slice(0, 12).map(suspectOf),
    rows: found.readings.map(({ name, value, expectedValue, explainedValue }) => ({
      name,
      read: value === null ? 'open' : volts(value),
      planned: volts(expectedValue),
      explained: volts(explainedValue),
    })),
  };
}

function suspectOf({ kind, name, extraOhm, lowOhm, highOhm, powerW, open, currentA }: Suspect): ShownSuspect {
  if (kind === 'load')
    return {
      name: `${name} itself`,
      extra: `draws ${formatQuantity(currentA, 'A', { digits: 2 })}`,
      range: '',
      heat: '',
    };
  const range =
    lowOhm === null
      ? ''
      : highOhm === null
        ? `more than ${ohm(lowOhm, 'down')}`
        : `${ohm(lowOhm, 'down')} to ${ohm(highOhm, 'up')}`;
  return {
    name,
    extra: open || extraOhm === null ? 'open' : ohm(extraOhm, 'nearest'),
    range,
    heat: powerW === null ? '' : formatQuantity(powerW, 'W', { digits: 2, round: 'up' }),
  };
}
