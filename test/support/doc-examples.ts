// Runs the examples of doc blocks and compares what they give with what they say, to the digits shown.
import { compileFunction } from 'node:vm';
import type { DocBlock } from './doc-blocks.js';

export interface Example {
  /** What is evaluated. */
  readonly expression: string;
  /** What stands after `//=>`. */
  readonly stated: string;
}

/** The examples of a doc block. One may run over several lines; it ends at its `//=>`. */
export function examplesOf(block: DocBlock): readonly Example[] {
  return block.tags
    .filter((tag) => tag.name === 'example')
    .flatMap(({ text }) => {
      const found: Example[] = [];
      let lines: string[] = [];
      for (const line of text.split('\n')) {
        const [code = '', ...stated] = line.split('//=>');
        lines.push(code);
        if (stated.length === 0) continue;
        found.push({ expression: lines.join('\n').trim(), stated: stated.join('//=>').trim() });
        lines = [];
      }
      return found;
    });
}

/** Evaluates an expression with the given names in scope. */
export function evaluate(expression: string, scope: Readonly<Record<string, unknown>>): unknown {
  const names = Object.keys(scope).filter((name) => /^[A-Za-z_$][\w$]*$/.test(name));
  const run = compileFunction(`'use strict'; return (${expression}\n);`, names) as (...values: unknown[]) => unknown;
  return run(...names.map((name) => scope[name]));
}

/** Why an example is wrong, or null where it is right. */
export function exampleFault(example: Example, scope: Readonly<Record<string, unknown>>): string | null {
  const { expression, stated } = example;
  try {
    return difference(evaluate(expression, scope), statedValue(stated));
  } catch (error) {
    return `${(error as Error).name}: ${(error as Error).message}`;
  }
}

/** What a number in the stated value becomes: its digits as written. */
class Digits {
  readonly print: string;
  constructor(print: string) {
    this.print = print;
  }
}

/** The stated value: a literal of JavaScript, in which each number keeps its digits. */
function statedValue(stated: string): unknown {
  const token = /'(?:[^'\\]|\\.)*'|"(?:[^"\\]|\\.)*"|(?<![\w$.])-?\d+(?:\.\d+)?(?:e[+-]?\d+)?(?![\w$.])/g;
  const source = stated.replace(token, (text) => (/^['"]/.test(text) ? text : `digits('${text}')`));
  return evaluate(source, { digits: (print: string) => new Digits(print) });
}

function difference(actual: unknown, stated: unknown, at = 'it'): string | null {
  if (stated instanceof Digits) {
    if (typeof actual !== 'number') return `${at} is ${show(actual)}, not the number ${stated.print}`;
    const [mantissa = '', exponent = '0'] = stated.print.split('e');
    const decimals = mantissa.includes('.') ? mantissa.length - mantissa.indexOf('.') - 1 : 0;
    const unit = 10 ** (Number(exponent) - decimals);
    const off = Math.abs(actual - Number(stated.print)) / unit;
    return off <= 0.5 + 1e-6 ? null : `${at} is ${actual}, not ${stated.print}`;
  }
  if (typeof stated !== 'object' || stated === null) {
    return Object.is(actual, stated) ? null : `${at} is ${show(actual)}, not ${show(stated)}`;
  }
  if (typeof actual !== 'object' || actual === null || Array.isArray(actual) !== Array.isArray(stated)) {
    return `${at} is ${show(actual)}, not ${show(stated)}`;
  }
  const keys = [...new Set([...Object.keys(stated), ...Object.keys(actual)])];
  for (const key of keys) {
    const fault = difference(
      (actual as Record<string, unknown>)[key],
      (stated as Record<string, unknown>)[key],
      `${at}.${key}`,
    );
    if (fault !== null) return fault;
  }
  return null;
}

function show(value: unknown): string {
  return JSON.stringify(value) ?? String(value);
}

/** What a doc block lacks of what the house asks of every public function. */
export function docFaults(block: DocBlock): readonly string[] {
  const has = (name: string): boolean => block.tags.some((tag) => tag.name === name && tag.text !== '');
  const faults: string[] = [];
  if (!/^\S[^]*?[.:](?:\s|$)/.test(block.summary)) faults.push('no summary sentence');
  if (examplesOf(block).length === 0) faults.push('no @example with //=>');
  // A unit converter says all of it in its one sentence and its name.
  if (/\/unit\/[\w-]+\.ts$/.test(block.file)) return faults;
  for (const tag of ['returns', 'throws', 'source']) if (!has(tag)) faults.push(`no @${tag}`);
  return faults;
}
