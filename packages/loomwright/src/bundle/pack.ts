// Packs circles into the smallest circle that it finds. Only sums, products and square roots are used, so that every
// machine draws the same picture from the same wires.

/** Circles in place: centres, and the radius of the circle around them all about the origin. */
export interface Packing {
  readonly xMm: readonly number[];
  readonly yMm: readonly number[];
  readonly radiusMm: number;
}

/** Stiffness of the springs by which overlapping circles push, from soft to hard. */
const SOFT = [1, 10, 100, 1e3, 1e5, 1e7];
const SOFTER = [0.3, 1, 3, 10, 100, 1e3, 1e5, 1e7];
const SHAKEN = [3, 30, 1e3, 1e5, 1e7];
const FINISH = [1e4, 1e6, 1e8];
/** Most steps at soft and at hard springs. */
const STEPS_SOFT = 60;
const STEPS_HARD = 160;
/** Steps that the quasi-Newton method remembers. */
const MEMORY = 6;

/**
 * The best of many packings of circles with the given radii.
 *
 * Each try starts from circles strewn in a disc by a fixed sequence, presses them together with springs that get
 * harder (a penalty method, minimised by limited-memory BFGS), then spreads the result until nothing overlaps. The
 * best one is shaken, its circles exchanged and moved, and pressed again. What comes back is free of overlap to
 * rounding; that it is the smallest is not proved.
 */
export function packRadii(radii: readonly number[]): Packing {
  const n = radii.length;
  const unit = Math.sqrt(radii.reduce((sum, r) => sum + r * r, 0) / n);
  const exact = Float64Array.from(radii, (radius) => radius / unit);
  // Rounded, so that the search takes the same way for wires that are all larger by one factor.
  const r = exact.map((ratio) => Math.round(ratio * 1e6) / 1e6);
  const draw = sequence();
  const work = workspace(n);
  const tries = Math.max(8, Math.min(80, Math.round(2400 / n)));
  let best = strewn(r, draw);
  settle(best, r, SOFT, Infinity, work);
  const take = (state: Float64Array): void => {
    if (size(state) < size(best)) best = state;
  };
  for (let k = 1; k < tries && n > 1; k++) {
    const state = strewn(r, draw);
    settle(state, r, k % 2 === 0 ? SOFT : SOFTER, size(best), work);
    take(state);
  }
  for (let k = 0; k < 2 * tries && n > 2; k++) {
    const state = shaken(best, r, draw, k);
    settle(state, r, SHAKEN, size(best), work);
    take(state);
  }
  for (let k = 0; k < 2 && n > 1; k++) {
    const state = best.slice();
    settle(state, r, FINISH, Infinity, work);
    take(state);
  }
  spread(best, exact);
  return {
    // Plus 0: a wire in the middle is at 0, not at −0.
    xMm: radii.map((_, i) => (best[i] as number) * unit + 0),
    yMm: radii.map((_, i) => (best[n + i] as number) * unit + 0),
    radiusMm: size(best) * unit,
  };
}

/** A state holds x of all circles, y of all, and last the radius around them. */
function size(state: Float64Array): number {
  return state[state.length - 1] as number;
}

/** A fixed sequence of numbers from 0 to 1 (linear congruence modulo 2³²). */
function sequence(): () => number {
  let s = 777;
  return () => {
    s = (Math.imul(s, 1664525) + 1013904223) >>> 0;
    return s / 4294967296;
  };
}

function strewn(r: Float64Array, draw: () => number): Float64Array {
  const n = r.length;
  const state = new Float64Array(2 * n + 1);
  const radius = 1.2 * Math.sqrt(n);
  for (let i = 0; i < n; i++) put(state, n, i, Math.max(0, radius - (r[i] as number)), draw);
  state[2 * n] = radius;
  return state;
}

/** Puts a circle anywhere in a disc. */
function put(state: Float64Array, n: number, i: number, reach: number, draw: () => number): void {
  let x = 1;
  let y = 1;
  while (x * x + y * y > 1) {
    x = 2 * draw() - 1;
    y = 2 * draw() - 1;
  }
  state[i] = x * reach;
  state[n + i] = y * reach;
}

