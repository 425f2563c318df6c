import { takeByDegree } from './elimination-degree.js';
import { takeUpTo, type Ties } from './elimination-ties.js';

/**
 * Fills in an order of elimination with few new entries: what is tied to one other goes first, then what is tied to two,
 * both in linear time, and what is left of the network by approximate minimum degree. Nothing else is left of the ties.
 */
export function eliminate(ties: Ties): void {
  const turn = takeUpTo(2, ties, takeUpTo(1, ties, 0));
  if (turn < ties.order.length) takeByDegree(ties, turn);
}
