import { LOAD_SPREAD } from '../loom/spread.js';
import { type Change, type MeterNet, type NetState, OPEN_OHM } from './net.js';
import { predict, type Prepared } from './prepare.js';

/** How far the volts of a battery may be from the plan's before its posts were read, in V, as a standard deviation. */
export const SUPPLY_SIGMA_V = 3;
/** Factors tried on the current of a load: from none to what its fuse would not stand for long. */
const FACTORS: readonly number[] = [0, 0.25, 0.5, 0.75, 0.9, 1.1, 1.25, 1.5, 2, 3];
const MOST_FACTOR = 3;
/** Causes that are followed over their whole range; the rest is judged by its line and by its open end. */
const MOST_FOLLOWED = 40;
const FEWEST_FOLLOWED = 12;
const MOST_VALLEYS = 2;
const GOLDEN_STEPS = 18;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** One cause: more resistance in a part, or another current of a load. Parts that no reading parts are one cause. */
export interface Cause {
  readonly kind: 'part' | 'load';
  /** Parts, by number; or the load's number. */
  readonly members: readonly number[];
  readonly branch: number;
  /** Misfit at best, and where: Ω added, or the factor. */
  readonly misfit: number;
  readonly at: number;
  readonly open: boolean;
}

/** A battery in a state, and what the readings say of it beside a cause. */
export interface FoundSupply {
  readonly battery: string;
  readonly state: string;
  readonly offV: number;
  readonly sigmaV: number;
}

interface Column {
  readonly battery: string;
  readonly state: string;
  readonly values: Float64Array;
}

/**
 * Readings against a network by generalised least squares. What a healthy vehicle may have (spread of every part, of
 * every load, of the battery's volts, and the meter's error) makes the covariance of the readings:
 *
 * $$C = M + \sum_p \sigma_p^2\,J_p J_p^\mathsf{T} \qquad \chi^2(x) = (d - \Delta r(x))^\mathsf{T} C^{-1} (d - \Delta r(x))$$
 */
export class Fit {
  readonly net: MeterNet;
  readonly readings: readonly Prepared[];
  readonly states: readonly string[];
  readonly #expected: Float64Array;
  /** Lower triangle of the covariance's factor, row by row. */
  readonly #lower: Float64Array;
  readonly #off: Float64Array;
  /** Standard deviations of each reading: without the batteries' part. */
  readonly #sigma: Float64Array;
  readonly #supply: Column[] = [];
  /** What 1 Ω more in a part changes, and the full step of each load. */
  readonly #partColumns = new Map<number, Float64Array>();
  readonly #loadColumns = new Map<number, Float64Array>();
  readonly #solved = new Map<string, NetState>();

  constructor(net: MeterNet, readings: readonly Prepared[]) {
    this.net = net;
    this.readings = readings;
    this.states = [...new Set(readings.flatMap(({ state }) => (state === null ? [] : [state])))];
    this.#expected = this.#predict({}, -1, 0);
    this.#off = Float64Array.from(readings, ({ value }, i) => value - this.expected(i));
    const n = readings.length;
    const covariance = new Float64Array(n * n);
    readings.forEach(({ meterSigma }, i) => (covariance[i * n + i] = meterSigma ** 2));
    this.#addParts(covariance);
    this.#addLoads(covariance);
    this.#sigma = Float64Array.from(readings, (_, i) => Math.sqrt(covariance[i * n + i] as number));
    this.#addSupply(covariance);
    this.#lower = factored(covariance, n);
  }

  expected(i: number): number {
    return this.#expected[i] as number;
  }

  sigma(i: number): number {
    return this.#sigma[i] as number;
  }

  /** How far a reading is from the plan. */
  off(i: number): number {
    return this.#off[i] as number;
  }

