import type { NotPossible } from '../check/index.js';

/** One device as the assignment sees it: its worst current, its pin, and whether it may leave that. */
export interface SplitItem {
  readonly name: string;
  readonly currentA: number;
  readonly pin: number;
  readonly fixed: boolean;
  readonly trackOf: string | undefined;
}

/** A pin with what may be put on it. */
export interface SplitPin {
  readonly name: string;
  readonly limitA: number;
  /** The limit, less the headroom that is wanted. */
  readonly roomA: number;
}

/** Which device goes to which pin. */
export interface SupplySplit {
  readonly possible: true;
  readonly pinOf: Readonly<Record<string, string>>;
  /** Devices whose wire has to be moved. */
  readonly moved: readonly string[];
  readonly pins: readonly {
    readonly name: string;
    readonly devices: readonly string[];
    readonly sumA: number;
    readonly headroomFraction: number;
  }[];
  /** Least of their headrooms. */
  readonly headroomFraction: number;
}

/** No such split; `competing` are devices of which any one away would let the others find their places. */
export interface NoSupplySplit extends NotPossible<SupplySplit> {
  readonly competing: readonly string[];
}

export type SupplySplitResult = SupplySplit | NoSupplySplit;

/** Steps that one search may take; beyond it says that it does not know. */
const MOST_STEPS = 50_000;

/** What is put above what: nothing (any split), or fewest moves before headroom, or headroom before moves. */
type Goal = 'any' | 'fewest-moves' | 'most-headroom';

interface Found {
  readonly at: readonly number[] | null;
  /** Whether the search went to its end. */
  readonly whole: boolean;
}

/**
 * The best split of all, by branch and bound: largest currents first, and no branch that breaks a limit, puts two
 * tracks of one thing on one pin, asks for more than all pins have left, or is no better than the best so far.
 */
function search(items: readonly SplitItem[], pins: readonly SplitPin[], goal: Goal): Found {
  const order = items
    .map((_, i) => i)
    .sort((a, b) => (items[b] as SplitItem).currentA - (items[a] as SplitItem).currentA);
  const at = items.map(() => -1);
  const sums = pins.map(() => 0);
  const tail = order.map((_, k) => order.slice(k).reduce((sum, i) => sum + (items[i] as SplitItem).currentA, 0));
  let best: { readonly at: readonly number[]; readonly moves: number; readonly least: number } | null = null;
  let steps = 0;
  const isBetter = (moves: number, least: number): boolean => {
    if (best === null) return true;
    if (goal === 'any') return false;
    if (goal === 'fewest-moves') return moves < best.moves || (moves === best.moves && least > best.least + 1e-12);
    return least > best.least + 1e-12 || (least > best.least - 1e-12 && moves < best.moves);
  };
  const go = (k: number, moves: number, least: number): void => {
    if (++steps > MOST_STEPS || !isBetter(moves, least)) return;
    if (k === order.length) {
      best = { at: [...at], moves, least };
      return;
    }
    const left = pins.reduce((sum, { roomA }, p) => sum + roomA - (sums[p] as number), 0);
    if ((tail[k] as number) > left * (1 + 1e-12)) return;
    const i = order[k] as number;
    const { currentA, pin, fixed, trackOf } = items[i] as SplitItem;
    const ways = [pin, ...pins.map((_, p) => p).filter((p) => p !== pin && !fixed)];
    for (const p of ways) {
      const { roomA, limitA } = pins[p] as SplitPin;
      const sum = (sums[p] as number) + currentA;
      const clash = trackOf !== undefined && items.some((o, j) => o.trackOf === trackOf && at[j] === p);
      if (clash || sum > roomA * (1 + 1e-12)) continue;
      const before = sums[p] as number;
      at[i] = p;
      sums[p] = sum;
      go(k + 1, moves + (p === pin ? 0 : 1), Math.min(least, 1 - sum / limitA));
      at[i] = -1;
      sums[p] = before;
    }
  };
  go(0, 0, 1);
  const found = best as { readonly at: readonly number[] } | null;
  return { at: found?.at ?? null, whole: steps <= MOST_STEPS };
}

