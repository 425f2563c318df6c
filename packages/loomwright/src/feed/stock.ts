import type { ResolvedSize } from '../conductor/index.js';
import { needBasis, resolveRow, resolveSize } from '../conductor/size.js';
import { InputError } from '../error/index.js';
import { needList } from '../error/guard.js';
import type { ResistanceBasis } from '../table/index.js';

/** The sizes to choose from, thinnest first by resistance. */
export function stockSizes(
  fn: string,
  basis: ResistanceBasis,
  stock: readonly (number | string)[] | undefined,
): ResolvedSize[] {
  needBasis(fn, basis);
  if (stock === undefined && basis.kind === 'geometric') {
    throw new InputError(
      fn,
      'stock',
      'missing',
      stock,
      'is required with the geometric basis, which has no sizes of its own',
    );
  }
  if (stock !== undefined) needList(fn, 'stock', stock, 1);
  const sizes =
    stock === undefined && basis.kind === 'table'
      ? basis.rows.map((row) => resolveRow(basis, row))
      : (stock ?? []).map((size) =>
          resolveSize(
            fn,
            typeof size === 'number'
              ? { areaMm2: size }
              : basis.kind === 'table' && basis.sizes === 'sae'
                ? { saeGauge: size }
                : { awg: size },
            basis,
          ),
        );
  return sizes.sort((a, b) => b.resistanceOhmPerM - a.resistanceOhmPerM);
}
