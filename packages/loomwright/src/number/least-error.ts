// Which points of a curve to keep, so that the straight lines between them miss no point by more than they must.

/** Points kept, by number, and by how much the lines miss the others at most. */
export interface Kept {
  readonly kept: readonly number[];
  readonly worst: number;
}

/** A curve with its first point moved to 0, 0, so that no digits are lost to a large offset. */
interface Shifted {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Scratch of the search, used again for each error: where each point was reached from. */
  readonly before: Int32Array;
  /** What counts as nothing: 1e−12 of the curve's height, and 1e−30 where that is less, so that halving ends. */
  readonly slack: number;
}

/**
 * Keeps at most `most` points, first and last among them, with the least worst error.
 *
 * For an error allowed, each point's lines to later points are found in one sweep: every point passed narrows the cone
 * of slopes that miss none by more. A search by breadth over those lines gives the fewest. The error is then bisected:
 * each success lowers it to what its lines really miss, and the end is reached when 1e−12 of the curve's height less
 * cannot be had.
 */
export function leastError(x: readonly number[], y: readonly number[], most: number): Kept {
  const curve = shifted(x, y);
  const { slack } = curve;
  const legs = most - 1;
  let best = trace(curve, Infinity, legs) as readonly number[];
  let high = worstOf(curve, best);
  let low = 0;
  while (high - low > slack) {
    const near = low > 0 && high - low < high / 16;
    const tried = near ? high - slack : low === 0 ? high / 4 : (low + high) / 2;
    const found = trace(curve, tried, legs);
    if (found === null) {
      if (near) return { kept: best, worst: high };
      low = tried;
      continue;
    }
    best = found;
    high = Math.min(tried, worstOf(curve, found));
    if (!near) continue;
    // Lower by the least step was possible: halve what is left before asking again.
    const half = (low + high) / 2;
    const further = trace(curve, half, legs);
    if (further === null) low = half;
    else {
      best = further;
      high = Math.min(half, worstOf(curve, further));
    }
  }
  return { kept: best, worst: worstOf(curve, best) };
}

/** The fewest points that miss none by more than an error, or null where more than `most` are needed. */
export function fewestPoints(
  x: readonly number[],
  y: readonly number[],
  error: number,
  most: number,
): readonly number[] | null {
  const curve = shifted(x, y);
  return trace(curve, error + curve.slack, most - 1);
}

function shifted(x: readonly number[], y: readonly number[]): Shifted {
  const x0 = x[0] as number;
  const y0 = y[0] as number;
  const xs = new Float64Array(x.length);
  const ys = new Float64Array(x.length);
  let height = 0;
  for (let i = 0; i < x.length; i++) {
    xs[i] = (x[i] as number) - x0;
    ys[i] = (y[i] as number) - y0;
    height = Math.max(height, Math.abs(ys[i] as number));
  }
  return { x: xs, y: ys, before: new Int32Array(x.length), slack: Math.max(1e-12 * height, 1e-30) };
}

/** The fewest lines from the first point to the last that miss no point by more than `error`: a search by breadth. */
function trace({ x, y, before }: Shifted, error: number, legs: number): readonly number[] | null {
  const last = x.length - 1;
  before.fill(-1);
  let front: number[] = [0];
  for (let leg = 0; leg < legs && front.length > 0; leg++) {
    const next: number[] = [];
    // The furthest first: the end is reached soonest from there.
    for (let f = front.length - 1; f >= 0; f--) {
      const i = front[f] as number;
      const xi = x[i] as number;
      const yi = y[i] as number;
      // The cone as two lines, each a rise over a run: multiplied out, no slope is divided.
      let lowRise = -1e300;
      let lowRun = 1e-300;
      let highRise = 1e300;
      let highRun = 1e-300;
      for (let j = i + 1; j <= last; j++) {
        const run = (x[j] as number) - xi;
        const rise = (y[j] as number) - yi;
        const aboveLow = rise * lowRun - lowRise * run;
        const aboveHigh = rise * highRun - highRise * run;
        if (aboveLow >= 0 && aboveHigh <= 0 && before[j] === -1) {
          before[j] = i;
          if (j === last) return pathTo(before, last);
          next.push(j);
        }
        if (aboveLow > error * lowRun) {
          lowRise = rise - error;
          lowRun = run;
        }
        if (aboveHigh < -error * highRun) {
          highRise = rise + error;
          highRun = run;
        }
        if (lowRise * highRun > highRise * lowRun) break;
      }
    }
    next.sort((a, b) => a - b);
    front = next;
  }
  return null;
}

function pathTo(before: Int32Array, last: number): readonly number[] {
  const path = [last];
  for (let at = last; at !== 0;) {
    at = before[at] as number;
    path.push(at);
  }
  return path.reverse();
}

/** By how much the lines through the kept points miss the others at most. */
function worstOf({ x, y }: Shifted, kept: readonly number[]): number {
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
