// Where on the travel a fault is accepted. The travel is walked in steps; where a limit is passed between two of them
// the place is halved out, and where a curve turns between steps its turning point is looked for first.

const STEPS = 200;

/** Width to which an end of a span is known, as a fraction of the travel. */
export const END_FRACTION = 1e-6;

/** Everything between these places, in order from 0 to 1, lies on one side of every limit. */
export function cutTravel(roomsAt: (travel: number) => readonly number[]): readonly number[] {
  const places = Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS);
  const rooms = places.map(roomsAt);
  const cuts = [...places];
  const count = (rooms[0] as readonly number[]).length;
  for (let k = 0; k < count; k++) {
    const room = (travel: number): number => roomsAt(travel)[k] as number;
    const at = (i: number): number => (rooms[Math.max(0, Math.min(STEPS, i))] as readonly number[])[k] as number;
    const place = (i: number): number => places[Math.max(0, Math.min(STEPS, i))] as number;
    for (let i = 0; i <= STEPS; i++) {
      const here = at(i);
      if (i < STEPS && here < 0 !== at(i + 1) < 0) cuts.push(crossing(room, place(i), place(i + 1)));
      const way = here < 0 ? 1 : -1;
      const [left, right] = [way * (here - at(i - 1)), way * (here - at(i + 1))];
      // A turning point can pass nought only where the curve bends as much as it is away from it.
      if (left < 0 || right < 0 || Math.abs(here) > 2 * Math.max(left, right)) continue;
      const turn = turning((travel) => way * room(travel), place(i - 1), place(i + 1));
      if (room(turn) < 0 !== here < 0) {
        cuts.push(crossing(room, place(i - 1), turn), crossing(room, turn, place(i + 1)));
      }
    }
  }
  return cuts.sort((a, b) => a - b);
}

/** A place where the sign changes, by halving; the end that is still as at `from` where it does not. */
function crossing(room: (travel: number) => number, from: number, to: number): number {
  const start = room(from) < 0;
  let [a, b] = [from, to];
  while (b - a > END_FRACTION) {
    const middle = (a + b) / 2;
    if (room(middle) < 0 === start) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** Where a curve with one top in a stretch is highest: the stretch is cut by thirds. */
function turning(height: (travel: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  while (b - a > END_FRACTION) {
    const [c, d] = [a + (b - a) / 3, b - (b - a) / 3];
    if (height(c) < height(d)) a = c;
    else b = d;
  }
  return (a + b) / 2;
}