  /** Misfit with everything healthy. */
  healthyMisfit(): number {
    return sumOfSquares(this.#whitened(this.#off.slice()));
  }

  /** All causes, best first. Those followed over their range come before those that were not. */
  causes(): readonly Cause[] {
    const z = this.#whitened(this.#off.slice());
    const whole = sumOfSquares(z);
    const rough = [...this.#partCauses(z, whole), ...this.#loadCauses(z, whole)].sort((a, b) => a.misfit - b.misfit);
    const best = rough[0]?.misfit ?? 0;
    const near = rough.findIndex(({ misfit }) => misfit > best + 25 + (whole - best) / 4);
    const count = near < 0 ? MOST_FOLLOWED : Math.max(FEWEST_FOLLOWED, Math.min(MOST_FOLLOWED, near));
    const followed = rough.slice(0, count).map((one) => this.#followed(one));
    return [...followed, ...rough.slice(count)].sort((a, b) => a.misfit - b.misfit);
  }

  /** Misfit of a cause at some place. */
  misfitAt(cause: Pick<Cause, 'kind' | 'members' | 'branch'>, at: number): number {
    return sumOfSquares(this.#whitened(this.#residual(cause, at)));
  }

  /** Where the misfit of a cause is 4 more than at its best: two sigmas to either side. High is null where it may be open. */
  rangeOf(cause: Cause): readonly [number, number | null] {
    const limit = cause.misfit + 4;
    const at = (inside: number, outside: number): number => {
      let [a, b] = [Math.log(inside), Math.log(outside)];
      for (let i = 0; i < 24; i++) {
        const middle = (a + b) / 2;
        if (this.misfitAt(cause, Math.exp(middle)) <= limit) a = middle;
        else b = middle;
      }
      return Math.exp(a);
    };
    const best = Math.max(cause.at, 1e-9);
    const low = this.misfitAt(cause, 1e-9) <= limit ? 0 : at(best, 1e-9);
    if (cause.open || this.misfitAt(cause, OPEN_OHM) <= limit) return [low, null];
    return [low, at(best, OPEN_OHM)];
  }

  /** The least misfit that is left when one reading counts for nothing, beside a cause; and which reading that is. */
  withoutOne(cause: Cause | null): { readonly misfit: number; readonly index: number } {
    const residual = cause === null ? this.#off.slice() : this.#residual(cause, cause.at);
    const n = residual.length;
    const whole = sumOfSquares(this.#whitened(residual.slice()));
    const solved = this.#inverse(residual);
    let found = { misfit: whole, index: -1 };
    for (let i = 0; i < n; i++) {
      const unit = new Float64Array(n);
      unit[i] = 1;
      const misfit = whole - (solved[i] as number) ** 2 / sumOfSquares(this.#whitened(unit));
      if (misfit < found.misfit) found = { misfit, index: i };
    }
    return found;
  }

  /** Each reading as it is explained: by the cause, and by what a healthy vehicle may have. */
  explained(cause: Cause | null): Float64Array {
    const solved = this.#inverse(cause === null ? this.#off.slice() : this.#residual(cause, cause.at));
    return Float64Array.from(
      this.readings,
      ({ value, meterSigma }, i) => value - meterSigma ** 2 * (solved[i] as number),
    );
  }

  /** Volts of the batteries beside a cause. */
  supply(cause: Cause | null): readonly FoundSupply[] {
    const solved = this.#inverse(cause === null ? this.#off.slice() : this.#residual(cause, cause.at));
    return this.#supply.map(({ battery, state, values }) => {
      const seen = sumOfSquares(this.#whitened(values.slice()));
      const share = values.reduce((sum, value, i) => sum + value * (solved[i] as number), 0);
      return {
        battery,
        state,
        offV: SUPPLY_SIGMA_V * share,
        sigmaV: SUPPLY_SIGMA_V * Math.sqrt(Math.max(0, 1 - seen)),
      };
    });
  }

  /** Parts in which so many ohms more would have shown by so much misfit. */
  seenCount(extraOhm: number, misfit: number): number {
    let count = 0;
    for (const values of this.#partColumns.values()) {
      const seen = sumOfSquares(this.#whitened(values.slice())) * extraOhm ** 2;
      if (seen >= misfit) count++;
    }
    return count;
  }

  /** A state with a cause. */
  solved(cause: Pick<Cause, 'kind' | 'members' | 'branch'>, at: number, state: string): NetState {
    const key = `${cause.kind} ${cause.branch} ${at} ${state}`;
    let found = this.#solved.get(key);
    if (found === undefined) {
      found = this.net.solve(state, changeOf(cause, at));
      this.#solved.set(key, found);
    }
    return found;
  }

  #residual(cause: Pick<Cause, 'kind' | 'members' | 'branch'>, at: number): Float64Array {
    const states = new Map(this.states.map((state) => [state, this.solved(cause, at, state)]));
    const part = cause.kind === 'part' ? (cause.members[0] as number) : -1;
    return Float64Array.from(this.readings, (one) => {
      const solved = one.state === null ? null : (states.get(one.state) as NetState);
      // An ohmmeter shows no more than open.
      const shown = predict(this.net, one, solved, part, at);
      return one.value - (one.unit === 'Ω' ? Math.min(shown, OPEN_OHM) : shown);
    });
  }

  #predict(change: Change, part: number, extraOhm: number): Float64Array {
    const nothing = change.branch === undefined && change.load === undefined && change.battery === undefined;
    const states = new Map(
      this.states.map((state) => [state, nothing ? this.net.healthy(state) : this.net.solve(state, change)]),
    );
    return Float64Array.from(this.readings, (one) =>
      predict(this.net, one, one.state === null ? null : (states.get(one.state) as NetState), part, extraOhm),
    );
  }

  /** Spread of every part. Parts of one branch share what they do to the network. */
  #addParts(covariance: Float64Array): void {
    const { net, readings } = this;
    for (const [branch, parts] of net.partsOf) {
      const sigmas = parts.map((p) => sigmaOf(net, p));
      const stepOhm = Math.max(1e-7, Math.hypot(...sigmas));
      const states = new Map(this.states.map((state) => [state, net.solve(state, { branch, extraOhm: stepOhm })]));
      parts.forEach((p, k) => {
        const perOhm = Float64Array.from(readings, (one, i) => {
          const solved = one.state === null ? null : (states.get(one.state) as NetState);
          return (predict(net, one, solved, p, stepOhm) - this.expected(i)) / stepOhm;
        });
        this.#partColumns.set(p, perOhm);
        addOuter(covariance, perOhm, sigmas[k] as number);
      });
    }
  }

  #addLoads(covariance: Float64Array): void {
    const { net } = this;
    const step = LOAD_SPREAD / Math.sqrt(3);
    net.network.wiring.loads.forEach(({ branch }, load) => {
      if (!this.states.some((state) => net.healthy(state).branchA[branch] !== 0)) return;
      const values = this.#predict({ load, factor: 1 + step }, -1, 0).map((value, i) => value - this.expected(i));
      this.#loadColumns.set(load, values);
      addOuter(covariance, values, 1);
    });
  }

  #addSupply(covariance: Float64Array): void {
    const { net, readings } = this;
    const stepV = 0.1;
    for (const state of this.states) {
      for (const { name: battery } of net.network.wiring.batteries) {
        const solved = net.solve(state, { battery, extraV: stepV });
        const values = Float64Array.from(readings, (one, i) =>
          one.state === state ? ((predict(net, one, solved, -1, 0) - this.expected(i)) / stepV) * SUPPLY_SIGMA_V : 0,
        );
        if (values.every((value) => Math.abs(value) < 1e-9)) continue;
        this.#supply.push({ battery, state, values });
        addOuter(covariance, values, 1);
      }
    }
  }

  /** Parts that no reading parts, as one cause, by its line and its open end. */
  #partCauses(z: Float64Array, whole: number): Cause[] {
    const groups = new Map<string, number[]>();
    const { net, readings } = this;
    for (const [p] of this.#partColumns) {
      const { branch } = net.parts[p] as (typeof net.parts)[number];
      const touches = readings.map(
        ({ red, black, chain }) =>
          (red?.parts.includes(p) === true ? 1 : 0) +
          (black?.parts.includes(p) === true ? 2 : 0) +
          (chain.includes(p) ? 4 : 0),
      );
      const key = `${branch} ${touches.join('')}`;
      groups.set(key, [...(groups.get(key) ?? []), p]);
    }
    return [...groups.values()].flatMap((members): Cause[] => {
      const p = members[0] as number;
      const { branch } = net.parts[p] as (typeof net.parts)[number];
      const line = this.#whitened((this.#partColumns.get(p) as Float64Array).slice());
      const size = sumOfSquares(line);
      // What no reading sees is no cause of any.
      if (size * 1e6 < 1e-6) return [];
      const along = line.reduce((sum, value, i) => sum + value * (z[i] as number), 0);
      const at = Math.max(0, along / size);
      const cause = { kind: 'part', members, branch } as const;
      const open = this.misfitAt(cause, OPEN_OHM);
      const straight = whole - Math.max(0, along) ** 2 / size;
      if (open < straight) return [{ ...cause, misfit: open, at: OPEN_OHM, open: true }];
      return [{ ...cause, misfit: straight, at, open: false }];
    });
  }

