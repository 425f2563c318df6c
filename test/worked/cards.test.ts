// What every card must hold. A new card is checked by being there.
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import * as core from 'loomwright';
import {
  type Card,
  cards,
  cautions,
  exampleValues,
  inputOf,
  nomenclature,
  type NumberField,
  type Values,
} from '@loomwright/worked/card';
import { fieldUnit, math } from '@loomwright/worked/quantity';
import { parseFormula, resultText, scopeOf, symbolHtml, symbolText, work } from '@loomwright/worked/work';

const all = Object.values(cards);

describe('nomenclature', () => {
  it.each(Object.entries(nomenclature))('%s has a symbol that every renderer can write', (_, { symbol, label }) => {
    expect(symbolText(symbol)).not.toBe('');
    expect(symbolHtml(symbol)).not.toBe('');
    expect(label).not.toBe('');
  });

  it('holds each name once: what one area calls it would silently stand in the other', async () => {
    const folder = new URL('../../packages/worked/src/card/nomenclature/', import.meta.url);
    const files = readdirSync(folder).map((file) => new URL(file, folder).href);
    const modules = await Promise.all(files.map(async (file) => (await import(file)) as Record<string, unknown>));
    const tables = modules.flatMap((one) => Object.entries(one)).filter(([name]) => name.endsWith('Terms'));
    const names = tables.flatMap(([, terms]) => Object.keys(terms as object));
    expect(names.length).toBeGreaterThan(500);
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
  });
});

/** Random values near the example and within the ranges of the fields. */
function near(card: Card): fc.Arbitrary<Values> {
  const example = exampleValues(card);
  const fields = card.fields.filter((field): field is NumberField => field.kind === 'number' && field.example !== null);
  return fc.tuple(...fields.map(() => fc.double({ min: 0.9, max: 1.1, noNaN: true }))).map((factors) => {
    const values: Record<string, number | string | boolean | null> = { ...example };
    fields.forEach((field, i) => {
      const start = field.example as number;
      const integer = Number.isInteger(start) && fieldUnit(field.name) === null;
      const value = integer ? start : start * (factors[i] as number);
      values[field.name] = Math.min(field.max ?? Infinity, Math.max(field.min ?? -Infinity, value));
    });
    return values;
  });
}

/** The unit of a name as mathjs writes it. Celsius counts as K from 0 °C: formulas add constants of the same kind. */
function mathUnit(name: string): string {
  // A day is written whole: mathjs has no unit called d.
  const unit = (fieldUnit(name) ?? '').replace(/\bd\b/, 'day');
  if (unit === 'fraction' || unit === '1' || unit === '%') return '';
  const words: Readonly<Record<string, string>> = {
    '°C': 'K',
    '°': 'deg',
    gₙ: '',
    'A²s': 'A^2 s',
    rpm: 'minute^-1',
    lm: 'lm',
  };
  if (unit in words) return words[unit] as string;
  // A unit that is put into mathjs by its name alone must not begin with a number.
  if (/^1\/\w+$/.test(unit)) return `${unit.slice(2)}^-1`;
  return unit
    .replace(/Ω/g, 'ohm')
    .replace(/²/g, '^2')
    .replace(/³/g, '^3')
    .replace(/·/g, ' ')
    .replace(/µ/g, 'u')
    .replace(/rpm/g, 'minute^-1')
    .replace(/gₙ/g, '')
    .replace(/Ah/g, 'A hour')
    .replace(/°C/g, 'K');
}

