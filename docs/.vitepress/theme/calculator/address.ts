import type { Field } from '@loomwright/worked/card';
import { exampleState, type FieldState } from './field-state';

// A calculator's state in the address: one parameter for each field that differs from the example, such as
// `voltageDrop.outLengthM=14_ft`, so that a result can be sent as a link.

/** The query that says what differs from the example; other parameters of the address stay. */
export function withState(
  search: string,
  name: string,
  fields: readonly Field[],
  states: Readonly<Record<string, FieldState>>,
): string {
  const query = new URLSearchParams(search);
  for (const key of [...query.keys()]) if (key.startsWith(`${name}.`)) query.delete(key);
  for (const field of fields) {
    const state = states[field.name];
    const example = exampleState(field);
    if (state === undefined || (state.text === example.text && state.unit === example.unit)) continue;
    query.set(`${name}.${field.name}`, state.unit === '' ? state.text : `${state.text}_${state.unit}`);
  }
  const text = query.toString();
  return text === '' ? '' : `?${text}`;
}

/** Text and unit of each field that the address sets. */
export function fromAddress(search: string, name: string): Record<string, { text: string; unit: string }> {
  const found: Record<string, { text: string; unit: string }> = {};
  for (const [key, value] of new URLSearchParams(search)) {
    if (!key.startsWith(`${name}.`)) continue;
    const at = value.lastIndexOf('_');
    found[key.slice(name.length + 1)] =
      at < 0 ? { text: value, unit: '' } : { text: value.slice(0, at), unit: value.slice(at + 1) };
  }
  return found;
}
