import type { SymmetricAnalysis } from './analyse-symmetric.js';
import { cutter, doubled } from './cut-arrays.js';
import { eliminate } from './elimination.js';
import { tiesOf } from './elimination-ties.js';

/**
 * The analysis of a matrix whose entries are known to lie within it and beside its diagonal.
 *
 * Row k of the factor has an entry in column j wherever the matrix has, and then in the column of the first entry below
 * that one, its parent in the tree of elimination, and so on up to k. What was met in the row is not gone through again.
 *
 * Liu, The role of elimination trees in sparse factorization, SIAM Journal on Matrix Analysis and Applications 11 (1990)
 * 134–172.
 */
export function analysisOf(count: number, rows: Int32Array, columns: Int32Array): SymmetricAnalysis {
  const entryCount = rows.length;
  const cut = cutter(Int32Array, 4 * count + 2 + entryCount);
  const order = cut(count);
  const turn = cut(count);
  const columnStart = cut(count + 1);
  const rowStart = cut(count + 1);
  const place = cut(entryCount);
  const cutWork = cutter(Int32Array, 3 * count + 1 + 4 * entryCount);
  const ties = tiesOf(order, turn, rows, columns, cutWork);
  eliminate(ties);
  for (let k = 0; k < count; k++) turn[order[k] as number] = k;
  // Entries of the matrix by rows of the factor: first where each row ends, which goes down as they are filled. Until then
  // row and column of each entry stand in the second halves.
  const entryStart = cutWork(count + 1);
  const { next: entryColumn, far: entryIndex } = ties;
  for (let e = 0; e < entryCount; e++) {
    const i = turn[rows[e] as number] as number;
    const j = turn[columns[e] as number] as number;
    const k = i > j ? i : j;
    entryIndex[entryCount + e] = k;
    entryColumn[entryCount + e] = i + j - k;
    entryStart[k] = (entryStart[k] as number) + 1;
  }
  for (let k = 1; k <= count; k++) entryStart[k] = (entryStart[k] as number) + (entryStart[k - 1] as number);
  for (let e = entryCount - 1; e >= 0; e--) {
    const k = entryIndex[entryCount + e] as number;
    const p = (entryStart[k] as number) - 1;
    entryStart[k] = p;
    entryColumn[p] = entryColumn[entryCount + e] as number;
    entryIndex[p] = e;
  }
  const parent = ties.head.fill(-1);
  const met = cutWork(count);
  let columnIndex = new Int32Array(2 * (count + entryCount));
  let size = 0;
  for (let k = 0; k < count; k++) {
    met[k] = k;
    for (let p = entryStart[k] as number, end = entryStart[k + 1] as number; p < end; p++) {
      for (let j = entryColumn[p] as number; met[j] !== k; j = parent[j] as number) {
        met[j] = k;
        columnStart[j + 1] = (columnStart[j + 1] as number) + 1;
        if (size === columnIndex.length) columnIndex = doubled(columnIndex);
        columnIndex[size++] = j;
        if ((parent[j] as number) < 0) parent[j] = k;
      }
    }
    rowStart[k + 1] = size;
  }
  for (let k = 1; k <= count; k++) columnStart[k] = (columnStart[k] as number) + (columnStart[k - 1] as number);
  // The same by columns: row after row, so that each column has its rows upwards.
  const next = met;
  next.set(columnStart.subarray(0, count));
  const rowIndex = new Int32Array(size);
  for (let k = 0; k < count; k++) {
    for (let p = rowStart[k] as number, end = rowStart[k + 1] as number; p < end; p++) {
      const j = columnIndex[p] as number;
      const q = next[j] as number;
      next[j] = q + 1;
      rowIndex[q] = k;
    }
    // Row k is the last that came to the columns of its entries.
    for (let p = entryStart[k] as number, end = entryStart[k + 1] as number; p < end; p++) {
      place[entryIndex[p] as number] = (next[entryColumn[p] as number] as number) - 1;
    }
  }
  columnIndex = new Int32Array(columnIndex.buffer, 0, size);
  return { count, entryCount, order, turn, columnStart, rowIndex, rowStart, columnIndex, place };
}
