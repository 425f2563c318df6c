import { expect } from 'vitest';
import type { InputRule } from 'loomwright';

/** The call must throw an InputError for this field and rule. */
export function expectInputError(run: () => unknown, field: string, rule?: InputRule): void {
  let error: unknown;
  try {
    run();
  } catch (e) {
    error = e;
  }
  expect(error, `expected an InputError for ${field}`).toMatchObject({
    code: 'LOOMWRIGHT_INPUT',
    field,
    ...(rule === undefined ? {} : { rule }),
  });
}

/**
 * Every numeric field named: NaN, ±Infinity, a text and (where required) its absence are refused, each with the
 * field's name; and the input as a whole must be an object.
 */
export function refusesNonsense<I extends object>(
  fn: (input: I) => unknown,
  input: I,
  fields: { readonly required?: readonly (keyof I & string)[]; readonly optional?: readonly (keyof I & string)[] },
): void {
  const { required = [], optional = [] } = fields;
  for (const field of [...required, ...optional]) {
    for (const value of [NaN, Infinity, -Infinity, 'abc', {}]) {
      expectInputError(() => fn({ ...input, [field]: value }), field);
    }
  }
  for (const field of required) {
    const rest: Partial<I> = { ...input };
    delete rest[field];
    expectInputError(() => fn(rest as I), field);
  }
  for (const value of [undefined, null, 3, 'abc', []]) expectInputError(() => fn(value as never), 'input', 'object');
}