  #loadCauses(z: Float64Array, whole: number): Cause[] {
    const { wiring } = this.net.network;
    return [...this.#loadColumns].flatMap(([load, values]): Cause[] => {
      const line = this.#whitened(values.slice());
      const size = sumOfSquares(line);
      if (size < 1e-9) return [];
      const along = line.reduce((sum, value, i) => sum + value * (z[i] as number), 0);
      const cause = { kind: 'load', members: [load], branch: wiring.loads[load]?.branch ?? -1 } as const;
      const none = this.misfitAt(cause, 0);
      const straight = whole - along ** 2 / size;
      const at = Math.min(MOST_FACTOR, Math.max(0, 1 + (along / size) * (LOAD_SPREAD / Math.sqrt(3))));
      return [
        none < straight
          ? { ...cause, misfit: none, at: 0, open: false }
          : { ...cause, misfit: straight, at, open: false },
      ];
    });
  }

  /** The best place of a cause over its whole range. */
  #followed(rough: Cause): Cause {
    const isLoad = rough.kind === 'load';
    const places = isLoad ? [...FACTORS] : [...Array.from({ length: 29 }, (_, k) => 10 ** ((k - 16) / 4)), OPEN_OHM];
    if (rough.at > 0 && rough.at < (isLoad ? MOST_FACTOR : OPEN_OHM)) places.push(rough.at);
    places.sort((a, b) => a - b);
    const misfits = places.map((at) => this.misfitAt(rough, at));
    const of = (x: number): number => (isLoad ? x : Math.exp(x));
    const to = (at: number): number => (isLoad ? at : Math.log(at));
    // A load of constant power has a valley where it is still fed and one where it is not.
    const valleys = places
      .map((_, i) => i)
      .filter((i) => (misfits[i] as number) <= Math.min(misfits[i - 1] ?? Infinity, misfits[i + 1] ?? Infinity))
      .sort((i, j) => (misfits[i] as number) - (misfits[j] as number))
      .slice(0, MOST_VALLEYS);
    let misfit = Infinity;
    let at = rough.at;
    for (const i of valleys) {
      const low = to(places[Math.max(0, i - 1)] as number);
      const high = to(places[Math.min(places.length - 1, i + 1)] as number);
      const found = lowest((x) => this.misfitAt(rough, of(x)), low, high);
      const better = found.value < (misfits[i] as number);
      const [here, where] = better ? [found.value, of(found.x)] : [misfits[i] as number, places[i] as number];
      if (here < misfit) [misfit, at] = [here, where];
    }
    const end = isLoad ? Infinity : (misfits.at(-1) as number);
    // So little current passes that it cannot be told from none.
    const open = !isLoad && end <= misfit + 1;
    return { ...rough, misfit: open ? Math.min(end, misfit) : misfit, at: open ? OPEN_OHM : at, open };
  }

  /** What a vector is in sigmas that do not depend on one another; the vector itself is used up. */
  #whitened(values: Float64Array): Float64Array {
    const n = values.length;
    for (let i = 0; i < n; i++) {
      let left = values[i] as number;
      for (let j = 0, row = i * n; j < i; j++) left -= (this.#lower[row + j] as number) * (values[j] as number);
      values[i] = left / (this.#lower[i * n + i] as number);
    }
    return values;
  }

  #inverse(values: Float64Array): Float64Array {
    const x = this.#whitened(values);
    const n = x.length;
    for (let i = n - 1; i >= 0; i--) {
      let left = x[i] as number;
      for (let j = i + 1; j < n; j++) left -= (this.#lower[j * n + i] as number) * (x[j] as number);
      x[i] = left / (this.#lower[i * n + i] as number);
    }
    return x;
  }
}

/** The lowest place of a valley, by golden sections. */
function lowest(f: (x: number) => number, low: number, high: number): { readonly x: number; readonly value: number } {
  let [a, b] = [low, high];
  let [c, d] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
  let [fc, fd] = [f(c), f(d)];
  for (let i = 0; i < GOLDEN_STEPS; i++) {
    if (fc < fd) {
      [b, d, fd] = [d, c, fc];
      c = b - GOLDEN * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + GOLDEN * (b - a);
      fd = f(d);
    }
  }
  return fc < fd ? { x: c, value: fc } : { x: d, value: fd };
}

/** One standard deviation of a healthy part about the figure of the plan. */
export function sigmaOf({ parts }: MeterNet, p: number): number {
  const { ohm, leastOhm, mostOhm } = parts[p] as (typeof parts)[number];
  return Math.hypot((mostOhm - leastOhm) / Math.sqrt(12), ohm - (mostOhm + leastOhm) / 2);
}

function changeOf({ kind, members, branch }: Pick<Cause, 'kind' | 'members' | 'branch'>, at: number): Change {
  return kind === 'part' ? { branch, extraOhm: at } : { load: members[0] as number, factor: at };
}

function addOuter(covariance: Float64Array, values: Float64Array, sigma: number): void {
  const n = values.length;
  for (let i = 0; i < n; i++) {
    const scaled = (values[i] as number) * sigma * sigma;
    if (scaled === 0) continue;
    for (let j = 0; j <= i; j++) {
      covariance[i * n + j] = (covariance[i * n + j] as number) + scaled * (values[j] as number);
    }
  }
}

/** The factor of a covariance, of which the lower triangle is given. */
function factored(covariance: Float64Array, n: number): Float64Array {
  const lower = covariance.slice();
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = lower[i * n + j] as number;
      for (let k = 0; k < j; k++) sum -= (lower[i * n + k] as number) * (lower[j * n + k] as number);
      lower[i * n + j] = i === j ? Math.sqrt(Math.max(sum, 1e-18)) : sum / (lower[j * n + j] as number);
    }
  }
  return lower;
}

function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += (values[i] as number) ** 2;
  return sum;
}
