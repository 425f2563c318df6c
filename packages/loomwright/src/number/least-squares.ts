import { InputError } from '../error/index.js';

/** What `leastSquares` needs. */
export interface LeastSquaresInput {
  /** Name of the caller, for the error. */
  readonly fn: string;
  /** One row a point, one column a coefficient. */
  readonly rows: readonly (readonly number[])[];
  /** The value of each point. */
  readonly values: readonly number[];
  /** What each residual is multiplied by, such as 1/uncertainty; 1 unless given. */
  readonly weights?: readonly number[];
}

/** A fit with what its uncertainty follows from. */
export interface LeastSquaresResult {
  /** One coefficient a column. */
  readonly coefficients: readonly number[];
  /** Value less fitted value of each point, not weighted. */
  readonly residuals: readonly number[];
  /** Sum of the squared weighted residuals. */
  readonly sumOfSquares: number;
  /** Points less coefficients. */
  readonly degreesOfFreedom: number;
  /** Root of the sum of squares over the degrees of freedom, or null where there are none. */
  readonly standardDeviation: number | null;
  /** (AᵀW²A)⁻¹: times the squared standard deviation it is the covariance of the coefficients. */
  readonly inverseNormal: readonly (readonly number[])[];
  /** How far each point holds its own fitted value, 0 to 1. */
  readonly leverages: readonly number[];
}

/**
 * Linear least squares by Householder QR with scaled columns. The normal equations are never formed: they would
 * lose half of the digits.
 *
 * $$\min_c \sum_i \bigl(w_i\,(v_i - \textstyle\sum_j a_{ij} c_j)\bigr)^2$$
 *
 * @param input rows, values, weights
 * @returns coefficients, residuals, sum of squares, degrees of freedom, (AᵀW²A)⁻¹, leverages
 * @throws InputError when a number is not finite, a row has another length, there are fewer rows than columns,
 * or the columns depend on one another to 14 digits
 * @source nist-strd (checked against its certified values); Golub and Van Loan, Matrix Computations, 5.3
 * @example leastSquares({ fn: 'line', rows: [[1, 0], [1, 1], [1, 2]], values: [1, 3, 5] }).coefficients //=> [1, 2]
 */
export function leastSquares(input: LeastSquaresInput): LeastSquaresResult {
  const { fn, rows, values, weights } = input;
  const m = rows.length;
  const n = rows[0]?.length ?? 0;
  if (n === 0 || m < n || values.length !== m || (weights !== undefined && weights.length !== m)) {
    throw new InputError(fn, 'rows', 'list', rows, `must be at least ${Math.max(n, 1)}, one for each value`);
  }
  // Columns scaled to length 1, with the values as one more column: Householder turns them all.
  const columns = Array.from({ length: n + 1 }, () => new Float64Array(m));
  for (let i = 0; i < m; i++) {
    const row = rows[i] as readonly number[];
    const weight = weights === undefined ? 1 : (weights[i] as number);
    const value = values[i] as number;
    const finite = row.length === n && row.every(Number.isFinite) && Number.isFinite(value * weight);
    if (!finite) throw new InputError(fn, `rows[${i}]`, 'finite', row, `must hold ${n} finite numbers`);
    for (let j = 0; j < n; j++) (columns[j] as Float64Array)[i] = (row[j] as number) * weight;
    (columns[n] as Float64Array)[i] = value * weight;
  }
  const scales = columns.slice(0, n).map((column) => Math.hypot(...column) || 1);
  scales.forEach((scale, j) => scaleBy(columns[j] as Float64Array, 1 / scale));
  const diagonal = triangulate(fn, columns, n);
  const r = (i: number, j: number): number => (i === j ? diagonal[i] : columns[j]?.[i]) as number;

  const coefficients: number[] = new Array<number>(n).fill(0);
  const target = columns[n] as Float64Array;
  for (let i = n - 1; i >= 0; i--) {
    let sum = target[i] as number;
    for (let j = i + 1; j < n; j++) sum -= r(i, j) * (coefficients[j] as number);
    coefficients[i] = sum / r(i, i);
  }
  for (let j = 0; j < n; j++) coefficients[j] = (coefficients[j] as number) / (scales[j] as number);

  const residuals = rows.map((row, i) => {
    let fitted = 0;
    for (let j = 0; j < n; j++) fitted += (row[j] as number) * (coefficients[j] as number);
    return (values[i] as number) - fitted;
  });
  let sumOfSquares = 0;
  residuals.forEach((residual, i) => (sumOfSquares += (residual * (weights?.[i] ?? 1)) ** 2));
  const degreesOfFreedom = m - n;
  const inverse = invertUpper(r, n);
  const inverseNormal = Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => {
      let sum = 0;
      for (let k = Math.max(i, j); k < n; k++) sum += (inverse[i]?.[k] as number) * (inverse[j]?.[k] as number);
      return sum / ((scales[i] as number) * (scales[j] as number));
    }),
  );
  const leverages = rows.map((row, i) => {
    const weight = weights?.[i] ?? 1;
    let sum = 0;
    for (let k = 0; k < n; k++) {
      let q = 0;
      for (let j = 0; j <= k; j++)
        q += (((row[j] as number) * weight) / (scales[j] as number)) * (inverse[j]?.[k] as number);
      sum += q * q;
    }
    return Math.min(sum, 1);
  });
  return {
    coefficients,
    residuals,
    sumOfSquares,
    degreesOfFreedom,
    standardDeviation: degreesOfFreedom === 0 ? null : Math.sqrt(sumOfSquares / degreesOfFreedom),
    inverseNormal,
    leverages,
  };
}

function scaleBy(column: Float64Array, factor: number): void {
  for (let i = 0; i < column.length; i++) column[i] = (column[i] as number) * factor;
}

/** Householder reflections over the first n columns, applied to all; returns the diagonal of R. */
function triangulate(fn: string, columns: readonly Float64Array[], n: number): Float64Array {
  const diagonal = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    const v = columns[k] as Float64Array;
    let norm = 0;
    for (let i = k; i < v.length; i++) norm = Math.hypot(norm, v[i] as number);
    if (norm < 1e-14) {
      throw new InputError(fn, 'rows', 'range', columns, 'must differ enough to tell the coefficients apart');
    }
    const head = v[k] as number;
    const alpha = head > 0 ? -norm : norm;
    v[k] = head - alpha;
    const half = norm * (norm + Math.abs(head));
    for (let j = k + 1; j < columns.length; j++) {
      const column = columns[j] as Float64Array;
      let dot = 0;
      for (let i = k; i < v.length; i++) dot += (v[i] as number) * (column[i] as number);
      dot /= half;
      for (let i = k; i < v.length; i++) column[i] = (column[i] as number) - dot * (v[i] as number);
    }
    diagonal[k] = alpha;
  }
  return diagonal;
}

/** The inverse of an upper triangle. */
function invertUpper(r: (i: number, j: number) => number, n: number): readonly (readonly number[])[] {
  const inverse = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let j = 0; j < n; j++) {
    for (let i = j; i >= 0; i--) {
      let sum = i === j ? 1 : 0;
      for (let k = i + 1; k <= j; k++) sum -= r(i, k) * (inverse[k]?.[j] as number);
      (inverse[i] as number[])[j] = sum / r(i, i);
    }
  }
  return inverse;
}
