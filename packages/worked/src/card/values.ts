import type { Card, Field, Values } from './type.js';

/** The values of a card's worked example. */
export function exampleValues(card: { readonly fields: readonly Field[] }): Values {
  const values: Record<string, number | string | boolean> = {};
  for (const field of card.fields) if (field.example !== null) values[field.name] = field.example;
  return values;
}

/** What a card's function is called with for these flat values. */
export function inputOf<I, O>(card: Card<I, O>, values: Values): I {
  const uses: Record<string, unknown> = {};
  for (const field of card.fields) {
    const value = values[field.name];
    if (value === undefined || value === null) continue;
    const choice = field.kind === 'choice' ? field.choices.find((c) => c.value === value) : undefined;
    uses[field.name] = choice !== undefined && 'use' in choice ? choice.use : value;
  }
  return card.input === undefined ? (uses as I) : card.input(uses);
}

/** The call that these values make, as code to copy. Tables appear by their exported names. */
export function codeOf<I, O>(card: Card<I, O>, values: Values): string {
  const names = new Map<unknown, string>(Object.entries(card.identifiers ?? {}).map(([name, value]) => [value, name]));
  for (const field of card.fields) {
    if (field.kind !== 'choice') continue;
    for (const { use, identifier } of field.choices) if (identifier !== undefined) names.set(use, identifier);
  }
  const used = new Set([card.name]);
  const write = (value: unknown, indent: string): string => {
    const name = names.get(value);
    if (name !== undefined) {
      used.add(name);
      return name;
    }
    if (Array.isArray(value)) {
      if (value.length === 0) return '[]';
      if (value.every((v) => typeof v !== 'object')) return `[${value.map((v) => write(v, indent)).join(', ')}]`;
      return `[\n${value.map((v) => `${indent}  ${write(v, `${indent}  `)},\n`).join('')}${indent}]`;
    }
    if (typeof value === 'object' && value !== null) {
      const entries = Object.entries(value);
      const flat = entries.every(([, v]) => typeof v !== 'object' || names.has(v));
      const parts = entries.map(([key, v]) => `${key}: ${write(v, `${indent}  `)}`);
      const line = `{ ${parts.join(', ')} }`;
      if (flat && indent !== '' && line.length < 90) return line;
      return `{\n${parts.map((part) => `${indent}  ${part},\n`).join('')}${indent}}`;
    }
    return typeof value === 'string' ? `'${value.replace(/['\\]/g, '\\$&')}'` : String(value);
  };
  const call = `${card.name}(${write(inputOf(card, values), '')})`;
  return `import { ${[...used].join(', ')} } from 'loomwright';\n\nconst answer = ${call};\n`;
}
