import { isMotor, speedAt, torqueAt } from './cranking-starter.js';
import type {
  CrankingCircuitInput,
  CrankingMoment,
  CrankingPartState,
  LadderPoint,
  StarterLinePoint,
} from './cranking-type.js';

/** The points of a circuit from the positive post down to the negative one. */
export function ladderOf({ postV, starterV }: CrankingMoment, states: readonly CrankingPartState[]): LadderPoint[] {
  const [inside, ...parts] = states as [CrankingPartState, ...CrankingPartState[]];
  const out = parts.filter(({ side }) => side === 'out');
  const back = parts.filter(({ side }) => side === 'return');
  const points: LadderPoint[] = [];
  let v = postV;
  points.push({ name: 'positive post', side: 'out', aboveNegativeV: v, lostMv: inside.dropV * 1000 });
  out.forEach(({ name, dropV }, i) => {
    v -= dropV;
    const last = i === out.length - 1;
    const where = last ? 'starter terminal' : `after ${name}`;
    points.push({ name: where, side: 'out', aboveNegativeV: v, lostMv: dropV * 1000 });
  });
  let below = back.reduce((sum, part) => sum + part.dropV, 0);
  if (out.length === 0) {
    points.push({ name: 'starter terminal', side: 'out', aboveNegativeV: below + starterV, lostMv: 0 });
  }
  points.push({ name: 'starter case', side: 'return', aboveNegativeV: below, lostMv: null });
  back.forEach(({ name, dropV }, i) => {
    const last = i === back.length - 1;
    below = last ? 0 : below - dropV;
    const where = last ? 'negative post' : `after ${name}`;
    points.push({ name: where, side: 'return', aboveNegativeV: below, lostMv: dropV * 1000 });
  });
  if (back.length === 0) points.push({ name: 'negative post', side: 'return', aboveNegativeV: 0, lostMv: 0 });
  return points;
}

/** Steps of the starter's line. */
const STEPS = 24;

/** The starter's line in this circuit, from standing still to running free. */
export function lineOf(
  { openV, starter }: CrankingCircuitInput,
  seriesOhm: number,
  firstA: number,
): StarterLinePoint[] {
  if (!isMotor(starter) || firstA <= starter.freeA) return [];
  return Array.from({ length: STEPS + 1 }, (_, i) => {
    // Denser towards running free, where a series motor's speed rises fast.
    const currentA = starter.freeA + (firstA - starter.freeA) * (1 - i / STEPS) ** 2;
    const starterV = openV - currentA * seriesOhm;
    const speedRpm = i === 0 ? 0 : speedAt(starter, starterV, currentA);
    return { currentA, starterV, speedRpm, torqueFraction: torqueAt(starter, currentA) };
  });
}
