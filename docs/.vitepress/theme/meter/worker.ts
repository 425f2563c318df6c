// Plans a vehicle beside the page and judges readings on it. It asks for nothing and sends nothing away.
import { type LoomPlan, type MeterReading, parseLoom, planLoom } from '@loomwright/harness';
import { choicesOf, diagnosisOf, type MeterChoices, type MeterRow, rowsOf, type ShownDiagnosis } from './shown';

export interface MeterQuestion {
  readonly id: number;
  readonly text: string;
  readonly state: string;
  readonly circuit: string;
  readonly readings: readonly MeterReading[];
}

export type MeterAnswer =
  | {
      readonly id: number;
      readonly choices: MeterChoices;
      readonly rows: readonly MeterRow[];
      readonly found: ShownDiagnosis | null;
    }
  | { readonly id: number; readonly trouble: string };

const plans = new Map<string, LoomPlan>();

function planOf(text: string): LoomPlan {
  const known = plans.get(text);
  if (known !== undefined) return known;
  const parsed = parseLoom(text);
  if (!parsed.ok) throw new Error(parsed.problems.map(({ message }) => message).join(' '));
  const plan = planLoom(parsed.loom);
  plans.set(text, plan);
  return plan;
}

self.onmessage = ({ data }: MessageEvent<MeterQuestion>): void => {
  const { id, text, state, circuit, readings } = data;
  let answer: MeterAnswer;
  try {
    const plan = planOf(text);
    const found = readings.length === 0 ? null : diagnosisOf(plan, readings);
    answer = { id, choices: choicesOf(plan), rows: rowsOf(plan, state, circuit), found };
  } catch (error) {
    answer = { id, trouble: error instanceof Error ? error.message.replace(/^diagnose: /, '') : String(error) };
  }
  self.postMessage(answer);
};