describe.each(all.map((card) => [card.name, card] as const))('card of %s', (name, card) => {
  it('names a public function, its area, sources and cautions that exist', () => {
    expect(core).toHaveProperty(name);
    expect(card.question).toMatch(/\?$/);
    for (const key of [...card.sources, ...card.steps.map((step) => step.source)])
      expect(core.sources).toHaveProperty([key]);
    for (const key of card.cautions) expect(cautions).toHaveProperty([key]);
    expect(card.sources.length).toBeGreaterThan(0);
  });

  it('runs on its example and has every result that it shows', () => {
    const worked = work(card, exampleValues(card));
    expect(worked.because).toBeNull();
    for (const result of worked.results) {
      expect(result.value, result.field.name).not.toBeUndefined();
      expect(resultText(result), result.field.name).not.toBe('');
    }
    expect(worked.results.some(({ value }) => value !== null)).toBe(true);
  });

  it('gives every field a label, and every shown number a known unit or none', () => {
    for (const field of card.fields)
      if (field.label === undefined) expect(nomenclature, field.name).toHaveProperty([field.name]);
    for (const field of card.results)
      if (field.label === undefined) expect(nomenclature, field.name).toHaveProperty([field.name]);
  });

  it('gives the result of every step, and every name in its formula, a symbol', () => {
    for (const { result, formula = '', constants = [] } of card.steps) {
      const names = [...formula.matchAll(/[A-Za-z_]\w*(?!\w*\()/g)].map(([found]) => found);
      for (const named of [result, ...names]) {
        if (named === 'pi' || constants.some((constant) => constant.name === named)) continue;
        expect(nomenclature).toHaveProperty([named]);
      }
    }
  });

  it('probes each range one step outside, and the core refuses', () => {
    const example = exampleValues(card);
    for (const field of card.fields) {
      if (field.kind !== 'number') continue;
      const outside: number[] = [];
      const step = (limit: number): number => Math.max(Math.abs(limit), 1e-3) * 1e-6;
      if (field.above !== undefined) outside.push(field.above);
      if (field.min !== undefined) outside.push(field.min - step(field.min));
      if (field.max !== undefined) outside.push(field.max + step(field.max));
      for (const value of outside) {
        let code: unknown = 'accepted';
        try {
          card.run(inputOf(card, { ...example, [field.name]: value }));
        } catch (error) {
          code = (error as { code?: unknown }).code;
        }
        expect(code, `${field.name} = ${value}`).toBe('LOOMWRIGHT_INPUT');
      }
    }
  });

  it('shows only formulas that fit in dimension and agree with the function', () => {
    const steps = card.steps.filter((step) => step.formula !== undefined);
    for (const step of steps) expect(() => parseFormula(step.formula as string)).not.toThrow();
    if (steps.length === 0) return;
    let compared = 0;
    fc.assert(
      fc.property(near(card), (values) => {
        let output: unknown;
        try {
          output = card.run(inputOf(card, values));
        } catch (error) {
          if ((error as { code?: string }).code === 'LOOMWRIGHT_INPUT') return;
          throw error;
        }
        if ((output as { possible?: boolean }).possible === false) return;
        const names = scopeOf(card, values, output);
        for (const step of steps) {
          if (step.when?.(values) === false) continue;
          const wanted = names[step.result];
          if (typeof wanted !== 'number') continue;
          const scope: Record<string, ReturnType<typeof math.unit>> = {};
          for (const [key, value] of Object.entries(names))
            if (typeof value === 'number') scope[key] = math.unit(value, mathUnit(key));
          for (const constant of step.constants ?? []) scope[constant.name] = math.unit(constant.value, constant.unit);
          const got = math.evaluate(step.formula as string, scope);
          const unit = mathUnit(step.result);
          const number = typeof got === 'number' ? got : got.toNumber(unit === '' ? '1' : unit);
          if (typeof got === 'number') expect(unit, `${step.result} = ${step.formula} has a unit`).toBe('');
          expect(
            Math.abs(number - wanted),
            `${step.result} = ${step.formula}: ${number} against ${wanted}`,
          ).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(wanted), 1e-12));
          compared++;
        }
      }),
      { numRuns: 10, examples: [[exampleValues(card)]] },
    );
    expect(compared).toBeGreaterThan(0);
  });
});