/** A copy of a packing with all circles nudged, one put elsewhere, or two of unlike size exchanged, by turns. */
function shaken(from: Float64Array, r: Float64Array, draw: () => number, turn: number): Float64Array {
  const n = r.length;
  const state = from.slice();
  const a = Math.floor(draw() * n);
  let b = Math.floor(draw() * n);
  for (let k = 0; k < n && r[b] === r[a]; k++) b = (b + 1) % n;
  if (turn % 4 === 0) {
    for (let i = 0; i < 2 * n; i++) state[i] = (state[i] as number) + 0.6 * (draw() - 0.5);
  } else if (turn % 4 === 1 || r[b] === r[a]) {
    put(state, n, a, size(from), draw);
  } else {
    for (const k of [0, n]) {
      state[k + a] = from[k + b] as number;
      state[k + b] = from[k + a] as number;
    }
  }
  return state;
}

/**
 * Presses a packing with ever harder springs, in place, and takes out what overlap is left. The energy only grows with
 * the stiffness and ends as the radius: a try whose energy has reached the best radius is given up.
 */
function settle(
  state: Float64Array,
  r: Float64Array,
  stiffnesses: readonly number[],
  bestRadius: number,
  work: Workspace,
): void {
  for (const stiffness of stiffnesses) {
    if (press(state, r, stiffness, work) > bestRadius) {
      state[state.length - 1] = Infinity;
      return;
    }
  }
  spread(state, r);
}

/** Scales the centres until no two circles overlap, and measures the circle around them. */
function spread(state: Float64Array, r: Float64Array): void {
  const n = r.length;
  let scale = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const dx = (state[i] as number) - (state[j] as number);
      const dy = (state[n + i] as number) - (state[n + j] as number);
      scale = Math.max(scale, ((r[i] as number) + (r[j] as number)) / Math.sqrt(dx * dx + dy * dy));
    }
  }
  let radius = 0;
  for (let i = 0; i < n; i++) {
    const x = (state[i] as number) * scale;
    const y = (state[n + i] as number) * scale;
    state[i] = x;
    state[n + i] = y;
    radius = Math.max(radius, Math.sqrt(x * x + y * y) + (r[i] as number));
  }
  // Two circles on one point cannot be spread: such a try is worth nothing.
  state[2 * n] = scale < 1e6 ? radius : Infinity;
}

/** Radius of the whole plus spring energy of all overlaps; `gradient` is filled with its slope. */
function energy(state: Float64Array, r: Float64Array, stiffness: number, gradient: Float64Array): number {
  const n = r.length;
  const radius = state[2 * n] as number;
  let squares = 0;
  let pushOut = 1;
  gradient.fill(0);
  for (let i = 0; i < n; i++) {
    const x = state[i] as number;
    const y = state[n + i] as number;
    const ri = r[i] as number;
    let gx = 0;
    let gy = 0;
    const d = Math.sqrt(x * x + y * y);
    const out = d + ri - radius;
    if (out > 0) {
      squares += out * out;
      pushOut -= stiffness * out;
      const k = (stiffness * out) / Math.max(d, 1e-9);
      gx += k * x;
      gy += k * y;
    }
    for (let j = 0; j < i; j++) {
      const dx = x - (state[j] as number);
      const dy = y - (state[n + j] as number);
      const reach = ri + (r[j] as number);
      const square = dx * dx + dy * dy;
      if (square >= reach * reach) continue;
      const apart = Math.sqrt(square);
      const overlap = reach - apart;
      const k = (stiffness * overlap) / Math.max(apart, 1e-9);
      squares += overlap * overlap;
      gx -= k * dx;
      gy -= k * dy;
      gradient[j] = (gradient[j] as number) + k * dx;
      gradient[n + j] = (gradient[n + j] as number) + k * dy;
    }
    gradient[i] = (gradient[i] as number) + gx;
    gradient[n + i] = (gradient[n + i] as number) + gy;
  }
  gradient[2 * n] = pushOut;
  return radius + 0.5 * stiffness * squares;
}

