import { cutter, doubled } from './cut-arrays.js';
import type { Ties } from './elimination-ties.js';

/**
 * Takes all that is left by approximate minimum degree: next is always the block with the fewest neighbours, by a bound
 * that costs no more to keep than a look at the fronts that it borders on. A few hubs, such as busbars that hundreds of
 * wires meet at, come last: each elimination beside one would have to go through its list.
 *
 * The neighbours that an elimination makes are not written down one by one. What was eliminated leaves a front: the list
 * of all that it was tied to, each of which is tied to all others. A front within a newer one is dropped. Unknowns that
 * have the same neighbours become one block, and what has none but the newest front goes with it at once.
 *
 * Amestoy, Davis and Duff, An approximate minimum degree ordering algorithm, SIAM Journal on Matrix Analysis and
 * Applications 17 (1996) 886–905.
 *
 * It is one function, as its steps work on the same dozen of arrays and numbers, thousands of times.
 */
export function takeByDegree({ order, degree, head: halfAt, next: nextHalf, far }: Ties, first: number): void {
  // Blocks have numbers of their own. A front has the number of the block that left it behind; at the beginning stands one
  // that no block did.
  const count = order.length - first;
  const cut = cutter(Int32Array, 10 * count + 4);
  const unknownOf = cut(count);
  const numberOf = degree;
  let room = 2 * count;
  for (let v = 0, i = 0; i < count; v++) {
    if ((degree[v] as number) < 0) continue;
    room += degree[v] as number;
    numberOf[v] = i;
    unknownOf[i++] = v;
  }
  // Lists in one pool: of a block the fronts that it borders on and the blocks that it is tied to, of a front its blocks.
  let pool = new Int32Array(room + (room >> 1));
  let tail = 0;
  const start = cut(count + 1);
  const length = cut(count + 1);
  // Marks, none of which is ever set twice.
  const seen = new Float64Array(count + 1);
  // The next of the blocks that went into one: a ring.
  const ring = cut(count);
  for (let i = 0; i < count; i++) {
    ring[i] = i;
    start[i] = tail;
    for (let h = halfAt[unknownOf[i] as number] as number; h >= 0; h = nextHalf[h] as number) {
      if ((far[h] as number) < 0) continue;
      const j = numberOf[far[h] as number] as number;
      if (seen[j] === i + 1) continue;
      seen[j] = i + 1;
      pool[tail++] = j;
    }
    length[i] = tail - (start[i] as number);
  }
  // Unknowns in each block; below 0 while it is in the newest front, 0 when it is no block any longer.
  const weight = cut(count + 1);
  // Of a block: a number that its neighbours do not exceed. Of a front: the unknowns in it. 0 of what is gone.
  const reach = cut(count + 1);
  // What has four times as many neighbours as others, and so many that no more than twice their root can, is a hub.
  const most = Math.max((4 * tail) / count, Math.sqrt(tail) / 2);
  // At the beginning all others are in a front that leads nowhere.
  let begin = tail;
  let last = order.length;
  for (let i = 0; i < count; i++) {
    if ((length[i] as number) > most) order[--last] = unknownOf[i] as number;
    else {
      weight[i] = -1;
      reach[i] = length[i] as number;
      pool[tail++] = i;
    }
  }
  // Blocks by their reach, in doubly linked lists.
  const head = cut(count).fill(-1);
  const after = cut(count);
  const before = cut(count);
  // Blocks of the newest front by the sum over their lists, which is the same for those that are alike.
  const alike = cut(count).fill(-1);
  let pivot = count;
  let turn = first;
  let stamp = 2 * count;
  let outside = 1;
  let least = 0;
  for (;;) {
    // What of the newest front is still a block goes back among those that wait.
    let end = begin;
    for (let q = begin; q < tail; q++) {
      const i = pool[q] as number;
      const own = -(weight[i] as number);
      if (own === 0) continue;
      weight[i] = own;
      pool[end++] = i;
      const now = Math.min((reach[i] as number) + outside, last - turn) - own;
      reach[i] = now;
      const other = head[now] as number;
      after[i] = other;
      before[i] = -1;
      if (other >= 0) before[other] = i;
      head[now] = i;
      if (now < least) least = now;
    }
    weight[pivot] = 0;
    start[pivot] = begin;
    length[pivot] = end - begin;
    reach[pivot] = outside;
    if (turn === last) return;

    while ((head[least] as number) < 0) least++;
    pivot = head[least] as number;
    const second = after[pivot] as number;
    head[least] = second;
    if (second >= 0) before[second] = -1;
    begin = end;
    tail = end;
    if (tail + last - turn > pool.length) pool = doubled(pool);
    // What it was tied to, by itself or over fronts that it bordered on, is the newest front.
    weight[pivot] = -(weight[pivot] as number);
    outside = 0;
    for (let p = start[pivot] as number, to = p + (length[pivot] as number); p < to; p++) {
      const x = pool[p] as number;
      const isBlock = weight[x] !== 0;
      if (reach[x] === 0) continue;
      let q = isBlock ? p : (start[x] as number);
      for (const stop = q + (isBlock ? 1 : (length[x] as number)); q < stop; q++) {
        const i = pool[q] as number;
        const own = weight[i] as number;
        if (own <= 0) continue;
        outside += own;
        weight[i] = -own;
        pool[tail++] = i;
        const next = after[i] as number;
        const prior = before[i] as number;
        if (next >= 0) before[next] = prior;
        if (prior >= 0) after[prior] = next;
        else head[reach[i] as number] = next;
      }
      if (!isBlock) reach[x] = 0;
    }
    // What of each front lies outside the newest one: its whole, less each block that is met in both. The same is done to
    // blocks, which means nothing: to tell them apart takes longer.
    for (let q = begin; q < tail; q++) {
      const i = pool[q] as number;
      const own = weight[i] as number;
      for (let p = start[i] as number, to = p + (length[i] as number); p < to; p++) {
        const x = pool[p] as number;
        const was = seen[x] as number;
        seen[x] = (was < stamp ? (reach[x] as number) + stamp : was) + own;
      }
    }
    // Each block of the front gets its new list: what it borders on or is tied to beyond the front, and the front.
    for (let q = begin; q < tail; q++) {
      const i = pool[q] as number;
      const from = start[i] as number;
      let put = from;
      let beyond = 0;
      let sum = 0;
      for (let p = from, to = p + (length[i] as number); p < to; p++) {
        const x = pool[p] as number;
        const own = weight[x] as number;
        if (own < 0) continue;
        const rest = own > 0 ? own : (seen[x] as number) - stamp;
        if (rest <= 0) {
          reach[x] = 0;
          continue;
        }
        beyond += rest;
        sum += x;
        pool[put++] = x;
      }
      if (beyond === 0) {
        outside += weight[i] as number;
        weight[i] = 0;
        reach[i] = 0;
        seen[i] = 0;
        link(ring, pivot, i);
        continue;
      }
      reach[i] = Math.min(reach[i] as number, beyond);
      // The pivot, or a front that went into the newest, has left the list: there is room for one.
      pool[put++] = pivot;
      length[i] = put - from;
      const key = sum % count;
      before[i] = key;
      after[i] = alike[key] as number;
      alike[key] = i;
    }
    stamp += count;
    // Those whose lists are the same become one block.
    for (let q = begin; q < tail; q++) {
      if (weight[pool[q] as number] === 0) continue;
      const key = before[pool[q] as number] as number;
      let i = alike[key] as number;
      alike[key] = -1;
      while (i >= 0 && (after[i] as number) >= 0) {
        const from = start[i] as number;
        const size = length[i] as number;
        for (let p = from; p < from + size; p++) seen[pool[p] as number] = stamp;
        let prior = i;
        for (let j = after[i] as number; j >= 0; j = after[j] as number) {
          let p = start[j] as number;
          const to = p + size;
          if (length[j] === size) while (p < to && seen[pool[p] as number] === stamp) p++;
          if (p < to) prior = j;
          else {
            weight[i] = (weight[i] as number) + (weight[j] as number);
            weight[j] = 0;
            reach[j] = 0;
            link(ring, i, j);
            after[prior] = after[j] as number;
          }
        }
        stamp += count;
        i = after[i] as number;
      }
    }
    let v = pivot;
    do {
      order[turn++] = unknownOf[v] as number;
      v = ring[v] as number;
    } while (v !== pivot);
  }
}

/** Makes one ring of two. */
function link(ring: Int32Array, i: number, j: number): void {
  const next = ring[i] as number;
  ring[i] = ring[j] as number;
  ring[j] = next;
}
