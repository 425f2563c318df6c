// Which points of a curve to keep, so that the straight lines between them miss no point by more than they must.

/** Points kept, by number, and by how much the lines miss the others at most. */
export interface Kept {
  readonly kept: readonly number[];
  readonly worst: number;
}

/** A curve from one of its ends, that end moved to 0, 0, so that no digits are lost to a large offset. */
interface FromEnd {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** A curve from both ends, and the scratch of its searches, used again for each error. */
interface Search {
  readonly ends: readonly [FromEnd, FromEnd];
  /** For each end, by points counted from it, the least number of lines that lead there. See `trace`. */
  readonly levels: readonly [Int32Array, Int32Array];
  /** Where each point was reached from, and with how many lines; −1 where it was not. */
  readonly before: Int32Array;
  readonly reached: Int32Array;
  readonly front: Int32Array;
  /** What counts as nothing: 1e−12 of the curve's height, and 1e−30 where that is less, so that halving ends. */
  readonly slack: number;
}

/**
 * Keeps at most `most` points, first and last among them, with the least worst error.
 *
 * For an error allowed, each point's lines to later points are found in one sweep: every point passed narrows the cone
 * of slopes that miss none by more. A search by breadth over those lines gives the fewest. The error is then bisected,
 * from what evenly spread points miss: each success lowers it to what its lines really miss, and the end is reached
 * when 1e−12 of the curve's height less cannot be had.
 *
 * Less error never needs fewer lines. So what a search from one end found bounds, for every smaller error, how many
 * lines a point still needs to that end, and a search from the other end leaves out what would need too many.
 */
export function leastError(x: readonly number[], y: readonly number[], most: number): Kept {
  const search = searchOf(x, y);
  const { slack } = search;
  const legs = most - 1;
  let end: 0 | 1 = 0;
  const tryFor = (error: number): readonly number[] | null => {
    const found = trace(search, end, error, legs);
    if (found !== null) end = end === 0 ? 1 : 0;
    return found;
  };
  const even = evenly(x.length - 1, legs);
  let best = tryFor(worstOf(search, even) + slack) ?? even;
  let high = worstOf(search, best);
  let low = 0;
  while (high - low > slack) {
    const near = low > 0 && high - low < high / 16;
    const tried = near ? high - slack : low === 0 ? high / 4 : (low + high) / 2;
    const found = tryFor(tried);
    if (found === null) {
      if (near) return { kept: best, worst: high };
      low = tried;
      continue;
    }
    best = found;
    high = Math.min(tried, worstOf(search, found));
    if (!near) continue;
    // Lower by the least step was possible: halve what is left before asking again.
    const half = (low + high) / 2;
    const further = tryFor(half);
    if (further === null) low = half;
    else {
      best = further;
      high = Math.min(half, worstOf(search, further));
    }
  }
  return { kept: best, worst: worstOf(search, best) };
}

/** The fewest points that miss none by more than an error, or null where more than `most` are needed. */
export function fewestPoints(
  x: readonly number[],
  y: readonly number[],
  error: number,
  most: number,
): readonly number[] | null {
  const search = searchOf(x, y);
  return trace(search, 0, error + search.slack, most - 1);
}

function searchOf(x: readonly number[], y: readonly number[]): Search {
  const n = x.length;
  const ends = [
    { x: new Float64Array(n), y: new Float64Array(n) },
    { x: new Float64Array(n), y: new Float64Array(n) },
  ] as const;
  const [x0, y0, xn, yn] = [x[0], y[0], x[n - 1], y[n - 1]] as [number, number, number, number];
  let height = 0;
  for (let i = 0; i < n; i++) {
    ends[0].x[i] = (x[i] as number) - x0;
    ends[0].y[i] = (y[i] as number) - y0;
    ends[1].x[n - 1 - i] = xn - (x[i] as number);
    ends[1].y[n - 1 - i] = (y[i] as number) - yn;
    height = Math.max(height, Math.abs(ends[0].y[i] as number));
  }
  return {
    ends,
    levels: [new Int32Array(n), new Int32Array(n)],
    before: new Int32Array(n),
    reached: new Int32Array(n),
    front: new Int32Array(n),
    slack: Math.max(1e-12 * height, 1e-30),
  };
}

/** Points spread evenly by their number. */
function evenly(last: number, legs: number): readonly number[] {
  const kept: number[] = [];
  for (let leg = 0; leg <= legs; leg++) {
    const point = Math.round((last * leg) / legs);
    if (point !== kept[kept.length - 1]) kept.push(point);
  }
  return kept;
}

/**
 * The fewest lines from one end to the other that miss no point by more than `error`: a search by breadth. Points are
 * counted from the end where it starts; the path that it gives is counted from the first.
 *
 * What a success found stands in `levels`: for each point reached, its lines; for all others, the lines to the far end,
 * because whatever could be reached sooner and is of use has been.
 */
function trace(search: Search, end: 0 | 1, error: number, legs: number): readonly number[] | null {
  const { ends, levels, before, reached, front } = search;
  const { x, y } = ends[end];
  const rest = levels[end === 0 ? 1 : 0];
  const last = x.length - 1;
  before.fill(-1);
  front[0] = 0;
  reached[0] = 0;
  let size = 1;
  for (let leg = 1; leg <= legs && size > 0; leg++) {
    let furthest = 0;
    // The furthest first: the end is reached soonest from there.
    for (let f = size - 1; f >= 0; f--) {
      const i = front[f] as number;
      const xi = x[i] as number;
      const yi = y[i] as number;
      let low = -Infinity;
      let high = Infinity;
      for (let j = i + 1; j <= last; j++) {
        const per = 1 / ((x[j] as number) - xi);
        const slope = ((y[j] as number) - yi) * per;
        const cone = error * per;
        if (slope >= low && slope <= high && before[j] === -1 && leg + (rest[last - j] as number) <= legs) {
          before[j] = i;
          reached[j] = leg;
          if (j === last) return settle(search, end, leg);
          if (j > furthest) furthest = j;
        }
        if (slope - cone > low) low = slope - cone;
        if (slope + cone < high) high = slope + cone;
        if (low > high) break;
      }
    }
    size = 0;
    for (let j = 1; j <= furthest; j++) {
      if (reached[j] === leg && before[j] !== -1) front[size++] = j;
    }
  }
  return null;
}

/** Notes what a search found, and gives its path. */
function settle({ ends, levels, before, reached }: Search, end: 0 | 1, legs: number): readonly number[] {
  const last = ends[0].x.length - 1;
  const level = levels[end];
  for (let j = 1; j <= last; j++) level[j] = before[j] === -1 ? legs : (reached[j] as number);
  const path = [last];
  for (let at = last; at !== 0;) {
    at = before[at] as number;
    path.push(at);
  }
  return end === 0 ? path.reverse() : path.map((point) => last - point);
}

/** By how much the lines through the kept points miss the others at most. */
function worstOf({ ends: [{ x, y }] }: Search, kept: readonly number[]): number {
  let worst = 0;
  for (let leg = 1; leg < kept.length; leg++) {
    const i = kept[leg - 1] as number;
    const j = kept[leg] as number;
    const slope = ((y[j] as number) - (y[i] as number)) / ((x[j] as number) - (x[i] as number));
    for (let k = i + 1; k < j; k++) {
      const off = Math.abs((y[k] as number) - (y[i] as number) - slope * ((x[k] as number) - (x[i] as number)));
      if (off > worst) worst = off;
    }
  }
  return worst;
}
