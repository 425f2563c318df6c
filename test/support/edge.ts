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
 * field's name; the input as a whole must be an object; and each part of it and entry of a list, where null is
 * refused there, is named.
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
  for (const [path, without] of withoutParts(input)) {
    let error: unknown;
    try {
      fn(without as I);
    } catch (e) {
      error = e;
    }
    if (error === undefined) continue;
    expect(error, `null for ${path}`).toMatchObject({ code: 'LOOMWRIGHT_INPUT' });
    // Null may be fine there and then ask for something beside it: so what it is a part of counts as named too.
    const { field } = error as { readonly field: string };
    const whole = path.replace(/\.?[^.[]+\]?$|\[\d+\]$/, '');
    const named = field !== 'input' && (path.includes(field) || field.startsWith(whole));
    expect(named, `null for ${path} is told as ${field}`).toBe(true);
  }
}

/**
 * Each part of an input, and the first two entries of each list, replaced by null; with the path to it. A published
 * table is handed in whole.
 */
function withoutParts(part: object): readonly (readonly [string, unknown])[] {
  return Object.entries(part)
    .slice(0, Array.isArray(part) ? 2 : undefined)
    .flatMap(([key, value]): readonly (readonly [string, unknown])[] => {
      if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return [];
      const put = (inner: unknown): unknown =>
        Array.isArray(part)
          ? part.map((each, i) => (i === Number(key) ? inner : (each as unknown)))
          : { ...part, [key]: inner };
      const own = Array.isArray(part) ? `[${key}]` : key;
      const inner = ('source' in value ? [] : withoutParts(value)).map(([path, without]) => {
        const dot = path.startsWith('[') ? '' : '.';
        return [`${own}${dot}${path}`, put(without)] as const;
      });
      return [[own, put(null)], ...inner];
    });
}
