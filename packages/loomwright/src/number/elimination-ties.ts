/**
 * What an elimination begins with: of each unknown a list of its ties to others. A tie is two halves, 2e and 2e + 1, one
 * in the list of each of its ends; a half that says −1 is no longer there. The arrays change as the elimination goes on.
 */
export interface Ties {
  /** Unknowns in the order in which they are taken. */
  readonly order: Int32Array;
  /** Of each unknown: how many ties it has, −1 when it was taken, and the first half in its list. */
  readonly degree: Int32Array;
  readonly head: Int32Array;
  /** Of each half: the next in its list, and the unknown at the far end. */
  readonly next: Int32Array;
  readonly far: Int32Array;
}

/** The ties of all unknowns, in arrays that are handed in, or cut where there is room for `count` and four times the entries. */
export function tiesOf(
  order: Int32Array,
  degree: Int32Array,
  rows: Int32Array,
  columns: Int32Array,
  cut: (length: number) => Int32Array,
): Ties {
  const head = cut(order.length).fill(-1);
  const next = cut(2 * rows.length);
  const far = cut(2 * rows.length);
  for (let e = 0, h = 0; e < rows.length; e++, h += 2) {
    const i = rows[e] as number;
    const j = columns[e] as number;
    far[h] = j;
    next[h] = head[i] as number;
    head[i] = h;
    degree[i] = (degree[i] as number) + 1;
    far[h + 1] = i;
    next[h + 1] = head[j] as number;
    head[j] = h + 1;
    degree[j] = (degree[j] as number) + 1;
  }
  return { order, degree, head, next, far };
}

/**
 * Takes whatever has so many ties or fewer, one or two, again and again: with one a tree goes whole; of two ties one is
 * made, between its neighbours. Gives the next turn.
 */
export function takeUpTo(most: 1 | 2, { order, degree, head, next, far }: Ties, first: number): number {
  let turn = first;
  // Those that come down to so many wait at the end of the order: there is room, as they have no turn yet.
  let waiting = order.length;
  for (let s = 0; s < degree.length; s++) {
    if ((degree[s] as number) < 0 || (degree[s] as number) > most) continue;
    let v = s;
    for (;;) {
      const ways = degree[v] as number;
      degree[v] = -1;
      order[turn++] = v;
      if (ways > 0) {
        let h = head[v] as number;
        while ((far[h] as number) < 0) h = next[h] as number;
        const a = far[h] as number;
        far[h ^ 1] = -1;
        let left = (degree[a] as number) - 1;
        if (ways > 1) {
          let g = next[h] as number;
          while ((far[g] as number) < 0) g = next[g] as number;
          const b = far[g] as number;
          far[g ^ 1] = -1;
          if (a === b) left--;
          else {
            // The half at a leads on to b, and its other half moves there from v. They may be tied already: it costs time
            // alone that they are then tied twice.
            left++;
            far[h ^ 1] = b;
            far[h] = a;
            next[h] = head[b] as number;
            head[b] = h;
          }
        }
        if ((degree[a] as number) > most && left <= most) order[--waiting] = a;
        degree[a] = left;
      }
      if (waiting === order.length) break;
      v = order[waiting++] as number;
    }
  }
  return turn;
}
