import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type LoomPlan, parseLoom, planLoom, testPlan } from '@loomwright/harness';
import { choicesOf, diagnosisOf, type MeterChoices, type MeterRow, rowsOf, type ShownDiagnosis } from './shown';

/** A vehicle to read on, with readings to begin with. */
export interface MeterVehicle {
  readonly key: string;
  readonly label: string;
  readonly text: string;
  readonly choices: MeterChoices;
  readonly state: string;
  readonly circuit: string;
  readonly rows: readonly MeterRow[];
  /** What stands in the fields at first, by the key of the row. */
  readonly typed: Readonly<Record<string, string>>;
  readonly found: ShownDiagnosis;
}

export interface MeterData {
  readonly vehicles: readonly MeterVehicle[];
  /** What the limits and sigmas rest on. */
  readonly basis: readonly string[];
}

declare const data: MeterData;
export { data };

const FEED = resolve(process.cwd(), 'examples/one-feed.yaml');
const SANDPIPER = resolve(process.cwd(), '../packages/cli/examples/sandpiper.yaml');

function vehicle(
  key: string,
  label: string,
  file: string,
  state: string,
  circuit: string,
  typed: Readonly<Record<string, string>>,
): MeterVehicle {
  const text = readFileSync(file, 'utf8');
  const parsed = parseLoom(text);
  if (!parsed.ok) throw new Error(parsed.problems.map(({ line, message }) => `${line ?? ''} ${message}`).join('\n'));
  const plan: LoomPlan = planLoom(parsed.loom);
  const rows = rowsOf(plan, state, circuit);
  const readings = Object.entries(typed).map(([name, value]) => {
    const row = rows.find((one) => one.key === name);
    if (row === undefined) throw new Error(`${label}: no row ${name}`);
    return { ...row.reading, readsV: Number(value) / (row.unit === 'mV' ? 1000 : 1) };
  });
  return {
    key,
    label,
    text,
    choices: choicesOf(plan),
    state,
    circuit,
    rows,
    typed,
    found: diagnosisOf(plan, readings),
  };
}

function basis(): readonly string[] {
  const parsed = parseLoom(readFileSync(FEED, 'utf8'));
  if (!parsed.ok) throw new Error('the feed cannot be read');
  return testPlan(planLoom(parsed.loom)).basis;
}

/** Both vehicles planned when the site is built: the page stands there before its script runs. */
export default {
  watch: [FEED, SANDPIPER],
  load(): MeterData {
    return {
      basis: basis(),
      vehicles: [
        vehicle('feed', 'one feed', FEED, 'engine running', 'pump', {
          'posts main': '13.8',
          load: '11.58',
          'over contact of relay of pump': '1720',
        }),
        vehicle('sandpiper', 'Sandpiper', SANDPIPER, 'road', 'lift pump', {
          'posts starter': '14.18',
          load: '12.31',
        }),
      ],
    };
  },
};