/** Arrays that every press uses again. */
interface Workspace {
  readonly gradient: Float64Array;
  readonly nextGradient: Float64Array;
  readonly next: Float64Array;
  readonly direction: Float64Array;
  /** The last steps and the changes of the gradient over them, in a ring. */
  readonly steps: readonly Float64Array[];
  readonly changes: readonly Float64Array[];
  readonly curves: Float64Array;
  readonly weights: Float64Array;
}

function workspace(n: number): Workspace {
  const vector = (): Float64Array => new Float64Array(2 * n + 1);
  return {
    gradient: vector(),
    nextGradient: vector(),
    next: vector(),
    direction: vector(),
    steps: Array.from({ length: MEMORY }, vector),
    changes: Array.from({ length: MEMORY }, vector),
    curves: new Float64Array(MEMORY),
    weights: new Float64Array(MEMORY),
  };
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

/** Adds `scale` times `b` to `a`. */
function add(a: Float64Array, scale: number, b: Float64Array): void {
  for (let i = 0; i < a.length; i++) a[i] = (a[i] as number) + scale * (b[i] as number);
}

/** Minimises the energy at one stiffness, in place, by limited-memory BFGS with backtracking, and returns it. */
function press(state: Float64Array, r: Float64Array, stiffness: number, work: Workspace): number {
  const { gradient, nextGradient, next, direction, steps, changes, curves } = work;
  let value = energy(state, r, stiffness, gradient);
  let kept = 0;
  const most = stiffness < 1e5 ? STEPS_SOFT : STEPS_HARD;
  for (let count = 0; count < most; count++) {
    const slope = downhill(work, kept, 1 / stiffness);
    if (!(slope < -1e-18)) return value;
    let share = 1;
    let nextValue = Infinity;
    for (; share > 1e-6; share /= 2) {
      next.set(state);
      add(next, share, direction);
      nextValue = energy(next, r, stiffness, nextGradient);
      if (nextValue <= value + 1e-4 * share * slope) break;
    }
    if (share <= 1e-6) return value;
    const step = steps[kept % MEMORY] as Float64Array;
    const change = changes[kept % MEMORY] as Float64Array;
    for (let i = 0; i < state.length; i++) {
      step[i] = (next[i] as number) - (state[i] as number);
      change[i] = (nextGradient[i] as number) - (gradient[i] as number);
    }
    const curve = dot(step, change);
    if (curve > 1e-14) {
      curves[kept % MEMORY] = curve;
      kept++;
    }
    state.set(next);
    gradient.set(nextGradient);
    const gain = value - nextValue;
    value = nextValue;
    if (gain < 1e-13 * value) return value;
  }
  return value;
}

/** Fills `direction` by the two loops of L-BFGS over the last steps kept, and returns the slope along it. */
function downhill(work: Workspace, kept: number, firstScale: number): number {
  const { gradient, direction, steps, changes, curves, weights } = work;
  for (let i = 0; i < direction.length; i++) direction[i] = -(gradient[i] as number);
  const oldest = Math.max(0, kept - MEMORY);
  for (let k = kept - 1; k >= oldest; k--) {
    const at = k % MEMORY;
    const weight = dot(steps[at] as Float64Array, direction) / (curves[at] as number);
    weights[at] = weight;
    add(direction, -weight, changes[at] as Float64Array);
  }
  const last = changes[(kept + MEMORY - 1) % MEMORY] as Float64Array;
  const scale = kept === 0 ? firstScale : (curves[(kept - 1) % MEMORY] as number) / dot(last, last);
  for (let i = 0; i < direction.length; i++) direction[i] = (direction[i] as number) * scale;
  for (let k = oldest; k < kept; k++) {
    const at = k % MEMORY;
    const back = dot(changes[at] as Float64Array, direction) / (curves[at] as number);
    add(direction, (weights[at] as number) - back, steps[at] as Float64Array);
  }
  return dot(gradient, direction);
}
