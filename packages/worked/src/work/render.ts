import { sources } from 'loomwright';
import { cautions, termOf } from '../card/index.js';
import { fieldUnit, formatQuantity } from '../quantity/index.js';
import { escapeText } from '../draw/index.js';
import { parseFormula } from './parse.js';
import { resultText } from './result-text.js';
import { symbolHtml, symbolText } from './symbol.js';
import { treeToHtml, treeToTex, treeToText } from './tree.js';
import type { Worked, WorkedStep } from './work.js';

type Round = 'up' | 'down' | 'nearest';

/** A value as it is put into a formula. */
function put(worked: Pick<Worked, 'card'>, step: WorkedStep, name: string): string {
  const constant = step.constants.find((c) => c.name === name);
  // A constant is shown as its source gives it, in full. Celsius counts as K from 0 °C in formulas.
  if (constant !== undefined) {
    const unit = constant.unit === 'K' ? '°C' : constant.unit;
    return `${inFull(constant.value)}${unit === '' ? '' : `\u202F${unit}`}`;
  }
  const round = roundOf(worked, name);
  return formatQuantity(step.names[name] ?? null, fieldUnit(name) ?? '', { digits: 4, round });
}

/** A number with all its digits, as it is printed: −5.775×10⁻⁷. */
function inFull(value: number): string {
  const raised = (power: string): string => [...power].map((c) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(c)] ?? '⁻').join('');
  return String(value)
    .replace(/^-/, '−')
    .replace(/e\+?(-?\d+)$/, (_, power: string) => `×10${raised(power)}`);
}

function symbolTex(step: WorkedStep, name: string): string {
  return step.constants.find((c) => c.name === name)?.symbol ?? termOf(name).symbol;
}

function answer(step: WorkedStep, round: Round): string {
  return formatQuantity(step.value, fieldUnit(step.step.result) ?? '', { digits: 4, round });
}

/** A result is put into the next step as it was shown. */
function roundOf(worked: Pick<Worked, 'card'>, name: string): Round {
  return worked.card.results.find((field) => field.name === name)?.round ?? 'nearest';
}

/** The steps as plain text: what is done, the formula, the numbers put in, the result, the source. */
export function stepsText(worked: Pick<Worked, 'card' | 'steps'>): string {
  return worked.steps
    .map((step, i) => {
      const lines = [`${i + 1}. ${step.step.text}${step.step.how === undefined ? '' : `: ${step.step.how}`}`];
      const symbol = symbolText(symbolTex(step, step.step.result));
      const value = answer(step, roundOf(worked, step.step.result));
      if (step.formula === null) lines.push(`   ${symbol} = ${value}`);
      else {
        const tree = parseFormula(step.formula);
        lines.push(`   ${symbol} = ${treeToText(tree, (name) => symbolText(symbolTex(step, name)))}`);
        lines.push(
          `   ${' '.repeat(symbol.length)} = ${treeToText(tree, (name) => put(worked, step, name))} = ${value}`,
        );
      }
      lines.push(`   (${sources[step.source].title})`);
      return lines.join('\n');
    })
    .join('\n\n');
}

/** A calculation as Markdown with TeX between dollar signs, for notebooks and pages. */
export function workedMarkdown(worked: Worked): string {
  const lines = [`**${worked.card.question}**`, ''];
  if (worked.because !== null) lines.push(`Not possible: ${worked.because}.`, '');
  worked.steps.forEach((step, i) => {
    lines.push(
      `${i + 1}. ${step.step.text}${step.step.how === undefined ? '' : `: ${step.step.how}`} *(${sources[step.source].title})*`,
      '',
    );
    const symbol = symbolTex(step, step.step.result);
    const value = texQuantity(answer(step, roundOf(worked, step.step.result)));
    if (step.formula === null) lines.push(`   $$${symbol} = ${value}$$`, '');
    else {
      const tree = parseFormula(step.formula);
      const formula = treeToTex(tree, (name) => symbolTex(step, name));
      lines.push(
        `   $$${symbol} = ${formula} = ${treeToTex(tree, (name) => texQuantity(put(worked, step, name)))} = ${value}$$`,
        '',
      );
    }
  });
  if (worked.checks.length > 0) {
    lines.push('| limit | found | allowed | verdict | source |', '|---|--:|--:|---|---|');
    for (const check of worked.checks) {
      const atMost = check.sense === 'atMost';
      const found = formatQuantity(check.value, check.unit, { round: atMost ? 'up' : 'down' });
      const allowed =
        check.limit === null
          ? ''
          : `${atMost ? 'at most' : 'at least'} ${formatQuantity(check.limit, check.unit, { trim: true })}`;
      lines.push(
        `| ${check.name} | ${found} | ${allowed} | ${check.ok ? 'met' : '**not met**'} | ${sources[check.source].title} (${check.sourceStatus}) |`,
      );
    }
    lines.push('');
  }
  if (worked.decidedBy !== null) lines.push(`Decided by: ${worked.decidedBy}.`, '');
  for (const key of worked.card.cautions) lines.push(`*${cautions[key].title}: ${cautions[key].text}*`, '');
  return lines.join('\n').trimEnd();
}

