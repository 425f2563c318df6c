import { InputError } from '../error/index.js';
import { needBetween, needList, needObject, needOwnName, needText } from '../error/guard.js';
import { solveLinear } from '../number/solve-linear.js';

/** A strap, a wire or a length of metal that carries current back. */
export interface GroundPiece {
  readonly name: string;
  /** The two points that it ties together. */
  readonly from: string;
  readonly to: string;
  /** Its resistance in Ω with both its joints, 1e−6 to 1000. */
  readonly resistanceOhm: number;
}

/** Points of the grounds and what their pieces do with a current. */
export interface GroundWeb {
  readonly reference: string;
  readonly has: (point: string) => boolean;
  /** Volts between points a and b, in V, for one ampere let in at c and taken out at d. */
  readonly ohmOf: (a: string, b: string, c: string, d: string) => number;
}

const MOST_POINTS = 100;

/** Solves the node equations of the grounds once; the reference is the battery's post, where all currents end. */
export function groundWeb(fn: string, reference: string, pieces: readonly GroundPiece[]): GroundWeb {
  needText(fn, 'reference', reference);
  needList(fn, 'pieces', pieces, 1);
  const indexOf = new Map<string, number>([[reference, 0]]);
  const place = (point: string): number => {
    const index = indexOf.get(point) ?? indexOf.size;
    indexOf.set(point, index);
    return index;
  };
  const names = new Set<string>();
  const ends = pieces.map((piece, i) => {
    needObject(fn, `pieces[${i}]`, piece);
    needOwnName(fn, `pieces[${i}].name`, piece.name, names);
    for (const field of ['from', 'to'] as const) needText(fn, `pieces[${i}].${field}`, piece[field]);
    needBetween(fn, `pieces[${i}].resistanceOhm`, piece.resistanceOhm, 1e-6, 1000);
    if (piece.from === piece.to) {
      throw new InputError(fn, `pieces[${i}].to`, 'order', piece.to, 'must be another point than from');
    }
    return [place(piece.from), place(piece.to)] as const;
  });
  if (indexOf.size > MOST_POINTS) {
    throw new InputError(fn, 'pieces', 'list', pieces, `must tie at most ${MOST_POINTS} points`);
  }
  needTied(fn, indexOf, ends);
  const n = indexOf.size - 1;
  const matrix = new Float64Array(n * n);
  const add = (i: number, j: number, s: number): void => {
    if (i > 0 && j > 0) matrix[(i - 1) * n + j - 1] = (matrix[(i - 1) * n + j - 1] as number) + s;
  };
  ends.forEach(([i, j], k) => {
    const s = 1 / (pieces[k] as GroundPiece).resistanceOhm;
    add(i, i, s);
    add(j, j, s);
    add(i, j, -s);
    add(j, i, -s);
  });
  const sides = Array.from({ length: n }, (_, k) => new Float64Array(n).fill(1, k, k + 1));
  // Tied to the reference through resistances within nine decades, the matrix is never singular.
  const columns = solveLinear({ matrix, sides }) as readonly Float64Array[];
  const at = (p: string, q: string): number => {
    const i = indexOf.get(p) as number;
    const j = indexOf.get(q) as number;
    return i === 0 || j === 0 ? 0 : ((columns[j - 1] as Float64Array)[i - 1] as number);
  };
  return {
    reference,
    has: (point) => indexOf.has(point),
    ohmOf: (a, b, c, d) => {
      const parts = [at(a, c), at(b, d), -at(a, d), -at(b, c)];
      const sum = parts.reduce((total, part) => total + part, 0);
      // What is nothing but the last digits of equal parts is nothing.
      const dust = 1e-13 * parts.reduce((total, part) => total + Math.abs(part), 0);
      return Math.abs(sum) <= dust ? 0 : sum;
    },
  };
}

/** Every point must hang on the reference. */
function needTied(
  fn: string,
  indexOf: ReadonlyMap<string, number>,
  ends: readonly (readonly [number, number])[],
): void {
  const tied = new Set([0]);
  for (let before = 0; before < tied.size;) {
    before = tied.size;
    for (const [i, j] of ends) {
      if (tied.has(i) || tied.has(j)) tied.add(i).add(j);
    }
  }
  for (const [point, index] of indexOf) {
    if (!tied.has(index)) throw new InputError(fn, 'pieces', 'list', point, 'must tie every point to the reference');
  }
}
