// Packs circles into the smallest circle that it finds. Only sums, products and square roots are used, so that every
// machine draws the same picture from the same wires.

/** Circles in place: centres, and the radius of the circle around them all about the origin. */
export interface Packing {
  readonly xMm: readonly number[];
  readonly yMm: readonly number[];
  readonly radiusMm: number;
}

/** Stiffness of the springs by which overlapping circles push, from soft to hard, and most steps at each. */
const SOFT = [1, 10, 100, 1e3, 1e5, 1e7];
const SOFTER = [0.3, 1, 3, 10, 100, 1e3, 1e5, 1e7];
const SHAKEN = [3, 30, 1e3, 1e5, 1e7];
const FINISH = [1e4, 1e6, 1e8];
const STEPS_SOFT = 60;
const STEPS_HARD = 160;
/** Pairs of steps that the quasi-Newton method remembers. */
const MEMORY = 8;

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
  const r = Float64Array.from(radii, (radius) => radius / unit);
  const draw = sequence();
  const tries = Math.max(6, Math.min(36, Math.round(1200 / n)));
  let best = strewn(r, draw);
  settle(best, r, SOFT, Infinity);
  const take = (state: Float64Array): void => {
    if (size(state) < size(best)) best = state;
  };
  for (let k = 1; k < tries && n > 1; k++) {
    const state = strewn(r, draw);
    settle(state, r, k % 2 === 0 ? SOFT : SOFTER, size(best));
    take(state);
  }
  for (let k = 0; k < tries && n > 2; k++) {
    const state = shaken(best, r, draw, k);
    settle(state, r, SHAKEN, size(best));
    take(state);
  }
  for (let k = 0; k < 2; k++) {
    const state = best.slice();
    settle(state, r, FINISH, Infinity);
    take(state);
  }
  return {
    xMm: radii.map((_, i) => (best[i] as number) * unit),
    yMm: radii.map((_, i) => (best[n + i] as number) * unit),
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
  for (let i = 0; i < n; i++) {
    let x = 1;
    let y = 1;
    while (x * x + y * y > 1) {
      x = 2 * draw() - 1;
      y = 2 * draw() - 1;
    }
    const reach = Math.max(0, radius - (r[i] as number));
    state[i] = x * reach;
    state[n + i] = y * reach;
  }
  state[2 * n] = radius;
  return state;
}

/** A copy of a packing with all circles nudged, one put elsewhere, or two exchanged, by turns. */
function shaken(from: Float64Array, r: Float64Array, draw: () => number, turn: number): Float64Array {
  const n = r.length;
  const state = from.slice();
  const a = Math.floor(draw() * n);
  const b = Math.floor(draw() * n);
  if (turn % 3 === 0) {
    for (let i = 0; i < 2 * n; i++) state[i] = (state[i] as number) + 0.6 * (draw() - 0.5);
  } else if (turn % 3 === 1) {
    state[a] = (2 * draw() - 1) * size(from);
    state[n + a] = (2 * draw() - 1) * size(from);
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
function settle(state: Float64Array, r: Float64Array, stiffnesses: readonly number[], bestRadius: number): void {
  for (const stiffness of stiffnesses) {
    if (press(state, r, stiffness) > bestRadius) {
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

/**
 * Radius of the whole plus spring energy of all overlaps, and its gradient.
 */
function energy(state: Float64Array, r: Float64Array, stiffness: number, gradient: Float64Array): number {
  const n = r.length;
  const radius = state[2 * n] as number;
  let sum = radius;
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
      sum += 0.5 * stiffness * out * out;
      pushOut -= stiffness * out;
      if (d > 0) {
        gx += (stiffness * out * x) / d;
        gy += (stiffness * out * y) / d;
      }
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
      sum += 0.5 * stiffness * overlap * overlap;
      gx -= k * dx;
      gy -= k * dy;
      gradient[j] = (gradient[j] as number) + k * dx;
      gradient[n + j] = (gradient[n + j] as number) + k * dy;
    }
    gradient[i] = (gradient[i] as number) + gx;
    gradient[n + i] = (gradient[n + i] as number) + gy;
  }
  gradient[2 * n] = pushOut;
  return sum;
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
function press(state: Float64Array, r: Float64Array, stiffness: number): number {
  let gradient = new Float64Array(state.length);
  let value = energy(state, r, stiffness, gradient);
  const past: { step: Float64Array; change: Float64Array; curve: number }[] = [];
  const steps = stiffness < 1e5 ? STEPS_SOFT : STEPS_HARD;
  for (let count = 0; count < steps; count++) {
    const direction = gradient.map((g) => -g);
    const weights: number[] = [];
    for (let k = past.length - 1; k >= 0; k--) {
      const { step, change, curve } = past[k] as (typeof past)[number];
      weights[k] = dot(step, direction) / curve;
      add(direction, -(weights[k] as number), change);
    }
    const last = past[past.length - 1];
    const scale = last === undefined ? 1 / stiffness : last.curve / dot(last.change, last.change);
    for (let i = 0; i < direction.length; i++) direction[i] = (direction[i] as number) * scale;
    past.forEach(({ step, change, curve }, k) => {
      add(direction, (weights[k] as number) - dot(change, direction) / curve, step);
    });
    const slope = dot(gradient, direction);
    if (!(slope < 0)) return value;
    let next = state;
    let nextValue = value;
    let nextGradient = gradient;
    let share = 1;
    for (; share > 1e-6; share /= 2) {
      next = state.slice();
      add(next, share, direction);
      nextGradient = new Float64Array(state.length);
      nextValue = energy(next, r, stiffness, nextGradient);
      if (nextValue <= value + 1e-4 * share * slope) break;
    }
    if (share <= 1e-6) return value;
    const step = next.slice();
    add(step, -1, state);
    const change = nextGradient.slice();
    add(change, -1, gradient);
    const curve = dot(step, change);
    if (curve > 1e-14) past.push({ step, change, curve });
    if (past.length > MEMORY) past.shift();
    const gain = value - nextValue;
    state.set(next);
    gradient = nextGradient;
    value = nextValue;
    if (gain < 1e-13 * Math.abs(value) || gradient.every((g) => Math.abs(g) < 1e-9)) return value;
  }
  return value;
}
