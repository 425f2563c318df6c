import { type FieldSuffix, fieldUnit } from './field-unit.js';
import { parseGauge, plainGauge } from './gauge.js';
import { nearWords } from './near-words.js';
import { parseQuantity } from './parse-quantity.js';
import { parseSize } from './parse-size.js';
import { QuantityError } from './quantity-error.js';
import { type NamedTable, type TableFields, tables, tablesFor } from './table.js';

type SmallOrDigit =
  | (
      | 'a'
      | 'b'
      | 'c'
      | 'd'
      | 'e'
      | 'f'
      | 'g'
      | 'h'
      | 'i'
      | 'j'
      | 'k'
      | 'l'
      | 'm'
      | 'n'
      | 'o'
      | 'p'
      | 'q'
      | 'r'
      | 's'
      | 't'
    )
  | ('u' | 'v' | 'w' | 'x' | 'y' | 'z' | '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9');

/** A field's name that ends in a unit. */
type UnitName = `${string}${SmallOrDigit}${FieldSuffix}` | `${string}Per${FieldSuffix}${string}`;

/** What one field becomes. */
type InputValue<K, V> = V extends string
  ? K extends UnitName
    ? number
    : K extends keyof TableFields
      ? TableFields[K]
      : K extends 'stock'
        ? number | string
        : V
  : K extends 'awg' | 'saeGauge'
    ? string
    : V extends readonly unknown[]
      ? { readonly [I in keyof V]: InputValue<K, V[I]> }
      : V extends { readonly key: string; readonly kind?: unknown }
        ? V
        : V extends (...args: never[]) => unknown
          ? V
          : V extends object
            ? Inputs<V>
            : V;

/** What `inputs` makes of an object: quantities become numbers, names of tables the tables, `size` its own field. */
export type Inputs<T> = {
  readonly [K in keyof T as K extends 'size' ? (T[K] extends string ? never : K) : K]: InputValue<K, T[K]>;
} & (T extends { readonly size: string }
  ? { readonly areaMm2?: number; readonly awg?: string; readonly saeGauge?: string }
  : unknown);

const DEEPEST = 32;

/**
 * An input of the core from fields as people write them.
 *
 * A text in a field whose name ends in a unit is read by `parseQuantity`; in a list under such a name, each text. An
 * area may be a gauge (`areaMm2: '14 AWG'` is the area of solid AWG 14, 2.08 mm²). `size: '14 AWG'` becomes
 * `awg: '14'`, `stock: ['2.5 mm²', '4 mm²']` becomes `[2.5, 4]`, and a word in `resistanceBasis`, `table`, `budget`,
 * `family`, `series`, `curve` … becomes the table with that key. Lists and objects are gone through; numbers, booleans, null
 * and words of other fields pass as they are.
 *
 * @param fields object with the core's field names
 * @returns a new object; parts without quantities are the same objects
 * @throws QuantityError at the first field that cannot be read, with its name (`outParts[1].lengthM`)
 * @example inputs({ outLengthM: '14 ft', ambientTempC: '150 °F' }).outLengthM //=> 4.2672
 */
export function inputs<const T extends object>(fields: T): Inputs<T> {
  return walk(fields, '', null, 0) as Inputs<T>;
}

/** One value: `name` is the last field's name, `path` what the error calls it. */
function walk(value: unknown, path: string, name: string | null, depth: number): unknown {
  if (typeof value === 'string') return name === null ? value : read(value, path, name);
  if (typeof value === 'number' && (name === 'awg' || name === 'saeGauge')) return String(value);
  if (typeof value !== 'object' || value === null) return value;
  if (depth > DEEPEST) throw new QuantityError(path, 'depth', value, `nested at most ${DEEPEST} deep`);
  if (Array.isArray(value)) {
    const list = value.map((entry: unknown, i) => walk(entry, `${path}[${i}]`, name, depth + 1));
    return list.every((entry, i) => Object.is(entry, value[i])) ? value : list;
  }
  const prototype = Object.getPrototypeOf(value) as unknown;
  if (prototype !== Object.prototype && prototype !== null) return value;
  const { key } = value as Partial<NamedTable>;
  if (typeof key === 'string' && tables[key] === value) return value;
  return walkObject(value as Readonly<Record<string, unknown>>, path, depth);
}

function walkObject(fields: Readonly<Record<string, unknown>>, path: string, depth: number): unknown {
  const entries = Object.entries(fields).flatMap(([name, value]): [string, unknown][] => {
    const at = path === '' ? name : `${path}.${name}`;
    if (name !== 'size' || typeof value !== 'string') return [[name, walk(value, at, name, depth + 1)]];
    const size: [string, unknown][] = Object.entries(parseSize(value, at));
    const twice = ['areaMm2', 'awg', 'saeGauge'].find((other) => fields[other] !== undefined);
    if (twice !== undefined) throw new QuantityError(at, 'twice', value, `given once: leave out size or ${twice}`);
    return size;
  });
  const same = entries.every(([name, value]) => Object.hasOwn(fields, name) && Object.is(value, fields[name]));
  return same && entries.length === Object.keys(fields).length ? fields : Object.fromEntries(entries);
}

/** A text by the name of its field. */
function read(text: string, path: string, name: string): unknown {
  const known = tablesFor(name);
  if (known !== null) {
    const found = known.find((table) => table.key === text);
    if (found !== undefined) return found;
    const keys = known.map(({ key }) => key);
    const near = nearWords(text, keys);
    const hint = near.length > 0 ? `did you mean ${near.join(' or ')}?` : `known are ${keys.join(', ')}`;
    throw new QuantityError(path, 'table', text, 'the key of a table', hint);
  }
  if (name === 'awg' || name === 'saeGauge') return gaugeOf(text, path, name);
  if (name === 'stock') return stockOf(text, path);
  const unit = fieldUnit(name);
  return unit === null ? text : parseQuantity(text, unit, path);
}

/** A gauge field takes its number with or without its name. */
function gaugeOf(text: string, path: string, name: 'awg' | 'saeGauge'): string {
  const wanted = name === 'awg' ? "an AWG size such as '14' or '4/0'" : "an SAE gauge such as '14'";
  const gauge = parseGauge(text, path);
  const number = gauge === null ? plainGauge(text.trim()) : name in gauge ? (Object.values(gauge)[0] as string) : null;
  if (number !== null) return number;
  throw new QuantityError(path, 'size', text, wanted, gauge === null ? '' : 'AWG and SAE sizes differ');
}

/** One size of a stock list: an area as a number of mm², a gauge as its number. */
function stockOf(text: string, path: string): number | string {
  const plain = plainGauge(text.trim());
  if (plain !== null) return plain;
  const size = parseSize(text, path);
  return 'areaMm2' in size ? size.areaMm2 : 'awg' in size ? size.awg : size.saeGauge;
}