/** Both proposals: the fewest wires moved, and the most headroom at the tightest pin. */
export function supplySplits(
  items: readonly SplitItem[],
  pins: readonly SplitPin[],
): { readonly fewestMoves: SupplySplitResult; readonly mostHeadroom: SupplySplitResult } {
  const able = search(items, pins, 'any');
  if (able.at === null) {
    const none = able.whole ? notPossible(items, pins) : undecided();
    return { fewestMoves: none, mostHeadroom: none };
  }
  const of = (goal: Goal): SupplySplitResult => {
    const { at, whole } = search(items, pins, goal);
    return at === null || !whole ? undecided() : splitOf(items, pins, at);
  };
  return { fewestMoves: of('fewest-moves'), mostHeadroom: of('most-headroom') };
}

function splitOf(items: readonly SplitItem[], pins: readonly SplitPin[], at: readonly number[]): SupplySplit {
  const loaded = pins.map(({ name, limitA }, p) => {
    const on = items.filter((_, i) => at[i] === p);
    const sumA = on.reduce((sum, { currentA }) => sum + currentA, 0);
    return { name, devices: on.map((item) => item.name), sumA, headroomFraction: 1 - sumA / limitA };
  });
  return {
    possible: true,
    pinOf: Object.fromEntries(items.map(({ name }, i) => [name, (pins[at[i] as number] as SplitPin).name])),
    moved: items.filter(({ pin }, i) => at[i] !== pin).map(({ name }) => name),
    pins: loaded,
    headroomFraction: Math.min(...loaded.map(({ headroomFraction }) => headroomFraction)),
  };
}

function undecided(): NoSupplySplit {
  const because = 'there are too many ways to try them all';
  return { possible: false, code: 'not-decided', because, nearest: null, competing: [] };
}

/** Takes devices away as long as the rest still cannot be placed: what is left competes. */
function notPossible(items: readonly SplitItem[], pins: readonly SplitPin[]): NoSupplySplit {
  const rest = items.reduce<readonly SplitItem[]>((left, item) => {
    const without = left.filter((each) => each !== item);
    const { at, whole } = search(without, pins, 'any');
    return at === null && whole ? without : left;
  }, items);
  const competing = rest.map(({ name }) => name);
  const names = competing.join(', ');
  const sumA = rest.reduce((sum, { currentA }) => sum + currentA, 0);
  const mA = (amps: number): string => `${Number((amps * 1000).toPrecision(4))} mA`;
  const roomA = pins.reduce((sum, pin) => sum + pin.roomA, 0);
  const free = rest.map((item) => ({ ...item, trackOf: undefined }));
  const [only] = rest;
  if (rest.length === 1 && only !== undefined) {
    const because = `${names} takes ${mA(sumA)}, more than ${only.fixed ? 'its pin' : 'any pin'} may carry`;
    return { possible: false, code: 'device-over-pin', because, nearest: null, competing };
  }
  if (search(free, pins, 'any').at === null) {
    const because = `${names} take ${mA(sumA)} together, and the pins have ${mA(roomA)} in portions that do not fit`;
    return { possible: false, code: 'too-much-current', because, nearest: null, competing };
  }
  const [first] = rest;
  const alone = rest.every(({ trackOf }) => trackOf !== undefined && trackOf === first?.trackOf);
  const code = alone && rest.length > pins.length ? 'too-few-pins' : 'tracks-and-current';
  const because =
    code === 'too-few-pins'
      ? `${names} are tracks of ${first?.trackOf ?? ''}, and there are only ${pins.length} pins`
      : `${names} fit only with two tracks of one thing on one pin`;
  return { possible: false, code, because, nearest: null, competing };
}
