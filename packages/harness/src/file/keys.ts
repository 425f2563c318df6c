interface Schema {
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
}

/** The keys that a JSON Schema knows at a path; those of every alternative where there are several. */
export function keysAt(schema: Record<string, unknown>, path: readonly PropertyKey[]): string[] {
  let here: readonly Schema[] = [schema as Schema];
  for (const step of path) {
    here = here.flatMap(flat).flatMap((s) => {
      const next = typeof step === 'number' ? s.items : s.properties?.[String(step)];
      return next === undefined ? [] : [next];
    });
  }
  return [...new Set(here.flatMap(flat).flatMap((s) => Object.keys(s.properties ?? {})))];
}

function flat(schema: Schema): readonly Schema[] {
  const inner = schema.anyOf ?? schema.oneOf;
  return inner === undefined ? [schema] : inner.flatMap(flat);
}
