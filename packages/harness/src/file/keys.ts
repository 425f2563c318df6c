interface Schema {
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  /** Values of a map under names of the file's own; false where there are none. */
  readonly additionalProperties?: Schema | boolean;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
}

/** What a schema knows, for the hints of error messages. */
export interface Known {
  /** The keys at a path; those of every alternative where there are several. */
  readonly keys: (path: readonly PropertyKey[]) => readonly string[];
  /** The words that may stand at a path. */
  readonly words: (path: readonly PropertyKey[]) => readonly string[];
}

/** The keys and words of a JSON Schema. */
export function knownOf(schema: Record<string, unknown>): Known {
  return {
    keys: (path) => [...new Set(schemasAt(schema, path).flatMap((s) => Object.keys(s.properties ?? {})))],
    words: (path) => [
      ...new Set(
        schemasAt(schema, path).flatMap((s) => [...(s.enum ?? []), ...('const' in s ? [s.const] : [])].map(String)),
      ),
    ],
  };
}

function schemasAt(schema: Schema, path: readonly PropertyKey[]): readonly Schema[] {
  let here: readonly Schema[] = flat(schema);
  for (const step of path) {
    here = here.flatMap((s) => {
      const named = typeof s.additionalProperties === 'object' ? s.additionalProperties : undefined;
      const next = typeof step === 'number' ? s.items : (s.properties?.[String(step)] ?? named);
      return next === undefined ? [] : flat(next);
    });
  }
  return here;
}

function flat(schema: Schema): readonly Schema[] {
  const inner = schema.anyOf ?? schema.oneOf;
  return inner === undefined ? [schema] : inner.flatMap(flat);
}
