import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needList, needObject } from '../error/guard.js';
import type { LevelPoint } from './strapping.js';

/** More marks than any sender or dial has; the searches over them would take minutes. */
const MOST_MARKS = 100;

/** Resistances that only rise or only fall from empty to full, 2 to 100. */
export function needSteadyOhm(fn: string, field: string, ohms: readonly number[]): void {
  needList(fn, field, ohms, 2);
  needBetween(fn, `${field}.length`, ohms.length, 2, MOST_MARKS);
  ohms.forEach((ohm, i) => {
    if (ohm !== 0) needMoreThan(fn, `${field}[${i}]`, ohm);
  });
  const rises = (ohms.at(-1) as number) > (ohms[0] as number);
  for (let i = 1; i < ohms.length; i++) {
    if ((ohms[i] as number) === (ohms[i - 1] as number) || (ohms[i] as number) > (ohms[i - 1] as number) !== rises) {
      const must = `must ${rises ? 'rise' : 'fall'} from the one before, as the whole list does`;
      throw new InputError(fn, `${field}[${i}]`, 'order', ohms[i], must);
    }
  }
}

/** A strapping table from level 0 to level 1: levels that rise, litres that rise from 0. */
export function needStrapping(fn: string, field: string, points: readonly LevelPoint[]): void {
  needList(fn, field, points, 2);
  points.forEach((point, i) => {
    const at = `${field}[${i}]`;
    needObject(fn, at, point);
    needBetween(fn, `${at}.levelFraction`, point.levelFraction, 0, 1);
    needNoLessThan(fn, `${at}.volumeL`, point.volumeL);
    const before = points[i - 1];
    if (before === undefined) {
      if (point.levelFraction !== 0) {
        throw new InputError(fn, `${at}.levelFraction`, 'range', point.levelFraction, 'must be 0, the empty tank');
      }
      return;
    }
    if (point.levelFraction - before.levelFraction < 1e-9) {
      throw new InputError(fn, `${at}.levelFraction`, 'order', point.levelFraction, 'must lie above the one before');
    }
    if (!(point.volumeL > before.volumeL)) {
      throw new InputError(fn, `${at}.volumeL`, 'order', point.volumeL, 'must be above the one before');
    }
  });
  const last = (points.at(-1) as LevelPoint).levelFraction;
  if (last !== 1) {
    throw new InputError(fn, `${field}[${points.length - 1}].levelFraction`, 'range', last, 'must be 1, the full tank');
  }
}