/** A quantity as TeX: number, thin space, upright unit. */
function texQuantity(text: string): string {
  const [number = '', unit = ''] = text.split('\u202F');
  const plain = number.replace('−', '-');
  if (unit === '') return plain.replace(/%/g, '\\%');
  const upright = unit
    .replace(/%/g, '\\%')
    .replace(/Ω/g, '\\Omega ')
    .replace(/²/g, '^2')
    .replace(/³/g, '^3')
    .replace(/°C/g, '^\\circ C')
    .replace(/°F/g, '^\\circ F')
    .replace(/·/g, '\\cdot ')
    .replace(/µ/g, '\\mu ');
  return `${plain}\\,\\mathrm{${upright}}`;
}

/** A calculation as HTML: no script, no style sheet and no font of mathematics is needed. */
export function workedHtml(worked: Worked): string {
  const items = worked.steps.map((step) => {
    const symbol = symbolHtml(symbolTex(step, step.step.result));
    const value = escapeText(answer(step, roundOf(worked, step.step.result)));
    const how = step.step.how === undefined ? '' : `: ${escapeText(step.step.how)}`;
    const head = `<p>${escapeText(step.step.text)}${how} <small>${escapeText(sources[step.source].title)}</small></p>`;
    if (step.formula === null) return `<li>${head}<p>${symbol} = ${value}</p></li>`;
    const tree = parseFormula(step.formula);
    const formula = treeToHtml(tree, (name) => symbolHtml(symbolTex(step, name)));
    const numbers = treeToHtml(tree, (name) => escapeText(put(worked, step, name)));
    return `<li>${head}<p>${symbol} = ${formula}</p><p>= ${numbers} = ${value}</p></li>`;
  });
  const checks = worked.checks.map((check) => {
    const atMost = check.sense === 'atMost';
    const limit =
      check.limit === null
        ? ''
        : `${atMost ? 'at most' : 'at least'} ${formatQuantity(check.limit, check.unit, { trim: true })}`;
    return `<tr><td>${check.ok ? '✓ met' : '✕ not met'}</td><td>${escapeText(check.name)}</td><td style="text-align:right">${formatQuantity(check.value, check.unit, { round: atMost ? 'up' : 'down' })}</td><td>${limit}</td><td>${escapeText(sources[check.source].title)} (${check.sourceStatus})</td></tr>`;
  });
  return [
    `<section><p><strong>${escapeText(worked.card.question)}</strong></p>`,
    worked.because === null ? '' : `<p>Not possible: ${escapeText(worked.because)}.</p>`,
    `<ol>${items.join('')}</ol>`,
    checks.length === 0 ? '' : `<table>${checks.join('')}</table>`,
    worked.decidedBy === null ? '' : `<p>Decided by: ${escapeText(worked.decidedBy)}.</p>`,
    ...worked.card.cautions.map(
      (key) => `<p><small>${escapeText(`${cautions[key].title}: ${cautions[key].text}`)}</small></p>`,
    ),
    '</section>',
  ].join('');
}

/** A calculation as plain text. */
export function workedText(worked: Worked): string {
  const lines = [worked.card.question, ''];
  if (worked.because !== null) lines.push(`Not possible: ${worked.because}.`);
  for (const result of worked.results) {
    lines.push(`${result.field.label ?? termOf(result.field.name).label}: ${resultText(result)}`);
  }
  if (worked.decidedBy !== null) lines.push(`Decided by: ${worked.decidedBy}`);
  if (worked.steps.length > 0) lines.push('', stepsText(worked));
  return lines.join('\n');
}
