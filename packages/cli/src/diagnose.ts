import { readFileSync } from 'node:fs';
import { diagnose, type Diagnosis, parseReadings, problemLine } from '@loomwright/harness';
import { cautions } from '@loomwright/worked/card';
import { formatQuantity } from '@loomwright/worked/quantity';
import type { Outcome } from './feed.js';
import { planFile } from './plan-read.js';
import { columns, wrap } from './text.js';

const WIDTH = 100;

/** Which joint is bad, from readings on a planned vehicle. */
export function diagnoseFile(file: string, readings: string, options: { readonly json?: boolean }): Outcome {
  const planned = planFile(file);
  if (!planned.ok) return { out: '', err: planned.err, status: 1 };
  let text: string;
  try {
    text = readFileSync(readings, 'utf8');
  } catch (error) {
    const why = (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'there is no such file' : (error as Error).message;
    return { out: '', err: `${readings}: ${why}\n`, status: 1 };
  }
  const parsed = parseReadings(text);
  if (!parsed.ok) {
    return { out: '', err: `${parsed.problems.map((each) => problemLine(readings, each)).join('\n')}\n`, status: 1 };
  }
  let found: Diagnosis;
  try {
    found = diagnose(planned.plan, parsed.readings);
  } catch (error) {
    const { code, field, message } = error as { code?: string; field?: string; message: string };
    if (code !== 'LOOMWRIGHT_INPUT') throw error;
    const [, index = ''] = /^readings\[(\d+)\]/.exec(field ?? '') ?? [];
    const line = parsed.lines[Number(index)];
    const at = index === '' || line === undefined ? readings : `${readings}:${line}`;
    return { out: '', err: `${at} ${message.replace(/^diagnose: /, '')}\n`, status: 1 };
  }
  const out =
    options.json === true ? `${JSON.stringify(found, null, 2)}\n` : diagnosisText(planned.plan.vehicle.name, found);
  return { out, err: '', status: found.verdict === 'nothing found' ? 0 : 2 };
}

function diagnosisText(vehicle: string, found: Diagnosis): string {
  const lines = [vehicle, '', ...found.sentences.flatMap((sentence) => wrap(sentence, WIDTH, '  '))];
  const shown = (value: number | null, unit: string): string => {
    if (value === null) return 'open';
    if (unit !== 'V') return formatQuantity(value, unit, { digits: 3, prefix: 'natural' });
    const small = Math.abs(value) < 1;
    return formatQuantity(small ? 1000 * value : value, small ? 'mV' : 'V', { decimals: small ? 1 : 2 });
  };
  const rows = found.readings.map(({ name, value, unit, expectedValue, explainedValue }) => [
    '  ',
    name,
    shown(value, unit),
    shown(expectedValue, unit),
    shown(explainedValue, unit),
  ]);
  lines.push('', ...columns([['  ', 'Reading', 'read', 'planned', 'explained'], ...rows], [2, 3, 4]), '');
  for (const line of found.basis) lines.push(...wrap(line, WIDTH, '  '));
  lines.push('');
  for (const key of ['battery', 'fuel', 'stored-heat', 'restraint', 'prove-slowly'] as const) {
    lines.push(...wrap(`${cautions[key].title}: ${cautions[key].text}`, WIDTH, '  '));
  }
  return `${lines.join('\n')}\n`;
}
